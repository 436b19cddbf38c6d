"""`add trial` at a terminal, stopped at every question, and without one."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from kerfolio.publishing.drafts import drafts_of
from kerfolio.reading.workshop import read_workshop
from tests.command import run
from tests.commands.terminal import Terminal
from tests.reading.photographs import camera_photo

WORKSHOP = "workshop: Shed\nmaker: Ada\nunits-first: mm\nlicence: CC-BY-SA-4.0\n"

DIALOGUE = (
    ("Plan", "-", ""),
    ("Sheet", "birch-plywood-18", "birch-plywood-18"),
    ("Cutter", "compression-6", "compression-6"),
    ("Speed, such as 18000 rpm", "18000 rpm", "18000 rpm"),
    ("Feed, with its unit", "4500 mm/min", "4500 mm/min"),
    ("Depth of each pass, one after the other", "8 mm, 10.1 mm", "8 mm, 10.1 mm"),
    ("How it came out", "2", "nearly clean"),
    ("A photo of it, the path of a file", "", ""),
    ("Anything else", "marks text", ""),
    ("What is seen or heard", "fuzz", "fuzz"),
    ("Notes", "Second try: better.", "Second try: better."),
)
ENTRY = """\
    date: 2026-11-30
    stock: birch-plywood-18
    cutter: compression-6
    speed: 18000 rpm
    feed: 4500 mm/min
    passes: [8 mm, 10.1 mm]
    outcome: nearly clean
    marks: [fuzz]
    text: "Second try: better."
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shed"
    folder.mkdir()
    (folder / "workshop.yaml").write_text(WORKSHOP)
    return folder


def test_stopped_at_every_question_nothing_is_lost(shop: Path) -> None:
    for number, (words, typed, _) in enumerate(DIALOGUE):
        at = Terminal("add", "trial", "--day", "2026-11-30", cwd=shop)
        if number:
            at.until("Go on, begin a new one (it waits on), or drop it?")
            at.type("")
        at.until(f"{words}")
        at.type(typed)
        coming = DIALOGUE[number + 1][0] if number + 1 < len(DIALOGUE) else "Anything else"
        at.until(f"{coming}")
        # Every way to be stopped comes at some question, and each draft has all answers.
        if number % 3 == 0:
            assert at.interrupt("Your answers are kept") == 1
        elif number % 3 == 1:
            at.kill()
        else:
            at.close()
        (draft,) = drafts_of(shop)
        said = list(draft.answers.values())
        assert said[: number + 1] == [each for _, _, each in DIALOGUE[: number + 1]] or number > 7
        assert not (shop / "log").exists()
    at = Terminal("add", "trial", cwd=shop)
    at.until("drop it?")
    at.type("")
    at.until("Anything else")
    at.type("")
    at.until("wrote ")
    assert at.end() == 0
    written = (shop / "log" / "2026-11-30.yaml").read_text()
    head = "trials:\n  - id: 2026-11-30-birch-plywood-18-compression-6\n"
    assert written == f"{head}{ENTRY}"
    assert not drafts_of(shop)


def test_what_is_wrong_is_told_and_asked_again(shop: Path) -> None:
    at = Terminal("add", "trial", "--plan", "", cwd=shop)
    at.until("Sheet")
    at.type("birch-plywod-18")
    at.until("error: unknown stock `birch-plywod-18`. Did you mean `birch-plywood-18`?")
    at.type("?")
    at.until("Birch plywood 18 mm")
    at.type("birch-plywood-18")
    at.until("Cutter")
    at.type("compression-6")
    at.until("Speed")
    at.type("18.000 rpm")
    at.until("is no speed for a router. Did you mean `18000 rpm`?")
    at.type("18000 rpm")
    at.until("Feed")
    at.type("4500 mm/min")
    at.until("Chip load 0.125 mm a tooth")
    assert at.interrupt("Your answers are kept") == 1


def test_options_are_an_entry_and_any_number_a_day_is_taken(shop: Path) -> None:
    words = ("add", "trial", str(shop), "--day", "2026-11-30", "--outcome", "clean")
    for number in range(3):
        done = run(*words, "--sheet", "birch-plywood-18", "--metres", f"{number + 1}")
        assert (done.returncode, done.stderr) == (0, "")
    assert run(*words, "--job").returncode == 0
    workshop, findings = read_workshop(shop)
    assert workshop is not None
    assert not findings
    assert [each.id for each in workshop.trials] == [
        "2026-11-30-birch-plywood-18",
        "2026-11-30-birch-plywood-18--2",
        "2026-11-30-birch-plywood-18--3",
        "2026-11-30-job",
    ]
    assert [each.job for each in workshop.trials] == [False, False, False, True]
    assert (shop / "log" / "2026-11-30.yaml").read_text().count("\n  - id:") == 4


def test_wrong_options_are_refused_as_the_log_refuses_them(shop: Path) -> None:
    done = run("add", "trial", str(shop), "--outcome", "cleen")
    assert done.returncode == 1
    assert "`cleen` is not an outcome" in done.stdout
    assert "Did you mean `clean`?" in done.stdout
    done = run("add", "trial", str(shop), "--photo", "none.jpg")
    assert "no file `none.jpg` in `" in done.stdout
    assert not (shop / "log").exists()
    assert not (shop / ".kerfolio").exists()


def test_a_photo_is_put_beside_the_log_without_what_the_camera_noted(shop: Path) -> None:
    photo = shop.parent / "IMG_1.jpg"
    photo.write_bytes(camera_photo())
    done = run(
        *("add", "trial", "shed", "--photo", "IMG_1.jpg", "--alt", "An edge"), cwd=shop.parent
    )
    assert done.returncode == 0
    workshop, findings = read_workshop(shop)
    assert workshop is not None
    assert not findings
    (trial,) = workshop.trials
    assert trial.photo is not None
    assert (trial.photo.file, trial.photo.alt) == (f"photos/{trial.id}.jpg", "An edge")
    assert b"Invented Camera" not in (shop / "log" / trial.photo.file).read_bytes()


def test_without_a_terminal_and_without_options_one_to_fill_in_is_written(shop: Path) -> None:
    for _ in range(2):
        assert run("add", "trial", str(shop), "--day", "2026-11-30").returncode == 0
    text = (shop / "log" / "2026-11-30.yaml").read_text()
    assert text.count("# outcome: clean          # clean | nearly clean") == 2
    assert "id: 2026-11-30-trial--2\n" in text


def test_a_draft_that_was_written_is_not_offered_again(shop: Path) -> None:
    """Killed after the entry stood in the log and before its draft was gone."""
    words = ("add", "trial", str(shop), "--day", "2026-11-30", "--outcome", "clean")
    assert run(*words).returncode == 0
    told = {
        **{"format": "kerfolio-draft/1", "day": "2026-11-30", "job": False},
        **{"id": "2026-11-30-trial", "answers": {"outcome": "clean"}},
    }
    drafts = shop / ".kerfolio" / "drafts"
    (drafts / "2026-11-30-1.json").write_text(json.dumps(told))
    (drafts / "2026-11-30-2.json").write_text("{")
    at = Terminal("add", "trial", cwd=shop)
    shown = at.until("Plan")
    assert "waits" not in shown
    assert at.interrupt("Nothing was answered yet.") == 1
    assert [each.name for each in drafts.iterdir()] == ["2026-11-30-2.json"]
    assert drafts.stat().st_mode & 0o77 == 0
