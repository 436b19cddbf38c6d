"""Cautions that fit: what is told of seats, supports, tables, walls and tall storage."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.stability import Stability
from kerfolio.edition.cautions import cautions_of
from tests.edition.carrying import carrying
from tests.plans import proved

FIXING, TABLE, SITTING, ON_IT, TIPPING = (
    "Fixing to the wall",
    "On a table",
    "Sitting",
    "Standing things on it",
    "Tipping over",
)
OWN = (FIXING, TABLE, SITTING, ON_IT, TIPPING)


def told(
    placed: str, *uses: str, size: tuple[float, float, float] = (1000, 400, 400)
) -> dict[str, str]:
    edition = carrying()
    hull = ((0.0, 0.0), (size[0], 0.0), (size[0], size[1]), (0.0, size[1]))
    middle = (size[0] / 2, size[1] / 2, size[2] / 2)
    steady = Stability(
        size=size,
        pile=size,
        mass=10.0,
        centre=middle,
        contact=hull,
        crown=hull,
        crown_height=size[2],
    )
    plan = replace(edition.plan, title="It", summary="It.", placed=placed, uses=uses)
    (made,) = proved().made
    assert made.build is not None
    standing = replace(made, build=replace(made.build, stability=steady))
    found = cautions_of(replace(edition, plan=plan, made=(standing,)))
    return {each.head: each.text for each in found}


@pytest.mark.parametrize(
    ("placed", "uses", "height", "heads"),
    [
        ("", (), 400, [TIPPING]),
        ("", (), 900, [FIXING]),
        ("free-standing", ("sit in the middle",), 450, [SITTING]),
        ("free-standing", ("sit in the middle",), 900, [SITTING]),
        ("free-standing", ("stand things on", "lean on"), 900, [ON_IT]),
        ("free-standing", ("store things",), 400, [TIPPING]),
        ("free-standing", ("store things",), 900, [FIXING]),
        ("wall", ("stand things on", "store things"), 400, [FIXING]),
        ("on a table", ("store things",), 900, [TABLE]),
    ],
)
def test_what_is_told(placed: str, uses: tuple[str, ...], height: float, heads: list[str]) -> None:
    found = told(placed, *uses, size=(1000, 400, height))
    assert [each for each in found if each in OWN] == heads
    assert list(found)[-1] == "Loads"


def test_a_climbing_child_is_for_what_is_tall_and_stores() -> None:
    assert "child climbs" in told("", "store things", size=(500, 300, 900))[FIXING]
    for low in (told("", "sit in the middle"), told("on a table", "store things")):
        assert not any("climbs" in text for text in low.values())


def test_holes_meet_common_studs_where_it_is_wide_enough() -> None:
    """25 mm of wood stay beyond each hole: 500 mm bear the nearer studs alone."""
    wide, narrow, least = (told("wall", size=(w, 300, 400))[FIXING] for w in (700, 500, 400))
    assert "Where studs stand 400, 600 or 625 mm, or 16 or 24 in apart, as is common, bore" in wide
    assert "Where studs stand 400 mm, or 16 in apart, as is common, bore holes so far" in narrow
    assert "fix a batten across two of them and the piece to the batten" in least
