"""The form of what is used up in making."""

from __future__ import annotations

from kerfolio.model.consumable import Consumable
from kerfolio.reading.forms import ListOf
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import MONEY, TITLE_TEXT, choice

_ADVICE = "Write `- {what: Sandpaper and oil, price: 3.50}`, a line each."
_CONSUMABLE: Record[Consumable] = Record(
    name="consumable",
    noun="a consumable",
    keys=(
        Key(name="what", form=TITLE_TEXT, says="What is used up.", required=True),
        Key(name="price", form=MONEY, says="Its price, for each `each`.", required=True),
        Key(
            name="each",
            form=choice("what a price is for", "copy", "sheet", "hour"),
            says="What the price is for: a `copy` (if not stated), a `sheet`, a machine `hour`.",
        ),
    ),
    make=Consumable,
    advice=_ADVICE,
)
CONSUMABLES: ListOf[Consumable] = ListOf(
    item=_CONSUMABLE, noun="a list of consumables", advice=_ADVICE, lenient=True
)
