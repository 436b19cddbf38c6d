"""Where bridges stand: on straight edges that mate with nothing, spread about the outline.

How wide, how high and how far from corners is common practice, no single source.
"""

from __future__ import annotations

from math import dist

import pytest
import shapely

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.finding import Finding
from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.geometry.contour import Contour, Point
from kerfolio.model.feature_kind import FINGERS, TAB
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from kerfolio.writing.formats import CUT_FORMATS, CutFormat
from tests.paper import sample_editions
from tests.plans import proved
from tests.settling.panels import flat

CLEAR = 5.0
"""No bridge's end is nearer than this to a wall that mates, mm."""

PLAN = """\
plan: Bridges
version: 1.0.0
summary: A part to hold.
units: {units}
sheets: {{ply: {{stock: birch-plywood-18, published-for: 17.8 mm, size: 2440 mm x 1220 mm}}}}
parts:
  panel: {{sheet: ply, outline: {outline}, features: {{{features}}}{own}}}
cuts:
  profile: {{sheet: ply, cutter: compression-6, passes: [8 mm, rest], skim: 0.3 mm{bridges}}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


def text(**asked: str) -> str:
    stated = {
        **{"units": "mm", "outline": "{rectangle: [400, 300]}", "features": "", "own": ""},
        **{"bridges": ", bridges: 4"},
        **asked,
    }
    return PLAN.format(**stated)


def panel(**asked: str) -> SettledPart:
    drawn = proved(text(**asked)).drawn
    assert drawn is not None, proved(text(**asked)).findings
    return drawn.parts[0]


def spots(part: SettledPart, of: Operation = Operation.OUTLINE) -> list[Point]:
    return [
        (round(each.at[0], 1), round(each.at[1], 1))
        for each in part.bridges
        if each.operation is of
    ]


def findings(**asked: str) -> list[Finding]:
    wanted = ("bridge-off-edge", "bridge-too-high", "no-bridge-place", "small-part-loose")
    return [each for each in proved(text(**asked)).findings if each.rule in wanted]


def test_four_bridges_hold_a_panel_at_the_middle_of_its_sides() -> None:
    part = panel()
    assert sorted(spots(part)) == [(0, 150), (200, 0), (200, 300), (400, 150)]
    for each in part.bridges:
        assert (each.width, each.height) == (8, 2)
        assert dist(*(v[:2] for v in each.line.vertices)) == pytest.approx(8)


@pytest.mark.parametrize(
    ("bridges", "own", "count"),
    [
        ("", "", 0),
        (", bridges: none", "", 0),
        (", bridges: 0", "", 0),
        (", bridges: 6", "", 6),
        (", bridges: by-size", "", 3),  # 1.4 m round it
        (", bridges: 4", ", bridges: none", 0),
        (", bridges: 4", ", bridges: 2", 2),
        ("", ", bridges: {count: 3}", 3),
    ],
)
def test_how_many_is_for_the_maker_to_say(bridges: str, own: str, count: int) -> None:
    assert len(panel(bridges=bridges, own=own).bridges) == count


def test_places_widths_and_heights_may_be_stated() -> None:
    part = panel(own=", bridges: {at: [[100, 0], [300, 300.4]], width: 12, height: 3}")
    assert spots(part) == [(100, 0), (300, 300)]
    assert {(each.width, each.height) for each in part.bridges} == {(12, 3)}
    inches = panel(
        units="in",
        outline="{rectangle: [16, 12]}",
        own=", bridges: {at: [8, 0], width: 1/2, height: 1/8 in}",
    )
    assert spots(inches) == [(203.2, 0)]
    assert {(each.width, each.height) for each in inches.bridges} == {(12.7, 3.175)}


def test_a_place_where_none_can_stand_is_told() -> None:
    (found,) = findings(own=", bridges: {at: [[100, 0], [398, 0]]}")
    assert (found.rule, found.message) == (
        "bridge-off-edge",
        "no bridge can stand at 398 mm, 0 mm",
    )
    assert found.advice == (
        "Name a point on a straight stretch of the outline that mates with nothing, 10 mm from its "
        "ends."
    )
    tab = "t: {tabs: {edge: top, at: 100, width: 60, depth: 18}}"
    (found,) = findings(features=tab, own=", bridges: {at: [50, 300]}")
    assert found.message == "no bridge can stand at 50 mm, 300 mm"
    (found,) = findings(own=", bridges: {height: 20}")
    assert found.message == "bridges of 20 mm are no lower than the sheet"


@pytest.mark.parametrize(
    "outline",
    ["{circle: 200}", "{rectangle: [400, 25]}", "{rectangle: [45, 45]}"],
)
def test_round_and_small_pieces_get_tape(outline: str) -> None:
    assert spots(panel(outline=outline)) == []
    (found,) = findings(outline=outline)
    assert found.rule == "no-bridge-place"
    assert found.message == "no bridge can stand on part `panel`"
    assert "hold it with double-sided tape" in found.advice


def test_what_falls_out_of_a_large_window_is_held_too() -> None:
    window = "w: {window: {at: [200, 150], rectangle: [160, 80]}}"
    assert spots(panel(features=window), Operation.OPENING) == [(200, 190), (200, 110)]
    for small in (
        "w: {window: {at: [200, 150], rectangle: [160, 30]}}",  # 18 mm of it stay
        "w: {slot: {at: [200, 150], length: 100, takes: ply}}",  # its walls mate
        "w: {hole: {at: [200, 150], diameter: 90}}",  # it has no straight edge
    ):
        assert spots(panel(features=small), Operation.OPENING) == []


def joined_walls(plan: SettledPlan) -> dict[str, list[shapely.Geometry]]:
    """Return what mates on each part, by the joints: shapes of their features, and their edges.

    A tab's shoulder and a finger's edge bear along their whole line.
    """
    pieces = pieces_of(plan)
    found: dict[str, list[shapely.Geometry]] = {part.name: [] for part in plan.parts}
    for joint in plan.plan.joints:
        for named in (joint.a, joint.b):
            end = end_of(named.name, pieces)
            assert end is not None, named
            for feature in end.features:
                if feature.kind.opens and not feature.takes and not feature.kind.on_edge:
                    continue  # a screw's hole
                found[end.part.name] += [flat(each) for each in feature.shape]
                if feature.kind in (TAB, FINGERS):
                    (x, y), (ux, uy) = feature.at, feature.direction
                    ends = [(x - s * 3000 * uy, y + s * 3000 * ux) for s in (-1, 1)]
                    found[end.part.name].append(shapely.LineString(ends))
    return found


def too_near(plan: SettledPlan) -> list[tuple[str, Point]]:
    """Return the bridges that stand on a wall which mates, or beside it."""
    walls = joined_walls(plan)
    return [
        (part.name, each.at)
        for part in plan.parts
        for each in part.bridges
        for wall in walls[part.name]
        if shapely.LineString([v[:2] for v in each.line.vertices]).distance(wall) < CLEAR
    ]


@pytest.mark.parametrize("name", sample_editions.NAMES)
def test_no_bridge_of_the_sample_stands_on_a_wall_that_mates(name: str) -> None:
    plan = sample_editions.sample(name).settled
    assert sum(len(part.bridges) for part in plan.parts) > 5
    assert too_near(plan) == []
    for part in plan.parts:
        rings = [flat(part.routed).exterior, *flat(part.routed).interiors]
        for each in part.bridges:
            line = shapely.LineString([v[:2] for v in each.line.vertices])
            assert any(
                line.hausdorff_distance(line.intersection(r.buffer(1e-3))) < 1e-2 for r in rings
            )


def test_the_measure_sees_a_bridge_on_a_shoulder(monkeypatch: pytest.MonkeyPatch) -> None:
    """As if shoulders were free: the sample's tabs stand on edges that would then get bridges."""
    monkeypatch.setattr("kerfolio.settling.bridges._roots", lambda _: iter(()))
    sample_editions.sample.cache_clear()
    try:
        assert too_near(sample_editions.sample("tool-tote").settled)
    finally:
        sample_editions.sample.cache_clear()


@pytest.mark.parametrize("form", CUT_FORMATS, ids=lambda each: each.ending)
def test_cut_files_carry_bridges_on_layers_of_their_own(form: CutFormat) -> None:
    plan = sample_editions.sample("tool-tote").settled
    part = next(each for each in plan.parts if each.name == "handle")
    layers = form.read(form.write(cut_part(plan, part), own_origin=False)).layers
    lines = sorted(shown(each.line) for each in part.bridges)
    assert sorted(map(shown, layers["bridge_2.0mm"])) == lines
    assert [len(layers[name]) for name in layers if name.startswith("outline")] == [1]
    drawn = proved(text(own=", bridges: {count: 2, height: 1.5}")).drawn
    assert drawn is not None
    own = cut_part(drawn, drawn.parts[0])
    (layer,) = (each for each in own.layers if each.name.startswith("bridge"))
    assert layer.name == "bridge_1.5mm"
    assert not layer.cuts
    assert "the cutter lifts to 1.5 mm above the lower face" in layer.purpose


def shown(line: Contour) -> list[tuple[float, float]]:
    """Return the ends of a line as files round them."""
    assert not line.closed
    return sorted((round(x, 3), round(y, 3)) for x, y, _ in line.vertices)


BUTTED = """\
plan: Butted
version: 1.0.0
summary: A shelf that butts on a side.
sheets: {ply: {stock: birch-plywood-18, published-for: 17.8}}
parts:
  side:
    sheet: ply
    outline: {rectangle: [300, 400]}
    features: {screws: {hole: {at: [[50, 200], [250, 200]], diameter: 4}}}
  shelf: {sheet: ply, outline: {rectangle: [400, 300]}}
joints:
  - {edge: shelf.left, on: side.screws, show: out, looking: up}
cuts:
  profile: {sheet: ply, cutter: compression-6, passes: [8, rest], skim: 0.3, bridges: 6}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def test_an_edge_that_butts_on_another_piece_has_none() -> None:
    drawn = proved(BUTTED).drawn
    assert drawn is not None
    shelf = next(part for part in drawn.parts if part.name == "shelf")
    assert len(shelf.bridges) == 6
    assert all(x > 1 for x, _ in spots(shelf))
