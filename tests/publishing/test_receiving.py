"""Entries that come as a file: taken once, whole, and only where they are sound."""

from __future__ import annotations

import io
import json
from base64 import b64encode
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from kerfolio.model.stated import ENTRIES_FORMAT as FORMAT
from kerfolio.publishing.private_log import read_log, write_private_log
from kerfolio.publishing.receiving import receive
from kerfolio.reading.workshop import read_workshop
from tests.command import run
from tests.reading.photographs import camera_photo

DAY = date(2026, 12, 1)
TRIAL: dict[str, Any] = {
    "section": "trials",
    "id": "2026-11-30-abc234",
    "entry": {
        "date": "2026-11-30",
        "stock": "birch-plywood-18",
        "cutter": "compression-6",
        "passes": ["8 mm", "10 mm"],
        "outcome": "clean",
        "marks": [],
    },
}


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shed"
    folder.mkdir()
    (folder / "workshop.yaml").write_text(
        "workshop: Shed\nmaker: Ada\nunits-first: mm\nlicence: CC-BY-SA-4.0\n"
    )
    return folder


def saved(shop: Path, *entries: Any, **more: Any) -> Path:
    file = shop.parent / "e.entries.json"
    file.write_text(json.dumps({"format": FORMAT, "entries": list(entries), **more}))
    return file


def changed(**entry: Any) -> dict[str, Any]:
    return {**TRIAL, "entry": {**TRIAL["entry"], **entry}}


def pictured(content: bytes) -> dict[str, Any]:
    return {**changed(photo={"alt": "An edge"}), "picture": b64encode(content).decode()}


def files(folder: Path) -> list[str]:
    return sorted(str(each.relative_to(folder)) for each in folder.rglob("*") if each.is_file())


def test_an_entry_is_taken_once_with_its_photo_written_anew(shop: Path) -> None:
    file = saved(shop, pictured(camera_photo(6)))
    done = run("receive", str(file), str(shop))
    assert done.returncode == 0
    assert "2026-11-30-abc234" in done.stdout
    before = files(shop)
    again = run("receive", str(file), str(shop))
    assert (again.returncode, again.stdout) == (
        0,
        "2026-11-30-abc234 is in the log already: taken once\n",
    )
    assert files(shop) == before
    workshop, findings = read_workshop(shop)
    assert workshop is not None
    assert not findings
    (trial,) = workshop.trials
    assert (trial.id, trial.passes, trial.outcome.clean) == ("2026-11-30-abc234", (8, 10), True)
    assert trial.photo is not None
    assert trial.photo.alt == "An edge"
    content = (shop / "log" / trial.photo.file).read_bytes()
    assert b"Invented Camera" not in content
    assert b"at home" not in content
    picture = Image.open(io.BytesIO(content))
    assert not picture.getexif()
    assert picture.size == (200, 400)  # upright, as the camera said


def test_a_wrong_entry_keeps_no_other_out(shop: Path) -> None:
    other = {**changed(outcome="cleen"), "id": "2026-11-30-xyz"}
    received = receive(shop, saved(shop, other, TRIAL, TRIAL), DAY)
    assert [id_ for id_, _ in received.taken] == [TRIAL["id"]]
    assert received.known == (TRIAL["id"],)  # twice in the very file
    (finding,) = received.findings
    assert str(finding.place) == "e.entries.json, entry 1"
    assert finding.advice == "Did you mean `clean`?"


def test_what_a_reader_measured_gets_the_day_it_came(shop: Path) -> None:
    (shop / "plans" / "stool").mkdir(parents=True)
    entry = {"plan": "stool", "release": "1.2.0", "sheet": "ply", "thickness": "17.63 mm"}
    sent = {"section": "sent", "id": "sent-abc234", "entry": {**entry, "went": "by palm"}}
    received = receive(shop, saved(shop, sent), DAY)
    assert not received.findings
    text = (shop / "log" / "2026-12-01.yaml").read_text()
    assert text.startswith("sent:\n  - id: sent-abc234\n    date: 2026-12-01\n    plan: stool\n")


WRONG = [
    (b"", "this is no file of entries, or a part of one"),
    (b"\xff\xfe", "this is no file of entries"),
    (b'{"format": "kerfolio-entries/1", "entr', "this is no file of entries, or a part of one"),
    (b"[" * 100_000, "this is no file of entries"),
    (b"[]", "this is no file of entries"),
    (b'{"format": "kerfolio-entries/9"}', "its format is `kerfolio-entries/9`"),
    (b'{"format": "kerfolio-entries/1", "entries": []}', "it holds no entries"),
    (b'{"format": "kerfolio-entries/1", "entrys": [1]}', "unknown key `entrys`"),
    (b'{"format": "kerfolio-entries/1", "entries": [1]}', "it is no entry"),
]


@pytest.mark.parametrize(("content", "words"), WRONG)
def test_what_is_no_file_of_entries_is_refused(shop: Path, content: bytes, words: str) -> None:
    file = shop.parent / "e.json"
    file.write_bytes(content)
    before = files(shop)
    received = receive(shop, file, DAY)
    assert received.findings[0].message.startswith(words)
    assert not received.taken
    assert files(shop) == before


REFUSED = [
    (changed(stock="birch-plywod-18"), "unknown stock `birch-plywod-18`"),
    (changed(speeds="1"), "unknown key `speeds`"),
    (changed(thickness="180 mm"), "`180 mm` is no thickness"),
    (changed(public=True), "`public` is not taken from a file"),
    (changed(text="<script>alert(1)</script>"), "raw HTML"),
    (changed(passes={"a": {"b": {"c": {"d": {"e": {"f": {"g": {"h": {}}}}}}}}}), "it has too many"),
    (changed(title="x" * 5000), "a title of 5000 letters, at most 120"),
    ({**TRIAL, "section": "trails"}, "no section `trails`"),
    ({**TRIAL, "id": "../up"}, "`../up` is no id"),
    ({**TRIAL, "picture": "AAAA"}, "its picture has no `photo` with what it shows"),
    (changed(photo={"alt": "An edge"}), "there is no picture for `photo`"),
    ({**pictured(b""), "picture": "no base64!"}, "its picture is no base64"),
    (pictured(b"<svg xmlns='http://www.w3.org/2000/svg'/>"), "`picture.jpg` holds an SVG drawing"),
    (pictured(camera_photo()[:200]), "`picture.jpg`"),
    ({**pictured(b""), "picture": "A" * 8_000_001}, "its picture has more than 6 MB"),
]


@pytest.mark.parametrize(("entry", "words"), REFUSED)
def test_what_is_wrong_is_told_and_nothing_is_written(shop: Path, entry: Any, words: str) -> None:
    before = files(shop)
    received = receive(shop, saved(shop, entry), DAY)
    assert not received.taken
    told = [each.message for each in received.findings]
    assert told[0].startswith(words)
    assert files(shop) == before


def test_html_in_a_title_stays_words(shop: Path) -> None:
    assert receive(shop, saved(shop, changed(title="<b>bold</b>")), DAY).taken
    workshop, _ = read_log(shop)
    assert workshop is not None
    assert "&lt;b&gt;bold" in write_private_log(shop, workshop).read_text("utf-8")
