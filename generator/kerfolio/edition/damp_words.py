"""What finish and damp do to a thing's joints: worded once, for page and booklet alike."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.figures import figure
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.edition.edition import Edition
from kerfolio.model.climate import Climate
from kerfolio.model.finish import BEFORE, Finish
from kerfolio.model.purpose import GLUED
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.surroundings import Surroundings
from kerfolio.shop.swelling import needs_of, room_for

_ROOM = (
    "Joints have room for that besides their fit: bare and dry they go together more loosely than "
    "they will stay."
)
_GLUE = "Keep the film off what is glued: mask the faces that meet."


def room_words(edition: Edition) -> str:
    """Return that joints have room for finish and damp; empty where they have none."""
    settled = edition.settled
    if settled.surroundings is None:
        return ""
    return _ROOM if any(room_for(settled, sheet) for sheet in settled.sheets) else ""


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
    air = f"{figure(climate.least)} to {figure(climate.most)} %"
    yield f"It is made to live in {climate.where}, in air of {air} humidity."
    for sheet in settled.sheets:
        grows = surroundings.swelling(sheet.stock)
        title = sheet.stock.title
        if not grows.most:
            yield f"How {title} swells is not known."
            continue
        moisture = f"at {figure(grows.bought)} % moisture when it is bought"
        if grows.thickness:
            thicker = fit_in(2 * needs_of(settled, sheet).swelling, reader)
            most = figure(grows.most, 0)
            yield f"{title} is {moisture}; there it comes to {most} % and is {thicker} thicker."
        else:
            yield f"{title} is {moisture}; there it stays below that, and swells by nothing."


def _finish(
    finish: Finish, settled: SettledPlan, surroundings: Surroundings, reader: Reader
) -> str:
    stock = settled.stock.finish(finish.of.name)
    title = stock.title.lower() if stock else finish.of.name
    coats = counted(finish.coats, "coat")
    film = fit_in(surroundings.coat, reader)
    said = [f"It is finished {finish.when}, with {coats} of {title}: a film of {film} in all."]
    if finish.when == BEFORE:
        said.append("That lies on every face and wall, so that each side of a joint has it twice.")
    else:
        said.append("None of it lies in the joints.")
    if surroundings.sanded:
        said.append(f"Sanding takes {fit_in(surroundings.sanded, reader)} off each face before.")
    if finish.when == BEFORE and _glued(settled):
        said.append(_GLUE)
    return " ".join(said)


def _glued(settled: SettledPlan) -> bool:
    """Tell whether some joint is glued."""
    return any(fit is not None and fit.purpose is GLUED for _, fit in settled.plan.fits)
