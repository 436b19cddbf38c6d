"""Findings: how they read, weigh and sort."""

from __future__ import annotations

from kerfolio.basis.finding import error, has_errors, in_order, note, warning
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place

PLACE = Place("plans/stool/plan.yaml", 12, 5)


def test_a_finding_reads_with_file_line_and_column() -> None:
    text = str(error("unknown-key", "unknown key `hight`", PLACE, "Did you mean `height`?"))
    assert text == (
        "plans/stool/plan.yaml:12:5: error: unknown key `hight` [unknown-key]\n"
        "    Did you mean `height`?"
    )


def test_only_errors_stop() -> None:
    assert has_errors([note("a", "a", PLACE), error("b", "b", PLACE)])
    assert not has_errors([note("a", "a", PLACE), warning("b", "b", PLACE)])


def test_order_is_by_place_and_repeats_fall_out() -> None:
    late, early = error("a", "a", Place("b.yaml", 9, 1)), error("z", "z", Place("b.yaml", 2, 1))
    assert in_order([late, early, late]) == (early, late)


def test_the_nearest_name_is_offered_else_all() -> None:
    assert did_you_mean("hight", ["height", "width"]) == "Did you mean `height`?"
    assert did_you_mean("zzz", ["height", "width"]) == "Known here: `height`, `width`."
    assert did_you_mean("zzz", []) == "None is known here."
