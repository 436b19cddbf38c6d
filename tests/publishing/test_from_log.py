"""Files for what the log measured: thickness of the newest batch, true cut of coupons."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from kerfolio.basis.place import Place
from kerfolio.model.statement import Named
from kerfolio.model.trial import Batch, Trial
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.examine_at import examine_at
from kerfolio.publishing.from_log import FromLog, from_log
from kerfolio.publishing.say import silent
from kerfolio.publishing.stock_text import stock_text
from tests.plans import BOARD, WORKSHOP, lay_down, workshop

LOGGED = Asked(from_log=True)


def entry(day: int, readings: tuple[float, ...], batch: str = "", **more: object) -> Trial:
    plain = Trial(
        date=date(2026, 5, day),
        stock=Named("birch-plywood-18"),
        cutter=Named("compression-6"),
        batch=Batch(name=batch, readings=readings) if readings else None,
        place=Place("log/may.yaml", day, 5),
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def taken(*trials: Trial, asked: Asked = LOGGED) -> FromLog:
    found = replace(workshop(), trials=trials)
    return from_log(asked, found.plans[0], found)


APRIL = entry(1, (17.5, 17.6), "april")
MAY = entry(4, (17.7, 17.9, 17.8), "may")
CUT = entry(6, (), true_cut=5.96)


def test_the_middle_of_the_newest_batch_is_asked_for_and_told_with_its_entry() -> None:
    found = taken(APRIL, MAY)
    assert found.asked is not None
    assert found.asked.sheets == ("ply=17.8000 mm",)
    assert found.asked.cuts == ()
    assert found.told == (
        "`ply`: 17.8 mm, the middle of 3 readings, 17.7 to 17.9 mm of batch `may`; "
        "log/may.yaml:4:5, 4 May 2026",
        "`compression-6`: no true cut is logged; as its name",
    )


def test_another_batch_is_had_by_its_name_and_one_that_is_none_is_refused() -> None:
    found = taken(APRIL, MAY, asked=replace(LOGGED, batch="april"))
    assert found.asked is not None
    assert found.asked.sheets == ("ply=17.5500 mm",)
    (wrong,) = taken(APRIL, MAY, asked=replace(LOGGED, batch="aprl")).findings
    assert (wrong.rule, wrong.advice) == ("nothing-logged", "Did you mean `april`?")
    (none,) = taken(CUT).findings
    assert "log" in none.advice.lower()


def test_readings_further_apart_than_the_fit_takes_are_refused() -> None:
    # The fit is 0.1 mm a side: a slot is 0.2 mm wider than the middle.
    assert taken(entry(4, (17.6, 17.8, 18.0))).findings == ()
    (wrong,) = taken(entry(4, (17.6, 17.8, 18.01))).findings
    assert wrong.rule == "readings-apart"
    assert "17.6 to 18.01 mm" in wrong.message
    assert (
        taken(entry(4, (17.6, 17.8, 18.01)), asked=replace(LOGGED, fits=("0.15",))).findings == ()
    )


def test_coupons_give_the_true_cut() -> None:
    found = taken(MAY, CUT, replace(CUT, date=date(2026, 5, 9), true_cut=5.94))
    assert found.asked is not None
    assert found.asked.cuts == ("ply=-0.0500 mm",)
    assert "`compression-6` cuts 5.95 mm, the middle of 2 readings" in found.told[1]
    assert "9 May 2026" in found.told[1]


def test_what_was_typed_stays() -> None:
    typed = replace(LOGGED, sheets=("17.65",), cuts=("ply=0.02",))
    found = taken(MAY, CUT, asked=typed)
    assert (found.asked, found.told) == (typed, ())
    other = taken(MAY, CUT, asked=replace(LOGGED, cutters=("3",)))
    assert other.asked is not None
    assert other.asked.cuts == ()


LOG = """\
jobs:
  - date: 2026-05-04
    stock: birch-plywood-18
    cutter: compression-6
    metres: 40
    batch: {name: may, readings: [17.6, 17.62]}
  - {date: 2026-05-05, stock: birch-plywood-18, cutter: compression-6, outcome: clean}
"""


def test_the_whole_way_proves_the_plan_there(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD, "board", WORKSHOP)
    (shop / "log").mkdir()
    (shop / "log" / "may.yaml").write_text(LOG, "utf-8")
    found = examine_at(shop, "board", LOGGED, silent, lambda *_: ())
    assert found.laid_out is not None
    assert found.laid_out.proof.points[0].sheet("ply").thickness == 17.61
    assert found.told[0].startswith("`ply`: 17.61 mm, the middle of 2 readings")
    text, _ = stock_text(shop, "cutters", "compression-6")
    assert "  Has cut 40.0 m since it was new (1 entry; 1 job says no metres)." in text
    assert "1 entry is too few to tell" in text
