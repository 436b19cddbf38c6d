"""What a cutter does to a sheet, in words: its setting, its operations, and what it leaves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import depth_text, depths_in, drill_text
from kerfolio.basis.exact_figures import exact_text
from kerfolio.basis.figured import together
from kerfolio.basis.figures import minutes_short, minutes_text, whole_figure
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import told
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.layer import ON, SIDES, operation_called
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.edition.side_words import offset_text
from kerfolio.model.plan import CutSetting
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from kerfolio.settling.titles import part_title
from kerfolio.shop.cut_setting import Setting
from kerfolio.shop.sheet_run import ByHand, Run, Work


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLine:
    """An operation in words; empty texts where nothing is known. ``side`` is that of the line."""

    operation: Operation
    what: str
    side: str
    depth: str
    passes: str
    bridges: str
    minutes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RunLines:
    """A cutter with its setting in words, and what it does in order.

    Without a cutter ``figures`` say why none is named.
    """

    cutter: str
    figures: str
    details: tuple[str, ...]
    works: tuple[WorkLine, ...]


def run_lines(found: Ranged, run: Run, reader: Reader, *, whole: bool = True) -> RunLines:
    """Return a run in words; its setting's passes are told only where they are all run.

    An engraving ends far above the last of them.
    """
    works = tuple(_work(found, run, each, reader) for each in run.works)
    if run.setting is None:
        return RunLines(
            cutter="", figures=say(reader, "setup-no-settings"), details=(), works=works
        )
    name = run.setting.name
    setting = found.here.setting(name)
    assert setting is not None, "a run has a setting"
    main, other = _figures(run.setting, reader)
    beside = any(SIDES[each.operation] != ON for each in run.works)
    offset = ""
    if beside:
        offset = say(reader, "setup-offset", offset=offset_text(setting.cutter.diameter, reader))
    passes = found.told(
        lambda facts: facts.setting(name),
        lambda each: _passes_words(each, reader),
        lambda each: _passes_words(each, reader, _exactly),
    )
    details = (other, passes if whole else "")
    return RunLines(
        cutter=setting.cutter.title,
        figures=", ".join(filter(None, (main, offset))),
        details=tuple(filter(None, details)),
        works=works,
    )


def _figures(setting: CutSetting, reader: Reader) -> tuple[str, str]:
    """Return speed and feeds in the first unit, and the feeds in the other."""
    speed = ""
    if setting.speed_rpm is not None:
        speed = say(reader, "setup-speed", rpm=whole_figure(setting.speed_rpm))
    rates = [("feed", setting.feed_mm_per_min), ("plunge", setting.plunge_mm_per_min)]
    stated = [(name, rate) for name, rate in rates if rate is not None]
    scales = ((1.0, "mm/min"), (float(MM_PER_UNIT["in"]), "in/min"))
    texts = ["", ""]
    if stated:
        texts = [
            say(reader, "setup-rates", rates=_rates(stated, scale, reader), unit=unit)
            for scale, unit in scales
        ]
    main, other = texts if reader.unit == "mm" else reversed(texts)
    return ", ".join(filter(None, (speed, main))), other


def _rates(stated: Sequence[tuple[str, float]], scale: float, reader: Reader) -> str:
    return ", ".join(
        say(reader, f"setup-{name}", rate=whole_figure(rate / scale)) for name, rate in stated
    )


def _passes_words(
    setting: Setting,
    reader: Reader,
    told: Callable[[Sequence[float | None], Reader], str] | None = None,
) -> str:
    """Return how deep the passes of a setting go: ``passes to 8 mm (5/16 in), then through``."""
    if setting.depths is None:
        return say(reader, "setup-passes-diameter")
    if not setting.depths:
        return say(reader, "setup-passes-one")
    depths = (told or _depths_text)(setting.depths, reader)
    return say(
        reader, "setup-passes-through" if setting.through else "setup-passes-to", depths=depths
    )


def _work(found: Ranged, run: Run, work: Work, reader: Reader) -> WorkLine:
    def same(facts: SheetFacts) -> Work | None:
        return facts.work(run, work.operation)

    def minutes(facts: SheetFacts) -> float | None:
        each = same(facts)
        return each.minutes if each else None

    def passes(facts: SheetFacts) -> int | None:
        each = same(facts)
        return each.passes if each else None

    def told_passes(count: float) -> str:
        return say(reader, "setup-passes", count=int(count))

    def short(told: float) -> str:
        return minutes_short(told, reader)

    return WorkLine(
        operation=work.operation,
        what=operation_called(work.operation, reader).capitalize(),
        side=say(reader, f"setup-side-{SIDES[work.operation]}"),
        depth=found.told(
            same,
            lambda each: _depths_text(each.depths, reader),
            lambda each: _exactly(each.depths, reader),
        ),
        passes=found.most(passes, told_passes, reader) if work.passes else "",
        bridges=found.told(
            same,
            lambda each: _bridges(each, depth_text(each.bridge_height, reader), reader),
            lambda each: _bridges(each, exact_text(each.bridge_height, reader), reader),
        ),
        minutes="" if work.minutes is None else found.most(minutes, short, reader),
    )


def _bridges(work: Work, height: str, reader: Reader) -> str:
    """Return ``28 bridges 2 mm (5/64 in) high``; nothing where there are none."""
    if not work.bridges:
        return ""
    return say(reader, "setup-bridges", count=work.bridges, height=height)


def _exactly(depths: Sequence[float | None], reader: Reader) -> str:
    """Return depths of cut as figures: ``5.93 mm (0.233 in) and through``."""
    deep = [exact_text(each, reader) for each in depths if each is not None]
    return listed(reader, [*deep, *_through(depths, reader)])


def _depths_text(depths: Sequence[float | None], reader: Reader) -> str:
    """Return depths of cut: ``8 mm (5/16 in)``, ``6 and 8 mm``, ``8 mm and through``."""
    deep = [each for each in depths if each is not None]
    words = []
    if len(deep) == 1:
        words = [depth_text(deep[0], reader)]
    elif deep:
        words = [depths_in(deep, reader, say(reader, "setup-depths-last"))]
    return listed(reader, [*words, *_through(depths, reader)])


def _through(depths: Sequence[float | None], reader: Reader) -> list[str]:
    return [say(reader, "setup-through")] if None in depths else []


def cutting_time(found: Ranged, reader: Reader) -> str:
    """Return ``about 9 minutes``, or the most that it comes to; empty where no time is known."""
    if not found.here.time.known:
        return ""

    def told(minutes: float) -> str:
        return minutes_text(minutes, reader)

    return found.most(lambda each: each.time.minutes, told, reader, about=True)


def by_hand_line(found: Ranged, left: ByHand, reader: Reader) -> str:
    """Return what no stated setting cuts: ``Drill by hand: 2 holes ø 6 mm, through, in A``."""

    def same(facts: SheetFacts) -> ByHand | None:
        return facts.by_hand(left)

    where = of_part(left.part, found.here.settled, reader)
    depth = found.told(
        same,
        lambda each: _depths_text(each.depths, reader),
        lambda each: _exactly(each.depths, reader),
    )
    if left.operation is not Operation.HOLE:
        return say(
            reader,
            f"setup-left-{left.operation}",
            where=where,
            depth=depth,
            why=told(left.why, reader),
        )
    wide = found.told(
        same,
        lambda each: listed(reader, [f"ø {drill_text(one, reader)}" for one in each.widths]),
        lambda each: _bored(each.widths, reader),
    )
    return say(reader, "setup-drill", count=left.count, wide=wide, depth=depth, where=where)


def _bored(widths: Sequence[float], reader: Reader) -> str:
    return listed(reader, [together("ø ", exact_text(each, reader)) for each in widths])


def of_part(part: SettledPart, settled: SettledPlan, reader: Reader) -> str:
    """Return what a part is called beside the machine: ``A, Left side``."""
    return f"{part.mark}, {part_title(settled.plan, part.name, reader)}"
