"""Spoiled records of releases are read or told, and what is read can be compared.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_record.py
"""

from __future__ import annotations

import json

import pytest

from kerfolio.model.release_form import SUM, sum_of
from kerfolio.reading.release_record import DamagedError, record_from
from kerfolio.releasing.change import change_between
from kerfolio.releasing.record_text import record_text
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.releasing.pairs import CROSS, STAND
from tests.releasing.test_pairs import recorded

WORDS = ("true", "null", "NaN", "Infinity", "{}", "[]", '"x"', "side.left", "ply", "1e9", "-0")


def check(text: str) -> None:
    whole = record_from(record_text(recorded(CROSS)).encode())
    for content in (text, summed(text)):
        try:
            record = record_from(content.encode("utf-8", "surrogatepass"))
        except DamagedError:
            continue
        for one, other in ((record, whole), (whole, record), (record, record)):
            change_between(one, other)


def summed(text: str) -> str:
    """Return a spoiled record with a sum that fits, so that the rest of it is looked at."""
    try:
        content = json.loads(text)
        return json.dumps({**content, SUM: sum_of(content)})
    except (ValueError, TypeError, RecursionError):
        return text


@pytest.mark.fuzz
def test_a_spoiled_record_is_read_or_told() -> None:
    seeds = [record_text(recorded(each)) for each in (CROSS, STAND)]
    hunt(mutated(tuple(seeds), WORDS), check)
