"""A thing under a person: braced or not, bolted or not, and what it fits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.in_use import (
    BRACE,
    PANEL,
    SHOULDER,
    InUse,
    fits,
    in_use_of,
)
from kerfolio.assembly.stability import stability_of, top_panel
from kerfolio.basis.finding import Severity
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.model.use import USES
from tests.assembly.hand_made import across, box, level, plan
from tests.assembly.in_use_checks import bench, in_use_checks, used
from tests.plans import proved
from tests.shop.outside_check import OutsideCheck

JOINTS_ALONE = "nothing but its joints resists pushing"


@pytest.mark.parametrize("check", tuple(in_use_checks()), ids=lambda each: each.what)
def test_a_figure_by_hand(check: OutsideCheck) -> None:
    assert check.ours() == pytest.approx(check.value, rel=0.02), check.source


def test_there_are_at_least_twelve_of_them() -> None:
    assert len(list(in_use_checks())) >= 12


def test_the_highest_broad_panel_carries() -> None:
    low = level("low", 100.0, box(0, 0, 600, 400))
    top = level("top", 400.0, box(0, 0, 500, 400))
    ledge = level("ledge", 700.0, box(0, 0, 600, 80))
    side = across("side", 0.0, box(0, 0, 400, 900))
    found = top_panel(plan([low, top, ledge, side], []))
    assert found is not None
    assert found.label == "top"
    assert top_panel(plan([side], [])) is None


def test_two_sides_and_a_seat_have_nothing_but_their_joints() -> None:
    side, front = used(bench()).pushes
    assert (side.stiffened, side.by) == ("", ())
    assert (front.stiffened, front.by) == (PANEL, ("side.left", "side.right"))
    # Four tabs stand up into the seat; none goes to the side.
    assert (side.tabs, side.lean) == (0, None)


def test_a_low_rail_is_too_little_and_a_deep_one_a_panel() -> None:
    """60 of 400 mm are no quarter; 120 are; 220 are more than half."""
    found = used(bench(rail=True)).pushes[0]
    assert (found.stiffened, found.tabs) == ("", 2)
    deeper = bench(rail=True).replace("[682.3, 60]", "[682.3, 120]")
    assert used(deeper).pushes[0].stiffened == BRACE
    deep = bench(rail=True).replace("[682.3, 60]", "[682.3, 220]")
    assert (used(deep).pushes[0].stiffened, used(deep).pushes[0].by) == (PANEL, ("rail",))


@pytest.mark.parametrize(
    ("head", "play"),
    [
        ("place: shed", 0.1 + 0.25),  # dry, it has not swollen yet
        ("finish: {of: varnish, coats: 2, when: before assembly, film: 0.05}", 0.1),
    ],
)
def test_it_leans_by_what_finish_leaves_while_it_is_dry(head: str, play: float) -> None:
    """Geometry: H x 2 f / e, as in the outside check of a bench with a rail."""
    text = bench(rail=True).replace("sheets:", f"{head}\nsheets:", 1)
    assert used(text).pushes[0].lean == pytest.approx(417.7 * 2 * play / 17.7, rel=1e-3)


def test_bolts_through_the_uprights_draw_up_the_shoulders() -> None:
    text = bench(rail=True)
    bolted = text.replace(
        "      rail-slots:",
        "      bolt: {hole: {at: [150, 230], for: bolt-m6x50}}\n      rail-slots:",
    ).replace(
        "      right-tabs: {tabs",
        "      nuts: {hole: {at: [[25, 48], [657, 48]], for: barrel-nut-m6}}\n"
        "      right-tabs: {tabs",
    )
    assert bolted.count("hole:") == 2
    found = used(bolted).pushes[0]
    assert (found.stiffened, found.lean) == (SHOULDER, None)


def judged(found: InUse, *, placed: str = "") -> dict[str, str]:
    settled = proved(bench()).drawn
    assert settled is not None
    stated = replace(settled.plan, uses=USES, placed=placed)
    judged = fits(stated, found, sits=True, carries=True)
    return {each.use: told(each.why, METRIC) for each in judged}


def test_what_it_fits_and_why_not() -> None:
    found = judged(used(bench()))
    assert found["sit in the middle"] == found["stand things on"] == found["store things"] == ""
    assert found["plane along"] == f"{JOINTS_ALONE} to the left or right"
    # mu m g = 0.3 x 8 kg x 9.8 = 23 N: 20 N do not move it, 200 N do.
    deep = used(bench(rail=True).replace("[682.3, 60]", "[682.3, 220]"))
    assert judged(deep)["plane along"] == ""
    strong = replace(deep, person=replace(deep.person, push=200.0))
    slides = "it slides to the left or right before it takes the push"
    assert judged(strong)["plane along"] == slides
    assert judged(strong, placed="wall")["plane along"] == ""
    light = replace(used(bench()), middle_tips=True)
    assert judged(light)["sit in the middle"] == "it tips with the person in its middle"


def test_more_than_its_spans_bear_is_no_use_of_it() -> None:
    settled = proved(bench()).drawn
    assert settled is not None
    (first, *_) = fits(settled.plan, used(bench()), sits=False, carries=True)
    assert first.use == "sit in the middle"
    assert told(first.why, METRIC) == "more is asked of it than its estimates allow"


def test_a_use_that_does_not_fit_is_a_warning() -> None:
    found = [each for each in proved(bench()).findings if each.rule == "use-unfit"]
    assert [each.subject for each in found] == ["lean on", "plane along"]
    assert all(each.severity is Severity.WARNING for each in found)
    assert found[1].message == f"`plane along`: {JOINTS_ALONE} to the left or right"


def test_storing_alone_asks_for_nothing() -> None:
    (made,) = proved(
        bench()
        .replace("[sit in the middle, stand", "[store")
        .replace("things on, lean on, plane along]", "things]")
    ).made
    build = made.build
    assert build is not None
    whole = build.drawn.assembled
    assert build.settled.plan.uses == ("store things",)
    assert in_use_of(build.settled, whole, stability_of(whole)) is None
