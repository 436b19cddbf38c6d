"""Forms of what surrounds a plan: its video, its questions and its releases."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from kerfolio.basis.budgets import PHOTOS as PHOTOS_TAKEN
from kerfolio.basis.complaint import quoted
from kerfolio.basis.place import Place
from kerfolio.model.plan import NO_DAY, Question, Release, Video
from kerfolio.reading.desk import Desk
from kerfolio.reading.files import PHOTO
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Entry, Mapping, Node, Scalar, Sequence
from kerfolio.reading.prose import PROSE
from kerfolio.reading.record import Entries, Key, Record
from kerfolio.reading.values import ADDRESS, DATE, FLAG, TEXT, version_fault

_CHAPTER = re.compile(r"((?:[0-9]{1,2}:)?[0-9]{1,2}:[0-9]{2})(?::?\s+|$)(.*)")
Chapters = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChaptersForm(Form[Chapters]):
    """``{0:00 The idea, 2:10 Cutting}``, or a list of such texts."""

    noun: str = "chapters"
    advice: str = "Write `[0:00 The idea, 2:10 Cutting]`."

    def read(self, node: Node, desk: Desk) -> Chapters | None:
        """Return (time, title) of each chapter, times ascending."""
        if isinstance(node, Mapping):
            texts = [(_whole(each), each.key.place) for each in node.entries]
        elif isinstance(node, Sequence):
            texts = [(each.text, each.place) for each in node.items if isinstance(each, Scalar)]
        else:
            self.refuse(node, desk)
            return None
        chapters = [self._chapter(text, place, desk) for text, place in texts]
        readable = tuple(each for each in chapters if each is not None)
        times = [_seconds(time) for time, _ in readable]
        if times != sorted(set(times)):
            desk.refuse("chapters", "chapters are not in order", node.place, self.advice)
        return readable

    def _chapter(self, text: str, place: Place, desk: Desk) -> tuple[str, str] | None:
        found = _CHAPTER.fullmatch(" ".join(text.split()))
        if found and found[2]:
            return found[1], found[2]
        advice = "Write minutes:seconds, a blank and the title: `2:10 Cutting`."
        desk.refuse("chapters", f"{quoted(text)} is no chapter", place, advice)
        return None

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a list of texts or a mapping with such keys."""
        text = {"type": "string", "pattern": "^[0-9:]+ "}
        titles = {"type": ["string", "null"]}
        return {
            "anyOf": [
                {"type": "array", "items": text},
                {"type": "object", "additionalProperties": titles},
            ]
        }


def _whole(entry: Entry) -> str:
    """Return a chapter as one text again, where YAML took it apart at a colon and a blank."""
    value = entry.value.text if isinstance(entry.value, Scalar) else ""
    joint = ": " if " " in entry.key.text and value else " "
    return f"{entry.key.text}{joint}{value}".strip()


def _seconds(time: str) -> int:
    total = 0
    for part in time.split(":"):
        total = total * 60 + int(part)
    return total


VIDEO: Record[Video] = Record(
    name="video",
    noun="a video",
    keys=(
        Key(name="url", form=ADDRESS, says="Where the film is.", required=True),
        Key(name="chapters", form=ChaptersForm(), says="Times with titles."),
    ),
    make=Video,
    advice="Write `{url: https://example.org/v/1}`.",
    placed=False,
)
QUESTIONS = ListOf(
    item=Record(
        name="question",
        noun="a question",
        keys=(
            Key(name="q", form=TEXT, says="The question.", required=True, field="question"),
            Key(
                name="a", form=PROSE, says="The answer, in Markdown.", required=True, field="answer"
            ),
        ),
        make=Question,
        advice="Write `- q: Will it take an adult?` and `a:` below it.",
        placed=False,
    ),
    noun="a list of questions",
    advice="Write `- q: Will it take an adult?` and `a:` below it.",
    lenient=True,
)
PHOTOS = ListOf(
    item=PHOTO,
    budget=PHOTOS_TAKEN,
    noun="a list of photos",
    advice="Write `- {file: photos/finished.jpg, alt: ...}`, a line each.",
    lenient=True,
)


def _make_release(name: str, date: date = NO_DAY, changed: str = "", **values: Any) -> Release:
    return Release(version=name, date=date, changed=changed, **values)


RELEASES: Entries[Release] = Entries(
    record=Record(
        name="release",
        noun="a release",
        keys=(
            Key(name="date", form=DATE, says="Day of the release.", required=True),
            Key(name="changed", form=TEXT, says="What changed, for readers.", required=True),
            Key(name="errata", form=FLAG, says="True when earlier versions were wrong."),
        ),
        make=_make_release,
        advice="Write `1.2.0: {date: 2026-10-02, changed: Slots moved inward.}`.",
        named=True,
        lenient=True,
    ),
    noun="releases by version",
    advice="Write `1.2.0: {date: 2026-10-02, changed: ...}`.",
    fault=version_fault,
    pattern=r"[0-9]+\.[0-9]+\.[0-9]+",
)


def in_sequence(releases: tuple[Release, ...]) -> tuple[Release, ...]:
    """Return releases by version; one whose day could not be read is given that of the one before.

    So no other release passes for the newest.
    """
    placed: list[Release] = []
    for each in sorted(releases, key=lambda each: each.numbers):
        day = placed[-1].date if placed and each.date == NO_DAY else each.date
        placed.append(replace(each, date=day))
    return tuple(placed)
