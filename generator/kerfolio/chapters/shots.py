"""Photos of a plan as figures, as far as there is a picture of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.blocks import Figure, Size
from kerfolio.document.picture import Shot
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Photo


def shot(photo: Photo, reader: Reader, size: Size = Size.WIDE) -> Figure:
    """Return a photo as a figure; what is no photograph says so."""
    how = f"{photo.made[:1].upper()}{photo.made[1:]}"
    made = say(reader, "pictures-made", how=how) if photo.made else ""
    return Figure(picture=Shot(photo=photo), caption=made, alt=photo.alt, size=size)


def shown(photos: Iterable[Photo | None], edition: Edition) -> Iterator[Photo]:
    """Yield the photos whose pictures the edition has."""
    yield from (each for each in photos if each is not None and each.file in edition.pictures)
