"""The list of plans: what each is found by, and the script that finds them among many."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from kerfolio.pages.all_pages import texts_of
from kerfolio.pages.home import home_page
from kerfolio.pages.listed import listed, listed_from, listed_json
from kerfolio.pages.plans import PLANS_SCRIPT, plans_index
from kerfolio.pages.site import Listed, Site
from tests.pages.axe import axe_finds
from tests.pages.invented import put, site
from tests.pages.markup import Tree

KINDS = ("seats", "boxes", "shelves", "")
LEVELS = ("Easy", "Some care", "Demanding")


FIRST = listed(site())[0]


def one(number: int) -> Listed:
    """Return a plan of many: every fourth of a kind, every third as hard, every fifth a gift."""
    return replace(
        FIRST,
        name=f"plan-{number}",
        title=f"Plan {number}",
        category=KINDS[number % 4],
        tags=("gifts", "one evening") if number % 5 == 0 else (),
        level=LEVELS[number % 3],
        is_open=number % 2 == 0,
    )


def many(count: int) -> Site:
    return replace(site(), editions=(), others=tuple(one(number) for number in range(count)))


def entries(page: Tree) -> list[dict[str, str]]:
    return [e.attributes for e in page.all("li") if e.attributes.get("class") == "entry"]


def test_what_a_plan_is_found_by_comes_back_from_what_is_kept() -> None:
    kept = replace(one(5), cover=None)
    assert listed_from(listed_json(kept)) == kept


def test_few_plans_need_no_finding() -> None:
    page = Tree(plans_index(many(3)))
    assert page.all("form") == []
    assert [each for each in page.all("script") if "src" in each.attributes] == []
    assert len(entries(page)) == 3


def test_each_way_offers_what_parts_the_plans() -> None:
    page = Tree(plans_index(many(6)))
    ways = [each.attributes["name"] for each in page.all("select")]
    assert ways == ["category", "tag", "level", "access"]
    offered = [" ".join(each.text.split()) for each in page.all("option")]
    assert offered[:4] == ["any", "boxes", "seats", "shelves"]
    first = entries(page)[0]
    assert first["data-category"] == "seats"
    assert first["data-tag"] == "gifts\none evening"
    alike = replace(many(6), others=tuple(replace(each, level="Easy") for each in many(6).others))
    ways = [each.attributes["name"] for each in Tree(plans_index(alike)).all("select")]
    assert "level" not in ways, "what all have alike finds none"


def test_home_shows_the_newest_and_says_how_many_there_are() -> None:
    page = Tree(home_page(many(40)))
    assert len(entries(page)) == 6
    assert "All 40 plans" in page.text_of("main")
    assert "All 6" not in Tree(home_page(many(6))).text_of("main")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("many")
    plans = many(300)
    for name, text in texts_of(plans, ()).items():
        put(found / name, text.encode())
    put(found / "plans" / "index.html", plans_index(plans).encode())
    assert (found / PLANS_SCRIPT).is_file()
    return found


@pytest.fixture
def phone(browser: Any, folder: Path) -> Iterator[Any]:
    page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
    page.goto((folder / "plans" / "index.html").as_uri())
    yield page
    page.context.close()


SEEN = "() => [...document.querySelectorAll('.entry')].filter(e => e.checkVisibility()).length"


@pytest.mark.browser
def test_plans_are_found_by_all_that_is_asked(phone: Any) -> None:
    assert phone.evaluate(SEEN) == 24
    phone.get_by_label("Kind").select_option("seats")
    phone.get_by_label("Tag").select_option("gifts")
    told = phone.locator("#found")
    assert told.inner_text() == "15 of 300 plans", "of 300, those that 20 divides"
    assert phone.evaluate(SEEN) == 15
    phone.get_by_label("How hard").select_option("Demanding")
    phone.get_by_label("A word of it").fill("plan 14")
    assert told.inner_text() == "1 of 300 plans", "140 alone has all of it"
    kept = phone.url
    assert kept.endswith("#category=seats&tag=gifts&level=Demanding&word=plan+14")
    phone.get_by_label("For whom").select_option("for supporters")
    assert told.inner_text() == "No plan answers to all of this."
    phone.goto("about:blank")
    phone.goto(kept)
    assert told.inner_text() == "1 of 300 plans"
    assert phone.get_by_label("Kind").input_value() == "seats"


@pytest.mark.browser
def test_more_plans_show_when_asked_for(phone: Any) -> None:
    phone.get_by_role("button", name="Show more plans").click()
    assert phone.evaluate(SEEN) == 48
    assert phone.evaluate("() => document.activeElement.closest('.entry') !== null")
    assert phone.evaluate("document.documentElement.scrollHeight") < 10 * 844


@pytest.mark.browser
def test_without_scripts_all_plans_show_in_short(browser: Any, folder: Path) -> None:
    context = browser.new_context(viewport={"width": 320, "height": 800}, java_script_enabled=False)
    page = context.new_page()
    page.goto((folder / "plans" / "index.html").as_uri())
    assert page.locator("html").evaluate("node => node.scrollWidth") <= 320
    assert page.locator("html").evaluate("node => node.scrollHeight") < 300 * 200
    assert page.locator(".entry").last.is_visible()
    assert not page.locator("#finder").is_visible()
    context.close()


@pytest.mark.browser
@pytest.mark.node
def test_axe_finds_nothing_in_the_form(phone: Any) -> None:
    assert axe_finds(phone) == []
