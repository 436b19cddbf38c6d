"""Which tile a page is, read from its words in whatever language they are told."""

from __future__ import annotations

import pytest

from kerfolio.agreement.template_places import Tiles, place_told
from kerfolio.basis.reader import Reader


@pytest.mark.parametrize(("language", "word"), [("en", "tile"), ("de", "Kachel")])
def test_a_page_is_known_by_its_tile(language: str, word: str) -> None:
    reader = Reader(language=language)
    tiles = Tiles(
        box=(0.0, 0.0, 300.0, 200.0),
        page=(210.0, 297.0),
        across=(0.0, 150.0),
        up=(0.0,),
        reader=reader,
    )
    words = tiles.words(1, 0)
    assert words.startswith(f"{word} 1-2: ")
    line = f"Rack · 17.8 mm · A Side · {words} · 3"
    assert place_told(line, " · A Side", reader) == (1, 0)
    assert place_told(line, " · B Rail", reader) is None
    assert place_told("Rack · A Side · whole", " · A Side", reader) is None
