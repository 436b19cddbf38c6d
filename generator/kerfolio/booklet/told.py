"""A document as the template reads it: plain data, chapter by chapter."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from kerfolio.booklet.art import Gallery, Shown
from kerfolio.booklet.lines import Lines
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.prose import prose_blocks
from kerfolio.booklet.rows import Row, Seated, packed
from kerfolio.booklet.tables import table
from kerfolio.document.blocks import (
    Asked,
    Block,
    Caution,
    Dated,
    Fact,
    Facts,
    Figure,
    Figures,
    Folded,
    Heading,
    Listing,
    Live,
    Paragraph,
    Size,
    Step,
    Table,
    Told,
)
from kerfolio.document.chapter import Chapter, Document, Opening
from kerfolio.document.picture import Art, Room

Data = dict[str, Any]


@dataclass(slots=True, kw_only=True)
class Teller:
    """Tells a document block by block, once: pictures have their places, and no size yet.

    ``rows`` are the rows of pictures in their order, by which what is told names them. What stands
    by itself is a box and has its number, ``box``.
    """

    lines: Lines
    gallery: Gallery
    measure: Measure
    rows: list[Row] = field(default_factory=list)
    _boxes: int = 0

    def opening(self, opening: Opening) -> Data:
        """Return what stands on the cover, its picture apart."""
        lines = self.lines
        return {
            "kicker": lines.text(opening.kicker),
            "title": lines.text(opening.title),
            "summary": lines.text(opening.summary),
            "facts": self.facts(opening.facts),
            "notices": [lines.text(each) for each in opening.notices],
            "small": [lines.text(each) for each in opening.small],
        }

    def row_data(self, row: Row, share: float, named: Callable[[Shown], str]) -> Data:
        """Return a row at a share of its room, its pictures by the names of their files."""
        shown = row.shown(self.gallery, share)
        return {
            "height": max((each.height for _, each in shown), default=0.0),
            "wide": row.wide,
            "figures": [
                {
                    **self.picture(each, named),
                    "caption": self.lines.line(figure.caption),
                }
                for figure, each in shown
            ],
        }

    def picture(self, shown: Shown, named: Callable[[Shown], str]) -> Data:
        """Return a picture by the name of its file, in mm, with its words."""
        size = {"width": shown.width, "height": shown.height}
        return {"file": named(shown), **size, "alt": self.lines.text(shown.alt)}

    def chapter(self, chapter: Chapter) -> Data:
        """Return a chapter: its blocks in sections, each under its heading."""
        box = self._next_box()
        sections: list[Data] = [{"head": None, "blocks": []}]
        depth = 2
        steps = [each for each in chapter.blocks if isinstance(each, Step)]
        for block in self._paired(_opened(chapter.blocks)):
            if isinstance(block, Heading):
                line = self.lines.line(block.words)
                head = {"line": line, "id": block.id, "box": self._next_box()}
                sections.append({"head": head, "blocks": []})
                depth = 3
            else:
                level = (3 if any(step.begins for step in steps) else 2) if steps else depth
                sections[-1]["blocks"] += self._block(block, level)
        return {
            "id": chapter.id,
            "box": box,
            "title": self.lines.text(chapter.title),
            "soon": str(chapter.soon),
            "sections": [
                {**each, "blocks": _tied(each["blocks"])}
                for each in sections
                if each["head"] or each["blocks"]
            ],
        }

    def facts(self, facts: Sequence[Fact]) -> list[Data]:
        """Return heads with their values."""
        return [
            {
                "head": self.lines.text(each.head),
                "values": [[self.lines.line(line) for line in value] for value in each.lines],
            }
            for each in facts
        ]

    def _paired(self, blocks: Iterable[Block]) -> Iterator[Block | tuple[Figure, Block]]:
        """Yield blocks, a small figure together with the text that follows it."""
        waiting: Figure | None = None
        for block in blocks:
            if waiting is not None and isinstance(block, Paragraph | Told | Listing):
                yield (waiting, block)
                waiting = None
                continue
            if waiting is not None:
                yield waiting
                waiting = None
            if isinstance(block, Figure) and block.size is Size.SMALL:
                waiting = block
            else:
                yield block
        if waiting is not None:
            yield waiting

    def _block(self, block: Block | tuple[Figure, Block], level: int) -> Iterator[Data]:
        """Yield what a block is set as; a box each."""
        match block:
            case tuple():
                yield from self._beside(*block, level)
            case Told():
                for each in prose_blocks(block.prose, self.lines, level):
                    yield self._boxed(each)
            case Figure():
                yield from self._figures((block,))
            case Figures():
                yield from self._figures(block.figures)
            case Step():
                yield from self._step(block, level)
            case Folded():
                wide = isinstance(next(iter(block.blocks), None), Facts)
                line = self.lines.line(block.summary)
                yield self._boxed({"kind": "folded", "line": line, "wide": wide})
                told = [
                    {**each, "small": True}
                    for inner in _opened(block.blocks)
                    for each in self._block(inner, level)
                ]
                yield from _alike(told)
            case Table():
                if block.rows:
                    yield self._boxed(table(block, self.lines))
            case _:
                yield self._boxed(self._text(block, level))

    def _text(self, block: Block, level: int) -> Data:
        lines = self.lines
        match block:
            case Paragraph():
                made = {"line": lines.line(block.words), "manner": str(block.manner)}
                return {"kind": "paragraph", "loud": block.loud, **made}
            case Heading():
                return {"kind": "minor", "line": lines.line(block.words), "level": level}
            case Listing():
                entries = [lines.line(each) for each in block.entries]
                marks = {"numbered": block.numbered, "ticked": block.ticked}
                return {"kind": "listing", "entries": entries, **marks}
            case Facts():
                return {"kind": "facts", "facts": self.facts(block.facts), "rows": block.rows}
            case Caution():
                return self._caution(block.head, [lines.line(each) for each in block.lines])
            case Asked():
                answer = [*prose_blocks(block.answer, lines, level + 1)]
                question = lines.text(block.question)
                return {"kind": "asked", "question": question, "level": level, "blocks": answer}
            case Dated():
                texts = {name: lines.text(getattr(block, name)) for name in ("day", "head", "flag")}
                return {"kind": "dated", **texts, "line": lines.line(block.words), "id": block.id}
            case _:
                raise TypeError(f"no booklet sets a {block.kind}")

    def _caution(self, head: str, told: Sequence[Any]) -> Data:
        return {"kind": "caution", "head": self.lines.text(head), "lines": list(told)}

    def _step(self, step: Step, level: int) -> Iterator[Data]:
        """Yield a step; one with several drawings may go over pages between them."""
        lines = self.lines
        begins = self._next_box() if step.begins else -1
        shown = [each for each in step.figures if self._at_hand(each)]
        drawn = [each for each in shown if isinstance(each.picture, Art)]
        aside = next((each for each in shown if each not in drawn), None) if drawn else None
        *first, last = [[each] for each in shown if each is not aside] or [[]]
        head = {
            "number": str(step.number),
            "title": lines.text(step.title),
            "begins": lines.text(step.begins),
            "begins_box": begins,
            "level": level,
            "need": self.facts(step.need),
            "aside": self._small(aside, self.measure.label_room, self._boxes) if aside else None,
        }
        for figures in first:
            yield self._part(head, figures)
            head = {}
        told = {
            "blocks": [*prose_blocks(step.text, lines, level + 1)],
            "by_hand": lines.line(step.by_hand),
            "caution": lines.line(step.caution),
        }
        yield self._part(head, last, **told)

    def _part(self, head: Data, figures: Sequence[Figure], **told: Any) -> Data:
        """Return a part of a step as a box: its ``head`` or none, drawings, and what is told."""
        room, box = self.measure.step_room, self._boxes
        rows = [self._row((Seated(figure=each, room=room),), box) for each in figures]
        nothing: Data = {"blocks": [], "by_hand": [], "caution": []}
        kind = "step" if head else "step-on"
        return self._boxed({"kind": kind, **head, "rows": rows, **nothing, **told})

    def _beside(self, figure: Figure, block: Block, level: int) -> Iterator[Data]:
        if not self._at_hand(figure):
            yield from self._block(block, level)
            return
        row = self._small(figure, self.measure.room(Size.SMALL), self._boxes)
        told = (
            [*prose_blocks(block.prose, self.lines, level)]
            if isinstance(block, Told)
            else [self._text(block, level)]
        )
        yield self._boxed({"kind": "beside", "row": row, "blocks": told})

    def _small(self, figure: Figure, room: Room, box: int) -> Data:
        """Return a figure that stands beside text, which is about as high without it."""
        return self._row((Seated(figure=figure, room=room, fixed=True),), box)

    def _figures(self, figures: Sequence[Figure]) -> Iterator[Data]:
        """Yield rows of pictures; those that are compared with each other begin at one place."""
        rows = [*packed(figures, self.gallery, self.measure)]
        wide = len(rows) > 1 and any(
            len(row) > 1 or row[0].width > self.measure.main for row in rows if row[0].fixed
        )
        for seated in rows:
            yield self._boxed(self._row(seated, self._boxes, wide=wide))

    def _row(self, seated: Sequence[Seated], box: int, *, wide: bool = False) -> Data:
        """Return a row of pictures by its place among ``rows``."""
        self.rows.append(Row(number=len(self.rows), box=box, seated=tuple(seated), wide=wide))
        return {"kind": "row", "row": len(self.rows) - 1}

    def _at_hand(self, figure: Figure) -> bool:
        return self.gallery.has(figure.picture)

    def _boxed(self, made: Data) -> Data:
        return {**made, "box": self._next_box()}

    def _next_box(self) -> int:
        self._boxes += 1
        return self._boxes - 1


def _tied(blocks: Iterable[Data]) -> list[Data]:
    """Return blocks, a small note together with the table or the pictures that it belongs to."""
    found: list[Data] = []
    for each in blocks:
        before = found[-1] if found else {}
        if each.get("manner") == "small" and before.get("note", each) is None:
            found[-1] = {**before, "note": each}
        else:
            found.append({**each, "note": None} if each["kind"] in _NOTED else each)
    return found


def _alike(blocks: Sequence[Data]) -> Iterator[Data]:
    """Yield blocks; tables with as many columns count as wide as the widest of them."""
    widest: dict[int, float] = {}
    for each in blocks:
        if each["kind"] == "table":
            count = len(each["columns"])
            widest[count] = max(each["natural"], widest.get(count, 0.0))
    for each in blocks:
        wide = each["kind"] == "table"
        yield {**each, "natural": widest[len(each["columns"])]} if wide else each


_NOTED = ("table", "row")


def _opened(blocks: Sequence[Block]) -> Iterator[Block]:
    """Yield blocks; of what only a screen can do, those that stand there without it."""
    for block in blocks:
        if isinstance(block, Live):
            yield from _opened(block.blocks)
        else:
            yield block


def targets(document: Document) -> frozenset[str]:
    """Return the ids of all that can be led to."""
    found = {each.id for each in document.chapters}
    for chapter in document.chapters:
        for block in _opened(chapter.blocks):
            if isinstance(block, Heading | Dated):
                found.add(block.id)
    return frozenset(found - {""})
