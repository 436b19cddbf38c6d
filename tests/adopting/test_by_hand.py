"""Drawings that several hands made, of things that no sample plan is, become the plans they are.

The right answers were fixed by hand, as ``tests/adopting/hands`` has them.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.publishing import adopting
from tests.adopting import by_hand
from tests.tools.adopt_table import looked_at


@pytest.fixture(autouse=True)
def without_the_page(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leave out the page, which takes longer than all else and is looked at elsewhere."""
    monkeypatch.setattr(adopting, "adopted_report", lambda *_: "")


def looked_over(name: str, folder: Path) -> None:
    """Look that all of a drawing was found, and nothing that is not there."""
    score, _ = looked_at(name, folder)
    assert score.silent == ()
    assert score.told == ()
    assert score.found == score.there
    assert not score.errors


@pytest.mark.parametrize("name", ["wedge-bench", "toy-garage", "key-rack"])
def test_a_drawing_by_hand_is_understood(name: str, tmp_path: Path) -> None:
    looked_over(name, tmp_path)


@pytest.mark.bench
@pytest.mark.parametrize("name", by_hand.names())
def test_every_drawing_by_hand_is_understood(name: str, tmp_path: Path) -> None:
    looked_over(name, tmp_path)


def test_a_score_tells_what_is_wrong(tmp_path: Path) -> None:
    """Spoilt on purpose: a stretcher whose tenons are too wide for their slots, told or not."""
    hands = tmp_path / "hands"
    hands.mkdir()
    drawn = (by_hand.HANDS / "wedge-bench.svg").read_text("utf-8")
    spoilt = drawn.replace("v 80 h -63", "v 60 h -63", 1).replace("v 20 h -700", "v 40 h -700", 1)
    assert spoilt != drawn
    (hands / "wedge-bench.svg").write_text(spoilt, "utf-8")
    right = (by_hand.HANDS / "wedge-bench.json").read_text("utf-8")
    (hands / "wedge-bench.json").write_text(right, "utf-8")
    score, _ = looked_at("wedge-bench", tmp_path, hands)
    assert any("joints" in each for each in (*score.told, *score.silent))
    assert score.found["joint"] < score.there["joint"]
