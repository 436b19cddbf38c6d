"""A hash of content is the same for the same content alone, in every process."""

from __future__ import annotations

import os
import subprocess
import sys
from copy import deepcopy
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from enum import Enum
from functools import partial
from math import inf, nextafter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.figured import figured
from kerfolio.basis.style import Rule, Style
from kerfolio.keeping.content import ContentError, Contents
from kerfolio.model.feature_kind import HOLE, SLOT


class Colour(Enum):
    RED = 1
    BLUE = 2


@dataclass(frozen=True)
class Spot:
    x: float
    y: float
    names: tuple[str, ...] = ()


@dataclass(frozen=True)
class Mark:
    x: float
    y: float
    names: tuple[str, ...] = ()


@dataclass
class Loose:
    x: float = 0.0


@dataclass(frozen=True, slots=True)
class Holder:
    held: object
    more: dict[str, object] = field(default_factory=dict)


def hashed(value: object) -> str:
    return Contents().hash_of(value)


DIFFERENT: tuple[object, ...] = (
    *(None, True, False, 0, 1, 0.0, -0.0, 1.0, nextafter(1.0, 2.0), inf, "", "1", b"", b"1"),
    *((), ((),), (1,), (1.0,), ("1",), (1, 2), ((1,), 2), (1, (2,)), ("a", "b"), ("ab",)),
    *((b"a", b"b"), (b"ab",), (b"a b",), frozenset(), frozenset((1, 2)), {}, {"a": 1}, {1: "a"}),
    *({"a": 1, "b": 2}, {"b": 2, "a": 1}, Decimal("1.0"), Decimal("1.00"), date(2026, 1, 2)),
    *(Colour.RED, Colour.BLUE, Rule.FIXED, "fixed", Spot(1.0, 2.0), Mark(1.0, 2.0), Spot(2.0, 1.0)),
    *(Spot(1.0, 2.0, ("a",)), Spot(1.0, 2.0, ("a", "b")), Holder(Spot), Holder(len), hashed),
    *(partial(hashed, 1), partial(hashed, 2), partial(hashed, value=1), HOLE, SLOT),
    *(
        figured("{} mm", str(1)),
        figured("{} mm", "2"),
        "1 mm",
        Style(decimals=2),
        Style(decimals=3),
    ),
)


def test_what_is_different_has_another_hash() -> None:
    found = [hashed(each) for each in DIFFERENT]
    assert len(set(found)) == len(DIFFERENT)


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(),
        lambda inner: st.lists(inner, max_size=3).map(tuple) | st.builds(Holder, inner),
        max_leaves=12,
    )
)
def test_equal_content_has_one_hash_however_it_is_shared(value: object) -> None:
    assert hashed((value, value)) == hashed((value, deepcopy(value)))


@pytest.mark.parametrize(
    ("value", "told"),
    [
        (Loose(), "may change"),
        ([1], "list"),
        ({1, 2}, "set"),
        (object(), "object"),
        ((1, (2, [3])), "list"),
        (lambda: 1, "made anew"),
        (Holder(partial(lambda each: each, 1)), "made anew"),
        (iter(()), "iterator"),
    ],
)
def test_what_has_no_content_is_refused(value: object, told: str) -> None:
    with pytest.raises(ContentError, match=told):
        hashed(value)


def test_it_is_the_same_in_another_process() -> None:
    code = (
        "from tests.keeping.test_content import DIFFERENT, hashed;"
        "print(*(hashed(each) for each in DIFFERENT if not isinstance(each, bool)))"
    )
    run = [
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert run[0] == run[1]
    assert run[0].split() == [hashed(each) for each in DIFFERENT if not isinstance(each, bool)]
