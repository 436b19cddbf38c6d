"""The forms of what came out of a cut: grades, marks, how a joint went together."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TypeVar

from kerfolio.basis.complaint import Complaint
from kerfolio.model.outcome import OLDER, Feel, Grade, Mark, Operation, Outcome
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import choice

E = TypeVar("E", bound=Enum)


def _one_of(noun: str, words: dict[str, E]) -> ScalarForm[E]:
    """Return the form of one of a few words that each stand for something."""
    plain = choice(noun, *words)

    def convert(node: Scalar) -> E | Complaint:
        word = plain.convert(node)
        return word if isinstance(word, Complaint) else words[word]

    return ScalarForm(
        noun=noun, advice=plain.advice, convert=convert, json=plain.json, rule=plain.rule
    )


GRADE = _one_of("a grade", {each.word: each for each in reversed(Grade)})
MARK = _one_of("a mark", {each.value: each for each in Mark})
FEEL = _one_of("how a joint goes together", {each.word: each for each in Feel})
OPERATION = _one_of("what is cut", {each.value: each for each in Operation})


def _climbs(node: Scalar) -> bool | Complaint:
    word = _DIRECTION.convert(node)
    return word if isinstance(word, Complaint) else word == "climb"


_DIRECTION = choice("a direction of cut", "climb", "conventional")
CLIMB: ScalarForm[bool] = ScalarForm(
    noun=_DIRECTION.noun,
    advice=_DIRECTION.advice,
    convert=_climbs,
    json=_DIRECTION.json,
    rule=_DIRECTION.rule,
)

MARKS: ListOf[Mark] = ListOf(
    item=MARK,
    noun="a list of marks",
    advice="Write `marks: [fuzz, tear-out]`.",
    single=True,
)

_VERDICT = choice("an outcome", *(each.word for each in reversed(Grade)), *OLDER)

_LOOKED_AT: Record[Outcome] = Record(
    name="outcome",
    noun="an outcome",
    keys=(
        Key(name="top", form=GRADE, says="The upper edge, where the cutter enters."),
        Key(name="bottom", form=GRADE, says="The lower edge."),
        Key(name="face", form=GRADE, says="The face that is seen."),
        Key(name="whole", form=GRADE, says="The verdict [the worst of the others]."),
    ),
    make=Outcome,
    advice="Write `outcome: clean`, or `outcome: {top: clean, bottom: to sand}`.",
    placed=False,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeForm(Form[Outcome]):
    """One word for the whole, or one for each edge and the face."""

    noun: str = "an outcome"
    advice: str = "Write `outcome: clean`, or `outcome: {top: clean, bottom: to sand}`."

    def read(self, node: Node, desk: Desk) -> Outcome | None:
        """Return the outcome stated."""
        if isinstance(node, Mapping):
            return _LOOKED_AT.read(node, desk)
        word = _VERDICT.read(node, desk)
        if word is None:
            return None
        grade, marks = OLDER.get(word, (None, ()))
        return Outcome(whole=grade or _GRADES[word], marks=marks)

    def schema(self, book: Book) -> Schema:
        """Return both schemas as alternatives."""
        return {"anyOf": [_VERDICT.schema(book), _LOOKED_AT.schema(book)]}


_GRADES = {each.word: each for each in Grade}
OUTCOME = OutcomeForm()
