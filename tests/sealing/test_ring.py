"""Keys of a circle: drawn, counted by months, withdrawn; the same sealed again is the same."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.sealing.fault import SealError
from kerfolio.sealing.key_words import KEY_WORDS
from kerfolio.sealing.passphrase import WORDS as COUNT
from kerfolio.sealing.passphrase import new_key, plain
from kerfolio.sealing.ring import (
    Ring,
    head_of,
    new_ring,
    sealing_of,
    with_key,
    without_key,
)
from kerfolio.sealing.ring_text import ring_from, ring_text
from tests.sealing.rings import OTHER, WORDS, content_of, quick_ring, sealed_by


def test_words_are_many_and_cannot_be_taken_for_each_other() -> None:
    assert len(set(KEY_WORDS)) == 1024
    assert COUNT >= 6
    assert COUNT * math.log2(len(KEY_WORDS)) == 70
    assert all(each.isascii() and each.isalpha() and each.islower() for each in KEY_WORDS)
    shortened = {}
    for word in KEY_WORDS:
        for at in range(len(word)):
            form = f"{word[:at]}?{word[at + 1 :]}"
            assert shortened.setdefault(form, word) == word, "two words are one letter apart"
            assert word[:at] + word[at + 1 :] not in KEY_WORDS


def test_a_key_is_seven_words_drawn_anew() -> None:
    drawn = {new_key() for _ in range(50)}
    assert len(drawn) == 50
    for each in drawn:
        assert len(each.split()) == COUNT
        assert set(each.split()) <= set(KEY_WORDS)
        assert plain(each) == each


@pytest.mark.parametrize(
    "typed",
    [
        " acorn  BRIDGE candle-daffodil_elephant, fiddle\u00a0garlic\n",
        "Acorn – Bridge – Candle – Daffodil – Elephant – Fiddle – Garlic",
        "ａｃｏｒｎ bridge candle daffodil\telephant fiddle garlic.",
    ],
)
def test_a_key_may_be_typed_as_people_type(typed: str) -> None:
    assert plain(typed) == WORDS


@given(st.text(max_size=40))
def test_whatever_is_typed_is_plain_once(typed: str) -> None:
    assert plain(plain(typed)) == plain(typed)
    assert plain(typed).isascii()


def test_keys_are_counted_within_a_month() -> None:
    ring = quick_ring(WORDS, OTHER)
    ring, made = with_key(ring, "2027-01", WORDS)
    assert [each.name for each in ring.keys] == ["2026-12", "2026-12.2", "2027-01"]
    assert (made.name, made.month) == ("2027-01", "2027-01")
    assert [each.month for each in ring.keys] == ["2026-12", "2026-12", "2027-01"]


def _sealing(ring: Ring, content: str) -> tuple[Ring, bytes, bytes, bytes]:
    ring, how = sealing_of(ring, content * 64, 5)
    return ring, how.content_key, how.prefix, b"".join(head_of(ring, how).locks)


def test_the_same_sealed_again_is_the_same_and_another_content_never_shares_a_key() -> None:
    ring, *first = _sealing(quick_ring(), "a")
    ring, *again = _sealing(ring_from(ring_text(ring)), "a")
    assert first == again
    ring, *other = _sealing(ring, "b")
    assert other[0] != first[0]
    wider, _ = with_key(ring, "2027-01", OTHER)
    wider, *more = _sealing(wider, "a")
    assert more[0] not in (first[0], other[0])
    keys = [each.content_key for each in wider.sealed]
    assert len(set(keys)) == len(keys) == 3
    _, *before = _sealing(ring, "a")
    assert before == first


def test_the_same_content_of_another_size_is_another() -> None:
    ring, one = sealing_of(quick_ring(), "a" * 64, 5)
    _, other = sealing_of(ring, "a" * 64, 6)
    assert one.content_key != other.content_key


def test_a_withdrawn_key_opens_nothing_that_is_sealed_from_then_on() -> None:
    ring = quick_ring(WORDS, OTHER)
    before = sealed_by(ring, b"plain")
    ring, _ = sealing_of(ring, "a" * 64, 1)
    ring = without_key(ring, "2026-12")
    assert [each.holds for each in ring.keys] == [False, True]
    assert ring.keys[0].opener == b""
    assert ring.sealed == ()
    after = sealed_by(ring, b"plain")
    assert content_of(after, OTHER) == b"plain"
    with pytest.raises(SealError, match="does not open"):
        content_of(after)
    assert content_of(before) == b"plain"  # what was fetched before stays open
    again, made = with_key(ring, "2026-12", WORDS)
    assert made.name == "2026-12.3"
    with pytest.raises(KeyError):
        without_key(again, "2026-12")


def test_without_a_key_nothing_is_sealed() -> None:
    with pytest.raises(ValueError, match="no key holds"):
        sealing_of(new_ring("friends"), "a" * 64, 1)
    with pytest.raises(ValueError, match="no key holds"):
        sealing_of(without_key(quick_ring(), "2026-12"), "a" * 64, 1)


def test_a_ring_comes_back_from_its_text_and_has_no_words_in_it() -> None:
    ring, _ = sealing_of(without_key(quick_ring(WORDS, OTHER), "2026-12"), "a" * 64, 1)
    assert ring_from(ring_text(ring)) == ring
    assert not any(word in ring_text(ring) for word in (*WORDS.split(), *OTHER.split()))


RING, _ = sealing_of(quick_ring(), "a" * 64, 1)
SPOILED = {
    "nothing": "",
    "a list": "[]",
    "another format": ring_text(RING).replace("kerfolio-keys/1", "kerfolio-keys/2"),
    "a short salt": ring_text(replace(RING, salt=b"short")),
    "a month that is none": ring_text(RING).replace("2026-12", "2026-13"),
    "no rounds": ring_text(replace(RING, rounds=0)),
    "rounds that are no number": ring_text(RING).replace('"rounds": 1', '"rounds": true'),
    "a key twice": ring_text(replace(RING, keys=RING.keys * 2)),
    "one content key twice": ring_text(
        replace(RING, sealed=(*RING.sealed, replace(RING.sealed[0], sha256="b" * 64)))
    ),
    "sealed for a key that is none": ring_text(
        replace(RING, sealed=(replace(RING.sealed[0], keys=("2027-01",)),))
    ),
    "deep": "[" * 100_000,
}


@pytest.mark.parametrize("case", SPOILED)
def test_a_spoiled_file_of_keys_is_refused_and_nothing_of_it_quoted(case: str) -> None:
    with pytest.raises(SealError) as refused:
        ring_from(SPOILED[case])
    assert str(refused.value) == "it is no file of keys, or it was changed"
    assert refused.value.__cause__ is None


def test_what_opens_is_not_in_what_is_shown() -> None:
    shown = repr(RING)
    for secret in (RING.keys[0].opener, RING.sealed[0].content_key):
        assert repr(secret)[2:-1] not in shown
