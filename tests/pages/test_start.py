"""The bundle's first page."""

from __future__ import annotations

import re
from dataclasses import replace

from kerfolio.drawing.layer import layer_for
from kerfolio.edition.layers import layers_explained
from kerfolio.pages.start import start_here
from tests.pages.invented import CONTENTS, edition, pictures
from tests.pages.markup import Tree
from tests.pages.test_plan import chapter

STOOL = edition()
PAGE = Tree(start_here(STOOL, CONTENTS, pictures(STOOL)))


def test_it_needs_no_other_file_to_be_read() -> None:
    assert [each for each in PAGE.all("link") if each.attributes["rel"] == "stylesheet"] == []
    assert not [each for each in PAGE.all("script") if "src" in each.attributes]
    fetched = re.findall(r"url\(\"?([a-z]*)", PAGE.all("style")[0].text)
    assert set(fetched) == {"data"}, "its fonts are in it"
    sources = [each.attributes["src"] for each in PAGE.all("img")]
    assert len(sources) == 2
    assert all(each.startswith("data:image/jpeg;base64,") for each in sources)


def test_it_says_which_file_whom_it_serves_and_what_thickness() -> None:
    ways = chapter(PAGE, "path")
    for reader in ("CNC router", "a drill, a jigsaw and paper", "table saw", "A shop cuts for me"):
        assert reader in ways
    assert "cut/17.8mm 17.8 mm (0.701 in)" in chapter(PAGE, "measuring")
    assert "3 17.8 mm (0.701 in) 17.6 mm (0.693 in) cut/17.6mm" in chapter(PAGE, "coupon")


def test_every_layer_of_the_cut_files_is_explained() -> None:
    text = chapter(PAGE, "router")
    named = {layer.name for layer in layers_explained(STOOL)}
    cut = {layer_for(cut).name for part in STOOL.settled.parts for cut in part.cuts}
    assert cut < named
    assert {"pocket_6.0mm", "opening_through", "outline_through", "check-square"} <= named
    assert (
        "Lines are the finished edge: engravings on them; pockets, holes and openings inside them; "
        "outlines outside them, by half the cutter’s width, 3 mm (0.118 in)."
    ) in text
    for layer in layers_explained(STOOL):
        assert f"{layer.name} {layer.purpose}" in text
    names = [layer.name for layer in layers_explained(STOOL)]
    assert names.index("opening_through") < names.index("outline_through")


def test_what_is_printed_is_linked_where_it_is_there() -> None:
    links = PAGE.values("href")
    assert "layout/saw-a4.pdf" in links
    assert {"setup/setup-17.8mm-a4.pdf", "setup/setup-17.8mm-letter.pdf"} <= set(links)
    assert "It is all in the booklet, in order, on A4 or on US Letter." in chapter(PAGE, "path")
    letter = replace(STOOL, identity=replace(STOOL.identity, paper="letter"))
    turned = Tree(start_here(letter, CONTENTS, {}))
    assert "in order, on US Letter or on A4." in chapter(turned, "path")
    without = Tree(start_here(STOOL, [each for each in CONTENTS if "saw" not in each], {}))
    assert "layout/saw-a4.pdf" not in without.values("href")


def test_what_is_read_first_is_apart_from_what_programs_read() -> None:
    text = chapter(PAGE, "files")
    order = ("Read these first", "booklet-a4.pdf", "LICENCE.txt", "For checking", "SHA256SUMS")
    places = [text.index(each) for each in order]
    assert places == sorted(places)


def test_files_are_gathered_by_thickness_the_coupon_first() -> None:
    text = chapter(PAGE, "files")
    order = ["cut/fit-coupon", "cut/17.6mm", "cut/17.8mm", "cut/18.0mm"]
    places = [text.index(name) for name in order]
    assert places == sorted(places)


def test_a_file_that_is_not_there_is_not_linked() -> None:
    few = Tree(start_here(STOOL, ("start-here.html", "LICENCE.txt"), {}))
    links = [each for each in few.values("href") if ":" not in each and not each.startswith("#")]
    assert set(links) == {"LICENCE.txt"}


def test_names_with_signs_are_quoted_in_links() -> None:
    odd = Tree(start_here(STOOL, ("lists/a b#c?.csv",), {}))
    assert "lists/a%20b%23c%3F.csv" in odd.values("href")


def test_what_stands_in_for_the_machine_is_told_with_the_step() -> None:
    assert "By hand: File the slots until a tab goes in." in PAGE.text_of("main")


def test_cautions_licence_release_and_the_way_to_the_newest() -> None:
    text = PAGE.text_of("main")
    assert "licensed practice come first" in text
    assert "The seat is not to be stood on." in text
    assert "You may use, share and change these files" in chapter(PAGE, "about")
    assert f"Write to Ida Fernhill: {STOOL.identity.contact}" in chapter(PAGE, "about")
    assert "Harbour stool 1.2.0, 2 October 2026." in PAGE.text_of("footer")
    assert "https://example.org/plans/harbour-stool/" in PAGE.values("href")


def test_without_a_base_address_nothing_points_to_a_site() -> None:
    alone = replace(STOOL, identity=replace(STOOL.identity, base_url=""))
    assert "newest release" not in Tree(start_here(alone, CONTENTS, {})).text_of("main")
