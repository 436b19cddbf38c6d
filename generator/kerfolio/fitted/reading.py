"""Fitted files read from their JSON; what is wrong with it is told with where it stands."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from math import isfinite
from typing import Any, NoReturn

from kerfolio.basis.digits import MOST_DECIMALS
from kerfolio.basis.style import Rule, Style
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number, Piece, Slot, Text, Within
from kerfolio.fitted.writing import FORMAT

_WIDEST = 100
"""Signs of a padded number."""


class FittedError(ValueError):
    """Says what is wrong with a text that ought to be fitted files."""


def read_fitted(text: str) -> Fitted:
    """Return the fitted files that a text states. Raises FittedError."""
    try:
        stated = json.loads(text, parse_constant=_constant)
    except json.JSONDecodeError as broken:
        fault = f"{broken.msg[:1].lower()}{broken.msg[1:]}"
        raise FittedError(f"line {broken.lineno}, column {broken.colno}: {fault}") from None
    except (RecursionError, ValueError) as broken:
        told = str(broken) if isinstance(broken, FittedError) else "no readable JSON"
        raise FittedError(told) from None
    return _fitted(stated)


def _constant(word: str) -> NoReturn:
    raise FittedError(f"{word} is no number")


def _fitted(stated: Any) -> Fitted:
    whole = _mapping(stated, "the whole")
    if whole.get("format") != FORMAT:
        raise FittedError(f"format: must be {FORMAT}")
    numbers = tuple(_number(each, at) for at, each in _items(whole, "numbers", ""))
    names = [each.name for each in numbers]
    if len(set(names)) < len(names):
        raise FittedError("numbers: two have the same name")
    styles = tuple(_style(each, at) for at, each in _items(whole, "styles", ""))
    pieces = tuple(
        _piece(each, at, styles, len(numbers)) for at, each in _items(whole, "pieces", "")
    )
    files = tuple(
        FittedFile(
            cells=tuple(_cell(cell, at, names, pieces) for at, cell in _items(each, "cells", file))
        )
        for file, each in _items(whole, "files", "")
    )
    return Fitted(numbers=numbers, files=files)


def _mapping(stated: Any, at: str) -> dict[str, Any]:
    if not isinstance(stated, dict):
        raise FittedError(f"{at}: must be a mapping")
    return stated


def _items(stated: Any, key: str, at: str) -> Iterator[tuple[str, Any]]:
    """Yield the entries of a list, each with where it stands."""
    inside = f"{at}.{key}" if at else key
    listed = _mapping(stated, at).get(key)
    if not isinstance(listed, list):
        raise FittedError(f"{inside}: must be a list")
    yield from ((f"{inside}[{place}]", each) for place, each in enumerate(listed))


def _real(value: Any, at: str) -> float:
    try:
        if not isinstance(value, bool) and isfinite(value):
            return float(value)
    except (OverflowError, TypeError):
        pass
    raise FittedError(f"{at}: must be a number")


def _count(value: Any, at: str, most: int) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= most:
        raise FittedError(f"{at}: must be a whole number from 0 to {most}")
    return value


def _words(value: Any, at: str) -> str:
    if not isinstance(value, str):
        raise FittedError(f"{at}: must be a text")
    return value


def _sign(value: Any, at: str) -> str:
    if len(_words(value, at)) != 1:
        raise FittedError(f"{at}: must be one sign")
    return str(value)


def _flag(value: Any, at: str) -> bool:
    if not isinstance(value, bool):
        raise FittedError(f"{at}: must be true or false")
    return value


def _number(stated: Any, at: str) -> Number:
    each = _mapping(stated, at)
    none, drawn = each.get("none"), each.get("drawn")
    none = _flag(none, f"{at}.none")
    if drawn is None and not none:
        raise FittedError(f"{at}.drawn: must be a number")
    return Number(
        name=_words(each.get("name"), f"{at}.name"),
        least=_real(each.get("least"), f"{at}.least"),
        most=_real(each.get("most"), f"{at}.most"),
        drawn=None if drawn is None else _real(drawn, f"{at}.drawn"),
        decimals=_count(each.get("decimals"), f"{at}.decimals", MOST_DECIMALS),
        none=none,
        below=_words(each.get("below", ""), f"{at}.below"),
        above=_words(each.get("above", ""), f"{at}.above"),
    )


def _style(stated: Any, at: str) -> Style:
    each = _mapping(stated, at)
    rule, unless = each.get("rule"), each.get("unless")
    if rule not in list(Rule):
        raise FittedError(f"{at}.rule: must be one of {', '.join(Rule)}")
    return Style(
        rule=Rule(rule),
        decimals=_count(each.get("decimals"), f"{at}.decimals", MOST_DECIMALS),
        width=_count(each.get("width", 0), f"{at}.width", _WIDEST),
        unless=None if unless is None else _real(unless, f"{at}.unless"),
        signed=_flag(each.get("signed", False), f"{at}.signed"),
        before=_words(each.get("before", ""), f"{at}.before"),
        after=_words(each.get("after", ""), f"{at}.after"),
        none=_words(each.get("none", ""), f"{at}.none"),
        room=_count(each.get("room", 0), f"{at}.room", _WIDEST),
        mark=_sign(each.get("mark", "."), f"{at}.mark"),
    )


def _piece(stated: Any, at: str, styles: Sequence[Style], numbers: int) -> Piece:
    if isinstance(stated, str):
        return stated
    if not isinstance(stated, list) or not 2 <= len(stated) <= 2 + numbers:
        raise FittedError(f"{at}: must be a text, or a style, a constant and slopes")
    style, constant, *slopes = stated
    return Slot(
        style=_one_of(styles, style, at, "style"),
        constant=_real(constant, at),
        slopes=tuple(_real(each, at) for each in slopes),
    )


def _one_of(each: Sequence[Any], place: Any, at: str, what: str) -> Any:
    if isinstance(place, bool) or not isinstance(place, int) or not 0 <= place < len(each):
        raise FittedError(f"{at}: there is no such {what}")
    return each[place]


def _cell(stated: Any, at: str, names: Sequence[str], pieces: Sequence[Piece]) -> Cell:
    each = _mapping(stated, at)
    return Cell(
        box=tuple(_box(each.get("box"), f"{at}.box", names)),
        name=_text(each, "name", at, pieces),
        text=_text(each, "text", at, pieces),
    )


def _box(stated: Any, at: str, names: Sequence[str]) -> Iterator[tuple[str, Within]]:
    for name, within in _mapping(stated, at).items():
        if name not in names:
            raise FittedError(f"{at}: no number has this name: {name!a}")
        if within is None:
            yield name, None
        elif isinstance(within, list) and len(within) == 2:
            yield name, (_real(within[0], at), _real(within[1], at))
        else:
            raise FittedError(f"{at}: must be the least and the most, or null")


def _text(stated: dict[str, Any], key: str, at: str, pieces: Sequence[Piece]) -> Text:
    return tuple(_one_of(pieces, place, where, "piece") for where, place in _items(stated, key, at))
