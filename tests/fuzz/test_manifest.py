"""Spoiled manifests and journals in an output folder: it counts as ours, or as somebody else's.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_manifest.py
"""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

import pytest

from kerfolio.bundles.manifest import PlanEntry, manifest_text, rows_of
from kerfolio.disk.journal import Journal, Move, State, journal_in, note_down
from kerfolio.disk.out_folder import foreign_in, is_site, out_faults
from kerfolio.pages.listed import listed_from
from kerfolio.publishing.standing import Standing, standing_in
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated

ENTRY = PlanEntry(
    name="rack",
    title="Desk rack",
    version="1.0.0",
    access="open",
    bundle="rack-1.0.0.zip",
    bundle_bytes=12,
    bundle_sha256="ab" * 32,
    listed={"title": "Desk rack", "pages": [""]},
)
FILES = {"index.html": b"home", "plans/rack/index.html": b"rack", "feed.xml": b"feed"}
MANIFESTS = (manifest_text([ENTRY], rows_of(FILES)), manifest_text([], ()))
WORDS = ("true", "null", "NaN", "{}", "[]", '"../x"', "index.html", "manifest.json", "/etc")


def check_standing(found: Standing) -> None:
    """Whatever a manifest says, only files that are there stand, and it is known whose they are."""
    assert {each.name for each in found.files} <= set(FILES)
    assert all(isinstance(each.size, int) and isinstance(each.sha256, str) for each in found.files)
    for each in found.entries:
        with suppress(KeyError, TypeError, ValueError):
            assert listed_from(each.listed).title.encode()


@pytest.mark.fuzz
def test_a_spoiled_manifest_makes_a_folder_ours_or_not(tmp_path: Path) -> None:
    out = tmp_path / "site"
    for name, content in FILES.items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_bytes(content)

    def check(text: str) -> None:
        (out / "manifest.json").write_bytes(text.encode("utf-8", "surrogatepass"))
        faults = out_faults(out)
        check_findings(faults)
        assert bool(faults) != is_site(out)
        check_standing(standing_in(out, "stool"))
        assert set(foreign_in(out)) <= {*FILES, "manifest.json"}

    hunt(mutated(MANIFESTS, WORDS), check)


@pytest.mark.fuzz
def test_a_spoiled_journal_is_read_whole_or_not_at_all(tmp_path: Path) -> None:
    move = Move(fresh=tmp_path / "fresh", target=tmp_path / "site", inode=7)
    whole = Journal(state=State.EXCHANGING, moves=(move, move), stages=(tmp_path,), carries=True)
    note_down(tmp_path, whole)
    journal = tmp_path / "journal.json"
    seeds = (journal.read_text("utf-8"),)

    def check(text: str) -> None:
        journal.write_bytes(text.encode("utf-8", "surrogatepass"))
        found = journal_in(tmp_path)
        for each in found.moves if found else ():
            assert isinstance(each.inode, int), "an inode that is no number"
            (str(each.fresh) + str(each.target)).encode()

    hunt(mutated(seeds, WORDS), check)
