"""Writes frozen layouts beside their plans; nothing that a person made is lost on the way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import chain, count
from pathlib import Path

from kerfolio.basis.place import Place
from kerfolio.disk.put import put


@dataclass(frozen=True, slots=True, kw_only=True)
class Fresh:
    """A layout that was computed anew, as it is to be frozen: plain, so that it can be kept.

    ``file`` is its place in the workshop, ``text`` what is written there and ``why``; ``lying`` is
    the digest of its places, ``sheets`` how many it takes, ``engine`` what laid it out.
    """

    file: str
    text: str
    why: str
    lying: str
    sheets: int
    engine: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Frozen:
    """A layout written to ``file``.

    ``spare`` is where the one it replaced was kept, ``reason`` why it was; None where that one can
    be computed again.
    """

    file: Path
    fresh: Fresh
    spare: Path | None = None
    reason: str = ""


def freeze_layouts(folder: Path, layouts: Iterable[Fresh]) -> tuple[Frozen, ...]:
    """Write layouts beside their plans.

    One that was moved by hand, or laid out by an engine asked for, is kept beside it as
    ``layout.previous.json``. Raises OSError when the disk refuses.
    """
    return tuple(_frozen(folder, each) for each in layouts)


def _frozen(folder: Path, fresh: Fresh) -> Frozen:
    file = folder / fresh.file
    # The file may have been edited since the plan was read.
    old = file.read_bytes() if file.is_file() else b""
    reason = reason_to_keep(old.decode("utf-8", "replace"), fresh)
    spare = _spare(file, old) if reason else None
    if spare:
        put(spare, old)
    put(file, fresh.text.encode())
    return Frozen(file=file, fresh=fresh, spare=spare, reason=reason)


def reason_to_keep(old: str, fresh: Fresh) -> str:
    """Return what would be lost of the layout that stands there, in words; empty if nothing."""
    if not old.strip() or old == fresh.text:
        return ""
    from kerfolio.layouts.frozen import lost_with  # which takes long to load

    return lost_with(old, Place(fresh.file), fresh.lying)


def _spare(file: Path, content: bytes) -> Path:
    """Return the first name beside a file that is free, or holds the same already."""
    ends = chain(("",), (f"-{number}" for number in count(2)))
    spares = (file.with_name(f"{file.stem}.previous{end}.json") for end in ends)
    return next(each for each in spares if not each.exists() or each.read_bytes() == content)
