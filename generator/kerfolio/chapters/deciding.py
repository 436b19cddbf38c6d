"""The facts that decide whether one builds it: how large, of what, how dear, how long, how hard."""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.assembly.extent import box_around, size_of
from kerfolio.basis.figures import minutes_text, money_text
from kerfolio.basis.lengths import INCH, size_pair
from kerfolio.basis.masses import mass_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_pair
from kerfolio.basis.thickness import sold_in, sold_range_pair
from kerfolio.basis.tolerance import NOISE
from kerfolio.basis.words import counted, listed
from kerfolio.document.blocks import Fact
from kerfolio.document.words import Both, Reference, Words, pieces, twin
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

Lines = tuple[tuple[Words, ...], ...]


def deciding_facts(edition: Edition) -> tuple[Fact, ...]:
    """Return the facts in the order in which they are asked; what nobody knows is left out."""
    found = (
        Fact(head="Size", lines=_size(edition)),
        Fact(head="Material", lines=(*_sheets(edition), *_boards(edition))),
        Fact(head="Sheet thickness", lines=_thicknesses(edition)),
        Fact(head="Cost", lines=_cost(edition)),
        Fact(head="Time", lines=(*_cutting(edition), *_time(edition))),
        Fact(head="How hard", lines=_difficulty(edition)),
        Fact(head="Hands", lines=_hands(edition)),
        Fact(head="Tools", lines=_tools(edition)),
        Fact(head="Router’s bed", lines=_bed(edition)),
    )
    return tuple(fact for fact in found if fact.lines)


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
    return ((told, "width × depth × height", *holds, *((weight,) if weight else ())),)


def _mass(edition: Edition) -> Words:
    """Return what it weighs; nothing where nobody knows."""
    weight = edition.weight
    if not weight.total:
        return ""
    titles = [hardware_title(edition, item) for item in weight.unweighed]
    beside = f", without {listed(titles)}" if titles else ""
    return ("about ", twin(mass_pair(weight.total, edition.reader)), beside)


def _sheets(edition: Edition) -> Lines:
    reader = edition.reader
    return tuple(
        (
            f"{row.count} × {row.title}",
            (
                twin(sheet_pair((row.width, row.height), reader)),
                *(
                    each
                    for words in enough_words(edition, row.sheet, row.count)
                    for each in ("; ", *pieces(words))
                ),
            ),
        )
        for row in edition.sheets
    )


def enough_words(edition: Edition, sheet: str, count: int) -> Iterator[Words]:
    """Yield how large a piece will do, where a sheet is hardly used."""
    size = piece_enough(edition, sheet)
    if size is not None:
        which = "" if count == 1 else "of one of them "
        yield (f"{which}a piece of ", twin(sheet_pair(size, edition.reader)), " is enough")


def _thicknesses(edition: Edition) -> Lines:
    """Return the range that each sheet may be in, and the thickness that is drawn."""
    reader, sheets, sets = edition.reader, edition.settled.sheets, len(edition.variants)
    lines: list[tuple[Words, ...]] = []
    for each in sheets:
        span: Words = (twin(sold_range_pair(*each.published, reader)),)
        title = sheet_title(edition.settled, each.name)
        beside = [title] if len(sheets) > 1 else []
        if each.published[0] < each.published[1]:
            beside.append(f"drawn at {sold_in(each.thickness, reader)}")
        lines.append((span, *([", ".join(beside)] if beside else [])))
    if sets > 1 and lines:
        lines[-1] = (*lines[-1], f"{sets} sets of files are ready-made")
    return tuple(lines)


def _boards(edition: Edition) -> Lines:
    """Return boards as they are sold."""
    return tuple(
        (f"{count} × {plan.title}", (twin(size_pair((length,), edition.reader)), " long"))
        for plan in edition.board_plans
        for length, count in plan.to_buy
    )


def _cost(edition: Edition) -> Lines:
    """Return the sum of the prices that are known, and how many are not."""
    unknown = sum(row.total is None for row in edition.costs)
    if not edition.costs:
        return ()
    if unknown == len(edition.costs):
        return (("no prices known",),)
    total = money_text(known_total(edition.costs), edition.identity.currency)
    missing = f"no price is known for {counted(unknown, 'line')} of the list"
    return ((f"{'from' if unknown else 'about'} {total}", missing if unknown else "all of it"),)


def _cutting(edition: Edition) -> Lines:
    found = cutting_of(edition)
    if found is None:
        return ()
    sheets = "" if found.whole else f"{found.known}, "
    machine = say(edition.reader, "cutting-machine")
    return ((f"about {minutes_text(found.minutes)} to cut", f"{sheets}{machine}"),)


def _time(edition: Edition) -> Lines:
    minutes = edition.plan.minutes
    return ((f"about {minutes_text(minutes)} to put together",),) if minutes else ()


def _difficulty(edition: Edition) -> Lines:
    found = difficulty_of(edition)
    return (
        ((found.words(edition.reader), "; ".join(e.words for e in found.reasons)),) if found else ()
    )


def _hands(edition: Edition) -> Lines:
    """Return how many people it takes, and for what, by the NIOSH lifting equation."""
    if not edition.parts:
        return ()
    sheet, step = heaviest_sheet(edition), heaviest_step(edition)
    lifts = [each for each in (sheet, step) if each is not None]
    helped = [_helped(each, edition.reader) for each in lifts if each.people > 1]
    if not lifts:
        return ()
    if not helped:
        return (("One person", "for sheets and steps alike"),)
    return (("One person, helped at times", *helped),)


def _helped(lift: Lift, reader: Reader) -> Words:
    people = "two" if lift.people == 2 else "more than two"
    what = f"what is moved in step {lift.step}" if lift.step else "the whole sheet"
    return (f"{people} for {what}, ", twin(mass_pair(lift.mass, reader)))


def _tools(edition: Edition) -> Lines:
    count = len(tools_of(edition))
    if not count:
        return ()
    return (
        (
            counted(count, "tool"),
            ("listed under ", Reference(text="What you need", chapter="need")),
        ),
    )


def _bed(edition: Edition) -> Lines:
    """Return the least bed that it all can be cut on, and what the workshop's is too small for."""
    found, reader = bed_needs(edition), edition.reader
    if found is None:
        return ()
    laid: Words = ("sheets as they are laid out want ", *_about(found.laid, reader))
    lines: Lines = ((_about(found.alone, reader), "for piece after piece", laid),)
    if found.off and edition.identity.bed:
        bed = twin(sheet_pair(edition.identity.bed, reader))
        lines = (*lines, (("Too large for a bed of ", bed), listed(found.off)))
    return lines


def _about(sides: tuple[float, float], reader: Reader) -> tuple[Both, ...]:
    """Return a size that need not be met exactly, rounded up: whole centimetres, or inches."""
    step = INCH if reader.unit == "in" else 10.0
    return (twin(sheet_pair([math.ceil(each / step - NOISE) * step for each in sides], reader)),)
