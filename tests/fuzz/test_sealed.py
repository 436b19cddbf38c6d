"""Spoiled sealed files and files of keys: refused in words, or as they were.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_sealed.py
"""

from __future__ import annotations

import json

import pytest
from hypothesis import strategies as st

from kerfolio.sealing.fault import SealError
from kerfolio.sealing.ring import sealing_of
from kerfolio.sealing.ring_text import ring_from, ring_text
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.sealing.rings import OTHER, WORDS, content_of, quick_ring, small

TEXT = b"the joints of a stool, and what they take"
FILE = small(TEXT)


@st.composite
def spoiled(draw: st.DrawFn) -> bytes:
    """Return a sealed file with bytes changed, taken out, put in, or the rest of another's."""
    file = bytearray(FILE)
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(file)))
        to = min(len(file), at + draw(st.integers(0, 30)))
        file[at:to] = draw(st.binary(max_size=30))
        if file[18:22] > bytes([0, 0, 1, 0]):  # rounds: it is no matter how long a key takes
            file[18:22] = bytes([0, 0, 0, 1])
    return bytes(file)


@pytest.mark.fuzz
def test_a_spoiled_sealed_file_is_refused_or_whole() -> None:
    def check(file: bytes) -> None:
        try:
            found = content_of(file)
        except SealError as refused:
            told = f"{refused} {refused.advice}"
        else:
            told = "whole" if (found, file) == (TEXT, FILE) else ""
        assert told.strip()
        assert WORDS not in told

    hunt(spoiled(), check)


@pytest.mark.fuzz
def test_a_spoiled_file_of_keys_is_refused_or_read() -> None:
    ring, _ = sealing_of(quick_ring(WORDS, OTHER), "a" * 64, 5)

    def check(text: str) -> None:
        try:
            found = ring_from(text.encode("utf-8", "surrogatepass"))
        except SealError as refused:
            told = str(refused)
        else:
            assert ring_from(ring_text(found)) == found
            told = json.dumps([each.name for each in found.keys])
        assert not any(each in told for each in text.split('"') if len(each) > 20)

    hunt(mutated((ring_text(ring),), ("true", "null", "NaN", "{}", "[]", "1e999", '""')), check)
