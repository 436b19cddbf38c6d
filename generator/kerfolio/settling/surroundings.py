"""What a thing is finished with and where it lives, in numbers: what its joints need room for."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.digits import rounded
from kerfolio.model.feature_kind import FINGERS, NOTCH, FeatureKind
from kerfolio.model.finish import BEFORE, Finish
from kerfolio.model.plan import Plan
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.settling.moisture import STILL, Swelling, swelling_in
from kerfolio.settling.scope import Scope, unknown

_DECIMALS = 2
"""Each need is told and cut to a hundredth of a millimetre, so that what is told adds up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """What a joint needs besides its play, on each side, mm.

    Between face and wall: ``film`` is that of both, ``sanded`` what is missing of the face,
    ``swelling`` by how much what goes in grows. ``ends_film`` and ``ends_swelling`` are those at
    either end, or at a notch's bottom.
    """

    film: float = 0.0
    sanded: float = 0.0
    swelling: float = 0.0
    ends_film: float = 0.0
    ends_swelling: float = 0.0

    @property
    def width(self) -> float:
        """What is needed between a face and a wall."""
        return self.film - self.sanded + self.swelling

    @property
    def ends(self) -> float:
        """What is needed at either end."""
        return self.ends_film + self.ends_swelling


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What becomes of pieces after they are cut.

    ``coat`` is the film on one surface, ``film`` that of it which joints have inside, ``sanded``
    what is taken off each face before assembly; mm. ``swellings`` are by family of material, none
    for a plan that says nothing of its place.
    """

    coat: float = 0.0
    film: float = 0.0
    sanded: float = 0.0
    swellings: tuple[tuple[str, Swelling], ...] = ()

    def swelling(self, stock: SheetStock) -> Swelling:
        """Return how a sheet's material swells."""
        return dict(self.swellings).get(stock.family, STILL)

    def needs(
        self, kind: FeatureKind, entering: SheetStock, into: SheetStock, sizes: tuple[float, float]
    ) -> Needs:
        """Return what a feature needs that is cut ``into`` one sheet and takes another.

        ``sizes`` are the thickness of what enters and how long its walls are, mm. Edges are not
        sanded. Along a wall only that counts by which the one sheet grows more than the other; two
        notches share the film at their bottoms, and fingers grow with their edges.
        """
        thickness, contact = sizes
        grows = self.swelling(entering)
        if kind is FINGERS:
            return Needs(film=_cut(2 * self.film))
        more = max(0.0, grows.plane - self.swelling(into).plane) * contact / 2
        return Needs(
            film=_cut(2 * self.film),
            sanded=_cut(self.sanded),
            swelling=_cut(grows.thickness * thickness / 2),
            ends_film=_cut(self.film if kind is NOTCH else 2 * self.film),
            ends_swelling=0.0 if kind is NOTCH else _cut(more),
        )


def _cut(mm: float) -> float:
    return rounded(mm, _DECIMALS)


def surroundings_of(plan: Plan, stock: Stock) -> Surroundings | None:
    """Return what becomes of a plan's pieces, None where it says nothing. Raises SettlingError."""
    finish, climate = plan.finish, plan.climate
    if finish is None and climate is None:
        return None
    scope = Scope(unit=plan.units)
    coat = film_of(finish, stock, scope) if finish else 0.0
    sanding = finish.sanding if finish else None
    return Surroundings(
        coat=coat,
        film=coat if finish and finish.when == BEFORE else 0.0,
        sanded=scope.not_negative(sanding, "sanding") if sanding else 0.0,
        swellings=tuple((each.name, swelling_in(climate, each)) for each in stock.movements)
        if climate
        else (),
    )


def film_of(finish: Finish, stock: Stock, scope: Scope) -> float:
    """Return how thick the dry film of all coats is on one surface, mm. Raises SettlingError.

    A dry coat is a wet one times its solids by volume (as data sheets of coatings relate them).
    """
    found = stock.finish(finish.of.name)
    if found is None:
        raise unknown("finish", finish.of, (each.name for each in stock.finishes))
    if finish.film is not None:
        coat = scope.not_negative(finish.film, "film")
    else:
        wet = scope.not_negative(finish.wet, "wet") if finish.wet else found.wet
        coat = wet * (found.solids if finish.solids is None else finish.solids)
    between = finish.between_coats
    taken = scope.not_negative(between, "between-coats") if between else 0.0
    return finish.coats * coat - (finish.coats - 1) * min(taken, coat)
