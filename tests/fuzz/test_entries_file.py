"""Spoiled files of entries are read or refused in words.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_entries_file.py
"""

from __future__ import annotations

import json
from base64 import b64encode
from datetime import date
from functools import cache

import pytest
from hypothesis import strategies as st

from kerfolio.model.stated import ENTRIES_FORMAT as FORMAT
from kerfolio.reading.entries_file import read_entries
from kerfolio.reading.log_names import LogNames
from kerfolio.writing.yaml_entry import yaml_lines
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated_bytes
from tests.reading.photographs import camera_photo

NAMES = LogNames(plans=("stool",), sheets=("ply",), cutters=("c-6",), nominals={"ply": 18.0})
DAY = date(2026, 12, 1)


@cache
def seeds() -> tuple[bytes, ...]:
    """Return files with entries of each section, one of them with a photo."""
    entry = {
        **{"date": "2026-11-30", "title": "Rail", "plan": "stool", "stock": "ply", "cutter": "c-6"},
        **{"speed": "18000 rpm", "feed": "4500 mm/min", "passes": ["8 mm", "10.1 mm"]},
        **{
            "outcome": {"top": "clean", "bottom": "to sand"},
            "marks": ["fuzz"],
            "text": "One.\nTwo",
        },
        **{"batch": {"name": "august", "readings": [17.7, 17.9]}, "metres": 12},
    }
    picture = b64encode(camera_photo(1, (8, 8))).decode()
    sent = {"plan": "stool", "release": "1.2.0", "thickness": "17.63 mm", "went": "by palm"}
    rows = (
        {"section": "trials", "id": "2026-11-30-a", "entry": entry},
        {
            "section": "jobs",
            "id": "b",
            "entry": {**entry, "photo": {"alt": "A"}},
            "picture": picture,
        },
        {"section": "sent", "id": "sent-c", "entry": sent},
    )
    return tuple(json.dumps({"format": FORMAT, "entries": [each]}).encode() for each in rows)


def check(content: bytes) -> None:
    came, findings = read_entries(content, "e.json", NAMES, DAY)
    assert came or findings, "neither read nor refused"
    assert all(each.message and "\n" not in each.message for each in findings)
    for each in came:
        assert yaml_lines(each.stated, 2)
        assert each.stated["id"] == each.id


ODD = st.recursive(
    st.none() | st.booleans() | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from(("section", "id", "entry", "picture", "photo")), inner)
    ),
    max_leaves=8,
)


@pytest.mark.fuzz
def test_a_spoiled_file_of_entries_is_read_or_refused() -> None:
    odd = ODD.map(lambda each: json.dumps({"format": FORMAT, "entries": [each]}).encode())
    hunt(st.one_of(mutated_bytes(seeds()), odd), check)
