"""Which files a slot of the coupon names."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.edition import Edition
from kerfolio.pages.choosing import coupon_tables, folder_rows, sheet_titles
from kerfolio.pages.facts import facts, sheet_ranges
from kerfolio.settling.settled import FitVariant
from tests.pages.invented import edition


def of_two_sheets() -> Edition:
    """The stool as if its seat were of a thinner sheet, published for two thicknesses of each."""
    found = edition()
    ply = found.settled.sheets[0]
    stock = replace(ply.stock, title="Birch plywood 12 mm")
    thin = replace(ply, name="thin", stock=stock, published=(11.6, 12.0))
    pairs = [(a, b) for a in (17.6, 18.0) for b in (11.6, 12.0)]
    variants = tuple(
        replace(
            found.settled,
            sheets=(ply, thin),
            variant=FitVariant(label=f"ply-{a}mm_thin-{b}mm", thickness=(("ply", a), ("thin", b))),
        )
        for a, b in pairs
    )
    return replace(found, settled=variants[0], variants=variants)


def test_of_one_sheet_a_slot_names_its_folder() -> None:
    (table,) = coupon_tables(edition())
    assert table.by_folder
    assert [(row.number, row.take, row.note) for row in table.rows] == [
        (1, "", "none: thinner than the plan is published for"),
        (2, "", "none: thinner than the plan is published for"),
        (3, "cut/17.6mm", ""),
        (4, "cut/17.8mm", ""),
        (5, "cut/18.0mm", ""),
        (6, "", "none: thicker than the plan is published for"),
        (7, "", "none: thicker than the plan is published for"),
    ]


def test_of_several_sheets_a_slot_names_the_thickness_to_look_up() -> None:
    (table,) = coupon_tables(of_two_sheets())
    assert not table.by_folder
    assert [(row.take, row.note) for row in table.rows][2:6] == [
        ("a folder for ply 17.6 mm", ""),
        ("a folder for ply 18 mm", "the next thicker"),
        ("a folder for ply 18 mm", ""),
        ("", "none: thicker than the plan is published for"),
    ]


def test_a_slot_without_a_folder_says_that_its_files_are_made() -> None:
    found = replace(edition(), variants=edition().variants[1:2], fitted=True)
    (table,) = coupon_tables(found)
    assert [(row.take, row.note) for row in table.rows][2:6] == [
        ("", "files made for 17.6 mm"),
        ("cut/17.8mm", ""),
        ("", "files made for 18 mm"),
        ("", "none: thicker than the plan is published for"),
    ]


def test_every_folder_is_listed_with_the_thickness_of_every_sheet() -> None:
    found = of_two_sheets()
    assert sheet_titles(found) == ("Birch plywood 18 mm", "Birch plywood 12 mm")
    assert [(row.folder, row.thicknesses) for row in folder_rows(found)][1] == (
        "ply-17.6mm_thin-12.0mm",
        ("17.6 mm (0.693 in)", "12 mm (0.472 in)"),
    )
    assert [row.drawn for row in folder_rows(found)] == [True, False, False, False]


def test_facts_name_each_sheet_and_the_number_of_sets() -> None:
    found = of_two_sheets()
    assert [(each.least, each.most) for each in sheet_ranges(found)] == [(17.6, 18.0), (11.6, 12.0)]
    (thickness,) = [fact for fact in facts(found) if fact.head == "Sheet thickness"]
    assert thickness.lines == (
        ("Birch plywood 18 mm", "17.6 to 18 mm (0.693 to 0.709 in)"),
        (
            "Birch plywood 12 mm",
            "11.6 to 12 mm (0.457 to 0.472 in)",
            "in 4 sets of files",
        ),
    )
