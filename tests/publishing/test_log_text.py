"""The log asked at the terminal: filters, best settings, cards; words that mean nothing."""

from __future__ import annotations

import json
from pathlib import Path

import pypdfium2
import pytest

from tests.command import Done, run
from tests.trials.hidden_truth import COMPRESSION, PLYWOOD, invented_log, written

SHOP = """\
workshop: The Tidemill Bench
maker: Oda Brackwater
machine: {class: light hobby, speed: 8000 to 24000 rpm, feed: 6000 mm/min, pass: 13 mm}
"""
LOG = invented_log(3, 0.1)


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("shop")
    (folder / "workshop.yaml").write_text(SHOP, "utf-8")
    (folder / "log").mkdir()
    (folder / "log" / "a.yaml").write_text(written(LOG), "utf-8")
    return folder


def best(shop: Path, *words: str) -> Done:
    return run("best", *words, "--workshop", str(shop))


def test_filters_leave_what_answers_to_all_of_them(shop: Path) -> None:
    wanted = [
        each.id
        for each in LOG
        if (str(each.cutter), each.grade and each.grade.word) == (COMPRESSION, "clean")
    ]
    asked = ("trials", str(shop), "--cutter", COMPRESSION, "--verdict", "clean")
    done = run(*asked, "--since", "2025-01-01")
    assert done.returncode == 0
    lines = done.stdout.splitlines()
    assert [line.rpartition("#")[2] for line in lines if "#" in line] == wanted[::-1]
    assert f"{len(wanted)} of {len(LOG)} trials" in lines
    assert lines[0] == f"{LOG[int(wanted[-1][1:])].date}  clean  #{wanted[-1]}"
    told = json.loads(run(*asked, "--format", "json").stdout)
    assert [each["id"] for each in told] == wanted[::-1]
    assert {each["verdict"] for each in told} == {"clean"}
    assert run("trials", str(shop), "--since", "2031-01-01").stdout.startswith("0 of ")


def test_a_word_that_means_nothing_is_refused_with_the_nearest(shop: Path) -> None:
    done = run("trials", str(shop), "--verdict", "cleen", "--sheet", "plywood-3-5")
    assert done.returncode == 2
    assert "No verdict is called `cleen`. Did you mean `clean`?" in done.stderr
    assert "No sheet is called `plywood-3-5`. Did you mean `plywood-3-4` or" in done.stderr
    done = best(shop, PLYWOOD, "compresion-1-4in")
    assert (done.returncode, "`compression-1-4in`" in done.stderr) == (2, True)
    assert run("trials", str(shop), "--since", "May").returncode == 2


def test_best_tells_settings_what_stands_behind_them_and_what_to_try(shop: Path) -> None:
    done = best(shop, PLYWOOD, COMPRESSION)
    assert done.returncode == 0
    for words in (
        "Best known settings",
        "cuts with settings alike came out well",
        "What failed near them",
        "First pass deeper than the up-cut tip of 5 mm",
        "The next trial",
    ):
        assert words in done.stdout
    told = json.loads(best(shop, PLYWOOD, COMPRESSION, "--format", "json").stdout)
    assert len(told) == 1
    assert told[0]["known"]
    assert told[0]["best"]["settings"]["passes"][0] > 5
    assert sum(told[0]["best"]["grades"].values()) == told[0]["best"]["of"] >= 4
    assert {each["way"] for each in told[0]["failures"]} >= {"thicker", "shallower"}


def test_without_a_cutter_all_that_were_tried_are_told(shop: Path) -> None:
    told = json.loads(best(shop, PLYWOOD, "--format", "json").stdout)
    tried = {str(each.cutter) for each in LOG if str(each.stock) == PLYWOOD}
    assert {each["cutter"] for each in told} == tried
    assert best(shop, PLYWOOD, "--operation", "letters").stdout.startswith("No trial on")


def test_what_was_never_cut_is_told_so(shop: Path) -> None:
    done = best(shop, "mdf-12")
    assert done.returncode == 0
    assert done.stdout == "No trial on `mdf-12` is logged. Did you mean `mdf-18`?\n"
    done = best(shop, "mdf-12", "down-cut-6")
    assert "Not known: no cut is logged here" in done.stdout
    assert "Begin in the published range" in done.stdout or "sheet alike" in done.stdout


@pytest.mark.parametrize(
    ("identity", "size", "words"),
    [
        ("paper: a4\n", (595, 841), ("Best known settings", "SAFETY", "up-cut tip of 5 mm")),
        (
            "paper: letter\nlanguage: de\nunits-first: in\n",
            (612, 792),
            ("Beste bekannte Einstellungen", "SICHERHEIT", "Spitze von 0,197 in"),
        ),
    ],
)
def test_a_card_is_printed_a_page_for_each_cutter(
    shop: Path, tmp_path: Path, identity: str, size: tuple[int, int], words: tuple[str, ...]
) -> None:
    (tmp_path / "log").mkdir()
    (tmp_path / "log" / "a.yaml").write_bytes((shop / "log" / "a.yaml").read_bytes())
    (tmp_path / "workshop.yaml").write_text(SHOP + identity, "utf-8")
    card = tmp_path / "out" / "card.pdf"
    done = best(tmp_path, PLYWOOD, "--card", str(card))
    assert done.stdout.splitlines()[-1] == f"wrote 5 pages to {card}"
    document = pypdfium2.PdfDocument(card.read_bytes())
    assert [tuple(map(int, page.get_size())) for page in document] == [size] * 5
    pages = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    first = next(page for page in pages if "1/4" in page.partition("3/4")[0])
    assert [each for each in words if each not in first] == []
    again = tmp_path / "again.pdf"
    best(tmp_path, PLYWOOD, "--card", str(again))
    assert again.read_bytes() == card.read_bytes()


def test_without_a_cut_no_card_is_written(shop: Path, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    assert "No card" in best(shop, "mdf-12", "--card", str(card)).stdout
    assert not card.exists()
