"""Another material in place of a plan's own: proved, and compared with what is published.

Masses by hand: an area of 0.5 m2, 17.6 mm of birch plywood (685 kg/m3, the mill's table) and 18 mm
of MDF (750 kg/m3, the shipped library's own source).
"""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.reader import Reader
from kerfolio.edition.swap import Cut, SwapTable, swap_table
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.frozen import freeze, layout_for
from kerfolio.publishing.examine import examine_read
from kerfolio.publishing.swapping import examine_swapped, with_swaps
from kerfolio.shop.beam import G
from tests.command import run
from tests.plans import lay_down, proved
from tests.plans import workshop as read

SHELF = """\
plan: Bare shelf
version: 1.0.0
summary: One board to load.
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, drawn-for: 17.6, published-for: 17.6}}
parts:
  board: {sheet: ply, grain: along x, outline: {rectangle: [1000, 500]}}
spans:
  board: {part: board, load: {kg: 12}, limit: span/100}
swaps: [mdf-18]
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""
TWO = (
    SHELF.replace("swaps: [mdf-18]\n", "")
    .replace("parts:", "  thin: {stock: birch-plywood-6-5}\nparts:")
    .replace("sheets: {ply: ", "sheets:\n  ply: ")
    .replace("17.6}}", "17.6}")
)


@cache
def layout() -> str:
    """Return a frozen layout of the shelf, searched for briefly."""
    made, _, _ = layout_for(proved(SHELF).points, "", Effort(moves=1))
    assert made is not None
    return freeze(made)


def shelf(folder: Path, plan: str = SHELF) -> Path:
    shop = lay_down(folder / "shop", plan)
    if plan == SHELF:
        (shop / "plans/rack/layout.json").write_text(layout(), "utf-8")
    return shop


def tried(*asked: str) -> tuple[dict[str, tuple[str, str]], SwapTable]:
    with TemporaryDirectory() as folder:
        found = examine_swapped(shelf(Path(folder)), "", asked)
    (one,) = found.tried
    return {row.what: (row.before, row.after) for row in one.table.rows}, one.table


def refused(*asked: str, plan: str = SHELF) -> list[tuple[str, str]]:
    with TemporaryDirectory() as folder:
        found = examine_swapped(shelf(Path(folder), plan), "", asked)
    assert found.tried == ()
    return [(each.message, each.advice) for each in found.findings]


@cache
def in_mdf() -> tuple[dict[str, tuple[str, str]], SwapTable]:
    return tried("ply=mdf-18")


def test_weight_follows_thickness_and_density() -> None:
    rows, table = in_mdf()
    assert (table.before, table.after) == ("Birch plywood 18 mm", "MDF 18 mm")
    assert rows["Weight"] == ("6.0 kg (13.3 lb)", "6.8 kg (14.9 lb)")  # 6.028 and 6.75 kg
    assert rows["Thickness"][1] == "18 mm (0.709 in), for 17.8 to 18.2 mm (0.701 to 0.717 in)"
    assert rows["Cut edges"][1].startswith("even and without a grain, but they drink paint")


def test_sag_follows_stiffness_and_what_no_longer_holds_is_refused() -> None:
    rows, table = in_mdf()
    stock = read(SHELF).stock.sheet("mdf-18")
    assert stock is not None
    assert stock.stiffness_along
    assert stock.creep
    # 5 w L4 / 384 E I (Wood Handbook, equation 9-2, even load), 1 + kdef later (EN 1995-1-1).
    kilos = 12 + 6.75
    bent = 5 * kilos * G * 1000**3 / (384 * stock.stiffness_along * 500 * 18**3 / 12)
    told = float(rows["Board"][1].split()[1])
    assert told == pytest.approx(bent * (1 + stock.creep), rel=0.03)  # shear comes on top
    assert "limit 10.0 mm;" in rows["Board"][1]
    assert told > 10 > float(rows["Board"][0].split()[1])
    assert table.verdict == "Refused: 1 thing no longer holds."
    assert table.refused[0].startswith("board is reckoned for ")


def test_a_stock_that_carries_as_much_is_not_refused() -> None:
    _, table = tried("birch-plywood-21")
    assert table.verdict == "It goes together, and nothing is remarked on that was not before."
    assert (table.refused, table.remarks) == ((), ())


def test_a_size_that_it_is_not_sold_in_gives_way() -> None:
    rows, _ = tried("mdf-3-4")
    assert rows["Sheets"][0].startswith("1 × 2440 × 1220 mm")
    assert rows["Sheets"][1] != rows["Sheets"][0]


@pytest.mark.parametrize(
    ("asked", "plan", "told"),
    [
        (("ply=mdf-81",), SHELF, [("no sheet stock `mdf-81`", "Did you mean `mdf-18`?")]),
        (("pyl=mdf-18",), SHELF, [("no sheet `pyl`", "Did you mean `ply`?")]),
        (
            ("mdf-18",),
            TWO,
            [("in place of which sheet is `mdf-18`?", "Name it: `ply` or `thin`.")],
        ),
    ],
)
def test_what_is_not_known_is_refused_by_name(
    asked: tuple[str, ...], plan: str, told: list[tuple[str, str]]
) -> None:
    found = refused(*asked, plan=plan)
    assert [message for message, _ in found] == [message for message, _ in told]
    if "81" not in asked[0]:
        assert found == told


def test_the_command_prints_table_and_verdict(tmp_path: Path) -> None:
    shop = str(shelf(tmp_path))
    done = run("prove", shop, "--with", "ply=mdf-18")
    assert done.returncode == 1
    assert "Bare shelf: MDF 18 mm in place of Birch plywood 18 mm\n" in done.stdout
    assert "  Weight: 6.0 kg (13.3 lb) -> 6.8 kg (14.9 lb)\n" in done.stdout
    assert "  no longer: board is reckoned for " in done.stdout
    told = json.loads(run("prove", shop, "--with", "mdf-18", "--format", "json").stdout)
    assert [each["holds"] for each in told["swaps"]] == [False]
    assert [each["rule"] for each in told["findings"]][-1:] == ["span-overloaded"]


def test_a_stated_swap_is_worked_out_and_what_it_refuses_is_noted() -> None:
    found = read(SHELF)
    (own,) = found.plans
    found = replace(found, plans=(replace(own, layout_text=layout()),))
    examined = with_swaps(examine_read(found, ()))
    (one,) = examined.laid_out
    assert [each.after for each in one.swaps] == ["MDF 18 mm"]
    notes = [each for each in examined.findings if each.rule == "swap-refused"]
    assert [_words(each) for each in notes] == [
        "with MDF 18 mm the plan does not hold: board is reckoned for 5.7 kg, not 12 kg"
    ]
    plain = replace(found.plans[0], swaps=())
    assert with_swaps(examine_read(replace(found, plans=(plain,)), ())).laid_out[0].swaps == ()


def _words(finding: Finding) -> str:
    return str(finding.message)


def test_readers_are_told_in_their_language_what_no_longer_holds() -> None:
    with TemporaryDirectory() as folder:
        shop = shelf(Path(folder))
        stated = shop / "workshop.yaml"
        stated.write_text(f"{stated.read_text('utf-8')}language: de\n", "utf-8")
        (one,) = examine_swapped(shop, "", ("mdf-18",)).tried
    assert one.table.verdict == "Abgelehnt: 1 Sache hält nicht mehr."
    assert one.table.reason == "board is reckoned for 5.7 kg, not 12 kg", "makers read English"
    assert one.table.refused == ("Board ist für 5,7 kg berechnet, nicht für 12 kg",)


def test_what_proving_says_in_english_alone_is_told_as_that() -> None:
    found = proved(SHELF).points[0]
    odd = Finding(rule="odd", words="`board` is odd", severity=Severity.ERROR)
    reader, cut = Reader(language="de"), Cut(settled=found, layout=None)
    (told,) = swap_table(cut, None, [("ply", "MDF")], [odd], (reader, "EUR")).refused
    assert told == "Die Prüfung sagt dazu auf Englisch: „Board is odd“"
