"""The pages in a real browser, and under two checkers from outside.

Accessibility: axe-core (``axe.py``). Validity: the Nu HTML checker.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from kerfolio.basis.colour import rgb
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Look
from kerfolio.pages.plan import plan_page
from kerfolio.pages.start import start_here
from tests.edition.carrying import carrying
from tests.outside import nu_messages
from tests.pages.axe import axe_finds, lettering_of_a_drawing
from tests.pages.invented import (
    CONTENTS,
    edition,
    pictures,
    plan_files,
    put,
    site,
    whole_log,
    workshop,
    write,
)
from tests.paper.editions import picture

PAGES = (
    *("index.html", "plans/index.html", "about/index.html", "log/index.html", "404.html"),
    *("plans/harbour-stool/index.html", "plans/harbour-stool/steps/index.html"),
    *("plans/potting-bench/index.html", "bundle/start-here.html", "private/log.html"),
    "stock/index.html",
)


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    write(site(), folder)
    for name in CONTENTS:
        put(folder / "bundle" / name, b"-")
    start = start_here(edition(), CONTENTS, pictures(edition()))
    put(folder / "bundle" / "start-here.html", start.encode())
    put(folder / "log" / "edge.jpg", picture(480, 320))
    put(folder / "private" / "log.html", whole_log(workshop(), log_folder="../log/").encode())
    return folder


def opened(browser: Any, **options: Any) -> Any:
    width = options.pop("width", 1280)
    context = browser.new_context(viewport={"width": width, "height": 900}, **options)
    return context.new_page()


@pytest.mark.browser
@pytest.mark.parametrize("width", [320, 360, 1280])
def test_pages_work_from_a_disk_without_scripts_and_fit_the_window(
    browser: Any, written: Path, width: int
) -> None:
    page = opened(browser, width=width, java_script_enabled=False)
    asked: list[str] = []
    failed: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("requestfailed", lambda request: failed.append(request.url))
    for name in PAGES:
        page.goto((written / name).as_uri())
        wide = page.locator("html").evaluate("node => node.scrollWidth")
        assert wide <= width, f"{name} is {wide} px wide"
        page.mouse.wheel(0, 20000)
    assert {url.split(":")[0] for url in asked} <= {"file", "data"}
    assert failed == []
    page.context.close()


@pytest.mark.browser
def test_prices_of_nine_digits_slide_inside_their_table(browser: Any, written: Path) -> None:
    found = carrying()
    dear = tuple(
        replace(row, price=Decimal("123456789.00"), total=Decimal("987654321.00"))
        for row in found.costs
    )
    found = replace(found, copies=tuple(replace(each, lines=dear) for each in found.copies))
    around = replace(site(), editions=(found,), files={found.name: plan_files(found)})
    target = written / "plans" / "dear" / "index.html"
    put(target, plan_page(around, found).encode())
    page = opened(browser, width=320, java_script_enabled=False)
    page.goto(target.as_uri())
    page.locator("summary", has_text="Costs").click()
    assert "987654321.00" in page.locator("#costs").inner_text()
    assert page.locator("html").evaluate("node => node.scrollWidth") <= 320
    page.context.close()


@pytest.mark.browser
def test_the_way_from_home_to_a_download_and_a_step(browser: Any, written: Path) -> None:
    page = opened(browser, width=360, java_script_enabled=False)
    page.goto((written / "index.html").as_uri())
    page.get_by_role("link", name="Harbour stool", exact=True).click()
    assert page.get_by_role("heading", level=1).inner_text() == "Harbour stool"
    link = page.get_by_role("link", name="Download the bundle")
    assert link.get_attribute("href") == "downloads/harbour-stool-1.2.0.zip"
    page.get_by_role("link", name="Lay on the seat and drive the wedges").click()
    assert page.url.endswith("/plans/harbour-stool/steps/index.html#step-2")
    page.context.close()


@pytest.mark.browser
def test_the_keyboard_reaches_the_text_at_once(browser: Any, written: Path) -> None:
    page = opened(browser)
    page.goto((written / "plans" / "harbour-stool" / "index.html").as_uri())
    page.keyboard.press("Tab")
    focused = page.evaluate(
        "() => [document.activeElement.textContent, document.activeElement"
        ".getBoundingClientRect().top >= 0, getComputedStyle(document.activeElement).outlineStyle]"
    )
    assert focused == ["Skip to the text", True, "solid"]
    page.keyboard.press("Enter")
    assert page.evaluate("() => document.activeElement.id") == "main"
    page.context.close()


@pytest.mark.browser
def test_the_house_fonts_are_loaded_and_drawings_are_themed(browser: Any, written: Path) -> None:
    found = palettes_of(Look())
    for scheme, palette in (("light", found.light), ("dark", found.dark)):
        ink = "rgb({}, {}, {})".format(*rgb(palette[Ink.INK]))
        page = opened(browser, color_scheme=scheme)
        page.goto((written / "plans" / "harbour-stool" / "index.html").as_uri())
        page.evaluate("() => document.fonts.ready")
        families = page.evaluate(
            "() => [...document.fonts].filter(f => f.status == 'loaded').map(f => f.family)"
        )
        assert {name.strip('"') for name in families} == {"Source Serif Pro", "Source Sans Pro"}
        stroke = "node => getComputedStyle(node).stroke"
        assert page.locator("svg .k-line-ink").first.evaluate(stroke) == ink
        page.context.close()


@pytest.mark.browser
def test_on_a_phone_the_head_is_slim_and_a_plan_is_in_the_first_view(
    browser: Any, written: Path
) -> None:
    page = opened(browser, width=390)
    page.goto((written / "index.html").as_uri())
    box = "node => node.getBoundingClientRect()"
    assert page.locator("body > header").evaluate(box)["height"] <= 72
    assert page.locator(".entry .cover").first.evaluate(box)["top"] < 500
    page.context.close()


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_axe_finds_nothing(browser: Any, written: Path, width: int, scheme: str) -> None:
    page = opened(browser, width=width, color_scheme=scheme)
    found = {}
    for name in PAGES:
        page.goto((written / name).as_uri())
        found[name] = axe_finds(page, but=lettering_of_a_drawing)
    page.context.close()
    assert found == {name: [] for name in PAGES}


@pytest.mark.browser
def test_targets_are_24_px_or_stand_in_running_text(browser: Any, written: Path) -> None:
    """WCAG 2.2, success criterion 2.5.8, for the links that stand by themselves."""
    page = opened(browser, width=360)
    page.goto((written / "plans" / "harbour-stool" / "index.html").as_uri())
    page.locator(".chapter-list .bar summary").click()
    sizes = page.evaluate(
        "() => [...document.querySelectorAll('nav a, .take, .colophon li a, .kicker a')]"
        ".filter(a => a.checkVisibility())"
        ".map(a => [a.textContent, a.getBoundingClientRect().height])"
    )
    assert len(sizes) > 10
    assert [each for each in sizes if each[1] < 24] == []
    page.context.close()


@pytest.mark.browser
def test_a_print_of_the_steps_breaks_no_step(browser: Any, written: Path, tmp_path: Path) -> None:
    page = opened(browser)
    page.goto((written / "plans" / "harbour-stool" / "steps" / "index.html").as_uri())
    target = tmp_path / "steps.pdf"
    page.pdf(path=str(target), format="A4")
    page.context.close()
    document = pypdfium2.PdfDocument(str(target))
    texts = [each.get_textpage().get_text_bounded() for each in document]
    first = next(text for text in texts if "Slide the rail into both sides" in text)
    assert "the bruise stays" in " ".join(first.split())
    assert any("Harbour stool 1.2.0, 2 October 2026." in " ".join(t.split()) for t in texts)
    assert "Skip to the text" not in "".join(texts)
    document.close()


@pytest.mark.java
@pytest.mark.node
def test_the_nu_checker_finds_nothing(written: Path) -> None:
    messages = nu_messages(*(written / name for name in (*PAGES, "assets/style.css")))
    assert [
        f"{Path(each['url']).name}: {each['message']}: {each.get('extract', '')[:120]}"
        for each in messages
    ] == []
