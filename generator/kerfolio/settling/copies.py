"""Repeats and mirrors of a feature: numbered copies."""

from __future__ import annotations

from kerfolio.basis.budgets import FINGERS, REPEATS
from kerfolio.model.feature import Feature, Fingers, places_of
from kerfolio.settling.scope import Scope, within
from kerfolio.settling.shaped import Shaped, Shift, shifted


def how_many(feature: Feature, scope: Scope) -> int:
    """Return how many a feature makes of its kind, repeats and mirrors counted; none is made.

    Raises SettlingError.
    """
    cutting = feature.cutting
    stated = finger_count(cutting, scope) if isinstance(cutting, Fingers) else places_of(cutting)
    return stated * copy_count(feature, scope)


def finger_count(cutting: Fingers, scope: Scope) -> int:
    """Return how many fingers and gaps a row has. Raises SettlingError."""
    count = scope.count(cutting.count, least=2)
    within(FINGERS, count, "too-many-fingers", cutting.count.place)
    return count


def copy_count(feature: Feature, scope: Scope) -> int:
    """Return how many copies repeats and mirrors make of a feature. Raises SettlingError."""
    return _repeat_count(feature, scope) * (2 if feature.mirror else 1)


def copies(feature: Feature, shapes: tuple[Shaped, ...], scope: Scope) -> tuple[Shaped, ...]:
    """Return every copy: repeats first, then the mirrored ones, numbered where there are several.

    Raises SettlingError.
    """
    repeated = [(each, shift) for each in shapes for shift in _repeats(feature, scope)]
    every = [*repeated, *((each, _mirrored(shift, feature, scope)) for each, shift in repeated)]
    wanted = every if feature.mirror else repeated
    if len(wanted) == 1:
        return (shifted(*wanted[0], feature.name),)
    return tuple(
        shifted(shaped, shift, f"{feature.name}.{number}")
        for number, (shaped, shift) in enumerate(wanted, start=1)
    )


def _repeats(feature: Feature, scope: Scope) -> list[Shift]:
    if feature.repeat is None:
        return [Shift()]
    count = _repeat_count(feature, scope)
    dx, dy = scope.point(feature.repeat.step)
    return [Shift(dx=index * dx, dy=index * dy) for index in range(count)]


def _repeat_count(feature: Feature, scope: Scope) -> int:
    if feature.repeat is None:
        return 1
    count = scope.count(feature.repeat.count)
    within(REPEATS, count, "too-many-copies", feature.repeat.place)
    return count


def _mirrored(shift: Shift, feature: Feature, scope: Scope) -> Shift:
    mirror = feature.mirror
    if mirror is None:
        return shift
    x = scope.mm(mirror.x) if mirror.x else None
    y = scope.mm(mirror.y) if mirror.y else None
    return Shift(dx=shift.dx, dy=shift.dy, x=x, y=y)
