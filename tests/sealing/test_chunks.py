"""A sealed file opens whole with its key, and in no other way."""

from __future__ import annotations

import io
import re
import subprocess
import sys
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.sealing.chunks import opened, sealed
from kerfolio.sealing.fault import SealError
from kerfolio.sealing.form import CHUNK, LOCK, TAG, Head, head_bytes, read_head
from tests.sealing import open_sealed
from tests.sealing.rings import (
    CONTENT_KEY,
    OTHER,
    WORDS,
    content_of,
    quick_ring,
    sealed_by,
    small,
    small_head,
)

HEAD = 59 + LOCK
TEXT = b"the joints of a stool, and what they take"  # six chunks of 8, the last of 1


@pytest.mark.parametrize("size", [0, 1, 7, 8, 9, 16, 41])
def test_what_was_sealed_opens_as_it_was(size: int) -> None:
    content = TEXT[:size]
    file = small(content)
    assert content_of(file) == content
    assert len(file) == HEAD + size + TAG * max(1, -(-size // 8))
    assert content[:8] not in file or size < 3


@given(content=st.binary(max_size=64), chunk=st.integers(1, 70))
def test_any_content_in_any_chunks_opens_again(content: bytes, chunk: int) -> None:
    file = small(content, chunk)
    assert content_of(file) == open_sealed.opened(file, WORDS) == content


def test_any_of_its_keys_opens_it_and_no_other() -> None:
    file = sealed_by(quick_ring(WORDS, OTHER), b"plain")
    assert content_of(file) == content_of(file, OTHER) == b"plain"
    with pytest.raises(SealError, match="the key does not open this file"):
        content_of(file, "harbour island")


def _chunk(file: bytes, number: int) -> slice:
    at = HEAD + number * (8 + TAG)
    return slice(at, min(at + 8 + TAG, len(file)))


def _swapped(file: bytes) -> bytes:
    one, other = file[_chunk(file, 0)], file[_chunk(file, 1)]
    return file[:HEAD] + other + one + file[_chunk(file, 1).stop :]


def _repeated(file: bytes) -> bytes:
    return file[: _chunk(file, 1).start] + file[_chunk(file, 0)] + file[_chunk(file, 1).stop :]


def _left_out(file: bytes) -> bytes:
    """Leave the last chunk out, and let the head say so."""
    head = read_head(io.BytesIO(file))
    shorter = Head(salt=head.salt, size=40, prefix=head.prefix, locks=head.locks, rounds=1, chunk=8)
    return head_bytes(shorter) + file[HEAD : _chunk(file, 5).start]


def _with_head_of(other: bytes) -> Callable[[bytes], bytes]:
    return lambda file: other[:HEAD] + file[HEAD:]


REPLAYED = small(TEXT, content_key=bytes(reversed(range(32))))
SPOILED: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "nothing": (lambda _: b"", "this is no sealed file"),
    "another file": (lambda _: b"PK\x03\x04" + bytes(80), "this is no sealed file"),
    "a later version": (lambda f: f[:17] + b"\2" + f[18:], "of version 2"),
    "cut within the head": (lambda f: f[:40], "cut short"),
    "cut within the locks": (lambda f: f[:70], "cut short"),
    "cut after the head": (lambda f: f[:HEAD], "cut short"),
    "cut within a chunk": (lambda f: f[:-1], "cut short"),
    "cut between chunks": (lambda f: f[: _chunk(f, 4).start], "cut short"),
    "longer": (lambda f: f + b"x", "longer than it says"),
    "no round": (lambda f: f[:18] + bytes(4) + f[22:], "the head of the sealed file is damaged"),
    "too many rounds": (lambda f: f[:18] + b"\xff" * 4 + f[22:], "the head of"),
    "another salt": (lambda f: f[:22] + bytes(16) + f[38:], "the key does not open"),
    "a chunk of nothing": (lambda f: f[:38] + bytes(4) + f[42:], "the head of"),
    "a huge chunk": (lambda f: f[:38] + b"\xff" * 4 + f[42:], "the head of"),
    "a longer content": (lambda f: f[:49] + b"\x2a" + f[50:], "damaged in chunk 1 of 6"),
    "a huge content": (lambda f: f[:42] + b"\xff" * 8 + f[50:], "the head of"),
    "another prefix": (lambda f: f[:50] + b"x" + f[51:], "damaged in chunk 1 of 6"),
    "no lock": (lambda f: f[:57] + bytes(2) + f[59:], "the head of"),
    "a bit of a lock": (lambda f: f[:60] + bytes([f[60] ^ 1]) + f[61:], "the key does not open"),
    "a bit of the last chunk": (lambda f: f[:-1] + bytes([f[-1] ^ 1]), "in chunk 6 of 6"),
    "chunks swapped": (_swapped, "damaged in chunk 1 of 6"),
    "a chunk repeated": (_repeated, "damaged in chunk 2 of 6"),
    "the last left out": (_left_out, "damaged in chunk 1 of 5"),
    "the head of another file": (_with_head_of(REPLAYED), "damaged in chunk 1 of 6"),
}


@pytest.mark.parametrize("case", SPOILED)
def test_a_spoiled_file_is_refused_in_words(case: str) -> None:
    spoil, words = SPOILED[case]
    with pytest.raises(SealError) as refused:
        content_of(spoil(small(TEXT)))
    assert words in str(refused.value)
    assert WORDS not in f"{refused.value} {refused.value.advice}"


@given(at=st.integers(0, 10**6), bit=st.integers(0, 7))
def test_no_bit_of_it_may_change(at: int, bit: int) -> None:
    file = bytearray(small(TEXT))
    at %= len(file)
    file[21 if at in (18, 19, 20) else at] ^= 1 << bit  # many rounds take long, and prove no more
    with pytest.raises(SealError):
        content_of(bytes(file))


def test_a_source_of_another_length_is_not_sealed() -> None:
    for content in (b"short", b"longer than told"):
        with pytest.raises(ValueError, match="than its head says"):
            b"".join(sealed(small_head(8), CONTENT_KEY, io.BytesIO(content)))


def test_it_is_held_one_chunk_at_a_time(tmp_path: Path) -> None:
    """Memory does not grow with the file: 24 MiB are sealed and opened within 6."""
    plain, file = tmp_path / "plain", tmp_path / "file.sealed"
    with plain.open("wb") as made:
        made.truncate(24 * CHUNK)
    head = small_head(24 * CHUNK, CHUNK)
    tracemalloc.start()
    try:
        with plain.open("rb") as source, file.open("wb") as out:
            for part in sealed(head, CONTENT_KEY, source):
                out.write(part)
        with file.open("rb") as source:
            assert sum(len(part) for part in opened(source, WORDS)) == 24 * CHUNK
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert most < 6 * CHUNK


def test_forty_lines_of_somebody_else_open_it() -> None:
    """``open_sealed.py`` has nothing of ours; it does what docs/sealed-files.md says."""
    script = Path(open_sealed.__file__).read_text("utf-8")
    code = [line for line in script.split('"""')[2].splitlines() if line.strip()]
    assert len(code) <= 40
    assert "kerfolio." not in script.replace("kerfolio sealed", "")
    content = bytes(range(256)) * 9000  # three chunks
    file = sealed_by(quick_ring(OTHER, WORDS), content)
    assert open_sealed.opened(file, WORDS.title()) == content


def test_the_file_that_the_page_on_the_form_shows_is_the_one() -> None:
    page = (Path(__file__).parents[2] / "docs" / "sealed-files.md").read_text("utf-8")
    shown = "".join(re.findall("^    ([0-9a-f]+)$", page, re.MULTILINE))
    assert bytes.fromhex(shown) == small(b"slot and tab")


def test_the_script_runs_by_itself(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(sealed_by(quick_ring(), b"plain"))
    asked = f"import getpass; getpass.getpass = lambda _: {WORDS!r}\n"
    asked += "import sys; sys.argv[1:] = ['file', 'out']\nimport runpy\n"
    asked += f"runpy.run_path({open_sealed.__file__!r}, run_name='__main__')"
    subprocess.run([sys.executable, "-c", asked], cwd=tmp_path, check=True)
    assert (tmp_path / "out").read_bytes() == b"plain"
