"""One drawing of a whole sheet: its parts by layer, by block with a number, by a point inside."""

from __future__ import annotations

from pathlib import Path

import ezdxf
import pytest
from ezdxf import bbox
from ezdxf.layouts import BlockLayout, Modelspace

from kerfolio.basis.finding import Finding
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import lay_down

PLAN = """\
plan: Whole sheet
version: 1.0.0
summary: Parts of one drawing.
sheets:
  ply: {{stock: birch-plywood-18, published-for: 17.8, fit: 0.1}}
parts:
{parts}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""
SLOTS = "features: {SLOT: {slot: takes ply}, HOLE: hole}"


def plan_of(**drawings: str) -> str:
    """Return a plan of a part for each drawing stated."""
    rows = (
        f"  {name}: {{sheet: ply, drawing: {{file: drawings/all.dxf, drawn-for: 18, {each}}}}}\n"
        for name, each in drawings.items()
    )
    return PLAN.format(parts="".join(rows).rstrip())


def box(
    space: BlockLayout | Modelspace, layer: str, x: float, y: float, w: float, h: float
) -> None:
    corners = [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
    space.add_lwpolyline(corners, close=True, dxfattribs={"layer": layer})


def whole_sheet(space: Modelspace) -> None:
    """Two parts side by side, of two slots and one; a third part in the window of the first."""
    box(space, "CUT", 10, 10, 400, 300)
    box(space, "CUT", 450, 10, 200, 300)
    box(space, "CUT", 210, 110, 150, 150)
    for x, y in ((50, 50), (150, 50), (500, 50), (250, 150)):
        box(space, "SLOT", x, y, 60, 18)
    space.add_circle((600, 200), 5, dxfattribs={"layer": "HOLE"})
    space.add_circle((30, 30), 5, dxfattribs={"layer": "HOLE"})


def proof_of(folder: Path, plan: str, draw: object = whole_sheet) -> tuple[Proof, list[Finding]]:
    """Return a plan of one drawing proved, with what reading it found."""
    shop = lay_down(folder / "shop", plan)
    document = ezdxf.new("R2010")
    document.units = ezdxf.units.MM
    draw(document.modelspace())  # type: ignore[operator]
    (shop / "plans/rack/drawings").mkdir()
    document.saveas(shop / "plans/rack/drawings/all.dxf")
    found, read = read_workshop(shop)
    assert found is not None
    proof = prove_plan(found.plans[0], found.stock)
    return proof, [*read, *proof.findings]


def test_parts_are_told_apart_by_a_point_inside_and_take_what_lies_in_them(tmp_path: Path) -> None:
    plan = plan_of(
        wide=f"outline: CUT, at: [20, 200], {SLOTS}",
        narrow=f"outline: CUT, at: [23 in, 50], {SLOTS}",
        inner="outline: CUT, at: [220, 120], features: {SLOT: {slot: takes ply}}",
    )
    proof, findings = proof_of(tmp_path, plan)
    assert proof.drawn is not None, findings
    wide, narrow, inner = proof.drawn.parts
    assert (wide.size, narrow.size, inner.size) == ((400, 300), (200, 300), (150, 150))
    assert [each.name for each in wide.features] == ["SLOT.1", "SLOT.2", "HOLE"]
    assert [each.name for each in narrow.features] == ["SLOT", "HOLE"]
    assert [each.name for each in inner.features] == ["SLOT"]
    assert narrow.features[0].at == pytest.approx((80, 49))


def test_a_point_beside_all_outlines_and_none_at_all_are_told(tmp_path: Path) -> None:
    plan = plan_of(beside="outline: CUT, at: [430, 50]", several="outline: CUT")
    _, findings = proof_of(tmp_path, plan)
    beside, several = (each for each in findings if each.severity == "error")
    assert beside.message == "no closed `CUT` lies round 430 mm, 50 mm"
    assert beside.advice == "Give a point inside the part, such as `at: [210, 160]`."
    assert several.message == "`CUT` names 3 elements of `drawings/all.dxf`"
    assert several.advice == (
        "Name one: `LWPOLYLINE on layer CUT`, `LWPOLYLINE on layer CUT.2`, "
        "`LWPOLYLINE on layer CUT.3`; or add a point inside it, such as `at: [210, 160]`; "
        "or give the outline a layer of its own."
    )


def test_an_outline_is_taken_by_the_name_that_advice_gives_it(tmp_path: Path) -> None:
    proof, findings = proof_of(tmp_path, plan_of(narrow="outline: LWPOLYLINE on layer CUT.2"))
    assert proof.drawn is not None, findings
    assert proof.drawn.parts[0].size == (200, 300)


def blocks(space: Modelspace) -> None:
    """One block inserted twice, the second time turned."""
    side = space.doc.blocks.new("SIDE")
    box(side, "CUT", 0, 0, 300, 200)
    box(side, "SLOT", 40, 40, 60, 18)
    side.add_circle((200, 100), 5, dxfattribs={"layer": "HOLE"})
    space.add_blockref("SIDE", (10, 10))
    space.add_blockref("SIDE", (600, 10), dxfattribs={"rotation": 90})


def test_a_block_is_a_part_by_its_number(tmp_path: Path) -> None:
    """Where the inserts lie is the DXF library's word: the box of what it draws of them."""
    plan = plan_of(side=f"outline: SIDE.2, {SLOTS}")
    proof, findings = proof_of(tmp_path, plan, blocks)
    assert proof.drawn is not None, findings
    (side,) = proof.drawn.parts
    document = ezdxf.readfile(tmp_path / "shop/plans/rack/drawings/all.dxf")
    second = list(document.modelspace().query("INSERT"))[1]
    drawn = bbox.extents(second.virtual_entities())
    assert side.size == pytest.approx((drawn.size.x, drawn.size.y))
    assert [each.name for each in side.features] == ["SLOT", "HOLE"]
    assert side.features[0].direction == pytest.approx((0, 1))


def test_a_block_inserted_twice_is_asked_for_by_its_number(tmp_path: Path) -> None:
    _, findings = proof_of(tmp_path, plan_of(side="outline: SIDE"), blocks)
    (finding,) = (each for each in findings if each.severity == "error")
    assert finding.message == "`SIDE` is inserted 2 times in `drawings/all.dxf`"
    assert finding.advice == "Name one by its number: `SIDE.1`, `SIDE.2`."


def unused(findings: list[Finding]) -> list[str]:
    return [each.message for each in findings if each.rule == "unused-element"]


def test_closed_shapes_inside_a_used_outline_that_no_part_takes_are_told_for_each(
    tmp_path: Path,
) -> None:
    """Slots that are left out of one part are told, those of another part are its own."""
    plan = plan_of(
        wide="outline: CUT, at: [20, 200], features: {HOLE: hole}",
        narrow=f"outline: CUT, at: [500, 200], {SLOTS}",
        inner="outline: CUT, at: [220, 120]",
    )
    proof, findings = proof_of(tmp_path, plan)
    assert proof.drawn is not None
    rows = "`LWPOLYLINE on layer SLOT`, `LWPOLYLINE on layer SLOT.2`"
    third = "`LWPOLYLINE on layer SLOT.4`"
    assert unused(findings) == [
        f"`drawings/all.dxf`: not used in `wide`: {rows}",
        f"`drawings/all.dxf`: not used in `inner`: {third}",
    ]


def test_a_slot_drawn_beside_every_outline_is_an_error_of_the_part(tmp_path: Path) -> None:
    def draw(space: Modelspace) -> None:
        box(space, "CUT", 0, 0, 400, 300)
        box(space, "SLOT", 450, 50, 60, 18)

    plan = plan_of(plate="outline: CUT, features: {SLOT: {slot: takes ply}}")
    _, findings = proof_of(tmp_path, plan, draw)
    assert "feature-outside" in [each.rule for each in findings]


def joined(*joints: str) -> str:
    rail = (
        "  rail: {sheet: ply, outline: {rectangle: [300, 60]}, features: {end: {tabs: "
        "{edge: left, at: 0, width: 60, takes: ply}}}}\nsheets:"
    )
    plan = plan_of(wide=f"outline: CUT, at: [20, 200], {SLOTS}")
    stated = "".join(f"  - {each}\n" for each in joints)
    return f"{plan}joints:\n{stated}".replace("releases:", f"{rail[:-8]}\nreleases:")


def test_joints_name_features_by_any_name_that_a_drawing_may_have(tmp_path: Path) -> None:
    """Layers are mostly written in capitals, often with blanks."""
    plan = joined("{tab: rail.end, into: wide.SLOT.2, show: out, looking: up}")
    proof, findings = proof_of(tmp_path, plan)
    assert [each.message for each in findings if each.severity == "error"] == []
    (made,) = proof.made
    assert {each.b for each in made.build.drawn.assembled.joints} == {"wide"}


def test_a_joint_of_a_slot_that_the_drawing_does_not_hold_is_an_error(tmp_path: Path) -> None:
    _, findings = proof_of(tmp_path, joined("{tab: rail.end, into: wide.SLOT.3}"))
    (finding,) = (each for each in findings if each.severity == "error")
    assert (finding.rule, finding.message) == (
        "joint-without-feature",
        "`wide` comes to have no feature `SLOT.3`",
    )
    assert "`SLOT.1`" in finding.advice


def test_an_element_is_named_in_a_joint_as_findings_name_it(tmp_path: Path) -> None:
    name = "LWPOLYLINE on layer SLOT.2"
    plan = joined(f"{{tab: rail.end, into: wide.{name}, show: out, looking: up}}")
    plan = plan.replace("{SLOT: {slot: takes ply}, HOLE: hole}", f"{{{name}: {{slot: takes ply}}}}")
    proof, findings = proof_of(tmp_path, plan)
    assert [each.message for each in findings if each.severity == "error"] == []
    assert len(proof.made) == 1


def test_what_lies_beside_the_one_insert_used_is_not_told(tmp_path: Path) -> None:
    _, findings = proof_of(
        tmp_path, plan_of(side="outline: SIDE.2, features: {HOLE: hole}"), blocks
    )
    assert unused(findings) == [
        "`drawings/all.dxf`: not used in `side`: `LWPOLYLINE on layer SLOT.2`"
    ]
