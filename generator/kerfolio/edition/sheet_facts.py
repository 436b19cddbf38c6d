"""What is done to a sheet on the machine, in numbers; beside those of the ends of a range."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.drawing.path_count import PathCount, drawn_counts
from kerfolio.edition.layout_time import layout_time
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from kerfolio.shop.cut_setting import Setting, settings_of
from kerfolio.shop.cut_time import CutTime, Placed, sheet_time
from kerfolio.shop.sheet_run import ByHand, Run, Work, runs_of

Of = TypeVar("Of")


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFacts:
    """A sheet at one point: its runs and what they leave, how long it takes.

    ``paths`` are what lies on its cut layers.
    """

    settled: SettledPlan
    time: CutTime
    settings: tuple[Setting, ...]
    runs: tuple[Run, ...]
    left: tuple[ByHand, ...]
    paths: tuple[PathCount, ...] = ()

    @classmethod
    def of(
        cls, settled: SettledPlan, layout: SheetLayout, time: CutTime | None = None
    ) -> SheetFacts:
        """Work a sheet out. Raises KeyError for a part the plan has not."""
        counts = Counter(each.part for each in layout.placements)
        taken = time or layout_time(settled, layout)
        runs, left = runs_of(settled, layout.sheet, counts, taken)
        return cls(
            settled=settled,
            time=taken,
            settings=settings_of(settled, layout.sheet),
            runs=runs,
            left=left,
            paths=drawn_counts(cut_sheet(settled, layout)),
        )

    @property
    def between(self) -> float:
        """Minutes above the sheet and for changes of cutter."""
        return (self.time.rapid_seconds + self.time.change_seconds) / 60

    @property
    def skim(self) -> float:
        """How far cuts that go through enter the spoilboard, mm; 0 where none is stated."""
        return max((each.skim for each in self.settings if each.through), default=0.0)

    def setting(self, name: str) -> Setting | None:
        """Return the setting of a name."""
        return next((each for each in self.settings if each.name == name), None)

    def work(self, run: Run, operation: Operation) -> Work | None:
        """Return an operation of the run that is made with the same setting."""
        same = (each for each in self.runs if each.setting == run.setting)
        works = (work for each in same for work in each.works if work.operation is operation)
        return next(works, None)

    def by_hand(self, left: ByHand) -> ByHand | None:
        """Return the cuts of the same part that are left for the same reason."""
        told = (left.part.name, left.operation, left.why)
        same = (each for each in self.left if (each.part.name, each.operation, each.why) == told)
        return next(same, None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranged:
    """A sheet at one point, and at the ends of the range that its words are to serve.

    What is the same at all ends is told as usual, else by figures of fixed decimals, or as the most
    that it comes to.
    """

    here: SheetFacts
    ends: tuple[SheetFacts, ...]

    def told(
        self,
        of: Callable[[SheetFacts], Of | None],
        usual: Callable[[Of], str],
        exact: Callable[[Of], str],
    ) -> str:
        """Return what is here in words; ends that have none of it do not count."""
        value = of(self.here)
        assert value is not None, "what is told is here"
        known = {usual(each) for each in (value, *self.all(of))}
        return usual(value) if len(known) == 1 else exact(value)

    def most(
        self,
        of: Callable[[SheetFacts], float | None],
        usual: Callable[[float], str],
        reader: Reader,
        *,
        about: bool = False,
    ) -> str:
        """Return the most that a figure comes to: ``7 min``, ``up to 7 min``.

        What is the same at all ends is told as ``about`` that, where asked for.
        """
        value = of(self.here)
        assert value is not None, "what is told is here"
        values = self.all(of) or [value]
        known = {usual(each) for each in values}
        words = usual(max(values))
        if len(known) > 1:
            return say(reader, "sheetfacts-upto", figure=words)
        return say(reader, "figures-about", figure=words) if about else words

    def all(self, of: Callable[[SheetFacts], Of | None]) -> Sequence[Of]:
        """Return a value at all ends that have it."""
        found = (of(each) for each in self.ends)
        return [each for each in found if each is not None]


def cut_alone(
    settled: SettledPlan, sheet: str, parts: Sequence[SettledPart], placed: Sequence[Placed]
) -> Ranged:
    """Return what cutting ``parts`` takes, as if a sheet held nothing else."""
    alone = replace(settled, parts=tuple(parts))
    time = sheet_time(alone, sheet, placed)
    runs, left = runs_of(alone, sheet, Counter(each.part for each in placed), time)
    settings = settings_of(settled, sheet)
    facts = SheetFacts(settled=settled, time=time, settings=settings, runs=runs, left=left)
    return Ranged(here=facts, ends=(facts,))
