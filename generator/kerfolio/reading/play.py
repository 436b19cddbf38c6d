"""The form of a workshop's word for what is tight and what is loose."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from itertools import pairwise

from kerfolio.basis.digits import digits
from kerfolio.basis.expression import Expression, parse
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import clearance
from kerfolio.basis.said import Text, said, written
from kerfolio.model.play import Play
from kerfolio.reading.amounts import PLAY_MM, AmountForm, constant_mm
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import SCALAR


@dataclass(frozen=True, slots=True, kw_only=True)
class MmForm(Form[float]):
    """A length that uses no size, in mm."""

    noun: str = PLAY_MM.noun
    advice: Text = PLAY_MM.advice
    amount: AmountForm = PLAY_MM

    def read(self, node: Node, desk: Desk) -> float | None:
        """Return the length."""
        amount = self.amount.read(node, desk)
        expression = parse(amount.text, "mm") if amount else None
        return constant_mm(expression) if isinstance(expression, Expression) else None

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


_USUAL = Play()
_SCALE = tuple(each.name for each in fields(Play) if each.name != "ends")


def _ascends(found: Fields) -> Iterator[Finding]:
    """Yield a finding where a looser joint would have less play than a tighter one."""
    for lower, higher in pairwise(_SCALE):
        least, most = (found.values.get(each, getattr(_USUAL, each)) for each in (lower, higher))
        if least > most:
            at = found.places[lower if lower in found.places else higher]
            lengths = clearance(least), clearance(most)
            message = said("`{}` is {}, `{}` {}", lower, lengths[0], higher, lengths[1])
            yield error("out-of-range", message, at, "The looser a joint, the more play it has.")


def _key(name: str, says: str) -> Key:
    default = digits(getattr(_USUAL, name))
    return Key(name=name, form=MmForm(), says=f"{says} ({default} mm).")


PLAY: Record[Play] = Record(
    name="play",
    noun="play by name",
    keys=(
        _key("driven", "Most play on each side of a joint that a mallet drives in"),
        _key("tight", "Most of one that is tight by hand"),
        _key("push", "Most of one that takes a push of the hand"),
        _key("slides", "Most of one that slides in"),
        _key("loose", "Most of one that is loose and does not rattle"),
        _key("ends", "Most play at either end of a tab that still places something"),
    ),
    make=Play,
    check=_ascends,
    placed=False,
    advice=written("{tight: 0.08 mm, loose: 0.6 mm}", "{tight: 0.003 in, loose: 0.024 in}"),
)
