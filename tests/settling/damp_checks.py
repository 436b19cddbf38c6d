"""Outside checks of moisture, swelling and films of finish."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from operator import mul

from kerfolio.basis.place import NOWHERE
from kerfolio.model.climate import OUTDOORS, SHED
from kerfolio.model.finish import Finish
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import Movement
from kerfolio.settling.moisture import board_moisture, equilibrium_moisture, grown
from kerfolio.settling.scope import Scope
from kerfolio.settling.surroundings import film_of
from kerfolio.shop.duration import duration_of
from tests.plans import workshop
from tests.shop.outside_check import MEMORY, PUBLISHED, OutsideCheck

_Row = tuple[str, str, str, str, float, float, Callable[[], float]]
_EQUATION = "Public encyclopaedia on equilibrium moisture content, example of its equation"
_SHOP = "Trade magazine's answers on drying: moisture by humidity, in whole per cent"
_BOARDS = "Facts About Particleboard and MDF, moisture by humidity, middle of the range"
_MDF = "Page of the European MDF makers on controlling the moisture of MDF, example of 5 %"
_PLY = "Forest Products Research Laboratory, as The Technique of Furniture Making quotes it"
_FLOOR = "Public page on wood floors, worked example with the Wood Handbook's coefficient"
_FIR = "Wood Handbook FPL-GTR-190, Chapter 13, example of a white fir board, 8 to 11 %"
_COATS = "Coating shop's page on wet and dry films, worked example"


def damp_checks() -> tuple[OutsideCheck, ...]:
    """Return the checks, those of moisture first."""
    judged = (*_moistures(), *_swellings(), *_films())
    copied = (*_copied_moistures(), *_copied_swellings(), *_copied_films(), *_copied_loads())
    return (*_checks(judged), *_checks(copied, transcription=True))


def _checks(rows: Iterable[_Row], *, transcription: bool = False) -> Iterator[OutsideCheck]:
    for what, source, standing, unit, value, near, ours in rows:
        yield OutsideCheck(
            what=what,
            source=source,
            standing=standing,
            unit=unit,
            value=value,
            within=near,
            ours=ours,
            transcription=transcription,
        )


def movement(family: str) -> Movement:
    """Return how a family moves, as it is shipped."""
    found = workshop().stock.movement(family)
    assert found is not None, family
    return found


def film(wet: str, solids: float, unit: str = "mm", coats: int = 1) -> float:
    """Return the dry film of a finish of our own, mm."""
    stated = Finish(
        of=Named("varnish", NOWHERE), coats=coats, wet=Amount(wet, NOWHERE), solids=solids
    )
    return film_of(stated, workshop().stock, Scope(unit=unit))


def _moistures() -> Iterator[_Row]:
    what, warm = (
        "Moisture of wood at 140 F and 55 % humidity",
        partial(equilibrium_moisture, 55, 60),
    )
    yield what, _EQUATION, PUBLISHED, "%", 8.4, 0.05, warm
    for humidity, percent in ((30, 6), (50, 9), (65, 12), (80, 16)):
        what = f"Moisture of wood in a room, at {humidity} % humidity"
        ours = partial(equilibrium_moisture, humidity)
        yield what, _SHOP, PUBLISHED, "%", percent, 0.5, ours
    what = "Most moisture of softwood at 20 deg C and 65 % humidity"
    ours = partial(equilibrium_moisture, 65)
    yield what, "EN 1995-1-1, 2.3.1.3, note on class 1", PUBLISHED, "%", 12, 0.05, ours


def _copied_moistures() -> Iterator[_Row]:
    what = "Moisture of fibreboard at 65 % humidity"
    yield what, _BOARDS, PUBLISHED, "%", 10, 0.01, partial(board_moisture, 65)


def _swellings() -> Iterator[_Row]:
    what = "Mesquite floor board of 5 in from 6 to 9 %: growth in width"
    yield what, _FLOOR, PUBLISHED, "in", 0.019, 0.0005, partial(grown, 5, 0.129, 3)
    what = "White fir board of 232 mm, flat-sawn, 8 to 11 %: growth in width"
    yield what, _FIR, MEMORY, "mm", 1.705, 0.0005, partial(grown, 232, 0.245, 3)


def _copied_swellings() -> Iterator[_Row]:
    mdf, ply = movement("mdf"), movement("hardwood-plywood")
    width, thick = partial(grown, 600, mdf.plane, 5), partial(grown, 15, mdf.thickness, 5)
    yield "MDF door of 600 mm: growth in width", _MDF, PUBLISHED, "mm", 1.5, 0.05, width
    yield "MDF of 15 mm: growth in thickness", _MDF, PUBLISHED, "mm", 0.3, 0.05, thick
    across = partial(grown, 100, ply.plane, 13)
    what = "Three-ply from 7 to 20 % moisture: growth across the grain"
    yield what, _PLY, PUBLISHED, "%", 0.27, 0.005, across
    what = "Plywood of 18 mm: growth in thickness for 1 % of moisture, at 0.35 %"
    source = "CEN/TR 12872, plywood, middle of 0.3 to 0.4 %"
    yield what, source, MEMORY, "mm", 0.063, 0.0005, partial(grown, 18, ply.thickness, 1)
    table = "Wood Handbook FPL-GTR-190, Table 13-5, red oak, tangential"
    oak = movement("hardwood").plane
    what = "Red oak: growth across the grain for 1 % of moisture, of 1000 mm"
    yield what, table, PUBLISHED, "mm", 3.69, 0.005, partial(grown, 1000, oak, 1)
    table = (
        "Wood Handbook FPL-GTR-190, Table 13-5, Douglas-fir, tangential, as floor makers quote it"
    )
    fir = movement("softwood").plane
    what = "Douglas-fir: growth across the grain for 1 % of moisture, of 1000 mm"
    yield what, table, PUBLISHED, "mm", 2.67, 0.005, partial(grown, 1000, fir, 1)


def _films() -> Iterator[_Row]:
    what = "Coating of 62 % solids, 161 micrometres wet: dry film"
    yield what, _COATS, PUBLISHED, "mm", 0.1, 0.0005, partial(film, "0.161", 0.62)
    source = "Paint centre's answer on wet and dry films, worked example"
    what = "Coating of 42 % solids, 3.57 mils wet: dry film"
    yield what, source, PUBLISHED, "mm", 0.0381, 0.00005, partial(film, "0.00357", 0.42, "in")


def _copied_films() -> Iterator[_Row]:
    source = "Datasheet of an alkyd polyurethane varnish, 2.9 mils wet, 1.3 mils dry a coat"
    varnish = Finish(of=Named("varnish", NOWHERE), coats=2)
    ours = partial(film_of, varnish, workshop().stock, Scope(unit="mm"))
    yield "Two coats of varnish: dry film", source, PUBLISHED, "mm", 0.06604, 0.0003, ours


def _copied_loads() -> Iterator[_Row]:
    table = "EN 1995-1-1, Table 3.2, kdef, service class {}"
    for family, one, climate, kdef in (
        ("hardwood-plywood", 0.8, SHED, 1.0),
        ("hardwood-plywood", 0.8, OUTDOORS, 2.5),
        ("softwood", 0.6, SHED, 0.8),
        ("osb", 1.5, SHED, 2.25),
        ("mdf", 2.25, SHED, 3.0),
    ):
        what = f"{family.capitalize()} in {climate.where}: growth of the sag (kdef)"
        times = duration_of(family, climate).creep
        source = table.format(3 if climate is OUTDOORS else 2)
        yield what, source, MEMORY, "", kdef, 1e-9, partial(mul, one, times or 0.0)
