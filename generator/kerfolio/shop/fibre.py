"""A material's stiffness and strength in the direction of a span, with what they rest on."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.figures import figure, whole_figure
from kerfolio.model.stock import BoardStock, SheetStock
from kerfolio.shop.assumption import Assumption

SHEAR_OF_STIFFNESS = 1 / 16
_SHEAR_SOURCE = "about E/16 for wood, Wood Handbook FPL-GTR-190; from memory"
_EDGE_RULE = "the mean of along and across: on edge the plies share by thickness; from memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fibre:
    """A material in one direction, N/mm2; ``strength`` (bending) None where none is known.

    ``creep`` is kdef, None where none is known.
    """

    stiffness: float
    strength: float | None
    shear: float
    creep: float | None
    assumptions: tuple[Assumption, ...]


@dataclass(frozen=True, slots=True)
class _Given:
    """A stated value, with what it is called and where it comes from."""

    what: str
    value: float
    kind: str
    source: str

    def fact(self, title: str) -> Assumption:
        """Return it as shown to people."""
        kind = f" ({self.kind} value)" if self.kind else ""
        return Assumption(
            label=f"{title}: {self.what}",
            value=f"{whole_figure(self.value)} N/mm²{kind}",
            source=self.source or "stated by the maker",
        )


def board_fibre(stock: BoardStock) -> Fibre | None:
    """Return a board's material along its grain, None without a stiffness."""
    if stock.stiffness is None:
        return None
    stiffness = _Given(
        "stiffness", stock.stiffness, stock.stiffness_kind, stock.source_of("stiffness")
    )
    strength = None
    if stock.strength is not None:
        source = stock.source_of("strength")
        strength = _Given("bending strength", stock.strength, stock.strength_kind, source)
    shear = _Given("shear modulus", stock.stiffness * SHEAR_OF_STIFFNESS, "", _SHEAR_SOURCE)
    return _fibre(stock, stiffness, strength, shear)


def sheet_fibre(stock: SheetStock, grain: str, axis: str, *, on_edge: bool) -> Fibre | None:
    """Return a sheet's material along x or y of a part, None without a stiffness.

    ``grain`` is the part's. Flat: the value along or across the face grain, the lesser where the
    grain is left open. On edge: the mean of both.
    """
    along, across = stock.stiffness_along, stock.stiffness_across
    if along is None:
        return None
    way, words = _way(stock.grain, grain, axis, on_edge=on_edge)
    rule = f"; {_EDGE_RULE}" if way == "mean" else ""
    value = _chosen(along, across, way)
    source = f"{stock.source_of('stiffness_along')}{rule}"
    stiffness = _Given(f"stiffness {words}", value, stock.stiffness_kind, source)
    strength = None
    if stock.strength_along is not None:
        strong = _chosen(stock.strength_along, stock.strength_across, way)
        source = f"{stock.source_of('strength_along')}{rule}"
        strength = _Given(f"bending strength {words}", strong, stock.strength_kind, source)
    shear = _Given(f"shear modulus {words}", value * SHEAR_OF_STIFFNESS, "", _SHEAR_SOURCE)
    if stock.shear_modulus is not None:
        source = stock.source_of("shear_modulus")
        shear = _Given("shear modulus", stock.shear_modulus, "", source)
    return _fibre(stock, stiffness, strength, shear)


def _fibre(
    stock: SheetStock | BoardStock, stiffness: _Given, strength: _Given | None, shear: _Given
) -> Fibre:
    facts = [each.fact(stock.title) for each in (stiffness, strength, shear) if each is not None]
    if stock.creep is not None:
        facts.append(
            Assumption(
                label=f"{stock.title}: creep under lasting load",
                value=f"the sag grows by {figure(stock.creep)} times the first day's "
                "(a heated room)",
                source=stock.source_of("creep") or "stated by the maker",
            )
        )
    return Fibre(
        stiffness=stiffness.value,
        strength=None if strength is None else strength.value,
        shear=shear.value,
        creep=stock.creep,
        assumptions=tuple(facts),
    )


def _way(has_grain: bool, grain: str, axis: str, *, on_edge: bool) -> tuple[str, str]:
    """Return which value counts, and how to say it."""
    if not has_grain:
        return "along", "in any direction"
    if on_edge:
        return "mean", "on edge"
    if grain == f"along {axis}":
        return "along", "along the grain"
    if grain.startswith("along"):
        return "across", "across the grain"
    return "least", "in the weaker direction, the grain being left open"


def _chosen(along: float, across: float | None, way: str) -> float:
    """Return the value that counts; one stated for along alone holds for both."""
    other = along if across is None else across
    values = {"along": along, "across": other, "least": min(along, other)}
    return values.get(way, (along + other) / 2)
