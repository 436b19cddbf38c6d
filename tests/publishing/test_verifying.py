"""What is missing, changed or strange in a site or a bundle is told, and what no plan makes."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import NOWHERE
from kerfolio.bundles.archive import sha256, sums_text, unzipped, zip_bytes
from kerfolio.bundles.manifest import manifest_text, rows_of
from kerfolio.publishing import rebuilt
from kerfolio.publishing.rebuilt import compare_with_plans
from kerfolio.publishing.verifying import verify_bundle, verify_site
from kerfolio.sealing.chunks import sealed
from kerfolio.sealing.ring import head_of, sealing_of
from kerfolio.sealing.ring_text import ring_text
from tests.command import run
from tests.sealing.rings import quick_ring, sealed_by

INSIDE = {"start-here.html": b"begin", "cut/side.svg": b"<svg/>", "plan.json": b"{}"}
DAY = date(2026, 10, 2)


def bundle(files: dict[str, bytes] = INSIDE, **more: bytes) -> bytes:
    whole = {**files, "SHA256SUMS": sums_text(files).encode()}
    return zip_bytes({**whole, **more}, DAY, "rack-1.0.0")


RING, HOW = sealing_of(quick_ring(), sha256(bundle()), len(bundle()))
SEALED = b"".join(sealed(head_of(RING, HOW), HOW.content_key, io.BytesIO(bundle())))


def site_in(folder: Path, **more: bytes) -> Path:
    files = {
        "index.html": b"home",
        "plans/rack/index.html": b"rack",
        "plans/rack/downloads/rack-1.0.0.zip": bundle(),
        "plans/stool/downloads/stool-1.0.0.zip.sealed": SEALED,
        **more,
    }
    for name, content in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content)
    (folder / "manifest.json").write_text(manifest_text([], rows_of(files)), "utf-8")
    return folder


def told(findings: tuple[Finding, ...]) -> list[str]:
    return [f"{each.severity} {each.rule}: {each.message}" for each in findings]


def test_a_whole_site_has_nothing_to_tell(tmp_path: Path) -> None:
    found = verify_site(site_in(tmp_path / "site"))
    assert (found.findings, found.files) == ((), 4 + 3)


SITE_FAULTS: dict[str, tuple[Callable[[Path], object], str]] = {
    "a page gone": (
        lambda site: (site / "index.html").unlink(),
        "error missing: missing: `index.html`",
    ),
    "a page changed": (
        lambda site: (site / "index.html").write_bytes(b"hole"),
        "error changed: changed since it was made: `index.html`",
    ),
    "a folder in place of a page": (
        lambda site: ((site / "index.html").unlink(), (site / "index.html").mkdir()),
        "error changed: changed since it was made: `index.html`",
    ),
    "a stray file": (
        lambda site: (site / "CNAME").write_bytes(b"bench.example"),
        "note stray: not written by a publish: `CNAME`",
    ),
    "no manifest": (
        lambda site: (site / "manifest.json").unlink(),
        "error no-manifest: no `manifest.json` of a publish stands in this folder",
    ),
}


@pytest.mark.parametrize("case", SITE_FAULTS)
def test_what_is_wrong_with_a_site_is_told(tmp_path: Path, case: str) -> None:
    spoil, expected = SITE_FAULTS[case]
    site = site_in(tmp_path / "site")
    spoil(site)
    assert told(verify_site(site).findings) == [expected]


def test_a_bundle_or_seal_that_was_published_damaged_is_told(tmp_path: Path) -> None:
    site = site_in(
        tmp_path / "site",
        **{
            "plans/rack/downloads/rack-1.0.0.zip": bundle()[:-30],
            "plans/stool/downloads/stool-1.0.0.zip.sealed": sealed_by(quick_ring(), b"x")[:-1],
        },
    )
    assert told(verify_site(site).findings) == [
        "error damaged: it is no bundle, or it is damaged",
        "error damaged: the sealed file is not as long as it says",
    ]


def repacked(change: Callable[[dict[str, bytes]], object]) -> bytes:
    files = unzipped(bundle())
    change(files)
    return zip_bytes(files, DAY)


BUNDLE_FAULTS: dict[str, tuple[bytes, str]] = {
    "a file gone": (
        repacked(lambda files: files.pop("rack-1.0.0/plan.json")),
        "error missing: missing: `rack-1.0.0/plan.json`",
    ),
    "a file changed": (
        repacked(lambda files: files.update({"rack-1.0.0/plan.json": b"[]"})),
        "error changed: changed since it was made: `rack-1.0.0/plan.json`",
    ),
    "a stray file": (
        bundle(**{"extra.exe": b"x"}),
        "error stray: not written by a publish: `rack-1.0.0/extra.exe`",
    ),
    "no sums": (
        zip_bytes({"a.txt": b"a"}, DAY),
        "error no-sums: no `SHA256SUMS` stands in it",
    ),
    "sums that are none": (
        zip_bytes({"SHA256SUMS": b"\xff\xfe what"}, DAY),
        "error damaged: a line of `SHA256SUMS` cannot be read",
    ),
    "no zip": (b"plain", "error damaged: it is no bundle, or it is damaged"),
    "cut short": (bundle()[:-9], "error damaged: it is no bundle, or it is damaged"),
}


@pytest.mark.parametrize("case", BUNDLE_FAULTS)
def test_what_is_wrong_with_a_bundle_is_told(tmp_path: Path, case: str) -> None:
    content, expected = BUNDLE_FAULTS[case]
    file = tmp_path / "rack-1.0.0.zip"
    file.write_bytes(content)
    assert told(verify_bundle(file).findings) == [expected]


def test_a_bundle_that_unpacks_to_too_much_is_not_unpacked(tmp_path: Path) -> None:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        archive.writestr("SHA256SUMS", b"")
    file = tmp_path / "rack-1.0.0.zip"
    content = bytearray(packed.getvalue())
    at = content.index(b"PK\x01\x02")
    content[at + 24 : at + 28] = b"\xfe\xff\xff\xff"  # the directory says: 4 GiB
    file.write_bytes(bytes(content))
    assert [each.rule for each in verify_bundle(file).findings] == ["too-large"]


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A workshop whose plans make what ``made`` says."""
    monkeypatch.delenv("KERFOLIO_KEYS", raising=False)
    folder = tmp_path / "shop"
    for name in ("rack", "stool"):
        (folder / "plans" / name).mkdir(parents=True)
    head = "workshop: Shop\nmaker: Ada\nkeys: ../keys\ncircles: {friends: {who: Friends}}\n"
    (folder / "workshop.yaml").write_text(head, "utf-8")
    return folder


def makes(monkeypatch: pytest.MonkeyPatch, **made: bytes) -> None:
    files = {name.replace("_", "-") + "-1.0.0.zip": content for name, content in made.items()}
    monkeypatch.setattr(rebuilt, "_made", lambda *_: (files, ()))


def test_bundles_are_compared_with_what_plans_make(
    tmp_path: Path, shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = site_in(tmp_path / "site")
    makes(monkeypatch, rack=bundle(), stool=bundle())
    differs = "error not-its-plan: it is not what its plan makes, sealed as the keys say"
    assert told(compare_with_plans(site, shop)) == [differs]
    (tmp_path / "keys").mkdir()
    (tmp_path / "keys" / "friends.keys.json").write_text(ring_text(RING), "utf-8")
    assert told(compare_with_plans(site, shop)) == []
    changed = {**INSIDE, "plan.json": b"[]", "more.txt": b"more"}
    makes(monkeypatch, rack=bundle(changed), stool=bundle())
    (first,) = told(compare_with_plans(site, shop))
    assert first == (
        "error not-its-plan: it is not what its plan makes; it differs in "
        "`rack-1.0.0/SHA256SUMS`, `rack-1.0.0/more.txt`, `rack-1.0.0/plan.json`"
    )


def test_a_bundle_of_another_release_or_workshop_is_told(
    tmp_path: Path, shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    makes(monkeypatch, rack=bundle())
    for name, rule in (("rack-0.9.0.zip", "another-release"), ("crate-1.0.0.zip", "no-plan")):
        (tmp_path / name).write_bytes(bundle())
        assert [each.rule for each in compare_with_plans(tmp_path / name, shop)] == [rule]
    fault = error("x", "it does not prove", NOWHERE)
    monkeypatch.setattr(rebuilt, "_made", lambda *_: ({}, (fault,)))
    (tmp_path / "rack-1.0.0.zip").write_bytes(bundle())
    assert compare_with_plans(tmp_path / "rack-1.0.0.zip", shop) == (fault,)


def test_the_command_ends_with_one_where_anything_is_wrong(tmp_path: Path) -> None:
    site = site_in(tmp_path / "site")
    (site / "CNAME").write_bytes(b"x")
    done = run("verify", str(site))
    assert (done.returncode, done.stdout.splitlines()[-1]) == (0, "Whole: 7 files as stated.")
    assert "`CNAME`" in done.stdout
    (site / "index.html").unlink()
    assert run("verify", str(site)).returncode == 1
    assert run("verify", str(tmp_path / "nowhere")).returncode == 2
