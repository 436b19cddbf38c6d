"""A sealed bundle opens on its plan's page, whole or not at all; what is wrong is told in words."""

from __future__ import annotations

import hashlib
import io
import json
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.edition.public import shown_to_all
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.script_words import script_words
from kerfolio.pages.theme import theme_text
from kerfolio.sealing.chunks import sealed
from kerfolio.sealing.passphrase import plain
from tests.outside import node
from tests.pages.axe import axe_finds, lettering_of_a_drawing
from tests.pages.invented import edition, locked, site
from tests.sealing.rings import CONTENT_KEY, OTHER, WORDS, quick_ring, sealed_by, small, small_head

CONTENT = bytes(range(256)) * 10_000  # three chunks
SUM = hashlib.sha256(CONTENT).hexdigest()
NAME = "potting-bench-0.9.0.zip"
PAGE = "plans/potting-bench/index.html"
SEALED = f"plans/potting-bench/downloads/{NAME}.sealed"
HOUSE = "https://bench.example/"


def sealed_site(language: str = "en") -> dict[str, bytes]:
    """Return a site by its files, whose one supporters' plan has a sealed bundle."""
    whole = site()
    identity = replace(whole.identity, language=language)
    secret = shown_to_all(locked(edition()))
    secret = replace(secret, identity=identity)
    files = whole.files[secret.name]
    download = replace(files.download, href=f"downloads/{NAME}.sealed", size=len(CONTENT))
    made = replace(
        whole,
        identity=identity,
        editions=(secret,),
        files={secret.name: replace(files, download=download)},
    )
    texts = {name: str(text).encode() for name, text in site_texts(made).items()}
    return texts | {SEALED: sealed_by(quick_ring(OTHER, WORDS), CONTENT)}


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return sealed_site()


Open = Callable[..., Any]
NO_PICKER = "delete window.showSaveFilePicker"
PICKER = """
window.showSaveFilePicker = async ({ suggestedName }) => {
  window.asked = suggestedName;
  if (window.deny) throw new DOMException("none", window.deny);
  const root = await navigator.storage.getDirectory();
  return root.getFileHandle(suggestedName, { create: true });
};
"""
"""Stands in for the dialog, which nobody can answer here; the file is the browser's own kind."""

HELD = """async (name) => {
  const root = await navigator.storage.getDirectory();
  try {
    const file = await (await root.getFileHandle(name)).getFile();
    const sum = await crypto.subtle.digest("SHA-256", await file.arrayBuffer());
    return [...new Uint8Array(sum)].map((each) => each.toString(16).padStart(2, "0")).join("");
  } catch (trouble) {
    return trouble.name;
  }
}"""


@pytest.fixture
def opened(browser: Any, files: dict[str, bytes]) -> Iterator[Open]:
    """Open the plan's page as a host serves it, with other files in place of some."""
    contexts: list[Any] = []

    def open_page(
        *, house: str = HOUSE, script: str = NO_PICKER, others: Any = (), **how: Any
    ) -> Any:
        served = {**files, **dict(others)}

        def answer(route: Any) -> None:
            name = route.request.url.removeprefix(house).partition("?")[0]
            found = served.get(name or "index.html")
            if found is None:
                route.fulfill(status=404)
                return
            kind = {"html": "text/html", "css": "text/css", "js": "text/javascript"}
            route.fulfill(body=found, content_type=kind.get(name.rpartition(".")[2], "a/b"))

        context = browser.new_context(**how)
        contexts.append(context)
        context.route(f"{house}**", answer)
        page = context.new_page()
        page.add_init_script(script)
        page.goto(f"{house}{PAGE}")
        return page

    yield open_page
    for each in contexts:
        each.close()


def typed(page: Any, words: str) -> None:
    page.fill("#key", words)
    page.click(".unseal button")


def answer_of(page: Any) -> str:
    """Wait until the page is done; return what it says."""
    page.wait_for_selector(".unseal form[aria-busy=false]")
    told: str = page.inner_text("#key-told")
    return told


@pytest.mark.browser
def test_what_is_saved_is_the_bundle(opened: Open) -> None:
    page = opened()
    with page.expect_download() as waiting:
        typed(page, " Acorn-Bridge CANDLE daffodil  elephant fiddle garlic ")
    assert waiting.value.suggested_filename == NAME
    assert Path(waiting.value.path()).read_bytes() == CONTENT
    assert answer_of(page) == f"Opened and whole: {NAME} is saved."


@pytest.mark.browser
def test_where_the_browser_offers_a_file_that_is_written(opened: Open) -> None:
    page = opened(script=PICKER)
    typed(page, OTHER)
    assert answer_of(page) == f"Opened and whole: {NAME} is saved."
    assert page.evaluate("window.asked") == NAME
    assert page.evaluate(HELD, NAME) == SUM


@pytest.mark.browser
def test_the_keyboard_is_enough(opened: Open) -> None:
    page = opened()
    page.focus("#key")
    page.keyboard.type(WORDS)
    with page.expect_download() as waiting:
        page.keyboard.press("Enter")
    assert Path(waiting.value.path()).stat().st_size == len(CONTENT)


TEXT = b"the joints of a stool, and what they take"  # six chunks of 8
FILE = small(TEXT)
SPOILED = [
    ("acorn bridge", FILE, "it has seven words, and you typed 2."),
    (OTHER, FILE, "The key does not open this bundle."),
    ("–", FILE, "Type the key first."),
    (WORDS, b"", "What was fetched is no sealed bundle."),
    (WORDS, b"PK\x03\x04" + bytes(90), "What was fetched is no sealed bundle."),
    (WORDS, FILE[:17] + b"\2" + FILE[18:], "sealed in form 2"),
    (WORDS, FILE[:40], "is cut short"),
    (WORDS, FILE[:70], "is cut short"),
    (WORDS, FILE[:-1], "is cut short"),
    (WORDS, FILE + b"x", "is longer than it says"),
    (WORDS, FILE[:18] + b"\xff" * 4 + FILE[22:], "The head of the sealed bundle is damaged."),
    (WORDS, FILE[:42] + b"\xff" * 8 + FILE[50:], "The head of the sealed bundle is damaged."),
    (WORDS, FILE[:-1] + bytes([FILE[-1] ^ 1]), "damaged, in chunk 6 of 6"),
    (WORDS, FILE[:99] + FILE[123:147] + FILE[99:123] + FILE[147:], "damaged, in chunk 1 of 6"),
    (WORDS, FILE[:123] + FILE[99:123] + FILE[147:], "damaged, in chunk 2 of 6"),
    (
        WORDS,
        small(TEXT, content_key=bytes(reversed(range(32))))[:99] + FILE[99:],
        "damaged, in chunk 1 of 6",
    ),
]


@pytest.mark.browser
def test_whatever_is_wrong_is_told_and_nothing_saved(opened: Open) -> None:
    served = {SEALED: b""}
    page = opened(script=PICKER, others=served)
    page.unroute_all()
    page.route(f"{HOUSE}{SEALED}", lambda route: route.fulfill(body=served[SEALED]))
    for words, file, told in SPOILED:
        served[SEALED] = file
        typed(page, words)
        said = answer_of(page)
        assert told in said
        assert said.endswith("Nothing was saved.") or words == "–"
        assert page.get_attribute("#key", "aria-invalid") == "true"
        assert page.evaluate("document.activeElement.id") == "key"
        assert page.evaluate(HELD, NAME) == "NotFoundError", told
    page.route(f"{HOUSE}{SEALED}", lambda route: route.fulfill(status=404))
    typed(page, WORDS)
    assert answer_of(page).startswith("The sealed bundle could not be fetched.")
    page.evaluate("window.deny = 'AbortError'")
    page.route(f"{HOUSE}{SEALED}", lambda route: route.fulfill(body=FILE))
    typed(page, WORDS)
    assert answer_of(page) == "You named no file. Nothing was saved."


@pytest.mark.browser
def test_without_https_or_scripts_it_says_how_to_open_it(
    opened: Open, browser: Any, files: dict[str, bytes], tmp_path: Path
) -> None:
    how = f"It opens without this page, too: load {NAME}.sealed and run kerfolio unseal {NAME}"
    page = opened(house="http://bench.example/")
    assert not page.is_visible(".unseal form")
    assert page.inner_text("#key-told").startswith("This page did not come over https")
    assert how in page.inner_text(".unseal")
    page = opened(java_script_enabled=False)
    assert not page.is_visible(".unseal form")
    assert how in page.inner_text(".unseal")
    for name, content in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    page = browser.new_page()
    page.goto((tmp_path / PAGE).as_uri())
    assert page.inner_text("#key-told").startswith("This page stands on a disk")
    assert not page.is_visible(".unseal form")
    page.close()


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_and_nothing_is_too_wide(opened: Open, width: int, scheme: str) -> None:
    page = opened(color_scheme=scheme, viewport={"width": width, "height": 800})
    typed(page, "acorn bridge")
    assert answer_of(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.evaluate("scrollTo(0, 0)")  # so that the bar, which stays in view, lies over nothing
    assert axe_finds(page, "#get", but=lettering_of_a_drawing) == []


@pytest.mark.browser
def test_it_speaks_german(opened: Open) -> None:
    page = opened(others=sealed_site("de"))
    assert "versiegelt für Unterstützer" in page.inner_text("#get")
    typed(page, "Eiche")
    assert answer_of(page).startswith("Der Schlüssel öffnet dieses Paket nicht: er hat")


SCRIPT = f"{script_words(METRIC, ('unsealscript',))}\n{theme_text('unseal.js')}"
GERMAN = Reader(unit="mm", language="de")


def in_node(code: str, given: Any) -> Any:
    script = f"{SCRIPT}\nconst given = {json.dumps(given)};\n(async () => {{ {code} }})();"
    done = subprocess.run([node(), "-e", script], capture_output=True, check=True, text=True)
    return json.loads(done.stdout)


@pytest.mark.node
def test_the_page_takes_a_key_as_the_program_does() -> None:
    keys = [" Acorn  BRIDGE-candle\n", "ａｃｏｒｎ ſıİß K\u212a", "–", "", "a1b", "naïve é\u00a0x"]
    told = in_node("console.log(JSON.stringify(given.map(plainKey)));", keys)
    assert told == [plain(each) for each in keys]


@pytest.mark.node
@pytest.mark.parametrize(("size", "chunk"), [(0, 8), (1, 8), (8, 8), (9, 8), (41, 7), (41, 64)])
def test_the_page_opens_what_the_program_seals(size: int, chunk: int) -> None:
    """The stream brings pieces of 5 bytes, so that each read ends in the midst of something."""
    head = small_head(size, chunk)
    file = b"".join(sealed(head, CONTENT_KEY, io.BytesIO(TEXT[:size])))
    code = """
      const bytes = Uint8Array.from(given.file);
      const stream = new ReadableStream({ start(flow) {
        for (let at = 0; at < bytes.length; at += 5) flow.enqueue(bytes.slice(at, at + 5));
        flow.close();
      } });
      const found = [];
      const write = (part) => found.push(...new Uint8Array(part));
      const place = { write, close() {}, abort() {} };
      await unseal(stream, given.words, () => place, () => {});
      console.log(JSON.stringify(found));
    """
    assert bytes(in_node(code, {"file": list(file), "words": WORDS})) == TEXT[:size]
