"""A document on a page: what its template asks about words, figures and tables."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from markupsafe import Markup, escape

from kerfolio.basis.digits import digits
from kerfolio.document.blocks import Block, Column, Figure, Folded, Kind, Live, Row, Table
from kerfolio.document.chapter import EVERYONE, Chapter, Soon
from kerfolio.document.picture import Art, Picture, Shot
from kerfolio.document.words import Both, File, Inline, Mark, Reference, Words
from kerfolio.model.prose import Span
from kerfolio.pages.links import safe_href
from kerfolio.pages.photos import ShownPhoto, ShowPhoto
from kerfolio.pages.signed import signed
from kerfolio.pages.signs import cleaned

LEAST_LETTERS = 11.0
"""Letters of drawings are never smaller on a screen, px (common practice, no single source)."""

_NARROWEST = 280.0  # px that a phone of 320 leaves a drawing
_COMFORT = 1.3  # times that size, letters are read with ease: a drawing is shown no larger
_CUES = 80  # px: drawings that slide are told apart by steps of that
_BOX = re.compile(r'viewBox="[\d.-]+ [\d.-]+ ([\d.]+) ([\d.]+)"')
_LETTERS = re.compile(r'<text [^>]*?font-size="([\d.]+)"')
_NAME = re.compile(r' aria-label="[^"]*"')
_OTHER = {"mm": "in", "in": "mm"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownFigure:
    """A figure ready to set: ``svg`` or ``photo``.

    ``cue`` is the width in px, in steps, below which a drawing slides to keep its letters
    readable; 0 where it never does.
    """

    alt: str
    caption: Markup
    size: str
    svg: Markup | None = None
    photo: ShownPhoto | None = None
    cue: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What stands around a document on its page.

    ``pictures`` are inline drawings by name, ``show`` finds a photo, ``files`` are links to files
    that can be had by themselves, by their names in the bundle. ``unit`` is the plan's own,
    ``language`` that of its words (BCP 47).
    ``absolute`` is set where links within the site lead nowhere: on a reader's disk.
    """

    chapters: tuple[Chapter, ...]
    pictures: Mapping[str, Markup]
    show: ShowPhoto
    unit: str
    language: str
    files: Mapping[str, str] = field(default_factory=dict)
    absolute: bool = False
    steps: str = ""

    def words(self, words: Words) -> Markup:
        """Return a line as markup with the signs it means; everything in it is escaped."""
        return Markup("").join(self._piece(each) for each in signed(words, self.language))

    def has(self, chapter: str) -> bool:
        """Tell whether a chapter of that id is on the page."""
        return any(each.id == chapter for each in self.chapters)

    def title(self, chapter: str) -> Markup:
        """Return the title of a chapter that is on the page."""
        return next(self.words(each.title) for each in self.chapters if each.id == chapter)

    def live(self, name: str) -> str:
        """Return the id of the chapter that has a place for what only a screen can do, or empty."""
        return next((each.id for each in self.chapters if _has_live(each.blocks, name)), "")

    def figure(self, figure: Figure) -> ShownFigure | None:
        """Return a figure as it is set; None where there is no picture of it here."""
        return self.picture(figure.picture, figure.alt, figure.caption, figure.size)

    def picture(
        self, picture: Picture, alt: str, caption: Words = "", size: str = "wide"
    ) -> ShownFigure | None:
        """Return a picture as a figure; None where there is none of it here."""
        told = self.words(caption)
        if isinstance(picture, Shot):
            photo = self.show(picture.photo)
            if photo is None:
                return None
            return ShownFigure(alt=alt or photo.alt, caption=told, size=size, photo=photo)
        return self._drawn(picture, alt, told, size)

    def _drawn(self, art: Art, alt: str, caption: Markup, size: str) -> ShownFigure | None:
        svg = self.pictures.get(art.name)
        return None if svg is None else drawn_figure(svg, alt, caption, size)

    def _piece(self, piece: Inline) -> Markup:
        match piece:
            case str():
                return _text(piece)
            case Mark():
                return Markup('<b class="mark">{}</b>').format(_text(piece.text))
            case Both():
                return self._both(piece)
            case Reference():
                return self._reference(piece)
            case File():
                return self._file(piece)
            case Span():
                return self._span(piece)

    def _both(self, both: Both) -> Markup:
        first = _text(both.first)
        if not both.other:
            return first
        return Markup(
            '<span class="both"><span class="{}">{}</span><i> (</i><span class="{}">{}</span>'
            "<i>)</i></span>"
        ).format(self.unit, first, _OTHER[self.unit], _text(both.other))

    def _reference(self, found: Reference) -> Markup:
        if not self.has(found.chapter):
            return _text(found.text)
        return Markup('<a href="#{}">{}</a>').format(found.chapter, _text(found.text))

    def _file(self, file: File) -> Markup:
        text = _text(file.text or file.name)
        href = self.files.get(file.name)
        if href:
            return Markup('<a href="{}">{}</a>').format(href, text)
        return text if file.text else Markup("<code>{}</code>").format(text)

    def _span(self, span: Span) -> Markup:
        text = Markup("<br>").join(_text(line) for line in span.text.split("\n"))
        for wanted, tag in ((span.code, "code"), (span.emphasis, "em"), (span.strong, "strong")):
            if wanted:
                text = Markup(f"<{tag}>{{}}</{tag}>").format(text)
        href = safe_href(span.link, absolute=self.absolute) if span.link else ""
        return Markup('<a href="{}">{}</a>').format(href, text) if href else text


def drawn_figure(
    svg: Markup, alt: str = "", caption: Markup | None = None, size: str = "wide"
) -> ShownFigure:
    """Return an inline drawing as a figure: at a size at which its letters are read with ease."""
    least, markup = least_width(svg), str(svg)
    cue = _in_steps(least, _CUES) if least > _NARROWEST else 0
    if alt:
        name = f' aria-label="{escape(cleaned(alt))}"'
        markup = _NAME.sub(lambda _: name, markup, count=1)
    if least:
        width = digits(least * _COMFORT, 0)
        markup = markup.replace("<svg ", f'<svg width="{width}" ', 1)
    told = caption or Markup()
    return ShownFigure(alt=alt, caption=told, size=size, svg=Markup(markup), cue=cue)


def _in_steps(value: float, step: int) -> int:
    """Return a width rounded up to whole steps."""
    return int(-(-value // step)) * step


def _has_live(blocks: Sequence[Block], name: str) -> bool:
    return any(
        (isinstance(each, Live) and each.name == name)
        or (isinstance(each, Folded) and _has_live(each.blocks, name))
        for each in blocks
    )


def _text(text: str) -> Markup:
    return escape(cleaned(text))


def least_width(svg: str) -> float:
    """Return how wide in px an inline drawing must be for its smallest letters to be read."""
    box, letters = _BOX.search(svg), [float(each) for each in _LETTERS.findall(svg)]
    if box is None or not letters:
        return 0.0
    return float(box.group(1)) * LEAST_LETTERS / min(letters)


def figure_on(figure: Figure, page: Setting) -> ShownFigure | None:
    """Return a figure as a page sets it; None where there is no picture of it there."""
    return page.figure(figure)


def folds_away(chapter: Chapter) -> bool:
    """Tell whether a chapter is closed until somebody wants it: of one path, or background."""
    return chapter.soon is Soon.BACKGROUND or chapter.who != EVERYONE


def who_of(chapter: Chapter) -> str:
    """Return the paths of a chapter as a list of words; empty where it is everybody's."""
    return "" if chapter.who == EVERYONE else " ".join(sorted(chapter.who))


def chief_column(columns: Sequence[Column]) -> int:
    """Return the column that names a row: the first of words."""
    return next((n for n, each in enumerate(columns) if each.kind is Kind.TEXT), 0)


def cells_of(table: Table, row: Row) -> list[tuple[Column, Words, tuple[Words, ...]]]:
    """Return each cell of a row with its column: the chief line and the small ones below."""
    return [
        (column, cell, ()) if isinstance(cell, str | tuple) else (column, cell.words, cell.below)
        for column, cell in zip(table.columns, row.cells, strict=True)
    ]


def runs(blocks: Sequence[Block]) -> list[tuple[str, list[Block]]]:
    """Gather blocks of a kind that stand behind one another, since some make one list."""
    found: list[tuple[str, list[Block]]] = []
    for block in blocks:
        if found and found[-1][0] == block.kind:
            found[-1][1].append(block)
        else:
            found.append((block.kind, [block]))
    return found
