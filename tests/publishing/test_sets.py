"""A set published: one layout, the sums of the set in every list, each thing drawn once."""

from __future__ import annotations

import csv
import io
import json
import re
from collections import Counter
from math import fsum, isclose

import pytest

from kerfolio.bundles.archive import unzipped
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import set_of, wholes_of
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.shop.mass import weight_of
from tests.edition.of_set import edition_of_set
from tests.publishing.spoiling import faults_of
from tests.sets import SET


@pytest.fixture(scope="module")
def edition() -> Edition:
    return edition_of_set(SET)


@pytest.fixture(scope="module")
def bundle(edition: Edition) -> Bundle:
    return bundle_of(edition)


@pytest.fixture(scope="module")
def files(bundle: Bundle) -> dict[str, bytes]:
    return {name.split("/", 1)[1]: data for name, data in unzipped(bundle.content).items()}


def test_all_papers_of_a_set_agree(bundle: Bundle) -> None:
    assert faults_of(bundle) == ()


def test_the_lists_are_those_of_the_set(edition: Edition, files: dict[str, bytes]) -> None:
    rows = list(csv.DictReader(io.StringIO(files["lists/parts.csv"].decode())))
    assert {row["part"]: (row["count"], row["pieces"]) for row in rows} == {
        "lower": ("2", "1/lower 2/lower"),
        "upper": ("2", "1/upper 2/upper"),
        "board": ("1", "board"),
    }
    hardware = list(csv.DictReader(io.StringIO(files["lists/hardware.csv"].decode())))
    assert [(row["item"], row["count"]) for row in hardware] == [("washer-m6", "6")]
    # By hand: two feet and one board.
    parts = sum(each.stated.count * weight_of(each.settled).total for each in edition.made)
    assert isclose(edition.weight.total, parts, rel_tol=1e-9)
    listed = fsum(float(row["count"]) * float(row["mass_kg_each"]) for row in rows)
    assert isclose(edition.weight.panels, listed, abs_tol=0.003)


def test_the_set_is_laid_out_on_one_sheet(edition: Edition) -> None:
    laid = Counter(p.piece for sheet in edition.layout.sheets for p in sheet.placements)
    assert laid == Counter(["1/lower", "2/lower", "1/upper", "2/upper", "board"])
    assert len(edition.layout.sheets) == 1
    assert dict(edition.layout.bounds) == {"ply": 1}


def test_the_plan_file_tells_what_is_made_and_how_often(files: dict[str, bytes]) -> None:
    facts = json.loads(files["plan.json"])
    told = [(each["name"], each["count"], each["lies-on"]) for each in facts["makes"]]
    assert told == [("foot", 2, []), ("board", 1, ["foot"])]
    assert [(each["overhang"], each["held"]) for each in facts["makes"]] == [
        (None, None),
        (110, "lying"),
    ]
    assert [(step["times"], step["add"]) for step in facts["steps"]] == [
        (2, ["1/lower", "2/lower", "1/upper", "2/upper"]),
        (1, ["board"]),
    ]
    assert facts["steps"][0]["hardware"] == {"washer-m6": 6}


def test_what_is_made_is_drawn_once_and_told_how_often(
    edition: Edition, bundle: Bundle, files: dict[str, bytes]
) -> None:
    assert {"foot-assembled", "foot-exploded", "set", "step-1", "step-2"} <= set(bundle.pictures)
    the_set = set_of(edition)
    assert the_set is not None
    assert the_set.holds == "A set: 2 × Foot and 1 × Board."
    lies = dict(the_set.rows)["Board lies on"]
    assert lies == "2 × Foot, loose, 110 mm (4 11/32 in) beyond the outermost"
    assert [whole.title for whole in wholes_of(edition)] == ["Foot: make 2"]
    page = files["start-here.html"].decode()
    assert page.count("Foot: make 2") >= 2
    assert "A set: 2 × Foot and 1 × Board." in page
    assert not re.search(r'id="[^"]*/', page)


def test_the_board_is_shown_coming_down_on_both_feet(bundle: Bundle) -> None:
    assert "New: piece C moving down to the 4 that stand" in bundle.pictures["step-2"]


def test_minutes_count_as_often_as_a_step_is_done(edition: Edition) -> None:
    assert edition.plan.minutes == 5


def test_a_set_is_told_how_it_is_stored(edition: Edition, files: dict[str, bytes]) -> None:
    """Four panels of 260 x 220, turned, are 880 of the 900 that the board is long: two layers."""
    the_set = set_of(edition)
    assert the_set is not None
    rows = dict(the_set.rows)
    assert rows["Flat, all of it in one pile"].startswith("900 × 300 × 60 mm (")
    assert rows["Flat, small pieces side by side"].startswith("900 × 300 × 24 mm (")
    assert rows["Flat, carried by"].startswith("one person: ")
    (foot,) = wholes_of(edition)
    assert dict(foot.rows)["A second one on top of it"].startswith(
        "stacks, and adds its full height, 220 mm ("
    )
    (top,) = json.loads(files["plan.json"])["on-top"]
    assert (top["thing"], top["lift"], top["rests"]) == ("foot", 220, True)
