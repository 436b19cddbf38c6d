"""The form of ``silence``: rules the maker does not want to hear from, each with a reason."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.plan import Silence
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.values import TEXT


@dataclass(frozen=True, slots=True, kw_only=True)
class SilenceForm(Form[tuple[Silence, ...]]):
    """``{small-part-loose: "The vacuum table holds it."}``."""

    noun: str = "rules with reasons"
    advice: str = 'Write `rule-id: "why it does not apply here"`, a line each.'

    def read(self, node: Node, desk: Desk) -> tuple[Silence, ...] | None:
        """Return the silences that have a reason."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        made = []
        for entry in node.entries:
            reason = TEXT.read(entry.value, desk)
            if reason is not None:
                key = entry.key
                made.append(Silence(rule=key.text, reason=reason, place=key.place))
        return tuple(made)

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from rule to reason."""
        return {"type": "object", "additionalProperties": TEXT.schema(book)}


SILENCE = SilenceForm()
