"""Fitted files found from a few points: of texts that are lines, steps, or neither."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import sqrt

import pytest

from kerfolio.basis.style import Style
from kerfolio.fitted.fill import fill
from kerfolio.fitted.finding import MOST_CELLS, CellsError, find
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.fitted.recorder import Draft, Recorder

THICK = Number(name="thickness.ply", least=17.2, most=18.6, drawn=18.0, decimals=2)
FIT = Number(name="fit.ply", least=0.051, most=0.203, drawn=0.1016, decimals=3)
CUTTER = Number(name="cutter.ply", least=3.0, most=8.0, drawn=6.0, decimals=3, none=True)
NUMBERS = (THICK, FIT, CUTTER)
OWN = Style(decimals=3, unless=6.0, before="-cutter-", after="mm", none="-no-cutter")

Say = Callable[[Point, Recorder], str]


def at(point: Point, name: str) -> float:
    value = point[name]
    assert value is not None
    return value


def drafted(say: Say, name: Say | None = None) -> Callable[[Point], Sequence[Draft]]:
    def label(point: Point, numbers: Recorder) -> str:
        return "file" + numbers(point["cutter.ply"], OWN)

    def draw(point: Point) -> Sequence[Draft]:
        one, two = Recorder(), Recorder()
        called = one.recorded((name or label)(point, one))
        return [Draft(name=called, text=two.recorded(say(point, two)))]

    return draw


def fitted(say: Say) -> Fitted:
    return find(NUMBERS, drafted(say))


def text_at(found: Fitted, point: Point) -> str:
    return fill(found, point)[0][1]


def boxes(found: Fitted) -> list[dict[str, object]]:
    return [dict(cell.box) for cell in found.files[0].cells]


def slot(point: Point, numbers: Recorder) -> str:
    wide = at(point, "thickness.ply") + 2 * at(point, "fit.ply")
    return f"w {numbers(wide, Style())} d {numbers(2440.0, Style())} end"


def test_what_follows_in_lines_is_one_cell_for_any_cutter() -> None:
    found = fitted(slot)
    assert boxes(found) == [{}]
    point = {"thickness.ply": 17.63, "fit.ply": 0.08, "cutter.ply": None}
    assert fill(found, point) == (("file-no-cutter", "w 17.79 d 2440 end"),)
    assert fill(found, {"cutter.ply": 3.175})[0][0] == "file-cutter-3.175mm"
    assert text_at(found, {}) == "w 18.2032 d 2440 end"


def test_what_has_no_cutter_is_a_cell_of_its_own() -> None:
    def relieved(point: Point, numbers: Recorder) -> str:
        cutter = point["cutter.ply"]
        bone = "" if cutter is None else f" r {numbers(cutter * sqrt(0.5), Style())}"
        return slot(point, numbers) + bone

    found = fitted(relieved)
    assert boxes(found) == [{"cutter.ply": (3.0, 8.0)}, {"cutter.ply": None}]
    assert text_at(found, {"cutter.ply": None}) == "w 18.2032 d 2440 end"
    assert text_at(found, {"cutter.ply": 4.0}) == "w 18.2032 d 2440 end r 2.8284"


def test_a_number_that_moves_without_another_structure_makes_cells_too() -> None:
    def wide(point: Point, numbers: Recorder) -> str:
        return f"g {numbers(2.0 + (point['cutter.ply'] or 0.0), Style())}"

    found = fitted(wide)
    assert boxes(found) == [{"cutter.ply": (3.0, 8.0)}, {"cutter.ply": None}]
    assert text_at(found, {"cutter.ply": None}) == "g 2"


def test_where_the_structure_changes_cells_meet_to_a_hundredth() -> None:
    def merging(point: Point, numbers: Recorder) -> str:
        thick = at(point, "thickness.ply")
        return ("two " if thick <= 17.873 else "one ") + numbers(thick, Style())

    found = fitted(merging)
    assert boxes(found) == [
        {"thickness.ply": (17.2, 17.87)},
        {"thickness.ply": (17.88, 18.6)},
    ]
    assert text_at(found, {"thickness.ply": 17.87}) == "two 17.87"
    assert text_at(found, {"thickness.ply": 17.88}) == "one 17.88"


def test_what_is_bent_falls_into_cells_until_it_is_straight_to_0_002() -> None:
    def bent(point: Point, numbers: Recorder) -> str:
        return numbers(30 * sqrt(at(point, "thickness.ply")), Style())

    found = fitted(bent)
    assert 1 < len(boxes(found)) <= MOST_CELLS
    for place in range(141):
        thick = 17.2 + place / 100
        told = float(text_at(found, {"thickness.ply": thick}))
        assert abs(told - 30 * sqrt(round(thick, 2))) < 0.0021


def test_what_follows_no_rule_is_refused() -> None:
    def wild(point: Point, numbers: Recorder) -> str:
        return numbers(float(hash(point["thickness.ply"]) % 97), Style())

    with pytest.raises(CellsError, match=f"^a file falls into more than {MOST_CELLS} cells$"):
        fitted(wild)


def test_each_point_is_drawn_once_for_all_files() -> None:
    seen: list[tuple[object, ...]] = []
    draw = drafted(slot)

    def counted(point: Point) -> Sequence[Draft]:
        seen.append(tuple(point.values()))
        return [*draw(point), *draw(point), *draw(point)]

    found = find(NUMBERS, counted)
    assert len(found.files) == 3
    assert len(set(seen)) == len(seen)


def test_words_that_files_share_stand_apart() -> None:
    head = "HEADER " * 20

    def headed(point: Point, numbers: Recorder) -> str:
        first = numbers(1.0, Style())
        return f"{first}{head}{numbers(2.0, Style())} tail {numbers(3.0, Style())}"

    draw = drafted(headed)
    found = find(NUMBERS, lambda point: [*draw(point), *draw(point)])
    assert [cell.text for file in found.files for cell in file.cells] == [
        ("1", head, "2 tail 3"),
        ("1", head, "2 tail 3"),
    ]


def test_a_number_of_one_value_has_no_slope() -> None:
    lone = Number(name="thickness.ply", least=18.0, most=18.0, drawn=18.0, decimals=2)
    found = find((lone, FIT, CUTTER), drafted(slot))
    assert text_at(found, {"fit.ply": 0.2}) == "w 18.4 d 2440 end"


def test_a_long_line_that_two_files_have_is_one_piece_of_both() -> None:
    font = "f" * 500

    def draw(point: Point) -> Sequence[Draft]:
        def draft(before: str) -> Draft:
            one = Recorder()
            text = f"{one(at(point, 'thickness.ply'), Style())}\n{before}\n{font}\n{before} end"
            return Draft(name=one.recorded(before), text=one.recorded(text))

        return [draft("a file"), draft("another")]

    found = find((THICK,), draw)
    assert [font in file.cells[0].text for file in found.files] == [True, True]
    one, other = (text for _, text in fill(found, {"thickness.ply": 17.35}))
    assert one == f"17.35\na file\n{font}\na file end"
    assert other == f"17.35\nanother\n{font}\nanother end"
