"""Values as bytes and back, the same values: those that ``content`` hashes, but for functions.

From bytes nothing is made but numbers, texts, tuples, mappings, sets, and records, rows and members
of enumerations of the program; nothing of it is run.
"""

from __future__ import annotations

import json
from base64 import b64decode, b64encode
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from functools import cache, reduce
from importlib import import_module
from operator import attrgetter
from typing import Any

from kerfolio.keeping.content import ContentError, named

_PLAIN = frozenset((float, int, str, bool, type(None)))
_OURS = "kerfolio."

_WRITTEN: dict[type, tuple[str, Callable[[Any], str]]] = {
    Decimal: ("decimal", str),
    date: ("day", date.isoformat),
    bytes: ("bytes", lambda value: b64encode(value).decode()),
}
_READ: dict[str, Callable[[Any], object]] = {
    "decimal": Decimal,
    "day": date.fromisoformat,
    "bytes": b64decode,
}


def value_bytes(value: object) -> bytes:
    """Return a value as bytes. Raises ContentError for what cannot be read back."""
    return json.dumps(_told(value, type(value)), separators=(",", ":")).encode()


def value_of(content: bytes) -> Any:
    """Return the value that ``value_bytes`` was given. Raises ValueError for other bytes."""
    return _made(json.loads(content))


def _told(value: Any, kind: type) -> Any:
    if kind in _PLAIN:
        return value
    if kind is tuple:
        if _PLAIN.issuperset(map(type, value)):
            return value
        return [_told(each, type(each)) for each in value]
    if kind in _WRITTEN:
        name, write = _WRITTEN[kind]
        return {name: write(value)}
    if isinstance(value, Enum):
        return {"one of": _name(kind), "": value.name}
    if is_dataclass(kind):
        return {"record": _name(kind), "": [_told(v, type(v)) for v in _fields(kind)(value)]}
    if isinstance(value, tuple) and hasattr(kind, "_fields"):
        return {"row": _name(kind), "": [_told(each, type(each)) for each in value]}
    if isinstance(value, frozenset):
        return {"set": [_told(each, type(each)) for each in sorted(value)]}
    if isinstance(value, Mapping):
        return {"mapping": [[_told(e, type(e)) for e in pair] for pair in value.items()]}
    raise ContentError(f"a {named(kind)} cannot be kept: {repr(value)[:80]}")


def _made(told: Any) -> Any:
    if type(told) is list:
        return tuple([each if type(each) in _PLAIN else _made(each) for each in told])
    if type(told) is not dict:
        return told
    what, given = next(iter(told.items()))
    if what in _READ:
        return _READ[what](given)
    if what == "set":
        return frozenset(map(_made, given))
    if what == "mapping":
        return {_made(key): _made(value) for key, value in given}
    kind = _kind(given)
    if what == "one of":
        return kind[told[""]]  # type: ignore[index]
    if what == "row":
        return tuple.__new__(kind, _made(told[""]))
    record: object = object.__new__(kind)
    for name, each in zip(_names(kind), told[""], strict=True):
        object.__setattr__(record, name, each if type(each) in _PLAIN else _made(each))
    return record


@cache
def _name(kind: type) -> str:
    """Return the name by which a kind is found. Raises ContentError for one that is not ours."""
    name = f"{kind.__module__}:{kind.__qualname__}"
    if not name.startswith(_OURS) or "<" in name:
        raise ContentError(f"a {named(kind)} cannot be kept: it is no kind of the program")
    return name


@cache
def _kind(name: str) -> type:
    """Return a kind of the program by its name. Raises ValueError for anything else."""
    module, _, path = name.partition(":")
    if not module.startswith(_OURS):
        raise ValueError(f"{name} is no kind of the program")
    kind = reduce(getattr, path.split("."), import_module(module))
    if not isinstance(kind, type) or not (
        is_dataclass(kind) or issubclass(kind, Enum) or hasattr(kind, "_fields")
    ):
        raise ValueError(f"{name} is no record")
    return kind


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(each.name for each in fields(kind))


@cache
def _fields(kind: type) -> Callable[[object], tuple[object, ...]]:
    names = _names(kind)
    if len(names) > 1:
        return attrgetter(*names)
    return lambda value: tuple(getattr(value, name) for name in names)
