"""Pictures of work by hand: what they show of the plans of the sample, and how work is turned."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
import shapely
from scipy.spatial.transform import Rotation

from kerfolio.assembly.handworked import glued_in
from kerfolio.assembly.lying import shown_at, turned_down
from kerfolio.assembly.made import made_of
from kerfolio.assembly.sanded import sanded_patches
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.extent import apart, box_of
from kerfolio.drawing.glue_view import glue_view
from kerfolio.drawing.mark_view import mark_view
from kerfolio.drawing.turn_block import turn_of
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.drawing.work_page import ROOM
from kerfolio.drawing.work_views import step_names, work_drawings
from kerfolio.geometry.rigid import HERE, Rigid
from kerfolio.model.statement import Named
from kerfolio.publishing.bare import bare
from kerfolio.settling.marked import MarkedPart, marked_in
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.worked import worked_on
from tests.assembly.scenes import settled

MADE = {
    "tool-tote": [
        "step-1-glues",
        "step-3-glues",
        "step-3-clamps",
        "step-4-sands",
        "step-5-glues",
        "step-6-glues",
        "step-6-clamps",
    ],
    "desk-rack": ["step-1-sands", "step-3-glues"],
    "window-shelf": ["step-2-marks"],
}


@cache
def drawn(name: str) -> dict[str, Drawing]:
    plan = settled(name)
    return {
        key: each for made in made_of(plan, [plan]) for key, each in work_drawings(made, METRIC)
    }


@pytest.mark.parametrize("name", MADE)
def test_pictures_do_not_hang_on_where_a_plan_says_what(name: str) -> None:
    """What is kept between runs is drawn from a plan without the lines of its file."""
    plan = settled(name)
    for made in made_of(plan, [plan]):
        kept = [key for key, _ in work_drawings(bare(made), METRIC)]
        assert kept == [key for key, _ in work_drawings(made, METRIC)]


def words(drawing: Drawing) -> set[str]:
    return {each.text for each in drawing.items if isinstance(each, Label)}


def accent(drawing: Drawing) -> list[Stroke]:
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    return [each for each in strokes if each.ink is Ink.ACCENT and len(each.contour.vertices) == 2]


@pytest.mark.parametrize("name", MADE)
def test_every_work_of_a_plan_has_its_picture(name: str) -> None:
    assert [*drawn(name)] == MADE[name]
    for each in drawn(name).values():
        assert each.width <= ROOM[0] + 1.3
        assert each.height <= ROOM[1] + 1.3
        assert each.description


def test_the_pictures_of_a_step_stand_in_the_order_of_the_work() -> None:
    assert step_names(3) == (
        "step-3-marks",
        "step-3-bores",
        "step-3-sands",
        "step-3-glues",
        "step-3",
        "step-3-clamps",
    )


@pytest.mark.parametrize("name", ["desk-rack", "tool-tote"])
def test_pictures_of_several_things_fill_their_place(name: str) -> None:
    """What is drawn, grown by 3 mm for the words and marks round it, covers over half the box; in a
    row of boxes the tote's glued handle covered 35 %."""
    for key, each in drawn(name).items():
        faces = [
            shapely.Polygon([(x, y) for x, y, _ in stroke.contour.vertices]).buffer(3)
            for stroke in each.items
            if isinstance(stroke, Stroke) and stroke.fill and len(stroke.contour.vertices) > 2
        ]
        covered = shapely.union_all(faces).area
        assert covered > 0.5 * each.width * each.height, key


def test_words_beside_a_picture_come_in_to_it() -> None:
    """With its plate in the corner of the room the tote's second end took 88 × 55 mm; the plate
    covers nothing."""
    sanded, glued = drawn("desk-rack")["step-1-sands"], drawn("tool-tote")["step-6-glues"]
    assert glued.width * glued.height < 0.6 * 88 * 55
    for drawing in (sanded, glued):
        plate = max(
            (each for each in drawing.items if isinstance(each, Stroke) and each.fill is Ink.PAPER),
            key=lambda each: box_of(each)[2] - box_of(each)[0],
        )
        for each in drawing.items:
            if isinstance(each, Stroke) and each.fill in (Ink.NEW_LIGHT, Ink.NEW_MID, Ink.FACE_MID):
                assert apart(box_of(plate), box_of(each)) or not overlaps(plate, each)


def overlaps(plate: Stroke, face: Stroke) -> bool:
    spots = [each[:2] for each in face.contour.vertices]
    return bool(shapely.box(*box_of(plate)).intersects(shapely.Polygon(spots)))


def test_pictures_tell_grit_count_and_time() -> None:
    tote = drawn("tool-tote")
    assert "Sand, grit 120" in words(tote["step-4-sands"])
    assert {"2 ×", "clamps", "leave on for 8 h"} <= words(tote["step-6-clamps"])
    assert {"Glue", "F1, F2"} <= words(tote["step-3-glues"])
    assert "only if it is to be carried" in words(drawn("desk-rack")["step-3-glues"])


@pytest.mark.parametrize("key", ["step-1-glues", "step-3-glues", "step-4-sands", "step-5-glues"])
def test_what_is_worked_on_is_hatched(key: str) -> None:
    assert len(accent(drawn("tool-tote")[key])) > 20


def test_notes_stand_within_the_picture_and_glue_without_a_face_has_none() -> None:
    plan = settled("tool-tote")
    (made,) = made_of(plan, [plan])
    assert made.build is not None
    steps = plan.plan.steps
    at = shown_at(made.build.drawn.assembled, made.build.order, steps, 3)
    glued = glued_in(at.assembled, at.step, steps[2], plan.plan)
    drawing = glue_view(at.assembled, at.step, glued, note="a drop for every pad " * 3)
    assert drawing is not None
    assert drawing.width <= ROOM[0] + 1.3
    assert drawing.height <= ROOM[1] + 1.3
    assert glue_view(at.assembled, at.step, ()) is None


def edges_of(plan: SettledPlan, name: str) -> float:
    """Return the area of what is sanded of the first piece that a name means, mm2."""
    worked = worked_on(name, plan.parts)
    assert worked is not None
    (made,) = made_of(plan, [plan])
    assert made.build is not None
    piece = made.build.drawn.assembled.piece(worked.pieces[0])
    return math.fsum(each.area for each in sanded_patches(piece, worked))


def test_the_edges_sanded_are_those_that_the_plan_eases() -> None:
    """Of the tote's pad all round: a slot's rim 2 (6 - 1-1/4) + pi 1-1/4 in; of the seat's face its
    area; of a part's side what features leave of it."""
    tote, stool = settled("tool-tote"), settled("harbour-stool")
    rim = (2 * (6 - 1.25) + math.pi * 1.25) * 25.4
    assert edges_of(tote, "pad") == pytest.approx(rim * tote.part("pad").thickness, rel=0.002)
    seat = stool.part("seat")
    wells = [each for each in seat.features if each.counterbore]
    sunk = math.fsum(
        math.pi / 4 * (each.counterbore[0].value ** 2 - each.width.value**2)
        for each in wells
        if each.counterbore
    )
    plain = seat.area - sunk
    assert edges_of(stool, "seat.show") == pytest.approx(plain, rel=0.01)
    rail = stool.part("rail")
    tabs = [each for each in rail.features if each.name.startswith("left-tabs")]
    left = rail.size[1] - math.fsum(each.width.value for each in tabs)
    assert edges_of(stool, "rail.left") == pytest.approx(left * rail.thickness, rel=0.01)


def test_marks_tell_their_distances_from_the_nearer_sides() -> None:
    """The seat's bolts stand 28.9 mm from its sides, its middle 160 from below; lines as stated."""
    seat = settled("harbour-stool").part("seat")
    bolts = tuple(each.at for each in seat.features if each.name.startswith("bolts"))
    marked = MarkedPart(part=seat, pieces=("seat",), points=bolts, lines=(("top", 40.0),))
    items = mark_view([marked]).items
    told = " ".join(each.text for each in items if isinstance(each, Label))
    x = min(each[0] for each in bolts)
    for figure in (f"{x:.1f} mm", f"{bolts[0][1]:.0f} mm", "40 mm"):
        assert figure in told
    assert told.count(f"{x:.1f} mm") == 2


def test_a_bore_into_an_edge_is_marked_along_it_alone() -> None:
    """The rail is 100 mm high, its bores in the middle of both ends."""
    plan = settled("harbour-stool")
    step = replace(plan.plan.steps[0], marks=(Named("rail.left-bore"), Named("rail.right-bore")))
    (marked,) = marked_in(step, plan)
    told = words(mark_view([marked]))
    assert [way for _, way in marked.edges] == [(-1.0, 0.0), (1.0, 0.0)]
    assert {each.partition(" (")[0] for each in told} == {"B", "50 mm"}


@pytest.mark.parametrize(
    "angles", [(90, 0, 0), (0, 0, 90), (180, 0, 0), (30, 50, -70), (0, 179, 2)]
)
def test_the_axis_of_a_turn_is_that_of_a_reference(angles: tuple[int, int, int]) -> None:
    """Against rotation vectors of scipy.spatial.transform."""
    rotation = Rotation.from_euler("xyz", angles, degrees=True)
    columns = rotation.as_matrix().T.tolist()
    axis, angle = turn_of(Rigid(HERE.origin, *(tuple(each) for each in columns)))
    assert angle == pytest.approx(rotation.magnitude(), abs=1e-9)
    vector = np.array(axis) * angle
    if angle < math.pi - 1e-9:
        assert vector == pytest.approx(rotation.as_rotvec(), abs=1e-9)
    else:
        assert abs(np.dot(vector, rotation.as_rotvec())) == pytest.approx(math.pi**2)


def test_the_axis_of_work_turned_over_is_level() -> None:
    axis, angle = turn_of(turned_down((0.0, 0.0, 1.0)))
    assert angle == pytest.approx(math.pi)
    assert axis[2] == pytest.approx(0.0)
