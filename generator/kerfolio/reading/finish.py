"""Forms of what a thing is finished with, and of the place it lives in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.said import Text
from kerfolio.model.climate import CLIMATES, Climate
from kerfolio.model.finish import WHEN, Finish
from kerfolio.reading.amounts import EXTRA
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import choice, number, whole

_BY_NAME = {each.name: each for each in CLIMATES}
_WORD = choice("a place to live in", *_BY_NAME)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClimateForm(Form[Climate]):
    """``shed``: the word for a place."""

    noun: str = _WORD.noun
    advice: Text = _WORD.advice

    def read(self, node: Node, desk: Desk) -> Climate | None:
        """Return the place."""
        word = _WORD.read(node, desk)
        return None if word is None else _BY_NAME[word]

    def schema(self, book: Book) -> Schema:
        """Return the schema of its words."""
        return _WORD.schema(book)


def _faults(found: Fields) -> Iterator[Finding]:
    """Yield a finding for what is taken off between coats where there is but one."""
    if "between_coats" in found.values and found.values.get("coats", 1) < 2:
        message, at = "`between-coats` where there is one coat", found.places["between-coats"]
        yield error("wrong-value", message, at, "State two `coats` or more, or leave it out.")


FINISH: Record[Finish] = Record(
    name="finish",
    noun="a finish",
    keys=(
        Key(name="of", form=REFERENCE, says="What is put on, by its name.", required=True),
        Key(name="coats", form=whole(1, 20), says="How many coats (1)."),
        Key(
            name="when",
            form=choice("a time to finish", *WHEN),
            says="Before its pieces go together, with a film in the joints, or after (after).",
        ),
        Key(name="film", form=EXTRA, says="How thick one dry coat is."),
        Key(name="wet", form=EXTRA, says="How thick one coat is while it is wet."),
        Key(name="solids", form=number(0.01, 1), says="Share of it by volume that stays."),
        Key(name="sanding", form=EXTRA, says="What is sanded off each face before assembly."),
        Key(
            name="between-coats",
            form=EXTRA,
            says="What is sanded off each coat but the last.",
        ),
    ),
    make=Finish,
    not_both=(("film", "wet"), ("film", "solids")),
    check=_faults,
    advice="Write `{of: varnish, coats: 3, when: before assembly}`.",
)
