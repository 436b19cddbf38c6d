"""Full-size templates, measured on the printed pages."""

from __future__ import annotations

import io
import math
import re
from dataclasses import replace
from functools import cache
from operator import mul
from typing import Any

import pikepdf
import pypdfium2
import pytest
from shapely import LinearRing, Polygon, box, hausdorff_distance

from kerfolio.basis.colour import rgb
from kerfolio.basis.exact_figures import measured_in
from kerfolio.basis.figured import figured
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Drawing, Ink
from kerfolio.edition.by_hand import Verdict, by_hand
from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.model.feature_kind import HOLE
from kerfolio.model.stock import PaperStock
from kerfolio.paper.beside_tiles import figured_lines
from kerfolio.paper.seams import tiled_on, tiling_of
from kerfolio.paper.template import template_pdf
from kerfolio.paper.tiling import EDGE, MARGIN, Tile, Tiling, tile_name
from kerfolio.settling.settled import SettledFeature, SettledPart, Sized
from tests.drawing.templates import template_of, templates_of
from tests.paper.editions import A4, LETTER, part, stool
from tests.paper.reading import chains, fonts, outside, segments, sizes, texts

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
EDITION = stool()
SIDE = EDITION.settled.parts[0]
SMALL = 6.7
"""Points of the largest letters that name a page; those of the drawing may be clipped."""


@cache
def printed(paper: PaperStock | None, which: SettledPart | None = None) -> bytes:
    """Return the templates of the stool, or of one part alone."""
    parts = EDITION.settled.parts if which is None else (which,)
    settled = replace(EDITION.settled, parts=parts)
    drawings = templates_of(settled)
    return template_pdf(settled, drawings, paper and tiled_on((drawings,), paper), EDITION.identity)


def opening(content: bytes) -> int:
    """Return how many pages stand in front of the first part: they belong to all of them."""
    return sum("· templates · print at 100 %" in words for words in texts(content))


def titled(part: SettledPart) -> str:
    """Return how pages call a part of the stool, whose parts have names of one word."""
    return f"{part.mark} {part.name.capitalize()}"


def laid(paper: PaperStock, which: SettledPart = SIDE) -> tuple[Tiling, tuple[Tile, ...]]:
    drawing = template_of(EDITION.settled, which)
    tiling = tiling_of([drawing], paper)
    return tiling, tuple(tiling.tile(spot) for spot in tiling.printed)


def lengths(content: bytes, page: int) -> tuple[set[float], set[float]]:
    """Return the lengths of the lines in a page's margins, across and up, to 0.01 mm."""
    across, up = set(), set()
    with pikepdf.open(io.BytesIO(content)) as document:
        high = float(document.pages[page].mediabox[3]) * 25.4 / 72
    for (x0, y0), (x1, y1) in segments(content, page):
        if min(y0, y1) > high - MARGIN + 0.5 and abs(x1 - x0) > 50:
            across.add(round(abs(x1 - x0), 2))
        if max(x0, x1) < MARGIN - 0.5 and abs(y1 - y0) > 50:
            up.add(round(abs(y1 - y0), 2))
    return across, up


@PAPERS
def test_every_page_carries_lengths_to_check_in_both_directions(paper: PaperStock) -> None:
    content = printed(paper)
    for page in range(len(sizes(content))):
        for found in lengths(content, page):
            # 100 mm, and 4 in at 25.4 mm (international inch, 1959)
            assert sorted(found) == pytest.approx([100.0, 101.6], abs=0.05)


def test_the_roll_page_carries_them_too() -> None:
    for found in lengths(printed(None), 0):
        assert sorted(found) == pytest.approx([100.0, 101.6], abs=0.05)


@PAPERS
def test_the_first_page_shows_a_true_square_and_a_bank_card(paper: PaperStock) -> None:
    found = [
        (round(abs(x1 - x0), 2), round(abs(y1 - y0), 2))
        for (x0, y0), (x1, y1) in segments(printed(paper), 0)
    ]
    for across, up in ((100.0, 100.0), (85.6, 53.98)):  # ISO/IEC 7810 ID-1, from memory
        assert found.count((across, 0.0)) >= 2
        assert found.count((0.0, up)) >= 2


def outline_of(content: bytes, page: int, wanted: Contour, shift: tuple[float, float]) -> float:
    """Return how far the page's nearest closed line is from a contour, mm."""
    ring = LinearRing(points(wanted, 0.001))
    found = [
        LinearRing([(x + shift[0], y + shift[1]) for x, y in each])
        for each in chains(content, page)
        if len(each) > 3 and each[0] == each[-1]
    ]
    return min(hausdorff_distance(each, ring, densify=0.1) for each in found)


def contours(which: SettledPart) -> tuple[Contour, ...]:
    return (which.plain.outer, *which.plain.openings)


@PAPERS
@pytest.mark.parametrize("which", EDITION.settled.parts, ids=lambda each: each.name)
def test_every_tile_draws_the_plain_shape_in_its_place(
    which: SettledPart, paper: PaperStock
) -> None:
    drawing = template_of(EDITION.settled, which)
    tiles, shown = laid(paper, which)
    content = printed(paper, which)
    before = opening(content) + (len(shown) > 1)  # a map of several tiles
    assert len(sizes(content)) == len(shown) + before
    found: set[Contour] = set()
    for page, tile in enumerate(shown, start=before):
        left, bottom = drawing.box[0] + tile.left, drawing.box[1] + tile.bottom
        shift = (left - MARGIN, bottom - MARGIN)
        window = box(left, bottom, left + tiles.window[0], bottom + tiles.window[1])
        for contour in contours(which):
            if window.intersects(LinearRing(points(contour))):
                assert outline_of(content, page, contour, shift) < 0.02
                found.add(contour)
    assert found == set(contours(which))
    assert sizes(content)[before:] == [tiles.page] * len(shown)


def test_the_roll_page_is_the_part_and_its_margins() -> None:
    drawing = template_of(EDITION.settled, SIDE)
    content = printed(None, SIDE)
    ((wide, high),) = sizes(content)
    assert wide == pytest.approx(drawing.width + 2 * MARGIN, abs=0.01)
    assert high == pytest.approx(drawing.height + 2 * MARGIN, abs=0.01)
    shift = (drawing.box[0] - MARGIN, drawing.box[1] - MARGIN)
    assert all(outline_of(content, 0, each, shift) < 0.02 for each in contours(SIDE))


def test_a_small_part_still_has_room_for_the_lengths_on_a_roll() -> None:
    wedge = EDITION.settled.parts[3]
    ((wide, high),) = sizes(printed(None, wedge))
    assert wide >= 200
    assert high >= 120


@PAPERS
def test_neighbours_show_their_crosses_at_the_same_spot_of_the_part(paper: PaperStock) -> None:
    tiles, shown = laid(paper)
    seen: dict[tuple[float, float], int] = {}
    content = printed(paper, SIDE)
    for page, tile in enumerate(shown, start=opening(content) + 1):
        lines = segments(content, page)
        level = {mid(each) for each in lines if size(each) == (4.0, 0.0)}
        upright = {mid(each) for each in lines if size(each) == (0.0, 4.0)}
        for x, y in level & upright:
            at = (round(x + tile.left, 1), round(y + tile.bottom, 1))
            seen[at] = seen.get(at, 0) + 1
    joints = (tiles.columns - 1) * tiles.rows + tiles.columns * (tiles.rows - 1)
    assert len(seen) == 2 * joints
    assert set(seen.values()) == {2}


def size(line: tuple[tuple[float, float], tuple[float, float]]) -> tuple[float, float]:
    (x0, y0), (x1, y1) = line
    return round(abs(x1 - x0), 2), round(abs(y1 - y0), 2)


def mid(line: tuple[tuple[float, float], tuple[float, float]]) -> tuple[float, float]:
    (x0, y0), (x1, y1) = line
    return round((x0 + x1) / 2, 2), round((y0 + y1) / 2, 2)


@PAPERS
def test_every_tile_says_what_it_is(paper: PaperStock) -> None:
    tiles, shown = laid(paper)
    content = printed(paper, SIDE)
    for words, tile in zip(texts(content)[opening(content) + 1 :], shown, strict=True):
        for wanted in (
            *("Harbour stool · release 1.2.0 · 17.80 mm thick · A Side", "print at 100 %"),
            *("100 mm", "4 in", f"tile {tile.name}: row {tile.row + 1} of {tiles.rows}"),
            *(f"A {tile.name}", "360.0 mm (14.17 in) wide, 450.0 mm (17.72 in) high"),
        ):
            assert wanted in words


@PAPERS
def test_the_first_page_tells_what_to_do_and_which_pages_hold_which_part(
    paper: PaperStock,
) -> None:
    words = texts(printed(paper))[0]
    for wanted in (
        *("Print this page alone first", "Only one side wrong", "85.60 × 53.98 mm"),
        *("99.5 mm", "100.5 mm", "For sheets 17.80 mm thick"),
        f"A Side, cut 2 {opening(printed(paper)) + 1} to {opening(printed(paper)) + 7}",
    ):
        assert wanted in words
    for side in (paper.width, paper.height):  # half a percent of one tile's step
        assert f"{(side - 30) * 0.005:.1f} mm" in words


def test_the_second_page_tells_lines_and_how_to_fit_ones_own_sheet() -> None:
    """Only the lines and the test joint where nobody judged the plan; else what to take care of."""
    words = " ".join(texts(printed(A4))[1].split())
    for wanted in (
        "Before you saw",
        "shaded side is waste: outside it round the part, inside it in slots",
        "stand an offcut on its edge on the slot",
        "offcut",
        "mark",
    ):
        assert wanted in words
    assert "BY HAND?" not in words
    drawings = templates_of(EDITION.settled)
    on, hand = tiled_on((drawings,), A4), by_hand(EDITION)
    judged = template_pdf(EDITION.settled, drawings, on, EDITION.identity, hand=hand)
    told = " ".join(texts(judged)[1].split())
    care = [each for each in hand.reasons if each.weighs is not Verdict.YES]
    assert care
    for wanted in (hand.words, hand.effort, *(each.text for each in care)):
        assert wanted in told


@PAPERS
def test_pages_are_where_the_first_one_says(paper: PaperStock) -> None:
    found = texts(printed(paper))
    for which in EDITION.settled.parts:
        _, shown = laid(paper, which)
        own = [n for n, words in enumerate(found, 1) if f"· {titled(which)} ·" in words]
        assert len(own) == len(shown) + (len(shown) > 1)
        assert own == list(range(own[0], own[-1] + 1))
        paged = f"{own[0]} to {own[-1]}" if len(own) > 1 else str(own[0])
        assert f", cut {len(which.pieces)} {paged}" in " ".join(found[0].split())
        assert all(f"page {n} of {len(found)}" in found[n - 1].lower() for n in own)


def test_a_map_shows_how_the_tiles_of_a_part_lie() -> None:
    before = opening(printed(A4))
    words = " ".join(texts(printed(A4))[before].split())
    for wanted in (
        "A Side Cut 2, 17.80 mm thick, 360.0 mm (14.17 in) wide",
        f"6 tiles on pages {before + 2} to {before + 7}",
        "1-1",
        "2-3",
    ):
        assert wanted in words


def pegs(count: int) -> tuple[SettledFeature, ...]:
    return tuple(
        SettledFeature(
            name=f"peg.{number}",
            kind=HOLE,
            at=(20.0 + 5 * (number % 60), 20.5 + 5 * (number // 60)),
            direction=(1, 0),
            width=Sized(3.0),
            length=Sized(3.0),
        )
        for number in range(count)
    )


def test_a_map_lists_what_lies_where() -> None:
    which = replace(SIDE, features=pegs(3))
    content = printed(A4, which)
    words = texts(content)[opening(content)]
    assert "MIDDLE OF FROM LEFT FROM BELOW" in words
    for left in (20, 25, 30):
        assert f"Peg, ø 3 mm {left}.00 mm 20.50 mm" in words


def test_a_list_of_very_many_places_leaves_the_map_its_room() -> None:
    holes = pegs(200)
    plate = region(rectangle(0, 0, 340, 250), [circle(each.at, 3.0) for each in holes])
    which = replace(part("plate", "P", (), plate), features=holes)
    content = printed(A4, which)
    _, shown = laid(A4, which)
    assert len(texts(content)) == opening(content) + 1 + len(shown)
    words = texts(content)[opening(content)]
    listed = words.count("Peg, ø 3 mm")
    assert 20 < listed < 200
    assert f"{200 - listed} more are measured on the tiles." in words


def test_the_roll_holds_a_page_for_each_part() -> None:
    found = texts(printed(None))
    for number, (which, words) in enumerate(zip(EDITION.settled.parts, found, strict=True), 1):
        assert f"{titled(which)} · whole · page {number} of {len(found)} ·" in words


def test_bookmarks_lead_to_each_part_and_its_tiles() -> None:
    _, shown = laid(A4)
    document = pypdfium2.PdfDocument(printed(A4))
    found = [
        (each.level, each.get_title(), each.get_dest().get_index()) for each in document.get_toc()
    ]
    document.close()
    before = opening(printed(A4))
    tiles = [(1, f"Tile {tile.name}", page) for page, tile in enumerate(shown, before + 1)]
    assert found[: len(tiles) + 3] == [
        (0, "Print this page alone first", 0),
        (0, "Before you saw", 1),
        (0, "A Side", before),
        *tiles,
    ]
    parts = [title for level, title, _ in found if level == 0]
    assert parts[2:] == [titled(each) for each in EDITION.settled.parts]


def test_many_parts_take_a_second_page_of_contents() -> None:
    many = [replace(EDITION.settled.parts[3], name=f"wedge-{n}", mark=f"W{n}") for n in range(40)]
    settled = replace(EDITION.settled, parts=tuple(many))
    drawings = dict.fromkeys((each.name for each in many), template_of(settled, many[0]))
    on = tiled_on((drawings,), A4)
    content = template_pdf(settled, drawings, on, EDITION.identity)
    found = texts(content)
    assert len(found) == opening(content) + 40
    assert "Wedge 39, cut" in found[1]
    assert str(len(found)) in found[1]
    assert "· W39 Wedge 39 ·" in found[-1]


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
def test_a_dozen_parts_are_listed_on_the_first_page(paper: PaperStock) -> None:
    many = [replace(EDITION.settled.parts[3], name=f"wedge-{n}", mark=f"W{n}") for n in range(12)]
    settled = replace(EDITION.settled, parts=tuple(many))
    drawings = dict.fromkeys((each.name for each in many), template_of(settled, many[0]))
    content = template_pdf(settled, drawings, tiled_on((drawings,), paper), EDITION.identity)
    first, after, *_ = texts(content)
    assert all(f"W{n} Wedge {n}, cut" in first for n in range(12))
    assert "Before you saw" in after


def test_the_file_asks_not_to_be_scaled_and_carries_its_faces() -> None:
    for paper in (A4, None):
        content = printed(paper)
        assert fonts(content) == [("/TrueType", True)] * len(fonts(content))
        with pikepdf.open(io.BytesIO(content)) as document:
            assert document.Root.ViewerPreferences.PrintScaling == "/None"


@pytest.mark.parametrize("unit", ["mm", "in"])
@pytest.mark.parametrize("paper", [A4, LETTER, None], ids=["a4", "letter", "roll"])
def test_nothing_stands_where_printers_do_not_print(paper: PaperStock | None, unit: str) -> None:
    """Most printers leave 4 to 6 mm blank (common practice, no single source)."""
    settled = replace(EDITION.settled, parts=EDITION.settled.parts[1:2])
    drawings = templates_of(settled, unit)
    on = paper and tiled_on((drawings,), paper)
    identity = replace(EDITION.identity, units_first=unit)
    document = pypdfium2.PdfDocument(template_pdf(settled, drawings, on, identity))
    for page in document:
        grey = page.render(scale=2, grayscale=True).to_numpy()
        rim = int(EDGE * 2 * 72 / 25.4)
        assert (grey[rim:-rim, rim:-rim] < 250).any()
        grey[rim:-rim, rim:-rim] = 255
        assert grey.min() == 255
    document.close()


def test_the_waste_side_of_every_line_is_shaded() -> None:
    """Looked at in the print, a millimetre to either side of straight edges and of openings."""
    drawing = template_of(EDITION.settled, SIDE)
    document = pypdfium2.PdfDocument(printed(None, SIDE))
    grey = document[0].render(scale=4, grayscale=True).to_numpy()
    document.close()
    seen, shade = 0, sum(map(mul, rgb(PALETTE[Ink.FAINT]), (0.299, 0.587, 0.114)))
    for contour in contours(SIDE):
        for edge in edges(contour):
            (x0, y0), (x1, y1) = edge.start, edge.end
            long = math.dist(edge.start, edge.end)
            if edge.arc is not None or long < 20:
                continue
            across = ((y0 - y1) / long, (x1 - x0) / long)  # to the left of it, where the wood is
            middle = (x0 + 0.8 * (x1 - x0), y0 + 0.8 * (y1 - y0))  # past the bars at 0,0
            wood, waste = (
                tone(grey, drawing, middle[0] + far * across[0], middle[1] + far * across[1])
                for far in (1.0, -1.0)
            )
            assert (wood, waste) == (255, pytest.approx(shade, abs=3))
            seen += 1
    assert seen >= 8


def tone(grey: Any, drawing: Drawing, x: float, y: float) -> int:
    """Return how light a print is at a place of a drawing in the middle of a roll page."""
    scale = 4 * 72 / 25.4
    across, up = (x - drawing.box[0] + MARGIN) * scale, (y - drawing.box[1] + MARGIN) * scale
    return int(grey[round(grey.shape[0] - up), round(across)].item())


@PAPERS
def test_no_seam_lies_on_a_hole_or_a_slot(paper: PaperStock) -> None:
    """The side's slot and its window stand in its middle: two tiles would halve them."""
    looked_at = 0
    for which in EDITION.settled.parts:
        tiling, _ = laid(paper, which)
        left, bottom = template_of(EDITION.settled, which).box[:2]
        across, up = tiling.seams
        for each in map(bounds, which.plain.openings):
            assert not any(each.x0 - 2 < left + x < each.x1 + 2 for x in across)
            assert not any(each.y0 - 2 < bottom + y < each.y1 + 2 for y in up)
            looked_at += bool(across or up)
    assert looked_at


@PAPERS
def test_no_letters_are_smaller_than_can_be_read_on_a_bench(paper: PaperStock) -> None:
    """7.5 points, but for the picture of a whole part on its map."""
    document = pypdfium2.PdfDocument(printed(paper))
    sizes = set()
    for page in document:
        text = page.get_textpage()
        if "How the tiles lie".upper() in text.get_text_range():
            continue
        for index in range(text.count_chars()):
            if text.get_text_range(index, 1).strip():
                sizes.add(round(pypdfium2.raw.FPDFText_GetFontSize(text, index), 2))
    document.close()
    assert min(sizes) >= 7.5


def frame(wide: float, high: float, rail: float) -> SettledPart:
    """Return a part that is a frame, so that tiles in its middle show nothing."""
    shape = region(rectangle(0, 0, wide, high), (rectangle(rail, rail, wide - rail, high - rail),))
    return part("frame", "F", (), shape)


def test_a_blank_tile_is_left_out_and_shown_grey_on_the_map() -> None:
    which = frame(550, 800, 30)
    tiles, shown = laid(A4, which)
    assert tiles.left_out
    words = texts(printed(A4, which))
    before = opening(printed(A4, which))
    assert len(words) == before + 1 + len(shown)
    assert all(tile_name(spot) in words[before] for spot in tiles.left_out)
    assert "grey and not printed" in words[before]


def test_tiles_left_out_never_part_the_others() -> None:
    which = frame(900, 1100, 40)
    tiles, shown = laid(A4, which)
    spots = {(tile.column, tile.row) for tile in shown}
    reached, waiting = set(), [min(spots)]
    while waiting:
        at = waiting.pop()
        reached.add(at)
        for dx, dy in ((0, 1), (1, 0), (0, -1), (-1, 0)):
            other = (at[0] + dx, at[1] + dy)
            if other in spots and other not in reached:
                waiting.append(other)
    assert reached == spots
    assert len(shown) < len(tiles.spots)


def test_another_thickness_changes_the_slot_on_the_paper() -> None:
    def slot_height(index: int) -> float:
        settled = EDITION.variants[index]
        drawings = templates_of(settled)
        content = template_pdf(settled, drawings, None, EDITION.identity)
        rings = [Polygon(each) for each in chains(content, 0) if len(each) == 5]
        slots = {ring.bounds for ring in rings if math.isclose(width_of(ring), 120, abs_tol=0.05)}
        (slot,) = slots  # its shade, the wood's edge and its line are one
        return slot[3] - slot[1]

    assert slot_height(2) - slot_height(0) == pytest.approx(0.4, abs=0.01)


def width_of(ring: Polygon) -> float:
    return float(ring.bounds[2] - ring.bounds[0])


def test_a_long_title_stays_on_the_page() -> None:
    plan = replace(EDITION.settled.plan, title="A very long name for a very long bench " * 5)
    settled = replace(EDITION.settled, plan=plan, parts=EDITION.settled.parts[:1])
    drawings = templates_of(settled)
    content = template_pdf(settled, drawings, tiled_on((drawings,), A4), EDITION.identity)
    assert outside(content, EDGE, SMALL) == []
    assert re.search(
        "A very long name for a very .*… · release 1.2.0 · 17.80 mm thick", texts(content)[-1]
    )


def test_a_long_title_of_a_sheet_is_broken_not_cut_off() -> None:
    """Where it breaks follows the room kept for figures, so alike for 9.5 and for 17.8 mm."""
    name = " ".join(["birch-plywood-of-the-second-grade"] * 4)
    (sheet,) = EDITION.settled.sheets
    long = replace(sheet, stock=replace(sheet.stock, title=name))
    sheets = (long, replace(sheet, name="other"))
    variant = replace(EDITION.settled.variant, thickness=tuple((e.name, 17.8) for e in sheets))
    parts = EDITION.settled.parts[:1]
    settled = replace(EDITION.settled, variant=variant, sheets=sheets, parts=parts)
    drawings = templates_of(settled)
    content = template_pdf(settled, drawings, tiled_on((drawings,), A4), EDITION.identity)
    assert outside(content, EDGE, SMALL) == []
    assert texts(content)[0].count("birch-plywood-of-the-second-grade") == 4
    rows = [
        [band.passages[0].marks for band in figured_lines(figured("{} {}", told, name), 168.0)]
        for told in (measured_in(9.5, METRIC), measured_in(17.8, METRIC))
    ]
    assert [len(each) for each in rows] == [2, 2]
    assert rows[0][1] == rows[1][1]
