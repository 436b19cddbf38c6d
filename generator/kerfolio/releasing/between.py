"""A record at any thickness of its range: lengths are linear in thickness, so that its corners do.

Where something of a part is made otherwise at another corner (a corner that vanishes), the nearest
point that was recorded stands for it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import product

from kerfolio.model.release_record import (
    Pair,
    RecordedContour,
    RecordedPoint,
    RecordedSeat,
    RecordedSheet,
    ReleaseRecord,
    Shape,
)
from kerfolio.settling.points import MIXED

_SAME = 1e-6

Thickness = Mapping[str, float]


def common_points(old: ReleaseRecord, new: ReleaseRecord) -> tuple[dict[str, float], ...]:
    """Return where two releases can be compared: each corner of the range that both are for.

    The thicknesses that they are drawn for are among them where both ranges hold these. None where
    the ranges of a sheet lie apart.
    """
    ranges: dict[str, tuple[float, float]] = {each.name: _ends(each) for each in old.sheets}
    for each in new.sheets:
        least, most = ranges.get(each.name, _ends(each))
        ranges[each.name] = (max(least, each.least), min(most, each.most))
    if any(least > most + _SAME for least, most in ranges.values()):
        return ()
    ends = list(ranges.values())
    wide = product(*ends) if len(ends) <= MIXED else zip(*ends, strict=True)
    points = [dict(zip(ranges, each, strict=True)) for each in wide]
    for record in (new, old):
        own = {**points[0], **record.drawn.thickness}
        if all(
            least - _SAME <= own[name] <= most + _SAME for name, (least, most) in ranges.items()
        ):
            points.append(own)
    return tuple({tuple(sorted(each.items())): each for each in points}.values())


def _ends(sheet: RecordedSheet) -> tuple[float, float]:
    return sheet.least, sheet.most


def at(record: ReleaseRecord, thickness: Thickness) -> RecordedPoint:
    """Return a record where its sheets are so thick, mm; sheets that it has not are passed over."""
    wanted = {name: thickness.get(name, mm) for name, mm in record.drawn.thickness.items()}
    for point in record.points:
        if all(abs(point.thickness[name] - mm) <= _SAME for name, mm in wanted.items()):
            return point
    weighed = list(_weighed(record, wanted))
    near = max(weighed, key=lambda each: each[0])[1]
    return RecordedPoint(
        thickness=wanted,
        shapes={
            name: _shape([(w, point.shapes[name]) for w, point in weighed], near.shapes[name])
            for name in near.shapes
        },
        pairs=tuple(
            tuple(
                _pair([(w, point.pairs[joint][index]) for w, point in weighed], pair)
                for index, pair in enumerate(pairs)
            )
            for joint, pairs in enumerate(near.pairs)
        ),
    )


def _weighed(record: ReleaseRecord, wanted: Thickness) -> Iterator[tuple[float, RecordedPoint]]:
    """Yield corners of the range, each with its share of what lies at the wanted thickness."""
    shares = {each.name: _share(each, wanted[each.name]) for each in record.sheets}
    counted = record.sheets
    if len(shares) > MIXED:  # nothing but both ends was recorded: all sheets go along together
        counted = counted[:1]
        shares[counted[0].name] = math.fsum(shares.values()) / len(shares)
    for point in record.points:
        weights = [_weight(each, point, shares[each.name]) for each in counted]
        if None not in weights:
            yield math.prod(each for each in weights if each is not None), point


def _weight(sheet: RecordedSheet, point: RecordedPoint, share: float) -> float | None:
    """Return the share of a corner as far as a sheet goes; None where it is at neither end."""
    mm = point.thickness[sheet.name]
    if abs(mm - sheet.most) <= _SAME:
        return share
    return 1 - share if abs(mm - sheet.least) <= _SAME else None


def _share(sheet: RecordedSheet, mm: float) -> float:
    wide = sheet.most - sheet.least
    return (mm - sheet.least) / wide if wide > _SAME else 1.0


def _shape(weighed: Sequence[tuple[float, Shape]], near: Shape) -> Shape:
    forms = {
        tuple((len(contour.line), contour.depth > 0) for contour in shape) for _, shape in weighed
    }
    if len(forms) > 1:
        return near
    return tuple(
        RecordedContour(
            line=tuple(
                _mean3([(w, shape[index].line[number]) for w, shape in weighed])
                for number in range(len(contour.line))
            ),
            depth=_mean([(w, shape[index].depth) for w, shape in weighed]),
        )
        for index, contour in enumerate(near)
    )


def _pair(weighed: Sequence[tuple[float, Pair]], near: Pair) -> Pair:
    first, second = (
        _seat([(w, pair[which]) for w, pair in weighed], near[which]) for which in (0, 1)
    )
    return first, second


def _seat(weighed: Sequence[tuple[float, RecordedSeat]], near: RecordedSeat) -> RecordedSeat:
    gaps = {len(seat.gaps) for _, seat in weighed}
    origin, x, z = (_mean3([(w, seat.frame[i]) for w, seat in weighed]) for i in range(3))
    return RecordedSeat(
        frame=(origin, x, z),
        size=_mean3([(w, seat.size) for w, seat in weighed]),
        gaps=near.gaps
        if len(gaps) > 1
        else tuple(_mean([(w, s.gaps[i]) for w, s in weighed]) for i in range(len(near.gaps))),
    )


def _mean(weighed: Sequence[tuple[float, float]]) -> float:
    return math.fsum(weight * value for weight, value in weighed)


def _mean3(
    weighed: Sequence[tuple[float, tuple[float, float, float]]],
) -> tuple[float, float, float]:
    x, y, z = (_mean([(weight, value[i]) for weight, value in weighed]) for i in range(3))
    return x, y, z
