"""All files of a bundle, gathered by what they are for: what to read first, then by folder."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.blocks import Block, Folded, Heading, Listing, Live, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import File
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import LICENCE, PLAN, START, SUMS, expected_names

_CHECKING = {PLAN: "plan", SUMS: "sums"}
"""What is there for checking and for programs; what each does is ``files-for-...``."""
_FOLDERS = ("cut", "templates", "lists", "setup", "layout", "model")
"""Folders in the order in which they are told; the purpose of each is ``files-in-FOLDER``."""


def files(edition: Edition) -> Chapter:
    """Return the list of all files; a page that knows what was written tells it as ``files``."""
    live = Live(name="files", blocks=file_blocks(edition, expected_names(edition)))
    return Chapter(
        id="files", title=say(edition.reader, "files-title"), blocks=(live,), soon=Soon.BACKGROUND
    )


def file_blocks(edition: Edition, names: Iterable[str]) -> tuple[Block, ...]:
    """Return a list of files by their names in the bundle; its first page is left out.

    The coupon is read first and stands in its folder, too.
    """
    known = sorted({*names} - {START})
    coupons = [name for name in known if name.startswith("cut/fit-coupon/")]
    booklets = [name for name in known if name.startswith("booklet")]
    read = [*booklets, *coupons, *(name for name in known if name == LICENCE)]
    reader = edition.reader
    checked = [name for name in known if name in _CHECKING]
    told = " ".join(say(reader, f"files-for-{_CHECKING[name]}", file=name) for name in checked)
    apart = {*read, *checked} - {*coupons}
    order = tuple(each.variant.label for each in edition.variants)
    return (
        *_group(say(reader, "files-first"), say(reader, "files-first-why"), read),
        *_folders([name for name in known if name not in apart], order, reader),
        *_group(say(reader, "files-checking"), told, checked),
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


def _folders(names: Iterable[str], order: tuple[str, ...], reader: Reader) -> Iterator[Block]:
    found: dict[str, dict[str, list[str]]] = {}
    for name in names:
        folder, _, inner = name.rpartition("/")[0].partition("/")
        found.setdefault(folder, {}).setdefault(inner.split("/")[0], []).append(name)
    known = [*_FOLDERS, *sorted(found.keys() - {*_FOLDERS})]
    for folder in known:
        if folder in found:
            yield from _folder(folder, found[folder], order, reader)


def _folder(
    folder: str, shelves: Mapping[str, list[str]], order: tuple[str, ...], reader: Reader
) -> Iterator[Block]:
    yield Heading(words=f"{folder}/")
    if folder in _FOLDERS:
        yield Paragraph(words=say(reader, f"files-in-{folder}"), manner=Manner.SMALL)
    if "" in shelves:
        yield _listed(shelves[""], f"{folder}/")
    for shelf in sorted(shelves.keys() - {""}, key=lambda each: _place(each, order)):
        held, inside = shelves[shelf], f"{folder}/{shelf}"
        summary = say(reader, "files-shelf", folder=inside, files=len(held))
        yield Folded(summary=summary, blocks=(_listed(held, f"{inside}/"),))


def _place(shelf: str, order: tuple[str, ...]) -> tuple[int, str]:
    """Shelves that are no thickness (the coupon) come first: they are cut first."""
    return (order.index(shelf), shelf) if shelf in order else (-1, shelf)
