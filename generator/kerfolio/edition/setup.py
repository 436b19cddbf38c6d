"""What setup sheets tell, for paper and pages alike: a record for each sheet and each engraving."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.cutting_lengths import depth_text, depths_in, drill_text, place_text
from kerfolio.basis.figures import minutes_short, minutes_text, whole_figure
from kerfolio.basis.lengths import MM_PER_UNIT, both_text, inch_number, mm_number
from kerfolio.basis.words import counted, listed
from kerfolio.drawing.layer import ON, SIDES
from kerfolio.drawing.setup_view import SETUP_NAMES
from kerfolio.edition.edition import Edition
from kerfolio.edition.layout_time import layout_time
from kerfolio.edition.path_words import path_lines
from kerfolio.edition.side_words import offset_text
from kerfolio.layouts.clamp_spots import ClampSpot, clamp_spots, clear_of_pieces
from kerfolio.layouts.layout import SheetLayout
from kerfolio.model.plan import CutSetting
from kerfolio.settling.bridges import parts_to_hold
from kerfolio.settling.settled import CENTRE, Cut, Operation, SettledPlan, SettledSheet
from kerfolio.shop.art import Art, arts_of
from kerfolio.shop.cut_setting import Setting, settings_of
from kerfolio.shop.cut_time import CutTime, Placed, sheet_time
from kerfolio.shop.sheet_run import ByHand, Run, Work, runs_of

CAUTIONS = (
    "Eyes and ears protected, dust drawn off, no loose sleeves. Nothing loose on the table.",
    "Hold the sheet everywhere; no clamp or screw in the cutter’s way. Run the first lines above "
    "the sheet, a hand on the stop.",
    "Never leave the machine alone. Let the cutter stop before you reach in.",
)
DEFER = (
    "The maker’s settings on the maker’s machine, a place to begin and no rating. Your machine’s "
    "manual, the cutter maker’s limits, local codes and licensed practice come first."
)
NO_CLAMP = "No edge has room: hold the sheet by vacuum, tape or screws in the waste."
COMPARE = "Your toolpath program should find, along the drawn lines:"
_NO_SETTINGS = "The plan states no cut settings for this sheet: choose your own, and try them."
_OTHER_CUTTER = "The plan's cut settings are for another cutter: choose your own, and try them."


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


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupSheet:
    """What is told of one sheet on the machine; ``minutes`` 0 where no time is known.

    ``below`` is how far cuts that go through enter the spoilboard, ``compare`` what a toolpath
    program should find on each layer.
    """

    layout: SheetLayout
    sheet: SettledSheet
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    minutes: float
    between: str
    spots: tuple[ClampSpot, ...]
    clear: float
    zero: str
    zero_z: str
    below: str
    clamps: tuple[str, ...]
    compare: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupArt:
    """What is told of one engraving on a finished piece; lengths in both units."""

    art: Art
    runs: tuple[RunLines, ...]
    by_hand: tuple[str, ...]
    minutes: float
    size: str
    depth: str
    steps: tuple[str, ...]
    pieces: tuple[str, ...]

    @property
    def title(self) -> str:
        """What heads its page: ``Art on A, end``."""
        return f"{self.art.name.capitalize()} on {self.art.part.mark}, {self.art.part.name}"


def setup_sheets(edition: Edition) -> tuple[SetupSheet, ...]:
    """Return a record for every sheet of the layout, in order, at the thickness that is drawn."""
    settled, sheets = edition.settled, edition.layout.sheets
    times = edition.times or tuple(layout_time(settled, each) for each in sheets)
    return tuple(_sheet(edition, each, time) for each, time in zip(sheets, times, strict=True))


def setup_arts(edition: Edition) -> tuple[SetupArt, ...]:
    """Return a record for every engraving of every part."""
    return tuple(_art(edition, each) for each in arts_of(edition.settled))


def _sheet(edition: Edition, layout: SheetLayout, time: CutTime) -> SetupSheet:
    settled, first = edition.settled, edition.first
    sheet = settled.sheet(layout.sheet)
    counts = Counter(each.part for each in layout.placements)
    runs, left = runs_of(settled, layout.sheet, counts, time)
    spots = clamp_spots(settled, layout)
    return SetupSheet(
        layout=layout,
        sheet=sheet,
        runs=tuple(_run(settled, each, layout.sheet, first) for each in runs),
        by_hand=(*(_by_hand(each, first) for each in left), *_taped(settled, counts)),
        minutes=time.minutes if time.known else 0.0,
        between=minutes_short((time.rapid_seconds + time.change_seconds) / 60) * time.known,
        spots=spots,
        clear=clear_of_pieces(settled, layout.sheet),
        zero="Middle of the sheet" if sheet.datum == CENTRE else "Lower left corner",
        zero_z="Face of the sheet",
        below=_below(settings_of(settled, layout.sheet), first),
        clamps=_clamps(spots, first),
        compare=path_lines(settled, layout, first),
    )


def _art(edition: Edition, art: Art) -> SetupArt:
    """Work an engraving out as if nothing else were cut."""
    settled, first = edition.settled, edition.first
    cut = Cut(operation=Operation.ENGRAVE, depth=art.depth, contours=art.lines, feature=art.name)
    alone = replace(settled, parts=(replace(art.part, cuts=(cut,)),))
    time = sheet_time(alone, art.part.sheet, (Placed(part=art.part.name),))
    runs, left = runs_of(alone, art.part.sheet, {art.part.name: 1}, time)
    one, other = (place_text(each, first) for each in art.distances)
    return SetupArt(
        art=art,
        runs=tuple(_run(settled, each, art.part.sheet, first, whole=False) for each in runs),
        by_hand=tuple(_by_hand(each, first) for each in left),
        minutes=time.minutes if time.known else 0.0,
        size=f"{both_text(art.size[0], first)} wide, {both_text(art.size[1], first)} high",
        depth=depth_text(art.depth, first),
        steps=_steps(art, one, other),
        pieces=tuple(piece.mark for piece in art.part.pieces),
    )


def _steps(art: Art, one: str, other: str) -> tuple[str, ...]:
    straight = all(each.straight for each in art.reaches)
    edges = "the red edges, square to them" if straight else "rules laid against its red sides"
    return (
        f"Mark the centre of the art on the piece: {one} and {other} from {edges}.",
        "Fix the piece as drawn, x to the right, the art’s side up. Check both distances again.",
        "Zero x and y over the mark, z on the face.",
        "Run the file of the art alone: its 0,0 is the middle of the art.",
    )


def _run(settled: SettledPlan, run: Run, sheet: str, first: str, *, whole: bool = True) -> RunLines:
    """Return a run in words; its setting's passes are told only where they are all run.

    An engraving ends far above the last of them.
    """
    works = tuple(_work(each, first) for each in run.works)
    if run.setting is None:
        return RunLines(cutter="", figures=_unset(settled.sheet(sheet)), details=(), works=works)
    name = run.setting.name
    setting = next(each for each in settings_of(settled, sheet) if each.name == name)
    main, other = _figures(run.setting, first)
    beside = any(SIDES[each.operation] != ON for each in run.works)
    offset = f"offset {offset_text(setting.cutter.diameter, first)}" if beside else ""
    details = (name, other, whole * passes_words(setting, first))
    return RunLines(
        cutter=setting.cutter.title,
        figures=", ".join(filter(None, (main, offset))),
        details=tuple(filter(None, details)),
        works=works,
    )


def _unset(sheet: SettledSheet) -> str:
    return _NO_SETTINGS if sheet.diameter == sheet.cutter.diameter else _OTHER_CUTTER


def _figures(setting: CutSetting, first: str) -> tuple[str, str]:
    """Return speed and feeds in the first unit, and the feeds in the other."""
    speed = "" if setting.speed_rpm is None else f"{whole_figure(setting.speed_rpm)} rpm"
    rates = [("feed", setting.feed_mm_per_min), ("plunge", setting.plunge_mm_per_min)]
    stated = [(name, rate) for name, rate in rates if rate is not None]
    per = float(MM_PER_UNIT["in"])
    metric = ", ".join(f"{name} {whole_figure(rate)}" for name, rate in stated)
    inch = ", ".join(f"{name} {whole_figure(rate / per)}" for name, rate in stated)
    texts = [f"{metric} mm/min", f"{inch} in/min"] if stated else ["", ""]
    main, other = texts if first == "mm" else reversed(texts)
    return ", ".join(filter(None, (speed, main))), other


def passes_words(setting: Setting, first: str) -> str:
    """Return how deep the passes of a setting go: ``passes to 8 mm (5/16 in), then through``."""
    if setting.depths is None:
        return "one cutter diameter a pass"
    deep = f"passes to {depths_text(setting.depths, first)}" if setting.depths else "one pass"
    return f"{deep}, then through" if setting.through and setting.depths else deep


def _work(work: Work, first: str) -> WorkLine:
    minutes = work.minutes
    return WorkLine(
        operation=work.operation,
        what=SETUP_NAMES[work.operation].capitalize(),
        side="on line" if SIDES[work.operation] == ON else SIDES[work.operation],
        depth=depths_text(work.depths, first),
        passes=counted(work.passes, "pass", "passes") if work.passes else "",
        bridges=_bridges(work, first),
        minutes="" if minutes is None else minutes_short(minutes),
    )


def _bridges(work: Work, first: str) -> str:
    """Return ``28 bridges 2 mm (5/64 in) high``; nothing where there are none."""
    if not work.bridges:
        return ""
    return f"{counted(work.bridges, 'bridge')} {depth_text(work.bridge_height, first)} high"


def depths_text(depths: Sequence[float | None], first: str) -> str:
    """Return depths of cut: ``8 mm (5/16 in)``, ``6 and 8 mm``, ``8 mm and through``."""
    deep = [each for each in depths if each is not None]
    words = []
    if len(deep) == 1:
        words = [depth_text(deep[0], first)]
    elif deep:
        words = [depths_in(deep, first, " and ")]
    return listed([*words, *(["through"] if None in depths else [])])


def time_words(minutes: float) -> str:
    """Return ``about 9 minutes``; nothing where no time is known."""
    return f"about {minutes_text(minutes)}" if minutes else ""


def _by_hand(left: ByHand, first: str) -> str:
    where = f"{left.part.mark}, {left.part.name}"
    depth = depths_text(left.depths, first)
    if left.operation is Operation.HOLE:
        wide = listed([f"ø {drill_text(each, first)}" for each in left.widths])
        return f"Drill by hand: {counted(left.count, 'hole')} {wide}, {depth}, in {where}"
    return f"{SETUP_NAMES[left.operation].capitalize()} of {where}, {depth}: {left.why}"


def _taped(settled: SettledPlan, counts: Mapping[str, int]) -> Iterator[str]:
    """Yield a line for each part that is to have bridges, and on which none can stand."""
    asked = parts_to_hold(settled.plan)
    for part in settled.parts:
        if part.name in counts and part.name in asked and not part.is_held:
            where = f"{part.mark}, {part.name}"
            yield f"Tape {where} down, or leave a thin skin: no bridge can stand on it"


def _below(settings: Sequence[Setting], first: str) -> str:
    deep = max((each.skim for each in settings if each.through), default=0.0)
    return depth_text(deep, first) if deep else "no depth stated"


def _clamps(spots: Sequence[ClampSpot], first: str) -> tuple[str, ...]:
    """Return where along x and where along y the spots lie, by their numbers."""
    numbered = list(enumerate(spots, 1))
    ways = (("along x", ("bottom", "top")), ("along y", ("left", "right")))
    found = []
    for way, on in ways:
        where = [f"{n} from {_stretch(each, first)}" for n, each in numbered if each.edge in on]
        if where:
            found.append(f"{way}: {', '.join(where)} {first}")
    return tuple(found)


def _stretch(spot: ClampSpot, first: str) -> str:
    """Return where a spot begins and ends, to the mm or to half an inch, without the unit."""
    if first == "mm":
        return " to ".join(mm_number(each, 0) for each in spot.along)
    return " to ".join(inch_number(each, 2) for each in spot.along)
