"""Faults of drawn paths as findings that name the element; the same for every drawing format."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from kerfolio.basis.finding import Finding, warning
from kerfolio.basis.lengths import mm_number
from kerfolio.geometry.checks import CROSSING, OPEN, ZERO_AREA, Fault, faults
from kerfolio.geometry.contour import Contour, Point
from kerfolio.model.outline import DrawnElement


def element_findings(elements: Iterable[DrawnElement]) -> tuple[Finding, ...]:
    """Return a warning for every open, self-crossing or empty path.

    They do not stop a publish by themselves: an engraving may well be open. Whoever gives a path
    a part to play that needs a sound one says so as an error.
    """
    found = []
    for element in elements:
        for fault in faults(Contour(element.vertices, element.closed)):
            if fault.kind in _WORDS:
                rule, words = _WORDS[fault.kind]
                message, advice = words(element.name, fault)
                found.append(warning(rule, message, element.place, advice))
    return tuple(found)


def spot(point: Point) -> str:
    """Return a point for people: ``120, 36.5``."""
    return f"{mm_number(point[0])}, {mm_number(point[1])}"


def _open(name: str, fault: Fault) -> tuple[str, str]:
    advice = "Close the path in the drawing; only an engraving may stay open."
    return f"`{name}` is open: its ends are {mm_number(fault.size, 2)} mm apart", advice


def _crossing(name: str, fault: Fault) -> tuple[str, str]:
    advice = "Move the points apart (mm from the drawing's lower left)."
    return f"`{name}` crosses itself at {spot(fault.at)} mm", advice


def _empty(name: str, fault: Fault) -> tuple[str, str]:
    return f"`{name}` encloses no area", f"Delete it, or draw it anew (at {spot(fault.at)} mm)."


_WORDS: dict[str, tuple[str, Callable[[str, Fault], tuple[str, str]]]] = {
    OPEN: ("open-path", _open),
    CROSSING: ("self-crossing", _crossing),
    ZERO_AREA: ("zero-area", _empty),
}
