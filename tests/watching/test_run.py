"""``kerfolio watch`` as a maker runs it: a save shows, Ctrl-C ends it, nothing is left behind."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from pathlib import Path
from time import monotonic, sleep
from urllib.request import urlopen

from tests.command import run
from tests.conftest import files_of
from tests.plans import lay_down


def page_with(address: str, words: str) -> str:
    end = monotonic() + 60
    while True:
        with urlopen(address, timeout=30) as answer:
            page = answer.read().decode()
        if words in page:
            return str(page)
        assert monotonic() < end, f"{words} is not shown"
        sleep(0.1)


def test_it_serves_follows_and_ends(tmp_path: Path) -> None:
    shop, beside = lay_down(tmp_path / "shop"), tmp_path / "temporary"
    beside.mkdir()
    command = [sys.executable, "-m", "kerfolio", "watch", str(shop), "--no-readers"]
    running = subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "TMPDIR": str(beside), "PYTHONUNBUFFERED": "1"},
    )
    try:
        assert running.stdout
        line = running.stdout.readline()
        told = re.fullmatch(r"Watching shop at (http://127\.0\.0\.1:\d+/)\n", line)
        assert told
        page_with(told[1], "All is shown as it was last saved.")  # proven in a process beside
        plan = shop / "plans" / "rack" / "plan.yaml"
        plan.write_text(plan.read_text("utf-8").replace("Probe rack", "Other rack"), "utf-8")
        before = files_of(shop)
        page_with(told[1], "Other rack")
        assert len(list(beside.iterdir())) == 1
        running.send_signal(signal.SIGINT)
        out, err = running.communicate(timeout=60)
    finally:
        running.kill()
    assert (running.returncode, out, err) == (0, "", "Ended.\n")
    assert files_of(shop) == before
    assert not list(beside.iterdir())


def test_what_cannot_be_watched_is_refused_at_once(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    done = run("watch", str(tmp_path / "nowhere"))
    assert done.returncode == 1
    assert "[no-workshop]" in done.stdout
    done = run("watch", str(shop), "--plan", "rakc")
    assert done.returncode == 1
    assert "Did you mean `rack`" in done.stdout
    assert run("watch", str(shop), "--editor", "edit").returncode == 2
