"""A plan as a record keeps it: shapes and joints over its range, lists, steps and figures.

It is settled anew at the corners of its range. Where pieces meet is read off the plan put together:
which way each joint goes is known there.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.assembly.links import Link, links_of
from kerfolio.assembly.poses import Together, put_together
from kerfolio.basis.digits import LENGTH_DECIMALS, RATIO_DECIMALS, rounded
from kerfolio.basis.json_text import json_text, number
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds, contours_of
from kerfolio.geometry.rigid import Rigid, Vector, added, scaled
from kerfolio.model.joint_kind import FINGER_JOINT, NOTCH_JOINT, TAB_JOINT
from kerfolio.model.plan import Plan, Step
from kerfolio.model.release_record import (
    Frame,
    Pair,
    RecordedBoard,
    RecordedContour,
    RecordedEnd,
    RecordedJoint,
    RecordedPart,
    RecordedPoint,
    RecordedSeat,
    RecordedSheet,
    RecordedStep,
    ReleaseRecord,
    Shape,
)
from kerfolio.model.stock import Stock
from kerfolio.releasing.digest import digest
from kerfolio.settling.fastened import Seat
from kerfolio.settling.making import one_of
from kerfolio.settling.points import corners
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import (
    FitVariant,
    Operation,
    SettledFeature,
    SettledPart,
    SettledPlan,
)
from kerfolio.settling.titles import part_title
from kerfolio.settling.variant import drawn_variant
from kerfolio.settling.variant_name import labelled
from kerfolio.shop.lists import hardware_counts
from kerfolio.shop.mass import weight_of

FASTENING = "fastening"
"""What a record calls pieces that hardware holds together, among its kinds of joint."""

_NO_SIZE = (0.0, 0.0, 0.0)


def corners_of(plan: Plan, stock: Stock) -> tuple[SettledPlan, ...]:
    """Return a plan as it is drawn and at the corners of its range; none where it settles not."""
    aim, settler = drawn_variant(plan, stock), Settler(plan, stock)
    drawn = settler.at(aim)[0] if aim is not None else None
    if drawn is None:
        return ()
    names = [each.name for each in drawn.sheets]
    ends = [each.published for each in drawn.sheets]
    thick = [tuple(zip(names, each, strict=True)) for each in corners(ends)]
    points = (FitVariant(label="", thickness=each) for each in thick if each != aim_of(drawn))
    made = [settler.at(labelled(each, plan.units, drawn.sheets))[0] for each in points]
    settled = tuple(each for each in made if each is not None)
    return (drawn, *settled) if len(settled) == len(made) else ()


def aim_of(settled: SettledPlan) -> tuple[tuple[str, float], ...]:
    """Return the thickness of each sheet at the point of a settled plan."""
    return settled.variant.thickness


def record_of(settled: Sequence[SettledPlan], sheet_count: int = 0) -> ReleaseRecord:
    """Return the record of a plan at its corners (see ``corners_of``), put together there."""
    drawn = settled[0]
    plan = drawn.plan
    joints, pairs = _joined(settled)
    return ReleaseRecord(
        plan=plan.name,
        version=plan.version,
        sheets=tuple(_sheets(drawn)),
        parts=tuple(_part(each, plan) for each in drawn.parts),
        joints=joints,
        points=tuple(
            RecordedPoint(
                thickness=dict(aim_of(each)),
                shapes={part.name: shape_of(part) for part in each.parts},
                pairs=met,
            )
            for each, met in zip(settled, pairs, strict=True)
        ),
        steps=tuple(_step(each) for thing in plan.made for each in thing.steps),
        hardware=dict(hardware_counts(plan)),
        boards=tuple(
            RecordedBoard(
                name=each.use.name,
                stock=each.stock.name,
                length=rounded(each.length),
                count=each.use.count,
            )
            for each in drawn.boards
        ),
        weight=rounded(weight_of(drawn).total),
        sheet_count=sheet_count,
        words=_words(plan),
    )


def _sheets(drawn: SettledPlan) -> Iterator[RecordedSheet]:
    for each in drawn.sheets:
        least, most = each.published
        yield RecordedSheet(
            name=each.name,
            stock=each.stock.name,
            least=rounded(least),
            most=rounded(most),
            drawn=rounded(each.thickness),
            fit=rounded(each.fit),
        )


def _part(part: SettledPart, plan: Plan) -> RecordedPart:
    recessed = any(each.operation in (Operation.POCKET, Operation.ENGRAVE) for each in part.cuts)
    cuts = [
        [each.operation, number(each.depth or 0.0), [_told(c) for c in each.contours]]
        for each in part.cuts
    ]
    return RecordedPart(
        name=part.name,
        title=part_title(plan, part.name),
        sheet=part.sheet,
        pieces=tuple(each.label for each in part.pieces),
        one_face=recessed,
        cut=digest(json_text(cuts)),
    )


def _told(contour: Contour) -> list[list[str]]:
    return [[number(x), number(y), number(b, RATIO_DECIMALS)] for x, y, b in contour.vertices]


def shape_of(part: SettledPart) -> Shape:
    """Return the contours of a part as a hand tool cuts them: without reliefs."""
    through = (RecordedContour(line=_line(each)) for each in contours_of(part.plain))
    recesses = (
        RecordedContour(line=_line(contour), depth=rounded(cut.depth or 0.0))
        for cut in part.cuts
        if cut.operation is Operation.POCKET
        for contour in (cut.square or cut.contours)
    )
    return (*through, *recesses)


def _line(contour: Contour) -> tuple[tuple[float, float, float], ...]:
    return tuple(
        (rounded(x), rounded(y), rounded(bulge, RATIO_DECIMALS)) for x, y, bulge in contour.vertices
    )


def _step(step: Step) -> RecordedStep:
    words = [
        *(step.title, step.text.plain(), step.by_hand, step.caution, *step.tools),
        *(f"{use.count} {use.item.name}" for use in step.uses),
        *("" if step.minutes is None else number(step.minutes), str(step.people)),
    ]
    return RecordedStep(
        title=step.title, add=tuple(each.name for each in step.add), words=digest("\n".join(words))
    )


def _words(plan: Plan) -> str:
    """Return a hash of what is told of a plan besides its steps and its releases."""
    told = [
        *(plan.title, plan.summary, plan.licence, plan.story.plain(), *plan.cautions),
        *(f"{each.question} {each.answer.plain()}" for each in plan.questions),
        *(f"{each.file} {each.alt}" for each in plan.photos),
        *(f"{part.name} {part.note}" for part in plan.parts),
    ]
    return digest("\n".join(told))


_Joined = tuple[tuple[RecordedJoint, ...], tuple[tuple[tuple[Pair, ...], ...], ...]]


def _joined(settled: Sequence[SettledPlan]) -> _Joined:
    """Return the joints of all things, and their pairs at each of the points."""
    joints: list[RecordedJoint] = []
    pairs: list[list[tuple[Pair, ...]]] = [[] for _ in settled]
    for thing in settled[0].plan.made:
        found = [dict(_met(*each)) for each in _placed([one_of(each, thing) for each in settled])]
        kept = [joint for joint in found[0] if all(joint in each for each in found)]
        joints += kept
        for place, each in zip(pairs, found, strict=True):
            place += [each[joint] for joint in kept]
    return tuple(joints), tuple(tuple(each) for each in pairs)


def _placed(ones: Sequence[SettledPlan]) -> Iterator[tuple[SettledPlan, Together | None]]:
    """Yield a thing put together at each point, as it goes where it is drawn."""
    drawn = put_together(ones[0])
    yield ones[0], drawn
    for each in ones[1:]:
        yield each, None if drawn is None else put_together(each, drawn)


_Met = tuple[RecordedJoint, tuple[Pair, ...]]


def _met(settled: SettledPlan, together: Together | None) -> Iterator[_Met]:
    """Yield what meets in a thing put together, with the pairs of features that do."""
    if together is not None:
        yield from _linked(settled, together)
        yield from _fastened(settled, together)


def _linked(settled: SettledPlan, together: Together) -> Iterator[_Met]:
    for link in links_of(settled)[0]:
        chosen = together.ways.get(link.joint.stated)
        way = next((each for each in link.ways if each.number == chosen), None)
        if way is None:
            continue
        kind = link.kind
        a_end, b_end = (_end(link, which) for which in (0, 1))
        joint = RecordedJoint(kind=kind.name, a=a_end, b=b_end, slides=way.slides)
        seats = (
            (_seat(link, 0, index, first), _seat(link, 1, index, second))
            for index, (first, second) in enumerate(way.pairs)
        )
        yield joint, tuple(seats)


def _end(link: Link, which: int) -> RecordedEnd:
    end = (link.a, link.b)[which]
    name = (link.joint.stated.a, link.joint.stated.b)[which].name
    through = bool(end.features) and all(each.depth is None for each in end.features)
    return RecordedEnd(
        piece=end.piece,
        feature=name.removeprefix(end.piece).removeprefix("."),
        through=through and link.kind is not FINGER_JOINT,
    )


def _seat(link: Link, which: int, index: int, frame: Rigid) -> RecordedSeat:
    end = (link.a, link.b)[which]
    feature = end.features[index] if index < len(end.features) else None
    if feature is None:
        return RecordedSeat(frame=_frame(frame), size=_NO_SIZE)
    if link.kind is FINGER_JOINT:
        return RecordedSeat(frame=_frame(frame), size=_NO_SIZE, gaps=_gaps(feature, frame))
    return RecordedSeat(frame=_frame(frame), size=_size(link, which, feature, end.part.thickness))


def _size(
    link: Link, which: int, feature: SettledFeature, thickness: float
) -> tuple[float, float, float]:
    """Return what of a feature decides whether its mate goes in: along, across, in or out."""
    wide, long = rounded(feature.width.value), rounded(feature.length.value)
    if link.kind is TAB_JOINT and which == 0:
        return wide, rounded(thickness), long
    if link.kind is TAB_JOINT:
        return long, wide, rounded(feature.depth.value) if feature.depth else 0.0
    if link.kind is NOTCH_JOINT:
        return 0.0, wide, rounded(thickness)
    return _NO_SIZE


def _gaps(row: SettledFeature, frame: Rigid) -> tuple[float, ...]:
    """Return where the gaps of a row of fingers begin and end along its corner, in order."""
    (zx, zy, _), (x, y) = frame.z, row.at
    found = []
    for gap in row.shape:
        box = bounds(gap)
        ends = ((px - x) * zx + (py - y) * zy for px in (box.x0, box.x1) for py in (box.y0, box.y1))
        spots = sorted(ends)
        found.append((spots[0], spots[-1]))
    return tuple(rounded(each) for pair in sorted(found) for each in pair)


def _fastened(settled: SettledPlan, together: Together) -> Iterator[_Met]:
    """Yield what hardware holds together: the seats of two pieces, one after the other."""
    poses = {each.label: each.pose for each in together.assembled.pieces}
    for each in posed_fastenings(settled, together.assembled):
        seats = [(seat, at) for seat, at in _seats(each) if seat.piece in poses and seat.feature]
        for (one, here), (other, there) in pairwise(seats):
            if one.piece == other.piece:
                continue
            ends = tuple(
                RecordedEnd(
                    piece=seat.piece,
                    feature=seat.feature.name if seat.feature else "",
                    through=seat.is_hole,
                )
                for seat in (one, other)
            )
            frames = (
                poses[seat.piece].inverse.after(replace(each.frame, origin=at))
                for seat, at in ((one, here), (other, there))
            )
            first, second = (RecordedSeat(frame=_frame(f), size=_NO_SIZE) for f in frames)
            yield RecordedJoint(kind=FASTENING, a=ends[0], b=ends[1]), ((first, second),)


def _seats(each: PosedFastening) -> Iterator[tuple[Seat, Vector]]:
    """Yield the seats of a fastening with their middles in the world, on its axis or beside it."""
    yield each.settled.first, each.frame.origin
    for entry in each.entries:
        on = added(each.frame.origin, scaled(each.frame.z, entry.along))
        yield entry.seat, added(on, entry.aside)


def _frame(frame: Rigid) -> Frame:
    return (
        _digits(frame.origin, LENGTH_DECIMALS),
        _digits(frame.x, RATIO_DECIMALS),
        _digits(frame.z, RATIO_DECIMALS),
    )


def _digits(vector: Vector, decimals: int) -> Vector:
    x, y, z = (rounded(each, decimals) for each in vector)
    return x, y, z
