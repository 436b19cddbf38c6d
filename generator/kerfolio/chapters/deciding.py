"""The facts that decide whether one builds it: how large, of what, how dear, how long, how hard."""

from __future__ import annotations

import math

from kerfolio.assembly.extent import box_around, size_of
from kerfolio.basis.figures import minutes_text, money_text
from kerfolio.basis.lengths import INCH, size_pair
from kerfolio.basis.masses import mass_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_pair
from kerfolio.basis.thickness import sold_in, sold_range_pair
from kerfolio.basis.tolerance import NOISE
from kerfolio.document.blocks import Fact
from kerfolio.document.words import Both, Reference, Words, twin, worded
from kerfolio.edition.bed import bed_needs
from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.difficulty import difficulty_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.hands import Lift, heaviest_sheet, heaviest_step
from kerfolio.edition.hardware_words import hardware_title
from kerfolio.edition.making import made_words
from kerfolio.edition.sheet_count import piece_enough
from kerfolio.edition.tools import tools_of
from kerfolio.settling.titles import sheet_title
from kerfolio.shop.lists import known_total
from kerfolio.shop.rows import SheetRow

Lines = tuple[tuple[Words, ...], ...]


def deciding_facts(edition: Edition) -> tuple[Fact, ...]:
    """Return the facts in the order in which they are asked; what nobody knows is left out."""
    found = (
        ("size", _size(edition)),
        ("material", (*_sheets(edition), *_boards(edition))),
        ("thickness", _thicknesses(edition)),
        ("cost", _cost(edition)),
        ("time", (*_cutting(edition), *_time(edition))),
        ("difficulty", _difficulty(edition)),
        ("hands", _hands(edition)),
        ("tools", _tools(edition)),
        ("bed", _bed(edition)),
    )
    reader = edition.reader
    return tuple(
        Fact(head=say(reader, f"deciding-head-{name}"), lines=lines)
        for name, lines in found
        if lines
    )


def _size(edition: Edition) -> Lines:
    """Return width, depth and height of what stands when all is made, and what it weighs."""
    weight = _mass(edition)
    if edition.together is not None:
        size = size_of(box_around(edition.together.assembled.pieces))
    elif edition.stability is not None:
        size = edition.stability.size
    else:
        return ((weight,),) if weight else ()
    holds = (made_words(edition.plan, edition.reader),) if edition.plan.is_set else ()
    told: Words = (twin(size_pair(size, edition.reader)),)
    sides = say(edition.reader, "deciding-sides")
    return ((told, sides, *holds, *((weight,) if weight else ())),)


def _mass(edition: Edition) -> Words:
    """Return what it weighs; nothing where nobody knows."""
    weight = edition.weight
    if not weight.total:
        return ""
    reader = edition.reader
    mass = twin(mass_pair(weight.total, reader))
    titles = [hardware_title(edition, item) for item in weight.unweighed]
    if not titles:
        about = worded(reader, "figures-about", figure=mass)
        besides = {(True, True): "all", (True, False): "boards", (False, True): "hardware"}
        if told := besides.get((weight.boards > 0, weight.hardware > 0)):
            return worded(reader, f"deciding-mass-{told}", mass=about)
        return about
    return worded(reader, "deciding-mass-without", mass=mass, items=listed(reader, titles))


def _sheets(edition: Edition) -> Lines:
    reader = edition.reader
    return tuple(
        (
            f"{row.count} × {row.title}",
            _sheet_size(edition, row, reader),
        )
        for row in edition.sheets
    )


def _sheet_size(edition: Edition, row: SheetRow, reader: Reader) -> Words:
    size = twin(sheet_pair((row.width, row.height), reader))
    enough = enough_words(edition, row.sheet, row.count)
    return worded(reader, "deciding-size-enough", size=size, enough=enough) if enough else (size,)


def enough_words(edition: Edition, sheet: str, count: int) -> Words:
    """Return how large a piece will do, where a sheet is hardly used; else nothing."""
    size, reader = piece_enough(edition, sheet), edition.reader
    if size is None:
        return ""
    name = "deciding-enough" if count == 1 else "deciding-one-enough"
    return worded(reader, name, size=twin(sheet_pair(size, reader)))


def _thicknesses(edition: Edition) -> Lines:
    """Return the range that each sheet may be in, and the thickness that is drawn."""
    reader, sheets, sets = edition.reader, edition.settled.sheets, len(edition.variants)
    lines: list[tuple[Words, ...]] = []
    for each in sheets:
        span: Words = (twin(sold_range_pair(*each.published, reader)),)
        title = sheet_title(edition.settled, each.name)
        beside = [title] if len(sheets) > 1 else []
        if each.published[0] < each.published[1]:
            drawn = sold_in(each.thickness, reader)
            beside.append(say(reader, "deciding-drawn", thickness=drawn))
        lines.append((span, *([", ".join(beside)] if beside else [])))
    if sets > 1 and lines:
        lines[-1] = (*lines[-1], say(reader, "deciding-sets", sets=sets))
    return tuple(lines)


def _boards(edition: Edition) -> Lines:
    """Return boards as they are sold."""
    reader = edition.reader
    return tuple(
        (
            f"{count} × {plan.title}",
            worded(reader, "deciding-long", length=twin(size_pair((length,), reader))),
        )
        for plan in edition.board_plans
        for length, count in plan.to_buy
    )


def _cost(edition: Edition) -> Lines:
    """Return the sum of the prices that are known, and how many are not."""
    unknown = sum(row.total is None for row in edition.costs)
    if not edition.costs:
        return ()
    reader = edition.reader
    if unknown == len(edition.costs):
        return ((say(reader, "deciding-no-prices"),),)
    total = money_text(known_total(edition.costs), edition.identity.currency, reader)
    if unknown:
        missing = say(reader, "deciding-unpriced", unknown=unknown)
        return ((say(reader, "deciding-from", total=total), missing),)
    return ((say(reader, "figures-about", figure=total), say(reader, "deciding-all-priced")),)


def _cutting(edition: Edition) -> Lines:
    found = cutting_of(edition)
    if found is None:
        return ()
    reader = edition.reader
    machine = say(reader, "cutting-machine")
    where = machine if found.whole else f"{found.known}, {machine}"
    time = minutes_text(found.minutes, reader)
    return ((say(reader, "deciding-cutting", time=time), where),)


def _time(edition: Edition) -> Lines:
    reader, minutes = edition.reader, edition.plan.minutes
    if not minutes:
        return ()
    return ((say(reader, "deciding-building", time=minutes_text(minutes, reader)),),)


def _difficulty(edition: Edition) -> Lines:
    found = difficulty_of(edition)
    return (
        ((found.words(edition.reader), "; ".join(e.words for e in found.reasons)),) if found else ()
    )


def _hands(edition: Edition) -> Lines:
    """Return how many people it takes, and for what, by the NIOSH lifting equation."""
    if not edition.parts:
        return ()
    reader, sheet, step = edition.reader, heaviest_sheet(edition), heaviest_step(edition)
    lifts = [each for each in (sheet, step) if each is not None]
    helped = [_helped(each, reader) for each in lifts if each.people > 1]
    if not lifts:
        return ()
    if not helped:
        return ((say(reader, "deciding-alone"), say(reader, "deciding-alone-for")),)
    return ((say(reader, "deciding-helped"), *helped),)


def _helped(lift: Lift, reader: Reader) -> Words:
    mass = twin(mass_pair(lift.mass, reader))
    if lift.step:
        return worded(reader, "deciding-lift-step", people=lift.people, step=lift.step, mass=mass)
    return worded(reader, "deciding-lift-sheet", people=lift.people, mass=mass)


def _tools(edition: Edition) -> Lines:
    reader, count = edition.reader, len(tools_of(edition))
    if not count:
        return ()
    need = Reference(text=say(reader, "need-title"), chapter="need")
    listed_under = worded(reader, "deciding-tools-under", need=need)
    return ((say(reader, "deciding-tools", count=count), listed_under),)


def _bed(edition: Edition) -> Lines:
    """Return the least bed that it all can be cut on, and what the workshop's is too small for."""
    found, reader = bed_needs(edition), edition.reader
    if found is None:
        return ()
    laid = worded(reader, "deciding-bed-laid", size=_about(found.laid, reader))
    alone = say(reader, "deciding-bed-alone")
    lines: Lines = (((_about(found.alone, reader),), alone, laid),)
    if found.off and edition.identity.bed:
        bed = twin(sheet_pair(edition.identity.bed, reader))
        lines = (*lines, (worded(reader, "deciding-bed-off", bed=bed), listed(reader, found.off)))
    return lines


def _about(sides: tuple[float, float], reader: Reader) -> Both:
    """Return a size that need not be met exactly, rounded up: whole centimetres, or inches."""
    step = INCH if reader.unit == "in" else 10.0
    return twin(sheet_pair([math.ceil(each / step - NOISE) * step for each in sides], reader))
