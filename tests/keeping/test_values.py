"""Values come back from bytes as they were, and bytes make nothing but values of the program."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

import pytest

from kerfolio.assembly.made import Made
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.build_views import build_drawings
from kerfolio.drawing.vocabulary import Drawing, Ink, Label
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.cross_section import Strip
from kerfolio.keeping.content import ContentError, Contents
from kerfolio.keeping.values import value_bytes, value_of
from tests.plans import proved

SQUARE = Contour(((0.0, -0.0, 0.5), (1e-9, 1 / 3, 0.0), (5.0, 5.0, 0.0)))
VALUES: dict[str, object] = {
    "plain": (1, 1.0, -0.0, True, None, "ä\n", math.inf),
    "nothing": ((), "", b""),
    "bytes": b"\x00\xff",
    "day": (date(2026, 10, 2), Decimal("90.50")),
    "row": (Strip(1.0, 2.0, 3.0),),
    "region": Region(SQUARE, (SQUARE, SQUARE)),
    "label": Label(text="A", at=(1.0, 2.0), height=3.0, ink=Ink.SOFT),
    "mapping": {"b": 1, "a": (SQUARE,), ("x", 1): {}},
    "set": frozenset(("one", "other")),
    "by other names": ({"bytes": "x"}, {"record": "y", "": ()}, {"set": 1}),
}


@dataclass(frozen=True)
class Strange:
    """A record that is none of the program's."""

    number: int = 1


@pytest.mark.parametrize("value", VALUES.values(), ids=VALUES)
def test_a_value_comes_back_as_it_was(value: object) -> None:
    again = value_of(value_bytes(value))
    assert again == value
    assert repr(again) == repr(value)  # tells 1 from 1.0, and -0.0 from 0.0
    assert Contents().hash_of(again) == Contents().hash_of(value)


def test_a_whole_build_and_its_drawings_come_back() -> None:
    made: Made = proved().made[0]
    drawings = build_drawings(made, METRIC)
    again: dict[str, Drawing] = value_of(value_bytes(drawings))
    assert list(again) == list(drawings)
    assert repr(again) == repr(drawings)


@pytest.mark.parametrize("value", [[1], {1}, Strange(), object(), lambda: 1, (1, [2])])
def test_what_cannot_come_back_is_refused(value: object) -> None:
    with pytest.raises(ContentError):
        value_bytes(value)


@pytest.mark.parametrize(
    "name",
    [
        "os:system",
        "tests.keeping.test_values:Strange",
        "kerfolio.keeping.store:Store",
        "kerfolio.keeping.store:os",
        "kerfolio.keeping.values:value_bytes",
    ],
)
@pytest.mark.parametrize("what", ["record", "row", "one of"])
def test_nothing_is_made_but_records_of_the_program(what: str, name: str) -> None:
    with pytest.raises(ValueError, match="is no"):
        value_of(json.dumps({what: name, "": ["x"]}).encode())
