"""Keeps rounding in its place: no module outside `basis` turns a number into digits by itself.

Halves would go to the even digit here and up there, `-0` would come back, and one quantity would
read in two ways.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

HOUSE = Path(__file__).resolve().parent.parent
GENERATOR = HOUSE / "generator" / "kerfolio"
TEMPLATES = HOUSE / "themes" / "workbench" / "templates"

ALLOWED = {
    "geometry/shapes.py": "words of a fault, which has no unit yet",
    "reading/sums.py": "a decimal of a maker's own sum, exact: nothing is rounded",
}
TELLING = ("edition", "pages", "paper", "publishing", "trials", "writing")
"""Rooms in which a number is rounded only to be told."""

ROUNDS = {
    "writing/photo.py": "whole pixels of a picture",
    "writing/square_icon.py": "whole pixels of a picture",
    "pages/badge.py": "whole pixels of a picture",
}

_SPEC = re.compile(r"(\.\d+[a-zA-Z%]?|[eEfFgG%])$")
_PERCENT = re.compile(r"%[-+ #0]*\d*(\.\d+)?[eEfFgG]")
_BRACED = re.compile(r"\{[^{}]*:[^{}]*(\.\d+[a-zA-Z%]?|[eEfFgG%])\}")
_TEMPLATE = re.compile(r"%\.\d+[fge]|\|\s*round\b|\|\s*format\b|\|\s*float\b")


def formats(source: str) -> Iterator[tuple[int, str]]:
    """Yield where a source formats a float: f-strings, `format`, `str.format` and `%`."""
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.FormattedValue(format_spec=ast.JoinedStr(values=parts)):
                words = "".join(
                    each.value if isinstance(each, ast.Constant) else "1" for each in parts
                )
                if _SPEC.search(words):
                    yield node.lineno, words
            case ast.Call(func=ast.Name(id="format"), args=[_, ast.Constant(value=str(words))]):
                if _SPEC.search(words):
                    yield node.lineno, words
            case ast.Call(func=ast.Attribute(attr="format", value=ast.Constant(value=str(words)))):
                if _BRACED.search(words):
                    yield node.lineno, words
            case ast.BinOp(op=ast.Mod(), left=ast.Constant(value=str(words))):
                if _PERCENT.search(words):
                    yield node.lineno, words


def roundings(source: str) -> Iterator[int]:
    """Yield where a source calls the language's own `round`."""
    for node in ast.walk(ast.parse(source)):
        if (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id == "round"
        ):
            yield node.lineno


def sources() -> Iterator[tuple[str, str]]:
    for path in sorted(GENERATOR.rglob("*.py")):
        yield path.relative_to(GENERATOR).as_posix(), path.read_text("utf-8")


def test_no_module_outside_basis_formats_a_float() -> None:
    found = [
        f"{name}:{line} {words}"
        for name, source in sources()
        if not name.startswith("basis/") and name not in ALLOWED
        for line, words in formats(source)
    ]
    assert found == []


def test_in_basis_digits_are_made_in_one_module() -> None:
    found = {
        name for name, source in sources() if name.startswith("basis/") for _ in formats(source)
    }
    faults = {"basis/functions.py", "basis/written_number.py"}  # words of what cannot be read
    assert found == {"basis/digits.py", *faults}


def test_no_room_that_tells_numbers_rounds_them_itself() -> None:
    found = [
        f"{name}:{line}"
        for name, source in sources()
        if name.split("/")[0] in TELLING and name not in ROUNDS
        for line in roundings(source)
    ]
    assert found == []


def test_no_template_formats_a_number() -> None:
    found = [
        f"{path.name}: {match.group()}"
        for path in sorted(TEMPLATES.iterdir())
        for match in _TEMPLATE.finditer(path.read_text("utf-8"))
    ]
    assert found == []


@pytest.mark.parametrize(
    "source",
    [
        'f"{mm:.1f} mm"',
        'f"{mm:.{places}f}"',
        'f"{share:g}"',
        'f"{mm:>8.2f}"',
        'format(mm, ".3f")',
        '"{:.2f} kg".format(kg)',
        '"%.2f" % kg',
    ],
)
def test_each_way_of_formatting_is_seen(source: str) -> None:
    assert len(list(formats(source))) == 1


@pytest.mark.parametrize("source", ['f"{name:>8}"', 'f"{count:03d}"', 'f"{mm} mm"', '"%s" % a'])
def test_other_formatting_is_left_alone(source: str) -> None:
    assert list(formats(source)) == []
