"""Entries of the log that a plan has gone past."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from kerfolio.model.statement import Named
from kerfolio.model.trial import Batch, Trial
from kerfolio.shop.outdated import CutSince, Outdated, PlanNow, now_of, outdated, outdated_of
from tests.plans import workshop

NOW = PlanNow(
    name="rack",
    title="Rack",
    version="1.2.0",
    releases=("1.0.0", "1.1.0", "1.2.0"),
    sheets=(("birch-plywood-15", 14.6, 15.4),),
)
TRIAL = Trial(
    id="t",
    date=date(2026, 5, 3),
    plan=Named("rack"),
    stock=Named("birch-plywood-15"),
    thickness=15.0,
    release="1.2.0",
)


def test_a_plan_now_is_its_sheets_with_their_ranges_and_its_releases() -> None:
    found = workshop()
    now = now_of(found.plans[0], found.stock)
    assert now.sheets == (("birch-plywood-18", 17.6, 18.2),)
    assert now.releases == ("1.0.0",)


@pytest.mark.parametrize(
    ("trial", "why"),
    [
        (TRIAL, Outdated()),
        (replace(TRIAL, thickness=15.8), Outdated()),
        (replace(TRIAL, stock=Named("birch-plywood-18")), Outdated(sheet="birch-plywood-18")),
        (replace(TRIAL, thickness=18.0), Outdated(thick=18.0, now=(14.6, 15.4))),
        (replace(TRIAL, stock=None, thickness=18.0), Outdated(thick=18.0, now=(14.6, 15.4))),
        (
            replace(TRIAL, thickness=None, batch=Batch(readings=(17.9, 18.0, 18.2))),
            Outdated(thick=18.0, now=(14.6, 15.4)),
        ),
        (replace(TRIAL, release="0.9.0"), Outdated(gone="0.9.0")),
        (replace(TRIAL, release="1.0.0"), Outdated(since=("1.1.0", "1.2.0"))),
        (replace(TRIAL, release="", stock=None, thickness=None), Outdated()),
    ],
)
def test_an_entry_is_outdated_by_its_sheet_its_thickness_or_its_release(
    trial: Trial, why: Outdated
) -> None:
    assert outdated(trial, NOW) == why
    assert bool(why) == (why != Outdated())


def test_only_entries_of_the_plan_are_asked() -> None:
    old = replace(TRIAL, thickness=18.0)
    found = outdated_of(
        (TRIAL, old, replace(old, plan=Named("stool")), replace(old, plan=None)), NOW
    )
    assert [trial for trial, _ in found] == [old]


def since(version: str, **same: tuple[str, ...]) -> CutSince:
    return CutSince(version=version, by="1.1.0", **same)


RECORDED = replace(
    NOW,
    since=(
        since("1.0.0", parts=("rail",), sheets=()),
        since("1.1.0", parts=("rail", "side"), sheets=("birch-plywood-15",)),
    ),
)


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({"release": "1.0.0", "part": Named("rail")}, Outdated(since=("1.2.0",))),
        (
            {"release": "1.0.0", "part": Named("side")},
            Outdated(otherwise="1.1.0", since=("1.2.0",)),
        ),
        ({"release": "1.0.0"}, Outdated(otherwise="1.1.0", since=("1.2.0",))),
        ({"release": "1.1.0"}, Outdated(since=("1.2.0",))),
        ({"release": "1.1.0", "stock": None}, Outdated(since=("1.2.0",))),
        ({"release": "1.2.0"}, Outdated()),
        ({"release": "0.9.0"}, Outdated(gone="0.9.0")),
    ],
)
def test_where_releases_have_records_what_they_cut_otherwise_decides(
    more: dict[str, object], why: Outdated
) -> None:
    assert outdated(replace(TRIAL, **more), RECORDED) == why  # type: ignore[arg-type]


def test_where_the_newest_has_a_record_a_release_that_changed_nothing_of_it_is_no_reason() -> None:
    to_last = replace(since("1.0.0", parts=("rail",)), by="1.2.0")
    now = replace(NOW, since=(to_last, replace(to_last, version="1.2.0")))
    old = replace(TRIAL, release="1.0.0")
    assert not outdated(replace(old, part=Named("rail")), now)
    assert outdated(replace(old, part=Named("side")), now) == Outdated(otherwise="1.2.0")
    assert outdated(replace(old, release="1.1.0"), now) == Outdated(since=("1.2.0",))
