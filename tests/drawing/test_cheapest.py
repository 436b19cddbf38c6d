"""The cheapest of many places is that of a plain search, asked for less."""

from __future__ import annotations

import numpy as np
import pytest

from kerfolio.drawing.cheapest import cheapest


@pytest.mark.parametrize("seed", range(20))
def test_it_finds_what_a_plain_search_finds(seed: int) -> None:
    rng = np.random.default_rng(seed)
    known = rng.integers(0, 40, 200).astype(float).tolist()
    rest = rng.integers(0, 12, 200).astype(float).tolist()
    asked: list[int] = []

    def more(some: list[int]) -> list[float]:
        asked.extend(some)
        return [rest[each] for each in some]

    totals = [a + b for a, b in zip(known, rest, strict=True)]
    assert cheapest(known, more) == min(range(200), key=lambda each: (totals[each], each))
    assert len(asked) < 200


def test_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing to choose"):
        cheapest([], lambda some: [0.0 for _ in some])
