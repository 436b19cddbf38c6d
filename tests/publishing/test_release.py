"""From a first release to the next: what is written, what is refused, what stays."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.place import Place
from kerfolio.bundles.archive import sha256
from kerfolio.disk.out_folder import MANIFEST
from kerfolio.publishing.build import Outcome, Request, publish
from kerfolio.publishing.plan_record import Proved
from kerfolio.publishing.proof import proved_findings
from kerfolio.publishing.release import Released, ReleaseRequest, release
from kerfolio.publishing.released import unrecorded
from tests.plans import BOARD, lay_down

TODAY = date(2026, 11, 30)
BUNDLE = "plans/board/downloads/board-{}.zip"


@dataclass(frozen=True)
class Told:
    """What came of a maker's way, step by step."""

    first: Released
    published: Outcome
    refused: Outcome
    noted: tuple[str, ...]
    without: Released
    second: Released
    again: Outcome
    text: str
    manifest: dict[str, str]
    bundles: tuple[bytes, ...]
    spoiled: Outcome


def published(shop: Path) -> Outcome:
    out = shop / "site"
    return publish(Request(folder=shop, out=out, supporters_out=shop / "given", today=TODAY))


@pytest.fixture(scope="module")
def told() -> Iterator[Told]:
    with TemporaryDirectory() as folder:
        yield gone(lay_down(Path(folder) / "shop", BOARD, "board"))


def gone(shop: Path) -> Told:
    """Release, publish, change, be refused, release again, publish again."""
    request = ReleaseRequest(folder=shop, name="board", today=TODAY)
    plan, out = shop / "plans" / "board" / "plan.yaml", shop / "site"
    first = release(request)
    made = published(shop)
    plan.write_text(plan.read_text("utf-8").replace("w: 300", "w: 310"), "utf-8")
    refused = published(shop)
    noted = [each for each in proved_findings(shop) if each.rule == "release-changed"]
    without = release(request)
    second = release(replace(request, words="It is 10 mm longer."))
    again = published(shop)
    rows = json.loads((out / MANIFEST).read_text("utf-8"))["files"]
    bundles = tuple((out / BUNDLE.format(each)).read_bytes() for each in ("1.0.0", "1.1.0"))
    (out / BUNDLE.format("1.0.0")).write_bytes(b"something else")
    spoiled = published(shop)
    return Told(
        first=first,
        published=made,
        refused=refused,
        noted=tuple(str(each.severity) for each in noted),
        without=without,
        second=second,
        again=again,
        text=plan.read_text("utf-8"),
        manifest={row["name"]: row["sha256"] for row in rows},
        bundles=bundles,
        spoiled=spoiled,
    )


def test_the_release_of_the_plan_is_recorded_as_it_stands(told: Told) -> None:
    assert [each.name for each in told.first.files] == ["1.0.0.json"]
    assert told.published.published


def test_a_release_that_changed_is_refused_with_what_to_do(told: Told) -> None:
    assert not told.refused.published
    (fault,) = [each for each in told.refused.findings if each.rule == "release-changed"]
    assert fault.message == "release 1.0.0 is recorded, and `board` changed since"
    assert "kerfolio release board --change" in fault.advice
    assert "1.1.0" in fault.advice


def test_a_proof_only_notes_it(told: Told) -> None:
    assert told.noted == ("note",)


def test_nothing_is_recorded_over_a_record(told: Told) -> None:
    assert not told.without.version
    assert "release-recorded" in [each.rule for each in told.without.findings]


def test_the_next_release_stands_in_plan_and_record(told: Told) -> None:
    assert told.second.version == "1.1.0"
    assert [each.name for each in told.second.files] == ["plan.yaml", "1.1.0.json"]
    assert "version: 1.1.0\n" in told.text
    assert 'changed: "It is 10 mm longer."}' in told.text
    assert "and you have 1.0.0" in told.second.letter
    assert told.again.published


def test_the_bundle_before_stays_at_its_address_and_in_the_manifest(told: Told) -> None:
    sums = [told.manifest[BUNDLE.format(each)] for each in ("1.0.0", "1.1.0")]
    assert sums == [sha256(each) for each in told.bundles]
    assert told.bundles[0] != told.bundles[1]


def test_a_bundle_that_is_not_what_was_published_is_not_handed_on(told: Told) -> None:
    assert told.spoiled.published
    (warned,) = [each for each in told.spoiled.findings if each.rule == "earlier-bundle"]
    assert BUNDLE.format("1.0.0") in warned.message


def test_what_is_dated_ahead_is_refused_at_once_and_who_has_no_record_told_how_to_begin(
    tmp_path: Path,
) -> None:
    shop = lay_down(tmp_path / "shop", BOARD, "board")
    out, given = shop / "site", shop / "given"
    early = publish(Request(folder=shop, out=out, supporters_out=given, today=date(2026, 10, 1)))
    assert [each.rule for each in early.findings] == ["release-date"]
    assert not early.published
    board = Proved(
        name="board", title="", place=Place(""), findings=(), newest=("1.0.0", "2026-10-02")
    )
    (bare,) = unrecorded(shop, [board])
    assert "kerfolio release board" in bare.advice


@pytest.mark.parametrize(
    ("step", "words", "rule"),
    [
        ("", "Words.", "release-step"),  # nobody knows how far it goes: there is no record
        ("change", "", "release-words"),
    ],
)
def test_what_only_the_maker_knows_is_asked_for(
    tmp_path: Path, step: str, words: str, rule: str
) -> None:
    shop = lay_down(tmp_path / "shop", BOARD, "board")
    request = ReleaseRequest(folder=shop, name="board", today=TODAY, step=step, words=words)
    found = release(request)
    assert rule in [each.rule for each in found.findings]
    assert not found.version
