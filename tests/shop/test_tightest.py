"""The tightest inside curve: that of the relief, a square corner, or none at all."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.edition.cutter_words import cutter_words
from kerfolio.shop.tightest import tightest_inside
from tests.edition.carrying import carrying
from tests.plans import RACK, proved


def test_a_dog_bone_is_as_tight_as_its_cutter_and_its_extra() -> None:
    # Slots and notches are opened for a cutter of 6 mm, 0.1 mm wider across; the bolt's hole of
    # 6.6 mm is drilled.
    drawn = proved(RACK + "relief: {style: dog-bone, cutter: compression-6}\n").drawn
    assert drawn is not None
    assert tightest_inside(drawn) == pytest.approx(3.05)


def test_without_relief_inside_corners_are_square() -> None:
    drawn = proved(RACK + "relief: none\n").drawn
    assert drawn is not None
    assert tightest_inside(drawn) == 0


def test_holes_are_left_out() -> None:
    drawn = proved().drawn
    assert drawn is not None
    bolts = [p for p in drawn.parts if any(c.operation == "hole" for c in p.cuts)]
    assert bolts
    radii = tightest_inside(replace(drawn, parts=tuple(bolts)))
    assert radii is None or radii != pytest.approx(3.3)


def test_the_words_name_the_widest_cutter() -> None:
    edition = carrying()
    radius = tightest_inside(edition.settled)
    words = cutter_words(edition)
    if radius:
        assert f"no cutter wider than {2 * radius:g} mm" in words
    assert words.startswith("The cut files are drawn for ")
    bare = replace(edition, settled=replace(edition.settled, sheets=(), parts=()))
    assert cutter_words(bare) == ""
