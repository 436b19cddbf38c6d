"""A plan's cut settings against the maker's log, in the maker's words and unit."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.basis.reader import INCHES
from kerfolio.basis.said import told as in_words
from kerfolio.model.outcome import Grade, Outcome
from kerfolio.model.router import Router
from kerfolio.model.statement import Named
from kerfolio.model.trial import Trial
from kerfolio.proving.prove import prove_plan
from tests.plans import workshop
from tests.proving.two_panels import plan_text

RULES = ("cut-logged-poor", "cut-logged-better", "log-disagrees", "log-outdated")


def text() -> str:
    setting = "cutter: compression-6, speed: 18000 rpm, feed: 4000 mm/min, passes: [8, rest]"
    return plan_text(head=f"cuts:\n  profile: {{sheet: ply, {setting}, skim: 0.3, bridges: 4}}")


def entry(day: int, grade: Grade, feed: float, **more: object) -> Trial:
    plain = Trial(
        id=f"entry-{day}",
        date=date(2026, 5, day),
        stock=Named("birch-plywood-18"),
        cutter=Named("compression-6"),
        speed_rpm=18000,
        feed_mm_per_min=feed,
        passes=(8.0, 10.1),
        outcome=Outcome(whole=grade),
        place=Place("log/may.yaml", 10 * day, 5),
    )
    return replace(plain, **more)  # type: ignore[arg-type]


SANDED = entry(3, Grade.TO_SAND, 4000)
CLEAN = (entry(4, Grade.CLEAN, 4500), entry(5, Grade.CLEAN, 4500))


def told(*trials: Trial, machine: Router | None = None) -> list[Finding]:
    found = workshop(text())
    plan = replace(found.plans[0], machine=machine or Router())
    return [e for e in prove_plan(plan, found.stock, trials).findings if e.rule in RULES]


def test_what_came_out_better_twice_is_told_with_the_line_to_write() -> None:
    (found,) = told(SANDED, *CLEAN)
    assert (found.rule, found.severity, found.subject) == ("cut-logged-poor", "warning", "profile")
    assert found.place.file == "plans/rack/plan.yaml"
    assert found.place.line
    assert found.message == (
        "`profile`: cut like this came out `to sand` on 3 May 2026; "
        "with a feed of 4500 mm/min it came out `clean`, twice"
    )
    assert found.advice == (
        "Write `feed: 4500 mm/min`. Logged in log/may.yaml:50:5, log/may.yaml:40:5 and "
        "log/may.yaml:30:5."
    )


def test_every_difference_is_told_with_its_line() -> None:
    better = entry(4, Grade.CLEAN, 4500, speed_rpm=16000, passes=(6.0, 12.1))
    (found,) = told(SANDED, better)
    assert found.severity == "note"
    assert (
        "with a feed of 4500 mm/min, 16000 rpm and passes of 6 mm and 12.1 mm it came"
        in found.message
    )
    lines = "Write `feed: 4500 mm/min`, `speed: 16000 rpm` and `passes: [6 mm, rest]`."
    assert lines in found.advice


def test_what_must_be_mended_is_warned_of_even_where_nothing_is_better() -> None:
    (found,) = told(entry(3, Grade.TO_MEND, 4000))
    assert found.severity == "warning"
    assert "Nothing better is logged" in found.advice


def test_nothing_is_said_where_the_log_is_silent_or_content() -> None:
    assert told() == []
    assert told(*CLEAN) == []
    assert told(entry(3, Grade.CLEAN, 4000), *CLEAN) == []
    assert told(entry(3, Grade.NEARLY_CLEAN, 4000)) == []
    assert told(replace(SANDED, stock=Named("birch-plywood-9")), *CLEAN) == []


def test_where_the_log_contradicts_itself_that_is_all_that_is_said() -> None:
    (found,) = told(SANDED, entry(6, Grade.CLEAN, 4000), *CLEAN)
    assert (found.rule, found.severity) == ("log-disagrees", "note")
    assert "Nothing is taken from that." in found.advice


def test_what_the_machine_cannot_do_is_no_better_setting() -> None:
    (found,) = told(SANDED, *CLEAN, machine=Router(feed=4200))
    assert found.severity == "note"
    assert "Nothing better" in found.advice


def test_an_entry_of_another_sheet_is_named_and_not_compared() -> None:
    of_thick = replace(SANDED, plan=Named("rack"), thickness=20.5)
    (found,) = told(of_thick, *CLEAN)
    assert (found.rule, found.severity) == ("log-outdated", "note")
    assert "`entry-3`: cut from 20.5 mm, the plan is for" in found.advice


def test_an_entry_of_an_older_release_is_named_and_still_compared() -> None:
    of_old = replace(SANDED, plan=Named("rack"), release="0.1.0")
    rules = [each.rule for each in told(of_old, *CLEAN)]
    assert sorted(rules) == ["cut-logged-poor", "log-outdated"]


def test_many_outdated_entries_are_one_remark() -> None:
    many = [
        replace(entry(n, Grade.CLEAN, 4500), plan=Named("rack"), release="0.1.0")
        for n in range(1, 6)
    ]
    (found,) = told(*many)
    assert found.message.startswith("5 entries of the log are")
    assert "and 2 more" in found.advice


def test_in_inches_it_is_told_in_inches() -> None:
    (one,) = told(SANDED, entry(4, Grade.CLEAN, 4500, passes=(0.31 * 25.4 / 2, 14.0)))
    words = f"{in_words(one.words, INCHES)} {in_words(one.counsel, INCHES)}"
    assert "a feed of 177 in/min and passes of 0.155 in and" in words
    assert " mm" not in words
