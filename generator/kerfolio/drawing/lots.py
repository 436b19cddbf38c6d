"""Lots of pieces that are alike: what a picture shows once and counts."""

from __future__ import annotations

from collections.abc import Collection

from kerfolio.drawing.scene import Scene


def lots_of(scene: Scene, labels: Collection[str]) -> list[list[str]]:
    """Return some pieces of a scene in lots: those of a lot are joined to one another."""
    known = [each.label for each in scene.pieces if each.label in labels]
    lot = {label: label for label in known}

    def head(label: str) -> str:
        return label if lot[label] == label else head(lot[label])

    for joint in scene.assembled.joints:
        if joint.a in lot and joint.b in lot:
            lot[head(joint.b)] = head(joint.a)
    lots: dict[str, list[str]] = {}
    for label in known:
        lots.setdefault(head(label), []).append(label)
    return list(lots.values())


def alike_lots(scene: Scene, labels: Collection[str]) -> int:
    """Return how many lots of pieces move, each of them alike; 1 where they are not."""
    part = {each.label: each.part for each in scene.pieces}
    lots = lots_of(scene, labels)
    kinds = {tuple(sorted(part[label] for label in each)) for each in lots}
    return len(lots) if len(kinds) == 1 else 1
