"""The stock as lists: what is known of an item, in words, with where it was written."""

from __future__ import annotations

from datetime import date

from kerfolio.basis.place import Place
from kerfolio.model.stock import ChipLoad, CutterStock, Origin, SheetStock, Stock
from kerfolio.shop.stock_list import KINDS, stock_lists
from tests.plans import workshop

SHEET = SheetStock(
    name="ash",
    title="Ash ply",
    nominal=12,
    actual=11.9,
    least=11.5,
    most=12.2,
    density=690,
    sizes=((2440, 1220),),
    family="hardwood-plywood",
    stiffness_along=9800,
    stiffness_kind="mean",
    source="a mill",
    place=Place("content/sheets.yaml", 3, 3),
    origins=(Origin(field="actual", place=Place("stock/mine.yaml", 7, 5), source="my caliper"),),
)


def test_what_is_not_known_is_left_out() -> None:
    (found,) = stock_lists(Stock(sheets=(SHEET,)))
    (group,) = found.groups
    (row,) = group.rows
    assert (found.kind, group.title, row.title) == ("sheets", "Hardwood plywood", "Ash ply")
    said = {each.label: (each.lines, each.unit, each.kind) for each in row.figures}
    assert said == {
        "Measures": (("11.9 mm", "0.469 in"), "", ""),
        "At least": (("11.5 mm", "0.453 in"), "", ""),
        "At most": (("12.2 mm", "0.480 in"), "", ""),
        "Density": (("690",), "kg/m³", ""),
        "Stiffness along": (("9800",), "N/mm²", "mean"),
        "Sold as": (("2440 × 1220 mm",), "", ""),
    }


def test_each_figure_has_the_file_it_was_written_in() -> None:
    figures = stock_lists(Stock(sheets=(SHEET,)))[0].groups[0].rows[0].figures
    assert [(str(each.place), each.source) for each in figures[:2]] == [
        ("stock/mine.yaml:7:5", "my caliper"),
        ("content/sheets.yaml:3:3", "a mill"),
    ]


def test_items_go_by_size_and_machines_from_the_lightest() -> None:
    cutters = tuple(
        CutterStock(name=name, title=name, diameter=d, kind="v", flutes=2, cutting_length=5)
        for name, d in (("a", 12.0), ("b", 3.0))
    )
    chips = tuple(
        ChipLoad(name=m[:2], family="mdf", least=0.1, most=0.2, machine=m)
        for m in ("industrial", "light hobby", "small shop")
    )
    bits, loads = stock_lists(Stock(cutters=cutters, chip_loads=chips))
    assert [row.name for row in bits.groups[0].rows] == ["b", "a"]
    assert [each.title for each in loads.groups] == [
        *("Light hobby machines", "Machines of a small shop", "Industrial machines"),
    ]


def test_only_the_maker_is_told_of_the_cutter_in_the_machine() -> None:
    cutter = CutterStock(
        name="a",
        title="A",
        diameter=6,
        kind="straight",
        flutes=2,
        cutting_length=20,
        in_use_since=date(2026, 1, 10),
        sharpened=(date(2026, 5, 1), date(2026, 9, 30)),
        true_cut=6.04,
        metres_before=310,
    )
    stock = Stock(cutters=(cutter,))
    shown, told = (
        {each.label: each.lines[0] for each in found.groups[0].rows[0].figures}
        for found in (*stock_lists(stock), *stock_lists(stock, own=True))
    )
    assert set(told) - set(shown) == {
        *("Really cuts", "In use since", "Sharpened", "Cut before the log"),
    }
    assert told["Sharpened"] == "1 May 2026 and 30 September 2026"


def test_the_whole_library_is_listed_once() -> None:
    stock = workshop().stock
    lists = stock_lists(stock)
    assert tuple(each.kind for each in lists) == KINDS
    for each in lists:
        names = [row.name for group in each.groups for row in group.rows]
        items = getattr(stock, each.kind.replace("-", "_"))
        assert sorted(names) == [item.name for item in items]
        assert all(row.figures for group in each.groups for row in group.rows)
        titles = [group.title for group in each.groups]
        assert len(titles) == len(set(titles))
