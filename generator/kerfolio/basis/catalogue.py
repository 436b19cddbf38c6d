"""The catalogue of words for readers: every message by its name, in every language we have.

Messages stand in ``words/LANGUAGE/FILE.ftl``, in the syntax of Project Fluent; the name of each
begins with that of its file, ``costs-unknown`` in ``costs.ftl``. A line may be broken anywhere
between words.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from fluent.runtime import FluentBundle, FluentResource
from fluent.runtime.types import fluent_number

from kerfolio.basis.shipped import shipped

SOURCE = "en"
"""The language in which every message stands first, and that of readers whose own has none."""

_FIRST, _LAST = 0xF0000, 0xF00FF
_PLACES = re.compile(f"([{chr(_FIRST)}-{chr(_LAST)}])")
"""Signs that stand for what is put into a message as it is: private to us, in no text."""


@cache
def languages() -> tuple[str, ...]:
    """Return the languages of the catalogue (BCP 47), sorted."""
    return tuple(sorted(each.name for each in shipped("words").iterdir() if each.is_dir()))


@cache
def spoken(language: str) -> str:
    """Return the tag under which a reader is spoken to: ``de-AT`` for itself, ``fr`` is ``en``."""
    return language if _of(language) == language.split("-", maxsplit=1)[0].lower() else SOURCE


def message(language: str, name: str, values: Mapping[str, object]) -> tuple[object, ...]:
    """Return a message in pieces: its words, and between them each value that is no text or count.

    Values that are plain texts or whole numbers become part of the words. Raises KeyError for a
    message that is not there, ValueError where it wants other values.
    """
    kept: list[object] = []
    given = {each: _given(value, kept) for each, value in values.items()}
    bundle = _bundle(_of(language), name.split("-", maxsplit=1)[0])
    if not bundle.has_message(name):
        raise KeyError(name)
    pattern = bundle.get_message(name).value
    assert pattern is not None, f"{name} says nothing"
    text, errors = bundle.format_pattern(pattern, given)
    if errors:
        raise ValueError(f"{name}: {errors[0]}")
    words = str(text).replace("\n", " ")
    if not kept:
        return (words,)
    pieces = _PLACES.split(words)
    return tuple(
        kept[ord(each) - _FIRST] if place % 2 else each for place, each in enumerate(pieces) if each
    )


@cache
def templates(language: str, file: str) -> Mapping[str, str]:
    """Return the messages of a file by name, each value's place left open: ``Saved: { $name }``.

    For those who fill them in elsewhere: such messages hold no choices.
    """
    text = (shipped("words") / _of(language) / f"{file}.ftl").read_text(encoding="utf-8")
    places = {each: f"{{ ${each} }}" for each in re.findall(r"\{ \$([a-z]+) \}", text)}
    names = re.findall(rf"^({file}-[a-z0-9-]+) =", text, re.MULTILINE)
    return {name: str(message(language, name, places)[0]) for name in names}


def _given(value: object, kept: list[object]) -> object:
    if type(value) is str and not _PLACES.search(value):
        return value
    if isinstance(value, int):
        return fluent_number(value, useGrouping=False)
    kept.append(value)
    return chr(_FIRST + len(kept) - 1)


def _of(language: str) -> str:
    """Return the folder of a language: that of its first tag."""
    tag = language.split("-", maxsplit=1)[0].lower()
    return tag if tag in languages() else SOURCE


@cache
def _bundle(language: str, file: str) -> FluentBundle:
    path = shipped("words") / language / f"{file}.ftl"
    if not path.is_file():
        raise KeyError(f"{language}/{file}.ftl")
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource(path.read_text(encoding="utf-8")))
    return bundle
