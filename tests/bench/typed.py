"""What somebody may type into the fitting page, and the same on a command line."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from kerfolio.fitted.form import Fitted, Number, Point

INCH = Fraction("25.4")


@dataclass(frozen=True, kw_only=True)
class Length:
    """A length as typed on the page and behind an option, with what it is, mm."""

    page: str
    option: str
    mm: Fraction


@dataclass(frozen=True, kw_only=True)
class Typed:
    """A point as it is typed: readings of each sheet, the thickest first; fits; the cutter.

    ``fits`` are values of the page's choice, mm, by sheet. Without a ``cutter`` it is as planned,
    or there is ``no_cutter``.
    """

    readings: Mapping[str, Sequence[Length]]
    fits: Mapping[str, str]
    cutter: Length | None = None
    no_cutter: bool = False

    @property
    def options(self) -> tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
        """What stands behind ``--sheet``, ``--fit`` and ``--cutter``."""
        cutters = ("none",) if self.no_cutter else (self.cutter.option,) if self.cutter else ()
        sheets = tuple(f"{name}={most.option}" for name, (most, *_) in self.readings.items())
        return sheets, tuple(f"{name}={mm} mm" for name, mm in self.fits.items()), cutters

    def point(self, fitted: Fitted) -> Point:
        """Return the values that were meant, mm, not rounded to anything."""
        at: dict[str, float | None] = {
            f"thickness.{name}": float(most.mm) for name, (most, *_) in self.readings.items()
        }
        at |= {f"fit.{name}": float(mm) for name, mm in self.fits.items()}
        if self.no_cutter or self.cutter:
            wide = float(self.cutter.mm) if self.cutter else None
            names = [each.name for each in fitted.numbers]
            at |= {name: wide for name in names if name.startswith("cutter.")}
        return at


def typed_points(
    fitted: Fitted, fits: Mapping[str, Sequence[str]], count: int, seed: int = 9
) -> Iterator[Typed]:
    """Yield every end of the range, alone and together, no cutter, then points by chance.

    ``fits`` are the values that the page lets choose from, by sheet.
    """
    chance = random.Random(seed)
    sheets = {each.name.partition(".")[2]: each for each in _of_kind(fitted, "thickness")}
    cutters = _of_kind(fitted, "cutter")
    narrow, wide = (_end(max(each.least for each in cutters)), _end(min(e.most for e in cutters)))
    drawn = {name: [_end(each.drawn or 0.0)] for name, each in sheets.items()}
    corners = [
        dict(zip(sheets, ([each] for each in corner), strict=True))
        for corner in product(*([_end(n.least), _end(n.most)] for n in sheets.values()))
    ]
    ends = [Typed(readings=each, fits={}) for each in corners]
    ends += [Typed(readings=drawn, fits={}, cutter=each) for each in (narrow, wide)]
    ends.append(Typed(readings=drawn, fits={}, no_cutter=True))
    for end in (0, -1) if fits else ():
        some = {name: each[end] for name, each in fits.items()}
        ends += [Typed(readings=each, fits=some) for each in (drawn, corners[0], corners[-1])]
        ends += [Typed(readings=corners[-1], fits=some, cutter=each) for each in (narrow, wide)]
    yield from ends
    for _ in range(count - len(ends)):
        none = chance.random() < 0.25
        yield Typed(
            readings={name: list(_readings(each, chance)) for name, each in sheets.items()},
            fits={name: chance.choice(each) for name, each in fits.items()},
            cutter=None if none or chance.random() < 0.2 else _cutter(narrow.mm, wide.mm, chance),
            no_cutter=none,
        )


def _of_kind(fitted: Fitted, kind: str) -> list[Number]:
    return [each for each in fitted.numbers if each.name.startswith(f"{kind}.")]


def _end(mm: float) -> Length:
    return _metric(Fraction(str(mm)), f"{mm} mm")


def _metric(mm: Fraction, page: str) -> Length:
    return Length(page=page, option=f"{float(mm)} mm", mm=mm)


def _inch(inches: Fraction, page: str, option: str) -> Length:
    return Length(page=page, option=f"{option} in", mm=inches * INCH)


def _readings(sheet: Number, chance: random.Random) -> Iterator[Length]:
    """Yield up to three readings, each as somebody else would write it."""
    most = _within(sheet.least, sheet.most, 2, chance)
    yield most
    for _ in range(chance.choice((0, 0, 1, 2))):
        yield _within(float(most.mm) - 0.4, float(most.mm) - 0.01, 2, chance)


def _within(least: float, most: float, decimals: int, chance: random.Random) -> Length:
    """Return a length of a range in one of the ways to write it that give one."""
    while True:
        found = chance.choice(_WAYS)(chance.uniform(least, most), decimals)
        if least <= round(float(found.mm), decimals) <= most:
            return found


def _cutter(least: Fraction, most: Fraction, chance: random.Random) -> Length:
    return _within(float(least), float(most), 3, chance)


def _point(value: float, decimals: int) -> Length:
    text = f"{value:.{decimals}f}"
    return _metric(Fraction(text), text)


def _comma(value: float, decimals: int) -> Length:
    plain = _point(value, decimals)
    return _metric(plain.mm, plain.page.replace(".", ","))


def _tenth(value: float, _: int) -> Length:
    text = f"{value:.1f}"
    return _metric(Fraction(text), f"{text} mm")


def _zero(value: float, _: int) -> Length:
    text = f"{value:.1f}"
    return _metric(Fraction(text), f"{text}0")


def _centimetres(value: float, decimals: int) -> Length:
    text = f"{value / 10:.{decimals + 1}f}"
    return _metric(Fraction(text) * 10, f"{text}cm")


def _bare(value: float, _: int) -> Length:
    """A bare number below 0.8 is read in inches, as no sheet and no cutter is that thin in mm."""
    text = f"{value / 25.4:.3f}"
    return _inch(Fraction(text), text.removeprefix("0"), text)


def _decimal(value: float, _: int) -> Length:
    text = f"{value / 25.4:.3f}"
    return _inch(Fraction(text), f'{text.replace(".", ",")}"', text)


def _fraction(value: float, _: int) -> Length:
    near = Fraction(round(value / 25.4 * 64) or 1, 64)
    return _inch(near, f"{near} in", str(near))


def _bare_fraction(value: float, _: int) -> Length:
    near = Fraction(round(value / 25.4 * 32) or 1, 32)
    return _inch(near, str(near), str(near))


_WAYS = (
    *(_point, _comma, _tenth, _zero, _centimetres),
    *(_bare, _decimal, _fraction, _bare_fraction),
)
