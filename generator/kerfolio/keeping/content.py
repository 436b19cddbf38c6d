"""The hash of what a value holds, the same for equal values in every process and on every machine.

It is for values that do not change: numbers, texts, dates, enumerations, tuples and mappings of
such, frozen dataclasses with all of their fields, functions of the program by their names. A value
of any other kind is refused, as nobody could tell whether two of them are the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from functools import cache, partial
from hashlib import blake2b
from operator import attrgetter
from types import BuiltinFunctionType, FunctionType
from typing import Any

from kerfolio.keeping.absent import ABSENT

_SIZE = 20  # bytes of a hash
_PLAIN = frozenset((float, int, str, bool, type(None)))
_WORDED = frozenset((*_PLAIN, Decimal, date))


class ContentError(TypeError):
    """Says that a value has no hash: a fault of the program, never of what a maker wrote."""


class Contents:
    """Hashes values, each object once; what was hashed is held, so that it keeps its identity."""

    def __init__(self) -> None:
        """Know nothing yet."""
        self._known: dict[int, tuple[object, bytes]] = {}

    def hash_of(self, value: object) -> str:
        """Return the hash of a value. Raises ContentError for what has none."""
        return self._digest(value).hex()

    def _digest(self, value: object) -> bytes:
        kind = type(value)
        if kind is bytes:
            return _hashed("bytes", value)  # type: ignore[arg-type]
        if kind in _WORDED:
            return _hashed(kind.__name__, repr(value).encode())
        known = self._known.get(id(value))
        if known is None:
            known = self._known[id(value)] = (value, self._made(value, kind))
        return known[1]

    def _made(self, value: Any, kind: type) -> bytes:
        if kind is tuple and _PLAIN.issuperset(map(type, value)):
            return _hashed("row", repr(value).encode())  # tells 1 from 1.0, and -0.0 from 0.0
        return _hashed(*_told(value, kind, self._digest))


def _hashed(what: str, *parts: bytes) -> bytes:
    """Return the hash of something made of parts; only the last may be of any length."""
    made = blake2b(what.encode() + b" ", digest_size=_SIZE)
    for each in parts:
        made.update(each)
    return made.digest()


def _told(value: Any, kind: type, digest: Callable[[object], bytes]) -> Iterator[Any]:
    """Yield what something is called, then its parts in their order."""
    if value is ABSENT:
        yield "absent"
    elif isinstance(value, Enum):
        yield f"{named(kind)}.{value.name}"
    elif is_dataclass(kind):
        yield named(kind)
        yield from map(digest, _read(kind)(value))
    elif isinstance(value, str):  # words that know more, of a class of their own
        yield named(kind)
        yield from map(digest, (str(value), *vars(value).items()))
    elif isinstance(value, tuple):
        yield f"{named(kind)} {len(value)}"
        yield from map(digest, value)
    elif isinstance(value, Mapping):  # in its own order, which who reads it may go by
        yield f"mapping {len(value)}"
        yield from (digest(each) for pair in value.items() for each in pair)
    elif isinstance(value, frozenset):
        yield f"set {len(value)}"
        yield from sorted(map(digest, value))
    elif isinstance(value, partial):
        yield "partial"
        yield from map(digest, (value.func, value.args, value.keywords))
    elif isinstance(value, FunctionType | BuiltinFunctionType | type):
        yield _function(value)
    else:
        raise ContentError(f"a {named(kind)} has no hash of its content: {repr(value)[:80]}")


def _function(value: Any) -> str:
    """Return the name under which a function or a class of the program is found."""
    name = named(value)
    if "<" in name:
        raise ContentError(f"{name} is made anew each time: give it a name in its module")
    return f"function {name}"


def named(value: Any) -> str:
    """Return where a class or a function of the program is found."""
    return f"{value.__module__}.{value.__qualname__}"


@cache
def _read(kind: type) -> Callable[[object], tuple[object, ...]]:
    """Return what reads all fields of a frozen dataclass. Raises ContentError for another."""
    if not kind.__dataclass_params__.frozen:  # type: ignore[attr-defined]
        raise ContentError(f"a {named(kind)} may change: freeze it")
    names = [each.name for each in fields(kind)]
    if not names:
        return lambda _: ()
    read = attrgetter(*names)
    return read if len(names) > 1 else lambda value: (read(value),)
