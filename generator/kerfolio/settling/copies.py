"""Repeats and mirrors of a feature: numbered copies."""

from __future__ import annotations

from kerfolio.model.feature import Feature
from kerfolio.settling.scope import Scope, unsettled
from kerfolio.settling.shaped import Shaped, Shift, shifted

MOST_COPIES = 500


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
    count = scope.count(feature.repeat.count)
    if count > MOST_COPIES:
        message = f"`{feature.name}` is repeated {count} times, at most {MOST_COPIES}"
        raise unsettled("too-many-copies", message, feature.repeat.place, "Lower its `count`.")
    dx, dy = scope.point(feature.repeat.step)
    return [Shift(dx=index * dx, dy=index * dy) for index in range(count)]


def _mirrored(shift: Shift, feature: Feature, scope: Scope) -> Shift:
    mirror = feature.mirror
    if mirror is None:
        return shift
    x = scope.mm(mirror.x) if mirror.x else None
    y = scope.mm(mirror.y) if mirror.y else None
    return Shift(dx=shift.dx, dy=shift.dy, x=x, y=y)
