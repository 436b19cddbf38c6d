"""What names a template: plan, release, thickness and part."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.exact_figures import overall_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.paper.phrases import release_told
from kerfolio.paper.places import PlacedAt, places_of
from kerfolio.settling.measured import measured_for, sheet_measured, sheets_measured
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title


@dataclass(frozen=True, slots=True, kw_only=True)
class Titled:
    """A part's drawing at full size with the words on its pages, sizes in them as figures.

    ``name`` is the part's own in its plan, ``called`` what readers know it by. ``thickness`` tells
    that of all sheets, ``sheets`` does so in a sentence; ``reader`` is whom it is for.
    """

    drawing: Drawing
    title: str
    release: str
    thickness: str
    sheets: str
    mark: str
    name: str
    called: str
    cut: str
    sheet: str
    size: tuple[float, float]
    places: tuple[PlacedAt, ...]
    reader: Reader

    @classmethod
    def of(
        cls, settled: SettledPlan, part: SettledPart, drawing: Drawing, reader: Reader = METRIC
    ) -> Titled:
        """Return the words for a part, its sheet in the reader's unit."""
        plan = settled.plan
        return cls(
            drawing=drawing,
            title=plan.title,
            release=release_told(plan.version, reader),
            thickness=measured_for(settled, reader),
            sheets=sheets_measured(settled, reader),
            mark=part.mark,
            name=part.name,
            called=part_title(plan, part.name, reader),
            cut=say(reader, "tiles-cut", count=len(part.pieces)),
            sheet=sheet_measured(settled, part.sheet, reader),
            size=part.size,
            places=places_of(part, reader),
            reader=reader,
        )

    @property
    def part(self) -> str:
        """The part's mark and what it is called."""
        return f"{self.mark} {self.called}"

    @property
    def overall(self) -> str:
        """The part's overall size in both units."""
        wide, high = (overall_text(each, self.reader) for each in self.size)
        return say(self.reader, "tiles-overall", wide=wide, high=high)

    @property
    def paper(self) -> tuple[float, float]:
        """How much paper its drawing takes, mm across and up."""
        return self.drawing.width, self.drawing.height


@dataclass(frozen=True, slots=True, kw_only=True)
class Paged:
    """A run of pages in a file, counted from 1."""

    first: int
    count: int

    @property
    def last(self) -> int:
        """The last of them."""
        return self.first + self.count - 1

    def words(self, reader: Reader) -> str:
        """Return ``3 to 7``, or ``3`` for one page."""
        if self.count == 1:
            return str(self.first)
        return say(reader, "figures-to", least=self.first, most=self.last)
