"""Fitted files made by chance, for the tests of both programs that fill them in."""

from __future__ import annotations

import random

from kerfolio.basis.style import Rule, Style
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number, Piece, Slot

NUMBERS = (
    Number(name="thickness.ply", least=17.2, most=18.6, drawn=18.0, decimals=2),
    Number(
        name="fit.ply",
        least=0.05,
        most=0.2,
        drawn=0.1016,
        decimals=3,
        above="The slots would be wider than their walls bear.",
    ),
    Number(name="cutter.ply", least=3.0, most=8.0, drawn=6.0, decimals=3, none=True),
)
RULES = (*(Rule.TRIMMED,) * 6, *Rule)
LABEL = (
    Slot(style=Style(rule=Rule.POINTED, decimals=2), constant=0.0, slopes=(1.0,)),
    "mm",
    Slot(
        style=Style(decimals=3, unless=0.1016, before="-fit-", after="mm"),
        constant=0.0,
        slopes=(0.0, 1.0),
    ),
    Slot(
        style=Style(decimals=3, unless=6.0, before="-cutter-", after="mm", none="-no-cutter"),
        constant=0.0,
        slopes=(0.0, 0.0, 1.0),
    ),
)


def style(chance: random.Random) -> Style:
    rule = chance.choice(RULES)
    decimals = chance.choice((0, 2, 3, 4, 4, 4, 6, 8))
    return Style(
        rule=rule,
        decimals=decimals,
        width=24 if rule is Rule.PADDED else 0,
        unless=chance.choice((None, None, None, 0.0, 18.0)),
        before=chance.choice(("", "", "fit ")),
        after=chance.choice(("", "", " mm")),
        room=chance.choice((0, 0, 12)),
        mark=chance.choice((".", ".", ",")),
    )


def slot(chance: random.Random) -> Slot:
    """Slopes are mostly what plans have, constants often lie on exact halves of a last decimal."""
    slopes = [chance.choice((0.0, 1.0, -1.0, 0.5, 2.0, 2**-0.5, chance.uniform(-3, 3)))] * 1
    slopes += [chance.choice((0.0, 2.0, -0.5, chance.uniform(-3, 3)))] * chance.randrange(2)
    slopes += [chance.choice((0.0, 0.7071, -(2**-0.5)))] * (chance.randrange(2) * len(slopes) // 2)
    half = chance.randrange(-(10**6), 10**6) / 32
    constant = chance.choice((half, chance.uniform(-2440, 2440), 0.0, round(half, 2)))
    return Slot(style=style(chance), constant=constant, slopes=tuple(slopes))


def fitted(seed: int, slots: int) -> Fitted:
    """Return one file of many slots, and one with cells and a name that follows the point."""
    chance = random.Random(seed)
    pieces: list[Piece] = []
    for place in range(slots):
        pieces += [slot(chance), f" {place} «ü»\n"]
    cells = (
        Cell(name=("a-", *LABEL, ".txt"), text=("thin",), box=(("thickness.ply", (17.2, 17.9)),)),
        Cell(name=("b-no-cutter",), text=("square",), box=(("cutter.ply", None),)),
        Cell(name=("c-", *LABEL), text=("round",), box=(("cutter.ply", (3.0, 8.0)),)),
    )
    whole = Cell(name=("whole/", *LABEL, ".svg"), text=tuple(pieces))
    return Fitted(numbers=NUMBERS, files=(FittedFile(cells=(whole,)), FittedFile(cells=cells)))


def points(seed: int, count: int) -> list[dict[str, float | None]]:
    """Return both ends, what is drawn, and points between with more decimals than are kept."""
    chance = random.Random(seed)
    made: list[dict[str, float | None]] = [
        {},
        {each.name: each.least for each in NUMBERS},
        {each.name: each.most for each in NUMBERS},
        {"thickness.ply": 23 / 32 * 25.4, "fit.ply": 0.1, "cutter.ply": None},
        {"thickness.ply": 17.9},
        {"thickness.ply": 17.905, "cutter.ply": 3.175},
    ]
    for _ in range(count):
        made.append({each.name: chance.uniform(each.least, each.most) for each in NUMBERS})
        if chance.random() < 0.2:
            made[-1]["cutter.ply"] = None
    return made
