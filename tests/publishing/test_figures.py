"""The figures of ``plan.json`` and of the lists: masses, times, costs and loads."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from kerfolio.agreement.figure_faults import figure_faults
from kerfolio.basis.reader import METRIC
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.publishing.lists import list_files
from kerfolio.publishing.plan_json import plan_json
from kerfolio.shop.span import RACKING, SPAN_CAUTIONS
from tests.edition.carrying import carrying
from tests.edition.used import sat

EDITION = carrying()
FACTS: dict[str, Any] = json.loads(plan_json(EDITION))


def rows(name: str, edition: Edition = EDITION) -> list[dict[str, str]]:
    text = list_files(edition)[f"lists/{name}.csv"].decode("utf-8")
    return list(csv.DictReader(io.StringIO(text)))


def test_a_plate_s_centre_of_gravity_is_its_middle() -> None:
    """A rectangle's centroid is half way along each side; the shelf's bore lies in its middle."""
    found = {row["part"]: row for row in rows("parts")}
    keys = ("centre_x_mm", "centre_y_mm", "centre_z_mm")
    assert [found["shelf"][key] for key in keys] == ["400", "150", "8.9"]
    assert [found["leg"][key] for key in keys] == ["30", "350", "8.9"]
    (variant,) = FACTS["variants"]
    shelf = next(each for each in variant["parts"] if each["part"] == "shelf")
    assert shelf["centre-of-gravity"] == pytest.approx([400, 150, 8.85])


def test_the_weight_is_the_sum_of_the_parts() -> None:
    masses = [float(row["mass_kg_each"]) * int(row["count"]) for row in rows("parts")]
    assert FACTS["weight"]["total"] == pytest.approx(sum(masses), abs=0.003)
    assert FACTS["weight"]["unweighed"] == []


def test_cutting_adds_up_to_the_time_of_the_sheet() -> None:
    found = rows("cutting")
    assert [row["operation"] for row in found] == ["outline", "moves above the sheet"]
    assert {row["sheet"] for row in found} == {"1"}, "sheet 2 has no cut settings"
    first, second = FACTS["cutting"]["sheets"]
    assert sum(float(row["minutes"]) for row in found) == pytest.approx(first["minutes"], abs=2e-3)
    assert float(found[0]["metres"]) == pytest.approx(first["metres"], abs=1e-3)
    assert (second["known"], second["minutes"]) == (False, 0.0)
    assert {"label", "value", "source"} == set(FACTS["cutting"]["assumptions"][0])


def test_costs_of_all_copies_are_listed() -> None:
    found = rows("costs")
    assert [int(row["copies"]) for row in found if row["what"] == "Oil"] == [1, 2, 3, 4, 5, 6]
    for cost in FACTS["costs"]:
        totals = [row["total"] for row in found if row["copies"] == str(cost["copies"])]
        assert sum(Decimal(each) for each in totals if each) == Decimal(cost["total"])
        assert Decimal(cost["each"]) * cost["copies"] == pytest.approx(
            Decimal(cost["total"]), abs=Decimal("0.03")
        )


def test_what_has_no_price_at_all_has_no_total() -> None:
    lines = [
        replace(each, lines=tuple(replace(row, price=None, total=None) for row in each.lines))
        for each in EDITION.copies
    ]
    for each in lines:
        assert each.total == 0, "a sum of nothing, which nobody is told"
    unpriced = replace(EDITION, copies=tuple(lines))
    facts = json.loads(plan_json(unpriced))
    found = facts["costs"]
    assert list(figure_faults(list_files(unpriced), facts)) == []
    assert {(each["total"], each["each"]) for each in found} == {(None, None)}
    assert len(found[0]["unpriced"]) == len(found[0]["lines"])
    assert all(not row["total"] for row in rows("costs", unpriced))


def test_spans_stand_with_cautions_bounds_and_assumptions() -> None:
    spans = FACTS["spans"]
    assert spans["cautions"] == [say(METRIC, each) for each in (*SPAN_CAUTIONS, RACKING)]
    found = {each["name"]: each for each in spans["results"]}
    shelf = found["top-shelf"]
    assert [(each["ends"], each["joined"]) for each in shelf["sags"]] == [
        *(("free", "loose"), ("clamped", "loose"), ("free", "glued"), ("clamped", "glued"))
    ]
    assert shelf["greatest-load-estimated"] == min(
        shelf["load-for-limit"], shelf["load-for-strength"]
    )
    assert shelf["safety"] == 3.0
    assert shelf["assumptions"]
    assert "why" in found["back"]
    assert "greatest-load-estimated" not in found["back"]
    bare = json.loads(plan_json(replace(EDITION, spans=())))
    assert bare["spans"] == {"cautions": [], "results": []}


def test_a_thing_in_use_stands_with_its_sentence_and_assumptions() -> None:
    assert FACTS["in-use"] is None
    found = json.loads(plan_json(sat()))["in-use"]
    (thing,) = found["things"]
    assert thing["panel"] == "seat"
    assert [each["way"] for each in thing["pushes"]] == [
        "to the left or right",
        "to the front or back",
    ]
    assert thing["sentence"].startswith("For sitting and carrying; not for ")
    assert found["cautions"]
    assert {"label", "value", "source"} == set(found["assumptions"][0])


def test_good_figures_have_no_faults() -> None:
    assert list(figure_faults(list_files(EDITION), FACTS)) == []
