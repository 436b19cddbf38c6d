from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from itertools import pairwise, product

import pytest

from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.drawing.lettering import LEGIBLE
from kerfolio.drawing.saw_badge import CutLine, badges, edge_badges
from kerfolio.drawing.saw_view import _remarks, saw_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.layouts.saw import saw_plan
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.settling.settled import SettledPlan
from tests.drawing.overlap import crossed, labels_of, outside, overlapping
from tests.layouts.plans import part_of, part_set, plan_of, sheet_of


@cache
def plan(name: str) -> SettledPlan:
    if name.startswith("set"):
        return part_set(int(name[3:]))[1]
    parts = [
        part_of("S", rectangle(0, 0, 700, 320), ("1", "2", "3", "4"), "along x"),
        part_of("R", rectangle(0, 0, 640, 90), ("1", "2", "3"), "along x"),
        part_of("D", circle((0, 0), 240), ("1", "2")),
        part_of("W", rectangle(0, 0, 90, 14), [str(n) for n in range(12)]),
        part_of("T", rectangle(0, 0, 30, 2000)),
    ]
    sheets = {"upright": sheet_of(size=(1220.0, 2440.0)), "plain": sheet_of(grain=False)}
    return plan_of(parts, [sheets.get(name, sheet_of())])


@cache
def sawn(name: str) -> tuple[SawSheet, ...]:
    return saw_plan(plan(name))


def numbers(drawing: Drawing) -> list[str]:
    return [each.text for each in labels_of(drawing) if each.text.isdigit() and each.strong]


ROOMS = [(168.0, 122.0), (90.0, 80.0), (250.0, 180.0)]
LARGE = [("set1", ROOMS[0], "in"), ("set1", ROOMS[1], "mm"), ("set4", ROOMS[1], "in")]
SMALL = product(("shelf", "upright", "plain"), ROOMS, ("mm", "in"))


@pytest.mark.parametrize(("name", "room", "first"), [*SMALL, *LARGE, ("set4", ROOMS[2], "mm")])
def test_a_sheet_fits_its_room_and_its_words_stand_clear(
    name: str, room: tuple[float, float], first: str
) -> None:
    for sheet in sawn(name):
        drawing = saw_view(plan(name), sheet, room, Reader(unit=first))
        assert drawing.width <= room[0] + 1e-6
        assert drawing.height <= room[1] + 1e-6
        assert overlapping(drawing) == []
        assert outside(drawing) == []
        # a number stands on its line, in a filled disc that covers what lies under it
        assert set(crossed(drawing)) <= set(numbers(drawing))


@pytest.mark.parametrize("name", ["shelf", "upright", "set1", "set4"])
def test_every_cut_and_every_blank_is_told_once(name: str) -> None:
    for sheet in sawn(name):
        drawing = saw_view(plan(name), sheet)
        texts = [each.text for each in labels_of(drawing)]
        remark = " ".join(texts[texts.index(found[0]) :]) if (found := too_small(texts)) else ""
        shown = numbers(drawing)
        assert len(shown) == len(set(shown))
        untold = [cut.number for cut in sheet.cuts if str(cut.number) not in shown]
        assert untold == told_in(remark)
        marked = [blank for blank in sheet.blanks if texts.count(blank.mark) == 1]
        left = len(sheet.blanks) - len(marked)
        assert ("Too small to mark" in remark) == (left > 0)
        if left > 8:
            assert f"{left} pieces" in remark


def test_a_letter_by_itself_stands_upright_in_a_narrow_strip() -> None:
    strip = part_of("J", rectangle(0, 0, 1060, 42), grain="along x")
    (sheet,) = saw_plan(plan_of([strip]))
    (mark,) = [
        each
        for each in labels_of(saw_view(plan_of([strip]), sheet))
        if each.text == sheet.blanks[0].mark
    ]
    assert mark.angle == 0.0
    assert mark.height >= LEGIBLE


def too_small(texts: list[str]) -> list[str]:
    return [text for text in texts if text.startswith("Too ")]


def told_in(remark: str) -> list[int]:
    """Read the cuts named in a remark: ``cuts 4, 7 to 9 and 12.``, ``cut 11.``"""
    found = re.search(r"\bcut(s?) (.*)\.$", remark)
    if found is None:
        return []
    told = list[int]()
    for run in found[2].replace(" and ", ", ").split(", "):
        first, _, last = run.partition(" to ")
        told += range(int(first), int(last or first) + 1)
    assert (found[1] == "s") == (len(told) > 1)
    return told


def test_one_cut_too_short_for_a_number_is_told_as_one() -> None:
    (remark,) = _remarks((), (11,), 100.0, 0.0, METRIC)
    assert remark.text == "Too short to number: cut 11."
    assert told_in(remark.text) == [11]


def test_blanks_lie_where_they_are_cut_with_their_parts_in_them() -> None:
    (sheet, *_) = sawn("shelf")
    drawing = saw_view(plan("shelf"), sheet)
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    ground = next(each for each in strokes if each.fill is Ink.WASTE)
    scale = bounds(ground.contour).width / sheet.size[0]
    blanks = [bounds(each.contour) for each in strokes if each.fill is Ink.FACE_LIGHT]
    parts = [bounds(each.contour) for each in strokes if each.fill is Ink.WOOD]
    assert len(blanks) == len(parts) == len(sheet.blanks)
    for each, blank, part in zip(sheet.blanks, blanks, parts, strict=True):
        left, bottom, right, top = (grown * scale for grown in each.blank.grown)
        assert blank.x0 == pytest.approx(each.at.x * scale)
        assert blank.y1 == pytest.approx((each.at.y + each.at.height) * scale)
        assert (part.x0, part.y0) == pytest.approx((blank.x0 + left, blank.y0 + bottom), abs=1e-3)
        assert (part.x1, part.y1) == pytest.approx((blank.x1 - right, blank.y1 - top), abs=1e-3)


def test_settings_at_the_edge_are_in_the_reader_s_unit() -> None:
    (sheet, *_) = sawn("shelf")
    first_rip = next(cut for cut in sheet.cuts if cut.kind == "rip")
    metric = [each.text for each in labels_of(saw_view(plan("shelf"), sheet))]
    inch = [each.text for each in labels_of(saw_view(plan("shelf"), sheet, reader=INCHES))]
    assert first_rip.setting == 320.0
    assert "320" in metric
    assert "12 19/32" in inch  # 320 / 25.4 = 12.598


def test_a_sentence_tells_the_sheet_to_those_who_cannot_see_it() -> None:
    settled = plan_of([part_of("A", rectangle(0, 0, 600, 400), ("1", "2"), "along x")])
    (sheet,) = saw_plan(settled)
    assert saw_view(settled, sheet).description == (
        "A sheet of 2440 mm (about 96 in) by 1220 mm (about 48 in), ripped first: 5 cuts with 3 "
        "settings of the fence. It gives the blanks A.1, A.2."
    )


def line_of(number: int, length: float, y: float = 0.0) -> CutLine:
    return CutLine(number=number, a=(0.0, y), b=(length, y), outer=False, setting=100.0)


def test_a_number_moves_along_its_line_until_it_is_free() -> None:
    found = badges([line_of(1, 40.0)], [(0.0, -5.0, 20.0, 5.0)])
    (label,) = [each for each in found.items if isinstance(each, Label)]
    assert 20.0 < label.at[0] < 24.0
    assert badges([line_of(1, 40.0)], [(-1.0, -5.0, 41.0, 5.0)]).missing == (1,)
    assert badges([line_of(7, 1.2)], []).missing == (7,)


def test_numbers_at_the_edge_keep_apart_and_in_order() -> None:
    lines = [replace(line_of(n, 100.0, y), outer=True) for n, y in enumerate((10.0, 10.4, 11.0))]
    found = edge_badges(lines, lambda mm: f"{mm:g}")
    spots = [e.at[1] for e in found.items if isinstance(e, Label) and e.text != "100"]
    assert spots == sorted(spots)
    assert min(b - a for a, b in pairwise(spots)) >= 3.8


def test_a_short_setting_below_the_sheet_is_not_turned() -> None:
    upright = [
        CutLine(number=n, a=(x, 0.0), b=(x, 80.0), outer=True, setting=s)
        for n, x, s in ((1, 0.0, 5.0), (2, 30.0, 1290.0))
    ]
    found = edge_badges(upright, lambda mm: f"{mm:g}")
    angles = {e.text: e.angle for e in found.items if isinstance(e, Label) and not e.strong}
    assert angles == {"5": 0.0, "1290": 90.0}
