"""Pictures of a plan for its pages: drawings as inline SVG, photos at several widths."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from functools import partial

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.fitting import fittings_in
from kerfolio.assembly.set_fittings import set_fittings
from kerfolio.basis.lengths import size_text
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.reader import Reader
from kerfolio.chapters.opening import opening
from kerfolio.chapters.order import PAGE, START, chapters_of
from kerfolio.document.blocks import Block, Figure, Folded, Live
from kerfolio.document.picture import Art
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import model_of
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Drawing, Ink
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_pictures import setup_pictures
from kerfolio.model.plan import Photo
from kerfolio.model.workshop import Workshop
from kerfolio.pages.site import PhotoFile
from kerfolio.settling.titles import piece_title
from kerfolio.writing.pdf import picture_size
from kerfolio.writing.photo import sized
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import inline_svg, svg_bytes

WIDTHS = (480, 960, 1600)
"""Widths of photos in pixels: a phone, a column of text, a full page."""

PREVIEW_WIDTH = 1200
_ROOM = (174.0, 230.0)
"""Room of a drawing, mm: a page's own, so that screen and paper show the same."""


def drawings_of(edition: Edition) -> dict[str, Drawing]:
    """Return the drawings that pages show: those of their chapters, and of the machine's sheets."""
    found = {art.name: art.draw(_ROOM) for art in arts_of(edition)}
    return {**setup_pictures(edition), **edition.drawings, **found}


def arts_of(edition: Edition) -> Iterator[Art]:
    """Yield every drawing of a plan's pages as its chapters have it."""
    cover = opening(edition).picture
    if isinstance(cover, Art):
        yield cover
    for chapter in chapters_of(edition, tuple(dict.fromkeys((*PAGE, *START)))):
        yield from _arts(chapter.blocks)


def _arts(blocks: Iterable[Block]) -> Iterator[Art]:
    for block in blocks:
        if isinstance(block, Folded | Live):
            yield from _arts(block.blocks)
        figures = (block,) if isinstance(block, Figure) else getattr(block, "figures", ())
        yield from (each.picture for each in figures if isinstance(each.picture, Art))


def inline_pictures(edition: Edition) -> dict[str, str]:
    """Return every drawing as SVG markup that a page's style sheet can colour."""
    palette = palettes_of(edition.identity.look).light
    return {
        name: inline_svg(drawing, palette, f"{name}-")
        for name, drawing in drawings_of(edition).items()
    }


def model_3d(edition: Edition) -> Model3d | None:
    """Return the model of the plan put together, or None where nothing tells how it goes."""
    found, plan = edition.assembled, edition.plan
    if found is None:
        return None
    assembled, order = found
    titles = [] if order.found else [step.title for step in plan.steps]
    fittings = (
        set_fittings(edition.made, edition.together)
        if edition.together is not None
        else fittings_in(edition.settled, assembled, order)
    )
    called, sized = partial(piece_title, plan), partial(_size, edition.reader)
    return model_of(assembled, order, plan.title, titles, called, fittings, sized)


def _size(reader: Reader, piece: PosedPiece) -> str:
    """Return how large a piece is over all, as it lies: width, height, thickness."""
    across, up = ([spot[axis] for spot in piece.panel.shape.outer] for axis in (0, 1))
    sides = (max(across) - min(across), max(up) - min(up), piece.panel.thickness)
    return size_text(sides, reader)


def pictures_of(workshop: Workshop, folder: str, photos: Iterable[Photo]) -> dict[str, Pixels]:
    """Return what photos of a folder of the workshop show, by the file as written there."""
    files = {f"{folder}/{photo.file}": photo.file for photo in photos}
    return {files[each.path]: each.pixels for each in workshop.pictures if each.path in files}


def photo_files(
    folder: str, pictures: Mapping[str, Pixels], wanted: Iterable[str] | None = None
) -> Iterator[tuple[str, str, bytes]]:
    """Yield (photo, path in the site, bytes) of each photo at every width it is large enough for.

    With ``wanted`` only of those, called as they are among all. ``folder`` is where the photos go,
    relative to the site's root. Photos that differ in their endings alone keep them, so that none
    is written over the other.
    """
    stems = Counter(_stem(name) for name in pictures)
    for name in sorted(pictures if wanted is None else pictures.keys() & set(wanted)):
        pixels = pictures[name]
        stem = _stem(name) if stems[_stem(name)] == 1 else name
        for width in sorted({min(width, pixels.width) for width in WIDTHS}):
            yield name, f"{folder}/{stem}-{width}.jpg", sized(pixels, width)


def _stem(name: str) -> str:
    return name.rsplit(".", 1)[0]


def photo_index(files: Mapping[str, list[tuple[str, bytes]]]) -> dict[str, tuple[PhotoFile, ...]]:
    """Return what pages need to know of written photos: address and size in pixels."""
    return {
        name: tuple(_photo(href, data) for href, data in variants)
        for name, variants in files.items()
    }


def _photo(href: str, data: bytes) -> PhotoFile:
    width, height = picture_size(data)
    return PhotoFile(href=href, width=width, height=height)


def preview(edition: Edition) -> bytes | None:
    """Return a PNG of the first sheet's layout, or None where the cairo library is missing."""
    reader = edition.reader
    drawing = layout_view(edition.settled, edition.layout.sheets[0], reader=reader)
    palette = palettes_of(edition.identity.look).light
    svg = svg_bytes(drawing, palette, outlined=True)
    return png_bytes(svg, PREVIEW_WIDTH, palette[Ink.PAPER])
