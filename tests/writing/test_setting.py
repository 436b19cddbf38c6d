"""Running text set into lines: nothing lost, nothing too long, nothing lonely."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.figured import Figure, figured, parts_of
from kerfolio.basis.style import Rule
from kerfolio.basis.style import Style as Told
from kerfolio.writing.page import Run
from kerfolio.writing.setting import lines, shortened, width
from kerfolio.writing.typeface import Face, Style, width_of

READ = Style(points=11)


def set_lines(words: str, measure: float) -> list[str]:
    return ["".join(run.text for run in line) for line in lines((Run(words, READ),), measure)]


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet="abWi .,-", max_size=200), st.floats(12, 90))
def test_setting_keeps_every_word_and_the_measure(words: str, measure: float) -> None:
    broken = lines((Run(words, READ),), measure)
    kept = "".join(run.text for line in broken for run in line)
    assert "".join(kept.split()) == "".join(words.split())
    assert all(width(line) <= measure + 0.01 for line in broken)


def test_a_last_line_is_no_lonely_word() -> None:
    words = "It should go in with the push of a hand, and never be driven in with a hammer at all"
    for measure in range(40, 100, 3):
        broken = set_lines(words, float(measure))
        assert len(broken) == 1 or len(broken[-1].split()) > 1, (measure, broken)


def test_an_address_without_a_blank_is_broken_where_it_must_be() -> None:
    address = "https://example.org/" + "plans/" * 20
    broken = set_lines(address, 60)
    assert "".join(broken) == address
    assert len(broken) > 2


def test_styles_survive_the_breaking_of_lines() -> None:
    strong = Style(face=Face.SERIF_STRONG, points=11)
    runs = (Run("plain ", READ), Run("strong words here", strong), Run(", plain again", READ))
    broken = lines(runs, 30)
    marked = [run.text for line in broken for run in line if run.style is strong]
    assert " ".join(marked) == "strong words here"


def test_a_number_is_not_parted_from_its_unit() -> None:
    words = "Keep 100 mm, then 14 3/16 in, then 50 % and 3 kg of it in mind for 12 min or so"
    for measure in range(24, 100, 2):
        for line in set_lines(words, float(measure)):
            assert not line[-1].isdigit(), (measure, line)


def test_a_text_too_long_ends_in_an_ellipsis_and_fits() -> None:
    words = "A very long name for a very long bench"
    assert shortened(words, READ, 200) == words
    short = shortened(words, READ, 40)
    assert short.endswith("…")
    assert words.startswith(short[:-1])
    assert width_of(short, READ) <= 40


def test_lines_of_a_paragraph_are_about_as_long_as_each_other() -> None:
    words = "The side stands on its back edge while the rail slides into the slot up to it. " * 3
    broken = lines((Run(words, READ),), 80)
    filled = [width(line) / 80 for line in broken[:-1]]
    assert min(filled) > 0.8


def test_figures_stay_figures_and_lines_break_alike_whatever_they_are() -> None:
    told = Told(rule=Rule.FIXED, decimals=2, after=" mm")
    broken = []
    for mm in (17.11, 17.74, 17.7401):
        words = figured("The sheet that was measured has {} all over. ", Figure(mm, told))
        broken.append(lines((Run(words, READ),), 30.0))
    shapes = [[re.sub("[0-9]", "0", run.text) for line in each for run in line] for each in broken]
    assert shapes[0] == shapes[1] == shapes[2]
    assert [width(line) for line in broken[0]] == [width(line) for line in broken[1]]
    for each, mm in zip(broken, (17.11, 17.74, 17.7401), strict=True):
        parts = [part for line in each for run in line for part in parts_of(run.text)]
        assert [part.value for part in parts if isinstance(part, Figure)] == [mm]
