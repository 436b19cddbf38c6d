"""The dialogue of a new trial as a pure function of the answers."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from kerfolio.model.outcome import Grade
from kerfolio.model.statement import Named
from kerfolio.model.stock import ChipLoad, CutterStock, DepthRule, SheetStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.settings import Settings
from kerfolio.trials.answers import KEYS, LEAST, MORE, Answers, parted, stated_by
from kerfolio.trials.cut_figures import figure_lines, figures_of
from kerfolio.trials.dialogue import (
    ANYTHING_ELSE,
    Question,
    answered,
    filled,
    more_fault,
    next_question,
)
from kerfolio.trials.known import Known, KnownPlan, Used

PLY = SheetStock(
    name="ply",
    title="Plywood",
    nominal=18,
    actual=17.8,
    least=17,
    most=19,
    density=600,
    sizes=((2440, 1220),),
    family="hardwood-plywood",
)
COMPRESSION = CutterStock(
    name="compression-6",
    title="Compression",
    diameter=6,
    kind="compression",
    flutes=2,
    cutting_length=22,
)
V60 = replace(COMPRESSION, name="v-60", title="V", kind="v", angle=60.0)
STOCK = Stock(
    sheets=(PLY,),
    cutters=(COMPRESSION, V60),
    chip_loads=(
        ChipLoad(
            name="c",
            family="hardwood-plywood",
            least=0.1,
            most=0.2,
            machine="small shop",
            diameter=6,
        ),
    ),
    depth_rules=(
        DepthRule(name="one", diameters=1, share=1),
        DepthRule(name="two", diameters=2, share=0.75),
    ),
)
OWN = Used(
    stock="ply",
    cutter="compression-6",
    settings=Settings(speed=18000, feed=4500, plunge=1200, passes=(8, 10.1)),
)
CARVED = Used(stock="ply", cutter="v-60", settings=Settings(speed=18000, feed=1500, passes=(0.5,)))
STOOL = KnownPlan(
    name="stool", title="Stool", release="1.2.0", sheets={"ply": 17.8}, cuts=(CARVED, OWN)
)
LOGGED = Trial(
    date=date(2026, 9, 1),
    stock=Named("ply"),
    cutter=Named("compression-6"),
    speed_rpm=16000,
    feed_mm_per_min=4000,
    passes=(9, 9),
)
KNOWN = Known(stock=STOCK, plans=(STOOL,), trials=(LOGGED,))


def asked(*typed: str, known: Known = KNOWN, so_far: Trial | None = None) -> list[Question]:
    """Return the questions that come up when these are typed one after the other."""
    answers: Answers = {}
    questions = []
    for text in (*typed, None):
        question = next_question(answers, so_far, known)
        if question is None:
            break
        questions.append(question)
        if text is not None:
            answers = answered(answers, question, text)
    return questions


def test_the_least_is_asked_in_turn_and_the_log_offers_what_was_last() -> None:
    found = asked(*[""] * 6, "2", "", "")
    assert [each.key for each in found] == [
        *("plan", "stock", "cutter", "speed", "feed", "passes", "outcome", "photo", "more"),
    ]
    offered = {each.key: each.offered for each in found}
    assert offered["stock"] == "ply"
    assert (offered["speed"], offered["feed"]) == ("16000 rpm", "4000 mm/min")
    assert offered["passes"] == "9 mm, 9 mm"


def test_a_plan_offers_its_own_settings_and_thickness() -> None:
    found = asked("stool", *[""] * 7)
    offered = {each.key: each.offered for each in found}
    assert offered["thickness"] == "17.8 mm"
    assert offered["cutter"] == "compression-6"  # not the one for engraving
    assert (offered["feed"], offered["passes"]) == ("4500 mm/min", "8 mm, 10.1 mm")


def test_what_the_plan_knows_besides_is_filled_in() -> None:
    answers = {"plan": "stool", "stock": "ply", "cutter": "compression-6", "feed": "4500 mm/min"}
    more = filled(answers, KNOWN)
    assert (more["release"], more["plunge"]) == ("1.2.0", "1200 mm/min")
    slower = filled({**answers, "feed": "4000 mm/min"}, KNOWN)
    assert "plunge" not in slower  # of settings that were not taken
    assert filled({"stock": "ply"}, KNOWN) == {"stock": "ply"}


def test_inches_are_offered_where_they_come_first() -> None:
    inch = replace(KNOWN, reader=KNOWN.reader.inches)
    offered = {each.key: each.offered for each in asked("stool", *[""] * 7, known=inch)}
    assert offered["thickness"] == "0.70079 in"
    assert offered["feed"] == "177.165 in/min"


def test_grades_are_asked_with_their_sentences() -> None:
    (outcome,) = (each for each in asked(*[""] * 7) if each.key == "outcome")
    assert [each.word for each in outcome.choices] == [each.word for each in reversed(Grade)]
    assert outcome.choices[0].says == "Nothing to do: it goes to the finish as it was cut."
    assert answered({}, outcome, "2") == {"outcome": "nearly clean"}
    assert answered({}, outcome, "to sand") == {"outcome": "to sand"}


def test_more_is_asked_for_by_its_words_as_often_as_wanted() -> None:
    found = asked(*[""] * 8, "marks, went", "fuzz", "by palm", "title", "Rail", "")
    assert [each.key for each in found][8:] == ["more", "marks", "went", "more", "title", "more"]
    went = found[10]
    assert went.choices[2].says == "It wants a push of the palm."
    assert more_fault("marcs", {}) == "`marcs` can be said of nothing. Did you mean `marks`?"
    assert more_fault("marks", {"marks": "fuzz"}).startswith("`marks` is said already.")
    assert not more_fault("marks went", {})


def test_a_dash_says_none_though_something_is_offered() -> None:
    question = Question(key="plan", words="Plan", offered="stool")
    assert answered({}, question, "-") == {"plan": ""}
    assert answered({}, question, " ") == {"plan": "stool"}
    end = Question(key=ANYTHING_ELSE, words="Anything else")
    assert next_question(answered({k.key: "" for k in LEAST}, end, ""), None, KNOWN) is None


def test_figures_are_told_as_soon_as_they_are_known() -> None:
    cut = replace(LOGGED, speed_rpm=18000, feed_mm_per_min=4500, passes=(9, 9))
    found = figures_of(cut, STOCK, "")
    # 4500 / (18000 x 2) = 0.125 mm; 6 x 9 x 4500 mm3 = 243 cm3: by hand, from the definitions.
    assert (found.chip, found.diameters, found.removed) == (0.125, 1.5, 243)
    assert list(figure_lines(found, KNOWN.reader)) == [
        "Chip load 0.125 mm a tooth; published at this depth: 0.088 to 0.175 mm.",
        "Deepest pass 1.5 diameters, where tables leave 88 % of the chip load.",
        "Removal rate 243 cm³ a minute in a full slot.",
    ]
    slow = next(
        figure_lines(figures_of(replace(cut, feed_mm_per_min=1000), STOCK, ""), KNOWN.reader)
    )
    assert slow.startswith("Chip load 0.028 mm a tooth, thin: ")
    inch = list(figure_lines(found, KNOWN.reader.inches))
    assert inch[-1] == "Removal rate 14.83 in³ a minute in a full slot."
    questions = asked(*[""] * 6, so_far=cut)
    assert questions[5].key == "passes"
    assert questions[5].told[0].startswith("Chip load")


def test_answers_make_an_entry_in_the_order_of_a_log() -> None:
    answers = {
        **{"outcome": "clean", "top": "clean", "bottom": "to sand", "batch": "august"},
        **{"readings": "17.8 mm, 17.9 mm", "photo": "a.jpg", "alt": "A cut", "stock": "ply"},
        **{"passes": "8 mm; 10 mm", "cutter": "", "more": "batch"},
    }
    assert list(stated_by(answers, date="2026-11-30").items()) == [
        ("date", "2026-11-30"),
        ("stock", "ply"),
        ("batch", {"name": "august", "readings": ("17.8 mm", "17.9 mm")}),
        ("passes", ("8 mm", "10 mm")),
        ("outcome", {"top": "clean", "bottom": "to sand", "whole": "clean"}),
        ("photo", {"file": "a.jpg", "alt": "A cut"}),
    ]


@pytest.mark.parametrize(
    ("typed", "parts"),
    [
        ("8 mm, 10 mm", ("8 mm", "10 mm")),
        ("[8, 10]", ("8", "10")),
        ("8; 10;", ("8", "10")),
        ("8,5 mm", ("8,5 mm",)),
    ],
)
def test_a_list_is_parted_but_no_number(typed: str, parts: tuple[str, ...]) -> None:
    assert parted(typed) == parts


def test_every_key_of_a_trial_can_be_said() -> None:
    from kerfolio.reading.trial import _TRIAL

    keys = {each.name for each in _TRIAL.keys} - {"id", "date"}
    assert keys | {"top", "bottom", "face", "readings", "moisture", "alt"} == set(KEYS)
    assert len(LEAST) + len(MORE) == len(KEYS)
