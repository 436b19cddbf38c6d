"""How long a plan's sheets take to cut, in words: one place for page and booklet."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.figures import way_words
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.said import told
from kerfolio.basis.saying import listed, say
from kerfolio.edition.edition import Edition
from kerfolio.settling.titles import part_title, sheet_title, within
from kerfolio.shop.assumption import Assumption
from kerfolio.shop.cut_setting import REST
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.tool_path import Uncut


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetCutting:
    """A sheet of the layout: ``minutes`` None where no cut settings are stated for it."""

    number: int
    title: str
    cutters: tuple[str, ...]
    minutes: float | None
    metres: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterWork:
    """What one cutter does over all sheets; ``minutes`` in the wood."""

    title: str
    metres: float
    minutes: float
    cuts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingWords:
    """The cutting of a plan; ``minutes`` and ``metres`` of the sheets whose time is known.

    ``known`` counts these sheets in words: ``2 sheets``, or ``1 of 2 sheets`` where not ``whole``.
    ``remark`` says what the times are for and what is not in them. ``reader`` is whom it
    is for.
    """

    sheets: tuple[SheetCutting, ...]
    work: tuple[CutterWork, ...]
    minutes: float
    metres: float
    whole: bool
    known: str
    remark: str
    assumptions: tuple[Assumption, ...]
    reader: Reader = METRIC

    @property
    def way_head(self) -> str:
        """The head of a column of the cutter's ways: ``Metres`` or ``Feet``."""
        return way_words(self.reader).capitalize()

    @property
    def wear_remark(self) -> str:
        """What stands beside the work of the cutters."""
        return say(self.reader, "cutting-wear", ways=self.way_head)


def cutting_of(edition: Edition) -> CuttingWords | None:
    """Return how long a plan takes to cut, None where no sheet has cut settings."""
    known = [each for each in edition.times if each.known]
    if not known:
        return None
    return CuttingWords(
        sheets=tuple(_sheets(edition)),
        work=tuple(
            CutterWork(
                title=cutter_title(edition, each.cutter),
                metres=each.metres,
                minutes=each.minutes,
                cuts=each.cuts,
            )
            for each in edition.wear
        ),
        minutes=math.fsum(each.minutes for each in known),
        metres=math.fsum(each.metres for each in known),
        reader=edition.reader,
        whole=len(known) == len(edition.times),
        known=_counted(edition.reader, len(known), len(edition.times)),
        remark=_remark(known, edition),
        assumptions=tuple(_told(each, edition) for each in _assumptions(known)),
    )


def _told(each: Assumption, edition: Edition) -> Assumption:
    """Return an assumption in a plan's unit; a setting is called by its sheet and what it cuts."""
    for cut in edition.plan.cuts:
        if cut.name == each.label:
            through = REST in cut.passes or not cut.passes
            title = sheet_title(edition.settled, cut.sheet.name)
            deep = "through" if through else "deep"
            label = say(edition.reader, f"cutting-setting-{deep}", sheet=title)
            return replace(each, label=label).told(edition.reader)
    return each.told(edition.reader)


def cutter_title(edition: Edition, name: str) -> str:
    """Return what a cutter is called, else its name as written."""
    cutter = edition.settled.stock.cutter(name)
    return cutter.title if cutter else name


def _sheets(edition: Edition) -> Iterator[SheetCutting]:
    for sheet, time in zip(edition.layout.sheets, edition.times, strict=True):
        yield SheetCutting(
            number=sheet.number,
            title=sheet_title(edition.settled, sheet.sheet),
            cutters=tuple(cutter_title(edition, name) for name in _cutters(time)),
            minutes=time.minutes if time.known else None,
            metres=time.metres,
        )


def _cutters(time: CutTime) -> dict[str, None]:
    return dict.fromkeys(each.cutter for each in time.operations)


def _counted(reader: Reader, known: int, sheets: int) -> str:
    if known == sheets:
        return say(reader, "cutting-sheets", sheets=sheets)
    return say(reader, "cutting-some-sheets", known=known, sheets=sheets)


def _remark(known: Sequence[CutTime], edition: Edition) -> str:
    """Return what the times are for; what no path could be made for is named once."""
    left = dict.fromkeys(_uncut(each, edition) for time in known for each in time.uncut)
    reader = edition.reader
    remark = say(reader, "cutting-remark", ways=way_words(reader))
    if not left:
        return remark
    return f"{remark} {say(reader, 'cutting-left', uncut=listed(reader, tuple(left)))}"


def _assumptions(known: Sequence[CutTime]) -> Iterator[Assumption]:
    """Yield each assumption once: the settings of single sheets, then what all sheets share."""
    every = tuple(dict.fromkeys(each for time in known for each in time.assumptions))
    shared = [each for each in every if all(each in time.assumptions for time in known)]
    yield from (each for each in every if each not in shared)
    yield from shared


def _uncut(each: Uncut, edition: Edition) -> str:
    part = within(part_title(edition.plan, each.part), edition.reader)
    return say(
        edition.reader,
        "cutting-uncut",
        operation=each.operation.value,
        part=part,
        why=told(each.why, edition.reader),
    )
