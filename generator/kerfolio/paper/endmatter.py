"""What closes a booklet: questions, releases, the licence, how the pictures came about."""

from __future__ import annotations

from kerfolio.basis.words import day_text, listed
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import contact_words, licence_sentence
from kerfolio.model.plan import Photo, Release
from kerfolio.paper.band import Band, Bands, indented, kept, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import plain, prose
from kerfolio.paper.section import BLOCK_SPACE, hung, section
from kerfolio.paper.type import CAPS, CAPS_LOUD, MINOR, READING_LEADING, caps
from kerfolio.writing.page import Role, Run

QUESTIONS_TITLE = "Questions and answers"
RELEASES_TITLE = "Releases"
COLOPHON_TITLE = "About this booklet"


def questions_section(edition: Edition, grid: Grid) -> Bands:
    """Return readers' questions with their answers."""
    if not edition.plan.questions:
        return ()
    bands: list[Band] = []
    for each in edition.plan.questions:
        asked = paragraph(
            (Run(each.question, MINOR),), grid.main, READING_LEADING, role=Role.HEADING
        )
        body = (*kept(asked, with_next=True), *spaced(prose(each.answer, grid.main), 1.0))
        bands += spaced(indented(body, grid.main_x), BLOCK_SPACE if bands else 0.0)
    return (*section(QUESTIONS_TITLE, grid), *bands)


def releases_section(edition: Edition, grid: Grid) -> Bands:
    """Return the change list, newest first; corrections are named as such."""
    releases = sorted(edition.plan.releases, key=lambda each: (each.date, each.version))
    if not releases:
        return ()
    bands: list[Band] = []
    for each in reversed(releases):
        bands += spaced(_release(each, grid), BLOCK_SPACE if bands else 0.0)
    return (*section(RELEASES_TITLE, grid), *bands)


def _release(release: Release, grid: Grid) -> Bands:
    head = f"{release.version}, {day_text(release.date)}"
    text = plain(release.changed, grid.main)
    if release.errata:
        run = caps("Correction: an earlier release was wrong", CAPS_LOUD)
        warning = paragraph((run,), grid.main, READING_LEADING)
        text = (*kept(warning, with_next=True), *text)
    return hung(head, text, grid, CAPS)


def colophon_section(edition: Edition, grid: Grid) -> Bands:
    """Return licence and maker's address, what the pictures are, how the booklet was made."""
    plan, identity = edition.plan, edition.identity
    blocks = [
        ("Licence", licence_sentence(plan.licence or identity.licence)),
        ("The maker", contact_words(identity)),
        ("Pictures", pictures_sentence(edition)),
        ("The newest release", _newest(edition)),
        (
            "Colophon",
            f"{plan.title}, release {plan.version}, designed by {identity.maker}. Worked out, "
            "drawn and set by Kerfolio from one plan, in Source Serif and Source Sans. Every "
            "number in this booklet, in the lists and in the cut files comes from that plan.",
        ),
    ]
    bands: list[Band] = []
    for head, text in blocks:
        if text:
            body = hung(head, plain(text, grid.main), grid)
            bands += spaced(kept(body), BLOCK_SPACE if bands else 0.0)
    return kept((*section(COLOPHON_TITLE, grid), *bands))


def _newest(edition: Edition) -> str:
    if not edition.identity.base_url:
        return ""
    address = f"{edition.identity.base_url.rstrip('/')}/plans/{edition.name}/"
    return f"Corrections and later releases stand at {address}"


def pictures_sentence(edition: Edition) -> str:
    """Return which pictures of the booklet are photographs and which were made otherwise."""
    shown = _shown(edition)
    if not shown:
        return "All pictures are drawings made from the plan."
    made: dict[str, list[str]] = {}
    for where, photo in shown:
        made.setdefault(photo.made or "", []).append(where)
    photographs = made.pop("", [])
    if not made:
        return "The pictures of the build are photographs; all others are drawn from the plan."
    words = [
        f"{_places(places)} {'is' if len(places) == 1 else 'are'} shown as a {how}, not a "
        "photograph"
        for how, places in sorted(made.items())
    ]
    tail = f"; {_places(photographs)} is a photograph" if len(photographs) == 1 else ""
    tail = f"; {_places(photographs)} are photographs" if len(photographs) > 1 else tail
    sentence = "; ".join(words) + tail
    return sentence[0].upper() + sentence[1:] + ". Parts and sheets are drawn from the plan."


def _shown(edition: Edition) -> list[tuple[str, Photo]]:
    shown: list[tuple[str, Photo]] = []
    front = cover_photo(edition)
    if front is not None:
        shown.append(("the cover", front))
    for number, step in enumerate(edition.plan.steps, start=1):
        if step.photo is not None and step.photo.file in edition.pictures:
            shown.append((str(number), step.photo))
    return shown


def _places(places: list[str]) -> str:
    steps = [each for each in places if each.isdigit()]
    words = [each for each in places if not each.isdigit()]
    if len(steps) == 1:
        words.append(f"step {steps[0]}")
    elif steps:
        words.append(f"steps {listed(steps)}")
    return listed(words)
