"""Answers to what is asked about a trial, and the entry of the log that they are."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from kerfolio.model.stated import Stated, Value

Answers: TypeAlias = Mapping[str, str]
"""What was typed, by the key of the question; an empty text says that there is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A key that can be asked for: ``option`` names it on a command line, ``words`` ask for it."""

    key: str
    words: str
    option: str = ""
    listed: bool = False

    @property
    def name(self) -> str:
        """The name of its option."""
        return self.option or self.key


LEAST = (
    Asked(key="plan", words="Plan"),
    Asked(key="stock", words="Sheet", option="sheet"),
    Asked(key="thickness", words="Its thickness, measured"),
    Asked(key="cutter", words="Cutter"),
    Asked(key="speed", words="Speed, such as 18000 rpm"),
    Asked(key="feed", words="Feed, with its unit"),
    Asked(key="passes", words="Depth of each pass, one after the other", listed=True),
    Asked(key="outcome", words="How it came out"),
    Asked(key="photo", words="A photo of it, the path of a file"),
    Asked(key="alt", words="What the photo shows, for who cannot see it"),
)
"""What is asked of everybody."""

MORE = (
    Asked(key="title", words="What was tried"),
    Asked(key="release", words="Release of the plan that was cut"),
    Asked(key="part", words="Part that was cut"),
    Asked(key="batch", words="What you call sheets bought together"),
    Asked(key="readings", words="What a caliper says at several places", listed=True),
    Asked(key="moisture", words="Moisture, percent of the dry mass"),
    Asked(key="operation", words="What was cut"),
    Asked(key="plunge", words="Feed downwards, with its unit"),
    Asked(key="direction", words="Direction, climb or conventional"),
    Asked(key="workholding", words="How the sheet was held"),
    Asked(key="extraction", words="How dust and chips were taken away"),
    Asked(key="top", words="The upper edge, where the cutter enters"),
    Asked(key="bottom", words="The lower edge"),
    Asked(key="face", words="The face that is seen"),
    Asked(key="marks", words="What is seen or heard", listed=True),
    Asked(key="fit", words="Clearance on each side of the joint"),
    Asked(key="went", words="How the joint went together"),
    Asked(key="true-cut", words="What the cutter really cut"),
    Asked(key="metres", words="Metres that the cutter cut"),
    Asked(key="reckoned-minutes", words="Minutes that it was to take"),
    Asked(key="minutes", words="Minutes that the machine took"),
    Asked(key="hours", words="Hours of all the work"),
    Asked(key="money", words="What it cost"),
    Asked(key="finishes", words="Oils, lacquers, paints", listed=True),
    Asked(key="glues", words="Glues", listed=True),
    Asked(key="mistakes", words="What went wrong", listed=True),
    Asked(key="repairs", words="How it was put right", listed=True),
    Asked(key="public", words="Show it on the plan's page, yes or no"),
    Asked(key="text", words="Notes"),
)
"""What is asked of who wants to say more."""

KEYS = {each.key: each for each in (*LEAST, *MORE)}

EDGES = ("top", "bottom", "face")
"""Keys of what is looked at one by one."""

_BATCH = ("batch", "readings", "moisture")
_ORDER = (
    *("id", "date", "title", "plan", "release", "part", "stock", "thickness", "batch", "cutter"),
    *("operation", "speed", "feed", "plunge", "passes", "direction", "workholding", "extraction"),
    *("fit", "went", "true-cut", "outcome", "marks", "metres", "reckoned-minutes", "minutes"),
    *("hours", "money", "finishes", "glues", "mistakes", "repairs", "public", "photo", "text"),
)
"""Keys as a log has them one below the other."""


def stated_by(answers: Answers, **more: str) -> Stated:
    """Return the entry that answers state, with ``more`` of its keys; what has none is left out."""
    found: dict[str, Value] = {**more, **dict(_stated(answers))}
    return {key: found[key] for key in _ORDER if key in found}


def _stated(answers: Answers) -> Iterator[tuple[str, Value]]:
    said = {key: text for key, text in answers.items() if key in KEYS and text.strip()}
    yield from _outcome(said)
    yield from _batch(said)
    if "photo" in said:
        yield "photo", {"file": said["photo"], "alt": said.get("alt", "")}
    for key, text in said.items():
        if key not in (*EDGES, *_BATCH, "outcome", "photo", "alt"):
            yield key, parted(text) if KEYS[key].listed else text


def _outcome(said: Answers) -> Iterator[tuple[str, Value]]:
    edges = {key: said[key] for key in EDGES if key in said}
    whole = said.get("outcome")
    if edges:
        yield "outcome", {**edges, **({"whole": whole} if whole else {})}
    elif whole:
        yield "outcome", whole


def _batch(said: Answers) -> Iterator[tuple[str, Value]]:
    more: dict[str, Value] = {}
    if "readings" in said:
        more["readings"] = parted(said["readings"])
    if "moisture" in said:
        more["moisture"] = said["moisture"]
    if "batch" in said:
        yield "batch", {"name": said["batch"], **more} if more else said["batch"]
    elif more:
        yield "batch", more


def parted(text: str) -> tuple[str, ...]:
    """Return the entries of a typed list: parted by semicolons, or by commas before a blank.

    A comma between digits parts nothing: it is refused as what it is.
    """
    inner = text.strip().removeprefix("[").removesuffix("]")
    return tuple(each.strip() for each in re.split(r";|,(?=\s|$)", inner) if each.strip())
