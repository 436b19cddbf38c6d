"""Lots of pieces that are alike: what a picture shows once and counts."""

from __future__ import annotations

from collections.abc import Collection

from kerfolio.assembly.lots import lots
from kerfolio.drawing.scene import Scene


def lots_of(scene: Scene, labels: Collection[str]) -> list[list[str]]:
    """Return some pieces of a scene in lots: those of a lot are joined to one another."""
    known = [each.label for each in scene.pieces if each.label in labels]
    joints = scene.assembled.joints
    pairs = [(each.a, each.b) for each in joints if {each.a, each.b} <= {*known}]
    return [list(each) for each in lots(known, pairs)]


def alike_lots(scene: Scene, labels: Collection[str]) -> int:
    """Return how many lots of pieces move, each of them alike; 1 where they are not."""
    part = {each.label: each.part for each in scene.pieces}
    found = lots_of(scene, labels)
    kinds = {tuple(sorted(part[label] for label in each)) for each in found}
    return len(found) if len(kinds) == 1 else 1
