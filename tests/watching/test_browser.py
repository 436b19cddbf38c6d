"""The pages of watching in a real browser: they follow saves, and show lines, by themselves."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.watching.test_server import served, unproved


@pytest.mark.browser
def test_a_save_shows_by_itself_and_a_click_shows_lines(browser: Any, tmp_path: Path) -> None:
    with served(tmp_path) as asked:
        context = browser.new_context(viewport={"width": 390, "height": 800}, color_scheme="dark")
        page = context.new_page()
        told: list[str] = []
        page.on("console", lambda message: told.append(message.text))
        page.on("pageerror", lambda fault: told.append(str(fault)))
        page.goto(asked.server.address)
        assert page.locator("html").evaluate("node => node.scrollWidth") <= 390
        assert page.evaluate(
            "document.fonts.ready.then(f => [...f].every(e => e.status != 'error'))"
        )
        assert page.evaluate("document.fonts.check('16px \"Source Sans Pro\"')")
        plan = asked.folder / "shop" / "plans" / "rack" / "plan.yaml"
        plan.write_text(plan.read_text("utf-8").replace("width: 60", "width: 50"), "utf-8")
        unproved(plan.parent.parent.parent, asked.stage).look()
        page.locator("#rack-rail .fresh").wait_for()
        page.locator("svg text", has_text="right-tab: 50 wide").click()
        assert "right-tab: {tabs:" in page.locator("#lines .meant").inner_text()
        page.locator("#lines form button").click()
        page.locator("#lines > button").click()
        assert not page.locator("#lines").is_visible()
        page.goto(f"{asked.server.address}readers")
        inside = page.frame_locator("iframe")
        page.locator(".notice").wait_for()
        asked.stage.show(asked.stage.seen.__class__(identity=asked.stage.seen.identity, sites=1))
        assert inside.locator("p").inner_text() == "For readers"
        assert told == []
        context.close()
