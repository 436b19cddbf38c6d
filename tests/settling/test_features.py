"""Each kind of feature, measured back from the settled panel."""

from __future__ import annotations

import math

import pytest
import shapely

from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.geometry.measure import area, bounds
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart
from tests.settling.panels import findings_of, flat, panel

RELIEF = 3.05
"""The radius of a relief: that of the 6 mm cutter, its arcs a tenth wider across."""


def feature(part: SettledPart, name: str) -> SettledFeature:
    return next(each for each in part.features if each.name == name)


def pockets(part: SettledPart) -> list[shapely.Polygon]:
    cuts = [cut for cut in part.cuts if cut.operation is Operation.POCKET]
    return [flat(contour) for cut in cuts for contour in cut.contours]


def test_a_turned_slot_keeps_its_measures() -> None:
    made = panel(
        "s: {slot: {at: [200, 150], length: 60, angle: 30, takes: ply}}", 17.6, relief="none"
    )
    (opening,) = made.plain.openings
    box = shapely.minimum_rotated_rectangle(flat(opening))
    a, b, c = list(box.exterior.coords)[:3]
    sides = sorted((math.dist(a, b), math.dist(b, c)))
    assert sides == pytest.approx([17.8, 60.2], abs=1e-6)
    assert feature(made, "s").direction == pytest.approx((math.cos(math.pi / 6), 0.5))


def test_a_notch_is_a_fit_deeper_and_open() -> None:
    made = panel("n: {notch: {edge: top, at: [100, 300], depth: 60, takes: ply}}", 18.2)
    assert not made.plain.openings
    gone = 400 * 300 - area(made.plain)
    assert gone == pytest.approx(2 * (18.2 + 0.2) * (60 + 0.1), abs=1e-6)
    assert feature(made, "n.1").at == pytest.approx((100, 300 - 60.1))
    assert feature(made, "n.2").direction == pytest.approx((0, 1))


def test_a_notch_of_a_stated_width_has_no_fit_and_no_relief() -> None:
    made = panel("n: {notch: {edge: left, at: 100, depth: 60, width: 20}}")
    assert area(made.routed) == pytest.approx(400 * 300 - 20 * 60)
    assert told(feature(made, "n").width.reason, METRIC) == "stated: 20"


def test_tabs_stand_out_of_their_edge_rounded_where_asked() -> None:
    made = panel("t: {tabs: {edge: right, at: [20, 220], width: 60, depth: 17, round: 3}}")
    more = area(made.plain) - 400 * 300
    # Two rounded corners take (1 - pi/4) r2 each off a tab.
    assert more == pytest.approx(2 * (60 * 17 - 2 * (1 - math.pi / 4) * 9), abs=1e-6)
    assert feature(made, "t.1").at == pytest.approx((400, 50))
    assert feature(made, "t.1").direction == pytest.approx((1, 0))


def test_a_sloping_edge_given_by_two_points_is_turned_outward() -> None:
    outline = "{polygon: [[0, 0], [400, 0], [300, 200], [0, 200]]}"
    tabs = "t: {tabs: {edge: {from: [300, 200], to: [400, 0]}, at: 50, width: 60, depth: 18}}"
    made = panel(tabs, outline=outline, relief="none")
    out = feature(made, "t").direction
    assert out == pytest.approx((2 / math.sqrt(5), 1 / math.sqrt(5)))
    assert area(made.plain) == pytest.approx(70000 + 60 * 18)
    # Its middle is 80 mm from where the edge begins.
    middle = (300 + 80 / math.sqrt(5), 200 - 160 / math.sqrt(5))
    assert feature(made, "t").at == pytest.approx(middle)


@pytest.mark.parametrize(
    "wrong",
    [
        "t: {tabs: {edge: {from: [0, 150], to: [400, 150]}, at: 50, width: 60, depth: 18}}",
        "t: {tabs: {edge: {from: [0, 302], to: [400, 302]}, at: 50, width: 60, depth: 18}}",
        "t: {tabs: {edge: {from: [0, 298], to: [400, 302]}, at: 50, width: 60, depth: 18}}",
        "t: {tabs: {edge: top, at: 350, width: 60, depth: 18}}",
    ],
)
def test_tabs_that_are_not_on_an_edge_are_findings(wrong: str) -> None:
    (finding,) = findings_of(wrong)
    assert finding.rule == "tab-off-edge"
    told, _, where = finding.message.partition(": ")
    assert told == "tab `panel.t` is not on the edge"
    beyond = "edge: top" in wrong  # the others stand between the ends of an edge that is none
    assert where == ("edge 0 mm to 400 mm, tab 350 mm to 410 mm" if beyond else "")


def test_a_notch_that_is_not_on_an_edge_is_a_finding() -> None:
    rules = [
        each.rule for each in findings_of("n: {notch: {edge: top, at: 2, depth: 9, width: 9}}")
    ]
    assert rules == ["notch-off-edge"]


def test_a_curved_edge_carries_no_tab() -> None:
    (finding,) = findings_of(
        "t: {tabs: {edge: top, at: 170, width: 60, depth: 18}}", outline="{circle: 400}"
    )
    assert finding.rule == "tab-off-edge"


@pytest.mark.parametrize("count", [2, 3, 4, 5, 8])
def test_finger_walls_stand_a_fit_apart(count: int) -> None:
    """Both rows laid against each other: every two walls that face are the fit apart."""
    rows = [
        panel(
            f"c: {{fingers: {{edge: top, count: {count}, takes: ply, first: {first}}}}}",
            17.6,
            fit=0.15,
            relief="none",
        )
        for first in ("finger", "gap")
    ]
    line = shapely.LineString([(-1, 300 - 17.6 / 2), (401, 300 - 17.6 / 2)])
    walls = sorted(
        x
        for row in rows
        for piece in shapely.get_parts(shapely.intersection(line, flat(row.plain)))
        for x in (piece.bounds[0], piece.bounds[2])
    )
    assert len(walls) == 2 * count
    pairs = list(zip(walls[1:-1:2], walls[2:-1:2], strict=True))
    assert [b - a for a, b in pairs] == pytest.approx([0.15] * (count - 1), abs=1e-6)
    assert (walls[0], walls[-1]) == (pytest.approx(0), pytest.approx(400))


def test_finger_gaps_are_as_deep_as_the_sheet_they_take() -> None:
    made = panel("c: {fingers: {edge: bottom, count: 5, takes: thin, first: gap}}")
    assert feature(made, "c").length.value == pytest.approx(6.4)
    assert told(feature(made, "c").length.reason, METRIC) == "through the 6.4 mm sheet"


def test_a_counterbore_is_a_pocket_before_the_hole() -> None:
    made = panel("h: {hole: {at: [100, 100], diameter: 7, counterbore: {diameter: 14, depth: 6}}}")
    operations = [(cut.operation, cut.depth) for cut in made.cuts]
    assert operations == [
        (Operation.POCKET, 6.0),
        (Operation.HOLE, None),
        (Operation.OUTLINE, None),
    ]
    # Volumes by hand: plate less the through hole, less the ring of the counterbore.
    ring = math.pi * (7**2 - 3.5**2) * 6
    volume = (400 * 300 - math.pi * 3.5**2) * 17.8 - ring
    assert made.mass == pytest.approx(volume * 685e-9, rel=1e-9)


def test_blind_holes_leave_their_floor_in_the_mass() -> None:
    made = panel("h: {hole: {at: [[50, 50], [90, 50]], diameter: 10, depth: 12}}")
    assert [f.name for f in made.features] == ["h.1", "h.2"]
    assert not made.routed.openings
    volume = 400 * 300 * 17.8 - 2 * math.pi * 25 * 12
    assert made.mass == pytest.approx(volume * 685e-9, rel=1e-9)


def test_pockets_that_overlap_are_not_weighed_twice() -> None:
    text = """
a: {pocket: {at: [100, 100], rectangle: [60, 40], depth: 6}}
b: {pocket: {at: [130, 100], rectangle: [60, 40], depth: 9}}
"""
    made = panel(text)
    # 6 mm over the union (90 x 40), 3 mm more over the deeper one (60 x 40).
    volume = 400 * 300 * 17.8 - 90 * 40 * 6 - 60 * 40 * 3
    assert made.mass == pytest.approx(volume * 685e-9, rel=1e-9)
    assert [cut.depth for cut in made.cuts[:2]] == [6.0, 9.0]


def test_pilot_and_clearance_holes_come_from_the_stock() -> None:
    text = """
free: {hole: {at: [50, 50], for: screw-4x40}}
held: {hole: {at: [90, 50], pilot: screw-4x40}}
"""
    made = panel(text)
    # Usual for a 4 mm wood screw: 4.5 mm clear, 2.5 mm pilot (common practice, no single source).
    assert feature(made, "free").width.value == pytest.approx(4.5)
    assert feature(made, "held").width.value == pytest.approx(2.5)
    assert told(feature(made, "held").width.reason, METRIC) == "pilot hole for Wood screw 4 × 40 mm"


def test_a_groove_that_takes_a_sheet_runs_out_at_its_open_ends() -> None:
    made = panel("g: {groove: {from: [0, 40], to: [400, 40], takes: thin, depth: 6}}")
    (channel,) = pockets(made)
    x0, y0, x1, y1 = channel.bounds
    assert y1 - y0 == pytest.approx(6.4 + 0.2)
    # A radius of the cutter beyond the edge, so that it rounds no corner inside the part.
    assert (x0, x1) == (pytest.approx(-3), pytest.approx(403))
    # The run-out weighs nothing: only what lies in the part is gone.
    assert made.mass == pytest.approx((400 * 300 * 17.8 - 400 * 6.6 * 6) * 685e-9, rel=1e-9)
    swept = channel.buffer(-3, join_style="mitre").buffer(3, quad_segs=256)
    assert swept.intersection(flat(made.plain)).area == pytest.approx(400 * 6.6, rel=1e-6)


def test_a_groove_across_a_sloping_edge_is_cleared_to_both_corners() -> None:
    outline = "{polygon: [[0, 0], [400, 0], [300, 200], [0, 200]]}"
    made = panel(
        "g: {groove: {from: [50, 90], to: [355, 90], width: 12, depth: 5}}", outline=outline
    )
    (channel,) = pockets(made)
    swept = channel.buffer(-3, join_style="mitre").buffer(3, quad_segs=256)
    inside = channel.intersection(flat(made.plain))
    left = inside.difference(swept)
    # Only the two square corners at the stopped end keep the cutter's fillets, (1 - pi/4) r2 each.
    assert left.area == pytest.approx(2 * (1 - math.pi / 4) * 9, rel=1e-2)
    assert left.bounds[2] < 54


def test_a_stopped_groove_that_takes_a_sheet_is_relieved_in_its_own_contour() -> None:
    made = panel("g: {groove: {from: [50, 150], to: [350, 150], takes: ply, depth: 6}}", 17.6)
    (channel,) = pockets(made)
    # Four dog-bones of 0.57079633 r2 (routing formulas, corner geometry; computed), r = 3.05 mm.
    assert channel.area == pytest.approx(300.2 * 17.8 + 4 * 0.57079633 * RELIEF**2, rel=1e-5)
    assert made.routed == made.plain


@pytest.mark.parametrize(("style", "extra"), [("dog-bone", 0.57079633), ("sideways", 1.57079633)])
def test_a_housing_is_relieved_in_its_own_contour(style: str, extra: float) -> None:
    made = panel(
        "p: {pocket: {at: [100, 100], length: 60, takes: ply, depth: 9, angle: 90}}", relief=style
    )
    (housing,) = pockets(made)
    assert housing.area == pytest.approx(60.2 * 18 + 4 * extra * RELIEF**2, rel=1e-5)
    assert made.drill_centres == ()


def test_windows_and_the_outline_are_not_relieved() -> None:
    outline = "{polygon: [[0, 0], [400, 0], [400, 300], [200, 300], [200, 200], [0, 200]]}"
    made = panel("w: {window: {at: [100, 100], rectangle: [80, 40]}}", outline=outline)
    assert made.routed == made.plain
    assert made.drill_centres == ()


def test_windows_stand_on_their_point_and_turn_about_it() -> None:
    text = """
round: {window: {at: [100, 200], rounded-slot: [100, 30], angle: 90}}
corner: {window: {at: [250, 50], polygon: [[0, 0], [40, 0], [0, 30]]}}
"""
    made = panel(text)
    boxes = [bounds(feature(made, name).shape[0]) for name in ("round", "corner")]
    assert (boxes[0].width, boxes[0].height) == (pytest.approx(30), pytest.approx(100))
    assert (boxes[1].x0, boxes[1].y0) == (pytest.approx(250), pytest.approx(50))


def test_engraved_words_are_centred_and_as_high_as_stated() -> None:
    made = panel('e: {engrave: {text: "HI", at: [200, 150], height: 12, depth: 0.5}}')
    (cut,) = made.cuts[:-1]
    boxes = [bounds(each) for each in cut.contours]
    low, high = min(b.y0 for b in boxes), max(b.y1 for b in boxes)
    assert (low, high) == (pytest.approx(144), pytest.approx(156))
    assert not any(contour.closed for contour in cut.contours)
    assert made.mass == pytest.approx(400 * 300 * 17.8 * 685e-9)


def test_mirrored_words_keep_their_reading() -> None:
    text = 'e: {engrave: {text: "F", at: [100, 150], height: 12, depth: 0.5}, mirror: {x: 200}}'
    made = panel(text)
    one, other = (feature(made, name) for name in ("e.1", "e.2"))
    assert other.at == pytest.approx((300, 150))
    spots = [[(x, y) for c in each.shape for x, y, _ in c.vertices] for each in (one, other)]
    for (x, y), there in zip(*spots, strict=True):
        assert there == pytest.approx((x + 200, y))


def test_repeated_and_mirrored_slots_are_numbered_and_all_relieved() -> None:
    text = """
s:
  slot: {at: [50, 50], length: 60, angle: 90, takes: ply}
  repeat: {count: 3, step: [50, 0]}
  mirror: {y: 150}
"""
    made = panel(text, 17.6)
    assert [each.name for each in made.features] == [f"s.{n}" for n in range(1, 7)]
    assert len(made.plain.openings) == 6
    gone = area(made.plain) - area(made.routed)
    assert gone == pytest.approx(6 * 4 * 0.57079633 * RELIEF**2, rel=1e-6)


def test_too_many_copies_are_a_finding() -> None:
    text = "h: {hole: {at: [5, 5], diameter: 6}, repeat: {count: 800, step: [0.1, 0]}}"
    rules = [each.rule for each in findings_of(text)]
    assert rules == ["too-many-copies"]


def test_a_mirrored_half_makes_the_whole_outline() -> None:
    outline = "{polygon: [[100, 0], [0, 0], [0, 80], [100, 60]], mirror: {x: 100}}"
    made = panel("h: {hole: {at: [100, 30], diameter: 8}}", outline=outline)
    assert made.size == pytest.approx((200, 80))
    assert area(made.plain) == pytest.approx(2 * 100 * 70 - math.pi * 16)
