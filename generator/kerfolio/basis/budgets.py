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

    def beyond(self, count: int) -> Complaint | None:
        """Return the same where counting stopped just beyond the budget."""
        if count <= self.most:
            return None
        return Complaint(f"{self.noun} of more than {self.most} {self.units}", self.advice)


TITLE = Budget(
    noun="a title",
    units="letters",
    most=120,
    advice="Say it in a few words; what follows it holds the rest.",
)
"""Two lines on a cover and in a table; search engines and feeds show about half of it."""

WORDS = Budget(
    noun="a category or tag",
    units="letters",
    most=30,
    advice="Say it in one or two words: `seats`, `gifts`.",
)
"""It is chosen from a list on a phone, and stands in one line there."""

TAGS = Budget(
    noun="a list",
    units="tags",
    most=12,
    advice="Keep those that someone would look for.",
)
"""What is filed under everything is found under nothing."""

READY_MADE = Budget(
    noun="a list",
    units="ready-made thicknesses",
    most=5,
    advice="Name a handful: readers get files for every other thickness, too.",
)
"""A reader chooses among them at a glance; every other thickness of the range is made from the one
they measured."""

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

CELL = Budget(
    noun="a note",
    units="letters",
    most=200,
    advice="Say it in a sentence; the story or a step holds the rest.",
)
"""What stands in a narrow column of a table, all on one page: about 15 lines of it."""

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

SHOWN = 8
"""So many findings of one kind are shown, then only counted: what is wrong with eight holes is
most often wrong with all of them."""


def longest_word(text: str) -> int:
    """Return how many letters the longest stretch without a blank has."""
    return max(map(len, text.split()), default=0)


LIST = Budget(
    noun="a list",
    units="entries",
    most=4_000,
    advice="Take a `repeat` for what stands in rows, or divide it.",
)
"""The points of one ``at:``, the features of one part, the parts of one plan, and all others."""

STEPS = Budget(
    noun="a plan",
    units="steps",
    most=100,
    advice="Put several moves into one step, or divide the plan.",
)
"""Each is drawn, shown on a page and printed, perhaps with a photo of some 6 MB once decoded."""

PHOTOS = Budget(
    noun="a plan",
    units="photos",
    most=30,
    advice="Choose the best; a step can have a photo of its own.",
)
"""Those of the finished thing: one row of a page holds about three."""

PARTS = Budget(
    noun="a plan",
    units="parts",
    most=200,
    advice="Give parts alike one name and a `count`, or divide the plan.",
)
"""A fitted kitchen has about a hundred different ones."""

PIECES = Budget(
    noun="a plan",
    units="pieces",
    most=500,
    advice="Lower a `count`, or divide the plan: a batch cuts several copies of one plan.",
)
"""All pieces of all parts; each is laid out, put together and drawn."""

JOINTS = Budget(
    noun="a plan",
    units="joints",
    most=1_000,
    advice="Divide the plan.",
)
"""Two for each piece, at the most that a plan has."""

FINGERS = Budget(
    noun="a row",
    units="fingers and gaps",
    most=300,
    advice="Lower its `count`: a finger is as wide as the sheet is thick, or wider.",
)
"""Along the longest edge of a sheet they would be 8 mm wide, less than most sheets are thick."""

REPEATS = Budget(
    noun="a repeat",
    units="copies",
    most=500,
    advice="Lower its `count`.",
)
"""More in one row than fit on the largest sheets at a few millimetres each."""

FEATURES = Budget(
    noun="a part",
    units="features",
    most=3_000,
    advice="Make fewer of them, or divide the part.",
)
"""Every point, repeat, mirrored copy, finger and drawn element counts.

A whole sheet drilled at 32 mm, the step of shelf pins, has about 2,900 holes.
"""

PLAN_FEATURES = Budget(
    noun="a plan",
    units="features",
    most=4_000,
    advice="Make fewer of them, or divide the plan.",
)
"""A board drilled all over and plenty besides."""

MEETINGS = Budget(
    noun="a part",
    units="features that run into each other",
    most=10_000,
    advice="Move them apart: look at `step` and `count`.",
)
"""Pairs of openings or tabs whose boxes meet: each of them is worked out, and thousands at one
place would take minutes."""

POINTS = Budget(
    noun="a part",
    units="points",
    most=100_000,
    advice="Draw its curves with arcs, or with fewer points.",
)
"""The corners of all its lines after curves are made of chords, copies counted."""

OUTLINE = Budget(
    noun="an outline",
    units="points",
    most=12_000,
    advice="Draw its curves with arcs, or with fewer points.",
)
"""Its corners: what lies beside it on a sheet is asked of each."""

PATH = Budget(
    noun="a path",
    units="numbers",
    most=100_000,
    advice="Draw it simpler: with arcs and curves for short lines.",
)
"""Counted in its text, before it is taken apart; some 50,000 corners."""

ELEMENTS = Budget(
    noun="a drawing",
    units="elements",
    most=10_000,
    advice="Draw it simpler: fewer paths, clones and inserts.",
)
"""Paths, groups, clones and inserts of a drawing, each as often as it is used."""

NODES = Budget(
    noun="a drawing",
    units="elements in its file",
    most=50_000,
    advice="Draw it simpler, and delete what is not cut.",
)
"""Everything that stands in the file, seen or not; it is read as a whole."""

DRAWN_POINTS = Budget(
    noun="a drawing",
    units="points",
    most=100_000,
    advice="Draw it simpler: with arcs for short lines.",
)
"""The corners of all its lines after curves are made of chords."""

NESTING = Budget(
    noun="an element",
    units="levels of groups and clones",
    most=100,
    advice="Draw it with fewer levels.",
)
"""Groups in groups and clones of clones, one inside the other; drawing programs make a few."""

DRAWING_BYTES = Budget(
    noun="a drawing",
    units="bytes",
    most=10_000_000,
    advice="Draw it simpler, and leave out pictures.",
)
"""More than any path that is cut needs; a file is read as a whole."""
