"""All files of a bundle, gathered by what they are for: what to read first, then by folder."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kerfolio.basis.words import counted
from kerfolio.document.blocks import Block, Folded, Heading, Listing, Live, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import File
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import LICENCE, PLAN, START, SUMS, expected_names

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


def files(edition: Edition) -> Chapter:
    """Return the list of all files; a page that knows what was written tells it as ``files``."""
    live = Live(name="files", blocks=file_blocks(edition, expected_names(edition)))
    return Chapter(id="files", title="All files", blocks=(live,), soon=Soon.BACKGROUND)


def file_blocks(edition: Edition, names: Iterable[str]) -> tuple[Block, ...]:
    """Return a list of files by their names in the bundle; its first page is left out.

    The coupon is read first and stands in its folder, too.
    """
    known = sorted({*names} - {START})
    coupons = [name for name in known if name.startswith("cut/fit-coupon/")]
    booklets = [name for name in known if name.startswith("booklet")]
    read = [*booklets, *coupons, *(name for name in known if name == LICENCE)]
    checked = [name for name in known if name in _FOR_CHECKING]
    told = " ".join(_FOR_CHECKING[name] for name in checked)
    apart = {*read, *checked} - {*coupons}
    order = tuple(each.variant.label for each in edition.variants)
    return (
        *_group(_FIRST, _FOR_FIRST, read),
        *_folders([name for name in known if name not in apart], order),
        *_group(_CHECKING, told, checked),
    )


def _group(title: str, purpose: str, names: list[str]) -> Iterator[Block]:
    if names:
        yield Heading(words=title)
        yield Paragraph(words=purpose, manner=Manner.SMALL)
        yield _listed(names)


def _listed(names: Iterable[str], within: str = "") -> Listing:
    """Return names as they are read within a folder."""
    entries = ((File(name=each, text=each.removeprefix(within)),) for each in names)
    return Listing(entries=tuple(entries))


def _folders(names: Iterable[str], order: tuple[str, ...]) -> Iterator[Block]:
    found: dict[str, dict[str, list[str]]] = {}
    for name in names:
        folder, _, inner = name.rpartition("/")[0].partition("/")
        found.setdefault(folder, {}).setdefault(inner.split("/")[0], []).append(name)
    known = [*_PURPOSES, *sorted(found.keys() - _PURPOSES.keys())]
    for folder in known:
        if folder in found:
            yield from _folder(folder, found[folder], order)


def _folder(
    folder: str, shelves: Mapping[str, list[str]], order: tuple[str, ...]
) -> Iterator[Block]:
    yield Heading(words=f"{folder}/")
    if folder in _PURPOSES:
        yield Paragraph(words=_PURPOSES[folder], manner=Manner.SMALL)
    if "" in shelves:
        yield _listed(shelves[""], f"{folder}/")
    for shelf in sorted(shelves.keys() - {""}, key=lambda each: _place(each, order)):
        held, inside = shelves[shelf], f"{folder}/{shelf}"
        summary = f"{inside} ({counted(len(held), 'file')})"
        yield Folded(summary=summary, blocks=(_listed(held, f"{inside}/"),))


def _place(shelf: str, order: tuple[str, ...]) -> tuple[int, str]:
    """Shelves that are no thickness (the coupon) come first: they are cut first."""
    return (order.index(shelf), shelf) if shelf in order else (-1, shelf)
