"""The figures of ``plan.json``: weight, cutting time, costs and loads, with what they rest on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Any

from kerfolio.basis.json_text import number
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Words
from kerfolio.basis.saying import say
from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.in_use import used_of
from kerfolio.shop.cost import CopiesCost
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.span import RACKING, SPAN_CAUTIONS, SpanResult, Unreckoned


def figures(edition: Edition) -> dict[str, Any]:
    """Return the figures of an edition by key; minutes, metres, kg, mm and N/mm2, money as text."""
    words = cutting_of(edition)
    weight, reader = edition.weight, edition.reader.metric
    return {
        "weight": {**_plain(weight, reader), "total": number(weight.total)},
        "cutting": {
            "sheets": [
                _time(sheet.number, time, reader)
                for sheet, time in zip(edition.layout.sheets, edition.times, strict=True)
            ],
            "cutters": _plain(edition.wear, reader),
            "assumptions": _plain(words.assumptions, reader) if words else [],
        },
        "costs": [_cost(each, edition.identity.currency, reader) for each in edition.copies],
        "in-use": _in_use(edition),
        "on-top": [
            {"thing": name, **_plain(top, reader), "nests": top.nests}
            for name, top in edition.on_top.items()
        ],
        "spans": {
            "cautions": [say(edition.reader, each) for each in (*SPAN_CAUTIONS, RACKING)]
            if edition.spans
            else [],
            "results": [_span(each, edition.reader) for each in edition.spans],
        },
    }


def _in_use(edition: Edition) -> dict[str, Any] | None:
    words, reader = used_of(edition), edition.reader.metric
    if words is None:
        return None
    return {
        "things": [
            {
                "thing": thing.stated.name if thing.stated else "",
                "on": list(dict.fromkeys(thing.on)),
                **_plain(thing.found, reader),
                "fits": _plain(told.fits, reader),
                "sentence": told.sentence,
            }
            for thing, told in zip(edition.in_use, words.things, strict=True)
        ],
        "cautions": list(words.cautions),
        "assumptions": _plain(words.assumptions, reader),
    }


def _time(sheet: int, time: CutTime, reader: Reader) -> dict[str, Any]:
    return {
        "sheet": sheet,
        "known": time.known,
        "minutes": number(time.minutes),
        "metres": number(time.metres),
        "operations": _plain(time.operations, reader),
        "rapid-seconds": number(time.rapid_seconds),
        "changes": time.changes,
        "change-seconds": number(time.change_seconds),
        "uncut": _plain(time.uncut, reader),
    }


def _cost(cost: CopiesCost, currency: str, reader: Reader) -> dict[str, Any]:
    known = any(row.total is not None for row in cost.lines)
    total, each = (str(cost.total), str(cost.each)) if known else (None, None)
    totals = {"total": total, "each": each, "currency": currency}
    return {**_plain(cost, reader), **totals, "unpriced": list(cost.unpriced)}


def _span(result: SpanResult, reader: Reader) -> dict[str, Any]:
    """Return a span; what it rests on is told in the reader's unit."""
    kept: dict[str, Any] = _plain(result, reader)
    if not isinstance(result, Unreckoned):
        kept["assumptions"] = _plain([each.told(reader) for each in result.assumptions], reader)
        kept["greatest-load-estimated"] = number(result.greatest_load)
    return kept


def _plain(value: Any, reader: Reader) -> Any:
    """Return a record as JSON holds it: its fields by name, with hyphens; words as told."""
    if isinstance(value, Words):
        return value.told(reader)
    if is_dataclass(value) and not isinstance(value, type):
        names = [each.name for each in fields(value)]
        return {name.replace("_", "-"): _plain(getattr(value, name), reader) for name in names}
    if isinstance(value, StrEnum | Decimal):
        return str(value)
    if isinstance(value, float):
        return number(value)
    if isinstance(value, Iterable) and not isinstance(value, str):
        return [_plain(each, reader) for each in value]
    return value
