"""What a plan's pages say."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from urllib.parse import parse_qs, urlsplit

from kerfolio.basis.lengths import inch_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import lone_name
from kerfolio.model.plan import Release
from kerfolio.model.prose import Prose
from kerfolio.pages.plan import plan_page, steps_page
from kerfolio.pages.site import Download, Site
from tests.pages.invented import edition, plan_files, site
from tests.pages.markup import Tree

SITE = site()
STOOL = SITE.editions[0]


def page_of(found: Edition, around: Site = SITE) -> Tree:
    return Tree(plan_page(replace(around, editions=(found,)), found))


def chapter(page: Tree, name: str) -> str:
    """Return the text of a chapter with every run of blanks as one."""
    found = [each for each in page.all("section") if each.attributes.get("id") == name]
    assert len(found) == 1, f"{len(found)} chapters are called {name}"
    return " ".join(found[0].text.split())


def test_what_is_needed_first_comes_first() -> None:
    ids = [each.attributes["id"] for each in page_of(STOOL).all("section")]
    assert ids == [
        *("get", "path", "router", "saw", "hand", "shop", "measuring", "coupon", "cautions"),
        *("sheets", "yard", "story", "parts", "need", "steps"),
        *("costs", "questions", "trials", "releases", "about"),
    ]


def test_what_a_plan_has_not_is_left_out_whole() -> None:
    bare_plan = replace(
        STOOL.plan,
        story=Prose(),
        steps=(),
        video=None,
        questions=(),
        releases=(),
        boards=(),
        hardware=(),
    )
    identity = replace(STOOL.identity, contact="")
    settled = replace(STOOL.settled, coupons=())
    bare = replace(
        STOOL,
        plan=bare_plan,
        identity=identity,
        settled=settled,
        boards=(),
        hardware=(),
        copies=(),
        trials=(),
    )
    ids = [each.attributes["id"] for each in page_of(bare).all("section")]
    assert ids == [
        *("get", "path", "router", "saw", "hand", "shop", "measuring", "cautions"),
        *("sheets", "yard", "parts", "need", "questions", "about"),
    ]


def test_an_open_plan_is_downloaded_here() -> None:
    page = page_of(STOOL)
    text = chapter(page, "get")
    assert "Download the bundle zip, 2.3 MB" in text
    assert "downloads/harbour-stool-1.2.0.zip" in page.values("href")
    about = chapter(page, "about")
    assert "the SHA-256 of harbour-stool-1.2.0.zip" in about
    assert SITE.files["harbour-stool"].download.sha256 in about
    assert "CC-BY-SA-4.0" in about
    assert "not legal advice: what counts is the text of the licence" in about


def test_files_can_be_had_one_by_one() -> None:
    names = ("booklet-a4.pdf", "booklet-letter.pdf", "cut/17.8mm/sheet-1-17.8mm.dxf")
    hrefs = {name: f"downloads/{lone_name(STOOL.plan, name)}" for name in names}
    lone = {
        name: Download(name=name, size=1000, sha256="", href=href) for name, href in hrefs.items()
    }
    files = replace(SITE.files[STOOL.name], lone=lone)
    page = page_of(STOOL, replace(SITE, files={**SITE.files, STOOL.name: files}))
    for name in (
        "harbour-stool-1.2.0-booklet-a4.pdf",
        "harbour-stool-1.2.0-booklet-letter.pdf",
        "harbour-stool-1.2.0-17.8mm-sheet-1-17.8mm.dxf",
    ):
        assert f"downloads/{name}" in page.values("href")
    assert "The booklet PDF, 1 kB To read and to print: on A4 or on US Letter." in chapter(
        page, "get"
    )


def test_the_coupon_names_the_folder_of_each_slot() -> None:
    text = chapter(page_of(STOOL), "coupon")
    assert "3 17.8 mm (0.701 in) 17.6 mm (0.693 in) cut/17.6mm" in text
    assert "4 18 mm (0.709 in) 17.8 mm (0.701 in) cut/17.8mm" in text
    assert "5 18.2 mm (0.717 in) 18 mm (0.709 in) cut/18.0mm" in text
    assert (
        "6 18.4 mm (0.724 in) 18.2 mm (0.717 in) none: thicker than the plan is published for"
        in text
    )


def test_slots_thinner_than_all_folders_and_between_two_say_so() -> None:
    sheets = tuple(replace(each, published=(17.8, 18.0)) for each in STOOL.settled.sheets)
    two = replace(STOOL, variants=STOOL.variants[1:], settled=replace(STOOL.settled, sheets=sheets))
    assert "none: thinner than the plan is published for" in chapter(page_of(two), "coupon")
    gap = replace(STOOL, variants=(STOOL.variants[0], STOOL.variants[2]))
    assert "4 18 mm (0.709 in) 17.8 mm (0.701 in) cut/18.0mm the next thicker" in chapter(
        page_of(gap), "coupon"
    )


def test_parts_have_marks_and_sizes_in_both_units() -> None:
    text = chapter(page_of(STOOL), "parts")
    for row in STOOL.parts:
        assert " ".join(row.marks) in text or "".join(row.marks) in text
        assert f"{row.width:g} × {row.height:g} mm" in text
        inches = [inch_text(side).removesuffix(" in") for side in (row.width, row.height)]
        assert " × ".join(inches) in text


def test_costs_add_up_and_say_what_is_missing() -> None:
    text = chapter(page_of(STOOL), "costs")
    known = sum((row.total for row in STOOL.costs if row.total), Decimal(0))
    assert f"In all {known:.2f}" in text
    assert "One copy, in EUR" in text
    assert "No price is known for 1 line of the list." in text


def test_hardware_has_its_twin_in_inches() -> None:
    assert "1/4-20 × 1 1/2 in" in chapter(page_of(STOOL), "need")


def test_corrections_stand_out() -> None:
    text = chapter(page_of(STOOL), "releases")
    assert "1.1.0 Correction: files before this release were wrong Rail 2 mm longer." in text
    assert text.index("1.2.0") < text.index("1.1.0")


def test_releases_of_one_day_keep_the_newer_first() -> None:
    day = STOOL.plan.releases[0].date
    releases = tuple(
        Release(version=version, date=day, changed="x") for version in ("1.9.0", "1.10.0")
    )
    text = chapter(page_of(replace(STOOL, plan=replace(STOOL.plan, releases=releases))), "releases")
    assert text.index("1.10.0") < text.index("1.9.0")


def test_the_report_carries_plan_and_release() -> None:
    page = page_of(STOOL)
    link = next(each for each in page.values("href") if "subject=" in each)
    parts = urlsplit(link)
    fields = parse_qs(parts.query)
    assert (parts.scheme, parts.path) == ("mailto", "ida@example.org")
    assert fields["subject"] == ["Harbour stool 1.2.0: a problem"]
    assert fields["body"][0].split("\r\n")[:3] == [
        "Plan: Harbour stool",
        "Release: 1.2.0",
        "Part (its mark, such as A1):",
    ]


def test_a_contact_that_is_a_page_is_linked_as_it_is() -> None:
    identity = replace(STOOL.identity, contact="https://example.org/ask?a=1&b=2")
    page = page_of(replace(STOOL, identity=identity))
    assert "https://example.org/ask?a=1&b=2" in page.values("href")


def test_generated_answers_follow_the_plan() -> None:
    text = chapter(page_of(replace(STOOL, fitted=True)), "questions")
    assert "Will it take an adult? It has taken its maker since." in text
    assert "every slot follows what you measured" in text
    assert "17.6 to 18 mm (0.693 to 0.709 in)" in text
    assert "Which cutter do I need?" in text
    sheets = tuple(replace(each, published=(17.8, 17.8)) for each in STOOL.settled.sheets)
    settled = replace(STOOL.settled, sheets=sheets)
    one = replace(STOOL, settled=settled, variants=STOOL.variants[1:2])
    assert "17.8 mm" in chapter(page_of(one), "questions")


def test_trials_show_what_failed_too() -> None:
    text = chapter(page_of(STOOL), "trials")
    assert "Clean" in text
    assert "To mend" in text
    assert "4500 mm/min (177 in/min)" in text


def test_the_video_is_a_plain_link() -> None:
    page = page_of(STOOL)
    assert "https://example.org/v/1" in page.values("href")
    assert "2:10 Cutting" in chapter(page, "steps")
    assert page.all("iframe", "video", "object", "embed") == []


def test_structured_data_speaks_of_the_plan() -> None:
    """Properties as in schema.org's HowTo; ``totalTime`` is an ISO 8601 duration."""
    data = json.loads(page_of(STOOL).all("script")[0].text)
    assert (data["@context"], data["@type"]) == ("https://schema.org", "HowTo")
    assert data["totalTime"] == "PT13M", "12.5 minutes: halves go up"
    assert data["license"] == "https://creativecommons.org/licenses/by-sa/4.0/"
    assert data["datePublished"] == "2026-05-09"
    assert data["dateModified"] == "2026-10-02"
    assert [each["position"] for each in data["step"]] == [1, 2]
    assert data["step"][0]["url"] == "https://example.org/plans/harbour-stool/steps/#step-1"
    assert data["image"] == "https://example.org/plans/harbour-stool/photos/finished-960.jpg"
    assert {"@type": "HowToTool", "name": "mallet"} in data["tool"]
    assert data["isAccessibleForFree"] is True
    assert "estimatedCost" not in data, "a price is missing, so no cost is claimed"


def test_pages_say_where_they_stand() -> None:
    """Properties as in schema.org's BreadcrumbList: absolute addresses, counted from 1."""
    data = json.loads(Tree(steps_page(SITE, STOOL)).all("script")[0].text)
    assert data["@type"] == "BreadcrumbList"
    assert [(e["position"], e["name"], e["item"]) for e in data["itemListElement"]] == [
        (1, "Fernhill Bench", "https://example.org/"),
        (2, "Plans", "https://example.org/plans/"),
        (3, "Harbour stool", "https://example.org/plans/harbour-stool/"),
        (
            4,
            "Harbour stool, step by step",
            "https://example.org/plans/harbour-stool/steps/",
        ),
    ]
    nowhere = replace(SITE, identity=replace(SITE.identity, base_url=""))
    assert "BreadcrumbList" not in steps_page(nowhere, STOOL)


def test_a_step_with_a_photo_has_it_in_structured_data() -> None:
    steps = json.loads(page_of(STOOL).all("script")[0].text)["step"]
    pictured = [bool(step.photo) for step in STOOL.plan.steps]
    assert True in pictured
    for step, there in zip(steps, pictured, strict=True):
        assert ("image" in step) is there
        assert step.get("image", "https://example.org/plans/").startswith(
            "https://example.org/plans/"
        )


def test_structured_data_states_a_cost_when_every_price_is_known() -> None:
    one = replace(STOOL.copies[0], lines=STOOL.costs[:1])
    known = replace(STOOL, copies=(one,))
    data = json.loads(page_of(known).all("script")[0].text)
    assert data["estimatedCost"] == {
        "@type": "MonetaryAmount",
        "currency": "EUR",
        "value": "92.50",
    }


def test_steps_page_shows_each_step_with_its_pieces() -> None:
    page = Tree(steps_page(SITE, STOOL))
    text = chapter(page, "step-2")
    for mark in ("D1", "D2", "D3", "D4", "C"):
        assert mark in text
    assert "2 × Bolt M6 × 40, hexagon socket" in text
    assert "about 8 min" in text
    assert "Keep fingers out of the slot." in chapter(page, "step-1")
    assert "Harbour stool 1.2.0, 2 October 2026." in page.text_of("footer")


def test_a_plan_without_photos_shows_its_drawings() -> None:
    bare = replace(edition(), pictures={})
    files = replace(plan_files(edition()), photos={})
    around = replace(SITE, files={"harbour-stool": files})
    page = page_of(bare, around)
    assert page.all("img") == page.all("img")[:1]  # the trial's photo alone
    drawn = {each.attributes.get("aria-label", "") for each in page.all("svg")} - {""}
    assert len(drawn) == len(files.pictures)
