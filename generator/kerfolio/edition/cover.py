"""The picture that stands for a plan."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Photo


def cover_photo(edition: Edition) -> Photo | None:
    """Return the photo that the plan calls its cover, else its first, else None."""
    photos = [each for each in edition.plan.photos if each.file in edition.pictures]
    return next((each for each in photos if each.cover), photos[0] if photos else None)
