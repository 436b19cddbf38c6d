"""Readings of batches and of coupons, taken from the log."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from kerfolio.model.statement import Named
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Batch, Trial
from kerfolio.trials.readings import batch_readings, batches, true_cuts

PLY = "birch-plywood-18"
CUTTER = CutterStock(
    name="own", title="Own", diameter=6, kind="up-cut", flutes=2, cutting_length=22
)


def entry(day: int, batch: Batch | None = None, **more: object) -> Trial:
    plain = Trial(date=date(2026, 5, day), stock=Named(PLY), cutter=Named("own"), batch=batch)
    return replace(plain, **more)  # type: ignore[arg-type]


MAY = Batch(name="may", readings=(17.7, 17.9, 17.8))


def test_the_newest_batch_is_read_from_all_its_entries_and_a_copied_list_once() -> None:
    old = entry(1, Batch(name="april", readings=(18.1,)))
    more = Batch(name="may", readings=(17.6,))
    found = batch_readings((old, entry(3, MAY), entry(4, MAY), entry(5, more)), PLY)
    assert found is not None
    assert sorted(found.values) == [17.6, 17.7, 17.8, 17.9]
    assert (found.batch, found.middle, found.day.day) == ("may", 17.75, 5)
    assert (found.least, found.most) == (17.6, 17.9)


def test_a_batch_is_had_by_its_name_and_those_there_are_are_told() -> None:
    log = (entry(1, Batch(name="april", readings=(18.1,))), entry(3, MAY))
    found = batch_readings(log, PLY, "april")
    assert found is not None
    assert found.middle == 18.1
    assert batch_readings(log, PLY, "june") is None
    assert batches(log, PLY) == ("may", "april")


def test_a_thickness_is_a_reading_and_without_a_name_an_entry_stands_alone() -> None:
    log = (entry(1, thickness=17.5), entry(2, thickness=17.9))
    found = batch_readings(log, PLY)
    assert found is not None
    assert found.values == (17.9,)
    named = (
        entry(1, Batch(name="may"), thickness=17.5),
        entry(2, Batch(name="may"), thickness=17.9),
    )
    both = batch_readings(named, PLY)
    assert both is not None
    assert both.middle == 17.7


def test_of_another_sheet_or_unmeasured_there_is_nothing() -> None:
    assert batch_readings((entry(1, MAY, stock=Named("mdf-18")), entry(2)), PLY) is None


def test_coupons_count_since_the_cutter_was_sharpened_last() -> None:
    log = tuple(
        entry(day, true_cut=cut) for day, cut in ((1, 6.0), (8, 5.92), (9, 5.96), (12, 5.9))
    )
    sharpened = replace(CUTTER, sharpened=(date(2026, 4, 1), date(2026, 5, 8)))
    found = true_cuts(log, sharpened)
    assert found is not None
    assert (found.middle, len(found.values), found.day.day) == (5.92, 3, 12)
    every = true_cuts(log, CUTTER)
    assert every is not None
    assert len(every.values) == 4
    assert true_cuts(log, replace(CUTTER, name="other")) is None
    assert true_cuts(log, replace(CUTTER, in_use_since=date(2026, 6, 1))) is None
