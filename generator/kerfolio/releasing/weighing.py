"""What kind of release a change asks for, and whether the maker's own word for it fits."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.model.plan import Release
from kerfolio.releasing.change import ReleaseChange, Weight
from kerfolio.releasing.stated import CHANGE, FIX, REDESIGN


def step_for(change: ReleaseChange) -> str:
    """Return the step that a change asks for; empty where only the maker knows.

    Where pieces are to be cut anew either the older files were wrong, or it is another thing now.
    """
    if change.class_ is Weight.WORDS:
        return FIX
    return CHANGE if change.class_ is Weight.BETTER else ""


def doubts(change: ReleaseChange, before: Release, after: Release) -> Iterator[str]:
    """Yield what speaks against the class that a maker gave a release, as a whole sentence."""
    anew, cut = change.class_ is Weight.CORRECTION, change.class_ is not Weight.WORDS
    if after.errata and not cut:
        yield "it is called a correction, and no piece and no list changed"
    elif after.errata and not anew:
        yield "it is called a correction, and every older piece still fits"
    if anew and not after.errata and step_between(before, after) != REDESIGN:
        yield "older pieces do not fit, and it is neither called a correction nor a redesign"
    if change.class_ is Weight.BETTER and not after.errata and _is_fix(before, after):
        yield "it is numbered as a fix, and there is something new to cut or to buy"


def step_between(before: Release, after: Release) -> str:
    """Return which step leads from one version to another, by the first number that differs."""
    numbers = zip(before.numbers, after.numbers, strict=False)
    place = next((index for index, (was, now) in enumerate(numbers) if was != now), 2)
    return (REDESIGN, CHANGE, FIX)[min(place, 2)]


def _is_fix(before: Release, after: Release) -> bool:
    return step_between(before, after) == FIX
