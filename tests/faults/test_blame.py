"""Faults made one at a time in sound plans: the first thing said is the cause.

``python -m tests.tools.fault_table`` prints what is said of each.
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.faults.table import OWN, REACH, Bench, Fault, faults
from tests.plans import altered

FAULTS = faults()

NOT_YET: frozenset[str] = frozenset()
"""Faults of which the first thing said is not yet the cause, or not in full: to be made less."""


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    return Bench(tmp_path_factory.mktemp("faults"))


def _each() -> list[object]:
    marks = {True: [pytest.mark.bench], False: []}
    return [pytest.param(each, id=each.id, marks=marks[each.slow]) for each in FAULTS]


@pytest.mark.parametrize("plan", OWN)
def test_a_sound_plan_gives_no_alarm(bench: Bench, plan: str) -> None:
    found = bench.said_of_sound(plan, True)
    alarms = [each for each in found if each.severity is not Severity.NOTE]
    assert not alarms, "\n".join(map(str, alarms))


@pytest.mark.parametrize("fault", _each())
def test_the_cause_is_named_first(bench: Bench, fault: Fault) -> None:
    told = bench.told(fault)
    if fault.id in NOT_YET:
        assert told.grade != "right", "it is right now: take it out of NOT_YET"
    else:
        assert told.grade == "right", f"{told.grade}: {fault.cause}\n{told.shown}"


@pytest.mark.parametrize("fault", [each for each in FAULTS if each.cure], ids=lambda each: each.id)
def test_another_cure_mends_it_too(bench: Bench, fault: Fault) -> None:
    """So that what the table leaves open is open indeed; the other cure is undoing the edit."""
    text = altered(altered(bench.sound[fault.plan], *fault.edit), *fault.cure)
    left = bench.news(fault.plan, text, ranged=fault.ranged)
    assert not left, "\n".join(map(str, left))


def test_the_table_is_whole() -> None:
    assert len({each.id for each in FAULTS}) == len(FAULTS) >= 60
    assert {each.plan for each in FAULTS} == set(REACH)
    assert {each.id for each in FAULTS} >= NOT_YET
