"""Where words of a booklet lead."""

from __future__ import annotations

import pytest

from kerfolio.booklet.lines import Lines
from kerfolio.document.words import Reference


@pytest.mark.parametrize(
    ("targets", "to"),
    [({"router", "layers"}, {"to": "layers"}), ({"router"}, {"to": "router"}), ({"layer"}, {})],
)
def test_words_lead_to_the_heading_else_to_its_chapter(
    targets: set[str], to: dict[str, str]
) -> None:
    lines = Lines(language="en", targets=frozenset(targets))
    found = lines.line((Reference(text="the layers", chapter="router", heading="layers"),))
    assert found == [{"text": "the layers", **to}]
