"""The files of a bundle, gathered by folder, each folder with what it is for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import quote

_PURPOSES: dict[str, str] = {
    "": "Read these first.",
    "cut": (
        "Cut files for a router, one folder for each thickness of sheet; engravings alone, "
        "centred, in engravings."
    ),
    "templates": "Full-size paper templates to cut by, a file of all parts for each thickness.",
    "lists": "What to cut and what to buy, as tables that any spreadsheet opens.",
    "setup": "For the machine: where the sheet lies, which cutter, in which order.",
    "layout": "Pictures of every sheet with its pieces.",
    "model": "The whole thing in three dimensions.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BundleFile:
    """A file: what it is called inside its folder, and the link to it from the bundle's root."""

    name: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """The files under one name of a folder: ``17.8mm`` within ``cut``."""

    name: str
    files: tuple[BundleFile, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Folder:
    """A folder of the bundle; ``name`` is empty for the bundle's own files."""

    name: str
    purpose: str
    files: tuple[BundleFile, ...]
    shelves: tuple[Shelf, ...]

    @property
    def count(self) -> int:
        """How many files lie in it, at any depth."""
        return len(self.files) + sum(len(shelf.files) for shelf in self.shelves)


def folders(names: Iterable[str], order: tuple[str, ...] = ()) -> tuple[Folder, ...]:
    """Gather file names by folder; ``order`` is that of the shelves (the thicknesses)."""
    found: dict[str, dict[str, list[BundleFile]]] = {}
    for name in sorted(names):
        parts = name.split("/")
        folder = parts[0] if len(parts) > 1 else ""
        shelf = parts[1] if len(parts) > 2 else ""
        rest = "/".join(parts[2:] if shelf else parts[1:] if folder else parts)
        file = BundleFile(name=rest, href=quote(name))
        found.setdefault(folder, {}).setdefault(shelf, []).append(file)
    known = [*_PURPOSES, *sorted(found.keys() - _PURPOSES.keys())]
    return tuple(_folder(name, found[name], order) for name in known if name in found)


def _folder(name: str, shelves: dict[str, list[BundleFile]], order: tuple[str, ...]) -> Folder:
    named = sorted(shelves.keys() - {""}, key=lambda each: _place(each, order))
    return Folder(
        name=name,
        purpose=_PURPOSES.get(name, ""),
        files=tuple(shelves.get("", ())),
        shelves=tuple(Shelf(name=each, files=tuple(shelves[each])) for each in named),
    )


def _place(shelf: str, order: tuple[str, ...]) -> tuple[int, str]:
    """Shelves that are no thickness (the coupon) come first: they are cut first."""
    return (order.index(shelf), shelf) if shelf in order else (-1, shelf)
