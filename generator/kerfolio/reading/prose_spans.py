"""The text of a paragraph, a heading or a cell as spans of one style each."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from urllib.parse import urlsplit

from markdown_it.token import Token

from kerfolio.basis.budgets import WORD, longest_word
from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.model.prose import Span, Spans
from kerfolio.reading.markdown import STRAY
from kerfolio.reading.prose_remarks import Remarks

HTML = "Write Markdown alone; put a sign such as `<` in back quotes."
_PICTURE = "State pictures under `photo:` or `photos:`, with `alt`."
_STRAYS = {
    "footnote": ("a footnote", "Write the note in the text, in brackets."),
    "link": (
        "`](` without a link",
        "Write `[words](https://...)`: no blank in the address, no link inside a link.",
    ),
    "crossed-out": ("words crossed out", "Leave them out."),
}


@dataclass(frozen=True, slots=True)
class _Style:
    """How many of each mark are open, and the address of the open link."""

    strong: int = 0
    emphasis: int = 0
    link: str = ""

    def span(self, text: str, *, code: bool = False) -> Span:
        return Span(
            text=text,
            strong=self.strong > 0,
            emphasis=self.emphasis > 0,
            code=code,
            link=self.link,
        )


def spans_of(inline: Token, remarks: Remarks, *, after: int | None = None) -> Spans:
    """Return a text's spans; ``after`` is the column after which a cell of a table begins.

    What is refused in it stays as it was typed.
    """
    spans = merged(_Reader(inline, remarks, after).spans())
    fault = WORD.fault(longest_word("".join(span.text for span in spans)))
    if fault is not None:
        spot = remarks.inline_spot(inline, 0, after)
        remarks.refuse(spot, str(fault), fault.advice, "too-long")
    return spans


class _Reader:
    def __init__(self, inline: Token, remarks: Remarks, after: int | None) -> None:
        self._inline = inline
        self._remarks = remarks
        self._after = after

    def spans(self) -> list[Span]:
        spans: list[Span] = []
        style, linked = _Style(), 0
        for token in self._inline.children or ():
            if token.type in ("strong_open", "strong_close"):
                style = replace(style, strong=style.strong + token.nesting)
            elif token.type in ("em_open", "em_close"):
                style = replace(style, emphasis=style.emphasis + token.nesting)
            elif token.type == "link_open":
                style, linked = replace(style, link=self._address(token)), len(spans)
            elif token.type == "link_close":
                if style.link and not any(span.text.strip() for span in spans[linked:]):
                    message = f"the link {quoted(style.link)} has no words"
                    self._refuse(token, message, "Write `[words](https://...)`.")
                style = replace(style, link="")
            else:
                spans.append(style.span(self._text(token), code=token.type == "code_inline"))
        return spans

    def _text(self, token: Token) -> str:
        if token.type == "html_inline":
            self._refuse(token, f"raw HTML {quoted(token.content)}", HTML)
        elif token.type == "image":
            self._refuse(token, "a picture in the text", _PICTURE)
        elif token.type == STRAY:
            self._refuse(token, *_STRAYS[token.meta["kind"]])
        elif token.type == "softbreak":
            return " "
        elif token.type == "hardbreak":
            return "\n"
        return token.content

    def _address(self, token: Token) -> str:
        address = str(token.attrGet("href") or "")
        fault = link_fault(address)
        if fault is not None:
            self._refuse(token, str(fault), str(fault.advice))
        if title := token.attrGet("title"):
            message = f"a title of a link, {quoted(str(title))}"
            self._refuse(token, message, "Write it in the text.")
        return "" if fault else address

    def _refuse(self, token: Token, message: str, advice: str) -> None:
        spot = self._remarks.inline_spot(self._inline, token.meta.get("at", 0), self._after)
        self._remarks.refuse(spot, message, advice)


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


def merged(spans: Sequence[Span]) -> Spans:
    """Join neighbours of one style; no span is empty."""
    joined: list[Span] = []
    for span in spans:
        if joined and replace(joined[-1], text=span.text) == span:
            joined[-1] = replace(span, text=joined[-1].text + span.text)
        elif span.text:
            joined.append(span)
    return tuple(joined)
