"""Every page states what it may load, and loads all of it under that.

Content Security Policy Level 3 (W3C); the browser is the judge of what it forbids.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.model.workshop import Identity
from kerfolio.pages.frame import Frame, lone_frame, site_frame
from kerfolio.pages.policy import FETCHING_POLICY, SITE_POLICY, lone_policy
from kerfolio.pages.start import start_here
from kerfolio.pages.theme import render, to_scale
from kerfolio.pages.viewer import viewer_of
from tests.pages.invented import CONTENTS, edition, pictures, put, site, write
from tests.pages.test_pages import PAGES, every_page, tree
from tests.pages.test_viewer import frame_for, model, viewer_data

POLICY = "Content-Security-Policy"


@every_page
def test_every_page_states_its_policy_before_it_loads_anything(name: str) -> None:
    found = tree(name)
    (stated,) = [
        each.attributes["content"]
        for each in found.all("meta")
        if each.attributes.get("http-equiv") == POLICY
    ]
    styles = [each.text for each in found.all("style")]
    scripts = [each.text for each in found.all("script") if not each.attributes]
    fits = name == "plans/harbour-stool/index.html"  # it fetches its files when asked for them
    site_policy = FETCHING_POLICY if fits else SITE_POLICY
    meant = lone_policy(*styles, *scripts) if styles else site_policy
    assert sorted(stated.split()) == sorted(meant.split())  # in whatever order scripts stand
    assert "unsafe" not in stated
    text = PAGES[name]
    assert text.index(POLICY) < min(
        text.index(each) for each in ("<style", "<link") if each in text
    )


@every_page
def test_no_page_has_what_its_policy_forbids(name: str) -> None:
    for each in tree(name).elements:
        assert "style" not in each.attributes
        assert not [key for key in each.attributes if key.startswith("on")]


def test_a_drawing_to_scale_states_its_width_itself() -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-1.5 0 200 80"><path d="M0 0"/></svg>'
    assert to_scale(svg, 0.17).startswith('<svg width="34rem" xmlns=')


VIEWS = ("plans/viewed/index.html", "bundle/viewed.html")


def with_view(frame: Frame) -> str:
    """Return a page in a frame with the view in 3-D on it."""
    view = viewer_of(model().title, viewer_data(model()), METRIC)
    fragment = render("viewer.html", METRIC, viewer=view, frame=frame)
    return render("base.html", METRIC, frame=frame).replace("</main>", f"{fragment}</main>")


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site, a bundle's first page, and in both a page with the view in 3-D."""
    folder = tmp_path_factory.mktemp("site")
    write(site(), folder)
    for name in CONTENTS:
        put(folder / "bundle" / name, b"-")
    start = start_here(edition(), CONTENTS, pictures(edition()))
    put(folder / "bundle" / "start-here.html", start.encode())
    framed = site_frame(site(), "plans/viewed/", "Viewed", "A page of the site.")
    for name, frame in zip(VIEWS, (framed, frame_for("Viewed")), strict=True):
        put(folder / name, with_view(frame).encode())
    return folder


def faults_of(browser: Any, page_file: Path, press: str = "") -> list[str]:
    page = browser.new_page()
    faults: list[str] = []
    page.on("console", lambda said: said.type in ("error", "warning") and faults.append(said.text))
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.goto(page_file.as_uri())
    if press:
        page.get_by_role("button", name=press).click()
        page.get_by_role("button", name="First view").wait_for()
    page.close()
    return [each for each in faults if "Content Security" in each or "violates" in each]


@pytest.mark.browser
def test_a_browser_finds_nothing_to_forbid_from_a_disk(browser: Any, written: Path) -> None:
    pages = sorted(written.rglob("*.html"))
    assert len(pages) > 8
    assert [each for page in pages for each in faults_of(browser, page)] == []


@pytest.mark.browser
@pytest.mark.parametrize("name", VIEWS)
def test_the_view_in_3d_opens_under_the_policy(browser: Any, written: Path, name: str) -> None:
    assert faults_of(browser, written / name, press="Look at it in 3-D") == []


@pytest.mark.browser
@pytest.mark.parametrize(
    "spoilt",
    [
        ("</style>", " </style>"),
        ("<main", '<p style="color: red">x</p><main'),
        ("<main", "<script>document.title = 1</script><main"),
        ("<main", '<img src="https://away.example/x.png" alt=""><main'),
    ],
)
def test_a_browser_sees_what_is_not_allowed(
    browser: Any, tmp_path: Path, spoilt: tuple[str, str]
) -> None:
    frame = lone_frame(Identity(title="A bench", maker="Ada Example"), "A page", "To be spoilt.")
    text = render("base.html", METRIC, frame=frame)
    assert spoilt[0] in text
    page = tmp_path / "page.html"
    page.write_text(text, "utf-8")
    assert faults_of(browser, page) == []
    page.write_text(text.replace(spoilt[0], spoilt[1], 1), "utf-8")
    assert faults_of(browser, page)
    assert re.search("sha256-", text)
