"""The sample's booklets, as published: no page stands half empty, nothing is too small to read."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator

from reportlab.lib.units import mm
from reportlab.pdfgen import canvas

from kerfolio.booklet.fitting import BLANK
from kerfolio.booklet.measure import Measure
from tests.booklet.reading import blank_feet, letter_sizes
from tests.conftest import Published
from tests.paper.editions import A4

_LEAST_POINTS = 7.5
_LEAST_FILLED = 0.1
"""Share of a last page: about 25 mm, which is more than three lines."""
_MEASURE = Measure(paper=A4)
_MARGINS = (_MEASURE.top, _MEASURE.bottom - 1.0)


def booklets(published: Published) -> Iterator[tuple[str, bytes]]:
    for path in sorted((*published.out.rglob("*.zip"), *published.supporters.rglob("*.zip"))):
        with zipfile.ZipFile(path) as archive:
            for name in archive.namelist():
                if name.rsplit("/", 1)[-1].startswith("booklet"):
                    yield f"{path.name}: {name}", archive.read(name)


def test_no_page_of_the_sample_ends_with_a_third_of_it_blank(published: Published) -> None:
    """The last one may, but for a few lines."""
    seen = 0
    for name, content in booklets(published):
        *feet, last = blank_feet(content, _MARGINS)
        assert [page for page, foot in enumerate(feet, 1) if foot > BLANK] == [], name
        assert 1.0 - last > _LEAST_FILLED, name
        seen += 1
    assert seen >= 2 * len(published.made) - 2


def test_nothing_in_the_sample_is_too_small_to_read(published: Published) -> None:
    for name, content in booklets(published):
        assert min(letter_sizes(content)) >= _LEAST_POINTS, name


def test_a_blank_foot_is_measured() -> None:
    out = io.BytesIO()
    paper = canvas.Canvas(out, pagesize=(210 * mm, 297 * mm))
    for high in (100.0, 253.0):  # of 253 mm between the margins of 17 and 27 mm
        paper.rect(20 * mm, (297 - 17 - high) * mm, 50 * mm, high * mm, fill=1)
        paper.drawString(20 * mm, 10 * mm, "a foot")
        paper.showPage()
    paper.save()
    one, other = blank_feet(out.getvalue(), (17.0, 27.0))
    assert abs(one - (1 - 100 / 253)) < 0.01
    assert other < 0.01
