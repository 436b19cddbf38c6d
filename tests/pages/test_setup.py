"""The page of setup sheets: the facts of the paper ones, for open plans alone."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import METRIC
from kerfolio.edition.setup import setup_cautions, setup_sheets
from kerfolio.edition.setup_art import setup_arts
from kerfolio.edition.setup_coupon import setup_coupons
from kerfolio.edition.setup_pictures import art_picture, coupon_picture, setup_pictures
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.setup import has_setup, setup_page
from kerfolio.pages.site import Download, PlanFiles, Site
from tests.pages.invented import inline, site
from tests.pages.markup import Tree
from tests.paper.sample_editions import NAMES, sample, workshop


def with_pictures(found: Site) -> Site:
    """Return the invented site with the setup sheets' pictures where plans have pictures."""
    files = {}
    for edition in found.editions:
        written = found.files[edition.name]
        drawn = {name: inline(name, each) for name, each in setup_pictures(edition).items()}
        pictures = {**written.pictures, **drawn} if written.pictures else {}
        files[edition.name] = replace(written, pictures=pictures)
    return replace(found, files=files)


def sample_site() -> Site:
    """Return the sample's plans, every one as if it were open."""
    editions = tuple(sample(name) for name in NAMES)
    files = {
        each.name: PlanFiles(
            download=Download(name="a.zip", size=1, sha256="", href="downloads/a.zip"),
            pictures={name: inline(name, d) for name, d in setup_pictures(each).items()},
        )
        for each in editions
    }
    return Site(identity=workshop().identity, editions=editions, files=files)


def words(text: str) -> str:
    return " ".join(Tree(text).all("main")[0].text.split())


def test_an_open_plan_has_the_page_and_a_link_to_it() -> None:
    found = with_pictures(site())
    texts = site_texts(found)
    open_plan, locked = (each.name for each in found.editions)
    assert f"plans/{open_plan}/setup/index.html" in texts
    assert 'href="setup/index.html"' in texts[f"plans/{open_plan}/index.html"]
    assert f"plans/{open_plan}/setup/" in texts["sitemap.xml"]
    assert f"plans/{locked}/setup/index.html" not in texts
    assert 'href="setup/' not in texts[f"plans/{locked}/index.html"]


def test_without_its_pictures_there_is_no_page() -> None:
    found = site()
    assert not any(has_setup(found, each) for each in found.editions)


def test_the_page_tells_what_the_paper_tells() -> None:
    found = sample_site()
    for edition in found.editions:
        text = setup_page(found, edition)
        assert Tree(text).faults == []
        page = words(text)
        for sheet in setup_sheets(edition):
            assert f"Sheet {sheet.layout.number} of {len(edition.layout.sheets)}" in page
            told = [
                sheet.zero,
                sheet.zero_z,
                sheet.below,
                *sheet.depth,
                *sheet.clamps,
                *sheet.by_hand,
            ]
            for run in sheet.runs:
                told += [run.cutter, run.figures, *run.details]
                told += [
                    cell for work in run.works for cell in (work.what, work.depth, work.passes)
                ]
            assert [each for each in told if each not in page] == []
        for coupon in setup_coupons(edition):
            assert [each for each in (*coupon.steps, coupon.title) if each not in page] == []
        for art in setup_arts(edition):
            assert [each for each in (*art.steps, art.size, art.depth) if each not in page] == []
            assert f"cut/engravings/{art.art.file}" in page
        assert all(each in page for each in setup_cautions(METRIC))


def test_every_sheet_and_every_engraving_has_its_picture() -> None:
    found = sample_site()
    for edition in found.editions:
        drawn = setup_pictures(edition)
        sheets = [f"setup-{each.number}" for each in edition.layout.sheets]
        coupons = [coupon_picture(each.coupon) for each in setup_coupons(edition)]
        arts = [art_picture(each.art) for each in setup_arts(edition)]
        assert list(drawn) == [*sheets, *coupons, *arts]
        text = setup_page(found, edition)
        assert text.count("<svg") - text.count("swatch") == len(drawn) + 1  # and the mark


def test_no_one_needs_to_see_the_colours_of_cuts() -> None:
    """WCAG 2.2, success criterion 1.4.1: lines of each operation are broken in a way of its own."""
    found = sample_site()
    page = Tree(setup_page(found, next(e for e in found.editions if e.name == "harbour-stool")))
    broken: dict[str, set[tuple[float, ...]]] = {}
    for each in page.all("path"):
        for name in each.attributes.get("class", "").split():
            operation = name.removeprefix("k-line-")
            if operation in ("engrave", "pocket", "hole", "opening", "outline"):
                dash = tuple(map(float, each.attributes.get("stroke-dasharray", "").split()))
                broken.setdefault(operation, set()).add(dash)
    broken["engrave"].discard(())  # of the art by itself, with nothing beside it
    assert len(broken) > 3
    assert all(len(ways) == 1 for ways in broken.values()), broken
    assert len(set.union(*broken.values())) == len(broken)
