"""The folder that a command writes for the maker alone: what it may hold, and where it may lie."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.disk.out_folder import is_site, out_faults
from kerfolio.publishing.refusals import among_sources

_OF_VIEWERS = (".DS_Store", "Thumbs.db", "desktop.ini")
"""Files that a system's file viewer lays into folders that were looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Writer:
    """A command with a folder of its own: ``name`` of one run, ``what`` it writes.

    ``wrote`` tells whether an earlier run may have written a file of that name.
    """

    name: str
    what: str
    wrote: Callable[[str], bool]


def folder_faults(workshop: Path, out: Path, writer: Writer) -> Iterator[Finding]:
    """Refuse a folder that holds something else or is public, so that nothing is lost or leaks."""
    yield from out_faults(out, partial(_stranger, wrote=writer.wrote), writer.name)
    yield from among_sources(workshop, out, "--out")
    if any(is_site(each) for each in out.resolve().parents):
        message = f"{writer.what} would lie inside a site"
        yield error("out-in-site", message, Place(str(out)), "Name another --out.")


def _stranger(out: Path, wrote: Callable[[str], bool]) -> str:
    """Return the first file of a folder that neither such a run nor a file viewer wrote.

    A link is a stranger wherever it leads.
    """
    strangers = (
        each.relative_to(out).as_posix()
        for each in out.rglob("*")
        if each.is_symlink() or not (each.is_dir() or _is_known(each, out, wrote))
    )
    return min(strangers, default="")


def _is_known(file: Path, out: Path, wrote: Callable[[str], bool]) -> bool:
    return file.name in _OF_VIEWERS or wrote(file.relative_to(out).as_posix())
