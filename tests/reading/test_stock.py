"""Stock: the shipped library, and the maker's own entries over it."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from kerfolio.basis.shipped import shipped
from kerfolio.model.stock import Stock
from kerfolio.reading.desk import Desk
from kerfolio.reading.stock import STOCK, Kept, doubled, make_stock, overlay
from kerfolio.reading.yaml_text import read_yaml
from tests.reading.desks import said

LIBRARY = """\
sheets:
  birch-plywood-18: {title: Birch, nominal: 18 mm, actual: 17.7 mm, least: 17.1 mm, most: 18.3 mm,
    density: 685, sizes: [2440 x 1220, 8 ft x 4 ft], source: a table}
cutters:
  compression-6: {title: Compression, diameter: 6 mm, kind: compression, flutes: 2,
    cutting-length: 22 mm, up-cut-length: 5 mm}
"""


def sections(text: str, desk: Desk, file: str = "stock/own.yaml") -> Kept:
    node, findings = read_yaml(text.encode(), file)
    assert node is not None
    desk.findings += findings
    return STOCK.read(node, desk) or {}


def stock(own: str) -> tuple[Stock, list[str]]:
    desk = Desk()
    library = sections(LIBRARY, desk, "content/all.yaml")
    made = make_stock(library, sections(own, desk), desk)
    return made, said(desk.findings)


def test_the_shipped_library_has_no_finding() -> None:
    desk = Desk()
    kept: Kept = {}
    for path in sorted(shipped("content").glob("*.yaml")):
        kept = overlay(kept, sections(path.read_text("utf-8"), desk, path.name))
    made = make_stock(kept, {}, desk)
    assert said(desk.findings) == []
    assert all((made.sheets, made.boards, made.cutters, made.hardware, made.papers))
    assert all((made.chip_loads, made.depth_rules))
    assert all(sheet.source for sheet in made.sheets)


def test_own_fields_lie_over_the_library() -> None:
    made, findings = stock(
        "sheets: {birch-plywood-18: {actual: 18 mm, prices: {2440 x 1220: 92.50}}}"
    )
    sheet = made.sheet("birch-plywood-18")
    assert findings == []
    assert sheet is not None
    assert (sheet.actual, sheet.nominal, sheet.source) == (18, 18, "a table")
    assert sheet.prices == (((2440, 1220), Decimal("92.50")),)
    assert sheet.sizes == ((2440, 1220), (2438.4, 1219.2))
    assert sheet.place.file == "stock/own.yaml"
    assert made.cutter("compression-6") is not None


STIFF = """\
sheets:
  birch-plywood-18:
    stiffness-along: 10048
    stiffness-across: 7452
    stiffness-kind: mean
    strength-along: 40.2
    creep: 0.8
    family: hardwood-plywood
    source: my own bench
    sources: {stiffness: a handbook, strength-along: from memory}
"""


def test_every_field_knows_its_file_and_its_source() -> None:
    made, findings = stock(STIFF)
    sheet = made.sheet("birch-plywood-18")
    assert findings == []
    assert sheet is not None
    assert (sheet.stiffness_along, sheet.stiffness_across, sheet.creep) == (10048, 7452, 0.8)
    assert (sheet.stiffness_kind, sheet.strength_kind) == ("mean", "claim")
    assert sheet.strength_across is None
    assert str(sheet.came_from("stiffness_across")) == "stock/own.yaml:4:5"
    assert sheet.came_from("actual").file == "content/all.yaml"
    assert sheet.came_from("shear_modulus_flat") == sheet.place
    assert sheet.source_of("stiffness_along") == sheet.source_of("stiffness_kind") == "a handbook"
    assert sheet.source_of("strength_along") == "from memory"
    assert sheet.source_of("creep") == "my own bench"
    assert sheet.source_of("density") == "a table"


def test_a_changed_value_does_not_borrow_the_library_s_source() -> None:
    made, _ = stock("sheets: {birch-plywood-18: {density: 700}}")
    sheet = made.sheet("birch-plywood-18")
    assert sheet is not None
    assert (sheet.density, sheet.source_of("density")) == (700, "")
    assert sheet.came_from("density").file == "stock/own.yaml"
    assert sheet.source_of("actual") == "a table"


def test_two_files_of_the_maker_each_give_their_part() -> None:
    desk = Desk()
    first = sections("cutters: {compression-6: {flutes: 3, source: A}}", desk, "stock/a.yaml")
    second = sections("cutters: {compression-6: {diameter: 5.9 mm}}", desk, "stock/b.yaml")
    made = make_stock(sections(LIBRARY, desk, "content/all.yaml"), overlay(first, second), desk)
    cutter = made.cutter("compression-6")
    assert cutter is not None
    files = [cutter.came_from(each).file for each in ("flutes", "diameter", "kind")]
    assert files == ["stock/a.yaml", "stock/b.yaml", "content/all.yaml"]
    assert [cutter.source_of(each) for each in ("flutes", "diameter")] == ["A", ""]


def test_a_cutter_of_the_makers_own_has_a_history() -> None:
    own = "in-use-since: 2026-01-10, sharpened: [2026-05-01, 2026-09-30], true-cut: 6.04"
    made, findings = stock(f"cutters: {{compression-6: {{{own}, metres-before: 310}}}}")
    cutter = made.cutter("compression-6")
    assert not findings
    assert cutter is not None
    assert cutter.in_use_since == date(2026, 1, 10)
    assert cutter.sharpened == (date(2026, 5, 1), date(2026, 9, 30))
    assert (cutter.true_cut, cutter.metres_before) == (6.04, 310.0)


def test_chip_loads_and_depth_rules_are_stock_too() -> None:
    made, findings = stock(
        "chip-loads: {mine: {family: mdf, diameter: 1/4 in, least: 0.005 in, most: 0.2 mm,"
        " machine: small shop, depth: half a diameter, source: my log}}\n"
        "depth-rules: {mine: {diameters: 0.5, share: 1}}\n"
    )
    assert findings == []
    (chip,), (rule,) = made.chip_loads, made.depth_rules
    assert (chip.family, chip.machine, chip.depth) == ("mdf", "small shop", "half a diameter")
    assert (chip.diameter, chip.least, chip.most) == pytest.approx((6.35, 0.127, 0.2))
    assert (rule.diameters, rule.share) == (0.5, 1.0)


def test_a_chip_load_may_be_for_all_small_cutters() -> None:
    made, findings = stock(
        "chip-loads: {mine: {family: mdf, least: 0.1, most: 0.05, machine: big one}}"
    )
    assert made.chip_loads == ()
    assert findings == [
        "`big one` is not a class of machine / "
        "Known here: `industrial`, `light hobby`, `small shop`."
    ]
    _, findings = stock(
        "chip-loads: {mine: {family: mdf, least: 0.1, most: 0.05, machine: industrial}}"
    )
    assert findings == ["`least` is more than `most` / Write the smaller of the two first."]


def test_new_entries_state_all_they_need() -> None:
    made, findings = stock("cutters: {mine: {title: Mine, diameter: 1/4 in}}")
    assert findings == [
        "`kind` is missing / Add `kind:` with a kind of cutter.",
        "`flutes` is missing / Add `flutes:` with a whole number.",
        "`cutting-length` is missing / Add `cutting-length:` with a length.",
    ]
    assert made.cutter("mine") is None


def test_a_faulty_entry_falls_back_to_the_library() -> None:
    made, findings = stock("sheets: {birch-plywood-18: {actual: 25 mm}}")
    assert findings == [
        "`actual` is not between `least` and `most` / "
        "State the thickness you measured and the limits it lies within. "
        "`least` and `most` stand in content/all.yaml."
    ]
    sheet = made.sheet("birch-plywood-18")
    assert sheet is not None
    assert sheet.actual == 17.7


def test_a_fraction_is_within_the_bound_that_is_listed_as_it() -> None:
    """PS 1 lists 0.719 in for 23/32 in, 0.71875."""
    made, findings = stock(
        "sheets: {ply: {title: Ply, nominal: 3/4 in, actual: 23/32 in, least: 0.719 in, "
        "most: 0.781 in, density: 500, sizes: [96 in x 48 in]}}"
    )
    assert findings == []
    assert made.sheet("ply") is not None
    _, (finding, *_) = stock(
        "sheets: {ply: {title: Ply, nominal: 3/4 in, actual: 0.718 in, least: 0.719 in, "
        "most: 0.781 in, density: 500, sizes: [96 in x 48 in]}}"
    )
    assert finding.startswith("`actual` is not between `least` and `most`")


def test_entries_are_sorted_by_name() -> None:
    entry = "{title: X, length: 5}"
    made, findings = stock(f"hardware: {{b: {entry}, c: {entry}, a: {entry}}}")
    assert findings == []
    assert [each.name for each in made.hardware] == ["a", "b", "c"]


def test_an_entry_in_two_of_the_makers_files_is_told() -> None:
    desk = Desk()
    first = sections("papers: {mine: {title: M, width: 1, height: 2}}", desk, "stock/a.yaml")
    second = sections("papers: {mine: {title: N}}", desk, "stock/b.yaml")
    [(fields, complaint)] = doubled(first, second)
    assert fields.place.file == "stock/b.yaml"
    assert (str(complaint), complaint.advice) == (
        "`mine` is stated twice",
        "It stands in stock/a.yaml already; keep one of the two.",
    )


@pytest.mark.parametrize(
    ("own", "words"),
    [
        ("sheet: {}", "unknown key `sheet` / Did you mean `sheets`?"),
        (
            "sheets: [birch]",
            "expected sheets by name, found a list / Write `name: {...}`, an entry each.",
        ),
        (
            "sheets: {Birch 18: {actual: 18}}",
            "`Birch 18` is no name / "
            "Write `birch-18`: lower case letters, digits and inner hyphens.",
        ),
        (
            "sheets: {birch-plywood-18: {thickness: 18}}",
            "unknown key `thickness` / Known here: `plies`, `prices`, `sizes`, "
            "`stiffness-across`, `stiffness-along`, `stiffness-kind`, `strength-across`, `title` "
            "and 19 more.",
        ),
        (
            "sheets: {birch-plywood-18: {sources: {stiffnes: a table}}}",
            "no key that begins with `stiffnes` / "
            "Write the key that the source is of, or its first word.",
        ),
        (
            "sheets: {birch-plywood-18: {stiffness-kind: average}}",
            "`average` is not a kind of value / "
            "Known here: `characteristic`, `claim`, `mean`, `minimum`.",
        ),
        (
            "sheets: {birch-plywood-18: {family: plywood}}",
            "`plywood` is not a family of material / Did you mean `softwood-plywood`?",
        ),
        (
            "sheets: {birch-plywood-18: {prices: {large: 5}}}",
            "`large` is no sheet size / Write the side along the grain first: `2440 x 1220`.",
        ),
        (
            "cutters: {compression-6: {true-cut: 60 mm}}",
            "`true-cut` is far from the diameter of 6 mm / "
            "Write how wide its cut is: 6.05 mm of a cutter of 6 mm, say.",
        ),
        (
            "cutters: {compression-6: {sharpened: [2026-05-02, 2026-05-01]}}",
            "`sharpened` is not in order / Write each day once, the first one first.",
        ),
        (
            "cutters: {compression-6: {in-use-since: 2026-05-02, sharpened: 2026-05-01}}",
            "it was sharpened before it was in use / "
            "See which of `in-use-since` and `sharpened` is right.",
        ),
    ],
)
def test_refuses_in_words(own: str, words: str) -> None:
    assert stock(own)[1] == [words]
