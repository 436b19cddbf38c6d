"""Room for film, sanding and swelling, reckoned by hand and measured in cut files.

The figures behind it are compared with published ones in ``damp_checks.py``.
"""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.model.climate import CLIMATES, DRY, HEATED, OUTDOORS, SHED
from kerfolio.settling.moisture import STILL, board_moisture, equilibrium_moisture, swelling_in
from tests.plans import proved
from tests.proving.test_play import in_inches, joined
from tests.settling.damp_checks import film, movement
from tests.settling.test_clearance import at, feature, openings, sides, slotted

RAIL = "rail:\n    sheet: board"
VARNISHED = "finish: {of: varnish, coats: 3, when: before assembly, film: 0.03, sanding: 0.05}"


def placed(head: str, fit: str = "") -> str:
    """Return a plan of one slot, with what it says of its place and its finish."""
    return slotted({"": fit}, head=head)


def test_damper_places_have_damper_wood() -> None:
    for taken in (equilibrium_moisture, board_moisture):
        mosts = [taken(each.most) for each in CLIMATES]
        assert mosts == sorted(mosts)
        assert all(taken(each.least) < taken(each.most) for each in CLIMATES)
    assert CLIMATES == (DRY, HEATED, SHED, OUTDOORS)


def test_what_dries_where_it_lives_wants_no_room() -> None:
    """Plywood is bought at 10 %; a dry room's 50 % humidity dries it to 9.3 %."""
    found = swelling_in(DRY, movement("hardwood-plywood"))
    assert (found.thickness, found.plane) == (0.0, 0.0)
    assert found.across > 0
    assert swelling_in(SHED, None) == STILL


@pytest.mark.parametrize(
    ("place", "swelling"),
    # (12.00, 18.00, 23.94 % less the 10 % it is bought at) x 0.35 % x 17.8 mm / 2, to 0.01 mm
    [("dry", 0.0), ("heated room", 0.06), ("shed", 0.25), ("outdoors", 0.43)],
)
def test_a_slot_has_room_for_what_swells(place: str, swelling: float) -> None:
    width, ends = sides(at(placed(f"place: {place}")), "slot-1")
    assert width == pytest.approx(0.1 + swelling)
    assert ends == pytest.approx(0.1)


def test_a_plan_of_inches_has_the_same() -> None:
    """8.00 % more moisture x 0.35 % x 0.7 in / 2 = 0.249 mm on each side."""
    found = proved(in_inches(f"place: shed\n{joined()}")).drawn
    assert found is not None
    room = feature(found, "slot").room
    assert room is not None
    assert (room.needs.swelling, room.width) == pytest.approx((0.25, 0.1 * 25.4 + 0.25))


def test_it_is_in_the_cut_file() -> None:
    settled = at(placed(f"place: shed\n{VARNISHED}\nrelief: {{style: none}}"))
    # two films of 0.09, less 0.05 sanded off, and 0.25 for the damp, on each side
    wide, long = 17.8 + 2 * (0.1 + 0.18 - 0.05 + 0.25), 60 + 2 * (0.1 + 0.18)
    assert openings(settled) == [pytest.approx((wide, long), abs=1e-4)]


def test_a_film_lies_in_joints_only_where_it_is_there_first() -> None:
    before, after = (
        sides(at(placed(f"finish: {{of: varnish, coats: 2, when: {each} assembly}}")), "slot-1")
        for each in ("before", "after")
    )
    assert after == pytest.approx((0.1, 0.1))
    assert before == pytest.approx((0.1 + 0.13, 0.1 + 0.13))  # 2 x 2 x 0.033


@pytest.mark.parametrize(
    ("stated", "mm"),
    [
        ("film: 0.04", 0.16),
        ("wet: 0.1, solids: 0.4", 0.16),
        ("film: 0.04, between-coats: 0.01", 0.14),  # (2 x 0.04 - 0.01) on both sides
    ],
)
def test_a_film_is_as_thick_as_its_coats(stated: str, mm: float) -> None:
    head = f"finish: {{of: paint, coats: 2, when: before assembly, {stated}}}"
    assert sides(at(placed(head)), "slot-1")[0] == pytest.approx(0.1 + mm)
    assert film("0.1", 0.4, coats=2) == pytest.approx(0.08)


def test_what_sanding_takes_makes_slots_narrower() -> None:
    head = "finish: {of: oil, film: 0, sanding: 0.05}"
    assert sides(at(placed(head)), "slot-1")[0] == pytest.approx(0.05)
    deep = "finish: {of: oil, film: 0, sanding: 0.3}"
    assert sides(at(placed(deep)), "slot-1")[0] == pytest.approx(0.0)  # never less than the sheet


def test_a_clearance_of_the_maker_s_own_is_just_that() -> None:
    settled = at(placed("place: shed", ", fit: {width: 0.15}"))
    room = feature(settled, "slot-1").room
    assert room is not None
    assert sides(settled, "slot-1") == pytest.approx((0.15, 0.1))
    assert room.left == pytest.approx(-0.1)


def test_a_purpose_comes_before_it() -> None:
    settled = at(placed("place: shed", ", fit: glued"))
    assert sides(settled, "slot-1")[0] == pytest.approx(0.15 + 0.25)
    room = feature(settled, "slot-1").room
    assert room is not None
    assert (room.fit, room.felt, room.left) == pytest.approx((0.15, 0.15, 0.15))
    assert room.dry == pytest.approx(0.4)


def test_sizes_say_what_they_have_it_for() -> None:
    settled = at(placed(f"place: shed\n{VARNISHED}", ", fit: glued"))
    found = feature(settled, "slot-1")
    assert told(found.width.reason, METRIC) == (
        "17.8 mm sheet + 2 x 0.15 mm glued fit + 2 x 0.38 mm for film, sanding and damp"
    )
    assert (
        told(found.length.reason, METRIC)
        == "60 mm tab + 2 x 0.2 mm glued fit + 2 x 0.18 mm for film"
    )
    sanded = feature(at(placed("finish: {of: oil, film: 0, sanding: 0.05}")), "slot-1")
    assert told(sanded.width.reason, METRIC) == (
        "17.8 mm sheet + 2 x 0.1 mm fit - 2 x 0.05 mm for sanding"
    )


def test_it_is_chosen_once_so_that_files_follow_thickness_and_fit() -> None:
    text = placed(f"place: shed\n{VARNISHED}")
    besides = [
        feature(at(text, thick, fit), "slot-1").width.value - thick - 2 * fit
        for thick in (17.2, 17.8, 18.6)
        for fit in (0.05, 0.2)
    ]
    assert besides == pytest.approx([besides[0]] * 6)


def test_two_notches_share_the_film_at_their_bottoms_and_fingers_do_not_swell() -> None:
    notch = "notch: {notch: {edge: top, at: 150, depth: 60, takes: ply}}"
    row = "fingers: {fingers: {edge: left, count: 5, first: gap, takes: ply}}"
    text = placed(f"place: shed\n{VARNISHED}")
    text = text.replace("features:\n", f"features:\n      {notch}\n      {row}\n", 1)
    settled = at(text)
    crossing, fingers = (feature(settled, name).room for name in ("notch", "fingers"))
    assert crossing is not None
    assert fingers is not None
    assert crossing.needs.ends == pytest.approx(0.09)
    assert crossing.needs.width == pytest.approx(0.38)
    assert (fingers.needs.film, fingers.needs.swelling, fingers.needs.sanded) == (0.18, 0, 0)


def test_an_mdf_shelf_grows_past_the_plywood_it_is_housed_in() -> None:
    """A shed: MDF 8 to 14 %, 0.05 % each: 0.3 %; plywood 8 % x 0.021 %: 0.168 %; of 200 mm."""
    text = slotted({"": ""}, long=200, head="place: shed")
    text = text.replace("sheets:\n", "sheets:\n  board: {stock: mdf-18, size: 2440 x 1220}\n")
    text = text.replace("takes: ply", "takes: board").replace("rail:\n    sheet: ply", RAIL)
    drawn = proved(text).drawn
    assert drawn is not None
    room = feature(drawn, "slot-1").room
    assert room is not None
    assert room.needs.ends_swelling == pytest.approx((0.3 - 0.168) / 100 * 200 / 2, abs=0.006)
    assert room.needs.swelling == pytest.approx(0.06 * 0.35 * 18 / 2, abs=0.006)


def test_a_finish_that_nobody_sells_is_told() -> None:
    found = proved(placed("finish: {of: varnis}")).findings
    (only,) = (each for each in found if each.rule == "unknown-finish")
    assert (only.message, only.advice) == ("no finish `varnis`", "Did you mean `varnish`?")
    assert only.place.line == 6
