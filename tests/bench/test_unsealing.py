"""What a sealed bundle costs: seconds and memory to open one in the browser, and by the program.

.venv/bin/pytest -m bench -n 0 -s tests/bench/test_unsealing.py
"""

from __future__ import annotations

import hashlib
import io
import time
import tracemalloc
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from random import Random
from threading import Thread
from typing import Any

import pytest
from playwright.sync_api import sync_playwright

from kerfolio.sealing.chunks import opened, sealed
from kerfolio.sealing.ring import head_of, new_ring, sealing_of, with_key
from tests.outside import CHROMIUM_FLAGS, chromium
from tests.pages.test_unseal import HELD, NAME, NO_PICKER, PAGE, PICKER, SEALED, sealed_site
from tests.sealing.rings import WORDS

MB = 1_000_000


def sealed_mb(size: int) -> tuple[bytes, bytes]:
    """Return so many MB that nothing packs, and them sealed with all 600 000 rounds."""
    content = Random(size).randbytes(size * MB)
    ring, _ = with_key(new_ring("friends"), "2026-12", WORDS)
    ring, how = sealing_of(ring, hashlib.sha256(content).hexdigest(), len(content))
    file = b"".join(sealed(head_of(ring, how), how.content_key, io.BytesIO(content)))
    return content, file


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Say nothing."""


@pytest.fixture
def house(tmp_path: Path) -> Iterator[tuple[str, Path]]:
    for name, content in sealed_site().items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    handler = partial(Quiet, directory=str(tmp_path))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}/{PAGE}", tmp_path / SEALED
        server.shutdown()


def peak_mb(kind: str) -> float:
    """Return the most memory that any process of a browser's kind has had, in MB."""
    peaks = [0.0]
    for process in Path("/proc").glob("[0-9]*"):
        try:
            words = (process / "cmdline").read_bytes()
            lines = (process / "status").read_text("utf-8").splitlines()
        except OSError:
            continue
        if b"chrom" in words and kind.encode() in words:
            peaks += [int(each.split()[1]) / 1000 for each in lines if each.startswith("VmHWM")]
    return max(peaks)


@pytest.mark.bench
@pytest.mark.browser
@pytest.mark.parametrize("way", ["file", "download"])
def test_the_browser_opens_50_mb_in_bounded_memory(house: tuple[str, Path], way: str) -> None:
    """Where the browser offers a file, memory does not grow with the bundle."""
    address, place = house
    peaks: dict[int, float] = {}
    for size in (5, 50, 150):
        content, file = sealed_mb(size)
        place.write_bytes(file)
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(
                executable_path=chromium(), args=list(CHROMIUM_FLAGS)
            )
            page = browser.new_page()
            page.add_init_script(PICKER if way == "file" else NO_PICKER)
            page.goto(address)
            page.fill("#key", WORDS)
            begun = time.perf_counter()
            total = _opened(page, way)
            spent = time.perf_counter() - begun
            peaks[size] = peak_mb("--type=renderer")
            assert page.evaluate(HELD, NAME) if way == "file" else total
            wanted = hashlib.sha256(content).hexdigest()
            assert (page.evaluate(HELD, NAME) if way == "file" else total) == wanted
            browser.close()
        print(f"\n{way}, {size} MB: {spent:.2f} s, renderer's peak {peaks[size]:.0f} MB")
    if way == "file":
        assert peaks[150] - peaks[50] < 80  # less than comes in: what is done with is let go


def _opened(page: Any, way: str) -> str:
    """Open the bundle and wait for it; return the sum of what was downloaded, if it was."""
    if way == "file":
        page.click(".unseal button")
        page.wait_for_selector(".unseal form[aria-busy=false]", timeout=120_000)
        return ""
    with page.expect_download(timeout=120_000) as waiting:
        page.click(".unseal button")
    return hashlib.sha256(Path(waiting.value.path()).read_bytes()).hexdigest()


@pytest.mark.bench
def test_the_program_opens_50_mb_in_bounded_memory() -> None:
    content, file = sealed_mb(50)
    total = hashlib.sha256()
    begun = time.perf_counter()
    for part in opened(io.BytesIO(file), WORDS):
        total.update(part)
    spent = time.perf_counter() - begun
    assert total.hexdigest() == hashlib.sha256(content).hexdigest()
    tracemalloc.start()
    for _ in opened(io.BytesIO(file), WORDS):
        pass
    most = tracemalloc.get_traced_memory()[1] / MB
    tracemalloc.stop()
    print(f"\n50 MB: {spent:.2f} s, {most:.1f} MB held")
    assert most < 10
