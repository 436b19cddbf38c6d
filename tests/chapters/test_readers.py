"""What readers measured, told with its count: much, little, or nothing."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from kerfolio.chapters.readers import readers
from kerfolio.model.outcome import Feel
from kerfolio.model.statement import Named
from kerfolio.model.trial import Sent
from tests.chapters.told import rack, words_of


def told(*sent: Sent, language: str = "en") -> str:
    edition = replace(rack(), sent=sent)
    spoken = replace(edition, identity=replace(edition.identity, language=language))
    found = readers(spoken)
    return words_of(found) if found else ""


def of(thickness: float | None, went: Feel | None = None) -> Sent:
    (sheet,) = rack().settled.sheets
    day = date(2026, 12, 1)
    return Sent(date=day, plan=Named("rack"), sheet=sheet.name, thickness=thickness, went=went)


def test_nothing_is_told_where_nothing_came() -> None:
    assert readers(rack()) is None
    other = replace(of(17.6), sheet="no-such-sheet")
    assert told(other) == ""


@pytest.mark.parametrize(
    ("thick", "words"),
    [
        ([17.6], "measured 17.6 mm (0.693 in). One is too few to go by: measure yours."),
        ([17.6, 17.9], "2 sheets sold as 18 mm"),
        ([17.6, 17.9], "measured 17.6 to 17.9 mm (0.693 to 0.705 in). So few say little of yours"),
        ([17.4, *[17.7] * 29, 18.1], "31 sheets sold as 18 mm"),
        ([17.4, *[17.7] * 29, 18.1], "17.4 to 18.1 mm"),
        # 2 / (31 + 1), by hand: the next of 32 sheets is as likely to be any in rank.
        ([17.4, *[17.7] * 29, 18.1], "About one in 16 of all such sheets lies outside that"),
    ],
)
def test_sheets_are_told_with_their_count(thick: list[float], words: str) -> None:
    assert words in told(*map(of, thick))


def test_how_joints_went_is_counted_the_loosest_first() -> None:
    sent = (of(None, Feel.BY_MALLET), of(None, Feel.BY_PALM), of(None, Feel.BY_PALM))
    assert "2 × with a push of the palm and 1 × with a mallet." in told(*sent)
    assert "mit einem Druck des Handballens" in told(*sent, language="de")
