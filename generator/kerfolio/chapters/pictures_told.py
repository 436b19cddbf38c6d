"""What the pictures of a plan are: which are photographs, and which were made otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.chapters.shots import shown
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import numbered_steps
from kerfolio.model.plan import Photo

_COVER = ""
"""Where a picture is that belongs to no step."""


def pictures_sentence(edition: Edition) -> str:
    """Return which pictures of cover and steps are photographs; a gallery says it by itself."""
    reader = edition.reader
    made: dict[str, list[str]] = {}
    for where, photo in _shown(edition):
        made.setdefault(photo.made, []).append(where)
    if not made:
        return say(reader, "pictures-drawn")
    photographs = made.pop("", [])
    if not made:
        return say(reader, "pictures-photographed")
    said = [
        say(reader, "pictures-shown", places=_places(places, reader), count=len(places), how=how)
        for how, places in sorted(made.items())
    ]
    if photographs:
        where, count = _places(photographs, reader), len(photographs)
        said.append(say(reader, "pictures-photographs", places=where, count=count))
    sentence = "; ".join(said)
    return say(reader, "pictures-said", said=f"{sentence[0].upper()}{sentence[1:]}")


def _shown(edition: Edition) -> Iterator[tuple[str, Photo]]:
    cover = cover_photo(edition)
    if cover is not None:
        yield _COVER, cover
    for number, _, step in numbered_steps(edition.plan, edition.reader):
        yield from ((str(number), photo) for photo in shown((step.photo,), edition))


def _places(places: list[str], reader: Reader) -> str:
    steps = [each for each in places if each != _COVER]
    words = [say(reader, "pictures-cover") for each in places if each == _COVER]
    if steps:
        told = listed(reader, steps)
        words.append(say(reader, "pictures-steps", steps=told, count=len(steps)))
    return listed(reader, words)
