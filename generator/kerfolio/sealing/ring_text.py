"""A ring as text: one file for a circle, which whoever has it can open everything with."""

from __future__ import annotations

import json
from base64 import b64decode, b64encode
from typing import Any

from kerfolio.sealing.fault import SealError
from kerfolio.sealing.form import PREFIX, SALT
from kerfolio.sealing.locks import KEY
from kerfolio.sealing.ring import MONTH, Ring, RingKey, Sealed

_FORMAT = "kerfolio-keys/1"
_ABOUT = "Whoever has this file opens what is sealed for this circle. Keep it to yourself."


def ring_text(ring: Ring) -> str:
    """Return a ring as JSON."""
    content = {
        "format": _FORMAT,
        "about": _ABOUT,
        "circle": ring.circle,
        "salt": _told(ring.salt),
        "rounds": ring.rounds,
        "keys": [{"name": each.name, "opener": _told(each.opener)} for each in ring.keys],
        "sealed": [
            {
                "sha256": each.sha256,
                "bytes": each.size,
                "keys": list(each.keys),
                "content-key": _told(each.content_key),
                "prefix": _told(each.prefix),
            }
            for each in ring.sealed
        ],
    }
    return json.dumps(content, indent=1) + "\n"


def ring_from(text: str | bytes) -> Ring:
    """Return what ``ring_text`` told. Raises SealError for anything else; it quotes nothing."""
    try:
        found = json.loads(text)
        if found["format"] != _FORMAT:
            raise ValueError
        ring = Ring(
            circle=_of(str, found["circle"]),
            salt=_bytes(found["salt"], SALT),
            rounds=_of(int, found["rounds"]),
            keys=tuple(map(_key, _of(list, found["keys"]))),
            sealed=tuple(map(_sealed, _of(list, found["sealed"]))),
        )
        _check(ring)
    except (ValueError, KeyError, TypeError, RecursionError):
        words = "it is no file of keys, or it was changed"
        raise SealError(words, "Bring back a copy of it, or make new keys elsewhere.") from None
    return ring


def _check(ring: Ring) -> None:
    """Raise ValueError where a name stands twice, or a sealing needs a key that does not hold."""
    names = [each.name for each in ring.keys]
    content_keys = [each.content_key for each in ring.sealed]
    holding = {each.name for each in ring.holding}
    sound = (
        len(set(names)) == len(names)
        and len(set(content_keys)) == len(content_keys)
        and all(each.keys and holding.issuperset(each.keys) for each in ring.sealed)
        and 0 < ring.rounds <= 10_000_000
    )
    if not sound:
        raise ValueError


def _key(found: Any) -> RingKey:
    key = RingKey(name=_of(str, found["name"]), opener=_bytes(found["opener"], KEY, 0))
    month, point, count = key.name.partition(".")
    if not MONTH.fullmatch(month) or (point and not (count.isascii() and count.isdigit())):
        raise ValueError
    return key


def _sealed(found: Any) -> Sealed:
    size = _of(int, found["bytes"])
    if size < 0:
        raise ValueError
    return Sealed(
        sha256=_of(str, found["sha256"]),
        size=size,
        keys=tuple(_of(str, each) for each in _of(list, found["keys"])),
        content_key=_bytes(found["content-key"], KEY),
        prefix=_bytes(found["prefix"], PREFIX),
    )


def _told(content: bytes) -> str:
    return b64encode(content).decode("ascii")


def _bytes(value: Any, *lengths: int) -> bytes:
    content = b64decode(_of(str, value).encode(), validate=True)
    if len(content) not in lengths:
        raise ValueError
    return content


def _of(kind: type[Any], value: Any) -> Any:
    """Return a value of that very kind. Raises TypeError."""
    if type(value) is not kind:
        raise TypeError
    return value
