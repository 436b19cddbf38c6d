"""Code of the rooms whose words stand in the catalogue holds none itself."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

HOME = Path(__file__).resolve().parents[2] / "generator" / "kerfolio"
UNITS = re.compile(r"\b(mm|in|ft|kg)\b")
WORDS = re.compile(r"[^\W\d_]{2}")

CONVERTED = (
    "paper",
    "drawing",
    "assembly/proof_words.py",
    "assembly/stability_words.py",
    "assembly/storing_words.py",
    "assembly/in_use.py",
    "assembly/bracing.py",
    "settling/fitted.py",
    "settling/measured.py",
)
"""Rooms, and modules of others."""

FOR_MAKERS = (*("edge_ruler", "finding_view", "gallery", "name_tags", "named_part", "named_whole"),)
"""Modules of pictures for a maker, who is told in English."""

ALLOWED = frozenset(
    {"along ", "along x", "along y", "NFKD", "SourceSansPro", "SourceSansProSemibold"}
)
"""Letters that are no words: how a plan states grain, a form of Unicode, faces."""


def words_in(path: Path) -> Iterator[str]:
    """Yield constant texts that read like words: two letters, and a blank or a capital."""
    tree = ast.parse(path.read_text("utf-8"))
    passed = {id(inner) for node in ast.walk(tree) for inner in _passed(node)}
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in passed
        ):
            text = UNITS.sub("", node.value)
            if WORDS.search(text) and (" " in text or text[:1].isupper()):
                yield node.value


def _passed(node: ast.AST) -> Iterator[ast.AST]:
    """Yield what is not read by readers: docstrings, and what an error says."""
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        yield node.value
    elif isinstance(node, ast.Raise | ast.Assert):
        yield from ast.walk(node)


def modules(name: str) -> list[Path]:
    path = HOME / name
    found = sorted(path.rglob("*.py")) if path.is_dir() else [path]
    return [each for each in found if each.stem not in FOR_MAKERS]


@pytest.mark.parametrize("name", CONVERTED)
def test_words_for_readers_stand_in_the_catalogue(name: str) -> None:
    found = {
        f"{path.name}: {text}"
        for path in modules(name)
        for text in words_in(path)
        if text not in ALLOWED
    }
    assert found == set()
