"""Forms of single values, with the words they refuse in."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from kerfolio.bundles.licence import licence
from kerfolio.model.plan import Ladder
from kerfolio.model.statement import Amount
from kerfolio.reading.amounts import ANGLE, COUNT, FIT, LENGTH, SPOT, SPOTS, THICKNESS
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Form
from kerfolio.reading.licences import LICENCE, LICENCES
from kerfolio.reading.rates import FEED, SPEED
from kerfolio.reading.release import ChaptersForm
from kerfolio.reading.sheet import LadderForm, SizeForm
from kerfolio.reading.values import (
    ADDRESS,
    DATE,
    FLAG,
    LABEL,
    MONEY,
    NAMED,
    QUANTITY,
    READING,
    SHEET_SIZE,
    TEXT,
    TEXTS,
    VERSION,
    number,
    whole,
)
from tests.reading.desks import read


@pytest.mark.parametrize(
    ("form", "text", "value"),
    [
        (TEXT, "two   words", "two words"),
        (TEXT, "007", "007"),
        (TEXT, '"Yes: it fits"', "Yes: it fits"),
        (TEXTS, "[a, b]", ("a", "b")),
        (TEXTS, "a", ("a",)),
        (number(0, 100), "0.5", 0.5),
        (whole(), "12", 12),
        (FLAG, "yes", True),
        (FLAG, "False", False),
        (DATE, "2026-10-02", date(2026, 10, 2)),
        (VERSION, "1.10.0", "1.10.0"),
        (MONEY, "92.50", Decimal("92.50")),
        (QUANTITY, '23/32"', 18.25625),
        (QUANTITY, "18", 18.0),
        (READING, '23/32"', 18.26),  # as a calliper shows it
        (SHEET_SIZE, "2440 x 1220", (2440.0, 1220.0)),
        (SHEET_SIZE, "8 ft x 4 ft", (2438.4, 1219.2)),
        (SHEET_SIZE, "1525x1525", (1525.0, 1525.0)),
        (SHEET_SIZE, "8' × 4'", (2438.4, 1219.2)),
        (SPEED, "18000 rpm", 18000.0),
        (SPEED, "18000", 18000.0),
        (FEED, "4500 mm/min", 4500.0),
        (FEED, "4.5 m/min", 4500.0),
        (FEED, "180 in/min", 4572.0),  # 180 x 25.4 mm
        (ADDRESS, "https://example.org/v/1", "https://example.org/v/1"),
        (LICENCE, "CC-BY-SA-4.0", "CC-BY-SA-4.0"),
        (
            ChaptersForm(),
            "{0:00 The idea, 1:02:10 Cutting}",
            (("0:00", "The idea"), ("1:02:10", "Cutting")),
        ),
        (ChaptersForm(), "[0:00 The idea]", (("0:00", "The idea"),)),
        (
            ChaptersForm(),
            "0:00: The idea\n2:10: Cutting",
            (("0:00", "The idea"), ("2:10", "Cutting")),
        ),
        (ChaptersForm(), "{0:00 Part one: the idea}", (("0:00", "Part one: the idea"),)),
    ],
)
def test_reads(form: Form[Any], text: str, value: object) -> None:
    assert read(form, text) == (value, [])


POINT = "Write `[30, seat/2]`: x, then y."
DID = "Did you mean"
YEARS = "Write a year from 1980 to 2107: `2026-10-02`, say."
DIGITS = "Write digits alone, such as `4`."


@pytest.mark.parametrize(
    ("form", "text", "words"),
    [
        (
            TEXT,
            "[a]",
            "expected a text, found a list / Write a text; put it in quotes if it holds `: `.",
        ),
        (
            TEXT,
            '""',
            "expected a text, found nothing / Write a text; put it in quotes if it holds `: `.",
        ),
        (
            number(0, 100),
            "100.5",
            "`100.5` is no number from 0 to 100 / "
            "Write digits with a point, such as `12` or `0.5`.",
        ),
        (
            number(0, 100),
            "5 min",
            "`5 min` is no plain number / Write digits with a point, such as `12` or `0.5`.",
        ),
        (
            number(0, 100),
            "-5",
            "`-5` is no plain number / Write digits with a point, such as `12` or `0.5`.",
        ),
        (
            number(0, 100),
            "1e3",
            "`1e3` has an exponent / Write `1000`.",
        ),
        (
            number(0, 100),
            "1,200",
            "`1,200` can be read two ways / "
            "Write `1.2` if it is a decimal comma, `1200` if it parts thousands.",
        ),
        (
            number(0, 100),
            "12 %",
            "`12 %` is no plain number / Write digits with a point, such as `12` or `0.5`.",
        ),
        (whole(), "1,200", "`1,200` has a comma / Write `1200`."),
        (whole(1, 200), "0", f"`0` is no whole number from 1 to 200 / {DIGITS}"),
        (whole(), "2.5", f"`2.5` is no whole number from 0 to 10000 / {DIGITS}"),
        (whole(), "0x10", f"`0x10` is no whole number from 0 to 10000 / {DIGITS}"),
        (FLAG, "on", "`on` is not yes or no / Write `true` or `false`."),
        (DATE, "2026-02-30", "`2026-02-30` is no date / Write year, month and day: `2026-10-02`."),
        (DATE, "20261002", "`20261002` is no date / Write year, month and day: `2026-10-02`."),
        (VERSION, "1.2", "`1.2` is no version / Write three numbers, such as `1.2.0`."),
        (
            MONEY,
            "92,50",
            "`92,50` has a comma / Write a point: `92.50`; no mark between thousands.",
        ),
        (MONEY, "1.200,50", "`1.200,50` has a mark between thousands / Write `1200.50`."),
        (
            MONEY,
            "92.50 EUR",
            "`92.50 EUR` is no price / Write the number alone with a point: `92.50`; "
            "the workshop states the currency.",
        ),
        (QUANTITY, "18 MM", "`MM` is no unit here / Write `18 mm`."),
        (
            SHEET_SIZE,
            "2440 by 1220",
            "`2440 by 1220` is no sheet size / "
            "Write the side along the grain first: `2440 x 1220`.",
        ),
        (
            SHEET_SIZE,
            "8 x four",
            "`four` is no length / Write a length such as `18 mm` or `3/4 in`.",
        ),
        (DATE, "1926-10-02", f"`1926-10-02` is of a year that nobody can mean / {YEARS}"),
        (DATE, "2206-10-02", f"`2206-10-02` is of a year that nobody can mean / {YEARS}"),
        (SPEED, "18.000 rpm", f"`18.000 rpm` is no speed for a router / {DID} `18000 rpm`?"),
        (SPEED, "24", f"`24` is no speed for a router / {DID} `24000 rpm`?"),
        (SPEED, "180000", f"`180000` is no speed for a router / {DID} `18000 rpm`?"),
        (SPEED, "0", "`0` is no speed for a router / Cutters turn 100 to 100000 rpm."),
        (SPEED, "18,000 rpm", "`18,000` has a comma / Write `18000`."),
        (FEED, "4.500 mm/min", f"`4.500` is no feed in mm/min for a router / {DID} `4500 mm/min`?"),
        (FEED, "4500 m/min", f"`4500` is no feed in m/min for a router / {DID} `4500 mm/min`?"),
        (FEED, "4500 in/min", f"`4500` is no feed in in/min for a router / {DID} `4500 mm/min`?"),
        (FEED, "4,500 mm/min", "`4,500` has a comma / Write `4500`."),
        (FEED, "4,5 m/min", "`4,5` has a comma / Write a point: `4.5`; no mark between thousands."),
        (SPEED, "18 krpm", "`18 krpm` is no speed / Write turns a minute: `18000 rpm`."),
        (
            FEED,
            "4500",
            "`4500` is no feed with a unit / "
            "Write it with its unit: `4500 mm/min`, `4.5 m/min` or `180 in/min`.",
        ),
        (
            ADDRESS,
            "javascript:alert(1)",
            "`javascript:alert(1)` is no web address / Write it whole: `https://example.org/page`.",
        ),
        (
            LABEL,
            "side left",
            "`side left` is no piece or feature / "
            "Write part, piece and feature joined by points: `side.left.rail-slot`.",
        ),
        (
            NAMED,
            "Birch Plywood",
            "`Birch Plywood` is no name / "
            "Write `birch-plywood`: lower case letters, digits and inner hyphens.",
        ),
        (
            NAMED,
            "½",
            "`½` is no name / Use lower case letters, digits and inner hyphens, a letter first.",
        ),
        (
            LICENCE,
            "CC BY-SA",
            "`CC BY-SA` is not a licence known here / Did you mean `CC-BY-SA-4.0`?",
        ),
        (
            ChaptersForm(),
            "[0:0 x]",
            "`0:0 x` is no chapter / Write minutes:seconds, a blank and the title: `2:10 Cutting`.",
        ),
        (
            ChaptersForm(),
            "[1:00 a, 0:30 b]",
            "chapters are not in order / Write `[0:00 The idea, 2:10 Cutting]`.",
        ),
    ],
)
def test_refuses_in_words(form: Form[Any], text: str, words: str) -> None:
    value, said = read(form, text)
    assert said == [words]
    assert value in (None, (), (("1:00", "a"), ("0:30", "b")))


def test_every_licence_is_in_the_spdx_list() -> None:
    # The SPDX licence list, as carried by the package the bundles take their texts from.
    assert [each for each in LICENCES if licence(each) is None] == []


def desk(unit: str = "mm") -> Desk:
    return Desk(unit=unit, sizes=frozenset({"seat", "t"}), sheets=frozenset({"ply"}))


def test_an_amount_keeps_what_was_written() -> None:
    used = desk()
    value, said = read(LENGTH, "seat/2 - thickness(ply)", used)
    assert isinstance(value, Amount)
    assert value.text == "seat/2 - thickness(ply)"
    assert said == []


@pytest.mark.parametrize(
    ("form", "text", "words"),
    [
        (LENGTH, "sea/2", "unknown size `sea` / Did you mean `seat`?"),
        (LENGTH, "x", "unknown size `x` / Known here: `seat`, `t`."),
        (LENGTH, "ply", "unknown size `ply` / `ply` is a sheet: write `thickness(ply)`."),
        (LENGTH, "fit(mdf)", "unknown sheet `mdf` / Known here: `ply`."),
        (
            LENGTH,
            "{a: 1}",
            "expected a length, found keys and values / "
            "Write a number, a quantity such as `18 mm`, or an expression such as `seat/2`.",
        ),
        (ANGLE, "45 mm", "`45 mm` has a unit / Write an angle without a unit."),
        (COUNT, "5 in", "`5 in` has a unit / Write a count without a unit."),
        (
            FIT,
            "t/100",
            "`t/100` uses sizes or sheets / "
            "Write a number or a quantity here: sizes may depend on the sheets.",
        ),
        (FIT, "1/0", "`1/0`: division by zero / Write a number or a quantity such as `10 mm`."),
        (
            THICKNESS,
            "23/32",
            "`23/32` comes to 0.72 mm / 1 mm to 150 mm is usual: is the unit the one you mean?",
        ),
        (THICKNESS, "178", "`178` comes to 178 mm / Did you mean `17.8 mm`?"),
        (
            SPOT,
            "[120,5, 30]",
            "`120,5` has a comma / Write a point: `120.5`; a comma parts entries.",
        ),
        (SPOT, "[1, 2, 3]", f"expected a point [x, y], found 3 entries / {POINT}"),
        (
            LENGTH,
            "18\u00a0mm",
            "`18 mm` holds a no-break space (U+00A0) / Type a plain blank there.",
        ),
        (
            LENGTH,
            "1\u202f200",
            "`1 200` holds a narrow no-break space (U+202F) / Write `1200`.",
        ),
        (SPOT, "[1]", f"expected a point [x, y], found 1 entries / {POINT}"),
        (
            SPOTS,
            "30",
            "expected a point [x, y] or a list of points, found `30` / "
            "Write `[30, 60]` or `[[30, 60], [90, 60]]`.",
        ),
        (SPOTS, "[[1, 2], 3]", f"expected a point [x, y], found `3` / {POINT}"),
        (
            LadderForm(),
            "17 to 18 by",
            "`17 to 18 by` is no range / Write `17.2 to 18.6`, or one thickness.",
        ),
        (
            LadderForm(),
            "17-19",
            "`17-19` is no range / Write `17 to 19`.",
        ),
        (
            LadderForm(),
            "17.2 to 18.6 by 0.001",
            "1401 thicknesses for the coupon, at most 40 / "
            "Write `17.2 to 18.6 by 0.2` (8 thicknesses), say.",
        ),
        (
            LadderForm(),
            "17.2 to 118.6 by 0.2",
            "508 thicknesses for the coupon, at most 40 / "
            "One kind of sheet differs by a millimetre or two: are both ends meant?",
        ),
        (LadderForm(), "18 to 17 by 1", "`18` is more than `17` / Put the thinner one first."),
        (
            LadderForm(),
            "17 to 18 by 0",
            "`0` comes to 0 mm / 0.05 mm to 50 mm is usual: is the unit the one you mean?",
        ),
        (
            SizeForm(),
            "2440",
            "`2440` is no sheet size / Write the side along the grain first: `2440 x 1220`.",
        ),
    ],
)
def test_amounts_refuse_in_words(form: Form[Any], text: str, words: str) -> None:
    assert read(form, text, desk()) == (None, [words])


def test_a_ladder_in_inches() -> None:
    ladder, said = read(LadderForm(), "0.69 to 0.75 by 1/64 in", desk("in"))
    assert said == []
    assert isinstance(ladder, Ladder)
    assert [ladder.first.text, ladder.last.text, ladder.step.text] == ["0.69", "0.75", "1/64 in"]


def test_a_single_thickness_is_a_ladder_of_one_rung() -> None:
    ladder, said = read(LadderForm(), "18 mm", desk())
    assert said == []
    assert isinstance(ladder, Ladder)
    assert ladder.first.text == ladder.last.text == "18 mm"


def test_what_depends_on_an_unread_size_is_left_out_without_blame() -> None:
    used = desk()
    used.unread.add("t")
    assert read(LENGTH, "seat + t", used) == (None, [])


def test_no_name_is_blamed_when_the_sizes_cannot_be_taken_apart() -> None:
    used = Desk(sizes=None, sheets=frozenset({"ply"}))
    assert read(LENGTH, "seat + t", used) == (None, [])
    assert read(LENGTH, "18 mm", used)[1] == []
