"""Markdown into prose: paragraphs, headings, lists, tables, quotations and code.

What is not set is refused where it stands; its words stay in the text, so that nothing vanishes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import count

from markdown_it.token import Token

from kerfolio.basis.budgets import PROSE as LETTERS
from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.model.prose import (
    BOX,
    BOX_TICKED,
    Block,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    sentences,
)
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.markdown import parsed
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.prose_remarks import Remarks, Spot
from kerfolio.reading.prose_spans import HTML, spans_of
from kerfolio.reading.prose_table import DASHES, MOST_COLUMNS, NO_TABLE, read_table

MOST_LEVELS = 3
"""How deep headings go, and lists and quotations inside each other."""

_SCOPE = (
    f"Markdown: paragraphs, headings and lists of {MOST_LEVELS} levels, tables of up to "
    f"{MOST_COLUMNS} columns, quotations, code, links; no HTML, pictures, rules or footnotes."
)
_ORDINALS = ("first", "second", "third", "fourth")
_FEWER = f"Write at most {MOST_LEVELS} levels, lists and quotations counted together."
_BOX = re.compile(r"\[([ xX])\](?=\s)")
_BOXES = {" ": BOX, "x": BOX_TICKED, "X": BOX_TICKED}
_EMPTY = {
    "heading_open": ("a heading without words", "Write its words, or remove the `#`."),
    "list_item_open": ("an entry without words", "Write its words, or remove its mark."),
    "blockquote_open": ("a quotation without words", "Write its words, or remove the `>`."),
}


def read_prose(
    text: str, file: str, *, first_line: int = 1, indent: int = 0, place: Place | None = None
) -> tuple[Prose, tuple[Finding, ...]]:
    """Return a text as prose with what is wrong in it.

    ``first_line`` is the line of the file that the text begins in, ``indent`` how many blanks its
    lines have besides there. Where lines of the text are no lines of the file, ``place`` is used
    for every finding.
    """
    begin = place or Place(file, first_line, 1)
    fault = LETTERS.fault(len(text))
    if fault is not None:
        return Prose(blocks=(), place=begin), (error("too-long", str(fault), begin, fault.advice),)
    remarks = Remarks(text, Place(file, first_line, indent + 1), place)
    tokens = parsed(text)
    blocks = _Reader(remarks, _named_links(tokens)).blocks(tokens)
    findings = tuple(sorted(remarks.findings, key=lambda each: each.place))
    return Prose(blocks=tuple(blocks), place=begin), findings


def _named_links(tokens: list[Token]) -> set[str]:
    """Return the names of the addresses that links use."""
    inner = (each for token in tokens for each in token.children or ())
    return {each.meta["label"] for each in inner if "label" in each.meta}


class _Reader:
    """Walks the parser's tokens; what is wrong goes to ``remarks``."""

    def __init__(self, remarks: Remarks, names: set[str]) -> None:
        self._remarks = remarks
        self._names = names  # used by links and not yet given an address
        self._levels: list[int] = []  # of the headings above this place, as typed
        self._around: list[int | None] = []  # first rows of open entries, None for quotations

    def blocks(self, tokens: list[Token]) -> list[Block]:
        """Return the blocks that tokens of one level make."""
        return [block for token, inner in _parts(tokens) for block in self._block(token, inner)]

    def _block(self, token: Token, inner: list[Token]) -> Iterator[Block]:
        match token.type:
            case "paragraph_open":
                yield from self._paragraph(inner[0])
            case "heading_open":
                yield from self._heading(token, inner[0])
            case "bullet_list_open" | "ordered_list_open" | "blockquote_open":
                yield from self._container(token, inner)
            case "fence" | "code_block":
                yield from self._code(token)
            case "table_open":
                yield read_table(inner, self._remarks, self._spot)
            case "definition":
                self._check_address(token)
            case "html_block":
                self._remarks.refuse(self._spot(token), "raw HTML", HTML)
                yield from sentences(token.content.strip()).blocks
            case _:  # a thematic break
                self._remarks.refuse(self._spot(token), "a rule", "Divide the text with headings.")

    def _spot(self, token: Token) -> Spot:
        row = token.map[0] if token.map else 0
        return self._remarks.block_spot(row, sum(each in (row, None) for each in self._around))

    def _paragraph(self, inline: Token) -> Iterator[Block]:
        rows = inline.content.split("\n")
        barred = sum(row.lstrip().startswith("|") for row in rows)
        if barred > 1 or any(DASHES.fullmatch(row) for row in rows):
            self._remarks.refuse(self._spot(inline), *NO_TABLE)
        if spans := spans_of(inline, self._remarks):
            yield Paragraph(spans=spans)

    def _heading(self, token: Token, inline: Token) -> Iterator[Block]:
        spans = spans_of(inline, self._remarks)
        if not spans:
            self._remarks.refuse(self._spot(token), *_EMPTY[token.type])
            return
        if self._around:
            advice = "Write it in **bold** letters, or end the list before it."
            self._remarks.refuse(self._spot(token), "a heading in a list or quotation", advice)
            yield Paragraph(spans=spans)
            return
        stated = int(token.tag[1])
        self._levels = [*(each for each in self._levels if each < stated), stated]
        if len(self._levels) == MOST_LEVELS + 1:
            message = f"a heading of a {_ORDINALS[MOST_LEVELS]} level"
            advice = f"Write headings of at most {MOST_LEVELS} levels."
            self._remarks.refuse(self._spot(token), message, advice)
        yield Heading(spans=spans, level=min(len(self._levels), MOST_LEVELS))

    def _container(self, token: Token, inner: list[Token]) -> Iterator[Block]:
        quotes = token.type == "blockquote_open"
        if len(self._around) == MOST_LEVELS:
            what = "quotation" if quotes else "list"
            message = f"a {what} on a {_ORDINALS[MOST_LEVELS]} level"
            self._remarks.refuse(self._spot(token), message, _FEWER)
            yield from sentences(self._typed(token)).blocks
        elif not quotes:
            yield from self._listing(token, inner)
        elif blocks := self._inside(None, inner):
            yield Quotation(blocks=blocks)
        else:
            self._remarks.refuse(self._spot(token), *_EMPTY[token.type])

    def _typed(self, token: Token) -> str:
        """Return the lines of a block as they were typed, on one line."""
        begin, end = token.map or (0, 0)
        return " ".join(line.strip() for line in self._remarks.lines[begin:end])

    def _inside(self, row: int | None, tokens: list[Token]) -> tuple[Block, ...]:
        self._around.append(row)
        found = self.blocks(tokens)
        self._around.pop()
        return tuple(found)

    def _listing(self, token: Token, inner: list[Token]) -> Iterator[Block]:
        parts = list(_parts(inner))
        if token.type == "ordered_list_open":
            self._check_numbers([opening for opening, _ in parts])
        entries: list[tuple[Block, ...]] = []
        for opening, tokens in parts:
            entry = self._inside(opening.map[0] if opening.map else 0, tokens)
            if entry:
                entries.append(_ticked(entry, tokens))
            else:
                self._remarks.refuse(self._spot(opening), *_EMPTY[opening.type])
        first = int(parts[0][0].info) if token.type == "ordered_list_open" else None
        if entries:
            yield Listing(entries=tuple(entries), first=first)

    def _check_numbers(self, openings: list[Token]) -> None:
        """Refuse numbers that the list would not have: they count up, or are all the same."""
        numbers = [int(each.info) for each in openings]
        if len(set(numbers)) == 1:
            return
        for opening, number, due in zip(openings, numbers, count(numbers[0]), strict=False):
            if number != due:
                message = f"`{number}.` where `{due}.` would follow"
                advice = "Count up from the first number, or write the same number everywhere."
                self._remarks.refuse(self._spot(opening), message, advice)
                return

    def _code(self, token: Token) -> Iterator[Block]:
        row, column = self._spot(token)
        if token.info.strip():
            message = f"{quoted(token.info.strip())} after the signs that open a block of code"
            advice = "Leave it out: code is set without regard to its language."
            self._remarks.refuse((row, column), message, advice)
            yield from sentences(token.info.strip()).blocks
        last = token.map[1] - 1 if token.map else row
        closed = self._remarks.line(last).rstrip().endswith(token.markup) and last > row
        if token.type == "fence" and not closed:
            advice = "Repeat the signs that open it, on a line of their own."
            self._remarks.refuse((row, column), "a block of code without an end", advice)
        lines = token.content.expandtabs(4).removesuffix("\n").split("\n")
        if any(line.strip() for line in lines):
            yield Code(lines=tuple(line.rstrip() for line in lines))
        else:
            advice = "Write its lines, or remove the signs around them."
            self._remarks.refuse((row, column), "a block of code without words", advice)

    def _check_address(self, token: Token) -> None:
        """Refuse an address that vanishes: notes, names that no link uses, or used already."""
        label, name = token.meta["label"], token.meta["id"]
        if label.startswith("^"):
            advice = "Write the note in the text, in brackets."
            self._remarks.refuse(self._spot(token), "a footnote", advice)
        elif name not in self._names:
            message = f"no link uses the address of {quoted(f'[{label}]')}"
            advice = f"Write `[{label}]` where the link is, or remove the line."
            self._remarks.refuse(self._spot(token), message, advice)
        self._names.discard(name)


def _parts(tokens: list[Token]) -> Iterator[tuple[Token, list[Token]]]:
    """Yield each token of the highest level with those inside it."""
    at = 0
    while at < len(tokens):
        end, level = at, int(tokens[at].nesting)
        while level:
            end += 1
            level += tokens[end].nesting
        yield tokens[at], tokens[at + 1 : end]
        at = end + 1


def _ticked(entry: tuple[Block, ...], tokens: list[Token]) -> tuple[Block, ...]:
    """Return an entry that begins with `[ ]` or `[x]` with a box in its place."""
    found = _BOX.match(tokens[1].content) if tokens[0].type == "paragraph_open" else None
    if found and isinstance(entry[0], Paragraph):
        first, *more = entry[0].spans
        ticked = replace(first, text=_BOXES[found[1]] + first.text[found.end() :])
        return (Paragraph(spans=(ticked, *more)), *entry[1:])
    return entry


def _fold_advice(style: str) -> str:
    how = "Write `|` in place of `>`" if style == ">" else "Write the text below its key, under `|`"
    return f"{how}: then lines stay lines."


@dataclass(frozen=True, slots=True, kw_only=True)
class ProseForm(Form[Prose]):
    """A Markdown text inside a YAML file."""

    noun: str = "a text"
    advice: str = "Write Markdown; longer texts go under `|`."

    def read(self, node: Node, desk: Desk) -> Prose | None:
        """Return the prose; what is wrong in it does not make the rest unreadable."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        file, line = node.place.file, node.place.line + 1
        fixed = None if node.style == "|" else node.place
        prose, findings = read_prose(
            node.text, file, first_line=line, indent=node.indent, place=fixed
        )
        if node.folded is None:
            desk.findings += findings
        else:  # what else is wrong may only be so because of that
            message = f"{node.folded.what} that YAML joins to the line above"
            desk.refuse("prose", message, node.folded.place, _fold_advice(node.style))
        return replace(prose, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {
            "type": "string",
            "maxLength": LETTERS.most,
            "contentMediaType": "text/markdown",
            "title": _SCOPE,
        }


PROSE = ProseForm()
