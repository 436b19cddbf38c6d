"""The picture that stands for a plan."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Photo


def cover_photo(edition: Edition) -> Photo | None:
    """Return the photo that the plan calls its cover, else its first, else None."""
    return cover_of([each for each in edition.plan.photos if each.file in edition.pictures])


def cover_of(photos: Sequence[Photo]) -> Photo | None:
    """Return the photo that is called the cover, else the first, else None."""
    return next((each for each in photos if each.cover), photos[0] if photos else None)
