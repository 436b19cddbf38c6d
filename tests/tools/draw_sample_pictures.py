"""Draws the pictures of the sample workshop from its own settled plans; run by hand.

    .venv/bin/python -m tests.tools.draw_sample_pictures [PLAN ...]

The sample has no photographs. Each picture is a parallel projection of the plan's real parts,
extruded to their thickness, at the poses of ``sample_poses``; pieces new in a step are tinted and
moved out along the way they come home.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

import numpy as np

from kerfolio.model.feature_kind import TAB
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledFeature, SettledPlan
from kerfolio.settling.variant import drawn_variant
from tests.tools.projection import Canvas, Shown, View, guide, ink, paint
from tests.tools.sample_poses import SCENES, SETS, Scene

SAMPLE = Path(__file__).resolve().parents[2] / "sample-site"


def settled_plan(plan: Plan, stock: Stock) -> SettledPlan:
    """Return a plan settled at the thickness it is drawn for."""
    variant = drawn_variant(plan, stock)
    assert variant is not None
    settled, findings = settle(plan, stock, variant)
    assert settled is not None, findings
    return settled


def illustrate(settled: SettledPlan, folder: Path) -> None:
    """Draw the finished thing, and each step that has a picture of its own.

    Steps of open plans have none: their pictures are made when the plan is published.
    """
    scene = {**SCENES, **SETS}[settled.plan.name](settled)
    parts = {piece.label: part for part in settled.parts for piece in part.pieces}
    home = {label: Shown(parts[label], pose) for label, pose in scene.poses.items()}
    view = (scene.azimuth, scene.elevation)
    standing: list[str] = []
    for number, step in enumerate(settled.plan.steps, start=1):
        new = [each.name for each in step.add]
        if new and step.photo is not None:
            shown = {label: home[label] for label in standing}
            shown |= {label: _moved(home[label], scene, label) for label in new}
            draw(folder / f"step-{number}.png", shown, settled, view)
        standing += new
    draw(folder / "finished.png", home, settled, view)


def _moved(piece: Shown, scene: Scene, label: str) -> Shown:
    return Shown(piece.part, piece.pose, new=True, away=scene.moves.get(label, (0.0, 0.0, 0.0)))


def draw(
    path: Path, shown: Mapping[str, Shown], settled: SettledPlan, view: tuple[float, float]
) -> None:
    """Write one picture."""
    eye = View(*view)
    eye.fit(spot for each in shown.values() for spot in each.corners())
    canvas = Canvas(eye)
    if view[1] > 0:
        canvas.shadow(shown.values())
    for each in shown.values():
        paint(canvas, each)
    for each in sorted(shown.values(), key=lambda one: one.new):
        ink(canvas, each)
    for piece, other, feature in _meeting(shown, settled):
        depth = feature.depth.value if feature.kind is TAB and feature.depth else 0.0
        u, v = (feature.at[axis] + depth * feature.direction[axis] for axis in (0, 1))
        middle = piece.part.thickness / 2
        home = piece.at(u, v, middle, home=True) + np.array(other.away)
        guide(canvas, home, piece.at(u, v, middle))
    canvas.save(path)
    print(f"{path.relative_to(SAMPLE)}  {path.stat().st_size // 1000} kB")


def _meeting(
    shown: Mapping[str, Shown], settled: SettledPlan
) -> Iterator[tuple[Shown, Shown, SettledFeature]]:
    """Yield a moved piece, what it meets and its feature, for each joint the picture shows open.

    Pieces moved in different directions are left out: a slanting line would mislead.
    """
    for joint in settled.plan.joints:
        ends = [end for each in (joint.a, joint.b) if (end := _end(each.name, shown))]
        if len(ends) < 2:
            continue
        ends.sort(key=lambda end: not any(shown[end[0]].away))
        (label, name), (other, _) = ends
        piece, met = shown[label], shown[other]
        slanting = np.cross(np.array(piece.away), np.array(met.away))
        if piece.away == met.away or float(slanting @ slanting) > 1e-9:
            continue
        for feature in _named(name, piece.part.features):
            yield piece, met, feature


def _end(name: str, shown: Mapping[str, Shown]) -> tuple[str, str] | None:
    labels = [label for label in shown if name.startswith(f"{label}.")]
    return (labels[0], name.removeprefix(f"{labels[0]}.")) if labels else None


def _named(name: str, features: Iterable[SettledFeature]) -> list[SettledFeature]:
    return [each for each in features if each.name == name or each.name.startswith(f"{name}.")]


def main(names: list[str]) -> None:
    """Draw the pictures of the plans named, of all when none is."""
    workshop, _ = read_workshop(SAMPLE)
    assert workshop is not None
    for plan in workshop.plans:
        if not names or plan.name in names:
            illustrate(
                set_of(settled_plan(plan, workshop.stock)), SAMPLE / "plans" / plan.name / "photos"
            )


if __name__ == "__main__":
    main(sys.argv[1:])
