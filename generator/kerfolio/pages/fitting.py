"""The fitting page: what it shows before a script runs, the data and the script that go on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.tolerance import NOISE
from kerfolio.edition.edition import Edition
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.fitted.form import Fitted, Number
from kerfolio.fitted.writing import fitted_json
from kerfolio.model.play import Feel
from kerfolio.model.stated import ENTRIES_FORMAT
from kerfolio.pages.links import contact_href
from kerfolio.pages.newest import newest_address
from kerfolio.pages.rescue import Rescue, rescue_of
from kerfolio.pages.script_data import packed_data, script_data
from kerfolio.pages.script_words import told_script
from kerfolio.settling.coupon import step_of
from kerfolio.settling.settled import SettledSheet
from kerfolio.shop.swelling import room_for
from kerfolio.shop.tightest import narrow_places, tightest_curve
from kerfolio.trials.dialogue import feels, grades

FITTING_SCRIPT = "assets/fitting.js"
"""Where the site keeps the script."""

FITTED_FILES = "fitted.json"
"""What the site calls the fitted files of a plan, in its folder."""

_SCRIPTS = (
    *("fitted.js", "fitting.js", "true-cut.js", "rescue.js", "sent.js"),
    *("fitting-page.js", "rescue-page.js"),
)
_HOLDS = ("cut", "templates", "layout", "setup")
"""What is made for a sheet, by the folder it lies in."""

_FIT_STEP = {"mm": 0.05, "in": 0.0508}


def fitting_script(reader: Reader) -> Markup:
    """Return the script of the page: the files filled in, what is reckoned, the page itself."""
    return told_script(reader, _SCRIPTS, ("fitscript", "truecut", "rescuescript", "fitpage"))


@dataclass(frozen=True, slots=True, kw_only=True)
class FitStep:
    """A fit that a reader may choose: its value in the data, and how it is told."""

    value: str
    told: str
    own: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FittingSheet:
    """A sheet to be measured; ``fits`` are empty where the maker lets nobody choose.

    ``coupon`` tells whether there is one to read.
    """

    name: str
    title: str
    fits: tuple[FitStep, ...] = ()
    coupon: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SentHome:
    """What a reader may say of how it came out, words of a log with what they mean; where to mail
    it, empty where the workshop has no contact.
    """

    feels: tuple[tuple[str, str], ...]
    grades: tuple[tuple[str, str], ...]
    maker: str
    contact: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """The variable ``fitting`` of the template ``fitting.html``: it stands once on a page.

    ``files`` are the fitted files, packed, as the content of a script element; empty where the page
    fetches them. ``rescue`` is what saves a piece, None where no files are made. ``cutters`` tells
    whether another cutter, or none, may be chosen instead of the one ``planned``; ``made`` whether
    the page makes files at all, ``holds`` which, ``built`` whether a true cut can be built into
    them.
    """

    sheets: tuple[FittingSheet, ...]
    data: Markup
    files: Markup
    rescue: Rescue | None
    cutters: bool
    planned: str
    made: bool
    built: bool
    holds: str
    sent: SentHome
    file: str = FITTING_SCRIPT
    script: Markup


def fitting_of(
    edition: Edition,
    fitted: Fitted | None = None,
    rescue: Fitted | None = None,
    *,
    inline: bool = True,
) -> Fitting | None:
    """Return the fitting page of an edition, None where every sheet has one thickness alone.

    ``fitted`` are its fitted files, and ``rescue`` those of second cuts, which stand in the page
    where it is ``inline``. Where a plan's
    files follow no rule it has none: the page then tells which of the ready-made sets to take.
    """
    numbers = {each.name: each for each in (fitted.numbers if fitted else _published(edition))}
    if not any(each.least < each.most for each in numbers.values()):
        return None
    sheets = edition.settled.sheets
    return Fitting(
        sheets=tuple(
            FittingSheet(
                name=sheet.name,
                title=sheet.stock.title,
                fits=tuple(_fit_steps(numbers.get(f"fit.{sheet.name}"), sheet, edition)),
                coupon=_coupon(edition, sheet) is not None,
            )
            for sheet in sheets
        ),
        script=fitting_script(edition.reader),
        data=script_data(json_text(_data(edition, numbers, made=fitted is not None))),
        files=packed_data(fitted_json(fitted) if fitted and inline else ""),
        rescue=rescue_of(edition, rescue, inline=inline) if fitted else None,
        cutters=any(f"cutter.{sheet.name}" in numbers for sheet in sheets),
        made=fitted is not None,
        built=any(f"cut.{sheet.name}" in numbers for sheet in sheets),
        holds=_held(fitted, edition.reader) if fitted else "",
        sent=_sent_home(edition),
        planned=listed(edition.reader, list(dict.fromkeys(sheet.cutter.title for sheet in sheets))),
    )


def _sent_home(edition: Edition) -> SentHome:
    reader, identity = edition.reader, edition.identity
    return SentHome(
        feels=tuple((each.word, each.says) for each in feels(reader)),
        grades=tuple((each.word, each.says) for each in grades(reader)),
        maker=identity.maker,
        contact=contact_href(identity.contact),
    )


def _held(fitted: Fitted, reader: Reader) -> str:
    """Return what is among fitted files, in words."""
    names = (str(cell.name[0]) for file in fitted.files for cell in file.cells)
    folders = {name.split("/")[0] for name in names}
    held = [say(reader, f"fitting-holds-{each}") for each in _HOLDS if each in folders]
    return listed(reader, held)


def _published(edition: Edition) -> Iterator[Number]:
    """Yield the thicknesses that ready-made sets reach over."""
    for sheet in edition.settled.sheets:
        ready = [dict(each.variant.thickness)[sheet.name] for each in edition.variants]
        yield Number(
            name=f"thickness.{sheet.name}",
            least=min(ready),
            most=max(ready),
            drawn=sheet.thickness,
            decimals=2,
        )


def _feel(feel: Feel, reader: Reader) -> str:
    """Return what a joint is like, in words for those who choose a fit."""
    return say(reader, f"fitting-feel-{feel.name}")


def _fit_steps(found: Number | None, sheet: SettledSheet, edition: Edition) -> Iterator[FitStep]:
    """Yield the fits to choose from: both ends, the plan's own, and round ones between."""
    if found is None:
        return
    reader, play = edition.reader, edition.plan.play
    step = _FIT_STEP[reader.unit]
    between = [n * step for n in range(1, 20) if found.least < n * step < found.most]
    apart = [each for each in between if abs(each - sheet.fit) > step / 2]
    values = sorted({found.least, found.most, sheet.fit, *apart})
    for each in values:
        yield FitStep(
            value=number(each, 3),
            told=f"{fit_in(each, reader)}: {_feel(play.feel(each), reader)}",
            own=abs(each - sheet.fit) < NOISE,
        )


def _data(edition: Edition, numbers: Mapping[str, Number], *, made: bool) -> dict[str, Any]:
    plan = edition.plan
    return {
        "plan": plan.name,
        "title": plan.title,
        "release": plan.version,
        "day": plan.released.isoformat(),
        "house": edition.identity.title,
        "ask": edition.identity.maker,
        "unit": edition.reader.unit,
        "newest": newest_address(edition),
        "made": made,
        "files": FITTED_FILES,
        "entries": ENTRIES_FORMAT,
        "relief": plan.relief.style != "none",
        **({"jointFits": True} if joint_fits(edition) else {}),
        "fitWords": [
            [number(min(each.most, 99.0), 3), _feel(each, edition.reader)]
            for each in plan.play.feels
        ],
        "step": number(min(step_of(each, plan.units) for each in edition.settled.sheets)),
        "sheets": [_sheet(edition, sheet, numbers) for sheet in edition.settled.sheets],
        "ready": [
            {
                "label": each.variant.label,
                "at": {name: number(mm, 2) for name, mm in each.variant.thickness},
            }
            for each in edition.variants
        ],
    }


def _sheet(edition: Edition, sheet: SettledSheet, numbers: Mapping[str, Number]) -> dict[str, Any]:
    thickness = numbers[f"thickness.{sheet.name}"]
    cutter = numbers.get(f"cutter.{sheet.name}")
    curve = tightest_curve(edition.settled, sheet.name)
    parts = [part for part in edition.settled.parts if part.sheet == sheet.name]
    return {
        "name": sheet.name,
        "title": sheet.stock.title,
        "least": number(thickness.least, 2),
        "most": number(thickness.most, 2),
        "drawn": number(sheet.thickness, 2),
        "stock": sheet.stock.name,
        "sold": [number(sheet.stock.least, 2), number(sheet.stock.most, 2)],
        "fit": number(sheet.fit),
        **_more(edition, sheet),
        "planned": number(sheet.cutter.diameter, 3),
        "cutter": None if cutter is None else _cutter(cutter),
        "coupon": _coupon(edition, sheet),
        "built": f"cut.{sheet.name}" in numbers,
        "curve": None if curve is None else number(curve, 3),
        "recessed": any(feature.kind.recessed for part in parts for feature in part.features),
        "narrow": [
            {"takes": each.takes, "width": number(each.width)}
            for each in narrow_places(edition.settled, sheet.name)
        ],
    }


def _more(edition: Edition, sheet: SettledSheet) -> dict[str, Any]:
    """Return what slots for a sheet have for finish and damp, mm a side; nothing without any."""
    more = room_for(edition.settled, sheet)
    return {"more": number(more)} if more else {}


def _coupon(edition: Edition, sheet: SettledSheet) -> dict[str, Any] | None:
    """Return the sizes of a sheet's coupon as drawn, None where it has none."""
    for each in edition.settled.coupons:
        if each.sheet == sheet.name:
            return {
                "slots": [number(slot.width) for slot in each.slots],
                "steps": [number(step.width) for step in each.steps],
                "opening": {"x": number(each.opening), "y": number(each.slots[-1].width)},
                "step": number(step_of(sheet, edition.plan.units)),
            }
    return None


def _cutter(found: Number) -> dict[str, Any]:
    return {
        "least": number(found.least, 3),
        "most": number(found.most, 3),
        "none": found.none,
        "below": found.below,
        "above": found.above,
    }
