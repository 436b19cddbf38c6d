"""Small workshops that many rooms' tests use, read from YAML as a maker's would be."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from textwrap import dedent

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.model.workshop import Workshop
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant_name import labelled

WORKSHOP = "workshop: Proving Ground\nmaker: Ada Example\nlicence: CC-BY-SA-4.0\n"

RACK = """\
plan: Probe rack
version: 1.0.0
summary: A rack to measure with.
sizes: {t: thickness(ply), w: 300, h: 120}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.6 to 18.2 by 0.2, drawn-for: 17.6, fit: 0.1}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    grain: along y
    outline: {polygon: [[0, 0], [200, 0], [200, h, {round: 30}], [0, h, {round: 30}]]}
    features:
      rail-slot: {slot: {at: [100, 60], length: 60, angle: 90, takes: ply}}
      bolt: {hole: {at: [30, 30], for: bolt-m6x40}}
      foot: {notch: {edge: bottom, at: 160, depth: 20, takes: ply}}
      mark: {engrave: {text: I, at: [150, 100], height: 8, depth: 0.5}}
  rail:
    sheet: ply
    grain: along x
    outline: {rectangle: [w, h]}
    features:
      left-tab: {tabs: {edge: left, at: 30, width: 60, depth: t}}
      right-tab: {tabs: {edge: right, at: 30, width: 60, takes: ply}}
      housing: {pocket: {at: [150, 80], length: 60, takes: ply, depth: 6}}
joints:
  - {tab: rail.left-tab, into: side.left.rail-slot, show: out, looking: right}
  - {tab: rail.right-tab, into: side.right.rail-slot, show: out, looking: left}
hardware: [{item: bolt-m6x40, count: 2, for: sides}]
steps:
  - title: Put it together
    add: [side.left, rail, side.right]
    hardware: {bolt-m6x40: 2}
    text: Push the tabs home.
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line

ONE = RACK.replace("published-for: 17.6 to 18.2 by 0.2, drawn-for: 17.6", "published-for: 17.6")
"""The same for one thickness alone: where only a whole publish counts, it takes half the time."""

BOARD = """\
plan: Plain board
version: 1.0.0
summary: A board that lies there.
sizes: {w: 300}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.6, fit: 0.1}
parts:
  board: {sheet: ply, grain: along x, outline: {rectangle: [w, 200]}}
steps: [{title: Lay it down, add: [board], text: Done.}]
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""
"""One board: where it does not matter what is published, it takes half the time again."""

READY = RACK.replace("fit: 0.1}", "ready-made: [17.8, 18, 18.2], fit: 0.1}")
"""The same with files made ready for four thicknesses."""


def altered(text: str, *changes: tuple[str, str]) -> str:
    """Return a text with each old one, which must occur once, made a new one."""
    for old, new in changes:
        assert text.count(old) == 1, f"{text.count(old)} times: {old}"
        text = text.replace(old, new)
    return text


def lay_down(folder: Path, plan: str = RACK, name: str = "rack", workshop: str = WORKSHOP) -> Path:
    """Write a workshop of one plan into a folder."""
    (folder / "plans" / name).mkdir(parents=True)
    (folder / "workshop.yaml").write_text(dedent(workshop), "utf-8")
    (folder / "plans" / name / "plan.yaml").write_text(dedent(plan), "utf-8")
    return folder


@cache
def workshop(plan: str = RACK) -> Workshop:
    """Read a workshop of one plan; AssertionError when it has errors."""
    with TemporaryDirectory() as folder:
        found, findings = read_workshop(lay_down(Path(folder) / "shop", plan))
    assert found is not None
    assert not has_errors(findings), "\n".join(map(str, findings))
    return found


@cache
def proved(plan: str = RACK) -> Proof:
    """Prove a plan from its text."""
    found = workshop(plan)
    return prove_plan(found.plans[0], found.stock)


def remarks(plan: str = RACK) -> list[Finding]:
    """Return what is said of a plan, but that no loop of joints holds its only rail."""
    return [each for each in proved(plan).findings if each.rule != "joint-unchecked"]


def settled_at(thickness: float, plan: str = RACK) -> SettledPlan:
    """Return a one-sheet plan settled at a thickness (mm)."""
    found = workshop(plan)
    (only,) = found.plans
    there = FitVariant(label="", thickness=((only.sheets[0].name, thickness),))
    made, findings = settle(only, found.stock, labelled(there, only.units))
    assert made is not None, "\n".join(map(str, findings))
    return made


def small_settled() -> SettledPlan:
    """Return the probe rack at the thickness it is drawn for."""
    drawn = proved().drawn
    assert drawn is not None
    return drawn


def small_layout() -> Layout:
    """Return the probe rack's pieces side by side on one sheet."""
    placements = (
        Placement(piece="rail", part="rail", x=40.0, y=20.0, turn=0.0),
        Placement(piece="side.left", part="side", x=520.0, y=20.0, turn=90.0),
        Placement(piece="side.right", part="side", x=660.0, y=20.0, turn=90.0),
    )
    sheet = SheetLayout(number=1, sheet="ply", size=(2440.0, 1220.0), placements=placements)
    return Layout(sheets=(sheet,), engine="by hand", computed_from="")
