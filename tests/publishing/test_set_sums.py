"""All papers of a set agree: what it says of the whole is the sum over what it makes."""

from __future__ import annotations

import csv
import io
import json
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from math import fsum

import pytest

from kerfolio.basis.masses import mass_text
from kerfolio.bundles.archive import unzipped
from kerfolio.edition.edition import Edition
from kerfolio.edition.layout_time import layout_time
from kerfolio.edition.making import set_of
from kerfolio.layouts.layout import SheetLayout
from kerfolio.publishing.bundle import bundle_of
from kerfolio.shop.lists import hardware_counts, known_total, parts_list
from kerfolio.shop.mass import weight_of
from tests.edition.of_set import edition_of_set
from tests.paper.reading import texts
from tests.sets import PAIR, changed

FULL = changed(
    (
        "releases:",
        """\
boards: {rest: {stock: pine-1x2, length: 400, count: 3}}
consumables: [{what: Oil, price: 3.25}]
cuts:
  ply-profile: {sheet: ply, cutter: compression-6, speed: 18000 rpm, feed: 1800 mm/min,
    plunge: 500 mm/min, passes: [7, rest], skim: 0.2}
releases:""",
    ),
    ("minutes: 1, text", "minutes: 1, hardware: {screw-4x30: 2, washer-m6: 1}, text"),
    ("makes: {foot: 2, board: 1}", "makes: {foot: 3, board: 2}"),
    ("[900, 300]", "[1100, 150]"),
)
UNSTEPPED = changed(
    (
        "steps:\n  - {title: Cross the panels, add: [lower, upper], minutes: 2, text: Push.}\n",
        "hardware: [{item: washer-m6, count: 5}]\n",
    ),
    text=PAIR,
)
"""Without steps, hardware belongs to the set alone."""


@pytest.fixture(scope="module", params=[FULL, UNSTEPPED], ids=["full", "unstepped"])
def made(request: pytest.FixtureRequest) -> tuple[Edition, dict[str, bytes]]:
    found = edition_of_set(request.param)
    content = unzipped(bundle_of(found).content)
    return found, {name.split("/", 1)[1]: data for name, data in content.items()}


Made = tuple[Edition, dict[str, bytes]]


def said(content: bytes) -> str:
    return " ".join(" ".join(texts(content)).split())


def rows(files: dict[str, bytes], name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(files[f"lists/{name}.csv"].decode())))


def each_alone(found: Edition) -> Iterator[tuple[str, SheetLayout]]:
    """Yield the pieces of each thing on each sheet: ``1/foot`` and so on."""
    for one in found.made:
        for number in range(1, one.stated.count + 1):
            labels = {
                f"{number}/{piece.label}" if one.stated.count > 1 else piece.label
                for part in one.settled.parts
                for piece in part.pieces
            }
            for sheet in found.layout.sheets:
                own = tuple(each for each in sheet.placements if each.piece in labels)
                yield f"{number}/{one.stated.name}", replace(sheet, placements=own)


def test_pieces(made: Made) -> None:
    found, files = made
    alone = sum(
        one.stated.count * row.count for one in found.made for row in parts_list(one.settled)
    )
    facts = json.loads(files["plan.json"])
    drawn = next(each for each in facts["variants"] if each["fit"] == facts["drawn-for"])
    assert alone == sum(row.count for row in found.parts)
    assert alone == sum(int(row["count"]) for row in rows(files, "parts"))
    assert alone == sum(len(part["pieces"]) for part in drawn["parts"])
    assert alone == sum(len(sheet["pieces"]) for sheet in facts["layout"])
    assert f"{alone} pieces" in said(files["booklet-a4.pdf"])


def test_area(made: Made) -> None:
    found, files = made
    alone = fsum(
        one.stated.count * row.count * row.area
        for one in found.made
        for row in parts_list(one.settled)
    )
    listed = fsum(int(row["count"]) * float(row["area_cm2"]) for row in rows(files, "parts"))
    assert alone == pytest.approx(fsum(row.count * row.area for row in found.parts))
    assert alone == pytest.approx(100 * listed, rel=1e-3)
    placed = [each.part for sheet in found.layout.sheets for each in sheet.placements]
    assert alone == pytest.approx(fsum(found.settled.part(part).area for part in placed))


def test_weight(made: Made) -> None:
    found, files = made
    ones = [(one.stated.count, weight_of(one.settled)) for one in found.made]
    assert all(weight.boards == 0 for _, weight in ones)
    panels = fsum(count * weight.panels for count, weight in ones)
    hardware = fsum(count * weight.hardware for count, weight in ones)
    stated = json.loads(files["plan.json"])["weight"]
    assert stated["panels"] == pytest.approx(panels, abs=1e-4)
    told = found.plan.hardware and not any(step.hardware for step in found.plan.steps)
    shared = stated["boards"] + (stated["hardware"] if told else 0.0)
    assert stated["total"] == pytest.approx(panels + hardware + shared, abs=3e-4)
    listed = fsum(int(row["count"]) * float(row["mass_kg_each"]) for row in rows(files, "parts"))
    assert listed == pytest.approx(panels, abs=0.0005 * sum(row.count for row in found.parts))
    the_set = set_of(found)
    assert the_set is not None
    lines = dict(the_set.rows)
    assert lines["The set weighs"] == mass_text(stated["total"], found.reader)
    assert ("Boards and hardware for all of it" in lines) == (shared > 0)
    if shared:
        assert lines["Boards and hardware for all of it"] == mass_text(shared, found.reader)
    page = re.sub(r"<[^>]*>", "", files["start-here.html"].decode())
    assert mass_text(stated["total"], found.reader) in page


def test_hardware(made: Made) -> None:
    found, files = made
    alone: Counter[str] = Counter()
    for one in found.made:
        for item, count in hardware_counts(one.settled.plan).items():
            alone[item] += one.stated.count * count
    alone = alone or Counter({use.item.name: use.count for use in found.plan.hardware})
    assert alone == {row.item: row.count for row in found.hardware}
    assert alone == {row["item"]: int(row["count"]) for row in rows(files, "hardware")}
    assert alone == json.loads(files["plan.json"])["hardware"]


def test_metres_and_minutes(made: Made) -> None:
    found, files = made
    alone: Counter[str] = Counter()
    for name, sheet in each_alone(found):
        alone[name] += layout_time(found.settled, sheet).metres if sheet.placements else 0.0
    for one in found.made:
        same = {round(alone[f"{n}/{one.stated.name}"], 6) for n in range(1, one.stated.count + 1)}
        assert len(same) == 1, "twins are cut alike"
    whole = fsum(each.metres for each in found.times)
    assert whole == pytest.approx(fsum(alone.values()))
    facts = json.loads(files["plan.json"])
    assert fsum(each["metres"] for each in facts["cutting"]["sheets"]) == pytest.approx(
        whole, abs=1e-4
    )
    minutes = sum(
        one.stated.count * (step.minutes or 0) for one in found.made for step in one.stated.steps
    )
    assert found.plan.minutes == minutes
    stated = fsum(step["times"] * (step["minutes"] or 0) for step in facts["steps"])
    assert stated == minutes


def test_sheets_boards_and_costs(made: Made) -> None:
    found, files = made
    facts = json.loads(files["plan.json"])
    assert sum(int(row["count"]) for row in rows(files, "sheets")) == len(found.layout.sheets)
    assert found.copies[0].sheets == len(found.layout.sheets)
    boards = (
        [(row["board"], int(row["count"])) for row in rows(files, "boards")] if found.boards else []
    )
    assert boards == [(row.name, row.count) for row in found.boards]
    assert [(each["name"], each["count"]) for each in facts["boards"]] == boards
    listed = [row for row in rows(files, "costs") if row["copies"] == "1"]
    total = sum((Decimal(row["total"]) for row in listed if row["total"]), Decimal(0))
    assert total == found.copies[0].total == known_total(found.costs)
    stated = facts["costs"][0]["total"]  # of what has no price there is none
    assert (stated is None and not total) or Decimal(stated) == total
    if total:
        assert re.search(rf"In all\s+{total}", said(files["booklet-a4.pdf"]))
