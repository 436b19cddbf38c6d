"""Which of several arrangements is meant, where as much meets in each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.shape import Question
from kerfolio.adopting.together import Arrangement
from kerfolio.geometry.rigid import Rigid, Vector, dot

_WORDS: dict[str, Vector] = {
    "up": (0.0, 1.0, 0.0),
    "down": (0.0, -1.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "forward": (0.0, 0.0, 1.0),
    "back": (0.0, 0.0, -1.0),
}


_NOWHERE = "nothing holds it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """The arrangement that was chosen, and what was asked on the way."""

    arranged: Arrangement
    questions: tuple[Question, ...] = ()


def choices(
    parts: Sequence[PartPlan], ways: Sequence[Arrangement], answers: Mapping[str, str]
) -> Choice:
    """Return which of the best arrangements is meant: each question rules some out.

    Where pieces of one part may lie in a row they do. Pieces as drawn, top up, are likelier than
    others, and large ones likelier than small ones.
    """
    best = ways[0]
    most = (len(best.poses), best.worth, best.regular)
    left = [each for each in ways if (len(each.poses), each.worth, each.regular) == most]
    left.sort(key=lambda each: (-_as_drawn(each), -_placed_area(parts, each)))
    questions = []
    first = _label(parts, next(iter(left[0].poses)))
    for part in parts:
        lies = [_lies(part, each) for each in left]
        kinds = list(dict.fromkeys(lies))
        if len(kinds) < 2:
            continue
        answers_here = _in_words(kinds)
        question = Question(
            key=f"lies {part.name}",
            words=f"how does `{part.name}` go, as `{first}` is drawn?",
            answers=answers_here,
            about=part.name,
        )
        questions.append(question)
        given = answers.get(question.key, question.default)
        taken = answers_here.index(given) if given in answers_here else 0
        left = [each for each, how in zip(left, lies, strict=True) if how == kinds[taken]]
    return Choice(arranged=left[0], questions=tuple(questions))


def _label(parts: Sequence[PartPlan], number: int) -> str:
    for part in parts:
        for own, label in zip(part.numbers, part.labels, strict=True):
            if own == number:
                return label
    return ""


def _as_drawn(state: Arrangement) -> int:
    """Return how many pieces point, as drawn, up where the first piece's drawing does."""
    return sum(pose.y[1] > 0.9 for pose in state.poses.values())


def _placed_area(parts: Sequence[PartPlan], state: Arrangement) -> int:
    """Return how much of a drawing has a place, in cm2: of two boards that go in, the larger."""
    sizes = ((part, part.made.draft.size) for part in parts)
    every = (w * h * len(state.poses.keys() & set(part.numbers)) for part, (w, h) in sizes)
    return round(sum(every) / 100)


_Lie = tuple[tuple[int, int, int], str, str]
"""How a piece lies, as the first piece is drawn: its middle (mm), where its top and face look."""


def _lies(part: PartPlan, state: Arrangement) -> tuple[_Lie, ...]:
    return tuple(sorted(_told(part, state)))


def _told(part: PartPlan, state: Arrangement) -> Iterator[_Lie]:
    for number in part.numbers:
        pose = state.poses.get(number)
        if pose is not None:
            body = state.bodies[number]
            alike = min((pose.after(each) for each in body.selves), key=_order)
            x, y, z = alike.point((*_middle(part), body.thickness / 2))
            yield (round(x), round(y), round(z)), _word(alike.y), _word(alike.z)


def _in_words(kinds: Sequence[tuple[_Lie, ...]]) -> tuple[str, ...]:
    """Return each way to lie in words: only what tells it from the others."""
    common = set(kinds[0]).intersection(*map(set, kinds))
    rows = [[lie for lie in each if lie not in common] for each in kinds]
    columns = [[lie[k] for each in rows for lie in each] for k in range(3)]
    differ = [len({tuple(lie[k] for lie in each) for each in rows}) > 1 for k in range(3)]
    shown = [k for k in range(3) if differ[k] and columns[k]] or [0]
    return tuple(
        "; ".join(_piece_in_words(lie, shown) for lie in each) if each else _NOWHERE
        for each in rows
    )


def _piece_in_words(lie: _Lie, shown: Sequence[int]) -> str:
    (x, y, z), top, face = lie
    words = (f"at {x} and {y}, {abs(z)} {'behind' if z < 0 else 'before'} it", "", "")
    told = [words[0], f"its top {top}", f"its show face {face}"]
    return ", ".join(told[k] for k in shown)


def _order(pose: Rigid) -> tuple[float, ...]:
    """Return what brings a placement with the drawing's top up and its show face forward first."""
    return (-round(pose.y[1], 2), -round(pose.z[2], 2), -round(pose.x[0], 2))


def _middle(part: PartPlan) -> tuple[float, float]:
    width, height = part.made.draft.size
    return width / 2, height / 2


def _word(along: Vector) -> str:
    return max(_WORDS, key=lambda word: round(dot(along, _WORDS[word]), 6))
