"""Reads the records of releases: ``plans/NAME/releases/VERSION.json``; nothing damaged is used."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from math import isfinite
from pathlib import Path
from typing import Any, TypeVar

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.model.plan import Release
from kerfolio.model.release_form import RECORD_FORMAT, RECORDS, SUM, sum_of
from kerfolio.model.release_record import (
    Pair,
    RecordedBoard,
    RecordedContour,
    RecordedEnd,
    RecordedJoint,
    RecordedPart,
    RecordedPoint,
    RecordedSeat,
    RecordedSheet,
    RecordedStep,
    ReleaseRecord,
)
from kerfolio.reading.visit import Visit

_BACK = "Take the file back from where you keep your versions, or remove it: what it told is lost."
_MOST = 1e6  # mm: no sheet is a kilometre long

_Value = TypeVar("_Value")


class DamagedError(ValueError):
    """What a record's file holds is no record; the text says where and why."""


def read_records(
    visit: Visit, folder: Path, releases: tuple[Release, ...]
) -> tuple[ReleaseRecord, ...]:
    """Return the records of a plan's folder in the order of versions; findings go to the visit."""
    home = folder / RECORDS
    if not home.is_dir() or not visit.holds(home):
        return ()
    stated = {each.version: each for each in releases}
    found = []
    for path in sorted(home.glob("*.json")):
        if path.name.startswith("."):
            continue
        record, finding = _read(visit, path, folder.name)
        if finding is not None:
            visit.findings.append(finding)
        elif record is not None and record.version not in stated:
            message = f"`releases:` of the plan has no {record.version}"
            advice = "State the release there, or remove the record."
            place = Place(visit.shown(path))
            visit.findings.append(error("record-unstated", message, place, advice))
        elif record is not None:
            found.append(record)
    return tuple(sorted(found, key=lambda each: stated[each.version].numbers))


def _read(visit: Visit, path: Path, plan: str) -> tuple[ReleaseRecord | None, Finding | None]:
    content = visit.content(path)
    if content is None:
        return None, None
    try:
        record = record_from(content)
        if record.version != path.stem:
            raise DamagedError(f"it is the record of {quoted(record.version)}, by its name another")
        if record.plan != plan:
            raise DamagedError(f"it is a record of the plan {quoted(record.plan)}")
    except DamagedError as damage:
        return None, error("release-record", str(damage), Place(visit.shown(path)), _BACK)
    return record, None


def record_from(content: bytes) -> ReleaseRecord:
    """Return the record that a file holds. Raises DamagedError, which says what is wrong."""
    try:
        found = json.loads(content, parse_int=float)
    except (ValueError, RecursionError) as trouble:
        at = f", line {trouble.lineno}" if isinstance(trouble, json.JSONDecodeError) else ""
        raise DamagedError(f"the record is no JSON{at}: the file is cut short or changed") from None
    if not isinstance(found, dict) or found.get("format") != RECORD_FORMAT:
        form = found.get("format") if isinstance(found, dict) else None
        known = f": its format is {quoted(str(form))}" if form else ""
        raise DamagedError(f"it is no `{RECORD_FORMAT}`{known}")
    try:
        record = _record(_At(found, ""))
    except RecursionError:
        raise DamagedError("it is nested too deep") from None
    whole = json.loads(content)
    if found.get(SUM) != sum_of(whole):
        raise DamagedError("what it holds is not what was written: its sum differs")
    return record


class _At:
    """A value of the file with the way to it, for saying where something is wrong."""

    def __init__(self, value: Any, path: str) -> None:
        self.value, self.path = value, path

    def key(self, name: str) -> _At:
        """Return the value of a key."""
        if not isinstance(self.value, dict):
            raise self.damage("holds no keys")
        if name not in self.value:
            raise self.damage(f"lacks `{name}`")
        return _At(self.value[name], f"{self.path}.{name}" if self.path else name)

    def has(self, name: str) -> bool:
        """Tell whether it has a key."""
        return isinstance(self.value, dict) and name in self.value

    def each(self, make: Callable[[_At], _Value], count: int | None = None) -> tuple[_Value, ...]:
        """Return what is made of each entry of a list, of ``count`` where that is said."""
        if not isinstance(self.value, list):
            raise self.damage("is no list")
        if count is not None and len(self.value) != count:
            raise self.damage(f"has {len(self.value)} entries where {count} belong")
        return tuple(make(_At(v, f"{self.path}[{i}]")) for i, v in enumerate(self.value))

    def named(self, make: Callable[[_At], _Value]) -> dict[str, _Value]:
        """Return what is made of each value of a mapping."""
        if not isinstance(self.value, dict):
            raise self.damage("holds no keys")
        return {name: make(_At(v, f"{self.path}.{name}")) for name, v in self.value.items()}

    def text(self) -> str:
        """Return a text."""
        if not isinstance(self.value, str):
            raise self.damage("is no text")
        return self.value

    def flag(self) -> bool:
        """Return true or false."""
        if not isinstance(self.value, bool):
            raise self.damage("is neither true nor false")
        return self.value

    def real(self) -> float:
        """Return a number."""
        value = self.value
        if not isinstance(value, float) or not isfinite(value) or abs(value) > _MOST:
            raise self.damage("is no number that can be meant")
        return value

    def count(self) -> int:
        """Return a whole number from 0."""
        value = self.real()
        if value < 0 or value != int(value):
            raise self.damage("is no count")
        return int(value)

    def damage(self, words: str) -> DamagedError:
        """Return what is wrong here, to be raised."""
        return DamagedError(f"`{self.path or 'the record'}` {words}")


def _record(at: _At) -> ReleaseRecord:
    parts = at.key("parts").each(_part)
    joints = at.key("joints").each(_joint)
    sheets = at.key("sheets").each(_sheet)
    record = ReleaseRecord(
        plan=at.key("plan").text(),
        version=at.key("version").text(),
        sheets=sheets,
        parts=parts,
        joints=joints,
        points=at.key("points").each(lambda each: _point(each, len(joints))),
        steps=at.key("steps").each(_step),
        hardware=at.key("hardware").named(_At.count),
        boards=at.key("boards").each(_board),
        weight=at.key("weight").real(),
        sheet_count=at.key("sheet-count").count(),
        words=at.key("words").text(),
    )
    for complaint in _unmatched(record):
        raise DamagedError(complaint)
    return record


def _unmatched(record: ReleaseRecord) -> Iterator[str]:
    """Yield what of a record does not hang together."""
    names = {each.name for each in record.parts}
    sheets = {each.name for each in record.sheets}
    pieces = set(record.pieces)
    if len(names) != len(record.parts) or len(pieces) != len(record.pieces):
        yield "a part or a piece stands in it twice"
    if not record.points:
        yield "`points` is empty"
    if any(each.sheet not in sheets for each in record.parts):
        yield "a part is of a sheet that `sheets` has not"
    for index, point in enumerate(record.points):
        if set(point.thickness) != sheets or set(point.shapes) != names:
            yield f"`points[{index}]` does not tell of each sheet and each part"
    ends = {end.piece for each in record.joints for end in (each.a, each.b)}
    if ends - pieces:
        yield f"a joint is of {quoted(min(ends - pieces))}, which is no piece"
    for index, _ in enumerate(record.joints):
        if len({len(point.pairs[index]) for point in record.points}) > 1:
            yield f"`joints[{index}]` has not as many pairs at each point"


def _sheet(at: _At) -> RecordedSheet:
    least, most = at.key("range").each(_At.real, 2)
    return RecordedSheet(
        name=at.key("name").text(),
        stock=at.key("stock").text(),
        least=least,
        most=most,
        drawn=at.key("drawn-for").real(),
        fit=at.key("fit").real(),
    )


def _part(at: _At) -> RecordedPart:
    return RecordedPart(
        name=at.key("name").text(),
        title=at.key("title").text(),
        sheet=at.key("sheet").text(),
        pieces=at.key("pieces").each(_At.text),
        one_face=at.key("one-face").flag(),
        cut=at.key("cut").text(),
    )


def _joint(at: _At) -> RecordedJoint:
    return RecordedJoint(
        kind=at.key("kind").text(),
        a=_end(at.key("a")),
        b=_end(at.key("b")),
        slides=at.key("slides").flag(),
    )


def _end(at: _At) -> RecordedEnd:
    return RecordedEnd(
        piece=at.key("piece").text(),
        feature=at.key("feature").text(),
        through=at.key("through").flag(),
    )


def _step(at: _At) -> RecordedStep:
    return RecordedStep(
        title=at.key("title").text(),
        add=at.key("add").each(_At.text),
        words=at.key("words").text(),
    )


def _board(at: _At) -> RecordedBoard:
    return RecordedBoard(
        name=at.key("name").text(),
        stock=at.key("stock").text(),
        length=at.key("length").real(),
        count=at.key("count").count(),
    )


def _point(at: _At, joints: int) -> RecordedPoint:
    return RecordedPoint(
        thickness=at.key("thickness").named(_At.real),
        shapes=at.key("shapes").named(lambda each: each.each(_contour)),
        pairs=at.key("pairs").each(lambda each: each.each(_pair), joints),
    )


def _contour(at: _At) -> RecordedContour:
    line = at.key("line").each(_triple)
    if len(line) < 2:
        raise at.damage("is no contour")
    return RecordedContour(line=line, depth=at.key("depth").real() if at.has("depth") else 0.0)


def _triple(at: _At) -> tuple[float, float, float]:
    first, second, third = at.each(_At.real, 3)
    return first, second, third


def _pair(at: _At) -> Pair:
    first, second = at.each(_seat, 2)
    return first, second


def _seat(at: _At) -> RecordedSeat:
    origin, x, z = at.key("frame").each(_triple, 3)
    size = _triple(at.key("size")) if at.has("size") else (0.0, 0.0, 0.0)
    gaps = at.key("gaps").each(_At.real) if at.has("gaps") else ()
    return RecordedSeat(frame=(origin, x, z), size=size, gaps=gaps)


_TEXT: Mapping[str, Any] = {"type": "string"}
_REAL: Mapping[str, Any] = {"type": "number"}
_COUNT: Mapping[str, Any] = {"type": "integer", "minimum": 0}
_FLAG: Mapping[str, Any] = {"type": "boolean"}


def _list(of: Mapping[str, Any], count: int | None = None) -> dict[str, Any]:
    ends = {} if count is None else {"minItems": count, "maxItems": count}
    return {"type": "array", "items": dict(of), **ends}


def _keys(of: Mapping[str, Any], *needless: str) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": {key: dict(value) for key, value in of.items()},
        "required": [key for key in of if key not in needless],
        "additionalProperties": False,
    }


def _by_name(of: Mapping[str, Any]) -> dict[str, Any]:
    return {"type": "object", "additionalProperties": dict(of)}


def record_schema() -> dict[str, Any]:
    """Return the JSON Schema of a record (draft 2020-12)."""
    end = _keys({"piece": _TEXT, "feature": _TEXT, "through": _FLAG})
    triple = _list(_REAL, 3)
    seat = _keys({"frame": _list(triple, 3), "size": triple, "gaps": _list(_REAL)}, "size", "gaps")
    contour = _keys({"line": _list(triple), "depth": _REAL}, "depth")
    return _keys(
        {
            "format": {"const": RECORD_FORMAT},
            "plan": _TEXT,
            "version": {"type": "string", "pattern": r"^[0-9]+\.[0-9]+\.[0-9]+$"},
            "sheets": _list(
                _keys(
                    {
                        **{"name": _TEXT, "stock": _TEXT, "range": _list(_REAL, 2)},
                        **{"drawn-for": _REAL, "fit": _REAL},
                    }
                )
            ),
            "parts": _list(
                _keys(
                    {
                        **{"name": _TEXT, "title": _TEXT, "sheet": _TEXT, "pieces": _list(_TEXT)},
                        **{"one-face": _FLAG, "cut": _TEXT},
                    }
                )
            ),
            "joints": _list(_keys({"kind": _TEXT, "a": end, "b": end, "slides": _FLAG})),
            "steps": _list(_keys({"title": _TEXT, "add": _list(_TEXT), "words": _TEXT})),
            "hardware": _by_name(_COUNT),
            "boards": _list(
                _keys({"name": _TEXT, "stock": _TEXT, "length": _REAL, "count": _COUNT})
            ),
            "weight": _REAL,
            "sheet-count": _COUNT,
            "words": _TEXT,
            "points": _list(
                _keys(
                    {
                        "thickness": _by_name(_REAL),
                        "shapes": _by_name(_list(contour)),
                        "pairs": _list(_list(_list(seat, 2))),
                    }
                )
            ),
            SUM: {"type": "string", "pattern": "^[0-9a-f]{64}$"},
        }
    )
