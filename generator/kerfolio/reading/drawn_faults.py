"""Faults of drawn paths as findings that name the element; the same for every drawing format."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from kerfolio.basis.finding import Finding, warning
from kerfolio.basis.measures import precise, spot
from kerfolio.basis.said import ByUnit, Text, said
from kerfolio.geometry.checks import CROSSING, OPEN, ZERO_AREA, Fault, faults
from kerfolio.geometry.contour import Contour
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
                name = element.name
                found.append(warning(rule, message, element.place, advice, subject=name))
    return tuple(found)


def _open(name: str, fault: Fault) -> tuple[Text, Text]:
    advice = (
        "Close the path in the drawing, or name it or its layer under `guides` in the part's "
        "`drawing`; only an engraving may stay open."
    )
    apart = precise("gap", fault.size)
    return said("`{}` is open: its ends are {} apart", name, apart), advice


def _crossing(name: str, fault: Fault) -> tuple[Text, Text]:
    unit = ByUnit("mm", "inches")
    advice = said("Move the points apart ({} from the drawing's lower left).", unit)
    return said("`{}` crosses itself at {}", name, spot(*fault.at)), advice


def _empty(name: str, fault: Fault) -> tuple[Text, Text]:
    advice = said("Delete it, or draw it anew (at {}).", spot(*fault.at))
    return f"`{name}` encloses no area", advice


_WORDS: dict[str, tuple[str, Callable[[str, Fault], tuple[Text, Text]]]] = {
    OPEN: ("open-path", _open),
    CROSSING: ("self-crossing", _crossing),
    ZERO_AREA: ("zero-area", _empty),
}
