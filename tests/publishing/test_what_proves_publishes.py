"""What proves, publishes: no workshop of the tests is stopped after a clean ``prove``."""

from __future__ import annotations

import importlib
import re
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import pytest
import yaml
from playwright.sync_api import sync_playwright

from kerfolio.basis.finding import error, has_errors
from kerfolio.basis.place import Place
from kerfolio.bundles.archive import unzipped
from kerfolio.publishing import build
from kerfolio.publishing.build import Outcome, Request, publish
from kerfolio.publishing.examine import examine
from tests.assembly.written import FOLDER, at_one_thickness
from tests.assembly.written import text as written
from tests.broken.good_workshop import lay_out
from tests.broken.test_cases import CASES, spoil
from tests.outside import CHROMIUM_FLAGS, chromium
from tests.plans import RACK, lay_down
from tests.publishing.brimful import lay_down_brimful
from tests.publishing.test_refusals import lay_down as lay_down_bare

PHONE = 390  # CSS pixels: common practice, no single source
EDGE = 5 * 72 / 25.4
"""What printers leave bare at the edge of a sheet, in points: common practice, no single source."""

TESTS = Path(__file__).resolve().parent.parent
ODD = (
    "שלום مرحبا 漢字 ﬁ \x85 \\ & % "
    "\N{GRINNING FACE} \N{ZERO WIDTH JOINER} \N{RIGHT-TO-LEFT OVERRIDE} "
)


def published(folder: Path) -> Outcome | None:
    """Publish a workshop that proves without errors, which must go well; else return None."""
    proved = examine(folder)
    if has_errors(proved.findings) or proved.workshop is None:
        return None
    out, handed = folder.parent / "site", folder.parent / "handed"
    outcome = publish(Request(folder=folder, out=out, supporters_out=handed))
    assert outcome.published, "\n".join(map(str, outcome.findings))
    return outcome


def test_the_check_sees_a_publish_that_stops(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    stopped = error("odd", "something nobody proved", Place("workshop.yaml"))
    monkeypatch.setattr(build, "_blocked", lambda *_: (stopped,))
    with pytest.raises(AssertionError, match="something nobody proved"):
        published(lay_down_bare(tmp_path / "shop"))


def test_a_written_plan(tmp_path: Path) -> None:
    assert published(lay_down(tmp_path / "shop", at_one_thickness(written("knot"))))


def test_the_good_workshop(tmp_path: Path) -> None:
    assert published(lay_out(tmp_path / "shop"))


@pytest.fixture(scope="module")
def brimful(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of the workshop whose texts are all as long as they may be, published."""
    folder = lay_down_brimful(tmp_path_factory.mktemp("brimful") / "shop")
    assert published(folder)
    return folder.parent


def beyond(content: bytes) -> list[str]:
    """Return the letters of a PDF that stand in the bare edge of a page, or beyond it."""
    found = []
    document = pypdfium2.PdfDocument(content)
    for page in document:
        wide, high = page.get_size()
        text = page.get_textpage()
        for index in range(text.count_chars()):
            left, bottom, right, top = text.get_charbox(index)
            inside = left > EDGE and bottom > EDGE and right < wide - EDGE and top < high - EDGE
            if right > left and not inside:
                found.append(text.get_text_range(index, 1))
    document.close()
    return found


def test_every_paper_bears_the_longest_texts(brimful: Path) -> None:
    (bundle,) = (brimful / "site").rglob("*.zip")
    papers = {
        name: beyond(content)
        for name, content in unzipped(bundle.read_bytes()).items()
        if name.endswith(".pdf") and "/templates/" not in name
    }
    assert len(papers) > 5
    assert [name for name in papers if papers[name]] == []


def test_the_check_sees_a_letter_beyond_the_paper(brimful: Path) -> None:
    (bundle,) = (brimful / "site").rglob("*.zip")
    files = unzipped(bundle.read_bytes())
    tiled = next(name for name in files if "/templates/" in name and name.endswith("a4.pdf"))
    assert beyond(files[tiled])  # a part's words run on over the next tile


@pytest.mark.browser
def test_every_page_bears_the_longest_words_on_a_phone(brimful: Path) -> None:
    pages = [
        *sorted((brimful / "site").rglob("*.html")),
        brimful / "shop/.kerfolio/private/log/index.html",
    ]
    (bundle,) = (brimful / "site").rglob("*.zip")
    files = unzipped(bundle.read_bytes())
    start = brimful / "start-here.html"
    start.write_bytes(next(files[name] for name in files if name.endswith("start-here.html")))
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(CHROMIUM_FLAGS))
        page = browser.new_page(viewport={"width": PHONE, "height": 800})
        widths = {}
        for path in (*pages, start):
            page.goto(path.as_uri())
            widths[str(path)] = page.evaluate("document.documentElement.scrollWidth")
        browser.close()
    assert widths == dict.fromkeys(widths, PHONE)


def plans_in_tests() -> Iterator[str]:
    """Yield every text of a plan that stands in a module of the tests."""
    for path in sorted(TESTS.rglob("*.py")):
        name = ".".join(("tests", *path.relative_to(TESTS).with_suffix("").parts))
        for value in vars(importlib.import_module(name)).values():
            if isinstance(value, str) and re.match(r"plan: .*\n", value) and "parts:" in value:
                yield value


@pytest.mark.bench
def test_every_plan_of_the_tests(tmp_path: Path) -> None:
    texts = [RACK, *(path.read_text("utf-8") for path in sorted(FOLDER.glob("*.yaml")))]
    texts = list(dict.fromkeys((*texts, *plans_in_tests())))
    done = [
        published(lay_down(tmp_path / str(index) / "shop", at_one_thickness(text)))
        for index, text in enumerate(texts)
    ]
    assert sum(each is not None for each in done) > 6


@pytest.mark.bench
def test_every_case_that_is_no_error(tmp_path: Path) -> None:
    done = []
    for path in CASES:
        folder = lay_out(tmp_path / path.stem / "shop")
        spoil(folder, yaml.safe_load(path.read_text("utf-8")))
        done.append(published(folder))
    assert sum(each is not None for each in done) > 6


@pytest.mark.bench
def test_letters_that_no_face_of_ours_has(tmp_path: Path) -> None:
    def fill(letters: int) -> str:
        return (ODD * letters)[:letters].strip()

    assert published(lay_down_brimful(tmp_path / "shop", fill))
