"""Archives and sums against the formats' own specifications."""

from __future__ import annotations

import io
import struct
import zipfile
from datetime import date

import pytest

from kerfolio.bundles.archive import sha256, sums_text, unzipped, zip_bytes

FILES = {"b/two.txt": b"two\n" * 50, "one.txt": b"one\n", "leer-ä.txt": "ä".encode()}


def test_sha256_of_the_standards_example() -> None:
    # FIPS 180-4, example "abc" (from memory of the standard's published digest).
    assert sha256(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_sums_are_sorted_and_checkable_by_the_usual_tool() -> None:
    text = sums_text({"b": b"abc", "a": b""})
    assert text.splitlines() == [
        "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a",
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  b",
    ]


def test_local_header_follows_the_zip_specification() -> None:
    # APPNOTE.TXT 6.3.4, section 4.3.7: signature, version, flags, method, time, date.
    packed = zip_bytes({"a.txt": b"x" * 100}, date(2026, 10, 2))
    signature, _, _, method, time, day = struct.unpack("<IHHHHH", packed[:14])
    assert signature == 0x04034B50
    assert method == 8
    assert time == 0
    assert ((day >> 9) + 1980, (day >> 5) & 15, day & 31) == (2026, 10, 2)


def test_entries_are_sorted_in_one_folder_and_come_back_whole() -> None:
    packed = zip_bytes(FILES, date(2026, 1, 1), "stool-1.0.0")
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        assert archive.testzip() is None
        names = archive.namelist()
    assert names == sorted(f"stool-1.0.0/{name}" for name in FILES)
    assert unzipped(packed) == {f"stool-1.0.0/{name}": data for name, data in FILES.items()}


def test_the_file_that_is_opened_first_stands_first() -> None:
    packed = zip_bytes(FILES, date(2026, 1, 1), "stool-1.0.0", first="one.txt")
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        names = [name.removeprefix("stool-1.0.0/") for name in archive.namelist()]
    assert names == ["one.txt", "b/two.txt", "leer-ä.txt"]


def test_order_of_input_does_not_change_a_byte() -> None:
    turned = dict(reversed(FILES.items()))
    assert zip_bytes(FILES, date(2026, 1, 1)) == zip_bytes(turned, date(2026, 1, 1))


def test_a_day_before_the_format_exists_becomes_its_first_day() -> None:
    packed = zip_bytes({"a": b""}, date(1970, 1, 1))
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        assert archive.infolist()[0].date_time == (1980, 1, 1, 0, 0, 0)


@pytest.mark.parametrize("name", ["../a", "/a", "a\\b", "a/../b"])
def test_names_that_leave_the_folder_are_refused(name: str) -> None:
    with pytest.raises(ValueError, match="unsafe name"):
        zip_bytes({name: b""}, date(2026, 1, 1))


@pytest.mark.parametrize(
    ("day", "stated"),
    [
        (date(1, 1, 1), (1980, 1, 1)),
        (date(1980, 1, 1), (1980, 1, 1)),
        (date(2107, 12, 31), (2107, 12, 31)),
        (date(9999, 12, 31), (2107, 12, 31)),
    ],
)
def test_a_day_that_zip_cannot_state_becomes_the_nearest(
    day: date, stated: tuple[int, int, int]
) -> None:
    with zipfile.ZipFile(io.BytesIO(zip_bytes({"a.txt": b"a"}, day))) as archive:
        assert archive.infolist()[0].date_time[:3] == stated
