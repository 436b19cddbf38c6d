"""Findings read back from JSON tell what they told before."""

from __future__ import annotations

import json

import pytest

from kerfolio.basis.finding import Mark, Ring, in_unit, warning
from kerfolio.basis.measures import number
from kerfolio.basis.place import Place
from kerfolio.basis.said import named, said, written
from kerfolio.commands.telling import as_json
from kerfolio.keeping.findings import findings_json, findings_of

MARK = Mark(part="side", rings=(Ring(1.5, 2.0, 3.25),), variant="17.8mm", at=said("at {}", "18 mm"))
FINDING = warning(
    "slot-wide",
    said("{} takes {} pieces of \x1b[1m", named("rail.slots.3"), number("pieces", 3)),
    Place("plans/a/plan.yaml", 3, 4),
    written("18 mm", "3/4 in"),
    subject="rail.slots.3",
    mark=MARK,
)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_they_tell_the_same(unit: str) -> None:
    before = in_unit([FINDING], unit)
    rows = json.loads(json.dumps(findings_json(before)))
    after = findings_of(rows)
    assert as_json(after) == as_json(before)
    assert list(map(str, after)) == list(map(str, before))
    assert after[0].mark is not None
    assert after[0].mark.rings == MARK.rings
    assert json.loads(json.dumps(findings_json(after))) == rows
