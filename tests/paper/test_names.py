"""No printed page calls a sheet, a part or a piece as it is typed in a plan: titles do."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator

import pikepdf
import pytest

from kerfolio.basis.style import told_as
from kerfolio.layouts.boards import BoardPiece, cut_boards
from kerfolio.layouts.saw import saw_plan
from kerfolio.paper.coupon_sheet import coupon_pdf
from kerfolio.paper.saw_sheets import saw_pdf
from kerfolio.paper.template_choices import Templates
from tests.paper.editions import A4
from tests.paper.printed import layout_pdf, setup_pdf
from tests.paper.reading import texts
from tests.paper.sample_editions import sample

PIECES = [BoardPiece(label=f"wall-batten.{number}", length=900.0) for number in (1, 2)]
BATTENS = cut_boards(PIECES, [2400.0], title="Pine", section=(45.0, 21.0))

TYPED = re.compile(
    r"(?<![\w./-])(?:(?:ply|thin)(?![\w./-])|[a-z]+(?:-[a-z]+)*\.[a-z0-9-]+|[a-z]+-joint-\w+)"
)
"""A sheet's key, a name with a point in it, a test joint of a sheet; a path of a file is none."""


def printed() -> Iterator[tuple[str, bytes]]:
    """Yield what is printed of a plan whose sheets are `ply` and `thin`, in no title as a word."""
    bench = sample("potting-bench")
    files = Templates.of(bench).at(bench.settled)
    yield "templates", next(each for each in files if "a4" in each.name).write(told_as)
    yield "setup", setup_pdf(bench, A4)
    yield "layout", layout_pdf(bench, A4)
    yield "saw", saw_pdf(bench, saw_plan(bench.settled), [BATTENS], A4)
    yield "coupon", coupon_pdf(bench, A4)


def unseen(content: bytes) -> list[str]:
    """Return what a file says besides its pages: alternative texts, bookmarks, its title."""
    with pikepdf.open(io.BytesIO(content)) as document:
        held = [each for each in document.objects if isinstance(each, pikepdf.Dictionary)]
        return [str(each[key]) for each in held for key in ("/Alt", "/Title") if key in each]


def test_titles_stand_where_a_plan_has_names() -> None:
    for kind, content in printed():
        pages, others = texts(content), unseen(content)
        assert len(others) > 1, kind
        assert [(kind, TYPED.findall(page)) for page in pages if TYPED.search(page)] == []
        assert "Birch plywood 18 mm" in " ".join(pages), kind
        assert [(kind, each) for each in others if TYPED.search(each)] == []


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("17.80 mm ply", ["ply"]),
        ("for ply, 12.00 mm thin only", ["ply", "thin"]),
        ("A1 side.left 500 mm", ["side.left"]),
        ("wall-batten.2 900 mm", ["wall-batten.2"]),
        ("TEST I test-joint-ply, cut 2", ["test-joint-ply"]),
        ("cut/fit-coupon/fit-coupon-ply", []),
        ("Left side 17.80 mm of Birch plywood 18 mm.", []),
    ],
)
def test_what_is_typed_in_a_plan_is_seen(words: str, found: list[str]) -> None:
    assert TYPED.findall(words) == found
