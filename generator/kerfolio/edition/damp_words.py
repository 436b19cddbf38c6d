"""What finish and damp do to a thing's joints: worded once, for page and booklet alike."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import figure
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.model.climate import Climate
from kerfolio.model.finish import BEFORE, Finish
from kerfolio.model.purpose import GLUED
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.surroundings import Surroundings
from kerfolio.settling.titles import within
from kerfolio.shop.swelling import needs_of, room_for


def room_words(edition: Edition) -> str:
    """Return that joints have room for finish and damp; empty where they have none."""
    settled = edition.settled
    if settled.surroundings is None:
        return ""
    has_room = any(room_for(settled, sheet) for sheet in settled.sheets)
    return say(edition.reader, "dampwords-room") if has_room else ""


def surroundings_words(edition: Edition) -> tuple[str, ...]:
    """Return where it lives and what it is finished with, a paragraph each, as far as stated."""
    settled, plan = edition.settled, edition.plan
    surroundings = settled.surroundings
    if surroundings is None:
        return ()
    reader = edition.reader
    place = _place(settled, surroundings, plan.climate, reader) if plan.climate else ()
    finish = _finish(plan.finish, settled, surroundings, reader) if plan.finish else ""
    return tuple(each for each in (" ".join(place), finish) if each)


def _place(
    settled: SettledPlan, surroundings: Surroundings, climate: Climate, reader: Reader
) -> Iterator[str]:
    yield say(
        reader,
        "dampwords-place",
        climate=climate.name.replace(" ", "-"),
        least=figure(climate.least, reader=reader),
        most=figure(climate.most, reader=reader),
    )
    for sheet in settled.sheets:
        grows = surroundings.swelling(sheet.stock)
        title = sheet.stock.title
        if not grows.most:
            yield say(reader, "dampwords-unknown", sheet=title)
            continue
        bought = figure(grows.bought, reader=reader)
        if grows.thickness:
            yield say(
                reader,
                "dampwords-swells",
                sheet=title,
                bought=bought,
                most=figure(grows.most, 0, reader),
                thicker=fit_in(2 * needs_of(settled, sheet).swelling, reader),
            )
        else:
            yield say(reader, "dampwords-stays", sheet=title, bought=bought)


def _finish(
    finish: Finish, settled: SettledPlan, surroundings: Surroundings, reader: Reader
) -> str:
    stock = settled.stock.finish(finish.of.name)
    title = within(stock.title, reader) if stock else finish.of.name
    film = fit_in(surroundings.coat, reader)
    early = finish.when == BEFORE
    when = "before" if early else "after"
    said = [say(reader, f"dampwords-{when}", coats=finish.coats, finish=title, film=film)]
    if surroundings.sanded:
        said.append(say(reader, "dampwords-sanded", off=fit_in(surroundings.sanded, reader)))
    if early and _glued(settled):
        said.append(say(reader, "dampwords-glue"))
    return " ".join(said)


def _glued(settled: SettledPlan) -> bool:
    """Tell whether some joint is glued."""
    return any(fit is not None and fit.purpose is GLUED for _, fit in settled.plan.fits)
