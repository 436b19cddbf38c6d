"""What a plan makes, in words and numbers: one place for page and booklet."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.made import Made
from kerfolio.assembly.proof_words import proof_words
from kerfolio.assembly.set_places import Row
from kerfolio.assembly.stability_words import size_rows, stability_cautions, steady_rows
from kerfolio.assembly.storing_words import set_rows, whole_rows
from kerfolio.basis.lengths import both_text, size_text
from kerfolio.basis.masses import mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.build_views import ASSEMBLED, EXPLODED, SET
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Assembly, Plan, Step
from kerfolio.model.use import TABLE
from kerfolio.settling.titles import called, piece_title
from kerfolio.shop.mass import weight_of


def made_words(plan: Plan, reader: Reader) -> str:
    """Return what a set holds: ``2 × Stand and 1 × Board``; nothing for a plan of one thing."""
    return listed(reader, [f"{each.count} × {called(each)}" for each in plan.assemblies])


def counted_things(names: Sequence[str], plan: Plan, reader: Reader) -> str:
    """Return things of a set with how often each is named: ``2 × Foot``."""
    titles = {each.name: called(each) for each in plan.assemblies}
    things = [f"{names.count(each)} × {titles[each]}" for each in dict.fromkeys(names)]
    return listed(reader, things)


def making_line(assembly: Assembly, reader: Reader) -> str:
    """Return how many of a thing are made: ``Stand: make 2``."""
    return say(reader, "making-line", thing=called(assembly), count=assembly.count)


def numbered_steps(plan: Plan, reader: Reader) -> Iterator[tuple[int, str, Step]]:
    """Yield every step with its number over the plan, and what of a set begins with it."""
    number = 0
    for assembly in plan.made:
        begins = making_line(assembly, reader) if plan.is_set else ""
        for step in assembly.steps:
            number += 1
            yield number, begins, step
            begins = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TheSet:
    """What is told of a set as one: what it ``holds``, rows (label, value), its picture's name."""

    holds: str
    rows: tuple[tuple[str, str], ...]
    picture: str = SET


def set_of(edition: Edition) -> TheSet | None:
    """Return what is told of a set, None of a plan of one thing."""
    plan, reader = edition.plan, edition.reader
    if not plan.is_set:
        return None
    rows = [(making_line(each.stated, reader), _one(each, reader)) for each in edition.made]
    weight = edition.weight.total
    rest = weight - math.fsum(
        each.stated.count * weight_of(each.settled).total for each in edition.made
    )
    if rest > _NOTHING:
        rows.append((say(reader, "making-rest"), mass_text(rest, reader)))
    rows.append((say(reader, "making-weighs"), mass_text(weight, reader)))
    if edition.together is not None:
        pieces = edition.together.assembled.pieces
        size = size_text(size_of(box_around(pieces)), reader)
        rows.append((say(reader, "making-size"), size))
        if plan.shows("sizes"):
            rows += [_lying(row, plan, reader) for row in edition.together.rows]
            rows += set_rows(pieces, edition.weight.panels, reader)
    return TheSet(
        holds=say(reader, "making-set", things=made_words(plan, reader)), rows=tuple(rows)
    )


def _lying(row: Row, plan: Plan, reader: Reader) -> tuple[str, str]:
    """Return what a thing lies on, how it is held there, and how far it reaches beyond."""
    things = counted_things([name for name, _ in row.supports], plan, reader)
    words = [say(reader, f"making-held-{row.lying.held}", things=things)]
    beyond = min(row.overhangs)
    if beyond > 0:
        words.append(say(reader, "making-beyond", beyond=both_text(beyond, reader)))
    return say(reader, "making-lies-on", thing=called(row.lying)), ", ".join(words)


_NOTHING = 1e-6  # kg


def _one(made: Made, reader: Reader) -> str:
    """Return how large and how heavy one of the things of a set is."""
    mass = mass_text(weight_of(made.settled).total, reader)
    if made.stated.count > 1:
        mass = say(reader, "making-each", mass=mass)
    if made.build is None:
        return mass
    size = size_of(box_around(made.build.drawn.assembled.pieces))
    return f"{size_text(size, reader)}, {mass}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """What is told of a thing made: rows (label, value), and how the order was proved.

    ``title`` says of a thing of a set how many are made. ``assembled`` and ``exploded`` are the
    names of its pictures. ``steady`` are rows of how it stands, with the ``remark`` that belongs to
    them; ``on_wall`` says that it is to be fixed there, else it is empty.
    """

    title: str
    assembled: str
    exploded: str
    rows: tuple[tuple[str, str], ...]
    steady: tuple[tuple[str, str], ...]
    remark: str
    on_wall: str
    proved: tuple[str, ...]
    left_out: str = ""


def wholes_of(edition: Edition) -> tuple[Whole, ...]:
    """Return what is told of each thing made whose pieces are put together somehow."""
    builds = ((made, made.build) for made in edition.made if not made.is_single)
    return tuple(_whole(edition, made, build) for made, build in builds if build is not None)


def _whole(edition: Edition, made: Made, build: Build) -> Whole:
    plan, reader, stability = edition.plan, edition.reader, build.stability
    pieces, top = build.drawn.assembled.pieces, edition.on_top.get(made.stated.name)
    rows = (*size_rows(stability, reader), *whole_rows(pieces, stability, top, reader))
    stands = plan.shows("sizes") and plan.placed != TABLE  # a table's edge is not its floor
    remark, *on_wall = stability_cautions(stability, plan, reader)
    return Whole(
        title=making_line(made.stated, reader) if plan.is_set else "",
        assembled=made.named(ASSEMBLED),
        exploded=made.named(EXPLODED),
        rows=rows if plan.shows("sizes") else rows[:1],
        steady=steady_rows(stability, reader) if stands else (),
        remark=remark,
        on_wall=" ".join(on_wall),
        proved=proof_words(build, reader),
        left_out=_missing(edition, made, pieces),
    )


def _missing(edition: Edition, made: Made, pieces: Sequence[PosedPiece]) -> str:
    """Return which pieces nothing places, as far as parts are shown at all."""
    placed = {piece.label for piece in pieces}
    labels = [piece.label for part in made.settled.parts for piece in part.pieces]
    missing = [label for label in labels if label not in placed] if edition.parts else []
    if not missing:
        return ""
    reader = edition.reader
    titles = [piece_title(edition.plan, label, reader) for label in missing]
    return say(reader, "making-not-shown", pieces=listed(reader, titles))


@dataclass(frozen=True, slots=True, kw_only=True)
class CopiesCalled:
    """What several of a plan are called: ``copy`` and ``copies``, or ``set`` and ``sets``."""

    one: str
    many: str


def copies_called(plan: Plan, reader: Reader) -> CopiesCalled:
    """Return what one of a plan, and several of it, are called."""
    what = "set" if plan.is_set else "copy"
    return CopiesCalled(
        one=say(reader, f"making-one-{what}"), many=say(reader, f"making-many-{what}")
    )
