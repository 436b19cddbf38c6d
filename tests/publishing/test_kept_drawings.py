"""Drawings of a plan put together are kept by what they show: shapes, titles, whom they are for."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.drawing.build_views import build_drawings
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.keeping.kept import Kept
from kerfolio.keeping.store import Store
from kerfolio.publishing import edition
from tests.plans import ONE, altered, proved

BESIDE = (
    ("Push the tabs home.", "Push them home."),
    ("joints:", "\n\njoints:"),
    ("A rack to measure with.", "Another rack."),
)
"""A text of a step, lines before what has a place in the file, a text of the plan."""

SHOWN = {
    "step": ("title: Put it together", "title: Put all together"),
    "size": ("w: 300", "w: 310"),
}


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    made: list[int] = []

    def counting(*inputs: object) -> object:
        made.append(1)
        return build_drawings(*inputs)  # type: ignore[arg-type]

    counting.__qualname__ = "build_drawings"  # a name that is found in a module
    monkeypatch.setattr(edition, "build_drawings", counting)
    return made


@cache
def plain(text: str) -> dict[str, Drawing]:
    return drawings(text)


def drawings(text: str, folder: Path | None = None, reader: Reader = METRIC) -> dict[str, Drawing]:
    proof = proved(text)
    kept = Kept(Store(folder)) if folder else Kept()
    return edition._drawings(proof.plan, proof.made, proof.together, reader, kept)


def test_words_beside_them_leave_them_as_they_are(tmp_path: Path, drawn: list[int]) -> None:
    assert drawings(ONE, tmp_path) == plain(ONE)
    drawn.clear()
    assert drawings(altered(ONE, *BESIDE), tmp_path) == plain(ONE)
    assert drawn == []


@pytest.mark.parametrize("change", SHOWN.values(), ids=SHOWN)
def test_what_they_show_makes_them_anew(
    change: tuple[str, str], tmp_path: Path, drawn: list[int]
) -> None:
    assert drawings(ONE, tmp_path) == plain(ONE)
    text = altered(ONE, change)
    drawn.clear()
    assert drawings(text, tmp_path) == drawings(text) != plain(ONE)
    assert len(drawn) == 2


def test_another_reader_has_drawings_of_his_own(tmp_path: Path) -> None:
    first = drawings(ONE, tmp_path)
    reader = Reader(unit="in")
    assert drawings(ONE, tmp_path, reader) == drawings(ONE, reader=reader) != first
