"""Whether the maker's own class is questioned where the pieces say something else."""

from __future__ import annotations

from datetime import date

import pytest

from kerfolio.model.plan import Release
from kerfolio.releasing.weighing import doubts, step_for
from tests.releasing.pairs import CASES
from tests.releasing.test_pairs import compared

DAY = date(2026, 11, 30)


def said(name: str, version: str, *, errata: bool) -> list[str]:
    before = Release(version="1.2.0", date=DAY, changed="")
    after = Release(version=version, date=DAY, changed="", errata=errata)
    return list(doubts(compared(CASES[name]), before, after))


@pytest.mark.parametrize(
    ("name", "version", "errata", "doubted"),
    [
        ("slot moved", "1.2.1", True, False),
        ("slot moved", "1.3.0", True, False),
        ("slot moved", "1.2.1", False, True),
        ("slot moved", "1.3.0", False, True),
        ("slot moved", "2.0.0", False, False),
        ("text only", "1.2.1", False, False),
        ("text only", "1.2.1", True, True),
        ("new fit", "1.3.0", False, False),
        ("new fit", "1.2.1", False, True),
        ("new fit", "1.3.0", True, True),
        ("hardware", "1.2.1", False, True),
    ],
)
def test_a_class_that_does_not_fit_is_questioned(
    name: str, version: str, errata: bool, doubted: bool
) -> None:
    assert bool(said(name, version, errata=errata)) is doubted


def test_what_is_chosen_by_itself() -> None:
    steps = {name: step_for(compared(CASES[name])) for name in ("text only", "new fit", "wider")}
    assert steps == {"text only": "fix", "new fit": "change", "wider": ""}
