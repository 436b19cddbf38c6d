"""A German reader of an edition reads German: no English sentence is left."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any

import pytest

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.edition.by_hand import by_hand
from kerfolio.edition.cautions import cautions_of, opening_words
from kerfolio.edition.copies import copies_remark
from kerfolio.edition.cutter_words import cutter_words
from kerfolio.edition.damp_words import room_words, surroundings_words
from kerfolio.edition.depth_words import depth_advice
from kerfolio.edition.difficulty import difficulty_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import choice_words, file_words, sizes_words
from kerfolio.edition.format_words import format_words
from kerfolio.edition.in_use import Used, used_of
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.edition.layers import layers_explained
from kerfolio.edition.licence_words import licence_of, licence_rules, licence_sentence
from kerfolio.edition.making import set_of, wholes_of
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.proved_words import proved_words
from kerfolio.edition.rescue_words import glued_words, laid_words, offcut_words, slip_words
from kerfolio.edition.saw_words import saw_caution, saw_how, spare_words
from kerfolio.edition.setup import setup_sheets
from kerfolio.edition.setup_art import setup_arts
from kerfolio.edition.setup_coupon import setup_coupons
from kerfolio.edition.sheet_count import counted_as
from kerfolio.edition.side_words import offset_words
from kerfolio.edition.tools import tools_of
from kerfolio.edition.yard import yard_card
from kerfolio.settling.settled import Coupon, SettledFeature, SettledPart, SettledPlan, SettledSheet
from kerfolio.shop.shims import Shim
from tests.edition.carrying import carrying
from tests.edition.used import sat
from tests.paper.sample_editions import sample

GERMAN = Reader(language="de")
ENGLISH = re.compile(r"\b([Tt]he|of|and|with|is|are|[Yy]our|[Ii]t|to|not|by|from)\b")
"""Words that no German sentence holds, nor any title of these plans."""


def _in_use(found: Used | None) -> list[object]:
    """Return what readers are told; what the plan says it is used for is its own word."""
    if found is None:
        return []
    return [found.assumptions, *((each.sentence, each.figures) for each in found.things)]


Told = Callable[[Edition], object]
TOLD: tuple[Told, ...] = (
    *(by_hand, cautions_of, copies_remark, cutter_words, room_words),
    *(surroundings_words, difficulty_of, sizes_words, joint_fits, measuring_of, proved_words),
    *(spare_words, setup_sheets, setup_coupons, setup_arts, counted_as, yard_card),
    *(offset_words, set_of, wholes_of),
    lambda each: [layer.purpose for layer in layers_explained(each)],
    lambda each: _in_use(used_of(each)),
    lambda each: [tool.purpose for tool in tools_of(each)],
    lambda each: opening_words(each.reader),
    lambda each: depth_advice(each.reader, floors="3 mm", engraves=True),
    lambda each: [file_words(each, 1), *choice_words(each, each.settled.sheets[0].name, 99.0)],
    lambda each: format_words(each.formats, each.reader),
    lambda each: [licence_sentence(licence_of(each), each.reader), licence_rules(each.reader)],
    lambda each: [laid_words(each.reader), glued_words(each.reader), saw_how(each.reader)],
    lambda each: [saw_caution(each.reader), offcut_words("A", 90.0, each.reader)],
    lambda each: slip_words([Shim(feature="a", count=2, length=9, width=9)], 0.5, each.reader),
)


@cache
def editions() -> tuple[Edition, ...]:
    return (
        sample("harbour-stool"),
        sample("potting-bench"),
        sample("desk-rack"),
        sat(),
        carrying(),
    )


def told_to(edition: Edition, reader: Reader) -> list[str]:
    """Return all that is told of an edition to a reader, but for what a maker calls things."""
    identity = replace(edition.identity, language=reader.language, units_first=reader.unit)
    there = replace(edition, identity=identity)
    return [words for tell in TOLD for words in texts(tell(there))]


def texts(told: Any) -> Iterator[str]:
    """Yield the texts of what is told, whatever it is made of."""
    match told:
        case str():
            yield told
        case SettledFeature() | SettledPart() | SettledSheet() | SettledPlan() | Coupon() | None:
            return
        case Mapping():
            yield from told.values()
        case _ if is_dataclass(told):
            for each in fields(told):
                yield from texts(getattr(told, each.name))
        case _ if hasattr(told, "__iter__"):
            for each in told:
                yield from texts(each)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_no_english_sentence_is_left(unit: str) -> None:
    for edition in editions():
        told = told_to(edition, replace(GERMAN, unit=unit))
        assert [each for each in told if ENGLISH.search(each)] == []
        assert not any(re.search(r"\d\.\d+ (mm|in|kg|lb)", each) for each in told)


def test_english_is_found() -> None:
    told = told_to(editions()[0], METRIC)
    assert sum(bool(ENGLISH.search(each)) for each in told) > len(told) / 3


def test_counts_and_figures_stand_in_whole_sentences() -> None:
    told = told_to(editions()[-1], GERMAN)
    assert {
        "Etwa 9 Meter zu sägen, 1 Loch zu bohren.",
        "4 Stücke in 1 Schritt",
        "Bewiesen bei 17,7 mm und 3 mm.",
        "Streifen von etwa 0,5 mm: 1 Lage Karton (0,3 mm) und 2 Lagen Papier (0,1 mm), so dick, "
        "wie das gewöhnlich ist.",
    } <= set(told)
