"""A material's stiffness and strength in the direction of a span, with what they rest on."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.digits import rounded
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.measures import number
from kerfolio.basis.said import Measure, Text, Words, phrase
from kerfolio.model.climate import HEATED, Climate
from kerfolio.model.stock import BoardStock, SheetStock
from kerfolio.shop.assumption import Assumption
from kerfolio.shop.duration import LOW_END, LOW_END_SOURCE, Duration, duration_of

CRUSHING_SHARE = 0.5
"""Compression strength over bending strength (clear wood: 0.45 to 0.6 along the grain, Wood
Handbook FPL-GTR-190, Table 5-3; from memory)."""
SHEAR_OF_STIFFNESS = 1 / 16
_STATED = phrase("grounds-stated-by-maker")
_SHEAR_SOURCE = phrase("grounds-shear-rule")
_ROLLING = {"hardwood-plywood": 1 / 50, "softwood-plywood": 1 / 100}
"""Shear modulus of plywood flat over its stiffness along: plies across the span roll (Handbook of
Finnish Plywood: birch 206 to 10 048 N/mm2, spruce 66 to 6500; from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fibre:
    """A material in one direction, N/mm2; strengths are None where none is known.

    ``strength`` is that in bending, ``shear_strength`` and ``bearing`` those that hold its tabs:
    what 19 of 20 pieces reach, for as long as the load stays; no safety factor is in them.
    ``shear`` is the shear modulus, ``creep`` kdef, None where none is known.
    """

    stiffness: float
    strength: float | None
    shear: float
    shear_strength: float | None
    bearing: float | None
    creep: float | None
    assumptions: tuple[Assumption, ...]


@dataclass(frozen=True, slots=True)
class _Given:
    """A stated value, with what it is called and where it comes from."""

    what: Words
    value: float
    kind: str
    source: Text

    def fact(self, title: str) -> Assumption:
        """Return it as shown to people."""
        value = whole_figure(self.value)
        return Assumption(
            label=phrase("grounds-of", title=title, what=self.what),
            value=phrase("grounds-newtons-kind", value=value, kind=self.kind)
            if self.kind
            else phrase("grounds-newtons", value=value),
            source=self.source or _STATED,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Under:
    """What a material is under: a load that stays or not, in a place, None where none is stated."""

    lasting: bool
    climate: Climate | None = None


def board_fibre(stock: BoardStock, under: Under) -> Fibre | None:
    """Return a board's material along its grain, None without a stiffness."""
    if stock.stiffness is None:
        return None
    stiffness = _Given(
        phrase("grounds-what-stiffness"),
        stock.stiffness,
        stock.stiffness_kind,
        stock.source_of("stiffness"),
    )
    strength = None
    if stock.strength is not None:
        source = stock.source_of("strength")
        strength = _Given(
            phrase("grounds-what-bending"), stock.strength, stock.strength_kind, source
        )
    shear = _Given(
        phrase("grounds-what-shear-modulus"),
        stock.stiffness * SHEAR_OF_STIFFNESS,
        "",
        _SHEAR_SOURCE,
    )
    return _fibre(stock, stiffness, strength, shear, _Ends(None, None), under)


def sheet_fibre(
    stock: SheetStock, grain: str, axis: str, under: Under, *, on_edge: bool
) -> Fibre | None:
    """Return a sheet's material along x or y of a part, None without a stiffness.

    ``grain`` is the part's. Flat: the value along or across the face grain, the lesser where the
    grain is left open. On edge: the mean of both.
    """
    along, across = stock.stiffness_along, stock.stiffness_across
    if along is None:
        return None
    way, words = _way(stock.grain, grain, axis, on_edge=on_edge)
    value = _chosen(along, across, way)
    source = _ruled(stock.source_of("stiffness_along"), way)
    stiffness = _Given(_said("stiffness", words), value, stock.stiffness_kind, source)
    strength = None
    if stock.strength_along is not None:
        strong = _chosen(stock.strength_along, stock.strength_across, way)
        source = _ruled(stock.source_of("strength_along"), way)
        strength = _Given(_said("bending", words), strong, stock.strength_kind, source)
    side = "edge" if on_edge else "flat"
    return _fibre(
        stock,
        stiffness,
        strength,
        _shear_modulus(stock, along, value, side),
        _tab_strengths(stock, side),
        under,
    )


def _shear_modulus(stock: SheetStock, along: float, value: float, side: str) -> _Given:
    """Return the stated shear modulus, else one by a rule: flat, the plies of plywood roll."""
    stated = stock.shear_modulus_edge if side == "edge" else stock.shear_modulus_flat
    if stated is not None:
        cited = stock.source_of(f"shear_modulus_{side}")
        return _Given(_said("shear-modulus", side), stated, "", cited)
    rolling = _ROLLING.get(stock.family) if side == "flat" else None
    if rolling is None:
        return _Given(_said("shear-modulus", side), value * SHEAR_OF_STIFFNESS, "", _SHEAR_SOURCE)
    source = phrase("grounds-rolling-rule", share=whole_figure(1 / rolling))
    return _Given(_said("shear-modulus", side), along * rolling, "", source)


@dataclass(frozen=True, slots=True)
class _Ends:
    """What holds a tab: its shear strength, and its strength against pressure on a face."""

    shear: _Given | None
    bearing: _Given | None


def _tab_strengths(stock: SheetStock, side: str) -> _Ends:
    strong = stock.shear_strength_edge if side == "edge" else stock.shear_strength_flat
    shear = bearing = None
    if strong is not None:
        source = stock.source_of(f"shear_strength_{side}")
        shear = _Given(_said("shear", side), strong, "characteristic", source)
    if side == "flat" and stock.bearing_strength is not None:
        source = stock.source_of("bearing_strength")
        bearing = _Given(phrase("grounds-what-bearing"), stock.bearing_strength, "", source)
    return _Ends(shear, bearing)


def _fibre(
    stock: SheetStock | BoardStock,
    stiffness: _Given,
    strength: _Given | None,
    shear: _Given,
    ends: _Ends,
    under: Under,
) -> Fibre:
    given = (stiffness, strength, shear, ends.shear, ends.bearing)
    facts = [each.fact(stock.title) for each in given if each is not None]
    duration = duration_of(stock.family, under.climate)
    over_time = duration.share(lasting=under.lasting)
    low = LOW_END if strength is not None and strength.kind in ("mean", "claim") else 1.0
    if strength is not None and low < 1:
        facts.append(
            Assumption(
                label=phrase("grounds-low-end", title=stock.title),
                value=phrase("grounds-low-end-share", share=_number(low), kind=strength.kind),
                source=LOW_END_SOURCE,
            )
        )
    if any(each is not None for each in (strength, ends.shear, ends.bearing)):
        facts.append(_over_time(stock.title, duration, under))
    creep = _creep(stock, duration)
    if stock.creep is not None:
        facts.append(_creep_told(stock, duration, under, creep))

    def lasts(given: _Given | None, share: float = 1.0) -> float | None:
        return None if given is None or over_time is None else given.value * share * over_time

    return Fibre(
        stiffness=stiffness.value,
        strength=lasts(strength, low),
        shear=shear.value,
        shear_strength=lasts(ends.shear),
        bearing=lasts(ends.bearing),
        creep=creep,
        assumptions=tuple(facts),
    )


def _over_time(title: str, duration: Duration, under: Under) -> Assumption:
    share = duration.share(lasting=under.lasting)
    where = under.climate if under.climate and duration.is_damp else None
    known = None if share is None else phrase("grounds-share-of-short", share=_number(share))
    stays = f"grounds-over-time-{'lasting' if under.lasting else 'passing'}"
    told = known or phrase("grounds-not-known")
    value = (
        phrase(f"{stays}-in", share=told, where=_in(where)) if where else phrase(stays, share=told)
    )
    return Assumption(
        label=phrase("grounds-over-time", title=title), value=value, source=duration.source
    )


def _in(climate: Climate) -> Words:
    return phrase(f"grounds-in-{climate.name.split()[0]}")


def _number(value: float) -> Measure:
    """Return a share or a factor to a hundredth, told with the reader's decimal mark."""
    return number("share", rounded(value, 2))


def _creep(stock: SheetStock | BoardStock, duration: Duration) -> float | None:
    """Return kdef in the plan's place, None where none is known."""
    if stock.creep is None or duration.creep is None:
        return None
    return stock.creep * duration.creep


def _creep_told(
    stock: SheetStock | BoardStock, duration: Duration, under: Under, creep: float | None
) -> Assumption:
    where = _in(under.climate if under.climate and duration.is_damp else HEATED)
    source = stock.source_of("creep") or _STATED
    return Assumption(
        label=phrase("grounds-creep", title=stock.title),
        value=phrase("grounds-creep-unknown", where=where)
        if creep is None
        else phrase("grounds-creep-grows", times=number("creep", creep), where=where),
        source=phrase("grounds-and-source", source=source, more=duration.source)
        if duration.is_damp
        else source,
    )


def _said(what: str, way: str) -> Words:
    """Return a property in a direction, in words."""
    told = phrase(f"grounds-what-{what}")
    return phrase("grounds-what-way", what=told, way=phrase(f"grounds-way-{way}"))


def _ruled(source: str, way: str) -> Text:
    return phrase("grounds-edge-rule", source=source) if way == "mean" else source


def _way(has_grain: bool, grain: str, axis: str, *, on_edge: bool) -> tuple[str, str]:
    """Return which value counts, and how to say it."""
    if not has_grain:
        return "along", "any"
    if on_edge:
        return "mean", "edge"
    if grain == f"along {axis}":
        return "along", "along"
    if grain.startswith("along"):
        return "across", "across"
    return "least", "weaker"


def _chosen(along: float, across: float | None, way: str) -> float:
    """Return the value that counts; one stated for along alone holds for both."""
    other = along if across is None else across
    values = {"along": along, "across": other, "least": min(along, other)}
    return values.get(way, (along + other) / 2)
