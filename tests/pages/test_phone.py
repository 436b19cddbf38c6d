"""The page at the machine: in a browser without a network, on a phone's screen, and home again."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from kerfolio.pages.phone import phone_page, phone_script
from kerfolio.publishing.known_plans import known_of
from kerfolio.publishing.private_log import read_log, write_private_log
from kerfolio.publishing.receiving import receive
from kerfolio.reading.workshop import read_workshop
from tests.conftest import SAMPLE
from tests.outside import nu_messages
from tests.pages.axe import axe_finds
from tests.reading.photographs import camera_photo

MOST_SCRIPT = 16_000
"""Bytes of the page's own script without its words: what a phone reads at once."""


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    workshop, _ = read_workshop(SAMPLE, pictures=False)
    assert workshop is not None
    file = tmp_path_factory.mktemp("phone") / "at-the-machine.html"
    file.write_text(phone_page(workshop.identity, known_of(workshop)), "utf-8")
    return file


def test_the_script_is_small_and_loads_nothing() -> None:
    from kerfolio.basis.reader import METRIC

    script = str(phone_script(METRIC))
    assert len(script.encode()) < MOST_SCRIPT
    assert "fetch(" not in script
    assert "http" not in script


@pytest.mark.browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_an_entry_made_at_the_machine_comes_home(
    browser: Any, page_file: Path, tmp_path: Path, scheme: str
) -> None:
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, offline=True, color_scheme=scheme, has_touch=True
    )
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.on("console", lambda line: faults.append(line.text) if line.type == "error" else None)
    page.goto(page_file.as_uri())
    page.locator("[data-key=plan]").select_option("harbour-stool")
    page.locator("[data-key=stock]").select_option("birch-plywood-18")
    page.locator("[data-key=cutter]").select_option("compression-6")
    # From the plan: 8 mm and the rest of the sheet it is drawn for, 0.3 mm into the bed.
    assert page.locator("[data-key=passes]").input_value() == "8 mm, 10.1 mm"
    assert page.locator("[data-key=feed]").input_value() == "4500 mm/min"
    page.locator("[data-key=feed]").fill("4000")
    # 4000 / (18000 x 2) = 0.111 mm: by hand, from the definition.
    assert page.locator("[data-log=figures]").inner_text().startswith("Chip load 0.111 mm a tooth.")
    page.locator('[data-key=outcome][value="nearly clean"]').check()
    page.locator("[data-key=mark-fuzz]").check()
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(camera_photo(6, (3000, 2000)))
    page.locator("[data-log=photo]").set_input_files(photo)
    page.wait_for_selector("[data-log=picture]:visible")
    page.locator("textarea").fill("Better than\nthe first.")
    assert page.locator("html").evaluate("node => node.scrollWidth") == 390
    small = page.locator("button:visible, select, label.pick").evaluate_all(
        "all => all.filter((each) => each.getBoundingClientRect().height < 44).length"
    )
    assert small == 0  # WCAG 2.2, 2.5.5: 44 px for a finger
    page.reload()  # what is being typed stands again
    assert page.locator("textarea").input_value() == "Better than\nthe first."
    page.locator("[data-log=form] button[type=submit]").click()
    assert page.locator("[data-log=count]").inner_text() == "1 entry waits"
    page.reload()
    with page.expect_download() as loaded:
        page.locator("[data-log=save]").click()
    home = tmp_path / loaded.value.suggested_filename
    loaded.value.save_as(home)
    assert faults == []
    context.close()
    assert home.name.endswith(".entries.json")
    assert home.stat().st_size < 1_000_000
    _received_and_shown(home, tmp_path)


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_can_be_used_by_everybody(browser: Any, page_file: Path, scheme: str) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, color_scheme=scheme)
    page = context.new_page()
    page.goto(page_file.as_uri())
    page.locator("details").evaluate("node => (node.open = true)")
    assert axe_finds(page) == []
    context.close()


def _received_and_shown(file: Path, folder: Path) -> None:
    shop = folder / "shed"
    (shop / "plans" / "harbour-stool").mkdir(parents=True)
    (shop / "workshop.yaml").write_text(
        "workshop: Shed\nmaker: Ada\nunits-first: mm\nlicence: CC-BY-SA-4.0\n"
    )
    received = receive(shop, file, date(2026, 12, 1))
    assert not received.findings
    workshop, _ = read_log(shop)
    assert workshop is not None
    (trial,) = workshop.trials
    assert trial.feed_mm_per_min == 4000
    assert trial.passes == (8, 10.1)
    assert trial.grade is not None
    assert trial.grade.word == "nearly clean"
    assert trial.release == "1.2.0"
    assert trial.photo is not None
    content = (shop / "log" / trial.photo.file).read_bytes()
    assert b"Invented Camera" not in content
    page = write_private_log(shop, workshop).read_text("utf-8")
    assert trial.photo.file in page
    assert f'id="{trial.id}"' in page


@pytest.mark.java
def test_it_is_valid(page_file: Path) -> None:
    assert [each for each in nu_messages(page_file) if each["type"] == "error"] == []
