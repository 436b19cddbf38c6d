"""What a publish refuses before it works, and what it says when it is stopped."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from kerfolio.disk.trouble import Stopped
from kerfolio.publishing import build, refusals
from kerfolio.publishing.build import Request, publish
from tests.conftest import files_of

PAGE = "---\norder: 1\n---\n# About\n\nHello.\n"


def lay_down(shop: Path) -> Path:
    """Lay down a workshop without plans: its site is written in a moment."""
    (shop / "pages").mkdir(parents=True)
    (shop / "workshop.yaml").write_text("workshop: Bare\nmaker: Ada Example\nlicence: CC0-1.0\n")
    (shop / "pages" / "about.md").write_text(PAGE)
    return shop


def request_for(shop: Path, out: Path, supporters: Path | None = None) -> Request:
    return Request(folder=shop, out=out, supporters_out=supporters or shop.parent / "handed")


@pytest.mark.parametrize("inside", ["log", "pages/deep", "plans/rack", "stock", ".kerfolio"])
def test_a_site_among_the_sources_is_refused_before_any_work(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, inside: str
) -> None:
    shop = lay_down(tmp_path / "shop")
    monkeypatch.setattr(build, "sources_of", None)
    outcome = publish(request_for(shop, shop / inside / "site"))
    (finding,) = outcome.findings
    assert finding.rule == "out-in-source"
    assert f"in `{inside.split('/')[0]}/`" in str(finding.message)
    outcome = publish(request_for(shop, tmp_path / "site", shop / inside / "handed"))
    assert [f.advice for f in outcome.findings] == ["Name another --supporters-out."]


def test_a_workshop_that_cannot_be_written_to_publishes_elsewhere(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = lay_down(tmp_path / "shop")
    access = os.access
    monkeypatch.setattr(
        refusals.os, "access", lambda path, mode: path != shop and access(path, mode)
    )
    before, said = files_of(shop), []
    outcome = publish(request_for(shop, tmp_path / "site"), said.append)
    assert outcome.published
    assert said[0].startswith("the workshop cannot be written to")
    assert "workshop-read-only" in [finding.rule for finding in outcome.findings]
    assert files_of(shop) == before


def test_what_others_laid_stays_and_is_never_replaced(tmp_path: Path) -> None:
    shop, out = lay_down(tmp_path / "shop"), tmp_path / "site"
    (out / ".git").mkdir(parents=True)
    (out / ".git" / "HEAD").write_text("ref: refs/heads/main")
    assert publish(request_for(shop, out)).published
    (out / "notes.txt").write_text("mine")
    (out / "care").write_text("a note named like a page to come")
    (shop / "pages" / "care.md").write_text(PAGE.replace("About", "Care"))
    before = files_of(out)
    outcome = publish(request_for(shop, out))
    assert not outcome.published
    assert "`care` was not written by a publish" in [str(f.message) for f in outcome.findings]
    assert files_of(out) == before
    (out / "care").unlink()
    assert publish(request_for(shop, out)).published
    assert (out / "notes.txt").read_text() == "mine"
    assert (out / ".git" / "HEAD").read_text() == "ref: refs/heads/main"


def test_a_stop_says_what_is_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shop = lay_down(tmp_path / "shop")

    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    request = request_for(shop, tmp_path / "site")
    with monkeypatch.context() as patched:
        patched.setattr(build, "sources_of", stop)
        with pytest.raises(Stopped, match="untouched"):
            publish(request)
    monkeypatch.setattr(build, "freeze_layouts", stop)
    with pytest.raises(Stopped, match="The site is published"):
        publish(request)
    assert (tmp_path / "site" / "index.html").exists()


def test_a_command_that_is_ended_says_so_in_words(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    running = subprocess.Popen(
        [sys.executable, "-m", "kerfolio", "publish", str(shop)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert running.stderr is not None
    running.stderr.readline()  # it has begun to work
    time.sleep(0.05)
    running.send_signal(signal.SIGTERM)
    _, told = running.communicate(timeout=60)
    assert running.returncode == 1
    assert told.splitlines()[-1] == "Stopped. The last site is untouched."
    assert not (shop / "site").exists()
