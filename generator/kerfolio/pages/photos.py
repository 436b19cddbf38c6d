"""Photos as pages show them: the file a browser should take, its size, its words."""

from __future__ import annotations

import base64
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.edition.cover import cover_of
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Photo
from kerfolio.pages.site import PhotoFile, Site

_STARTS = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"RIFF", "image/webp"),
    (b"GIF8", "image/gif"),
)
_MIDDLE = 1000  # px: the file for a browser that takes no choice


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPhoto:
    """An image element: ``width`` and ``height`` are 0 where unknown."""

    src: str
    alt: str
    srcset: str = ""
    width: int = 0
    height: int = 0
    made: str = ""


ShowPhoto = Callable[[Photo | None], ShownPhoto | None]
"""How a page finds the image of a photo; None where there is nothing to show."""


def shown(
    photo: Photo | None, files: Mapping[str, tuple[PhotoFile, ...]], root: str
) -> ShownPhoto | None:
    """Return the photo from the files written for it, or None where there are none."""
    written = sorted(files.get(photo.file, ()), key=lambda each: each.width) if photo else []
    if photo is None or not written:
        return None
    middle = next((each for each in written if each.width >= _MIDDLE), written[-1])
    choice = ", ".join(f"{root}{each.href} {each.width}w" for each in written)
    return ShownPhoto(
        src=f"{root}{middle.href}",
        srcset=choice if len(written) > 1 else "",
        alt=photo.alt,
        width=middle.width,
        height=middle.height,
        made=photo.made,
    )


def largest(files: Sequence[PhotoFile]) -> str:
    """Return the path of a photo's largest file within the site; empty where there is none."""
    return max(files, key=lambda each: each.width).href if files else ""


def image_of(site: Site, edition: Edition) -> str:
    """Return the path of the picture that stands for a plan elsewhere; empty without one."""
    files, cover = site.files[edition.name], cover_of(edition.plan.photos)
    return largest(files.photos.get(cover.file, ()) if cover else ()) or files.preview


def inlined(photo: Photo | None, edition: Edition) -> ShownPhoto | None:
    """Return the photo with its bytes inside the page, or None where the edition has it not."""
    content = edition.pictures.get(photo.file) if photo else None
    if photo is None or not content:
        return None
    kind = next((name for start, name in _STARTS if content.startswith(start)), "")
    if not kind:
        return None
    packed = base64.b64encode(content).decode("ascii")
    return ShownPhoto(src=f"data:{kind};base64,{packed}", alt=photo.alt, made=photo.made)
