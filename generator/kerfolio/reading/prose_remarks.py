"""What is refused in a Markdown text, with the line and the column of the file it stands in."""

from __future__ import annotations

import re
from dataclasses import replace

from markdown_it.token import Token

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text

Spot = tuple[int, int]
"""A row and a column of the text, both from 0."""


class Remarks:
    """Gathers findings on one text that begins at ``start``; ``fixed`` is used for all, if given.

    ``lines`` are those of the text.
    """

    def __init__(self, text: str, start: Place, fixed: Place | None) -> None:
        self.findings: list[Finding] = []
        self.lines = re.split(r"\r\n|\r|\n", text)
        self._start = start
        self._fixed = fixed

    def refuse(self, spot: Spot, message: str, advice: Text, rule: str = "prose") -> None:
        """Keep an error at a spot of the text."""
        place = self._fixed or replace(
            self._start, line=self._start.line + spot[0], column=self._start.column + spot[1]
        )
        self.findings.append(error(rule, message, place, advice))

    def line(self, row: int) -> str:
        """Return a line of the text, empty beyond its end."""
        return self.lines[row] if row < len(self.lines) else ""

    def block_spot(self, row: int, marks: int = 0) -> Spot:
        """Return where a block begins: after the blanks and as many marks of lists and quotes."""
        mark = r"(?:[ \t]*(?:>|[-+*](?=\s|$)|\d{1,9}[.)]))"
        found = re.match(rf"{mark}{{0,{marks}}}[ \t]*", self.line(row))
        return row, found.end() if found else 0

    def inline_spot(self, inline: Token, at: int, after: int | None = None) -> Spot:
        """Return where the character ``at`` of a paragraph's text stands.

        Its lines are those of the text without what stands before them; a cell of a table begins
        ``after`` that column.
        """
        before = inline.content[:at].split("\n")
        part = inline.content.split("\n")[len(before) - 1].rstrip()
        row = (inline.map[0] if inline.map else 0) + len(before) - 1
        line = self.line(row).rstrip()
        begins = len(line) - len(part) if line.endswith(part) else line.find(part)
        if after is not None:
            begins = max(line.find(part, after), after)
        return row, max(begins, 0) + len(before[-1])
