"""Fitted files as JSON: what texts share stands once. DEVELOPERS.md says what each key means."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from functools import lru_cache
from typing import Any, TypeVar

from kerfolio.basis.digits import plain
from kerfolio.basis.json_text import Number as Written
from kerfolio.basis.json_text import json_text
from kerfolio.basis.style import Style
from kerfolio.fitted.form import Cell, Fitted, Number, Piece, Slot, Text

FORMAT = "kerfolio-fitted/1"

Kind = TypeVar("Kind", bound=Hashable)


@lru_cache(maxsize=2)  # of a plan both are written several times
def fitted_json(fitted: Fitted) -> str:
    """Return fitted files as JSON on one line; the same files give the same text."""
    texts = [text for cell in _cells(fitted) for text in (cell.name, cell.text)]
    pieces = _once(piece for text in texts for piece in text)
    styles = _once(each.style for each in pieces if isinstance(each, Slot))
    content = {
        "format": FORMAT,
        "numbers": [_number(each) for each in fitted.numbers],
        "styles": [_style(each) for each in styles],
        "pieces": [_piece(each, styles) for each in pieces],
        "files": [{"cells": [_cell(each, pieces) for each in file.cells]} for file in fitted.files],
    }
    return json_text(content) + "\n"


def _cells(fitted: Fitted) -> Iterable[Cell]:
    return (cell for file in fitted.files for cell in file.cells)


def _once(each: Iterable[Kind]) -> dict[Kind, int]:
    """Return what is different, in order, with its place."""
    return {one: place for place, one in enumerate(dict.fromkeys(each))}


def _exact(value: float) -> Written:
    """Return a double in the fewest digits that give it back."""
    return Written(plain(value + 0.0))  # 0 has no sign


def _optional(value: float | None) -> Written | None:
    return None if value is None else _exact(value)


def _number(number: Number) -> dict[str, Any]:
    words = {"below": number.below, "above": number.above}
    return {
        "name": number.name,
        "least": _exact(number.least),
        "most": _exact(number.most),
        "drawn": _optional(number.drawn),
        "decimals": number.decimals,
        "none": number.none,
        **{key: text for key, text in words.items() if text},
    }


def _style(style: Style) -> dict[str, Any]:
    stated: dict[str, Any] = {"rule": style.rule.value, "decimals": style.decimals}
    stated |= {"width": style.width} if style.width else {}
    stated |= {} if style.unless is None else {"unless": _exact(style.unless)}
    stated |= {"signed": True} if style.signed else {}
    stated |= {"room": style.room} if style.room else {}
    stated |= {"mark": style.mark} if style.mark != "." else {}
    words = {"before": style.before, "after": style.after, "none": style.none}
    return stated | {key: text for key, text in words.items() if text}


def _piece(piece: Piece, styles: dict[Style, int]) -> str | list[Any]:
    if isinstance(piece, str):
        return piece
    return [styles[piece.style], _exact(piece.constant), *map(_exact, piece.slopes)]


def _cell(cell: Cell, pieces: dict[Piece, int]) -> dict[str, Any]:
    box = {name: None if each is None else [*map(_exact, each)] for name, each in cell.box}
    return {"box": box, "name": _text(cell.name, pieces), "text": _text(cell.text, pieces)}


def _text(text: Text, pieces: dict[Piece, int]) -> Sequence[int]:
    return [pieces[each] for each in text]
