"""Reads a frozen layout, which may have been edited by hand or broken."""

from __future__ import annotations

import json
from typing import Any, NoReturn

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.layouts.layout import CopiesCount, Layout, Placement, SheetLayout
from kerfolio.settling.settled import SheetSize

FORMAT = 4
_KNOWN = (1, 2, 3, FORMAT)
_OPTIONAL = ("as-computed", "bound", "copies", "seed", "sheets-from")
"""Keys that some formats have not. `sheets-from` of formats 2 and 3 says nothing that matters, and
what `copies` says in format 2 is left out."""

_SIZES = 3
"""Since this format `copies` tells sheets of different sizes apart."""

_ANEW = "Mend it, or run `kerfolio layout` to compute it anew."
_MOST = 1e6


class _BrokenError(Exception):
    """Carries a complaint from deep inside the file to ``thaw``."""

    def __init__(self, complaint: Complaint) -> None:
        super().__init__(complaint)
        self.complaint = complaint


def thaw(text: str, place: Place) -> tuple[Layout | None, tuple[Finding, ...]]:
    """Return the layout that a frozen text states, or None with a finding saying what is wrong.

    Whether it proves against a plan is not looked at here.
    """
    try:
        stated = json.loads(text, object_pairs_hook=_object, parse_constant=_constant)
        return _layout(stated), ()
    except _BrokenError as broken:
        fault = broken.complaint
        return None, (error("layout-file", fault, place, fault.advice or _ANEW),)
    except json.JSONDecodeError as broken:
        where = Place(place.file, broken.lineno, broken.colno)
        message = f"no JSON: {broken.msg[:1].lower()}{broken.msg[1:]}"
        return None, (error("layout-file", message, where, _ANEW),)
    except (ValueError, RecursionError):
        return None, (error("layout-file", "no readable JSON", place, _ANEW),)


def _refuse(message: str, advice: str = "") -> NoReturn:
    raise _BrokenError(Complaint(message, advice))


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) < len(pairs):
        keys = [key for key, _ in pairs]
        doubled = next(key for key in keys if keys.count(key) > 1)
        _refuse(f"{quoted(ascii(doubled)[1:-1])} stands twice in one place")
    return made


def _constant(word: str) -> NoReturn:
    _refuse(f"`{word}` is no number")


def _layout(stated: Any) -> Layout:
    keys = ("computed-from", "engine", "format", "sheets")
    fields = _fields(stated, keys, "the layout", _OPTIONAL)
    if fields["format"] not in _KNOWN or isinstance(fields["format"], bool):
        shown = quoted(json.dumps(fields["format"]))
        _refuse(f"format {shown} is not known", "Run `kerfolio layout` to write the file anew.")
    return Layout(
        sheets=tuple(_sheet(each) for each in _list(fields, "sheets", "the layout")),
        engine=_text(fields, "engine", "the layout"),
        computed_from=_text(fields, "computed-from", "the layout"),
        as_computed=_text({"as-computed": "", **fields}, "as-computed", "the layout"),
        seed=_count(fields.get("seed", 0), "the layout"),
        bounds=tuple(
            (name, _count(value, "`bound`")) for name, value in _named(fields, "bound").items()
        ),
        copies=_copies(fields) if fields["format"] >= _SIZES else (),
    )


def _copies(fields: dict[str, Any]) -> tuple[CopiesCount, ...]:
    rows = _list({"copies": [], **fields}, "copies", "the layout")
    return tuple(_copies_row(each) for each in rows)


def _copies_row(stated: Any) -> CopiesCount:
    fields = _fields(stated, ("counts", "sheet", "size"), "`copies`")
    counts = tuple(_count(each, "`copies`") for each in _list(fields, "counts", "`copies`"))
    sheet = _text(fields, "sheet", "`copies`")
    return CopiesCount(sheet=sheet, size=_size(fields, "`copies`"), counts=counts)


def _sheet(stated: Any) -> SheetLayout:
    fields = _fields(stated, ("number", "pieces", "sheet", "size"), "a sheet")
    number = fields["number"]
    if isinstance(number, bool) or not isinstance(number, int) or not 0 < number <= _MOST:
        _refuse(f"{quoted(json.dumps(number))} is no number of a sheet")
    owner = f"sheet {number}"
    return SheetLayout(
        number=number,
        sheet=_text(fields, "sheet", owner),
        size=_size(fields, owner),
        placements=tuple(_placement(each) for each in _list(fields, "pieces", owner)),
    )


def _size(fields: dict[str, Any], owner: str) -> SheetSize:
    size = _list(fields, "size", owner)
    if len(size) != 2:
        _refuse(f"the size of {owner} is not two numbers", "Write `[2440, 1220]`.")
    return _number(size[0], owner), _number(size[1], owner)


def _placement(stated: Any) -> Placement:
    fields = _fields(stated, ("part", "piece", "turn", "x", "y"), "a piece")
    piece = _text(fields, "piece", "a piece")
    x, y, turn = (_number(fields[key], quoted(piece)) for key in ("x", "y", "turn"))
    return Placement(piece=piece, part=_text(fields, "part", quoted(piece)), x=x, y=y, turn=turn)


def _named(fields: dict[str, Any], key: str) -> dict[str, Any]:
    value = fields.get(key, {})
    return value if isinstance(value, dict) else _refuse(f"`{key}` of the layout is no object")


def _count(value: Any, owner: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= _MOST:
        _refuse(f"{quoted(ascii(value))} at {owner} is no count")
    return value


def _fields(
    stated: Any, keys: tuple[str, ...], owner: str, optional: tuple[str, ...] = ()
) -> dict[str, Any]:
    if not isinstance(stated, dict):
        _refuse(f"{owner} is no object in braces")
    for key in stated:
        if key not in (*keys, *optional):
            advice = did_you_mean(key, (*keys, *optional))
            _refuse(f"unknown key {quoted(ascii(key)[1:-1])} in {owner}", advice)
    for key in keys:
        if key not in stated:
            name = stated.get("piece", stated.get("number", ""))
            where = f"Look for {quoted(json.dumps(name))}. " if name else ""
            _refuse(f"{owner} has no `{key}`", f"{where}{_ANEW}")
    return stated


def _list(fields: dict[str, Any], key: str, owner: str) -> list[Any]:
    value = fields[key]
    return value if isinstance(value, list) else _refuse(f"`{key}` of {owner} is no list")


def _text(fields: dict[str, Any], key: str, owner: str) -> str:
    value = fields[key]
    if not isinstance(value, str) or not value.isprintable():
        _refuse(f"`{key}` of {owner} is no plain text")
    return value


def _number(value: Any, owner: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        _refuse(f"{quoted(json.dumps(value))} at {owner} is no number")
    if abs(value) > _MOST:
        _refuse(f"a number at {owner} is out of range")
    return float(value)
