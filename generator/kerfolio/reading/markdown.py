"""The Markdown that is understood: CommonMark and tables, each mark with its spot in its text.

What would vanish on the way (a note, a title, an address nobody uses) or stand in the text as it
was typed (marks of other kinds of Markdown) is kept as a token, for the reader to tell of.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from markdown_it import MarkdownIt
from markdown_it.rules_inline import StateInline, autolink, html_inline, image, link
from markdown_it.token import Token

STRAY = "stray"
"""Type of a token whose ``meta`` says in ``kind`` what else its text might have meant."""

_STRAYS = (
    ("footnote", re.compile(r"\[\^[^\]\n]*\]")),
    ("link", re.compile(r"\]\(")),
    ("crossed-out", re.compile(r"~~(?=\S)[^\n]*?\S~~")),
)
_Rule = Callable[[StateInline, bool], bool]


class _Parser(MarkdownIt):
    """CommonMark in which every link is one: which are fit the reader tells, with a finding."""

    def validateLink(self, url: str) -> bool:  # noqa: ARG002, N802 - the library's own name
        """Let every link through, where the library would leave some as text."""
        return True


def _placed(rule: _Rule) -> _Rule:
    """Return the rule noting in every token's ``meta`` where ``at`` in its text it begins."""

    def run(state: StateInline, silent: bool) -> bool:
        at, count = state.pos, len(state.tokens)
        done = rule(state, silent)
        for token in state.tokens[count:] if done else ():
            token.meta.setdefault("at", at)
        return done

    return run


def _stray(state: StateInline, silent: bool) -> bool:
    """Take marks that no rule has understood."""
    if silent:
        return False
    for kind, pattern in _STRAYS:
        found = pattern.match(state.src, state.pos, state.posMax)
        if found:
            token = state.push(STRAY, "", 0)
            token.content = found.group()
            token.meta |= {"kind": kind, "at": state.pos}
            state.pos = found.end()
            return True
    return False


_OPTIONS = {"html": True, "maxNesting": 30, "inline_definitions": True, "store_labels": True}
"""Nesting that deep stands inside what the reader refuses."""


def _parser() -> MarkdownIt:
    parser = _Parser("commonmark", _OPTIONS).enable("table")
    for name, rule in (
        ("link", link),
        ("image", image),
        ("autolink", autolink),
        ("html_inline", html_inline),
    ):
        parser.inline.ruler.at(name, _placed(rule))
    parser.inline.ruler.push(STRAY, _stray)
    return parser


_MARKDOWN = _parser()


def parsed(text: str) -> list[Token]:
    """Return a text's tokens; ``definition`` is an address stated apart from its links."""
    return _MARKDOWN.parse(text)
