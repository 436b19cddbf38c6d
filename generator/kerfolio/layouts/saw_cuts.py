"""The cuts of a sheet, in the order they are made, from its strips and columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from kerfolio.layouts.saw_levels import Column, Levels, Strip
from kerfolio.layouts.saw_sheet import (
    BLOCK,
    CROSS,
    PIECE,
    RIP,
    ROUGH,
    SHEET,
    STRIP,
    TRIM,
    Called,
    Saw,
    SawCut,
    Workpiece,
)

NM = 1_000_000
"""Levels are in whole nm, in which mm and 1/128 in are exact."""

_TINY = 1e-5
_ALPHABET = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """What becomes of a sheet; ``places`` are of its pieces, in the order of its levels."""

    places: tuple[Workpiece, ...]
    cuts: tuple[SawCut, ...]
    offcuts: tuple[Workpiece, ...]


def sheet_cuts(
    levels: Levels, marks: Sequence[str], size: tuple[float, float], saw: Saw
) -> Cutting:
    """Return the cuts of a sheet; ``marks`` name its pieces in the order of its levels.

    First the trims and all strips; then all lengths of all strips, the longest first, so that the
    fence is set once for those alike; then what divides a length; then what trims a piece that is
    narrower than its column.
    """
    bench = _Bench(saw=saw, turned=levels.turned)
    whole = bench.trimmed(Workpiece(x=0.0, y=0.0, width=size[0], height=size[1]))
    bench.cut(_shares(levels, marks, saw.kerf), whole, 1)
    stages = (
        sorted(cuts, key=lambda cut: -cut.setting) if stage > 1 else cuts
        for stage, cuts in sorted(bench.stages.items())
    )
    called = dict(zip(bench.places, (Called(PIECE, mark) for mark in marks), strict=True))
    cuts = [replace(cut, gives=called.get(cut.kept, cut.gives)) for each in stages for cut in each]
    large = sorted(bench.offcuts, key=lambda each: -each.width * each.height)
    return Cutting(places=tuple(bench.places), cuts=tuple(_numbered(cuts)), offcuts=tuple(large))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Share:
    """A named part of a workpiece, ``size`` mm of it, and what it is divided into in turn."""

    name: Called
    size: float
    parts: tuple[_Share, ...] = ()


def _shares(levels: Levels, marks: Sequence[str], kerf: float) -> _Share:
    names = iter(marks)
    strips = tuple(
        _Share(
            name=Called(STRIP, str(number)),
            size=_mm(strip.height, kerf),
            parts=tuple(
                _column(strip, column, f"{number}{_letters(index)}", names, kerf)
                for index, column in enumerate(strip.columns)
            ),
        )
        for number, strip in enumerate(levels.strips, 1)
    )
    return _Share(name=Called(SHEET), size=0.0, parts=strips)


def _column(strip: Strip, column: Column, name: str, marks: Iterator[str], kerf: float) -> _Share:
    size = _mm(column.width, kerf)
    pieces = []
    for _, u, v in column.pieces:
        mark = next(marks)
        if u < column.width:
            trimmed = (_Share(name=Called(PIECE, mark), size=_mm(u, kerf)),)
            pieces.append(_Share(name=Called(ROUGH, mark), size=_mm(v, kerf), parts=trimmed))
        else:
            pieces.append(_Share(name=Called(PIECE, mark), size=_mm(v, kerf)))
    if len(pieces) == 1 and column.used == strip.height:
        return replace(pieces[0], size=size)
    return _Share(name=Called(BLOCK, name), size=size, parts=tuple(pieces))


def _mm(size: int, kerf: float) -> float:
    return round(size / NM - kerf, 6)


def _letters(index: int) -> str:
    more, last = divmod(index, len(_ALPHABET))
    return (_letters(more - 1) if more else "") + _ALPHABET[last]


@dataclass(slots=True)
class _Bench:
    """Cuts as they are found, by the stage they belong to; places of pieces; what is left over."""

    saw: Saw
    turned: bool
    stages: dict[int, list[SawCut]] = field(default_factory=dict)
    places: list[Workpiece] = field(default_factory=list)
    offcuts: list[Workpiece] = field(default_factory=list)

    def trimmed(self, work: Workpiece) -> Workpiece:
        """Trim the edge along the strips, then the one at their beginning."""
        trim = self.saw.trim
        for upward in (not self.turned, self.turned) if trim else ():
            _, beyond = _parted(work, trim - self.saw.kerf, self.saw.kerf, upward)
            if beyond is None:
                raise ValueError("a sheet is smaller than its trim")
            cut = _cut((Called(SHEET), Called(SHEET)), TRIM, trim, upward, (work, beyond))
            self.stages.setdefault(0, []).append(cut)
            work = beyond
        return work

    def cut(self, share: _Share, work: Workpiece, stage: int) -> None:
        """Divide a workpiece; odd stages divide it across the strips, even ones along them."""
        upward = (stage % 2 == 1) != self.turned
        rest: Workpiece | None = work
        for part in share.parts:
            if rest is None:
                raise ValueError(f"nothing is left of {share.name} for {part.name}")
            kept, beyond = _parted(rest, part.size, self.saw.kerf, upward)
            if kept is not rest:
                names, kind = (share.name, part.name), RIP if upward else CROSS
                cut = _cut(names, kind, part.size, upward, (rest, kept))
                self.stages.setdefault(stage, []).append(cut)
            rest = beyond
            self.cut(part, kept, stage + 1)
        if not share.parts:
            self.places.append(work)
        elif rest is not None:
            self.offcuts.append(rest)


def _parted(
    work: Workpiece, size: float, kerf: float, upward: bool
) -> tuple[Workpiece, Workpiece | None]:
    """Return what lies before a cut at ``size`` and beyond it; all, where no cut is needed."""
    length = work.height if upward else work.width
    left = length - size - kerf
    if left <= _TINY - kerf:
        return work, None
    if upward:
        kept = replace(work, height=size)
        beyond = replace(work, y=round(work.y + size + kerf, 6), height=round(left, 6))
    else:
        kept = replace(work, width=size)
        beyond = replace(work, x=round(work.x + size + kerf, 6), width=round(left, 6))
    return kept, beyond if left > _TINY else None


def _cut(
    names: tuple[Called, Called],
    kind: str,
    setting: float,
    upward: bool,
    pieces: tuple[Workpiece, Workpiece],
) -> SawCut:
    return SawCut(
        number=0,
        kind=kind,
        of=names[0],
        gives=names[1],
        setting=setting,
        edge="lower" if upward else "left",
        workpiece=pieces[0],
        kept=pieces[1],
        fresh=False,
    )


def _numbered(cuts: Sequence[SawCut]) -> Iterator[SawCut]:
    """Number the cuts; the fence is set anew when the distance or the kind of cut changes."""
    before: tuple[str, float] | None = None
    for number, cut in enumerate(cuts, 1):
        now = (cut.kind, round(cut.setting, 2))
        yield replace(cut, number=number, fresh=now != before)
        before = now
