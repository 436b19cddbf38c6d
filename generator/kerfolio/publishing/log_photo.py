"""Photos of the log: taken apart, made small and free of what a camera notes, and put beside it."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.pixels import Pixels
from kerfolio.disk.put import put
from kerfolio.reading.picture import MOST_PICTURE_BYTES, WIDEST, read_picture
from kerfolio.writing.photo import sized

PHOTOS = "photos"
"""The folder of the log they lie in."""


def photo_at(path: Path) -> Pixels | Complaint:
    """Return what a picture on the maker's disk shows; a Complaint where it is none."""
    try:
        if not path.is_file():
            advice = "Write the path of a JPEG, PNG or WebP file, or nothing."
            return Complaint(
                f"no file {quoted(path.name)} in {quoted(str(path.parent), 60)}", advice
            )
        if path.stat().st_size > MOST_PICTURE_BYTES:
            limit = f"{MOST_PICTURE_BYTES // 1_000_000} MB"
            return Complaint(f"{quoted(path.name)} has more than {limit}", "Make it smaller.")
        return read_picture(path.read_bytes(), path.name)
    except (OSError, ValueError) as trouble:
        told = getattr(trouble, "strerror", None) or str(trouble)
        return Complaint(f"{quoted(path.name)} cannot be read", f"The disk says: {told}.")


def put_photo(workshop: Path, id_: str, pixels: Pixels) -> str:
    """Write the photo of an entry and return its path as the log states it. Raises OSError."""
    file = f"{PHOTOS}/{id_}.jpg"
    put(workshop / "log" / file, sized(pixels, WIDEST))
    return file
