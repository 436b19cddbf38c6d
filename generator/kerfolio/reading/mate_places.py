"""Where a set has its places that another one follows, as expressions over the plan's sizes.

Nothing has a value before the plan is settled: all of it is text made from text.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from kerfolio.model.feature import EdgeLine, Feature, Hole, Notch, Tabs
from kerfolio.model.statement import Amount, Spot
from kerfolio.reading.sums import half, minus, plus, times

_WHOLE = re.compile("[1-9][0-9]{0,2}")
_UPRIGHT = ("left", "right")


class CannotFollowError(Exception):
    """A set that cannot be followed as it is stated; ``advice`` says what to write instead."""

    def __init__(self, message: str, advice: str) -> None:
        super().__init__(message)
        self.advice = advice


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """The places of a set along one axis, from the 0 that it is measured from.

    ``inner`` is how far the middle of one lies from its place: a tab is stated by where it begins.
    ``middle`` is the place half way between first and last. Where so many as ``count`` are known
    only when the plan is settled, ``places`` is the first one alone and ``step`` leads on.
    """

    places: tuple[str, ...]
    middle: str
    inner: str = "0"
    count: Amount | None = None
    step: str = "0"

    def only(self, number: int) -> Axis:
        """Return the one of a number, from 1 on."""
        place = self.places[number - 1]
        return replace(self, places=(place,), middle=place)

    def offsets(self, *, from_zero: bool) -> tuple[str, ...]:
        """Return how far the middle of each lies from the middle of all, or from their 0."""
        if from_zero:
            return tuple(plus(each, self.inner) for each in self.places)
        return tuple(minus(each, self.middle) for each in self.places)


def edge_axis(feature: Feature) -> Axis:
    """Return the places of tabs or notches along their edge. Raises CannotFollowError."""
    cutting, repeat = feature.cutting, feature.repeat
    assert isinstance(cutting, Tabs | Notch), "a table lets no other kind come here"
    line = _Line(
        stated=tuple(each.text for each in cutting.at),
        step=_along(repeat.step, cutting.edge) if repeat else "0",
        mirror=_mirrored_along(feature, cutting.edge),
        wide=cutting.width.text if isinstance(cutting, Tabs) else "0",
    )
    return _axis(feature, line)


def hole_axes(feature: Feature) -> tuple[Axis, Axis]:
    """Return the places of holes along x and along y. Raises CannotFollowError."""
    cutting, repeat, mirror = feature.cutting, feature.repeat, feature.mirror
    assert isinstance(cutting, Hole), "a table lets no other kind come here"
    along_x = _Line(
        stated=tuple(each.x.text for each in cutting.at),
        step=repeat.step.x.text if repeat else "0",
        mirror=mirror.x.text if mirror and mirror.x else "",
    )
    along_y = _Line(
        stated=tuple(each.y.text for each in cutting.at),
        step=repeat.step.y.text if repeat else "0",
        mirror=mirror.y.text if mirror and mirror.y else "",
    )
    return _axis(feature, along_x), _axis(feature, along_y)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """One axis of what is stated: places, how far a copy is off, and where it is mirrored.

    ``wide`` is how far one reaches from its place.
    """

    stated: tuple[str, ...]
    step: str = "0"
    mirror: str = ""
    wide: str = "0"


def _axis(feature: Feature, line: _Line) -> Axis:
    count = feature.repeat.count if feature.repeat else None
    if count is None or _WHOLE.fullmatch(count.text):
        return _listed(line, int(count.text) if count else 1, twice=feature.mirror is not None)
    if feature.mirror or len(line.stated) > 1:
        message = f"how many `{feature.name}` are is known only once sizes have their values"
        raise CannotFollowError(message, "Write the `count` of its `repeat` as a number.")
    (first,) = line.stated
    reach = times(minus(count.text, "1"), half(line.step))
    return Axis(
        places=(first,),
        middle=plus(first, reach),
        inner=half(line.wide),
        count=count,
        step=line.step,
    )


def _listed(line: _Line, copies: int, *, twice: bool) -> Axis:
    """Return an axis with every copy, in the order of their numbers: mirrored ones come last."""
    ones = [plus(each, times(str(k), line.step)) for each in line.stated for k in range(copies)]
    middle = ones[0] if len(ones) == 1 else half(plus(ones[0], ones[-1]))
    if twice and line.mirror:
        beyond = times("2", line.mirror)
        ones += [minus(minus(beyond, each), line.wide) for each in ones]
        middle = minus(line.mirror, half(line.wide))
    elif twice:
        ones += ones
    return Axis(places=tuple(ones), middle=middle, inner=half(line.wide))


def _along(step: Spot, edge: EdgeLine) -> str:
    if not edge.side:
        message = "repeats along an edge from one point to another cannot be followed"
        raise CannotFollowError(message, "List their places under `at` in place of `repeat`.")
    return step.y.text if edge.side in _UPRIGHT else step.x.text


def _mirrored_along(feature: Feature, edge: EdgeLine) -> str:
    if feature.mirror is None:
        return ""
    along = feature.mirror.y if edge.side in _UPRIGHT else feature.mirror.x
    if along is None or not edge.side:
        message = f"`{feature.name}` is mirrored on to another edge"
        raise CannotFollowError(message, "State those of each edge under a name of their own.")
    return along.text
