"""The ways to get the parts cut: a reader chooses one, and sees what it takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.chapter import EVERYONE, Chapter, Who

WAYS = (Who.ROUTER, Who.SAW, Who.HAND, Who.SHOP, Who.LOOK)
"""What readers may say of themselves, in the order of what takes least work by hand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """A way by its ``name``: the chapter that is told with it, and those it shares with others."""

    name: Who
    title: str
    chapter: Chapter | None
    shared: tuple[Chapter, ...]


def paths_of(chapters: Sequence[Chapter], reader: Reader) -> tuple[Path, ...]:
    """Return every way; a chapter called like a way is told with it."""
    homes = {each.id: each for each in chapters if each.id in set(WAYS)}
    return tuple(
        Path(
            name=name,
            title=say(reader, f"paths-{name}"),
            chapter=homes.get(name),
            shared=tuple(
                each
                for each in chapters
                if each.who != EVERYONE and name in each.who and each.id != name
            ),
        )
        for name in WAYS
    )


def beside_paths(chapters: Sequence[Chapter]) -> tuple[Chapter, ...]:
    """Return the chapters that are told by themselves, not with a way."""
    return tuple(each for each in chapters if each.id not in set(WAYS))
