"""Whether something braces the whole against sideways force."""

from __future__ import annotations

import math
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.extent import corners
from kerfolio.basis.said import Words, phrase
from kerfolio.geometry.rigid import Vector, dot

ENOUGH = 0.25
"""Braces must be together as high as this share of the uprights they hold.

Common practice, no single source: a back, an apron or rails of some height keep the corners
square; a shelf lying on edge joints alone does not.
"""

_ALONG = 0.9
_ACROSS = 0.3
_FLOOR = 0.5
_WAYS: dict[str, Vector] = {
    "sideways": (1.0, 0.0, 0.0),
    "fore-and-aft": (0.0, 1.0, 0.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Unbraced:
    """A way of pushing in which nothing keeps uprights square: ``uprights`` would lean over.

    ``share`` is how high their braces are together, as a share of the lowest upright's height.
    """

    way: Words
    uprights: tuple[str, ...]
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Braced:
    """What stands against a push one way: ``push`` is its direction (unit, world).

    ``uprights`` stand square to it, ``braces`` (with their heights, mm) along it and are joined to
    two uprights, ``planes`` stand along it by themselves. ``share`` as for ``Unbraced``; 1 where
    there are no two uprights to hold.
    """

    way: Words
    push: Vector
    uprights: tuple[str, ...]
    braces: tuple[tuple[str, float], ...]
    planes: tuple[str, ...]
    share: float


def bracing(assembled: Assembled) -> tuple[Braced, ...]:
    """Return what stands against a push to the side, and what against one to the front or back."""
    return tuple(_braced(way, push, assembled) for way, push in _WAYS.items())


def _braced(way: str, push: Vector, assembled: Assembled) -> Braced:
    uprights = [each for each in assembled.pieces if _stands_across(each, push)]
    labels = {each.label for each in uprights}
    along = [each for each in assembled.pieces if _stands_along(each, push)]
    braces = [each for each in along if len(_joined(each.label, assembled) & labels) > 1]
    share = 1.0
    if len(uprights) > 1:
        share = math.fsum(map(_height, braces)) / min(map(_height, uprights))
    return Braced(
        way=phrase(f"pushes-{way}"),
        push=push,
        uprights=tuple(each.label for each in uprights),
        braces=tuple((each.label, _height(each)) for each in braces),
        planes=tuple(each.label for each in along if _on_the_floor(each)),
        share=share,
    )


def _on_the_floor(piece: PosedPiece) -> bool:
    return min(point[2] for point in corners(piece)) < _FLOOR


def unbraced(assembled: Assembled) -> tuple[Unbraced, ...]:
    """Return the ways in which uprights of the whole would lean over under a push.

    Uprights are panels that stand on the floor square to the push. A brace stands upright along
    the push and is joined to two of them. Joints are taken to hold; whether they do under a push
    is not known here, so that having a brace is no promise.
    """
    return tuple(
        Unbraced(way=each.way, uprights=each.uprights, share=each.share)
        for each in bracing(assembled)
        if each.share < ENOUGH
    )


def _stands_across(piece: PosedPiece, push: Vector) -> bool:
    return abs(dot(piece.pose.z, push)) > _ALONG and _on_the_floor(piece)


def _stands_along(piece: PosedPiece, push: Vector) -> bool:
    return abs(piece.pose.z[2]) < _ACROSS and abs(dot(piece.pose.z, push)) < _ACROSS


def _height(piece: PosedPiece) -> float:
    heights = [point[2] for point in corners(piece)]
    return max(heights) - min(heights)


def _joined(label: str, assembled: Assembled) -> set[str]:
    pairs = [(each.a, each.b) for each in assembled.joints if label in (each.a, each.b)]
    return {other for pair in pairs for other in pair if other != label}
