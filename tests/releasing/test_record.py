"""Records: written and read again alike, described by their schema, refused where damaged."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from kerfolio.model.release_form import sum_of
from kerfolio.model.release_record import ReleaseRecord
from kerfolio.reading.release_record import DamagedError, record_from
from kerfolio.reading.schemas import schemas
from kerfolio.reading.workshop import read_workshop
from kerfolio.releasing.between import at
from kerfolio.releasing.record_text import record_text
from kerfolio.releasing.recording import record_of
from tests.plans import lay_down, settled_at
from tests.releasing.pairs import BOX, CROSS, STAND
from tests.releasing.test_pairs import recorded

PLANS = (STAND, CROSS, BOX)


@pytest.mark.parametrize("plan", PLANS)
def test_a_record_is_read_as_it_was_written(plan: str) -> None:
    record = recorded(plan)
    text = record_text(record)
    assert record_from(text.encode()) == record
    assert record_text(record_from(text.encode())) == text


@pytest.mark.parametrize("plan", PLANS)
def test_its_schema_describes_it(plan: str) -> None:
    """JSON Schema draft 2020-12, by jsonschema."""
    validator = Draft202012Validator(schemas()["release.schema.json"])
    content = json.loads(record_text(recorded(plan)))
    assert list(validator.iter_errors(content)) == []
    content["points"][0]["pairs"] = [[[{"frame": [0, 0]}]]]
    assert list(validator.iter_errors(content)) != []


def test_between_its_corners_a_record_is_what_the_plan_settles_to() -> None:
    record, mm = recorded(STAND), 17.53
    found, settled = at(record, {"ply": mm}), record_of((settled_at(mm, STAND),)).drawn
    for name, shape in settled.shapes.items():
        for one, other in zip(found.shapes[name], shape, strict=True):
            for a, b in zip(one.line, other.line, strict=True):
                assert a == pytest.approx(b, abs=2e-4)
    for pairs, others in zip(found.pairs, settled.pairs, strict=True):
        for pair, other_pair in zip(pairs, others, strict=True):
            for seat, other_seat in zip(pair, other_pair, strict=True):
                assert seat.frame[0] == pytest.approx(other_seat.frame[0], abs=2e-4)
                assert seat.size == pytest.approx(other_seat.size, abs=2e-4)


def resummed(text: str, *changes: tuple[str, str]) -> bytes:
    """Return a record with something changed and its sum put right again."""
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    content = json.loads(text)
    return json.dumps({**content, "sum": sum_of(content)}).encode()


def test_what_is_damaged_is_told_where_it_is() -> None:
    text = record_text(recorded(STAND))
    damages = {
        text[: len(text) // 2].encode(): "the record is no JSON, line",
        b"[]": "it is no `kerfolio-release/1`",
        text.replace("kerfolio-release/1", "kerfolio-release/9").encode(): "kerfolio-release/9",
        text.replace('"weight": ', '"weight": 1', 1).encode(): "its sum differs",
        resummed(text, ('"one-face":false', '"one-face":"no"')): "`parts[0].one-face` is neither",
        resummed(text, ('"weight": ', '"mass": ')): "`the record` lacks `weight`",
        resummed(text, ('"piece":"rail"', '"piece":"beam"')): "a joint is of `beam`",
        resummed(text, ('"side":[{"line":[[', '"side":[{"line":[[9,')): "has 4 entries where 3",
        resummed(text, ('"drawn-for":17.8', '"drawn-for":1e9')): "`sheets[0].drawn-for` is no",
    }
    for content, told in damages.items():
        with pytest.raises(DamagedError) as damage:
            record_from(content)
        assert told in str(damage.value)


def with_record(folder: Path, record: ReleaseRecord, name: str = "1.0.0") -> list[str]:
    """Return what is said of a workshop with a record beside its plan."""
    shop = lay_down(folder / "shop", STAND, "rack")
    home = shop / "plans" / "rack" / "releases"
    home.mkdir()
    (home / f"{name}.json").write_text(record_text(record), "utf-8")
    workshop, findings = read_workshop(shop, pictures=False)
    assert workshop is not None
    return [each.rule for each in findings] or [each.version for each in workshop.plans[0].records]


def test_a_record_beside_its_plan_is_read(tmp_path: Path) -> None:
    assert with_record(tmp_path, recorded(STAND)) == ["1.0.0"]


@pytest.mark.parametrize(
    ("change", "name", "rule"),
    [
        ({}, "1.1.0", "release-record"),
        ({"plan": "other"}, "1.0.0", "release-record"),
        ({"version": "2.0.0"}, "2.0.0", "record-unstated"),
    ],
)
def test_a_record_of_something_else_is_refused(
    tmp_path: Path, change: dict[str, str], name: str, rule: str
) -> None:
    assert with_record(tmp_path, replace(recorded(STAND), **change), name) == [rule]
