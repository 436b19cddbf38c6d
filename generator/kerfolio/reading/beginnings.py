"""The kinds of plan to begin from, as they ship: ``content/beginnings/KIND.yaml``.

A file has what is said of the kind with its words for mm and for inches, a line ``---``, and then
the plan. ``words.yaml`` has the words that kinds share.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from kerfolio.basis.shipped import shipped
from kerfolio.model.beginning import Beginning
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.yaml_text import read_yaml

_SHARED = "words.yaml"
_SEAM = "\n---\n"
_UNITS = ("mm", "in")


@cache
def beginnings() -> tuple[Beginning, ...]:
    """Return the kinds of plan to begin from, the simplest first."""
    folder = shipped("content") / "beginnings"
    shared = _head((folder / _SHARED).read_text("utf-8"))
    files = sorted(each for each in folder.glob("*.yaml") if each.name != _SHARED)
    return tuple(sorted((_beginning(each, shared) for each in files), key=lambda each: each.order))


def _beginning(file: Path, shared: Mapping) -> Beginning:
    head, _, text = file.read_text("utf-8").partition(_SEAM)
    said = _head(head)
    return Beginning(
        name=file.stem,
        order=int(_text(said.get("order"))),
        title=_text(said.get("title")),
        when=_text(said.get("when")),
        words={unit: {**_words(shared, unit), **_words(said, unit)} for unit in _UNITS},
        text=text,
    )


def _head(text: str) -> Mapping:
    node, _ = read_yaml(text.encode(), _SHARED)
    assert isinstance(node, Mapping), "it ships with the program"
    return node


def _words(node: Mapping, unit: str) -> dict[str, str]:
    words = node.get(unit)
    assert isinstance(words, Mapping), "it ships with the program"
    return {each.key.text: _text(each.value) for each in words.entries}


def _text(node: Node | None) -> str:
    assert isinstance(node, Scalar), "it ships with the program"
    return node.text
