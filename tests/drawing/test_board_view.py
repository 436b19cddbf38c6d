from __future__ import annotations

import pytest

from kerfolio.basis.reader import Reader
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.hatch import hatched
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.measure import bounds
from kerfolio.layouts.boards import BoardPiece, BoardPlan, cut_boards
from tests.drawing.overlap import crossed, labels_of, outside, overlapping


def plan_of(*stated: tuple[str, float, int]) -> BoardPlan:
    pieces = [
        BoardPiece(label=f"{name}.{n}", length=length)
        for name, length, count in stated
        for n in range(1, count + 1)
    ]
    return cut_boards(pieces, [1800.0, 2400.0, 3000.0], trim=10.0, title="Planed pine")


MANY = plan_of(
    *(("leg", 712.0, 4), ("long-rail", 1480.0, 2), ("short-rail", 560.0, 4), ("slat", 620.0, 31)),
    *(("cleat", 45.0, 9), ("stop", 18.0, 40), ("brace", 333.4, 4)),
)


def texts(drawing: Drawing) -> list[str]:
    return [each.text for each in labels_of(drawing)]


@pytest.mark.parametrize("first", ["mm", "in"])
@pytest.mark.parametrize("room", [(168.0, 150.0), (80.0, 60.0), (260.0, 200.0)])
def test_boards_fit_their_room_and_their_words_stand_clear(
    room: tuple[float, float], first: str
) -> None:
    views = board_views(MANY, room, Reader(unit=first))
    assert len(views) > 0
    for drawing in views:
        assert drawing.width <= room[0] + 1e-6
        assert drawing.height <= room[1] + 1e-6
        assert overlapping(drawing) == []
        assert crossed(drawing) == []
        assert outside(drawing) == []


def test_bars_are_to_one_scale_with_the_kerf_between_pieces() -> None:
    plan = plan_of(("a", 1000.0, 1), ("b", 700.0, 1), ("c", 400.0, 1))
    (drawing,) = board_views(plan, (150.0, 100.0))
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    bars = [bounds(each.contour) for each in strokes if each.fill is Ink.INK]
    pieces = [bounds(each.contour) for each in strokes if each.fill is Ink.WOOD]
    scale = bars[0].width / plan.boards[0].length
    assert [box.width / scale for box in bars] == pytest.approx([b.length for b in plan.boards])
    assert [box.width / scale for box in pieces] == pytest.approx([1000.0, 700.0, 400.0])
    assert pieces[0].x0 / scale == pytest.approx(10.0)
    assert (pieces[1].x0 - pieces[0].x1) / scale == pytest.approx(3.2)


def test_boards_cut_alike_are_drawn_once() -> None:
    (drawing,) = board_views(plan_of(("rail", 1400.0, 8)))
    assert "Boards 1 to 4, cut alike: 3000 mm (118 1/8 in)" in texts(drawing)
    assert texts(drawing).count("Rail") == 2


def test_what_is_too_narrow_is_named_below_its_bar() -> None:
    (drawing,) = board_views(plan_of(("rail", 2900.0, 1), ("stop", 18.0, 1)))
    assert "Too narrow to mark: Stop 1 18" in texts(drawing)
    assert "board 1, 3000 mm (118 1/8 in): Rail 1 2900, Stop 1 18" in drawing.description


def test_no_boards_give_no_picture() -> None:
    assert board_views(cut_boards([], [2400.0])) == ()


def test_hatching_stays_in_its_box_and_off_what_is_kept_clear() -> None:
    lines = [bounds(each.contour) for each in hatched((10, 20, 40, 35), [(20, 24, 30, 30)])]
    assert len(lines) > 15
    for box in lines:
        assert box.x0 >= 10 - 1e-9
        assert box.x1 <= 40 + 1e-9
        assert box.y0 >= 20 - 1e-9
        assert box.y1 <= 35 + 1e-9
        x, y = box.centre
        assert not (20 < x < 30 and 24 < y < 30)
