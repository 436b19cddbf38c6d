"""The page about an adopted drawing: pieces tinted by what was recognised, questions numbered."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.recognised import Recognised, across
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.shape import Question
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted, listed
from kerfolio.drawing.adopted_view import (
    Numbered,
    Tinted,
    adopted_view,
    columns_of,
    scale_of,
)
from kerfolio.drawing.assembled_view import assembled_view
from kerfolio.drawing.vocabulary import Ink
from kerfolio.geometry.boolean import intersection
from kerfolio.geometry.contour import Region
from kerfolio.model.feature_kind import FINGERS, HOLE, NOTCH, POCKET, SLOT, TAB, WINDOW, FeatureKind
from kerfolio.model.workshop import Identity
from kerfolio.pages.adopted import AdoptedAnswer, AdoptedPage, AdoptedPart, adopted_page
from kerfolio.proving.prove import Proof
from kerfolio.publishing.adopted_words import lost_lines
from kerfolio.writing.svg import inline_svg

_KINDS = (
    (Ink.NEW_MID, "tab or finger that meets its slot"),
    (Ink.NEW_LIGHT, "slot or notch that something meets"),
    (Ink.ACCENT, "tab, slot or notch that nothing meets"),
    (Ink.PAPER, "hole or window"),
    (Ink.WOOD_DARK, POCKET.name),
)


def adopted_report(
    found: Adopted,
    questions: tuple[Question, ...],
    answers: dict[str, str],
    proof: Proof | None,
    identity: Identity,
    title: str,
) -> str:
    """Return the page about a drawing that was adopted."""
    reader = Reader(unit=identity.units_first)
    numbers = {each.key: number for number, each in enumerate(questions, start=1)}
    told = tuple(
        AdoptedAnswer(
            number=numbers[each.key],
            words=f"{each.words[:1].upper()}{each.words[1:]}",
            taken=answers.get(each.key, each.default),
            others=tuple(a for a in each.answers if a != answers.get(each.key, each.default))[:4],
        )
        for each in questions
    )
    pieces = sum(len(part.numbers) for part in found.parts)
    lead = f"{counted(pieces, 'piece')} of {counted(len(found.parts), 'part')}"
    page = AdoptedPage(
        title=title,
        lead=f"{lead}, and what was recognised in them.",
        kinds=tuple((str(ink), word) for ink, word in _KINDS),
        parts=tuple(_part(found, part, questions, numbers) for part in found.parts),
        answers=told,
        lost=tuple(lost_lines(found)),
        whole=_whole(proof, reader),
    )
    return adopted_page(identity, page)


def _whole(proof: Proof | None, reader: Reader) -> str:
    builds = [made.build for made in proof.made if made.build] if proof else []
    if not builds or builds[0] is None:
        return ""
    return inline_svg(assembled_view(builds[0].drawn.assembled, reader=reader))


def _part(
    found: Adopted, part: PartPlan, questions: tuple[Question, ...], numbers: dict[str, int]
) -> AdoptedPart:
    tints = tuple(_tints(found, part))
    width, height = part.made.draft.size
    asked = [
        Numbered(number=numbers[each.key], at=(width / 2, height / 2))
        for each in questions
        if each.about == part.name
    ]
    scale = scale_of((width, height), [each.made.draft.size for each in found.parts])
    words = _words(part.made)
    title = f"{part.name}, {counted(len(part.numbers), 'piece')}"
    view = adopted_view(part.made.draft.region, scale, tints, asked, title, words)
    columns = columns_of(width * scale)
    return AdoptedPart(name=title, words=words, picture=inline_svg(view), columns=columns)


def _words(made: Recognised) -> str:
    counts = (
        (len(made.tabs), TAB.name),
        (len(made.notches), NOTCH.name),
        (len(made.slots), SLOT.name),
        (len(made.fingers), "row of fingers"),
        (len(made.holes), HOLE.name),
        (len(made.windows), WINDOW.name),
        (len(made.pockets), POCKET.name),
    )
    plural = {NOTCH.name: "notches", "row of fingers": "rows of fingers"}
    words = [counted(n, word, plural.get(word, "")) for n, word in counts if n]
    return listed(words) if words else "its outline alone"


def _tints(found: Adopted, part: PartPlan) -> Iterator[Tinted]:
    """Yield the shapes of a part's features in the tint of what they are."""
    met: set[tuple[FeatureKind, int]] = set()
    for each in found.arranged.meets:
        for kind, piece, number in (
            (each.kind, each.one, each.first),
            (SLOT if each.kind is TAB else each.kind, each.other, each.second),
        ):
            if piece in part.numbers:
                met.add((kind, number))
    met |= {(SLOT, each.slot) for each in found.wedges if each.through in part.numbers}
    made = part.made
    for index, tab in enumerate(made.tabs):
        ink = Ink.NEW_MID if (TAB, index) in met else Ink.ACCENT
        yield Tinted(contour=across(tab.at, tab.out, tab.width, 0.0, tab.depth), ink=ink)
    for index, notch in enumerate(made.notches):
        ink = Ink.NEW_LIGHT if (NOTCH, index) in met else Ink.ACCENT
        yield Tinted(contour=across(notch.at, notch.out, notch.width, 0.0, notch.depth), ink=ink)
    for index, row in enumerate(made.fingers):
        ink = Ink.NEW_MID if (FINGERS, index) in met else Ink.ACCENT
        size = hypot(row.end[0] - row.start[0], row.end[1] - row.start[1])
        band = across(row.middle, row.out, size, -row.depth, 0.0)
        for finger in intersection(Region(made.draft.outline.contour), [band]):
            yield Tinted(contour=finger.outer, ink=ink)
    for index, slot in enumerate(made.slots):
        ink = Ink.NEW_LIGHT if (SLOT, index) in met else Ink.ACCENT
        yield Tinted(contour=made.draft.openings[slot.opening].contour, ink=ink)
    for opening, _ in made.pockets:
        yield Tinted(contour=made.draft.openings[opening].contour, ink=Ink.WOOD_DARK)
    for opening in (*(hole.opening for hole in made.holes), *made.windows):
        yield Tinted(contour=made.draft.openings[opening].contour, ink=Ink.PAPER)
