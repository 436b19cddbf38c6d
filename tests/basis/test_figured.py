"""Words with figures in them: they read as words, and can be told anew."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.figured import Figure, Figured, figured, joined, replaced, resolved, widest
from kerfolio.basis.style import Rule, Style

THICK = Style(rule=Rule.FIXED, decimals=2, after=" mm")
LINE = figured("Cut for {} {}", Figure(17.8, THICK), "ply")


def marked(value: float | None, style: Style) -> str:
    return f"<{value} {style.rule}>"


def test_they_read_as_words() -> None:
    assert LINE == "Cut for 17.80 mm ply"
    assert f"{LINE}." == "Cut for 17.80 mm ply."


def test_who_writes_them_tells_their_figures() -> None:
    assert resolved(LINE, marked) == "Cut for <17.8 fixed> ply"
    assert resolved("Cut for 17.8", marked) == "Cut for 17.8"
    assert resolved(figured("a{}b", LINE), marked, str.upper) == "ACUT FOR <17.8 fixed> PLYB"


def test_putting_them_together_keeps_their_figures() -> None:
    told = "Cut for <17.8 fixed> ply"
    assert resolved(joined(". ", ["A", LINE, LINE]), marked) == f"A. {told}. {told}"
    named = figured("{fit}/sheet-{number:d}-{fit}.svg", fit=LINE, number=3)
    assert resolved(named, marked) == f"{told}/sheet-3-{told}.svg"
    assert resolved(replaced(LINE, "ply", "oak"), marked) == "Cut for <17.8 fixed> oak"
    assert replaced("ply", "ply", "oak") == "oak"


def test_braces_in_what_is_put_in_are_letters() -> None:
    assert figured("{}", "{x}") == "{x}"


def test_they_keep_room_for_the_widest_figure() -> None:
    assert widest(LINE) == "Cut for 00.00 mm ply"
    german = Figure(17.8, replace(THICK, mark=","))
    assert (Figured(german), widest(Figured(german))) == ("17,80 mm", "00,00 mm")
    assert widest(Figured(Figure(19.05, Style(rule=Rule.SOLD)), " in")) == "0 00/00 in"
    assert widest("17.8") == "17.8"


def test_what_there_is_none_of_is_said_so() -> None:
    style = Style(before="cutter ", after=" mm", none="no cutter")
    assert Figured(Figure(None, style)) == "no cutter"
    assert Figured(Figure(6.0, style)) == "cutter 6 mm"
