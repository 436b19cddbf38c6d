"""A yard's straight cuts: through no piece, as few as can be, and none told where none is possible.

Shapes are read back from the written DXF of a sheet with ezdxf, and cut with shapely.
"""

from __future__ import annotations

from collections.abc import Callable
from io import StringIO
from itertools import pairwise

import ezdxf
import ezdxf.path
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from kerfolio.basis.reader import METRIC
from kerfolio.edition.yard import cuts_of
from kerfolio.layouts.guillotine import Box
from kerfolio.layouts.panel_cuts import KERF, MOST_CUTS, PanelCuts, panel_cuts
from kerfolio.model.carrying import Carries
from kerfolio.publishing.cut_files import sheet_files
from kerfolio.writing.formats import CUT_FORMATS
from tests.layouts.yard_edition import edition_in
from tests.plans import small_layout, small_settled

SHEET = (2440.0, 1220.0)
WHEEL = {
    "a": (10.0, 10.0, 800.0, 300.0),
    "b": (820.0, 10.0, 1100.0, 800.0),
    "c": (310.0, 820.0, 1100.0, 1100.0),
    "d": (10.0, 320.0, 300.0, 1100.0),
}
"""Four boards round a middle: the standing example of what no straight cut can part."""


def cut(pieces: dict[str, Box], longest: float, sheet: tuple[float, float] = SHEET) -> PanelCuts:
    found = panel_cuts(sheet, pieces, up_to(longest), (longest,), margin=10)
    assert found is not None
    return found


def up_to(longest: float) -> Callable[[Box, bool], bool]:
    def fits(panel: Box, laden: bool) -> bool:
        return not laden or max(panel[2] - panel[0], panel[3] - panel[1]) <= longest

    return fits


def test_a_sheet_that_fits_is_left_whole() -> None:
    found = cut({"a": (10.0, 10.0, 2000.0, 600.0)}, 2440)
    assert (found.cuts, [each.box for each in found.blanks]) == ((), [(0.0, 0.0, *SHEET)])


def test_one_cut_between_two_pieces() -> None:
    pieces = {"a": (10.0, 10.0, 1200.0, 1000.0), "b": (1208.0, 10.0, 2400.0, 1000.0)}
    found = cut(pieces, 1300)
    assert [(each.across, each.at) for each in found.cuts] == [(True, 1204.0)]
    assert [each.size for each in found.blanks] == [(1202.0, 1220.0), (1234.0, 1220.0)]
    assert [each.pieces for each in found.blanks] == [("a",), ("b",)]


def test_a_gap_narrower_than_the_saw_is_no_way_through() -> None:
    pieces = {"a": (10.0, 10.0, 1200.0, 1000.0), "b": (1204.0, 10.0, 2400.0, 1000.0)}
    assert panel_cuts(SHEET, pieces, up_to(1300), (1300.0,)) is None


def test_where_every_cut_would_cross_a_piece_none_is_told() -> None:
    assert panel_cuts((1110.0, 1110.0), WHEEL, up_to(900), (900.0,)) is None


def test_more_than_four_cuts_are_not_asked_of_a_yard() -> None:
    rows = {str(i): (10.0, 10.0 + 110 * i, 2400.0, 100.0 + 110 * i) for i in range(6)}
    assert len(cut(dict(list(rows.items())[:4]), 2440).cuts) == 0

    def narrow(panel: Box, laden: bool) -> bool:
        return not laden or panel[3] - panel[1] <= 130

    assert panel_cuts(SHEET, rows, narrow, (130.0,)) is None
    few = panel_cuts(SHEET, dict(list(rows.items())[:4]), narrow, (130.0,))
    assert few is not None
    assert len(few.cuts) == MOST_CUTS


_SIDES = st.tuples(st.integers(60, 500), st.integers(60, 500))


@settings(max_examples=20)
@given(st.lists(_SIDES, min_size=1, max_size=5), st.integers(500, 1500))
def test_blanks_hold_every_piece_once_and_keep_the_limit(
    sides: list[tuple[int, int]], longest: int
) -> None:
    lefts = [10.0]
    for wide, _ in sides:
        lefts.append(lefts[-1] + wide + 8)
    pieces = {
        str(i): (lefts[i], 10.0, lefts[i] + wide, 10.0 + high)
        for i, (wide, high) in enumerate(sides)
    }
    sheet = (lefts[-1] + 10, 1220.0)
    found = panel_cuts(sheet, pieces, up_to(longest), (float(longest),))
    if found is None:
        return
    laid = [piece for blank in found.blanks for piece in blank.pieces]
    assert sorted(laid) == sorted(pieces)
    for blank in found.blanks:
        own = box(*blank.box)
        assert not blank.pieces or max(blank.size) <= longest
        assert all(own.covers(box(*pieces[each])) for each in blank.pieces)
    shapes = [box(*each.box) for each in found.blanks]
    assert all(a.distance(b) >= KERF - 1e-6 for a, b in pairwise(shapes))


@pytest.mark.parametrize("longest", [450.0, 600.0])
def test_cuts_pass_between_the_shapes_of_the_written_file(longest: float) -> None:
    edition = edition_in(Carries(size=(longest, longest)), small_settled(), small_layout())
    layout = edition.layout.sheets[0]
    found = cuts_of(edition, layout)
    assert found is not None
    assert found.cuts
    (dxf,) = (each for each in CUT_FORMATS if each.ending == "dxf")
    files = dict(sheet_files(edition.settled, edition.layout, (dxf,), METRIC))
    shapes = outlines(next(iter(files.values())))
    assert len(shapes) == len(layout.placements)
    for each in found.cuts:
        x0, y0, x1, y1 = each.panel
        ends = [(each.at, y0), (each.at, y1)] if each.across else [(x0, each.at), (x1, each.at)]
        sawn = LineString(ends).buffer(KERF / 2, cap_style="flat")
        assert not any(sawn.intersects(shape) for shape in shapes)
    assert all(max(each.size) <= longest for each in found.blanks if each.pieces)


def outlines(content: bytes) -> list[Polygon]:
    """Return the closed outlines of a written sheet, arcs by their chords."""
    space = ezdxf.read(StringIO(content.decode())).modelspace()
    found = []
    for line in space.query("LWPOLYLINE"):
        if line.dxf.layer.startswith("outline"):
            path = ezdxf.path.make_path(line)
            found.append(Polygon([(each.x, each.y) for each in path.flattening(0.01)]))
    return found
