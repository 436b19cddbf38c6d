"""From the shapes of a drawing to a plan: the whole way, without a file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

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
    AS_LONG,
    LOOSE,
    Recognised,
    housing_depths,
    mortises,
    recognised,
    with_tongues,
)
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.shape import Dropped, Question
from kerfolio.adopting.sheets import sheets_of
from kerfolio.adopting.stands import Standing, standing
from kerfolio.adopting.thicknesses import Thickness, thicknesses
from kerfolio.adopting.together import Arrangement, Piece, arranged
from kerfolio.adopting.tongues import with_own_tongues
from kerfolio.adopting.touching import touches
from kerfolio.adopting.wedges import Wedge, wedges
from kerfolio.geometry.measure import bounds
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
    stands: Standing | None
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
    drawn = with_counts(drafts(taken_apart.cuttings, _is_one_sided), taken_apart.texts)
    found, names, taken_apart = _wanted(drawn, taken_apart, given)
    thick = thicknesses(found)[: len(SHEET_NAMES)]
    deep, long = housing_depths(found), mortises(found, thick)
    plain = [recognised(each, thick, deep, long) for each in found]
    made = [with_tongues(each, plain) for each in plain]
    sheets = _sheets(thick)
    ways = _together(made, thick)
    parts = tuple(_parts(found, made, names, sheets, ways[0] if ways else _NOWHERE))
    choice = choices(parts, ways, given) if ways else Choice(arranged=_NOWHERE)
    parts, best = with_own_tongues(parts, choice.arranged)
    stands, asked = standing(parts, best, given)
    fixed = frozenset(i for i, part in enumerate(parts) if is_drawn(part))
    driven, touching = wedges(parts, best), touches(parts, best)
    made_up = Adopted(
        cleaned=clean,
        nested=taken_apart,
        sheets=sheets,
        parts=parts,
        arranged=best,
        wedges=driven,
        stands=stands,
        follows={
            each.name: following(parts, best, driven, touching, each.name, fixed) for each in sheets
        },
        questions=(*clean.questions, *taken_apart.questions, *choice.questions, *asked),
    )
    return replace(made_up, questions=(*made_up.questions, *_alone(made_up)))


_PUT_ON, _LEAVE = "a piece of it, put on last", "no piece of it: leave it out"


def _alone(found: Adopted) -> Iterator[Question]:
    """Yield a question for each part that nothing places, where others are joined."""
    for part in found.parts if len(found.arranged.poses) > 1 else ():
        if not set(part.labels).isdisjoint(found.unplaced):
            yield Question(
                key=f"alone {part.name}",
                words=f"nothing tells where `{part.name}` goes: what is it?",
                answers=(_PUT_ON, _LEAVE),
                about=part.name,
            )


def _wanted(
    drawn: Sequence[Draft], taken: Nested, answers: Mapping[str, str]
) -> tuple[list[Draft], list[Called], Nested]:
    """Return the parts that belong to the thing, their names, and what else is drawn."""
    kept: list[tuple[Draft, Called]] = []
    dropped = list(taken.dropped)
    for draft, name in zip(drawn, called(drawn, taken.texts), strict=True):
        if answers.get(f"alone {name.name}") != _LEAVE:
            kept.append((draft, name))
            continue
        for each in draft.cuttings:
            at, place = bounds(each.outline.contour).centre, each.outline.place
            why = "it is no piece of the thing"
            dropped.append(Dropped(what=f"`{name.name}`", why=why, at=at, place=place))
    parts, names = [each for each, _ in kept], [each for _, each in kept]
    return parts, names, replace(taken, dropped=tuple(dropped))


_NOWHERE = Arrangement(poses={}, bodies={})


def _is_one_sided(cutting: Cutting) -> bool:
    return any(depth_of(each.names) is not None for each in cutting.openings)


def _sheets(thick: Sequence[Thickness]) -> tuple[Sheet, ...]:
    names = SHEET_NAMES[: len(thick)]
    return tuple(
        Sheet(name=name, size="t" if index == 0 else f"t_{name}", drawn=drawn)
        for index, (name, drawn) in enumerate(zip(names, thick, strict=True))
    )


def _together(made: Sequence[Recognised], thick: Sequence[Thickness]) -> tuple[Arrangement, ...]:
    """Return how parts go together; with slots much longer than tabs only where that joins more."""
    snug = arranged(_pieces(made, thick, AS_LONG))
    count = sum(len(part.draft.cuttings) for part in made)
    if snug and len(snug[0].poses) == count:
        return snug
    loose = arranged(_pieces(made, thick, LOOSE))
    return loose if loose and len(loose[0].poses) > len(snug[0].poses) else snug


def _pieces(made: Sequence[Recognised], thick: Sequence[Thickness], play: float) -> list[Piece]:
    found: list[Piece] = []
    for part in made:
        which = sheets_of(part, made, thick)
        bodies = tuple(Body(part, thick[i].mm, play) for i in which if i < len(thick))
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
