"""JSON with numbers in digits, against the standard library's reader and writer."""

from __future__ import annotations

import json
from typing import Any

import pytest

from kerfolio.basis.json_text import json_text, number

TREE: dict[str, Any] = {
    "text": 'größer "than"\nthis\\',
    "empty": [[], {}, ""],
    "plain": [1, True, False, None, -7],
    "deep": {"a": [{"b": (1, 2)}, [3]]},
}


@pytest.mark.parametrize("indent", [1, 2])
def test_an_indented_tree_is_the_librarys(indent: int) -> None:
    assert json_text(TREE, indent) == json.dumps(TREE, indent=indent, ensure_ascii=False)


def test_a_tree_on_one_line_is_the_librarys() -> None:
    compact = json.dumps(TREE, separators=(",", ":"), ensure_ascii=False)
    assert json_text(TREE) == compact


def test_numbers_stand_bare_in_their_digits_without_powers_of_ten() -> None:
    tree = [number(0.00000125, 8), number(-0.00001), number(360.0), number(259.40000000000003)]
    assert json_text(tree) == "[0.00000125,0,360,259.4]"
    assert json.loads(json_text(tree)) == [1.25e-6, 0, 360, 259.4]


@pytest.mark.parametrize("value", [0.5, float("nan"), {1, 2}])
def test_what_states_no_decimals_is_refused(value: object) -> None:
    with pytest.raises(TypeError, match="cannot be written as JSON"):
        json_text({"a": [value]})
