"""The largest piece and the smallest bed, by hand from the sizes of the probe rack.

Its rail is 300 mm and two tabs of 17.6 mm long and 120 mm high, its sides are 200 by 120 mm; a
cutter of 6 mm runs round them. Laid out, they reach from 22.4 to 660 mm and from 20 to 220 mm.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.chapters.deciding import deciding_facts
from kerfolio.document.words import plain
from kerfolio.edition.bed import bed_needs
from kerfolio.model.carrying import Carries
from kerfolio.proving.machining import fits_bed
from tests.layouts.yard_edition import edition_in
from tests.plans import small_layout, small_settled


def test_what_bed_it_takes() -> None:
    found = bed_needs(edition_in(Carries(), small_settled(), small_layout()))
    assert found is not None
    assert (found.largest.name, found.off) == ("rail", ())
    assert found.alone == pytest.approx((335.2 + 12, 120 + 12))
    assert found.laid == pytest.approx((637.6 + 12, 200 + 12))


def test_the_facts_of_a_page_round_a_bed_up_and_name_what_it_has_no_room_for() -> None:
    edition = edition_in(Carries(), small_settled(), small_layout(), bed=(200.0, 340.0))
    (bed,) = [fact for fact in deciding_facts(edition) if fact.head == "Router’s bed"]
    told = [" ".join(plain(words) for words in line) for line in bed.lines]
    assert "350 × 140 mm" in told[0]


@pytest.mark.parametrize(
    ("bed", "messages"),
    [
        (None, []),
        ((340.0, 350.0), []),
        ((340.0, 340.0), ["part `rail` needs a bed of 347.2 x 132 mm"]),
        (
            (130.0, 350.0),
            [
                "part `rail` needs a bed of 347.2 x 132 mm",
                "part `side` needs a bed of 212 x 132 mm",
            ],
        ),
    ],
)
def test_parts_too_long_for_the_bed_are_told(
    bed: tuple[float, float] | None, messages: list[str]
) -> None:
    settled = small_settled()
    settled = replace(settled, plan=replace(settled.plan, bed=bed))
    assert sorted(str(each.message) for each in fits_bed.check(settled)) == messages
