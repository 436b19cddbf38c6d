"""A stated part made into its flat shape, plain and relieved, with its cuts in order."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from itertools import chain, compress, islice, product
from itertools import count as counting

from kerfolio.basis.budgets import FEATURES, MEETINGS, OUTLINE, POINTS
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.masses import KG_PER_MM3
from kerfolio.basis.measures import length, point
from kerfolio.basis.said import Words, named, said, stated_name
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.near import alike, meetings
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.feature_kind import HOLE
from kerfolio.model.outline import Drawing, Drawn
from kerfolio.model.part import Part
from kerfolio.model.plan import CutSetting
from kerfolio.model.stock import Stock
from kerfolio.settling.bench import Bench
from kerfolio.settling.bridges import asked_bridges, bridges_of
from kerfolio.settling.clearance import AskedOfPart
from kerfolio.settling.copies import copies, copy_count, how_many
from kerfolio.settling.drawn import drawn_features, drawn_part
from kerfolio.settling.drawn_edge import MadeEdges
from kerfolio.settling.feature_kinds import shapes_of
from kerfolio.settling.fitted import Fitting
from kerfolio.settling.left_off import left_off
from kerfolio.settling.outline import outline_contour
from kerfolio.settling.outside import OUTSIDE, told_outside
from kerfolio.settling.scope import SettlingError, misshapen, within
from kerfolio.settling.settled import (
    Cut,
    Operation,
    SettledBridge,
    SettledPart,
    SettledPiece,
    SettledSheet,
)
from kerfolio.settling.shape import Shape, recess, recess_volume, shape_of
from kerfolio.settling.shaped import Shaped
from kerfolio.settling.sketched import sketched
from kerfolio.settling.treated_edges import treated_edges

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
_EDGE = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What parts are made from besides their own statements.

    ``butted`` are the sides of each part that butt on another piece, ``kept`` its bridges at the
    thickness it is drawn for, ``asked`` what joints ask of its features.
    """

    fitting: Fitting
    stock: Stock
    drawings: tuple[Drawing, ...]
    cuts: tuple[CutSetting, ...] = ()
    butted: Mapping[str, frozenset[str]] = field(default_factory=dict)
    kept: Mapping[str, tuple[SettledBridge, ...]] = field(default_factory=dict)
    asked: Mapping[str, AskedOfPart] = field(default_factory=dict)


def settled_part(part: Part, mark: str, job: Job) -> tuple[SettledPart | None, tuple[Finding, ...]]:
    """Return a part's settled shape, None with findings when it cannot be made."""
    try:
        sheet = job.fitting.sheet(part.sheet)
        within(FEATURES, features_of(part, job), "too-many-features", part.place)
        outline, shapes, findings, edges = _shapes(part, job)
    except SettlingError as trouble:
        return None, (trouble.about(part.name),)
    crowd = MEETINGS.beyond(meetings(_cut_or_added(shapes), MEETINGS.most))
    if crowd is not None:
        words = error("too-many-meetings", str(crowd), part.place, crowd.advice, subject=part.name)
        return None, (*findings, words)
    beside = [each for each in shapes if not _stands(each, outline)]
    findings += tuple(_misplaced(beside, shapes, outline, part))
    shapes = tuple(each for each in shapes if each not in beside)  # for a look
    try:
        shape = shape_of(outline, shapes, sheet)
        pieces = pieces_of(part.name, mark, part.pieces)
        made = assembled(part.name, mark, sheet, pieces, part.grain, shape, shapes)
        asked, sides = asked_bridges(part, job.cuts), job.butted.get(part.name, ())
        drawn = [contour for _, contour in edges.drawn] if edges else []
        kept = job.kept.get(part.name, ())
        held = bridges_of(asked, made, sides, drawn, sheet, job.fitting.scope, kept)
    except SettlingError as trouble:
        found = trouble.finding
        spots = found.sketch.spots if found.sketch else ()
        sketch = sketched(part.name, outline, shapes, _own(found.subject, part), spots=spots)
        return None, (*findings, replace(trouble.about(part.name), sketch=sketch))
    except ShapeError as fault:
        # What stands beside its edge falls off: that has been said already.
        findings = findings or tuple(_outside(shapes, outline, part))
        misfit = misshapen(f"part `{part.name}`", fault, part.place)
        across = [each.feature.name for each in shapes if _is_across(each, outline)]
        sketch = sketched(part.name, outline, shapes, *across)
        return None, findings or (replace(misfit.about(part.name), sketch=sketch),)
    told = edges.told if edges else ()
    treated, without = treated_edges(part, made, outline, job.fitting.scope)
    whole = replace(made, bridges=held, note=part.note, drawn_edges=told, place=part.place)
    lacks = left_off(part, shapes, outline, job.fitting.scope)
    return replace(whole, edges=treated, left_off=lacks), (*findings, *without)


def _own(subject: str, part: Part) -> str:
    """Return what a finding is about without the part's name."""
    return subject.removeprefix(f"{part.name}.")


def _outside(shapes: Sequence[Shaped], outline: Contour, part: Part) -> Iterator[Finding]:
    """Yield a finding for each feature that lies outside a part which is none: its size is wrong.

    Of a part that can be made the rules tell that.
    """
    for shaped in shapes:
        feature = shaped.feature
        there = [] if feature.kind.on_edge else list(feature.shape)
        if there and not any(intersects(outline, each) for each in there):
            message, advice = told_outside(part.name, feature, "outside", there[0])
            about = f"{part.name}.{feature.name}"
            sketch = sketched(part.name, outline, shapes, feature.name)
            yield error(OUTSIDE, message, feature.place, advice, subject=about, sketch=sketch)


def _is_across(shaped: Shaped, outline: Contour) -> bool:
    """Tell whether what a feature cuts away reaches over the outline."""
    return any(not contains(outline, each, _EDGE) for each in shaped.taken)


def features_of(part: Part, job: Job) -> int:
    """Return how many features a part has, all copies counted, before any is made.

    What cannot be counted is told where it is made.
    """
    count = 0
    if isinstance(part.shape, Drawn):
        with suppress(SettlingError):
            count = drawn_features(part.shape, job.drawings, job.fitting.scope.unit)
    for feature in part.features:
        try:
            count += how_many(feature, job.fitting.scope)
        except SettlingError:
            continue
    return count


def _cut_or_added(shapes: Iterable[Shaped]) -> tuple[Contour, ...]:
    return tuple(each for shaped in shapes for each in (*shaped.added, *shaped.taken))


def _points_of(shaped: Shaped) -> int:
    return sum(len(each.vertices) for each in shaped.feature.shape)


def _shapes(
    part: Part, job: Job
) -> tuple[Contour, tuple[Shaped, ...], tuple[Finding, ...], MadeEdges | None]:
    """Return the outline and every feature's shapes; features that fail leave a finding.

    Of a drawn part also what became of the notches and tabs in its outline.
    """
    shapes: list[Shaped] = []
    edges: MadeEdges | None = None
    fitting = replace(
        job.fitting,
        asked=job.asked.get(part.name, {}),
        into=job.fitting.sheets.get(part.sheet.name),
    )
    if isinstance(part.shape, Drawn):
        drawings = {each.file: each for each in job.drawings}
        drawn = drawn_part(part.shape, fitting, drawings)
        outline, edges = drawn.outline, drawn.edges
        shapes += drawn.shapes
    else:
        what = f"outline of `{part.name}`"
        outline = outline_contour(part.shape, job.fitting.scope, what, centred=False)
    within(OUTLINE, len(outline.vertices), "too-many-points", part.place)
    bench = Bench(fitting=fitting, outline=outline, stock=job.stock, drawings=job.drawings)
    findings: list[Finding] = []
    points = sum(map(_points_of, shapes))
    for feature in part.features:
        try:
            stated = shapes_of(feature, bench)
            points += sum(map(_points_of, stated)) * copy_count(feature, job.fitting.scope)
            within(POINTS, points, "too-many-points", feature.place)
            every = copies(feature, stated, job.fitting.scope)
            findings += _over_drawn(every, edges, outline, part)
            shapes += every
        except SettlingError as trouble:
            about = trouble.about(f"{part.name}.{feature.name}")
            findings.append(replace(about, sketch=sketched(part.name, outline, ())))
    return outline, tuple(shapes), tuple(findings), edges


def _over_drawn(
    every: Sequence[Shaped], edges: MadeEdges | None, outline: Contour, part: Part
) -> Iterator[Finding]:
    """Yield a finding for each stated tab or notch where the outline has one already."""
    for shaped in every if edges else ():
        kind, name = shaped.feature.kind, f"{part.name}.{shaped.feature.name}"
        drawn = [area for each, area in edges.drawn if each is kind] if edges else []
        stated = (*shaped.added, *shaped.taken)
        area = next((a for a in drawn if any(intersects(a, each) for each in stated)), None)
        if area is not None:
            where = point(*bounds(area).centre)
            words = "{} {} lies over one that is drawn in the outline, at {}"
            message = said(words, kind.name, named(name), where)
            advice = (
                f"Take it out of the plan and write `{kind.outlined}: takes {part.sheet}` in the "
                "part's `drawing`; or draw the edge straight."
            )
            rule, place = f"{kind}-drawn-twice", shaped.feature.place
            sketch = sketched(part.name, outline, every, shaped.feature.name)
            yield error(rule, message, place, advice, subject=stated_name(name), sketch=sketch)


def _misplaced(
    beside: Iterable[Shaped], shapes: Sequence[Shaped], outline: Contour, part: Part
) -> Iterator[Finding]:
    """Yield a finding for each of the part's shapes that stands ``beside`` its edge."""
    for shaped in beside:
        feature = shaped.feature
        name = f"{part.name}.{feature.name}"
        message = said("{} {} is not on the edge", feature.kind.name, named(name))
        edge, (a, b) = shaped.edge, shaped.stretch or (math.inf, -math.inf)
        if edge is not None and (a < edge.first - _EDGE or b > edge.last + _EDGE):
            ends = edge.first, edge.last
            where = _reaches("edge", ends), _reaches(feature.kind.name, (a, b))
            message = said("{}: {}, {}", message, *where)
        advice = "The edge must be straight, and as long as the feature, where it stands."
        rule, subject = f"{feature.kind}-off-edge", stated_name(name)
        sketch = sketched(part.name, outline, shapes, feature.name)
        yield error(rule, message, feature.place, advice, subject=subject, sketch=sketch)


def _stands(shaped: Shaped, outline: Contour) -> bool:
    """Tell whether a tab, a notch or a row of fingers stands on its edge; all else does."""
    stands = all(contains(outline, each, _EDGE) for each in shaped.stands_on)
    return stands and not any(intersects(outline, each) for each in shaped.stands_out)


def _reaches(what: str, ends: tuple[float, float]) -> Words:
    """Return from where to where along an edge something reaches: ``edge 50 mm to 270 mm``."""
    first, last = length(f"{what}-from", ends[0]), length(f"{what}-to", ends[1])
    return said("{} {} to {}", what, first, last)


def pieces_of(name: str, mark: str, names: Sequence[str]) -> tuple[SettledPiece, ...]:
    """Return the pieces of a part: ``side.left`` marked A1, or the part itself marked A."""
    if not names:
        return (SettledPiece(label=name, mark=mark),)
    return tuple(
        SettledPiece(label=f"{name}.{each}", mark=f"{mark}{number}")
        for number, each in enumerate(names, start=1)
    )


def assembled(
    name: str,
    mark: str,
    sheet: SettledSheet,
    pieces: tuple[SettledPiece, ...],
    grain: str,
    shape: Shape,
    shapes: Sequence[Shaped],
) -> SettledPart:
    """Return a part from its shape and features: cuts in order, sizes, area and mass."""
    recessed = [recess(cut, shaped, shape.plain, sheet) for shaped in shapes for cut in shaped.cuts]
    partial = [each.cut for each in recessed]
    moved = [*shape.moved, *(more for each in recessed for more in each.moved)]
    cuts = (*sorted(partial, key=_order), *_through(shape.routed, shapes))
    box, flat = bounds(shape.routed), area(shape.routed)
    recesses = [cut for cut in partial if cut.operation is not Operation.ENGRAVE]
    removed = recess_volume(recesses, shape.routed)
    return SettledPart(
        name=name,
        mark=mark,
        sheet=sheet.name,
        thickness=sheet.thickness,
        pieces=pieces,
        grain=grain,
        plain=shape.plain,
        routed=shape.routed,
        cuts=cuts,
        drill_centres=shape.drill_centres,
        features=tuple(shaped.feature for shaped in shapes),
        size=(box.width, box.height),
        area=flat,
        reliefs=shape.reliefs,
        moved=tuple(moved),
        mass=max(0.0, flat * sheet.thickness - removed) * sheet.stock.density * KG_PER_MM3,
    )


_SEQUENCE = (Operation.ENGRAVE, Operation.POCKET, Operation.HOLE)


def _order(cut: Cut) -> tuple[int, float]:
    return _SEQUENCE.index(cut.operation), cut.depth or 0.0


def _through(routed: Region, shapes: Sequence[Shaped]) -> Iterator[Cut]:
    """Yield what goes through the sheet: holes, other openings, last the outline."""
    round_holes = [
        each for shaped in shapes if shaped.feature.kind is HOLE for each in shaped.taken
    ]
    are_holes = alike(routed.openings, round_holes, SAME)
    holes = tuple(compress(routed.openings, are_holes))
    openings = tuple(
        each for each, hole in zip(routed.openings, are_holes, strict=True) if not hole
    )
    for operation, contours in ((Operation.HOLE, holes), (Operation.OPENING, openings)):
        if contours:
            yield Cut(operation=operation, depth=None, contours=contours)
    yield Cut(operation=Operation.OUTLINE, depth=None, contours=(routed.outer,))


def marks(count: int) -> tuple[str, ...]:
    """Return short marks for parts: A, B ... without I and O, then AA, AB ..."""
    words = chain.from_iterable(product(_LETTERS, repeat=size) for size in counting(1))
    return tuple("".join(word) for word in islice(words, count))
