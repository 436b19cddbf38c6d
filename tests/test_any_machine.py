"""Commands on machines of other settings: encodings without our letters, a day to build for."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from kerfolio.basis.source_date import source_date_fault
from kerfolio.publishing.begin import begin_workshop
from kerfolio.reading.workshop import read_workshop
from tests.publishing.test_refusals import lay_down

ASCII = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
"""A locale without UTF-8 that Python may not mend by itself (PEP 538, PEP 540)."""

LATIN = {"PYTHONUTF8": "0", "PYTHONIOENCODING": "latin-1"}
"""As on a terminal or a pipe of an old code page, which lacks the signs of mathematics."""


def run(
    *words: str | Path, env: dict[str, str], cwd: Path | None = None
) -> subprocess.CompletedProcess[bytes]:
    done = subprocess.run(
        [sys.executable, "-m", "kerfolio", *words],
        capture_output=True,
        env={**os.environ, **env},
        check=False,
        cwd=cwd,
    )
    assert b"Traceback" not in done.stdout + done.stderr, done.stderr.decode("latin-1")
    assert b"fault of the program" not in done.stderr, done.stderr.decode("latin-1")
    return done


def far_off_workshop(folder: Path) -> Path:
    """Lay down a workshop of far-off letters; in its log a mistake is to be told."""
    shop = lay_down(folder)
    (shop / "workshop.yaml").write_text(
        "workshop: Säge ≥ 漢\nmaker: Åsa\nlicence: CC0-1.0\n", "utf-8"
    )
    (shop / "log").mkdir()
    (shop / "log" / "tag.yaml").write_text("trials: [{date: 2026-10-01, title: ≈ 漢}]\n", "utf-8")
    return shop


@pytest.mark.parametrize("env", [ASCII, LATIN])
def test_no_encoding_stops_a_command(tmp_path: Path, env: dict[str, str]) -> None:
    shop = far_off_workshop(tmp_path / "shop")
    (shop / "workshop.yaml").write_text("wörkshop≥: 漢\nmaker: Åsa\n", "utf-8")
    told = run("prove", shop, "--format", "json", env=env)
    assert told.returncode == 1
    assert "unknown key `wörkshop≥`" in [row["message"] for row in json.loads(told.stdout)]
    assert run("prove", shop, env=env).returncode == 1
    assert run("prove", "--nïcht≥", env=env).returncode == 2


def test_a_site_is_written_in_a_locale_without_utf_8(tmp_path: Path) -> None:
    shop = far_off_workshop(tmp_path / "shop")
    assert run("publish", shop, "--out", tmp_path / "sïte", env=ASCII).returncode == 0
    assert "Säge ≥ 漢" in (tmp_path / "sïte" / "index.html").read_text("utf-8")


def test_a_photo_that_the_locale_cannot_spell_is_told(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    (shop / "log").mkdir()
    (shop / "log" / "tag.yaml").write_text(
        "trials: [{date: 2026-10-01, title: A, photo: {file: köln.jpg, alt: The cut edge}}]\n",
        "utf-8",
    )
    told = run("prove", shop, env=ASCII).stdout.decode()
    assert "error: `köln.jpg` cannot be spelt in this machine's locale [picture]" in told
    assert "Set `PYTHONUTF8=1`, or name the file in plain letters." in told


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("my-shed", "My shed"),
        ("Über_uns", "Über uns"),
        ("a: b #c", "A b c"),
        ("- [x", "X"),
        ("---", "Workshop"),
        ("w" * 101, "Workshop"),
    ],
)
def test_a_new_workshop_may_have_any_name(tmp_path: Path, name: str, title: str) -> None:
    begin_workshop(tmp_path / name, date(2026, 10, 2))
    workshop, findings = read_workshop(tmp_path / name)
    assert findings == ()
    assert workshop is not None
    assert workshop.identity.title == title


def test_a_new_workshop_has_its_name_in_any_locale(tmp_path: Path) -> None:
    assert run("start", "Über_uns", env=ASCII, cwd=tmp_path).returncode == 0
    written = (tmp_path / "Über_uns" / "workshop.yaml").read_text("utf-8")
    assert "\nworkshop: Über uns\n" in written


@pytest.mark.parametrize("stated", ["", "abc", "1e9", "-1", "1.5", "253402300800"])
def test_a_malformed_day_to_build_for_is_told(stated: str) -> None:
    """The specification of SOURCE_DATE_EPOCH (reproducible-builds.org) asks for whole seconds."""
    assert source_date_fault(stated) == (
        f"SOURCE_DATE_EPOCH is {stated!r}: it must be whole seconds since 1970, up to "
        "253402300799; or unset it"
    )


def test_a_malformed_day_to_build_for_stops_a_command(tmp_path: Path) -> None:
    done = run("prove", tmp_path, env={"SOURCE_DATE_EPOCH": "abc"})
    assert done.returncode == 2
    assert done.stderr.startswith(b"error: SOURCE_DATE_EPOCH is 'abc': ")
