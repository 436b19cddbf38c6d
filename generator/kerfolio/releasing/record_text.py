"""A record as the text of its file: JSON, a part or a joint a line, so that it can be compared."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from kerfolio.basis.digits import RATIO_DECIMALS
from kerfolio.basis.json_text import Number, json_text, number
from kerfolio.model.release_form import RECORD_FORMAT, SUM, sum_of
from kerfolio.model.release_record import (
    Frame,
    RecordedContour,
    RecordedEnd,
    RecordedPoint,
    RecordedSeat,
    ReleaseRecord,
)


def record_text(record: ReleaseRecord) -> str:
    """Return the file of a record, the same text for the same record; see docs/releases.md."""
    content = {
        "format": RECORD_FORMAT,
        "plan": record.plan,
        "version": record.version,
        "sheets": [
            {
                "name": each.name,
                "stock": each.stock,
                "range": [number(each.least), number(each.most)],
                "drawn-for": number(each.drawn),
                "fit": number(each.fit),
            }
            for each in record.sheets
        ],
        "parts": [
            {
                "name": each.name,
                "title": each.title,
                "sheet": each.sheet,
                "pieces": each.pieces,
                "one-face": each.one_face,
                "cut": each.cut,
            }
            for each in record.parts
        ],
        "joints": [
            {"kind": each.kind, "a": _end(each.a), "b": _end(each.b), "slides": each.slides}
            for each in record.joints
        ],
        "steps": [
            {"title": each.title, "add": each.add, "words": each.words} for each in record.steps
        ],
        "hardware": record.hardware,
        "boards": [
            {
                "name": each.name,
                "stock": each.stock,
                "length": number(each.length),
                "count": each.count,
            }
            for each in record.boards
        ],
        "weight": number(record.weight),
        "sheet-count": record.sheet_count,
        "words": record.words,
        "points": [_point(each) for each in record.points],
    }
    content[SUM] = sum_of(json.loads(json_text(content)))
    return _lined(content)


def _end(end: RecordedEnd) -> dict[str, Any]:
    return {"piece": end.piece, "feature": end.feature, "through": end.through}


def _point(point: RecordedPoint) -> dict[str, Any]:
    return {
        "thickness": {name: number(mm) for name, mm in point.thickness.items()},
        "shapes": {
            name: [_contour(each) for each in shape] for name, shape in point.shapes.items()
        },
        "pairs": [[[_seat(seat) for seat in pair] for pair in pairs] for pairs in point.pairs],
    }


def _contour(contour: RecordedContour) -> dict[str, Any]:
    line = [[number(x), number(y), number(b, RATIO_DECIMALS)] for x, y, b in contour.line]
    return {"depth": number(contour.depth), "line": line} if contour.depth else {"line": line}


def _seat(seat: RecordedSeat) -> dict[str, Any]:
    found: dict[str, Any] = {"frame": _frame(seat.frame)}
    if any(seat.size):
        found["size"] = [number(each) for each in seat.size]
    if seat.gaps:
        found["gaps"] = [number(each) for each in seat.gaps]
    return found


def _frame(frame: Frame) -> list[list[Number]]:
    origin, *directions = frame
    ways = ([number(each, RATIO_DECIMALS) for each in way] for way in directions)
    return [[number(each) for each in origin], *ways]


def _lined(content: Mapping[str, Any]) -> str:
    """Return JSON with an entry of each list a line, and of each point one for every part."""
    lines = [f'"{key}": {_laid(key, value)}' for key, value in content.items()]
    return "{\n" + ",\n".join(lines) + "\n}\n"


def _laid(key: str, value: Any) -> str:
    if key == "points":
        return _block("[]", (_laid_point(each) for each in value))
    if isinstance(value, list | tuple) and value:
        return _block("[]", (json_text(each) for each in value))
    return json_text(value)


def _laid_point(point: Mapping[str, Any]) -> str:
    shapes = (f"{json_text(name)}:{json_text(shape)}" for name, shape in point["shapes"].items())
    return (
        f'{{"thickness":{json_text(point["thickness"])},\n"shapes":{_block("{}", shapes)},\n'
        f'"pairs":{_block("[]", (json_text(each) for each in point["pairs"]))}}}'
    )


def _block(brackets: str, entries: Iterable[str]) -> str:
    told = list(entries)
    return f"{brackets[0]}\n" + ",\n".join(told) + f"\n{brackets[1]}" if told else brackets
