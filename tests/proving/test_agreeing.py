"""Joints that agree at the thickness a plan was drawn for, and miss by its change at another."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding
from tests.plans import proved

BRIDGE = """\
plan: Probe bridge
version: 1.0.0
summary: A shelf between two sides, and a deck whose slots take both sides.
units: {unit}
sizes: {{t: thickness(ply)}}
sheets:
  ply: {{stock: {stock}, size: {size}, published-for: {thickness}, fit: {fit}}}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    outline: {{rectangle: [{wide}, {high}]}}
    features:
      slot: {{slot: {{at: [{wide}/2, {high}/2], length: {tab}, takes: ply}}}}
      top: {{tabs: {{edge: top, at: {wide}/2 - {tab}/2, width: {tab}, takes: ply}}}}
  shelf:
    sheet: ply
    outline: {{rectangle: [{long}, {wide}]}}
    features:
      left: {{tabs: {{edge: left, at: {wide}/2 - {tab}/2, width: {tab}, takes: ply}}}}
      right: {{tabs: {{edge: right, at: {wide}/2 - {tab}/2, width: {tab}, takes: ply}}}}
  deck:
    sheet: ply
    outline: {{rectangle: [2*{long}, {wide}]}}
    features:
      one: {{slot: {{at: [{long}/2, {wide}/2], length: {tab}, angle: 90, takes: ply}}}}
      two: {{slot: {{at: [{long}*3/2 + {apart}, {wide}/2], length: {tab}, angle: 90, takes: ply}}}}
joints:
  - {{tab: shelf.left, into: side.left.slot, show: out, looking: up}}
  - {{tab: shelf.right, into: side.right.slot}}
  - {{tab: side.left.top, into: deck.one}}
  - {{tab: side.right.top, into: deck.two}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First release.}}}}
"""
MM = {
    **{"unit": "mm", "stock": "birch-plywood-18", "size": "2440 x 1220", "fit": "0.1"},
    **{"wide": "200", "high": "300", "tab": "80", "long": "400"},
}
INCH = {
    **{"unit": "in", "stock": "plywood-3-4", "size": "96 x 48", "fit": "0.005"},
    **{"wide": "8", "high": "12", "tab": "3", "long": "16"},
}


def off(**given: str) -> list[Finding]:
    return [each for each in proved(BRIDGE.format(**given)).findings if each.rule == "joint-off"]


def test_the_thickness_at_which_all_joints_agree_is_told() -> None:
    (finding, *_) = off(**MM, thickness="17.2", apart="18")
    assert "0.8 mm" in finding.message
    assert finding.advice.endswith(
        " All joints agree with `ply` 18 mm thick: let lengths that were made for that depend on "
        "`t`."
    )


def test_it_is_told_in_inches() -> None:
    """23/32 in is sold as 3/4 in: the slots are 1/32 in, 0.79 mm, too far apart."""
    (finding, *_) = off(**INCH, thickness="23/32 in", apart="3/4 in")
    assert finding.advice.endswith(
        " All joints agree with `ply` 3/4 in thick: let lengths that were made for that depend on "
        "`t`."
    )


def test_what_is_right_as_drawn_alone_is_told_of_the_others() -> None:
    (finding, *_) = off(**MM, thickness="17.2 to 18.6, drawn-for: 17.9", apart="17.9")
    assert finding.message.endswith("(at 17.2mm)")
    assert " All joints agree with `ply` 17.9 mm thick: " in finding.advice


@pytest.mark.parametrize("apart", ["t", "thickness(ply)"])
def test_a_plan_whose_lengths_follow_agrees(apart: str) -> None:
    assert off(**MM, thickness="17.2", apart=apart) == []


def test_a_miss_that_no_thickness_explains_is_told_without_one() -> None:
    (finding, *_) = off(**MM, thickness="17.2", apart="t + 3")
    assert "All joints agree with" not in finding.advice
