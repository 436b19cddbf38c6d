"""Size, weight and steadiness against worked examples of statics and boxes worked by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
import shapely

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.stability import Stability, stability_of, tippings, weakest
from kerfolio.assembly.stability_words import (
    size_rows,
    stability_cautions,
    steady_rows,
)
from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.rigid import Rigid, scaled
from kerfolio.model.plan import Plan
from kerfolio.settling.settled import FitVariant
from tests.assembly.scenes import NAMES, assembled

NOTE, STORING, WALL = (
    say(METRIC, each) for each in ("steady-note", "steady-note-storing", "steady-wall")
)

UPRIGHT = Rigid((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))
"""A panel that stands: its x to the right, its y up, its show face to the front."""


def rectangle(width: float, height: float) -> Flat:
    return Flat(((0, 0), (width, 0), (width, height), (0, height)))


def piece(panel: Panel, pose: Rigid = UPRIGHT, mass: float = 10.0, label: str = "a") -> PosedPiece:
    return PosedPiece(
        label=label, mark="", part=label, sheet="ply", panel=panel, pose=pose, mass=mass
    )


def whole(*pieces: PosedPiece) -> Assembled:
    return Assembled(variant=FitVariant(label="", thickness=()), pieces=pieces, joints=())


def block(width: float, depth: float, height: float, mass: float = 10.0) -> Assembled:
    return whole(piece(Panel(shape=rectangle(width, height), thickness=depth), mass=mass))


def test_the_worked_example_of_tipping() -> None:
    """b 150 mm, h 450 mm, 10 kg, pushed at 900 mm: 18.435 degrees and 16.344 N (statics)."""
    found = stability_of(block(300, 400, 900))
    assert found.size == pytest.approx((300, 400, 900))
    assert found.centre == pytest.approx((150, 200, 450))
    least = weakest(tippings(found))
    assert [each.way for each in least] == [(-1.0, 0.0), (1.0, 0.0)]
    for each in least:
        assert each.angle == pytest.approx(18.435, abs=5e-4)
        assert each.push == pytest.approx(16.344, abs=5e-3)
        assert each.reach == pytest.approx(150)


def test_a_load_on_the_edge_worked_by_hand() -> None:
    """10 kg on 10 kg: the common centre is 75 mm inside the edge and 675 mm up."""
    (least, *_) = weakest(tippings(stability_of(block(300, 400, 900)), 10.0))
    assert least.reach == pytest.approx(75)
    assert least.angle == pytest.approx(math.degrees(math.atan2(75, 675)))
    assert least.push == pytest.approx(20 * 9.80665 * 75 / 900)


def table() -> Stability:
    """Return a block of 100 x 100 x 700 under a top of 500 x 500 x 20, 5 kg each."""
    leg = piece(Panel(shape=rectangle(100, 700), thickness=100), mass=5.0, label="leg")
    flat = Rigid((-200.0, -300.0, 700.0))
    top = piece(Panel(shape=rectangle(500, 500), thickness=20), flat, mass=5.0, label="top")
    return stability_of(whole(leg, top))


def test_a_top_that_reaches_beyond_its_foot() -> None:
    """Centre (5 x 350 + 5 x 710) / 10 = 530 up; a load 200 mm out meets 50 mm of reach."""
    found = table()
    assert found.size == pytest.approx((500, 500, 720))
    assert found.centre == pytest.approx((250, 250, 530))
    assert sorted(found.contact) == [(200, 200), (200, 300), (300, 200), (300, 300)]
    assert {round(each.reach, 6) for each in tippings(found)} == {50.0}
    assert weakest(tippings(found, 2.4))[0].angle > 0  # 10 x 50 > 2.4 x 200
    assert weakest(tippings(found, 2.6))[0].angle < 0  # 10 x 50 < 2.6 x 200
    assert weakest(tippings(found, 2.5))[0].reach == pytest.approx(0, abs=1e-9)


def test_the_pile_is_the_longest_by_the_widest_by_all_thicknesses() -> None:
    assert table().pile == pytest.approx((700, 500, 120))


def test_recesses_and_openings_move_the_centre() -> None:
    """Slab by slab: area x height about each slab's own centroid (shapely)."""
    shape = Flat(rectangle(400, 200).outer, (((20, 20), (20, 80), (80, 80), (80, 20)),))
    cut = Flat(((200, 100), (380, 100), (380, 180), (200, 180)))
    panel = Panel(shape=shape, thickness=18.0, recesses=(Recess(cut, 7.0),))
    low = shapely.Polygon(shape.outer, shape.openings)
    high = low - shapely.Polygon(cut.outer)
    volume = low.area * 11 + high.area * 7
    x = (low.area * 11 * low.centroid.x + high.area * 7 * high.centroid.x) / volume
    y = (low.area * 11 * low.centroid.y + high.area * 7 * high.centroid.y) / volume
    z = (low.area * 11 * 5.5 + high.area * 7 * 14.5) / volume
    found = stability_of(whole(piece(panel, Rigid((30.0, -20.0, 400.0)))))
    assert found.centre == pytest.approx((x, y, z))


def test_feet_are_what_is_within_a_twentieth_of_a_millimetre() -> None:
    feet = ((0, 0), (40, 0), (40, 30), (260, 30), (260, 0.04), (300, 0.04), (300, 500), (0, 500))
    found = stability_of(whole(piece(Panel(shape=Flat(feet), thickness=18.0))))
    assert {x for x, _ in found.contact} == {0, 300}
    lifted = tuple((x, 0.06 if y == 0.04 else y) for x, y in feet)
    short = stability_of(whole(piece(Panel(shape=Flat(lifted), thickness=18.0))))
    assert {x for x, _ in short.contact} == {0, 40}
    assert weakest(tippings(short))[0].angle < 0


def test_on_a_point_nothing_stands() -> None:
    tip = Flat(((100, 0), (200, 300), (0, 300)))
    found = stability_of(whole(piece(Panel(shape=tip, thickness=18.0))))
    assert found.contact == ()
    assert tippings(found) == ()
    assert "does not stand by itself" in dict(steady_rows(found, METRIC))["On the floor"]


def larger(given: Assembled, by: float) -> Assembled:
    def flat(shape: Flat) -> Flat:
        rings = [
            tuple((x * by, y * by) for x, y in ring) for ring in (shape.outer, *shape.openings)
        ]
        return Flat(rings[0], tuple(rings[1:]))

    return whole(
        *(
            replace(
                each,
                pose=replace(each.pose, origin=scaled(each.pose.origin, by)),
                panel=Panel(
                    shape=flat(each.panel.shape),
                    thickness=each.panel.thickness * by,
                    recesses=tuple(
                        Recess(flat(r.shape), r.depth * by) for r in each.panel.recesses
                    ),
                ),
            )
            for each in given.pieces
        )
    )


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("by", "times"), [(0.5, 3.0), (3.0, 0.1), (10.0, 40.0)])
def test_size_scales_lengths_and_weight_scales_pushes(name: str, by: float, times: float) -> None:
    given = assembled(name)
    found, grown = stability_of(given), stability_of(larger(given, by))
    assert grown.size == pytest.approx(scaled(found.size, by), rel=1e-4)
    assert grown.centre == pytest.approx(scaled(found.centre, by), rel=1e-4)
    one, other = weakest(tippings(found))[0], weakest(tippings(grown))[0]
    assert other.angle == pytest.approx(one.angle, abs=0.01)
    assert other.push == pytest.approx(one.push, rel=1e-3)
    heavy = weakest(tippings(replace(found, mass=found.mass * times)))[0]
    assert heavy.push == pytest.approx(one.push * times)
    assert heavy.angle == pytest.approx(one.angle)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("degrees", [90.0, 180.0, 31.0])
def test_turning_it_on_the_floor_does_not_change_how_it_tips(name: str, degrees: float) -> None:
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turn = Rigid((500.0, -70.0, 33.0), (c, s, 0.0), (-s, c, 0.0), (0.0, 0.0, 1.0))
    found = stability_of(assembled(name))
    turned = stability_of(
        whole(*(replace(each, pose=turn.after(each.pose)) for each in assembled(name).pieces))
    )
    assert turned.mass == pytest.approx(found.mass)
    assert turned.centre[2] == pytest.approx(found.centre[2])
    assert turned.pile == pytest.approx(found.pile)
    angles = [weakest(tippings(each))[0].angle for each in (found, turned)]
    assert angles[1] == pytest.approx(angles[0], abs=1e-4)


def test_the_rows_say_it_in_both_units() -> None:
    found = stability_of(block(300, 400, 900))
    assert (*size_rows(found, METRIC), *steady_rows(found, METRIC)) == (
        (
            "Put together, width × depth × height",
            "300 × 400 × 900 mm (11 13/16 × 15 3/4 × 35 7/16 in)",
        ),
        ("Flat, all pieces in one pile", "900 × 300 × 400 mm (35 7/16 × 11 13/16 × 15 3/4 in)"),
        ("Weight of the pieces", "10.0 kg (22.0 lb)"),
        (
            "Centre of gravity",
            "450 mm (17 11/16 in) above the floor, 150 mm (5 7/8 in) from the left, "
            "200 mm (7 7/8 in) from the front",
        ),
        ("On the floor", "300 × 400 mm (11 13/16 × 15 3/4 in) around what touches it"),
        ("Tips, empty, when tilted by", "18°, to the left or right"),
        (
            "Tips, loaded on the edge of its panel, when tilted by",
            "6°, to the left or right, with 10.0 kg (22.0 lb)",
        ),
        (
            "Tips, empty, when pushed with",
            "16 N (3.7 lbf) at the top, 900 mm (35 7/16 in) up, to the left or right",
        ),
    )


def test_what_falls_over_is_said_plainly() -> None:
    rows = dict(steady_rows(table(), INCHES, load=20.0))
    loaded = rows["Tips, loaded on the edge of its panel, when tilted by"]
    assert loaded.startswith("nothing: it falls over by itself, to the ")
    assert loaded.endswith(", with 44.1 lb (20.0 kg)")
    assert dict(size_rows(table(), INCHES))["Weight of the pieces"] == "22.0 lb (10.0 kg)"


def test_the_angle_is_never_shown_as_approval_and_tall_things_go_to_the_wall() -> None:
    """27 in (685.8 mm) is where 16 CFR 1261 begins."""
    assert "not approval" in NOTE
    assert "not approval" in STORING
    low, tall = stability_of(block(300, 400, 685)), stability_of(block(300, 400, 686))
    assert stability_cautions(low, plan(), METRIC) == (NOTE,)
    assert stability_cautions(tall, plan(), METRIC) == (STORING, WALL)


def plan(placed: str = "", *uses: str) -> Plan:
    return Plan(name="a", title="A", version="1.0.0", summary="", placed=placed, uses=uses)


def test_a_climbing_child_and_the_wall_are_for_what_stores_things() -> None:
    low, tall = stability_of(block(300, 400, 500)), stability_of(block(300, 400, 900))
    shallow = stability_of(block(900, 150, 400))
    assert "climbing child" in STORING
    assert "child" not in NOTE
    assert stability_cautions(tall, plan("", "sit in the middle"), METRIC) == (NOTE,)
    assert stability_cautions(tall, plan("free-standing", "stand things on"), METRIC) == (NOTE,)
    assert stability_cautions(low, plan("", "store things"), METRIC) == (STORING,)
    assert stability_cautions(tall, plan("", "store things"), METRIC) == (STORING, WALL)
    assert stability_cautions(shallow, plan("", "store things"), METRIC) == (STORING, WALL)
    assert stability_cautions(tall, plan("on a table", "store things"), METRIC) == (STORING,)
    shelf = replace(plan(), title="A low shelf")
    assert stability_cautions(low, shelf, METRIC) == (STORING,)


def test_readers_of_german_are_told_in_german() -> None:
    german = Reader(language="de")
    rows = (*size_rows(table(), german), *steady_rows(table(), german))
    assert rows[2] == ("Gewicht der Stücke", "10,0 kg (22,0 lb)")
    words = " ".join(f"{label} {value}" for label, value in rows)
    assert "nach links, vorn, hinten oder rechts" in words
    assert not {"the", "with", "of", "at", "tilted", "up"} & set(words.split())
    (note,) = stability_cautions(stability_of(block(300, 400, 500)), plan(), german)
    assert note.endswith("Örtliche Vorschriften und Fachleute gehen vor.")
