"""Fitted files filled in: by hand, and by the script of a page, which must give the same bytes."""

from __future__ import annotations

import json
import subprocess
from datetime import date
from typing import Any

import pytest

from kerfolio.basis.shipped import shipped
from kerfolio.basis.style import Rule, Style, told_as
from kerfolio.bundles.archive import zip_bytes
from kerfolio.fitted.fill import PointError, fill
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number, Slot
from kerfolio.fitted.writing import fitted_json
from tests.fitted.made import LABEL, NUMBERS, fitted, points
from tests.outside import node


@pytest.mark.parametrize(
    ("value", "style", "text"),
    [
        (2.40625, Style(), "2.4063"),
        (18.0, Style(rule=Rule.POINTED, decimals=2), "18.0"),
        (17.63, Style(rule=Rule.POINTED, decimals=2), "17.63"),
        (18.0, Style(rule=Rule.FIXED, decimals=2), "18.00"),
        (-1.5, Style(rule=Rule.PADDED, decimals=2, width=8), "   -1.50"),
        (17.46, Style(rule=Rule.CALLIPER), "0.688"),  # 11/16 in is 17.4625 mm
        (17.8, Style(rule=Rule.CALLIPER), "0.701"),
        (18.26, Style(rule=Rule.SOLD), "23/32"),
        (28.58, Style(rule=Rule.SOLD), "1 1/8"),
        (28.58, Style(rule=Rule.SOLD_NAME), "1-1-8"),
        (25.4, Style(rule=Rule.SOLD_NAME), "1"),
        (18.0, Style(rule=Rule.SOLD_NAME), "0.709"),
        (0.08, Style(decimals=3, unless=0.1, before="-fit-", after="mm"), "-fit-0.08mm"),
        (0.1000001, Style(decimals=3, unless=0.1, before="-fit-", after="mm"), ""),
        (9.99, Style(rule=Rule.FIXED, decimals=2, after=" mm", room=9), "9.99 mm  "),
        (110.0, Style(rule=Rule.FIXED, decimals=2, after=" mm", room=9), "110.00 mm"),
        (17.8, Style(rule=Rule.FIXED, decimals=2, before="ca. ", mark=","), "ca. 17,80"),
        (-1.5, Style(rule=Rule.PADDED, decimals=2, width=8, mark=","), "   -1,50"),
    ],
)
def test_a_number_is_told_in_its_style(value: float, style: Style, text: str) -> None:
    assert told_as(value, style) == text


def test_what_is_wider_than_its_room_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^-1200\.00 is wider than 7 signs$"):
        told_as(-1200.0, Style(rule=Rule.PADDED, decimals=2, width=7))


def one(*cells: Cell) -> Fitted:
    return Fitted(numbers=NUMBERS, files=(FittedFile(cells=cells),))


def test_a_slot_adds_slope_times_number() -> None:
    """A slot of 60 mm for a tab, widened by the fit at both ends, its dog-bone 0.5 of a cutter."""
    slot = Slot(style=Style(), constant=60.0, slopes=(1.0, 2.0, -0.5))
    whole = one(Cell(name=("slot-", *LABEL), text=("w ", slot, ".")))
    at = {"thickness.ply": 17.63, "fit.ply": 0.08, "cutter.ply": 3.175}
    assert fill(whole, at) == (("slot-17.63mm-fit-0.08mm-cutter-3.175mm", "w 76.2025."),)
    square = fill(whole, {**at, "cutter.ply": None})
    assert square == (("slot-17.63mm-fit-0.08mm-no-cutter", "w 77.79."),)
    assert fill(whole, {}) == (("slot-18.0mm", "w 75.2032."),)


def test_readings_are_rounded_before_anything_is_made_of_them() -> None:
    whole = one(Cell(name=(), text=(Slot(style=Style(), constant=0.0, slopes=(3.0,)),)))
    assert fill(whole, {"thickness.ply": 18.25625}) == (("", "54.78"),)


def test_what_is_the_plans_own_to_the_decimals_is_just_that() -> None:
    """A fit of 0.004 in, 0.1016 mm, is not the 0.102 mm that it would be rounded to."""
    own = Number(name="fit.ply", least=0.051, most=0.203, drawn=0.1016, decimals=3)
    slot = Slot(style=Style(), constant=0.0, slopes=(1.0,))
    lone = Fitted(numbers=(own,), files=(FittedFile(cells=(Cell(name=(), text=(slot,)),)),))
    assert [fill(lone, {"fit.ply": each})[0][1] for each in (0.1, 0.102, 0.1016)] == [
        "0.1",
        "0.1016",
        "0.1016",
    ]


def test_the_first_cell_that_holds_the_point_is_taken_ends_included() -> None:
    def told(point: dict[str, float | None]) -> str:
        return fill(fitted(0, 0), point)[1][0]

    assert told({"thickness.ply": 17.9, "cutter.ply": None}) == "a-17.9mm-no-cutter.txt"
    assert told({"thickness.ply": 17.91, "cutter.ply": None}) == "b-no-cutter"
    assert told({"thickness.ply": 17.91, "cutter.ply": 8.0}) == "c-17.91mm-cutter-8mm"


NARROW = one(Cell(name=(), text=(), box=(("cutter.ply", None),)))
REFUSED: list[tuple[dict[str, float | None], str]] = [
    ({"thickness.ply": 18.606}, "thickness.ply may be 17.2 to 18.6 mm, not 18.61 mm."),
    (
        {"fit.ply": 0.3},
        "fit.ply may be 0.05 to 0.2 mm, not 0.3 mm. "
        "The slots would be wider than their walls bear.",
    ),
    ({"fit.ply": None}, "fit.ply must be a number."),
    ({"thickness.ply": 1e300}, "thickness.ply must be a number."),
    ({"thickness.thin": 3.0}, "No file depends on thickness.thin."),
    (
        {"cutter.ply": 5.0, "thickness.ply": 18.126},
        "There is no file for thickness.ply 18.13 mm, fit.ply 0.1016 mm, cutter.ply 5 mm.",
    ),
]


@pytest.mark.parametrize(("point", "words"), REFUSED)
def test_a_point_that_files_are_not_made_for_is_refused(
    point: dict[str, float | None], words: str
) -> None:
    with pytest.raises(PointError) as trouble:
        fill(NARROW, point)
    assert str(trouble.value) == words


@pytest.mark.node
def test_a_script_of_a_browser_refuses_it_in_the_same_words() -> None:
    assert answers(NARROW, [point for point, _ in REFUSED]) == [words for _, words in REFUSED]


ASK = """
const { fitted, points } = JSON.parse(require("fs").readFileSync(0, "utf8"));
const answers = points.map((point) => {
  try {
    return fill(fitted, point);
  } catch (trouble) {
    if (!(trouble instanceof RangeError)) throw trouble;
    return trouble.message;
  }
});
process.stdout.write(JSON.stringify(answers));
"""
PACK = """
const { files, day, folder } = JSON.parse(require("fs").readFileSync(0, "utf8"));
process.stdout.write(storedZip(files, day, folder));
"""


def ran(script: str, given: str) -> bytes:
    whole = (shipped("themes") / "workbench" / "fitted.js").read_text("utf-8") + script
    return subprocess.run(
        [node(), "-e", whole], input=given.encode(), capture_output=True, check=True
    ).stdout


def answers(whole: Fitted, at: list[dict[str, float | None]]) -> Any:
    given = f'{{"fitted":{fitted_json(whole)},"points":{json.dumps(at)}}}'
    return json.loads(ran(ASK, given))


@pytest.mark.node
def test_a_script_of_a_browser_fills_in_the_same_bytes() -> None:
    whole, at = fitted(4, 2000), points(5, 40)
    found = answers(whole, at)
    for point, files in zip(at, found, strict=True):
        assert [(each["name"], each["text"]) for each in files] == list(fill(whole, point))


@pytest.mark.node
@pytest.mark.parametrize("day", [date(2026, 10, 2), date(1970, 5, 5), date(2200, 1, 1)])
def test_a_script_of_a_browser_packs_the_same_zip(day: date) -> None:
    texts = {
        "cut/b.svg": "<svg/>\n" * 30,
        "a.txt": "",
        "cut/é.dxf": "Grüße\n",
        "cut/\U00010000.txt": "x",
        "cut/\uffee.txt": "y",
    }
    files = [{"name": name, "text": text} for name, text in texts.items()]
    given = json.dumps({"files": files, "day": day.isoformat(), "folder": "rack-1.0.0"})
    packed = {name: text.encode() for name, text in texts.items()}
    assert ran(PACK, given) == zip_bytes(packed, day, "rack-1.0.0", deflated=False)


def test_files_that_are_stored_come_back_whole_and_bear_the_crc_of_the_standard() -> None:
    """CRC-32 of "123456789" is CBF43926 (the check value of every catalogue of CRCs)."""
    packed = zip_bytes({"nine": b"123456789"}, date(2026, 1, 1), deflated=False)
    assert bytes.fromhex("CBF43926")[::-1] in packed
    assert b"123456789" in packed


def test_a_number_needs_none_of_its_neighbours() -> None:
    lone = Number(name="cutter.ply", least=3.0, most=8.0, drawn=None, decimals=3, none=True)
    slot = Slot(style=Style(), constant=1.0, slopes=(1.0,))
    whole = Fitted(numbers=(lone,), files=(FittedFile(cells=(Cell(name=(), text=(slot,)),)),))
    assert fill(whole, {}) == (("", "1"),)
