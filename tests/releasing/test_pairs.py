"""Whether what is told of two releases is right: the answers stand in ``pairs.py``."""

from __future__ import annotations

from functools import cache

import pytest

from kerfolio.assembly.poses import put_together
from kerfolio.model.release_record import ReleaseRecord
from kerfolio.releasing.change import ReleaseChange, change_between
from kerfolio.releasing.recording import corners_of, record_of
from tests.plans import workshop
from tests.releasing.pairs import CASES, Case


def with_changes(text: str, changes: tuple[tuple[str, str], ...]) -> str:
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


@cache
def recorded(text: str) -> ReleaseRecord:
    found = workshop(text)
    return record_of(corners_of(found.plans[0], found.stock))


def compared(case: Case) -> ReleaseChange:
    base = with_changes(case.plan, case.base)
    return change_between(recorded(base), recorded(with_changes(base, case.change)))


@pytest.mark.parametrize("name", CASES)
def test_the_class_and_what_to_cut_anew_are_right(name: str) -> None:
    case = CASES[name]
    change = compared(case)
    assert change.class_ is case.weight, case.why
    assert set(change.anew) == set(case.anew), case.why
    assert set(change.over) == set(case.over), case.why
    assert {frozenset(each) for each in change.together} == {frozenset(e) for e in case.together}
    states = {each.name: each.state for each in change.parts}
    assert [(part, states[part]) for part, _ in case.states] == [*case.states]


def test_half_of_the_pairs_at_least_are_derived() -> None:
    derived = [each for each in CASES.values() if each.derived]
    assert len(CASES) >= 20
    assert len(derived) * 2 >= len(CASES)


@pytest.mark.parametrize("name", CASES)
def test_both_releases_go_together(name: str) -> None:
    case = CASES[name]
    base = with_changes(case.plan, case.base)
    for text in (base, with_changes(base, case.change)):
        found = workshop(text)
        for each in corners_of(found.plans[0], found.stock):
            together = put_together(each)
            assert together is not None
            assert not together.gaps


@pytest.mark.parametrize("name", CASES)
def test_a_release_compared_with_itself_is_the_same(name: str) -> None:
    case = CASES[name]
    record = recorded(with_changes(case.plan, case.base))
    assert change_between(record, record).nothing
