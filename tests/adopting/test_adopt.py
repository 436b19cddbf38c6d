"""Drawings of sample plans, spoiled at random, become those plans again.

The right answers are those of the plans that they were drawn from.
"""

from __future__ import annotations

import re
from collections import Counter
from datetime import date
from pathlib import Path

import ezdxf
import pytest

from kerfolio.adopting.alike import Draft
from kerfolio.adopting.linear import number_text
from kerfolio.adopting.recognised import Recognised, Tab
from kerfolio.adopting.shape import Shape
from kerfolio.basis.finding import has_errors
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area
from kerfolio.publishing.adopting import AdoptedPlan, AdoptRequest, adopt
from kerfolio.publishing.drawing_out import draw_out
from tests.adopting.spoiled import SPOILED, Spoiling, answer_of, drawn_plan, spoiled
from tests.plans import RACK, WORKSHOP, lay_down

_DAY = date(2026, 11, 30)
_BY_NAME = {each.name: each for each in SPOILED}

MEETINGS = {
    "desk-rack": {"tab": 8, "notch": 8},
    "harbour-stool": {"tab": 12},
    "tool-tote": {"tab": 8, "fingers": 4},
    "window-shelf": {"notch": 1},
    "potting-bench": {"tab": 44},
}
"""What meets in each plan, of what goes through the sheet, counted in the plan by hand."""

WEDGES = {"potting-bench": 2}


def adopted(how: Spoiling, folder: Path) -> AdoptedPlan:
    """Adopt a spoiled drawing into a new workshop."""
    (folder / "shop").mkdir()
    (folder / "shop" / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    drawing = folder / f"{how.name}.{how.form}"
    drawing.write_bytes(spoiled(how))
    return adopt(AdoptRequest(drawing=drawing, workshop=folder / "shop", into="made", day=_DAY))


def check(how: Spoiling, made: AdoptedPlan) -> None:
    """Look that a drawing was understood, or that it was said where not."""
    found, right = made.found, answer_of(drawn_plan(how.plan))
    assert found is not None, made.findings
    assert sum(len(part.numbers) for part in found.parts) == right.pieces
    # Two parts that differ in what is engraved alone are one, as they are drawn.
    assert len(found.parts) <= right.parts + 1
    assert {each.drawn.mm for each in found.sheets} == set(right.thickness)
    assert Counter(each.kind.name for each in found.arranged.meets) == MEETINGS[how.plan]
    assert len(found.wedges) == WEDGES.get(how.plan, 0)
    counts = Counter[str]()
    for part in found.parts:
        counts["slots"] += len(part.made.slots) * len(part.numbers)
        counts["notches"] += len(part.made.notches) * len(part.numbers)
        counts["rows"] += len(part.made.fingers) * len(part.numbers)
        counts["holes"] += len(part.made.holes) * len(part.numbers)
    assert counts == {key: value for key, value in vars_of(right).items() if value or key in counts}


def vars_of(right: object) -> dict[str, int]:
    """Return the counts of an answer that a drawing shows."""
    return {key: getattr(right, key) for key in ("slots", "notches", "rows", "holes")}


@pytest.mark.parametrize(
    "name", ["rack-px", "rack-r12", "stool-circles", "stool-blocks", "tote-inches"]
)
def test_a_spoiled_drawing_is_understood(name: str, tmp_path: Path) -> None:
    how = _BY_NAME[name]
    made = adopted(how, tmp_path)
    check(how, made)
    assert not has_errors(made.findings), made.findings
    if how.plan in ("desk-rack", "harbour-stool"):
        assert made.deviations == ()


@pytest.mark.bench
@pytest.mark.parametrize("how", SPOILED, ids=lambda how: how.name)
def test_every_spoiled_drawing_is_understood(how: Spoiling, tmp_path: Path) -> None:
    check(how, adopted(how, tmp_path))


def test_a_part_drawn_once_is_cut_as_often_as_it_says(tmp_path: Path) -> None:
    """The rack's four dividers and two runners, each drawn once with its count beside its name."""
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    once, lines, seen = [], spoiled(_BY_NAME["rack-plain"]).decode().split("\n"), set[str]()
    for index, line in enumerate(lines):
        word = re.search(r">(front|rear|divider \d|back)<", line)
        if word is None:
            once.append(line)
            continue
        part = {"rear": "front"}.get(word[1], word[1].split()[0])
        if part in seen:
            del once[-1]  # its outline stands on the line before; neither has openings
            continue
        seen.add(part)
        count = {"divider": " x4", "front": " (2 off)"}.get(part, "")
        once.append(lines[index].replace(word[1], f"{part}{count}"))
    drawing = tmp_path / "once.svg"
    drawing.write_text("\n".join(once), "utf-8")
    request = AdoptRequest(drawing=drawing, workshop=tmp_path / "shop", into="made", day=_DAY)
    made = adopt(request)
    assert made.found is not None
    assert {p.name: len(p.numbers) for p in made.found.parts} == {
        "front": 2,
        "divider": 4,
        "back": 1,
    }
    assert Counter(e.kind.name for e in made.found.arranged.meets) == MEETINGS["desk-rack"]
    assert not has_errors(made.findings)


def test_what_must_follow_the_sheet_does(tmp_path: Path) -> None:
    """Rail and stretcher of the stool lie between its sides: their length is `between: span - 2*t`.

    From slot to slot, that is the distance of the sides' middles less one thickness.
    """
    adopted(_BY_NAME["stool-circles"], tmp_path)
    # Holes of 6.6 mm clear M6 by the medium series of ISO 273.
    text = (tmp_path / "shop" / "plans" / "made" / "plan.yaml").read_text("utf-8")
    thick = drawn_plan("harbour-stool").parts[0].thickness
    assert text.count(f"{number_text(320 - thick, 'mm')} - t") >= 2
    assert "diameter: 6.6}}   # guessed: as for bolt-m6" in text


def test_the_same_drawing_gives_the_same_plan(tmp_path: Path) -> None:
    texts = []
    for number in ("1", "2"):
        (tmp_path / number).mkdir()
        adopted(_BY_NAME["rack-px"], tmp_path / number)
        texts.append((tmp_path / number / "shop/plans/made/plan.yaml").read_bytes())
    assert texts[0] == texts[1]


def test_what_is_open_is_asked_once_and_the_answer_taken(tmp_path: Path) -> None:
    how = _BY_NAME["stool-circles"]
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    drawing = tmp_path / "stool.dxf"
    drawing.write_bytes(spoiled(how))
    asked = []

    def ask(question: object) -> str:
        asked.append(question.key)  # type: ignore[attr-defined]
        return str(question.answers[-1])  # type: ignore[attr-defined]

    made = adopt(
        AdoptRequest(drawing=drawing, workshop=tmp_path / "shop", into="made", day=_DAY, ask=ask)
    )
    assert asked == ["lies rail", "lies stretcher", "stock ply"]
    assert made.answers is not None
    taken = made.answers["lies rail"]
    assert taken != made.questions[0].default
    assert not has_errors(made.findings)


def test_a_plan_that_is_there_is_not_overwritten(tmp_path: Path) -> None:
    lay_down(tmp_path / "shop", name="made")
    before = (tmp_path / "shop/plans/made/plan.yaml").read_bytes()
    drawing = tmp_path / "rack.svg"
    drawing.write_bytes(spoiled(_BY_NAME["rack-plain"]))
    made = adopt(AdoptRequest(drawing=drawing, workshop=tmp_path / "shop", into="made", day=_DAY))
    assert [each.rule for each in made.findings] == ["not-empty"]
    assert (tmp_path / "shop/plans/made/plan.yaml").read_bytes() == before


@pytest.mark.parametrize("form", ["svg", "dxf"])
def test_drawn_out_and_read_back_nothing_changes(form: str, tmp_path: Path) -> None:
    lay_down(tmp_path / "shop", name="rack")
    drawn = draw_out(tmp_path / "shop", "rack", tmp_path / "out")
    assert {each.suffix for each in drawn.files} == {".svg", ".dxf"}
    made = adopt(
        AdoptRequest(
            drawing=tmp_path / "out" / f"rack.{form}",
            workshop=tmp_path / "shop",
            into="rack",
            day=_DAY,
        )
    )
    assert [each.rule for each in made.findings] == ["drawing-unchanged"]
    assert made.files == ()


def test_it_is_drawn_out_for_the_thickness_that_the_plan_is_drawn_for(tmp_path: Path) -> None:
    lay_down(tmp_path / "shop", RACK.replace("drawn-for: 17.6", "drawn-for: 18"))
    _, dxf = draw_out(tmp_path / "shop", "rack", tmp_path / "out").files
    lines = ezdxf.readfile(dxf).modelspace().query("LWPOLYLINE[layer=='side.rail-slot']")
    corners = [spot[:2] for line in lines for spot in line.get_points()]
    across = [x for x, _ in corners]
    assert max(across) - min(across) == pytest.approx(18, abs=1e-4)


def test_a_plan_that_cannot_be_read_is_not_drawn_out(tmp_path: Path) -> None:
    lay_down(tmp_path / "shop", RACK.replace("17.6 to 18.2 by 0.2", "18.2 to 17.6"))
    told = draw_out(tmp_path / "shop", "rack", tmp_path / "out")
    assert [each.rule for each in told.findings] == ["out-of-range"]
    assert not told.files


def test_a_newer_drawing_changes_what_it_moved_and_nothing_else(tmp_path: Path) -> None:
    how = _BY_NAME["rack-plain"]
    first = adopted(how, tmp_path)
    file = tmp_path / "shop" / "plans" / "made" / "plan.yaml"
    mine = file.read_text("utf-8")
    mine = mine.replace("title: Push", "title: Gently push", 1)
    mine = mine.replace("rounded-slot: [100, 20]", "rounded-slot: [110, 20]")
    file.write_text(mine, "utf-8")
    newer = tmp_path / "newer.svg"
    drawn = spoiled(how).decode()
    # The grip of the back, drawn from 80 to 180 and 156 to 176, comes to lie 4 mm lower.
    newer.write_text(_lower_grip(drawn), "utf-8")
    request = AdoptRequest(drawing=newer, workshop=tmp_path / "shop", into="made", day=_DAY)
    again = adopt(request)
    assert first.answers == again.answers
    text = file.read_text("utf-8")
    assert "title: Gently push" in text
    assert "rounded-slot: [110, 20]" in text
    assert [each.name for each in again.kept] == ["back.window"]
    assert again.moved == ()
    once_more = adopt(request)
    assert (once_more.moved, file.read_text("utf-8")) == ((), text)


def _lower_grip(drawn: str) -> str:
    """Return the drawing with its one opening of round ends moved down by 4 mm."""
    lines = drawn.split("\n")
    at = next(i for i, line in enumerate(lines) if "<path" in line and "A 10.0" in line)
    lines[at] = lines[at].replace("<path ", '<path transform="translate(0 4)" ', 1)
    return "\n".join(lines)


def _cabinet(file: Path, short: float) -> None:
    """Draw two sides with housings and three shelves that go 6 mm into both, less what is short.

    Two housings say on their layer how deep they are, one by a word in it.
    """
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = 4
    space = document.modelspace()

    def box(x: float, y: float, wide: float, high: float, layer: str) -> None:
        corners = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)]
        space.add_lwpolyline(corners, close=True, dxfattribs={"layer": layer})

    for index, side in enumerate(("left", "right")):
        x = 20 + index * 350
        box(x, 20, 300, 700, "OUT")
        for y in (80, 320):
            box(x + 20, y, 260, 18, "HOUSING 6 mm")
        box(x + 20, 660, 260, 18, "OUT")
        space.add_text("6 mm deep", dxfattribs={"insert": (x + 60, 665)})
        space.add_text(f"side {side}", dxfattribs={"insert": (x + 150, 200)})
    for index in range(3):
        box(760, 20 + index * 300, 612 - short, 260, "OUT")
        space.add_text("shelf", dxfattribs={"insert": (1000, 100 + index * 300)})
    document.saveas(file)


@pytest.mark.parametrize("short", [0.0, 1.0])
def test_shelves_go_into_housings_whose_layer_says_how_deep(short: float, tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    _cabinet(tmp_path / "cab.dxf", short)
    request = AdoptRequest(
        drawing=tmp_path / "cab.dxf", workshop=tmp_path / "shop", into="cab", day=_DAY
    )
    made = adopt(request)
    assert not has_errors(made.findings), made.findings
    assert made.deviations == ()
    assert made.found is not None
    assert made.found.unplaced == ()
    text = (tmp_path / "shop/plans/cab/plan.yaml").read_text("utf-8")
    assert f"rectangle: [{number_text(600 - short, 'mm')}, 260]" in text
    assert text.count("depth: 6}}") == 5


def test_what_nothing_meets_is_cut_no_deeper_than_its_layer_says(tmp_path: Path) -> None:
    """A housing that no shelf goes into, and a pocket of another shape."""
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    _cabinet(tmp_path / "cab.dxf", 0.0)
    document = ezdxf.readfile(tmp_path / "cab.dxf")
    space = document.modelspace()
    for x in (20, 370):
        for corners in (
            ((60, 500), (160, 500), (160, 518), (60, 518)),
            ((60, 550), (90, 550), (90, 600)),
        ):
            there = [(x + a, b) for a, b in corners]
            space.add_lwpolyline(there, close=True, dxfattribs={"layer": "POCKET 4 mm"})
    document.saveas(tmp_path / "cab.dxf")
    request = AdoptRequest(
        drawing=tmp_path / "cab.dxf", workshop=tmp_path / "shop", into="cab", day=_DAY
    )
    made = adopt(request)
    text = (tmp_path / "shop/plans/cab/plan.yaml").read_text("utf-8")
    assert "housing: {pocket: {at: [110, 489], length: 100, takes: ply, depth: 4}}" in text
    assert "pocket: {pocket: {at: [0, 0], polygon:" in text
    assert "slot: {slot:" not in text
    assert made.deviations == ()


def test_a_tongue_takes_only_its_own_edge() -> None:
    feet = Contour(tuple((x, y, 0.0) for x, y in _FEET))
    tongue = Tab(at=(10.0, 6.0), out=(0.0, -1.0), width=20.0, depth=6.0)
    draft = Draft(outline=Shape(contour=tidy(feet)), openings=(), cuttings=(), placings=())
    body = Recognised(draft=draft, tabs=(tongue,)).body
    assert area(feet) - area(body) == pytest.approx(20 * 6)


_FEET = ((0, 0), (20, 0), (20, 30), (25, 30), (25, 0), (45, 0), (45, 60), (0, 60))
