"""What the pictures of a plan are: which are photographs, and which were made otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.words import listed
from kerfolio.chapters.shots import shown
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import numbered_steps
from kerfolio.model.plan import Photo

_COVER = "the cover"


def pictures_sentence(edition: Edition) -> str:
    """Return which pictures of cover and steps are photographs; a gallery says it by itself."""
    made: dict[str, list[str]] = {}
    for where, photo in _shown(edition):
        made.setdefault(photo.made, []).append(where)
    if not made:
        return "All pictures are drawings made from the plan."
    photographs = made.pop("", [])
    if not made:
        return "The pictures of the build are photographs; all others are drawn from the plan."
    said = [
        f"{_places(places)} {_are(places)} shown as a {how}, not a photograph"
        for how, places in sorted(made.items())
    ]
    if photographs:
        what = "a photograph" if len(photographs) == 1 else "photographs"
        said.append(f"{_places(photographs)} {_are(photographs)} {what}")
    sentence = "; ".join(said)
    return f"{sentence[0].upper()}{sentence[1:]}. Parts and sheets are drawn from the plan."


def _shown(edition: Edition) -> Iterator[tuple[str, Photo]]:
    cover = cover_photo(edition)
    if cover is not None:
        yield _COVER, cover
    for number, _, step in numbered_steps(edition.plan, edition.reader):
        yield from ((str(number), photo) for photo in shown((step.photo,), edition))


def _are(places: list[str]) -> str:
    return "is" if len(places) == 1 else "are"


def _places(places: list[str]) -> str:
    steps = [each for each in places if each != _COVER]
    words = [each for each in places if each == _COVER]
    if steps:
        words.append(f"step {steps[0]}" if len(steps) == 1 else f"steps {listed(steps)}")
    return listed(words)
