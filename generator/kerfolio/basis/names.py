"""Names: the nearest known ones, and names fit for files and addresses."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches

from kerfolio.basis.latin import in_ascii

NAME = re.compile(r"[a-z][a-z0-9]*(?:[-_][a-z0-9]+)*")
"""A maker's name for a part, sheet, size or feature: lower case, digits, inner hyphens."""

_DIGITS = re.compile("[0-9]+")
_ALIKE = 0.6
_CLOSE = 2
"""Counting numbers so far apart are near, however small they are."""

_LONGEST = 60
"""Letters of a plan's name at most."""

_MOST = 8
"""Names that are listed where none is near; nobody reads forty."""


def name_of(text: str, joint: str = "-") -> str:
    """Return the name that a text gives, its words joined: ``bruecke-2`` for ``Brücke 2``.

    Empty where it holds letters that ASCII has no spelling for.
    """
    return re.sub("[^a-z0-9]+", joint, in_ascii(text)).strip(joint)


def spoken(name: str) -> str:
    """Return what a name says when it is read: ``rear tabs`` for ``rear-tabs``."""
    return name.replace("-", " ").replace("_", " ")


def headed(name: str) -> str:
    """Return what a name says, as a heading: ``Rear tabs``."""
    words = spoken(name)
    return words[:1].upper() + words[1:]


def is_plan_name(name: str) -> bool:
    """Tell whether a plan's folder may be called so: its name becomes an address."""
    return bool(NAME.fullmatch(name)) and "_" not in name and len(name) <= _LONGEST


def begins(name: str, with_: str) -> bool:
    """Tell whether a dotted name is another or begins with it: ``rail.tabs.2`` and ``rail``."""
    return f"{name}.".startswith(f"{with_}.")


def set_name(name: str) -> str:
    """Return what a set of features is called: the name of one of its copies without its number."""
    head, dot, number = name.rpartition(".")
    return head if dot and number.isdigit() else name


def split_feature(name: str, pieces: Iterable[str]) -> tuple[str, str]:
    """Return the name of a piece's feature as (piece, feature); of pieces that fit, the longest.

    The piece is empty when none is known by it.
    """
    fitting = [label for label in pieces if name.startswith(f"{label}.")]
    piece = max(fitting, key=len, default="")
    return (piece, name[len(piece) + 1 :]) if piece else ("", name)


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return the known name most like ``name``, or None when none is close."""
    return next(iter(likely(name, known)), None)


def likely(name: str, known: Iterable[str]) -> tuple[str, ...]:
    """Return the known names that ``name`` may have been meant for, the nearest first.

    Words go by likeness of their letters, numbers by their size: of names of the same words, the
    two of the nearest numbers (``birch-plywood-9`` and ``birch-plywood-12`` for
    ``birch-plywood-10``), but none with less than half or more than double the number.
    """
    alike: dict[str, list[str]] = {}
    for each in sorted(known):
        alike.setdefault(_words(each), []).append(each)
    own = _words(name)
    near = (own,) if own in alike else get_close_matches(own, sorted(alike), n=3, cutoff=_ALIKE)
    for words in near:
        found = _by_numbers(name, alike[words])
        if found:
            return found
    return ()


def choice(names: Iterable[str]) -> str:
    """Return names to choose from, each in its quotes: this one or that one."""
    return " or ".join(f"`{each}`" for each in names)


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """Return advice naming the known names that are near, else some of all of them."""
    names = sorted(known)
    close = likely(name, names)
    if close:
        return f"Did you mean {choice(close)}?"
    if not names:
        return "None is known here."
    shown = names if len(names) <= _MOST + 1 else sorted(_most_like(name, names))
    more = f" and {len(names) - len(shown)} more" if len(shown) < len(names) else ""
    return f"Known here: {', '.join(f'`{each}`' for each in shown)}{more}."


def _most_like(name: str, names: list[str]) -> list[str]:
    ratio = {each: SequenceMatcher(None, name, each).ratio() for each in names}
    return sorted(names, key=lambda each: (-ratio[each], each))[:_MOST]


def _words(name: str) -> str:
    """Return a name with ``#`` for each of its numbers."""
    return _DIGITS.sub("#", name)


def _numbers(name: str) -> tuple[int, ...]:
    return tuple(int(each) for each in _DIGITS.findall(name))


def _by_numbers(name: str, same_words: list[str]) -> tuple[str, ...]:
    """Return the names of the same words whose numbers are ``name``'s, else the two nearest."""
    own = _numbers(name)
    theirs = {each: _numbers(each) for each in same_words}
    if len(theirs[same_words[0]]) != len(own):
        return tuple(same_words[:1])
    near = [each for each in same_words if all(map(_is_near, own, theirs[each]))]
    off = {each: tuple(abs(a - b) for a, b in zip(own, theirs[each], strict=True)) for each in near}
    ranked = sorted(near, key=lambda each: (off[each], theirs[each]))
    return tuple(ranked[:1] if ranked and not any(off[ranked[0]]) else ranked[:2])


def _is_near(one: int, other: int) -> bool:
    return abs(one - other) <= _CLOSE or 2 * min(one, other) >= max(one, other)
