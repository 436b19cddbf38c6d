"""The files of a bundle, gathered by what they are for: what to read first, then by folder."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import quote

from kerfolio.edition.names import LICENCE, PLAN, START, SUMS

_FIRST = "Read these first"
_FOR_FIRST = "The booklet, the fit coupon that is cut before anything else, and the licence."
_CHECKING = "For checking and for programs"
_FOR_CHECKING: dict[str, str] = {
    PLAN: f"{PLAN} tells the whole plan to other programs.",
    SUMS: (
        f"{SUMS} has a check sum for every file: a file that is not in it, or differs from it, "
        "is not the maker’s."
    ),
}
_PURPOSES: dict[str, str] = {
    "cut": (
        "Cut files for a router, a folder for each thickness that stands ready; engravings alone, "
        "centred, in engravings."
    ),
    "templates": "Full-size paper templates to cut by, a file of all parts for each thickness.",
    "lists": "What to cut and what to buy, as tables that any spreadsheet opens.",
    "setup": (
        "For the machine: where the sheet lies, which cutter, in which order, for each thickness "
        "that stands ready."
    ),
    "layout": (
        "Pictures of every sheet with its pieces, for each thickness that stands ready; saw is for "
        "a table saw."
    ),
    "model": "The whole thing in three dimensions.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BundleFile:
    """A file: what it is called inside its folder, and the link to it from the bundle's root."""

    name: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """The files under one name of a folder, such as ``cut/17.8mm``."""

    title: str
    files: tuple[BundleFile, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Files for one thing: a folder of the bundle, or some of several folders."""

    title: str
    purpose: str
    files: tuple[BundleFile, ...]
    shelves: tuple[Shelf, ...] = ()


def groups(names: Iterable[str], order: tuple[str, ...] = ()) -> tuple[Group, ...]:
    """Gather file names: what to read first, every folder, what is for checking and for programs.

    ``order`` is that of the shelves (the thicknesses). The coupon stands in its folder, too; the
    page that lists them is left out.
    """
    known = sorted({*names} - {START})
    booklets = [name for name in known if name.startswith("booklet")]
    coupons = [name for name in known if name.startswith("cut/fit-coupon/")]
    read = [*booklets, *coupons, *(name for name in known if name == LICENCE)]
    checked = [name for name in known if name in _FOR_CHECKING]
    told = " ".join(_FOR_CHECKING[name] for name in checked)
    rest = [name for name in known if name not in {*read, *checked} or name in coupons]
    found = (
        _group(_FIRST, _FOR_FIRST, read),
        *_folders(rest, order),
        _group(_CHECKING, told, checked),
    )
    return tuple(each for each in found if each.files or each.shelves)


def _group(title: str, purpose: str, names: Iterable[str]) -> Group:
    files = tuple(BundleFile(name=name, href=quote(name)) for name in names)
    return Group(title=title, purpose=purpose, files=files)


def _folders(names: Iterable[str], order: tuple[str, ...]) -> tuple[Group, ...]:
    found: dict[str, dict[str, list[BundleFile]]] = {}
    for name in names:
        folder, _, inner = name.rpartition("/")[0].partition("/")
        shelf = inner.split("/")[0]
        rest = name.removeprefix(f"{folder}/").removeprefix(f"{shelf}/")
        file = BundleFile(name=rest, href=quote(name))
        found.setdefault(folder, {}).setdefault(shelf, []).append(file)
    known = [*_PURPOSES, *sorted(found.keys() - _PURPOSES.keys())]
    return tuple(_folder(name, found[name], order) for name in known if name in found)


def _folder(name: str, shelves: dict[str, list[BundleFile]], order: tuple[str, ...]) -> Group:
    named = sorted(shelves.keys() - {""}, key=lambda each: _place(each, order))
    return Group(
        title=f"{name}/",
        purpose=_PURPOSES.get(name, ""),
        files=tuple(shelves.get("", ())),
        shelves=tuple(Shelf(title=f"{name}/{each}", files=tuple(shelves[each])) for each in named),
    )


def _place(shelf: str, order: tuple[str, ...]) -> tuple[int, str]:
    """Shelves that are no thickness (the coupon) come first: they are cut first."""
    return (order.index(shelf), shelf) if shelf in order else (-1, shelf)
