"""The ways to get the parts cut: a reader chooses one, and sees what it takes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.document.chapter import EVERYONE, Chapter, Who

TITLES: Mapping[Who, str] = {
    Who.ROUTER: "I have a CNC router",
    Who.SAW: "I have a table saw or a track saw",
    Who.HAND: "I have a drill, a jigsaw and paper",
    Who.SHOP: "A shop cuts for me",
    Who.LOOK: "I only want to look",
}
"""What readers say of themselves, in the order of what takes least work by hand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """A way by its ``name``: the chapter that is told with it, and those it shares with others."""

    name: Who
    title: str
    chapter: Chapter | None
    shared: tuple[Chapter, ...]


def paths_of(chapters: Sequence[Chapter]) -> tuple[Path, ...]:
    """Return every way; a chapter called like a way is told with it."""
    homes = {each.id: each for each in chapters if each.id in set(TITLES)}
    return tuple(
        Path(
            name=name,
            title=title,
            chapter=homes.get(name),
            shared=tuple(
                each
                for each in chapters
                if each.who != EVERYONE and name in each.who and each.id != name
            ),
        )
        for name, title in TITLES.items()
    )


def beside_paths(chapters: Sequence[Chapter]) -> tuple[Chapter, ...]:
    """Return the chapters that are told by themselves, not with a way."""
    return tuple(each for each in chapters if each.id not in set(TITLES))
