"""Pictures of a plan for its pages: drawings as inline SVG, photos at several widths."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from functools import partial

from kerfolio.basis.pixels import Pixels
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.coupon_view import coupon_view
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import model_of
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.saw_view import saw_view
from kerfolio.drawing.vocabulary import Drawing, Ink
from kerfolio.drawing.yard_view import yard_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_pictures import setup_pictures
from kerfolio.edition.titles import piece_title
from kerfolio.edition.yard import cuts_of
from kerfolio.model.plan import Photo
from kerfolio.model.workshop import Workshop
from kerfolio.pages.site import PhotoFile
from kerfolio.writing.pdf import picture_size
from kerfolio.writing.photo import sized
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import svg_bytes

WIDTHS = (480, 960, 1600)
"""Widths of photos in pixels: a phone, a column of text, a full page."""

PREVIEW_WIDTH = 1200
_PAGE_DECIMALS = 2  # a hundredth of a millimetre: far below a pixel on any page


def drawings_of(edition: Edition) -> dict[str, Drawing]:
    """Return the drawings that pages show, by the names the pages room knows them by."""
    settled, first = edition.settled, edition.first
    found = {f"part-{part.name}": part_view(settled, part, first=first) for part in settled.parts}
    for sheet in edition.layout.sheets:
        found[f"sheet-{sheet.number}"] = layout_view(settled, sheet, first=first)
        sawn = cuts_of(edition, sheet)
        if sawn is not None and sawn.cuts:
            found[f"yard-{sheet.number}"] = yard_view(settled, sheet, sawn)
    for coupon in settled.coupons:
        found[f"coupon-{coupon.sheet}"] = coupon_view(settled, coupon, first=first)
    for saw in edition.saw:
        found[f"saw-{saw.number}"] = saw_view(settled, saw, first=first)
    for boards in edition.board_plans:
        for number, drawing in enumerate(board_views(boards, first=first), start=1):
            found[f"boards-{boards.stock}-{number}"] = drawing
    return {**found, **setup_pictures(edition), **edition.drawings}


def inline_pictures(edition: Edition) -> dict[str, str]:
    """Return every drawing as SVG markup that a page's style sheet can colour."""
    palette = palettes_of(edition.identity.look).light
    return {
        name: svg_bytes(
            drawing,
            palette,
            decimals=_PAGE_DECIMALS,
            real_size=False,
            class_prefix="k-",
            id_prefix=f"{name}-",
        ).decode()
        for name, drawing in drawings_of(edition).items()
    }


def model_3d(edition: Edition) -> Model3d | None:
    """Return the model of the plan put together, or None where nothing tells how it goes."""
    found, plan = edition.assembled, edition.plan
    if found is None:
        return None
    assembled, order = found
    titles = [] if order.found else [step.title for step in plan.steps]
    return model_of(assembled, order, plan.title, titles, partial(piece_title, plan))


def pictures_of(workshop: Workshop, folder: str, photos: Iterable[Photo]) -> dict[str, Pixels]:
    """Return what photos of a folder of the workshop show, by the file as written there."""
    files = {f"{folder}/{photo.file}": photo.file for photo in photos}
    return {files[each.path]: each.pixels for each in workshop.pictures if each.path in files}


def photo_files(folder: str, pictures: Mapping[str, Pixels]) -> Iterator[tuple[str, str, bytes]]:
    """Yield (photo, path in the site, bytes) of each photo at every width it is large enough for.

    ``folder`` is where the photos go, relative to the site's root. Photos that differ in their
    endings alone keep them, so that none is written over the other.
    """
    stems = Counter(_stem(name) for name in pictures)
    for name, pixels in sorted(pictures.items()):
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
    first = edition.first
    drawing = layout_view(edition.settled, edition.layout.sheets[0], first=first)
    palette = palettes_of(edition.identity.look).light
    svg = svg_bytes(drawing, palette, outlined=True)
    return png_bytes(svg, PREVIEW_WIDTH, palette[Ink.PAPER])
