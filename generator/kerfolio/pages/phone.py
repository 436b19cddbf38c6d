"""The page for the phone at the machine: a file that makes entries of the log, all by itself."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from markupsafe import Markup

from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.model.outcome import Grade, Mark
from kerfolio.model.stated import ENTRIES_FORMAT
from kerfolio.model.stock import FAMILIES, SHAPED, CutterStock, Stock
from kerfolio.model.workshop import Identity
from kerfolio.pages.frame import lone_frame
from kerfolio.pages.script_data import script_data
from kerfolio.pages.script_words import told_script
from kerfolio.pages.theme import render
from kerfolio.shop.chip_load import allowed_chips
from kerfolio.trials.dialogue import feels, grades
from kerfolio.trials.known import (
    Known,
    KnownPlan,
    Used,
    feed_as_stated,
    logged_settings,
    passes_as_stated,
    speed_as_stated,
)
from kerfolio.trials.outcome_told import grade_told, mark_told

Named = tuple[tuple[str, str], ...]


def phone_script(reader: Reader) -> Markup:
    """Return the script of the page."""
    return told_script(reader, ("phone.js",), ("phonescript",))


def phone_page(identity: Identity, known: Known) -> str:
    """Return the page; the workshop's sheets, cutters, plans and settings used last stand in it.

    It is for the maker alone: what it holds is not public.
    """
    reader = identity.reader
    script = phone_script(reader)
    title = say(reader, "phone-title")
    frame = lone_frame(
        identity,
        title,
        say(reader, "phone-lead"),
        private=True,
        scripts=(script,),
        styles=("phone.css",),
    )
    sheets_tried, sheets = _tried(known.stock.sheets, known.sheets_tried())
    cutters_tried, cutters = _tried(known.stock.cutters, known.cutters_tried(""))
    return render(
        "phone.html",
        reader,
        frame=frame,
        unit=reader.unit,
        plans=tuple((each.name, each.title) for each in known.plans),
        sheets_tried=sheets_tried,
        sheets=sheets,
        cutters_tried=cutters_tried,
        cutters=cutters,
        grades=tuple(
            (word.word, grade_told(grade, reader), word.says)
            for word, grade in zip(grades(reader), reversed(Grade), strict=True)
        ),
        feels=tuple((each.word, each.says) for each in feels(reader)),
        marks=tuple((each.value, mark_told(each, reader)) for each in Mark),
        data=script_data(json_text(_data(identity, known))),
        script=script,
    )


def _tried(items: Iterable[Any], tried: tuple[str, ...]) -> tuple[Named, Named]:
    """Return names and titles: of the items of the log, the last one used in front; of others."""
    titles = {each.name: each.title for each in items}
    known = tuple((name, titles[name]) for name in tried if name in titles)
    return known, tuple((name, title) for name, title in titles.items() if name not in tried)


def _data(identity: Identity, known: Known) -> dict[str, Any]:
    stock, unit = known.stock, identity.reader.unit
    rules = sorted((each.diameters, each.share) for each in stock.depth_rules)
    return {
        "format": ENTRIES_FORMAT,
        "house": identity.title,
        "unit": unit,
        "sheets": [{"name": each.name, "family": each.family} for each in stock.sheets],
        "cutters": [_cutter(each, stock, known.machine) for each in stock.cutters],
        "plans": [_plan(each, known, unit) for each in known.plans],
        "settings": [_setting(each, unit) for each in _latest(known)],
        "marks": [each.value for each in Mark],
        "depths": [[number(diameters), number(share)] for diameters, share in rules],
    }


def _cutter(cutter: CutterStock, stock: Stock, machine: str) -> dict[str, Any]:
    shaped = cutter.kind in SHAPED
    allowed = {
        family: found
        for family in FAMILIES
        if not shaped and (found := allowed_chips(stock, family, cutter.diameter, machine))
    }
    return {
        "name": cutter.name,
        "diameter": number(cutter.diameter),
        "flutes": cutter.flutes,
        "shaped": shaped,
        "chips": {
            family: [number(each.least), number(each.most)] for family, each in allowed.items()
        },
    }


def _plan(plan: KnownPlan, known: Known, unit: str) -> dict[str, Any]:
    order = [name for stock in plan.sheets for name in known.cutters_of(plan.name, stock)]
    cuts = sorted(
        plan.cuts, key=lambda each: order.index(each.cutter) if each.cutter in order else 0
    )
    return {
        "name": plan.name,
        "release": plan.release,
        "sheets": {stock: number(mm) for stock, mm in plan.sheets.items()},
        "cuts": [_setting(each, unit) for each in cuts],
    }


def _latest(known: Known) -> tuple[Used, ...]:
    """Return the settings logged last for each sheet with each cutter."""
    found: dict[tuple[str, str], Used] = {}
    for each in logged_settings(known.trials):
        found.setdefault((each.stock, each.cutter), each)
    return tuple(found.values())


def _setting(used: Used, unit: str) -> dict[str, Any]:
    settings = used.settings
    return {
        "stock": used.stock,
        "cutter": used.cutter,
        "speed": "" if settings.speed is None else speed_as_stated(settings.speed),
        "feed": "" if settings.feed is None else feed_as_stated(settings.feed, unit),
        "passes": passes_as_stated(settings.passes, unit),
    }
