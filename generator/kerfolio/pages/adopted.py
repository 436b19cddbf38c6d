"""What was made of a drawing: one page of one file, for the maker's own disk."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.model.workshop import Identity
from kerfolio.pages.frame import lone_frame
from kerfolio.pages.report import spans
from kerfolio.pages.theme import render


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedPart:
    """A part: its name, what was recognised, inline SVG of it, and its columns of twelve."""

    name: str
    words: str
    picture: str
    columns: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedAnswer:
    """A question, numbered: what was taken for granted, or answered, and what else it may be."""

    number: int
    words: str
    taken: str
    others: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedPage:
    """All that the page tells; ``kinds`` are tints, by their inks, with what they stand for."""

    title: str
    lead: str
    kinds: tuple[tuple[str, str], ...]
    parts: tuple[AdoptedPart, ...]
    answers: tuple[AdoptedAnswer, ...]
    lost: tuple[str, ...] = ()
    whole: str = ""


def adopted_page(identity: Identity, page: AdoptedPage) -> str:
    """Return the page: its style and pictures lie inside it, it has no script and no links out."""
    return render(
        "adopted.html",
        identity.reader,
        frame=lone_frame(identity, page.title, page.lead, private=True),
        page=page,
        answers=tuple((each, spans(each.words)) for each in page.answers),
        lost=tuple(map(spans, page.lost)),
        whole=Markup(page.whole),
        pictures=tuple(
            (each.name, each.words, Markup(each.picture), each.columns) for each in page.parts
        ),
    )
