"""The last step of reading a drawing, the same for every format: joining, judging, naming."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from kerfolio.basis.budgets import DRAWN_POINTS, ELEMENTS, NESTING
from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error, in_order, note
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.geometry.chain import chained, doubles
from kerfolio.geometry.contour import Contour
from kerfolio.model.outline import Drawing, DrawnElement, DrawnText
from kerfolio.model.statement import Named
from kerfolio.reading.drawn_faults import element_findings

Grouped = tuple[tuple[str, ...], DrawnElement]
"""An element with what it may be joined within: its layer, or its groups."""


class BeyondBudgetError(Exception):
    """A drawing is larger than is taken; carries the finding. Never leaves a reader."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def keep_within(fault: Complaint | None, place: Place) -> None:
    """Raise BeyondBudgetError where something is beyond its budget."""
    if fault is not None:
        raise BeyondBudgetError(error("drawing-too-large", str(fault), place, fault.advice))


@dataclass(slots=True)
class Gathered:
    """The elements found so far and what came up on the way.

    ``visited`` counts everything looked at, as often as it is used: groups, clones, inserts and
    paths. ``unread`` are the names of what had to be left out.
    """

    elements: list[Grouped] = field(default_factory=list)
    texts: list[DrawnText] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    visited: int = 0
    points: int = 0
    unread: set[str] = field(default_factory=set)

    def visit(self, place: Place, depth: int, count: int = 1) -> None:
        """Count what is about to be expanded. Raises BeyondBudgetError."""
        self.visited += count
        keep_within(ELEMENTS.beyond(self.visited), place)
        keep_within(NESTING.beyond(depth), place)

    def leave_out(self, finding: Finding, names: Iterable[str]) -> None:
        """Tell why something is left out; nothing that names it is blamed again."""
        self.findings.append(finding)
        self.unread.update(names)

    def add(self, groups: tuple[str, ...], element: DrawnElement) -> None:
        """Keep an element. Raises BeyondBudgetError."""
        self.points += len(element.vertices)
        keep_within(DRAWN_POINTS.beyond(self.points), element.place)
        self.elements.append((groups, element))


def finished(
    file: str, gathered: Gathered, *, art: bool, guides: Sequence[Named] = ()
) -> tuple[Drawing | None, tuple[Finding, ...]]:
    """Return the drawing of the elements found, loose paths joined, with all findings in order.

    Elements of the ``guides`` named are left out. The drawing is None when it holds nothing.
    """
    whole = Place(file)
    every, findings = gathered.elements, [*gathered.findings]
    findings += _unknown_guides(every, [g for g in guides if g.name not in gathered.unread], file)
    left_out = {each.name for each in guides}
    found = [each for each in every if left_out.isdisjoint(each[1].every_name)]
    if not found and gathered.unread:
        return None, in_order(findings)
    if not found:
        advice = "Draw the outline as a path; text and pictures are not cut."
        nothing = error("empty-drawing", "no path in the drawing", whole, advice)
        return None, in_order((*findings, nothing))
    once, doubled = _once(found)
    elements = _numbered(_joined(once))
    judged = () if art else element_findings(elements)
    drawing = Drawing(
        file=file,
        elements=elements,
        texts=tuple(gathered.texts),
        unread=frozenset(gathered.unread),
    )
    return drawing, in_order((*findings, *doubled, *judged))


def _unknown_guides(
    found: Iterable[Grouped], guides: Sequence[Named], file: str
) -> Iterator[Finding]:
    known = {name for _, each in found for name in each.every_name} if guides else set()
    for each in guides:
        if each.name not in known:
            message, advice = f"no guides `{each.name}` in `{file}`", did_you_mean(each.name, known)
            yield error("no-element", message, each.place, advice)


def _once(found: Sequence[Grouped]) -> tuple[list[Grouped], list[Finding]]:
    """Return the elements without those drawn twice over in one group, and a note for each."""
    paths = [Contour(element.vertices, element.closed) for _, element in found]
    dropped: set[int] = set()
    for members in _groups(found, range(len(found))):
        dropped.update(members[i] for i in doubles([paths[index] for index in members]))
    notes = []
    for index in sorted(dropped):
        element = found[index][1]
        message = f"`{element.name}` is drawn twice: one is left out"
        notes.append(note("doubled-path", message, element.place, "Delete one of the two."))
    return [each for index, each in enumerate(found) if index not in dropped], notes


def _groups(found: Sequence[Grouped], members: Iterable[int]) -> list[list[int]]:
    """Return positions parted by group, in the order of the file."""
    groups: dict[tuple[str, ...], list[int]] = {}
    for index in members:
        groups.setdefault(found[index][0], []).append(index)
    return list(groups.values())


def _joined(found: Sequence[Grouped]) -> tuple[DrawnElement, ...]:
    """Return the elements in order, loose paths of one group joined where their ends meet."""
    made = {index: element for index, (_, element) in enumerate(found)}
    loose = [i for i, element in made.items() if not element.closed and len(element.vertices) > 1]
    for members in _groups(found, loose):
        for chain in chained([Contour(made[i].vertices, closed=False) for i in members]):
            if len(chain.members) > 1:
                _put(made, sorted(members[m] for m in chain.members), chain.contour)
    return tuple(made[index] for index in sorted(made))


def _numbered(elements: Iterable[DrawnElement]) -> tuple[DrawnElement, ...]:
    """Return elements whose names are all different: the second ``knob`` is ``knob.2``."""
    taken: set[str] = set()
    last: dict[str, int] = {}
    result = []
    for element in elements:
        name, number = element.name, last.get(element.name, 1)
        while name in taken:
            number += 1
            name = f"{element.name}.{number}"
        taken.add(name)
        last[element.name] = number
        result.append(replace(element, name=name))
    return tuple(result)


def _put(made: dict[int, DrawnElement], members: list[int], contour: Contour) -> None:
    """Put a joined path in the place of its first member; it answers to all their names."""
    names = tuple(dict.fromkeys(n for index in members for n in made[index].names))
    first = made[members[0]]
    for index in members[1:]:
        del made[index]
    made[members[0]] = replace(first, names=names, vertices=contour.vertices, closed=contour.closed)
