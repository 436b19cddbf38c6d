"""Photos of a plan as figures, as far as there is a picture of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.document.blocks import Figure, Size
from kerfolio.document.picture import Shot
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Photo


def shot(photo: Photo, size: Size = Size.WIDE) -> Figure:
    """Return a photo as a figure; what is no photograph says so."""
    made = f"{photo.made[:1].upper()}{photo.made[1:]}, not a photograph." if photo.made else ""
    return Figure(picture=Shot(photo=photo), caption=made, alt=photo.alt, size=size)


def shown(photos: Iterable[Photo | None], edition: Edition) -> Iterator[Photo]:
    """Yield the photos whose pictures the edition has."""
    yield from (each for each in photos if each is not None and each.file in edition.pictures)
