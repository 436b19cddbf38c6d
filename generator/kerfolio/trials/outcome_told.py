"""What became of a cut, in a word or two."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.names import name_of
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.model.outcome import Grade, Mark, Outcome


def grade_told(grade: Grade, reader: Reader) -> str:
    """Return a grade in a word or two."""
    return say(reader, "trials-grade", grade=name_of(grade.word))


def mark_told(mark: Mark, reader: Reader) -> str:
    """Return what a mark is called."""
    return say(reader, "trials-mark", mark=mark.value)


def marks_told(marks: Sequence[Mark], reader: Reader) -> str:
    """Return what is seen on cuts."""
    return listed(reader, [mark_told(each, reader) for each in marks])


def outcome_told(outcome: Outcome, reader: Reader) -> str:
    """Return the grade and what is seen; empty where neither is told."""
    grade = grade_told(outcome.grade, reader) if outcome.grade else ""
    marks = marks_told(outcome.marks, reader)
    if grade and marks:
        return say(reader, "trials-graded", grade=grade, marks=marks)
    return grade or marks
