"""The whole text of an adopted plan, and its bodies as drawings; guesses stand in comments."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from kerfolio.adopting.adopted import Adopted, Sheet
from kerfolio.adopting.linear import number_text
from kerfolio.adopting.stated import PlanWriter
from kerfolio.basis.digits import digits
from kerfolio.model.plan import Step
from kerfolio.writing.shapes_svg import shapes_svg

_FOUND = "Put your own words here; this order was found by trying straight moves."
_LEFT = "The drawing does not tell where these go. Put your own words here."

_AROUND = 0.6
"""A plan is published for so much thinner and thicker sheets, mm, where they are sold."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """What a sheet is cut from: the stock's name, what it measures at least and most, its size."""

    stock: str
    least: float
    most: float
    size: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Relieved:
    """How corners are relieved, and the stock's name of the cutter; empty for the usual."""

    cutter: str = ""
    style: str = "dog-bone"

    @property
    def text(self) -> str:
        """What a plan states."""
        return f"{{style: {self.style}, cutter: {self.cutter}}}" if self.cutter else self.style


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What a plan's text is made for: its title, unit, day, what sheets are cut from.

    ``relief`` is what the drawing is relieved for, or its thin sheet wants. ``ways`` are joints
    that say which way round, ``steps`` how it goes together, as they stand in a plan. ``clears``
    names hardware by the diameters of its holes, in hundredths of a mm.
    """

    title: str
    unit: str
    day: date
    file: str
    bought: Mapping[str, Bought]
    relief: Relieved = field(default_factory=Relieved)
    ways: tuple[str, ...] = ()
    steps: str = ""
    clears: Mapping[int, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedText:
    """``plan.yaml``, and drawings by their names in the plan's folder."""

    plan: str
    drawings: Mapping[str, str]


def plan_text(found: Adopted, wanted: Wanted) -> AdoptedText:
    """Return the plan's files as they are written."""
    stated = PlanWriter(found, wanted.unit, wanted.clears).written()
    lines = [
        f"plan: {wanted.title}",
        "version: 0.1.0",
        f"summary: {wanted.title}, from a drawing.",
        f"units: {wanted.unit}",
        "access: open",
        "",
        f"# Made from {wanted.file}. What is guessed says so; change it where it is wrong.",
        "sizes:",
        *(f"  {each.size}: thickness({each.name})" for each in found.sheets),
        "",
        "sheets:",
        *(_sheet(each, wanted) for each in found.sheets),
        "",
        *_relief(found, wanted),
        stated.parts,
    ]
    told = [each for each in stated.joints if not _is_told(each, wanted.ways)]
    joints = [*told, *wanted.ways]
    if joints:
        lines += [
            "",
            "joints:   # sets that follow their mates meet them; here is the rest",
        ]
        lines += [f"  - {each}" for each in joints]
    if found.stands is not None:
        how = found.stands
        label = next(
            name
            for part in found.parts
            for number, name in zip(part.numbers, part.labels, strict=True)
            if number == how.piece
        )
        way = f"{{piece: {label}, looks: {how.looks}, top: {how.top}}}"
        lines += ["", f"standing: {way}   # guessed: as it is drawn"]
    if wanted.steps:
        lines += [
            "",
            "# An order of straight moves, found; put your own words to it.",
            wanted.steps,
        ]
    lines += [
        "",
        "releases:",
        f"  0.1.0: {{date: {wanted.day.isoformat()}, changed: First draft.}}",
        "",
    ]
    drawings = {
        f"drawings/{name}.svg": shapes_svg({"outline": [body]}).decode()
        for name, body in stated.drawings.items()
    }
    return AdoptedText(plan="\n".join(lines), drawings=drawings)


def _is_told(joint: str, ways: Sequence[str]) -> bool:
    """Tell whether a joint is stated again, with which way round."""
    return any(each.startswith(f"{joint[:-1]},") for each in ways)


def steps_text(steps: Sequence[Step], unplaced: Sequence[str]) -> str:
    """Return steps as a plan states them; one more for pieces that nothing tells the place of.

    Empty where there is none of either.
    """
    if not steps and not unplaced:
        return ""
    lines = ["steps:"]
    for step in steps:
        lines += _step(step.title, [each.name for each in step.add], _FOUND)
    if unplaced:
        lines += _step("Put on what is left", unplaced, _LEFT)
    return "\n".join(lines)


def _step(title: str, added: Sequence[str], text: str) -> list[str]:
    return [f"  - title: {title}", f"    add: [{', '.join(added)}]", f"    text: {text}"]


def _sheet(sheet: Sheet, wanted: Wanted) -> str:
    bought, drawn = wanted.bought[sheet.name], sheet.drawn
    least = min(drawn.mm, max(bought.least, drawn.mm - _AROUND))
    most = max(drawn.mm, min(bought.most, drawn.mm + _AROUND))
    unit = wanted.unit
    size = " x ".join(number_text(each, unit) for each in bought.size)
    fit = drawn.fit if drawn.fit > 0 else 0.1
    ends = f"{_reading(least, unit)} to {_reading(most, unit)}"
    return (
        f"  {sheet.name}: {{stock: {bought.stock}, size: {size}, published-for: {ends}, "
        f"drawn-for: {_reading(drawn.mm, unit)}, fit: {_reading(fit, unit)}}}"
    )


def _reading(mm: float, unit: str) -> str:
    return digits(mm / 25.4, 4) if unit == "in" else digits(mm, 3)


def _relief(found: Adopted, wanted: Wanted) -> list[str]:
    radius, stated = found.relief, f"relief: {wanted.relief.text}"
    if radius is None and not wanted.relief.cutter:
        return []
    if radius is None:
        guess = "# guessed: no corner is relieved in the drawing, and the sheet is thin."
        return [guess, stated, ""]
    count = f"# {found.reliefs} corners are relieved in the drawing, radius {digits(radius, 2)} mm."
    return [count, stated, ""]
