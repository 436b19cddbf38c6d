"""Findings read back from JSON tell what they told before."""

from __future__ import annotations

import json

import pytest

from kerfolio.basis.finding import Axial, Mark, Measured, Meeting, Ring, in_unit, warning
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
    meeting=Meeting(
        pieces=("wedge",),
        others=("rail", "post"),
        measured=Measured(a=(0.5, 1.0, 2.0), b=(0.5, 1.0, 4.0), word="gap"),
    ),
    axial=Axial(
        place=Place("plans/a/plan.yaml", 9, 4),
        number=2,
        at=17.5,
        measured=Measured(a=(17.5, 0.0), b=(17.5, 2.25), word="off"),
        aside=(0.0, 0.0, 1.0),
        others=("cover",),
        variant="17.8mm",
    ),
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
    assert (after[0].meeting, after[0].axial) == (FINDING.meeting, FINDING.axial)
    assert json.loads(json.dumps(findings_json(after))) == rows
