"""Setup sheets, read back from their pages: one page each, the facts, lengths in true mm."""

from __future__ import annotations

import io
import math
import re
from dataclasses import replace
from functools import cache
from itertools import combinations

import ezdxf
import pypdfium2
import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.saying import say
from kerfolio.drawing.art_view import CHECK, art_full_view, art_place_view
from kerfolio.drawing.cut_sheet import cut_art, cut_part, cut_sheet
from kerfolio.drawing.setup_view import setup_view
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Stroke
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup import no_clamp, setup_cautions, setup_defer, setup_sheets
from kerfolio.geometry.boolean import intersects
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.layouts.clamp_spots import clamp_spots
from kerfolio.model.stock import PaperStock
from kerfolio.paper.art_sheet import art_pdf
from kerfolio.settling.settled import CENTRE
from kerfolio.shop.art import Art, arts_of
from kerfolio.shop.cut_time import Placed, sheet_time
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes
from tests.drawing.overlap import crossed, overlapping
from tests.drawing.overlap import outside as beyond_box
from tests.paper.editions import A4, LETTER, stool
from tests.paper.printed import layout_pdf, setup_pdf
from tests.paper.reading import chains, outside, sizes, texts
from tests.paper.sample_editions import NAMES, edition, sample
from tests.plans import RACK, proved, small_layout

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
SAMPLES = pytest.mark.parametrize("name", NAMES)
ARTS = [
    pytest.param(name, number, id=f"{name}-{number}")
    for name in NAMES
    for number in range(len(arts_of(sample(name).settled)))
]


@cache
def printed(name: str, paper: PaperStock) -> bytes:
    return setup_pdf(sample(name), paper)


@cache
def art_pages(name: str, paper: PaperStock) -> bytes:
    return art_pdf(sample(name), paper)


@cache
def rack(more: str = "", sheet: str = "") -> Edition:
    text = RACK.replace("fit: 0.1}", f"fit: 0.1{sheet}}}") + more
    found = proved(text).drawn
    assert found is not None
    return edition(found, small_layout())


def words(content: bytes) -> str:
    return " ".join(texts(content))


@PAPERS
@SAMPLES
def test_every_sheet_and_every_engraving_has_one_page(name: str, paper: PaperStock) -> None:
    found = sample(name)
    sheets, arts = found.layout.sheets, arts_of(found.settled)
    for content, things in ((printed(name, paper), sheets), (art_pages(name, paper), arts)):
        if not things:
            continue
        pages = texts(content)
        assert len(pages) == len(things)
        assert set(sizes(content)) == {(paper.width, paper.height)}
        for number, page in enumerate(pages, 1):
            assert f"Page {number} of {len(pages)}" in page
            for sentence in (*setup_cautions(METRIC), setup_defer(METRIC)):
                assert sentence in page
    for sheet, page in zip(sheets, texts(printed(name, paper)), strict=True):
        assert f"Sheet {sheet.number} of {len(sheets)}" in page


@PAPERS
@SAMPLES
def test_nothing_lies_outside_the_margins_or_on_other_words(name: str, paper: PaperStock) -> None:
    contents = [printed(name, paper)]
    contents += [art_pages(name, paper)] if arts_of(sample(name).settled) else []
    for content in contents:
        stands_clear(content)


def stands_clear(content: bytes) -> None:
    assert outside(content, 12.0) == []
    document = pypdfium2.PdfDocument(content)
    for number, page in enumerate(document, 1):
        text = page.get_textpage()
        level = [text.get_rect(index) for index in range(text.count_rects())]
        for one, other in combinations(level, 2):
            across = min(one[2], other[2]) - max(one[0], other[0])
            up = min(one[3], other[3]) - max(one[1], other[1])
            assert across < 0.5 or up < 2.2, (number, one, other)
    document.close()


@SAMPLES
def test_a_sheet_s_page_tells_all_that_the_machine_needs(name: str) -> None:
    found = sample(name)
    for sheet, page in zip(found.layout.sheets, texts(printed(name, A4)), strict=False):
        placed = [Placed(part=p.part, x=p.x, y=p.y, turn=p.turn) for p in sheet.placements]
        time = sheet_time(found.settled, sheet.sheet, placed)
        assert f"about {round(time.minutes)} minutes" in page
        assert "Lower left corner" in page
        assert "Bed under the sheet" in page
        thicker = "1/64 in" if found.reader.unit == "in" else "0.4 mm"
        assert f"with it on the face, a spot {thicker} thicker than the rest stays uncut" in page
        material = found.settled.sheet(sheet.sheet)
        assert f"{material.stock.title}, measured" in page
        assert "show face up" in page
        cutters = list(dict.fromkeys(each.cutter for each in time.operations))
        titles = [found.settled.stock.cutter(each) for each in cutters]
        places = [page.index(each.title) for each in titles if each]
        assert places == sorted(places)
        assert len(places) == len(cutters)
        for cut in found.plan.cuts:
            if cut.sheet.name == sheet.sheet and cut.bridges:
                parts = {part.name: part for part in found.settled.parts}
                held = [b for p in sheet.placements for b in parts[p.part].bridges]
                count = sum(each.operation == "outline" for each in held)
                assert f"{count} bridges" in page
        marks = {p.label: p.mark for part in found.settled.parts for p in part.pieces}
        missing = [each.piece for each in sheet.placements if marks[each.piece] not in page.split()]
        assert missing == []


def test_operations_stand_in_cutting_order_with_depth_and_passes() -> None:
    page = texts(printed("harbour-stool", A4))[0]
    rows = (
        *("Engravings on line 0.5 mm (1/64 in) 1 pass", "Pockets inside 8 mm (5/16 in) 2 passes"),
        *("Holes inside through 2 passes", "Openings inside through 2 passes"),
        "Outlines outside through 2 passes",
    )
    places = [page.index(row) for row in rows]
    assert places == sorted(places)
    assert "Drawn lines The finished edge" in page.replace("DRAWN LINES", "Drawn lines")
    # half of 6 mm, and of that over 25.4
    assert "18000 rpm, feed 3000, plunge 700 mm/min, offset 3 mm (0.118 in)" in page
    # 3000 and 700 mm/min over 25.4 (international inch, 1959)
    assert "feed 118, plunge 28 in/min" in page
    assert "0.3 mm (1/64 in)" in page


def test_what_no_cutter_makes_is_to_be_drilled_by_hand() -> None:
    page = texts(printed("tool-tote", A4))[0]
    # Four pilots of 3/32 in, 2.38 mm, too narrow for a cutter of 1/4 in.
    assert "Drill by hand: 4 holes ø 3/32 in (2.38 mm), through, in E, Handle" in page


def test_a_sheet_without_settings_says_so_and_keeps_the_order() -> None:
    page = texts(setup_pdf(rack(), A4))[0]
    assert "The plan states no cut settings for this sheet" in page
    assert "minutes" not in page
    assert say(METRIC, "printed-own-cutter") not in page
    rows = ("Engravings on line", "Pockets inside", "Holes inside", "Openings inside", "Outlines")
    places = [page.index(row) for row in rows]
    assert places == sorted(places)


def test_nobody_takes_the_file_of_another_thickness() -> None:
    several = stool()
    sheets = tuple(replace(each, published=(17.8, 17.8)) for each in several.settled.sheets)
    one = replace(several, settled=replace(several.settled, sheets=sheets))
    only = "Goes with sheet-1 of the cut files for sheets 17.80 mm thick and no other thickness."
    told = (
        "Goes with sheet-1 of the cut files for sheets 17.80 mm thick only. If your sheet measures "
        "otherwise, take this page and that file for its own thickness."
    )
    for printed_as in (setup_pdf, layout_pdf):
        assert told in words(printed_as(several, A4))
        assert only in words(printed_as(one, A4))


def test_a_stool_written_by_hand_prints_too() -> None:
    page = words(setup_pdf(stool(), A4))
    assert "sheet-1, 17.80 mm thick" in page
    assert say(METRIC, "printed-own-cutter") in page
    assert "18000 rpm, feed 4500, plunge 1200 mm/min" in page
    assert "passes to 8 mm (5/16 in), then through" in page


@PAPERS
def test_a_dozen_settings_still_take_one_page(paper: PaperStock) -> None:
    many = "".join(
        f"  s{n}: {{sheet: ply, cutter: compression-6, speed: 18000 rpm, feed: {2000 + n} mm/min, "
        f"plunge: 500 mm/min, passes: [{depth}]}}\n"
        for n, depth in enumerate(("0.5", "6", "4", "9"))
    )
    through = "{sheet: ply, cutter: compression-6, feed: 3000 mm/min, passes: [8, rest], skim: 0.3}"
    found = rack(f"cuts:\n{many}  out: {through}\n")
    (setup,) = setup_sheets(found)
    content = setup_pdf(found, paper)
    assert len(texts(content)) == 1
    long = replace(found, layout=replace(found.layout, sheets=found.layout.sheets * 3))
    assert len(texts(setup_pdf(long, paper))) == 3
    assert len(setup.runs) >= 2
    assert outside(content, 12.0) == []


def test_a_full_sheet_says_that_no_edge_has_room() -> None:
    found = rack()
    plan = found.settled
    part = replace(plan.parts[1], routed=plan.parts[1].plain)
    (layout,) = found.layout.sheets
    (rail,) = [each for each in layout.placements if each.piece == "rail"]
    tight = replace(layout, size=(340.0, 130.0), placements=(replace(rail, x=20.0, y=5.0),))
    settled = replace(plan, parts=(plan.parts[0], part))
    full = edition(settled, replace(found.layout, sheets=(tight,)))
    assert clamp_spots(settled, tight) == ()
    assert no_clamp(METRIC) in texts(setup_pdf(full, A4))[0]


@SAMPLES
def test_the_picture_s_words_stand_clear_of_each_other_and_of_pieces(name: str) -> None:
    found = sample(name)
    for sheet in found.layout.sheets:
        for room in ((176.0, 132.0), (176.0, 70.0)):
            drawing = setup_view(found.settled, sheet, clamp_spots(found.settled, sheet), room)
            assert drawing.width <= room[0]
            assert drawing.height <= room[1]
            assert overlapping(drawing) == []
            assert beyond_box(drawing) == []


@SAMPLES
def test_no_number_of_a_spot_and_no_hatch_lies_on_a_piece(name: str) -> None:
    found = sample(name)
    for sheet in found.layout.sheets:
        spots = clamp_spots(found.settled, sheet)
        drawing = setup_view(found.settled, sheet, spots, (176.0, 110.0))
        strokes = [each for each in drawing.items if isinstance(each, Stroke)]
        pieces = [each.contour for each in strokes if each.fill is Ink.WOOD]
        assert len(pieces) == len(sheet.placements)
        filled = [each.contour for each in strokes if each.fill is Ink.INK]
        discs = [each for each in filled if bounds(each).width > _DOT]
        hatched = [each.contour for each in strokes if is_hatched(each)]
        assert len(discs) == len(spots) == len(hatched)
        for piece in pieces:
            assert not [each for each in (*discs, *hatched) if intersects(piece, each)]


_DOT = 2.0
"""What is filled and no wider, mm, is the end of a leader on a small piece."""


def is_hatched(stroke: Stroke) -> bool:
    return stroke.fill is Ink.PAPER and len(stroke.contour.vertices) == 4


# ---------------------------------------------------------------- the centre-zero sheets


def layers_of(drawing: Drawing, kind: str, *, own: bool) -> dict[str, tuple[Contour, ...]]:
    if kind == "svg":
        return dict(read_svg(svg_bytes(drawing, decimals=4, own_origin=own)).layers)
    return dict(read_dxf(dxf_bytes(drawing)).layers)


def written_art(found: Edition, art: Art, kind: str) -> dict[str, tuple[Contour, ...]]:
    return layers_of(cut_art(found.settled, art), kind, own=True)


def box_of(contours: tuple[Contour, ...]) -> tuple[float, float, float, float]:
    boxes = [bounds(each) for each in contours]
    return (
        min(each.x0 for each in boxes),
        min(each.y0 for each in boxes),
        max(each.x1 for each in boxes),
        max(each.y1 for each in boxes),
    )


@pytest.mark.parametrize("kind", ["svg", "dxf"])
@pytest.mark.parametrize(("name", "number"), ARTS)
def test_the_file_of_an_art_has_its_middle_at_zero(name: str, number: int, kind: str) -> None:
    found = sample(name)
    art = arts_of(found.settled)[number]
    layers = written_art(found, art, kind)
    (engraved,) = [layer for layer in layers if layer.startswith("engrave")]
    x0, y0, x1, y1 = box_of(layers[engraved])
    assert (x0 + x1, y0 + y1) == pytest.approx((0, 0), abs=0.002)
    assert (x1 - x0, y1 - y0) == pytest.approx(art.size, abs=0.002)
    assert set(layers) == {engraved, "check-square"}


def test_a_program_that_reads_svg_finds_the_middle_at_its_own_zero() -> None:
    found = sample("harbour-stool")
    (art,) = arts_of(found.settled)
    text = svg_bytes(cut_art(found.settled, art), decimals=4, own_origin=True).decode()
    group = text.split('<g id="engrave_0.5mm">')[1].split("</g>")[0]
    spots = [tuple(map(float, each)) for each in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", group)]
    across, down = [x for x, _ in spots], [y for _, y in spots]
    assert min(across) + max(across) == pytest.approx(0, abs=0.05)
    assert min(down) + max(down) == pytest.approx(0, abs=0.05)


def test_three_cutters_on_letter_leave_the_picture_its_room() -> None:
    """A quarter of the page's height at least, from the last line above it to its key."""
    document = pypdfium2.PdfDocument(printed("harbour-stool", LETTER))
    (page,) = document
    text = page.get_textpage()
    assert "Down-cut cutter 6 mm · 18000 rpm" in text.get_text_range()

    def height(words: str) -> float:
        start, _ = text.search(words).get_next()
        return text.get_charbox(start)[1]

    room = height("choose yours, and try them") - height("engravings")
    assert room > page.get_height() / 4


@pytest.mark.parametrize(("name", "number"), ARTS)
def test_the_stated_distances_are_those_of_the_part_s_own_cut_file(name: str, number: int) -> None:
    """Measured in the DXF with ezdxf alone: from the middle of the lines to the edges named."""
    found = sample(name)
    art = arts_of(found.settled)[number]
    content = dxf_bytes(cut_part(found.settled, art.part))
    space = ezdxf.read(io.StringIO(content.decode())).modelspace()
    engraved = [each for each in space if each.dxf.layer.startswith("engrave")]
    whole = box_of(art.lines)
    own = [
        each
        for each in engraved
        if all(
            whole[0] - 0.01 <= x <= whole[2] + 0.01 and whole[1] - 0.01 <= y <= whole[3] + 0.01
            for x, y in each.get_points("xy")
        )
    ]
    assert len(own) == len(art.lines)
    middle = ((whole[0] + whole[2]) / 2, (whole[1] + whole[3]) / 2)
    (outline,) = [each for each in space if each.dxf.layer == "outline_through"]
    corners = [(float(x), float(y)) for x, y in outline.get_points("xy")]
    sides = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    page = texts(art_pages(name, A4))[number]
    for reach in art.reaches:
        # the side of the outline on which the foot lies, and how far the middle is from its line
        off = [(abs(away(side, reach.foot)), side) for side in sides if holds(side, reach.foot)]
        gap, side = min(off)
        assert gap < 0.05
        measured = abs(away(side, middle))
        assert measured == pytest.approx(reach.distance(art.centre), abs=0.05)
        stated = [float(each) for each in re.findall(r"([\d.]+) mm\b", page)]
        assert min(abs(each - measured) for each in stated) <= 0.05 + 1e-6


Spot = tuple[float, float]


def away(side: tuple[Spot, Spot], spot: Spot) -> float:
    (x0, y0), (x1, y1) = side
    cross = (x1 - x0) * (spot[1] - y0) - (y1 - y0) * (spot[0] - x0)
    return cross / math.dist(*side)


def holds(side: tuple[Spot, Spot], spot: Spot) -> bool:
    (x0, y0), (x1, y1) = side
    length = math.dist(*side)
    along = ((spot[0] - x0) * (x1 - x0) + (spot[1] - y0) * (y1 - y0)) / length
    return -0.01 <= along <= length + 0.01 and length > 1


@PAPERS
@pytest.mark.parametrize(("name", "number"), ARTS)
def test_the_art_is_printed_at_full_size_round_its_crosshair(
    name: str, number: int, paper: PaperStock
) -> None:
    found = sample(name)
    art = arts_of(found.settled)[number]
    drawn = [each for each in chains(art_pages(name, paper), number) if len(each) >= 2]
    lines = [each for each in drawn if len(each) == 2]
    level = [each for each in lines if each[0][1] == pytest.approx(each[1][1], abs=1e-3)]
    assert any(
        math.dist(*each) == pytest.approx(CHECK[found.reader.unit], abs=0.05) for each in level
    )
    wide, high = art.size
    across = [each for each in lines if spans(each, (wide + 16, 0))]
    up = [each for each in lines if spans(each, (0, high + 16))]
    assert len(across) == len(up) == 1
    centre = (sum(x for x, _ in up[0]) / 2, sum(y for _, y in across[0]) / 2)
    (engraved,) = [
        contours
        for layer, contours in written_art(found, art, "dxf").items()
        if layer.startswith("engrave")
    ]
    for contour in engraved:
        corners = [(centre[0] + x, centre[1] + y) for x, y, _ in contour.vertices]
        assert any(passes(chain, corners) for chain in drawn)


def spans(line: list[Spot], meant: Spot) -> bool:
    (x0, y0), (x1, y1) = line
    return (abs(x1 - x0), abs(y1 - y0)) == pytest.approx(meant, abs=0.05)


def passes(chain: list[Spot], corners: list[Spot]) -> bool:
    """Tell whether a printed chain goes through all corners, each within 0.05 mm."""
    return all(min(math.dist(corner, spot) for spot in chain) <= 0.05 for corner in corners)


@pytest.mark.parametrize(("name", "number"), ARTS)
def test_the_small_picture_keeps_the_true_proportion(name: str, number: int) -> None:
    found = sample(name)
    art = arts_of(found.settled)[number]
    drawing = art_place_view(found.settled, art, (176.0, 80.0))
    assert drawing.width <= 176
    assert drawing.height <= 80
    drawn = [math.dist(each.a, each.b) for each in drawing.items if isinstance(each, Dimension)]
    one, other = art.distances
    assert drawn[0] / one == pytest.approx(drawn[1] / other)
    assert overlapping(drawing) == []
    assert not {each for each in crossed(drawing) if "mm" in each}


def test_a_single_stroke_has_a_line_for_its_frame() -> None:
    """A capital I has no width (a stroke font's is one line), so no box goes round it."""
    drawn = rack().settled
    (art,) = arts_of(drawn)
    assert art.size[0] == 0
    for drawing in (art_place_view(drawn, art, (176.0, 80.0)), art_full_view(drawn, art)):
        (frame,) = [e for e in drawing.items if isinstance(e, Stroke) and e.dash == (1.2, 0.9)]
        assert not frame.contour.closed


# ---------------------------------------------------------------- the datum in the middle


@pytest.mark.parametrize("read", ["svg", "dxf"])
def test_a_datum_in_the_middle_moves_every_line_by_half_the_sheet(read: str) -> None:
    centred, corner = rack(sheet=", datum: centre"), rack()
    assert centred.settled.sheet("ply").datum == CENTRE
    moved = layers_of(cut_sheet(centred.settled, centred.layout.sheets[0]), read, own=True)
    still = layers_of(cut_sheet(corner.settled, corner.layout.sheets[0]), read, own=False)
    assert set(moved) == set(still)
    for layer in set(moved) - {"check-square"}:
        one, other = box_of(moved[layer]), box_of(still[layer])
        shift = tuple(b - a for a, b in zip(one, other, strict=True))
        assert shift == pytest.approx((1220, 610, 1220, 610), abs=0.005)
    assert box_of(moved["sheet-edge"]) == pytest.approx((-1220, -610, 1220, 610), abs=0.005)


def test_the_page_tells_a_datum_in_the_middle() -> None:
    found = rack(sheet=", datum: centre")
    assert "Middle of the sheet" in texts(setup_pdf(found, A4))[0]
    (layout,) = found.layout.sheets
    view = setup_view(found.settled, layout, (), (176.0, 120.0))
    targets = [
        bounds(each.contour).centre
        for each in view.items
        if isinstance(each, Stroke) and each.contour.closed and len(each.contour.vertices) == 2
    ]
    edge = next(each for each in view.items if isinstance(each, Stroke))
    assert any(at == pytest.approx(bounds(edge.contour).centre) for at in targets)


def test_another_word_for_a_datum_is_refused_with_what_to_write() -> None:
    text = RACK.replace("fit: 0.1}", "fit: 0.1, datum: middle}")
    with pytest.raises(AssertionError, match="corner"):
        proved(text)
