"""Markdown into prose: paragraphs, headings, lists, quotations, emphasis, code and links."""

from __future__ import annotations

import re
from dataclasses import dataclass
from urllib.parse import urlsplit

from markdown_it import MarkdownIt
from markdown_it.token import Token

from kerfolio.basis.budgets import PROSE as LETTERS
from kerfolio.basis.budgets import WORD, longest_word
from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text
from kerfolio.model.prose import Block, BlockKind, Prose, Span
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node, Scalar

_LISTS = {"bullet_list_open": BlockKind.BULLETS, "ordered_list_open": BlockKind.NUMBERS}
_REFUSED = {
    "html_block": ("raw HTML", "Write Markdown alone; put a sign such as `<` in back quotes."),
    "fence": ("a block of code", "Write a paragraph; short code goes in back quotes."),
    "code_block": ("a block of code", "Begin the line without an indentation of four blanks."),
    "hr": ("a rule", "Divide the text with headings."),
}
_PICTURE = ("a picture in the text", "State pictures under `photo:` or `photos:`, with `alt`.")


class _Parser(MarkdownIt):
    """CommonMark in which every link is one: which are fit is told here, with a finding."""

    def validateLink(self, url: str) -> bool:  # noqa: ARG002, N802 - the library's own name
        """Let every link through, where the library would leave some as text."""
        return True


_MARKDOWN = _Parser("commonmark", {"html": True, "maxNesting": 30})


def read_prose(
    text: str, file: str, *, first_line: int = 1, place: Place | None = None
) -> tuple[Prose, tuple[Finding, ...]]:
    """Return a text as prose with what is wrong in it.

    ``first_line`` is the line of the file that the text begins in. Where lines of the text are no
    lines of the file, ``place`` is used for every finding.
    """
    begin = place or Place(file, first_line, 1)
    fault = LETTERS.fault(len(text))
    if fault is not None:
        return Prose(blocks=(), place=begin), (error("too-long", str(fault), begin, fault.advice),)
    reader = _Reader(file, first_line, place)
    blocks = reader.blocks(_MARKDOWN.parse(text))
    return Prose(blocks=tuple(blocks), place=begin), tuple(reader.findings)


class _Reader:
    """Walks the parser's tokens; ``findings`` fill on the way."""

    def __init__(self, file: str, first_line: int, place: Place | None) -> None:
        self.findings: list[Finding] = []
        self._file = file
        self._first = first_line
        self._fixed = place
        self._line = 0

    def blocks(self, tokens: list[Token]) -> list[Block]:
        found: list[Block] = []
        at = 0
        while at < len(tokens):
            token = tokens[at]
            end = _closing(tokens, at)
            if token.map:
                self._line = token.map[0]
            if token.type in _REFUSED:
                self._refuse(*_REFUSED[token.type])
            elif token.type in ("paragraph_open", "heading_open"):
                found += self._text_block(token, tokens[at + 1])
            elif token.type in _LISTS:
                found += self._list(_LISTS[token.type], tokens[at + 1 : end])
            elif token.type == "blockquote_open":
                found += self._quote(tokens[at + 1 : end])
            at = end + 1
        return found

    def _text_block(self, opening: Token, inline: Token) -> list[Block]:
        entry = self._entry(inline)
        if not entry:
            return []
        if opening.type == "paragraph_open":
            return [Block(kind=BlockKind.PARAGRAPH, entries=(entry,))]
        return [Block(kind=BlockKind.HEADING, entries=(entry,), level=int(opening.tag[1]))]

    def _list(self, kind: BlockKind, tokens: list[Token]) -> list[Block]:
        entries: list[tuple[Span, ...]] = []
        at = 0
        while at < len(tokens):
            end = _closing(tokens, at)
            entry = self._joined(self.blocks(tokens[at + 1 : end]), "a list inside a list")
            if entry:
                entries.append(entry)
            at = end + 1
        return [Block(kind=kind, entries=tuple(entries))] if entries else []

    def _quote(self, tokens: list[Token]) -> list[Block]:
        entry = self._joined(self.blocks(tokens), "a list inside a quotation")
        return [Block(kind=BlockKind.QUOTE, entries=(entry,))] if entry else []

    def _joined(self, blocks: list[Block], nested: str) -> tuple[Span, ...]:
        """Return the texts of inner blocks as one entry; a list has no room in there."""
        spans: list[Span] = []
        for block in blocks:
            if block.kind in (BlockKind.BULLETS, BlockKind.NUMBERS):
                self._refuse(nested, "Write one list of one level.")
            for entry in block.entries:
                spans += [Span(text=" "), *entry] if spans else entry
        return _merged(spans)

    def _entry(self, inline: Token) -> tuple[Span, ...]:
        spans: list[Span] = []
        style, begin = _Style(), self._line
        for token in inline.children or ():
            if token.type == "html_inline":
                self._refuse(f"raw HTML {quoted(token.content)}", _REFUSED["html_block"][1])
            elif token.type == "image":
                self._refuse(*_PICTURE)
            elif token.type in ("softbreak", "hardbreak"):
                self._line += 1
                spans.append(style.span(" "))
            elif token.type in ("text", "code_inline"):
                spans.append(style.span(token.content, code=token.type == "code_inline"))
            else:
                style = self._restyled(style, token)
        self._check_words(spans, begin)
        return _merged(spans)

    def _check_words(self, spans: list[Span], line: int) -> None:
        fault = WORD.fault(longest_word("".join(span.text for span in spans)))
        if fault is not None:
            place = self._fixed or Place(self._file, self._first + line, 1)
            self.findings.append(error("too-long", str(fault), place, fault.advice))

    def _restyled(self, style: _Style, token: Token) -> _Style:
        if token.type in ("strong_open", "strong_close"):
            return _Style(token.nesting == 1, style.emphasis, style.link)
        if token.type in ("em_open", "em_close"):
            return _Style(style.strong, token.nesting == 1, style.link)
        if token.type == "link_close":
            return _Style(style.strong, style.emphasis, "")
        if token.type == "link_open":
            address = str(token.attrGet("href") or "")
            fault = link_fault(address)
            if fault is not None:
                self._refuse(str(fault), fault.advice)
            return _Style(style.strong, style.emphasis, "" if fault else address)
        return style

    def _refuse(self, message: str, advice: Text) -> None:
        place = self._fixed or Place(self._file, self._first + self._line, 1)
        self.findings.append(error("prose", message, place, advice))


@dataclass(frozen=True, slots=True)
class _Style:
    strong: bool = False
    emphasis: bool = False
    link: str = ""

    def span(self, text: str, *, code: bool = False) -> Span:
        return Span(
            text=text, strong=self.strong, emphasis=self.emphasis, code=code, link=self.link
        )


def link_fault(address: str) -> Complaint | None:
    """Return what is wrong with a link: only http, https, mailto and relative ones are kept."""
    advice = "Link to `https://...`, `mailto:...` or a page of this site."
    try:
        parts = urlsplit(address)
    except ValueError:
        return Complaint(f"the link {quoted(address)} cannot be read", advice)
    if not address or re.search(r"[\x00-\x20\\]", address) or address.startswith("//"):
        return Complaint(f"the link {quoted(address)} leads nowhere", advice)
    if parts.scheme.lower() not in ("http", "https", "mailto", ""):
        return Complaint(f"a link to `{parts.scheme}:`", advice)
    if parts.scheme.lower() in ("http", "https") and not parts.netloc:
        return Complaint(f"the link {quoted(address)} leads nowhere", advice)
    return None


def _closing(tokens: list[Token], at: int) -> int:
    """Return the index of the token that closes the one at ``at`` (itself when it stands alone)."""
    level = 0
    for index in range(at, len(tokens)):
        level += tokens[index].nesting
        if level == 0:
            return index
    return len(tokens) - 1


def _merged(spans: list[Span]) -> tuple[Span, ...]:
    """Join neighbours of one style and trim the ends."""
    merged: list[Span] = []
    for span in spans:
        last = merged[-1] if merged else None
        if last and _same_style(last, span):
            merged[-1] = Span(
                text=last.text + span.text,
                strong=span.strong,
                emphasis=span.emphasis,
                code=span.code,
                link=span.link,
            )
        elif span.text:
            merged.append(span)
    return tuple(merged)


def _same_style(a: Span, b: Span) -> bool:
    return (a.strong, a.emphasis, a.code, a.link) == (b.strong, b.emphasis, b.code, b.link)


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
        prose, findings = read_prose(node.text, file, first_line=line, place=fixed)
        desk.findings += findings
        return Prose(blocks=prose.blocks, place=node.place)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a text."""
        return {"type": "string", "maxLength": LETTERS.most}


PROSE = ProseForm()
