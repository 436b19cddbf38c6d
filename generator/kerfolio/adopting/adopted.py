"""From the shapes of a drawing to a plan: the whole way, without a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.adopting.alike import Draft, drafts
from kerfolio.adopting.choosing import Choice, choices
from kerfolio.adopting.cleaned import Cleaned
from kerfolio.adopting.depths import depth_of
from kerfolio.adopting.following import Following, following
from kerfolio.adopting.meeting import Body
from kerfolio.adopting.naming import Called, called, with_counts
from kerfolio.adopting.nested import Cutting, Nested, nested
from kerfolio.adopting.outlined import is_drawn
from kerfolio.adopting.recognised import (
    Recognised,
    Thickness,
    housing_depths,
    mortises,
    recognised,
    thicknesses,
    with_tongues,
)
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.shape import Question
from kerfolio.adopting.sheets import sheets_of
from kerfolio.adopting.together import Arrangement, Piece, arranged
from kerfolio.adopting.tongues import with_own_tongues
from kerfolio.adopting.touching import touches
from kerfolio.adopting.wedges import Wedge, wedges
from kerfolio.model.outline import DrawnText

SHEET_NAMES = ("ply", "thin", "third", "fourth")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A sheet: its name, the name of its thickness among the sizes, and what is drawn of it."""

    name: str
    size: str
    drawn: Thickness


@dataclass(frozen=True, slots=True, kw_only=True)
class Adopted:
    """What a drawing is: sheets, parts, how they go together, what follows, what is asked."""

    cleaned: Cleaned
    nested: Nested
    sheets: tuple[Sheet, ...]
    parts: tuple[PartPlan, ...]
    arranged: Arrangement
    wedges: tuple[Wedge, ...]
    follows: Mapping[str, Following]
    questions: tuple[Question, ...]

    @property
    def relief(self) -> float | None:
        """The radius of the reliefs that the drawing has, mm: the commonest; None without one."""
        radii = [round(each, 2) for cutting in self.nested.cuttings for each in cutting.reliefs]
        return max(set(radii), key=lambda radius: (radii.count(radius), -radius), default=None)

    @property
    def reliefs(self) -> int:
        """How many reliefs the drawing has."""
        return sum(len(cutting.reliefs) for cutting in self.nested.cuttings)

    @property
    def unplaced(self) -> tuple[str, ...]:
        """The pieces that nothing joins to the others, by their labels."""
        alone = len(self.arranged.poses) < 2
        placed = {*self.arranged.poses, *(each.piece for each in self.wedges)}
        return tuple(
            label
            for part in self.parts
            for number, label in zip(part.numbers, part.labels, strict=True)
            if alone or number not in placed
        )


def adopted(
    clean: Cleaned,
    texts: Sequence[DrawnText],
    sold: Sequence[tuple[float, float]],
    answers: Mapping[str, str],
) -> Adopted:
    """Return what cleaned shapes are; ``sold`` are the sizes of sheets, mm.

    ``answers`` are given to questions by their keys; what is not answered is taken as it is
    likeliest.
    """
    given = dict(answers)
    taken_apart = nested(clean.closed, clean.lines, texts, sold, given)
    found = with_counts(drafts(taken_apart.cuttings, _is_one_sided), taken_apart.texts)
    thick = thicknesses(found)[: len(SHEET_NAMES)]
    deep, long = housing_depths(found), mortises(found, thick)
    plain = [recognised(each, thick, deep, long) for each in found]
    made = [with_tongues(each, plain) for each in plain]
    sheets = _sheets(thick)
    pieces = list(_pieces(made, thick))
    ways = arranged(pieces)
    names = called(found, taken_apart.texts)
    parts = tuple(_parts(found, made, names, sheets, ways[0] if ways else _NOWHERE))
    choice = choices(parts, ways, given) if ways else Choice(arranged=_NOWHERE)
    parts, best = with_own_tongues(parts, choice.arranged)
    drawn = frozenset(i for i, part in enumerate(parts) if is_drawn(part))
    driven, touching = wedges(parts, best), touches(parts, best)
    return Adopted(
        cleaned=clean,
        nested=taken_apart,
        sheets=sheets,
        parts=parts,
        arranged=best,
        wedges=driven,
        follows={
            each.name: following(parts, best, driven, touching, each.name, drawn)
            for each in sheets
        },
        questions=(*clean.questions, *taken_apart.questions, *choice.questions),
    )


_NOWHERE = Arrangement(poses={}, bodies={})


def _is_one_sided(cutting: Cutting) -> bool:
    return any(depth_of(each.names) is not None for each in cutting.openings)


def _sheets(thick: Sequence[Thickness]) -> tuple[Sheet, ...]:
    names = SHEET_NAMES[: len(thick)]
    return tuple(
        Sheet(name=name, size="t" if index == 0 else f"t_{name}", drawn=drawn)
        for index, (name, drawn) in enumerate(zip(names, thick, strict=True))
    )


def _pieces(made: Sequence[Recognised], thick: Sequence[Thickness]) -> list[Piece]:
    found: list[Piece] = []
    for part in made:
        which = sheets_of(part, made, thick)
        bodies = tuple(Body(part, thick[i].mm) for i in which if i < len(thick))
        for _ in part.draft.cuttings:
            found.append(Piece(bodies, len(found)))
    return [each for each in found if each.bodies]


def _parts(
    found: Sequence[Draft],
    made: Sequence[Recognised],
    names: Sequence[Called],
    sheets: Sequence[Sheet],
    best: Arrangement,
) -> list[PartPlan]:
    parts: list[PartPlan] = []
    first = 0
    for draft, part, name in zip(found, made, names, strict=True):
        numbers = tuple(range(first, first + len(draft.cuttings)))
        first += len(numbers)
        mm = next((best.bodies[n].thickness for n in numbers if n in best.bodies), None)
        sheet = next(
            (each for each in sheets if each.drawn.mm == mm), sheets[0] if sheets else None
        )
        if len(numbers) == 1:
            labels: tuple[str, ...] = (name.name,)
        else:
            ends = name.pieces or tuple(str(i + 1) for i in range(len(numbers)))
            labels = tuple(f"{name.name}.{end}" for end in ends)
        parts.append(
            PartPlan(
                name=name.name,
                labels=labels,
                numbers=numbers,
                sheet=sheet.name if sheet else SHEET_NAMES[0],
                thickness=sheet.drawn.mm if sheet else 0.0,
                made=part,
            )
        )
    return parts
