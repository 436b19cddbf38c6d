"""The shipped library against the tables its rows come from; the values here were typed by hand."""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from kerfolio.basis.names import NAME
from kerfolio.basis.shipped import shipped
from kerfolio.model.stock import HardwareStock, SheetStock, Stock
from tests.plans import workshop

INCH = 25.4
FILES = (
    *("boards", "chip-loads", "cutters", "depth-rules", "finishes", "hardware", "movements"),
    *("papers", "sheets"),
)


@pytest.fixture(scope="module")
def stock() -> Stock:
    """The library as every workshop gets it; reading it gives no finding."""
    return workshop().stock


def path_of(name: str) -> Path:
    return shipped("content") / f"{name}.yaml"


def rows_of(name: str) -> dict[str, dict[str, Any]]:
    stated = yaml.safe_load(path_of(name).read_text("utf-8"))
    assert list(stated) == [name]
    rows: dict[str, dict[str, Any]] = stated[name]
    return rows


def sheet(stock: Stock, name: str) -> SheetStock:
    found = stock.sheet(name)
    assert found is not None, name
    return found


def item(stock: Stock, name: str) -> HardwareStock:
    found = stock.item(name)
    assert found is not None, name
    return found


@pytest.mark.parametrize("name", FILES)
def test_every_row_is_read_and_has_its_source(name: str, stock: Stock) -> None:
    rows = rows_of(name)
    read = {each.name: each for each in getattr(stock, name.replace("-", "_"))}
    assert read.keys() == rows.keys()
    assert all(NAME.fullmatch(row) for row in rows)
    assert [row for row, each in read.items() if len(each.source) < 8] == []


@pytest.mark.parametrize("name", FILES)
def test_every_value_has_its_source_and_its_place(name: str, stock: Stock) -> None:
    for each in getattr(stock, name.replace("-", "_")):
        for origin in each.origins:
            assert len(each.source_of(origin.field)) >= 8, (each.name, origin.field)
            assert each.came_from(origin.field).file == f"content/{name}.yaml"


@pytest.mark.parametrize("name", ["boards", "cutters", "finishes", "hardware", "papers", "sheets"])
def test_titles_are_stated_and_differ(name: str, stock: Stock) -> None:
    titles = [each.title for each in getattr(stock, name)]
    assert all(titles)
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("name", FILES)
def test_no_row_cites_a_web_address(name: str) -> None:
    text = path_of(name).read_text("utf-8")
    assert re.findall(r"(?i)https?:|www\.|\b[a-z-]+\.(?:com|org|net|eu|edu|info|gov)\b", text) == []


def test_no_price_is_shipped(stock: Stock) -> None:
    assert all(not each.prices for each in stock.sheets)
    assert all(each.price_per_metre is None for each in stock.boards)
    assert all(each.price is None for each in stock.hardware)


# ------------------------------------------------------------------------------------- sheets

# Birch plywood datasheet, table of plies, thickness and density: average, lower and upper limit.
BIRCH = {
    "4": (3.8, 3.5, 4.1, 660),
    "6-5": (6.4, 6.1, 6.9, 670),
    "9": (9.2, 8.8, 9.5, 710),
    "12": (12.0, 11.5, 12.5, 695),
    "15": (14.9, 14.3, 15.3, 690),
    "18": (17.7, 17.1, 18.1, 685),
    "21": (20.5, 20.0, 20.9, 680),
    "24": (23.4, 22.9, 23.7, 680),
    "27": (26.5, 25.8, 26.8, 673),
    "30": (29.4, 28.7, 29.9, 672),
    "35": (35.0, 33.6, 35.4, 687),
    "40": (38.7, 38.4, 41.2, 650),
    "45": (43.6, 43.3, 46.6, 660),
    "50": (49.6, 48.1, 51.7, 695),
}


@pytest.mark.parametrize("size", BIRCH)
def test_birch_plywood_is_as_the_datasheet_says(size: str, stock: Stock) -> None:
    found = sheet(stock, f"birch-plywood-{size}")
    assert (found.actual, found.least, found.most, found.density) == BIRCH[size]
    assert found.nominal == float(size.replace("-", "."))
    assert found.grain


@pytest.mark.parametrize("size", BIRCH)
def test_birch_limits_lie_within_en_315(size: str, stock: Stock) -> None:
    # From memory: EN 315, sanded plywood, +(0.2 + 0.03 t) and -(0.4 + 0.03 t), read to 0.1 mm.
    found = sheet(stock, f"birch-plywood-{size}")
    t = found.nominal
    assert found.least >= t - (0.4 + 0.03 * t) - 0.05
    assert found.most <= t + (0.2 + 0.03 * t) + 0.051


def test_sheets_readers_can_buy_are_listed(stock: Stock) -> None:
    # Exterior birch plywood stock sizes as a dealer lists them; common practice.
    sizes = sheet(stock, "birch-plywood-18").sizes
    assert {(2440.0, 1220.0), (2500.0, 1250.0), (1525.0, 1525.0)} <= set(sizes)
    assert sheet(stock, "plywood-23-32").sizes[0] == pytest.approx((2438.4, 1219.2))


# PS 1-19, performance categories: category, least and greatest thickness, label, inches.
CATEGORIES = {
    "1-4": (1 / 4, 0.219, 0.281, 0.225),
    "11-32": (11 / 32, 0.313, 0.375, 0.322),
    "3-8": (3 / 8, 0.344, 0.406, 0.354),
    "7-16": (7 / 16, 0.406, 0.469, 0.418),
    "15-32": (15 / 32, 0.438, 0.500, 0.451),
    "1-2": (1 / 2, 0.469, 0.531, 0.483),
    "19-32": (19 / 32, 0.563, 0.625, 0.578),
    "5-8": (5 / 8, 0.594, 0.656, 0.609),
    "23-32": (23 / 32, 0.688, 0.750, 0.703),
    "3-4": (3 / 4, 0.719, 0.781, 0.734),
    "13-16": (13 / 16, 0.781, 0.844, 0.788),
    "7-8": (7 / 8, 0.831, 0.919, 0.849),
    "1": (1.0, 0.950, 1.050, 0.970),
    "1-1-8": (9 / 8, 1.069, 1.181, 1.091),
    "1-1-4": (5 / 4, 1.188, 1.313, 1.213),
}


@pytest.mark.parametrize("category", CATEGORIES)
def test_us_plywood_is_as_ps_1_19_says(category: str, stock: Stock) -> None:
    found = sheet(stock, f"plywood-{category}")
    stated = (found.nominal, found.least, found.most, found.actual)
    assert stated == pytest.approx(tuple(value * INCH for value in CATEGORIES[category]))


@pytest.mark.parametrize("category", CATEGORIES)
def test_the_bands_follow_the_rule_of_ps_1_19(category: str, stock: Stock) -> None:
    # PS 1-19: 1/32 in about the category up to 13/16, 5 % above; printed to 0.001 in.
    found = sheet(stock, f"plywood-{category}")
    nominal = found.nominal / INCH
    spread = 1 / 32 if nominal <= 13 / 16 else 0.05 * nominal
    assert found.least / INCH == pytest.approx(nominal - spread, abs=0.001)
    assert found.most / INCH == pytest.approx(nominal + spread, abs=0.001)


@pytest.mark.parametrize("size", [6, 9, 12, 18, 19, 25])
def test_mdf_is_nominal_within_en_622_1(size: int, stock: Stock) -> None:
    # From memory: EN 622-1, thickness 0.2 mm about nominal up to 19 mm, 0.3 mm above.
    found, spread = sheet(stock, f"mdf-{size}"), 0.2 if size <= 19 else 0.3
    assert found.actual == found.nominal == size
    assert (found.least, found.most) == pytest.approx((size - spread, size + spread))
    assert not found.grain


@pytest.mark.parametrize(("name", "inches"), [("1-4", 0.25), ("1-2", 0.5), ("3-4", 0.75)])
def test_inch_mdf_is_nominal_within_ansi_a208_2(name: str, inches: float, stock: Stock) -> None:
    # ANSI A208.2, requirements common to all MDF: average thickness 0.125 mm about nominal.
    found = sheet(stock, f"mdf-{name}")
    assert found.nominal == pytest.approx(inches * INCH)
    assert (found.most - found.actual, found.actual - found.least) == pytest.approx((0.125, 0.125))


@pytest.mark.parametrize(
    ("size", "density"), [(10, 700), (12, 690), (16, 660), (18, 650), (22, 640), (28, 620)]
)
def test_particleboard_is_as_the_datasheet_says(size: int, density: int, stock: Stock) -> None:
    # Particleboard P2 datasheet (EN 312): density by thickness, 0.3 mm about nominal.
    found = sheet(stock, f"particleboard-{size}")
    assert found.density == density
    assert (found.least, found.most) == pytest.approx((size - 0.3, size + 0.3))


# Wood Handbook FPL-GTR-190 (2010), Table 12-1: specific gravity of panels, from and to.
GRAVITY = {"plywood": (0.4, 0.6), "mdf": (0.7, 0.9), "particleboard": (0.6, 0.8), "osb": (0.5, 0.8)}


@pytest.mark.parametrize("kind", GRAVITY)
def test_densities_lie_in_the_wood_handbooks_range(kind: str, stock: Stock) -> None:
    low, high = GRAVITY[kind]
    found = [each for each in stock.sheets if re.match(rf"{kind}-\d", each.name)]
    assert len(found) >= 9
    assert all(low * 1000 <= each.density <= high * 1000 for each in found)


def test_actual_thickness_lies_between_the_limits(stock: Stock) -> None:
    assert all(each.least <= each.actual <= each.most for each in stock.sheets)


# ------------------------------------------------------------------------------------- boards

# From memory: PS 20, dressed dry sizes in inches.
DRESSED = {
    "pine-1x2": (0.75, 1.5),
    "pine-1x4": (0.75, 3.5),
    "pine-1x6": (0.75, 5.5),
    "pine-1x8": (0.75, 7.25),
    "pine-1x12": (0.75, 11.25),
    "fir-2x4": (1.5, 3.5),
    "fir-2x6": (1.5, 5.5),
    "fir-2x10": (1.5, 9.25),
    "fir-4x4": (3.5, 3.5),
}


@pytest.mark.parametrize("name", DRESSED)
def test_us_boards_are_dressed_as_ps_20_says(name: str, stock: Stock) -> None:
    found = stock.board(name)
    assert found is not None
    assert (found.thickness / INCH, found.width / INCH) == pytest.approx(DRESSED[name])


def test_board_densities_are_the_wood_handbooks_at_12_percent(stock: Stock) -> None:
    # Wood Handbook FPL-GTR-190 (2010), Table 12-1: western white pine 0.38, coast Douglas fir 0.48;
    # density = 1000 x specific gravity x (1 + moisture).
    pine, fir = stock.board("pine-1x4"), stock.board("fir-2x4")
    assert pine is not None
    assert fir is not None
    assert pine.density == pytest.approx(1000 * 0.38 * 1.12, abs=0.5)
    assert fir.density == pytest.approx(1000 * 0.48 * 1.12, abs=0.5)


def test_metric_boards_are_named_by_their_section(stock: Stock) -> None:
    metric = [each for each in stock.boards if each.title.endswith("mm planed")]
    assert len(metric) >= 20
    for each in metric:
        assert each.name == f"pine-{each.thickness:g}x{each.width:g}"
        assert each.thickness <= each.width


# ------------------------------------------------------------------------------------ cutters


@pytest.mark.parametrize("kind", ["compression", "up-cut", "down-cut"])
@pytest.mark.parametrize(
    ("size", "diameter"), [("3", 3.0), ("6", 6.0), ("1-8in", 3.175), ("1-4in", 6.35)]
)
def test_spirals_are_named_by_kind_and_diameter(
    kind: str, size: str, diameter: float, stock: Stock
) -> None:
    found = stock.cutter(f"{kind}-{size}")
    assert found is not None
    assert (found.kind, found.diameter) == (kind, pytest.approx(diameter))
    assert (found.up_cut_length is not None) == (kind == "compression")
    assert found.cutting_length > (found.up_cut_length or 0.0)


def test_a_six_millimetre_compression_cutter_goes_through_18_mm(stock: Stock) -> None:
    # Compression bit, first pass rule: an example's up-cut tip is 5 mm long; common practice.
    found = stock.cutter("compression-6")
    assert found is not None
    assert found.cutting_length >= 18.1 + 0.5
    assert found.up_cut_length == 5.0


@pytest.mark.parametrize("name", ["v-60", "v-90", "v-60-1-2in", "v-90-1-2in"])
def test_a_v_cutters_length_follows_from_its_angle(name: str, stock: Stock) -> None:
    found = stock.cutter(name)
    assert found is not None
    half = math.radians(float(name.split("-")[1]) / 2)
    assert found.kind == "v"
    assert found.cutting_length == pytest.approx(found.diameter / 2 / math.tan(half), abs=0.05)


# ----------------------------------------------------------------------------------- hardware

# ISO 273, medium series (H13), mm.
MEDIUM = {"m4": 4.5, "m5": 5.5, "m6": 6.6, "m8": 9.0}
# ASME B18.2.8-1999 (R2017), normal series, metric drill, as in Machinery's Handbook, 31st edition.
NORMAL = {"no8": 5.0, "no10": 5.6, "1-4": 7.1, "5-16": 8.7}


@pytest.mark.parametrize("thread", [*MEDIUM, *NORMAL])
def test_bolts_have_standard_clearance_holes(thread: str, stock: Stock) -> None:
    found = [each for each in stock.hardware if re.fullmatch(rf"bolt-{thread}x.*", each.name)]
    assert len(found) >= 4
    assert {each.clearance for each in found} == {{**MEDIUM, **NORMAL}[thread]}


def test_a_bolts_length_is_in_its_name(stock: Stock) -> None:
    assert item(stock, "bolt-m6x40").length == 40.0
    assert item(stock, "bolt-1-4x1-1-2in").length == pytest.approx(1.5 * INCH)
    assert item(stock, "screw-4x40").length == 40.0


def test_counterbores_take_the_head(stock: Stock) -> None:
    # From memory: ISO 4762, head diameters 7, 8.5, 10 and 13 mm; head as high as the thread.
    heads = {"m4": (7.0, 4.0), "m5": (8.5, 5.0), "m6": (10.0, 6.0), "m8": (13.0, 8.0)}
    for thread, (diameter, height) in heads.items():
        found = item(stock, f"bolt-{thread}x40")
        assert found.counterbore_diameter is not None
        assert found.counterbore_depth is not None
        assert diameter < found.counterbore_diameter <= diameter + 2
        assert height < found.counterbore_depth <= height + 1


@pytest.mark.parametrize("diameter", [3.0, 3.5, 4.0, 4.5, 5.0, 6.0])
def test_metric_pilots_are_six_tenths_of_the_screw(diameter: float, stock: Stock) -> None:
    # Common practice, no single source; to the nearest drill of a 0.5 mm set.
    prefix = f"screw-{diameter:g}".replace(".", "-") + "x"
    found = [each for each in stock.hardware if each.name.startswith(prefix)]
    assert found
    for each in found:
        assert each.pilot == pytest.approx(round(0.6 * diameter * 2) / 2)
        assert each.clearance == pytest.approx(diameter + 0.5)


@pytest.mark.parametrize(
    ("gauge", "pilot", "clearance"),
    [(6, 5 / 64, 9 / 64), (8, 3 / 32, 11 / 64), (10, 7 / 64, 3 / 16), (12, 1 / 8, 7 / 32)],
)
def test_inch_pilots_are_the_plates_hardwood_holes(
    gauge: int, pilot: float, clearance: float, stock: Stock
) -> None:
    # Pilot-hole plates for wood screws citing AWC: hardwood lead hole and shank clearance, inches.
    found = [each for each in stock.hardware if each.name.startswith(f"screw-no{gauge}x")]
    assert found
    for each in found:
        assert each.pilot == pytest.approx(pilot * INCH)
        assert each.clearance == pytest.approx(clearance * INCH)


def test_every_inch_twin_is_in_the_library(stock: Stock) -> None:
    twins = [each for each in stock.hardware if each.inch_twin]
    assert len(twins) > 80
    for each in twins:
        twin = item(stock, each.inch_twin)
        assert twin.inch_twin == ""
        if each.length is not None and twin.length is not None:
            assert twin.length == pytest.approx(each.length, abs=4.0), each.name


def test_metric_bolts_and_screws_have_a_twin(stock: Stock) -> None:
    metric = [
        each for each in stock.hardware if re.match(r"bolt-m|screw-\d|dowel-\d+x\d+$", each.name)
    ]
    assert [each.name for each in metric if not each.inch_twin] == []


def shank(name: str) -> float:
    """Return the diameter in mm of an inch bolt or screw by its name.

    US numbered sizes: 0.060 + 0.013 x number inches.
    """
    found = re.match(r"(?:bolt|screw)-(?:no(\d+)|(\d+)-(\d+))x", name)
    assert found, name
    if found[1]:
        return (0.060 + 0.013 * int(found[1])) * INCH
    return int(found[2]) / int(found[3]) * INCH


def test_a_twin_goes_through_the_same_hole(stock: Stock) -> None:
    pairs = [
        (each, each.inch_twin)
        for each in stock.hardware
        if each.inch_twin and each.name.startswith(("bolt-", "screw-"))
    ]
    assert len(pairs) > 60
    for each, twin in pairs:
        assert each.clearance is not None
        assert shank(twin) + 0.2 <= each.clearance <= shank(twin) + 1.2, each.name


def test_a_dowels_hole_is_its_size(stock: Stock) -> None:
    # Dowel makers' technical pages: diameters 5, 6, 8, 10 and 12 mm, and from 3/16 in.
    for diameter in (5, 6, 8, 10, 12):
        found = [each for each in stock.hardware if each.name.startswith(f"dowel-{diameter}x")]
        assert found
        assert {each.clearance for each in found} == {float(diameter)}
    assert item(stock, "dowel-8x40").length == 40.0


def test_knock_down_hardware_sits_in_its_holes(stock: Stock) -> None:
    # From memory: common knock-down furniture hardware, shop practice.
    assert item(stock, "barrel-nut-m6").clearance == 10.0
    assert item(stock, "tee-nut-m6").clearance == 8.0
    assert item(stock, "shelf-pin-5").clearance == 5.0
    connector = item(stock, "connector-7x50")
    assert (connector.clearance, connector.pilot) == (7.0, 5.0)
    assert [item(stock, f"insert-m{d}").pilot for d in (4, 5, 6, 8)] == [6.0, 7.5, 9.0, 11.0]


# ------------------------------------------------------------------------------------- papers

# ISO 216, A series, mm.
A_SERIES = {
    "a0": (841, 1189),
    "a1": (594, 841),
    "a2": (420, 594),
    "a3": (297, 420),
    "a4": (210, 297),
    "a5": (148, 210),
}
# ASME Y14.1, sizes A to E; legal and the architects' D by common practice; inches.
US_SHEETS = {
    "letter": (8.5, 11),
    "legal": (8.5, 14),
    "tabloid": (11, 17),
    "ansi-c": (17, 22),
    "ansi-d": (22, 34),
    "ansi-e": (34, 44),
    "arch-d": (24, 36),
}


@pytest.mark.parametrize("name", A_SERIES)
def test_a_sizes_are_those_of_iso_216(name: str, stock: Stock) -> None:
    found = stock.paper(name)
    assert found is not None
    assert (found.width, found.height) == A_SERIES[name]


@pytest.mark.parametrize("number", range(5))
def test_each_a_size_is_half_the_one_before(number: int, stock: Stock) -> None:
    # ISO 216: halved across the longer side, rounded down to a whole millimetre.
    larger, smaller = stock.paper(f"a{number}"), stock.paper(f"a{number + 1}")
    assert larger is not None
    assert smaller is not None
    assert (smaller.width, smaller.height) == (larger.height // 2, larger.width)


@pytest.mark.parametrize("name", US_SHEETS)
def test_us_papers(name: str, stock: Stock) -> None:
    found = stock.paper(name)
    assert found is not None
    assert (found.width / INCH, found.height / INCH) == pytest.approx(US_SHEETS[name])


# ------------------------------------------------------------------------- movements, finishes


def test_every_sheet_and_board_has_a_movement(stock: Stock) -> None:
    for each in (*stock.sheets, *stock.boards):
        if each.family != "laminate":
            assert stock.movement(each.family), each.name


def test_solid_wood_moves_most_along_its_face_and_sheets_in_their_thickness(stock: Stock) -> None:
    for each in stock.movements:
        solid = each.name in ("hardwood", "softwood")
        assert (each.plane > 0.2) == solid
        assert each.plane < 0.1 or solid
        assert 0.2 < each.thickness < 0.8
