"""Fastenings and crossings that nobody wrote down: what must be told is what was taken out."""

from __future__ import annotations

import pytest

from tests.fastened_plan import spoilt
from tests.plans import altered
from tests.proving.two_panels import remarks

GRID = """\
plan: Grid
version: 1.0.0
summary: Two strips over two, a halving at each crossing.
sizes: {t: thickness(ply)}
sheets: {ply: {stock: birch-plywood-9, size: 1525 x 1525, published-for: 9, fit: 0.1}}
parts:
  long:
    sheet: ply
    pieces: [front, rear]
    outline: {rectangle: [400, 80]}
    features:
      crossings: {notch: {edge: top, at: [80, 300], depth: 40, takes: ply}}
  cross:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [300, 80]}
    features:
      crossings: {notch: {edge: bottom, at: [60, 200], depth: 40, takes: ply}}
joints:
  - {notch: cross.left.crossings.1, with: long.front.crossings.1, looking: right}
  - {notch: cross.left.crossings.2, with: long.rear.crossings.1}
  - {notch: cross.right.crossings.1, with: long.front.crossings.2}
  - {notch: cross.right.crossings.2, with: long.rear.crossings.2}
standing: {piece: long.front, looks: front}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
LAST = "  - {notch: cross.right.crossings.2, with: long.rear.crossings.2}\n"
FIRST = "  - {notch: cross.left.crossings.2, with: long.rear.crossings.1}\n"
OPEN = (
    "notch: {edge: top, at: [80, 300], depth: 40, takes: ply}}",
    "notch: {edge: top, at: [80, 300], depth: 40, takes: ply}}\n"
    "      more: {notch: {edge: top, at: 200, depth: 40, takes: ply}}",
)
PAD = "joins: [pad.screws, rail.pilots]"
SHELF = "joins: [side.screws, shelf.pilots]"
THIRD = "[[20, 30], [60, 30]], for: screw-4x30"


def forgotten(rule: str, text: str) -> list[tuple[str, str]]:
    return [(each.message, each.advice) for each in remarks(text, rule)]


@pytest.mark.parametrize(
    ("changes", "empty", "like", "joins"),
    [
        (
            [(PAD, "joins: [pad.screws.1, rail.pilots.1]")],
            "pad.screws.2",
            "pad.screws.1",
            "rail.pilots.2",
        ),
        (
            [(PAD, "joins: [pad.screws.2, rail.pilots.2]")],
            "pad.screws.1",
            "pad.screws.2",
            "rail.pilots.1",
        ),
        (
            [(SHELF, "joins: [side.screws.1, shelf.pilots.1]")],
            "side.screws.2",
            "side.screws.1",
            "shelf.pilots.2",
        ),
        # Through another set of holes for the same screw, and into nothing.
        (
            [(THIRD, THIRD + "}}\n      more: {hole: {at: [40, 10], for: screw-4x30")],
            "pad.more",
            "pad.screws.1",
            "...",
        ),
    ],
)
def test_a_fastening_forgotten_is_told_with_the_line_to_write(
    changes: list[tuple[str, str]], empty: str, like: str, joins: str
) -> None:
    message = f"no fastening goes through `{empty}`, as through `{like}`"
    advice = f"Write one like it under `fastenings`: `joins: [{empty}, {joins}]`."
    assert forgotten("fastening-forgotten", spoilt(*changes)) == [(message, advice)]


@pytest.mark.parametrize(
    "changes",
    [
        [],
        # A plain hole is for nothing that is known, and no other hole is for this one's bolt.
        [(THIRD, THIRD + "}}\n      more: {hole: {at: [40, 10], diameter: 4.5")],
        [(THIRD, THIRD + "}}\n      more: {hole: {at: [40, 10], for: bolt-m4x16")],
        # Listed loose: nobody knows for which holes.
        [
            (PAD, "joins: [pad.screws.1, rail.pilots.1]"),
            ("steps:\n", "hardware: [{item: screw-4x30, count: 1}]\nsteps:\n"),
        ],
    ],
)
def test_holes_that_may_be_for_something_else_are_not_told(changes: list[tuple[str, str]]) -> None:
    assert forgotten("fastening-forgotten", spoilt(*changes)) == []


@pytest.mark.parametrize(
    ("changes", "lies", "lies_in"),
    [
        ([(LAST, "")], "cross.right.crossings.2", "long.rear.crossings.2"),
        ([(FIRST, "")], "cross.left.crossings.2", "long.rear.crossings.1"),
    ],
)
def test_a_crossing_forgotten_is_told_with_the_line_to_write(
    changes: list[tuple[str, str]], lies: str, lies_in: str
) -> None:
    message = f"`{lies}` lies in `{lies_in}`, and no joint says so"
    advice = f"Add to `joints`: `{{notch: {lies}, with: {lies_in}}}`."
    assert forgotten("crossing-forgotten", altered(GRID, *changes)) == [(message, advice)]


@pytest.mark.parametrize("changes", [[], [OPEN], [OPEN, ("[60, 200]", "[60, 200, 250]")]])
def test_notches_that_cross_nothing_are_not_told(changes: list[tuple[str, str]]) -> None:
    assert forgotten("crossing-forgotten", altered(GRID, *changes)) == []
