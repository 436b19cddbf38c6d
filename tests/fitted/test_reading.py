"""Fitted files written and read: nothing lost, nothing that is wrong taken."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.style import Rule, Style
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number, Slot
from kerfolio.fitted.reading import FittedError, read_fitted
from kerfolio.fitted.writing import fitted_json
from tests.fitted.made import fitted

REALS = st.floats(-1e6, 1e6)
WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
STYLES = st.builds(
    Style,
    rule=st.sampled_from(Rule),
    decimals=st.integers(0, 12),
    width=st.integers(0, 30),
    unless=st.none() | REALS,
    before=WORDS,
    after=WORDS,
    none=WORDS,
    mark=st.characters(exclude_categories=["Cs"]),
)


@st.composite
def every(draw: st.DrawFn) -> Fitted:
    names = draw(st.lists(WORDS, max_size=3, unique=True))
    numbers = tuple(
        Number(
            name=name,
            least=draw(REALS),
            most=draw(REALS),
            drawn=draw(REALS),
            decimals=draw(st.integers(0, 12)),
            none=draw(st.booleans()),
            below=draw(WORDS),
            above=draw(WORDS),
        )
        for name in names
    )
    slopes = st.lists(REALS, max_size=len(names)).map(tuple)
    piece = WORDS | st.builds(Slot, style=STYLES, constant=REALS, slopes=slopes)
    text = st.lists(piece, max_size=6).map(tuple)
    within = st.none() | st.tuples(REALS, REALS)
    boxes = st.fixed_dictionaries({}, optional=dict.fromkeys(names, within))
    cell = st.builds(Cell, name=text, text=text, box=boxes.map(lambda box: tuple(box.items())))
    files = st.lists(st.lists(cell, max_size=3).map(tuple), max_size=3)
    made = tuple(FittedFile(cells=each) for each in draw(files))
    return Fitted(numbers=numbers, files=made)


@given(every())
def test_what_is_written_is_read_again(whole: Fitted) -> None:
    text = fitted_json(whole)
    assert read_fitted(text) == whole
    assert fitted_json(read_fitted(text)) == text


def test_what_many_texts_share_stands_once() -> None:
    head = "HEADER " * 100
    files = tuple(FittedFile(cells=(Cell(name=(str(n),), text=(head, str(n))),)) for n in range(50))
    assert fitted_json(Fitted(numbers=(), files=files)).count(head) == 1


def spoiled(*path: str | int, value: Any) -> str:
    """Return the JSON of small fitted files with one thing in it replaced; `...` takes it out."""
    whole = json.loads(fitted_json(fitted(1, 3)))
    at = whole
    for step in path[:-1]:
        at = at[step]
    if value is ...:
        del at[path[-1]]
    else:
        at[path[-1]] = value
    return json.dumps(whole)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "line 1, column 1: expecting value"),
        ("{", "line 1, column 2: expecting property name enclosed in double quotes"),
        ("[" * 100_000, "no readable JSON"),
        ("[]", "the whole: must be a mapping"),
        ('{"format": NaN}', "NaN is no number"),
        ("{}", "format: must be kerfolio-fitted/1"),
        (spoiled("format", value="kerfolio-fitted/2"), "format: must be kerfolio-fitted/1"),
        (spoiled("files", value=...), "files: must be a list"),
        (spoiled("files", 0, value=7), "files[0]: must be a mapping"),
        (spoiled("files", 1, "cells", 0, "text", 0, value=99), None),
        (spoiled("files", 1, "cells", 0, "text", 0, value=-1), None),
        (spoiled("files", 1, "cells", 0, "text", 0, value=True), None),
        (
            spoiled("files", 1, "cells", 0, "box", value={"thickness.oak": None}),
            "files[1].cells[0].box: no number has this name: 'thickness.oak'",
        ),
        (
            spoiled("files", 1, "cells", 0, "box", value={"fit.ply": [1]}),
            "files[1].cells[0].box: must be the least and the most, or null",
        ),
        (spoiled("numbers", 0, "least", value="1"), "numbers[0].least: must be a number"),
        (spoiled("numbers", 0, "most", value=10**400), "numbers[0].most: must be a number"),
        (spoiled("numbers", 0, "drawn", value=None), "numbers[0].drawn: must be a number"),
        (spoiled("numbers", 0, "none", value=1), "numbers[0].none: must be true or false"),
        (spoiled("numbers", 0, "name", value=1), "numbers[0].name: must be a text"),
        (spoiled("numbers", 0, "name", value="fit.ply"), "numbers: two have the same name"),
        (
            spoiled("numbers", 0, "decimals", value=13),
            "numbers[0].decimals: must be a whole number from 0 to 12",
        ),
        (
            spoiled("styles", 0, "rule", value="rounded"),
            "styles[0].rule: must be one of "
            "trimmed, pointed, fixed, padded, calliper, sold, sold-name, chosen, chosen-name",
        ),
        (
            spoiled("styles", 0, "width", value=1000),
            "styles[0].width: must be a whole number from 0 to 100",
        ),
        (spoiled("styles", 0, "mark", value=", "), "styles[0].mark: must be one sign"),
        (spoiled("pieces", 0, value=[7, 1]), None),
        (
            spoiled("pieces", 0, value=[0]),
            "pieces[0]: must be a text, or a style, a constant and slopes",
        ),
        (
            spoiled("pieces", 0, value=[0, 1, 2, 3, 4, 5]),
            "pieces[0]: must be a text, or a style, a constant and slopes",
        ),
        (spoiled("pieces", 0, value=[0, 1, "2"]), "pieces[0]: must be a number"),
    ],
)
def test_what_is_wrong_is_told_with_its_place(text: str, words: str | None) -> None:
    with pytest.raises(FittedError) as trouble:
        read_fitted(text)
    if words is None:
        assert str(trouble.value) in {
            "files[1].cells[0].text[0]: there is no such piece",
            "pieces[0]: there is no such style",
        }
    else:
        assert str(trouble.value) == words
