"""How much of a thing is taken: counted before it is expanded, so that nothing runs for minutes.

Each budget lies far above what honest plans hold and below what seconds and a small machine bear.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.complaint import Complaint


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """The ``most`` that ``noun`` may hold of ``units``, with what to do beyond that."""

    noun: str
    units: str
    most: int
    advice: str

    def fault(self, count: int) -> Complaint | None:
        """Return the complaint about a count beyond the budget, or None."""
        if count <= self.most:
            return None
        return Complaint(f"{self.noun} of {count} {self.units}, at most {self.most}", self.advice)


TITLE = Budget(
    noun="a title",
    units="letters",
    most=120,
    advice="Say it in a few words; what follows it holds the rest.",
)
"""Two lines on a cover and in a table; search engines and feeds show about half of it."""

SUMMARY = Budget(
    noun="a summary",
    units="letters",
    most=400,
    advice="Write one or two sentences; the story holds the rest.",
)
"""A paragraph below a title, on a card and in a feed."""

LINE = Budget(
    noun="a text",
    units="letters",
    most=1_000,
    advice="Write a few sentences; longer texts go where Markdown is read.",
)
"""A note, caution or caption stands in one cell or line of a page and is never broken over two."""

PROSE = Budget(
    noun="a text",
    units="letters",
    most=30_000,
    advice="Divide it: steps, questions and pages of their own take a part each.",
)
"""About 15 printed pages: a story, the text of a step, an answer, a page of the maker's own."""

WORD = Budget(
    noun="a word",
    units="letters",
    most=100,
    advice="Put blanks in it; give an address as a link: `[its name](https://...)`.",
)
"""What a line has to break by force; the longest words of dictionaries have under 50 letters."""


def longest_word(text: str) -> int:
    """Return how many letters the longest stretch without a blank has."""
    return max(map(len, text.split()), default=0)
