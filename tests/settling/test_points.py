"""The points that a plan is proved at for its whole range."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.proved_words import proved_words
from kerfolio.model.plan import Ladder
from kerfolio.model.statement import Amount
from kerfolio.settling.points import RANDOM, RANDOM_OBLIQUE, more_points, proof_points
from kerfolio.settling.variant import drawn_variant
from tests.paper.editions import stool
from tests.plans import RACK, proved, workshop
from tests.settling.panels import settled_plan, stated

WIDE = RACK.replace("17.6 to 18.2 by 0.2, drawn-for: 17.6", "17.2 to 18.6")
CHOICE = WIDE.replace("fit: 0.1", "fit: {value: 0.1, reader: 0.05 to 0.2}, ready-made: 18.26 mm")


def labels(plan: str) -> list[str]:
    found = workshop(plan)
    return [each.label for each in proof_points(found.plans[0], found.stock)]


def test_corners_drawn_middle_and_chance() -> None:
    found = labels(WIDE)
    assert (found[0], found[-1]) == ("17.2mm", "18.6mm")
    assert {"17.7mm", "17.9mm"} <= set(found), "as drawn, and the middle"
    assert len(found) == 4 + RANDOM
    assert labels(WIDE) == found, "the same on every run"


def test_ready_made_thicknesses_and_the_ends_of_fits_are_looked_at() -> None:
    found = labels(CHOICE)
    more = {"18.26mm", "17.7mm-fit-0.05mm", "17.7mm-fit-0.2mm", "18.6mm-fit-0.2mm"}
    assert set(found) == {*labels(WIDE), *more}
    assert (found[0], found[-1]) == ("17.2mm", "18.6mm"), "the plan's own fit at both ends"


def test_a_plan_of_one_thickness_has_one_point() -> None:
    assert labels(RACK.replace("17.6 to 18.2 by 0.2", "17.8")) == ["17.8mm"]


def test_points_that_share_a_label_in_inches_are_all_looked_at() -> None:
    # 11.99 and 12 mm are both 0.472 in: one by chance must not stand for the one that is drawn.
    found = workshop(WIDE)
    plan, stock = replace(found.plans[0], units="in"), found.stock
    ladder = Ladder(first=Amount("11.99 mm"), last=Amount("12 mm"))
    sheets = tuple(replace(each, published_for=ladder) for each in plan.sheets)
    plan = replace(plan, sheets=sheets)
    drawn = drawn_variant(plan, stock)
    assert drawn in proof_points(plan, stock)
    thick = {mm for each in proof_points(plan, stock) for _, mm in each.thickness}
    assert thick == {11.99, 12.0}


def test_several_sheets_are_looked_at_in_all_corners() -> None:
    plan, stock = stated("h: {hole: {at: [30, 30], diameter: 8}}", ladder="17.2 to 18.6")
    use = replace(plan.sheets[1], published_for=replace(plan.sheets[0].published_for))  # type: ignore[type-var]
    points = proof_points(replace(plan, sheets=(plan.sheets[0], use)), stock)
    both = {tuple(mm for _, mm in each.thickness) for each in points}
    assert {(a, b) for a in (17.2, 18.6) for b in (17.2, 18.6)} <= both


def test_oblique_plans_get_more_points_by_chance() -> None:
    slot = "s: {{slot: {{at: [200, 150], length: 60, angle: {angle}, takes: ply}}}}"
    assert more_points(settled_plan(slot.format(angle=90), ladder="17.2 to 18.6")) == ()
    oblique = settled_plan(slot.format(angle=30), ladder="17.2 to 18.6")
    assert len(more_points(oblique)) == RANDOM_OBLIQUE


def test_what_was_proved_is_told_once() -> None:
    edition = stool()
    points = tuple(each.variant for each in edition.variants)
    assert proved_words(replace(edition, proved=points)) == (
        "Proved from 17.6 to 18 mm: at the thinnest and the thickest sheet, as drawn."
    )
    more = (*points, replace(points[0], label="17.73mm"))
    assert proved_words(replace(edition, proved=more)).endswith("as drawn and at 1 point between.")
    assert proved_words(replace(edition, proved=points[:1])) == "Proved at 17.8 mm."


def test_a_fault_between_the_ends_is_found() -> None:
    """The hole comes near the edge in the middle of the range alone, where it breaks out."""
    near = "at: [5 + 40*(thickness(ply) - 17.9)*(thickness(ply) - 17.9), 30], for"
    text = WIDE.replace("at: [30, 30], for", near).replace("fit: 0.1", "fit: 0.1, drawn-for: 17.2")
    (found,) = [each for each in proved(text).findings if each.rule == "breaks-out"]
    assert "(at 17." in found.message or "(at 18." in found.message
    assert not found.message.endswith(("(at 17.2mm)", "(at 18.6mm)"))
