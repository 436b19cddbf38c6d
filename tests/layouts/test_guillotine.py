from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.layouts.guillotine import Box, is_guillotine


def test_rows_and_columns_are_set_free() -> None:
    assert is_guillotine([])
    assert is_guillotine([(0, 0, 5, 5)])
    assert is_guillotine([(0, 0, 5, 5), (5, 0, 9, 3), (5, 3, 9, 5), (0, 5, 9, 7)])


def test_a_pinwheel_is_not() -> None:
    """Four rectangles round a fifth: no cut from edge to edge (textbook case, from memory)."""
    pinwheel: list[Box] = [(0, 0, 2, 1), (2, 0, 3, 2), (1, 2, 3, 3), (0, 1, 1, 3), (1, 1, 2, 2)]
    assert not is_guillotine(pinwheel)
    assert is_guillotine(pinwheel[1:])


def test_a_cut_needs_its_kerf() -> None:
    assert is_guillotine([(0, 0, 5, 5), (8, 0, 9, 5)], kerf=3.0)
    assert not is_guillotine([(0, 0, 5, 5), (7.9, 0, 9, 5)], kerf=3.0)


def test_overlapping_boxes_are_never_set_free() -> None:
    assert not is_guillotine([(0, 0, 5, 5), (4, 4, 9, 9)])


def parted(draw: st.DrawFn, box: Box, kerf: float, depth: int) -> list[Box]:
    """Cut a box at random from edge to edge."""
    across = draw(st.booleans())
    low, high = (0, 2) if across else (1, 3)
    length = box[high] - box[low]
    if depth == 0 or length < 2 * kerf + 2:
        return [box]
    at = box[low] + draw(st.floats(0.2, 0.8)) * (length - kerf)
    one, other = list(box), list(box)
    one[high], other[low] = at, at + kerf
    return [
        *parted(draw, (one[0], one[1], one[2], one[3]), kerf, depth - 1),
        *parted(draw, (other[0], other[1], other[2], other[3]), kerf, depth - 1),
    ]


@settings(deadline=None)
@given(st.data(), st.sampled_from([0.0, 3.2]))
def test_what_was_cut_from_edge_to_edge_is_seen_to_be(data: st.DataObject, kerf: float) -> None:
    boxes = parted(data.draw, (0.0, 0.0, 2440.0, 1220.0), kerf, 5)
    assert is_guillotine(data.draw(st.permutations(boxes)), kerf)
