"""A document of every kind of block, as a page sets it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from markupsafe import Markup

from kerfolio.basis.reader import METRIC
from kerfolio.document.blocks import (
    Asked,
    Block,
    Caution,
    Cell,
    Column,
    Dated,
    Fact,
    Facts,
    Figure,
    Figures,
    Folded,
    Heading,
    Kind,
    Listing,
    Live,
    Manner,
    Paragraph,
    Row,
    Size,
    Step,
    Table,
    Told,
)
from kerfolio.document.chapter import BUILDERS, Chapter, Opening, Soon, Who
from kerfolio.document.picture import Shot, still
from kerfolio.document.words import Both, File, Mark, Reference, typed
from kerfolio.drawing.vocabulary import Drawing, Label
from kerfolio.model.plan import Photo
from kerfolio.model.prose import Span
from kerfolio.model.workshop import Identity
from kerfolio.pages.document import Setting, least_width
from kerfolio.pages.frame import lone_frame
from kerfolio.pages.page_script import page_script
from kerfolio.pages.paths import paths_of
from kerfolio.pages.photos import ShownPhoto
from kerfolio.pages.signed import signs
from kerfolio.pages.spoken import spoken
from kerfolio.pages.theme import _environment
from tests.outside import nu_messages
from tests.pages.axe import axe_finds, lettering_of_a_drawing
from tests.pages.invented import inline, prose
from tests.pages.markup import Tree
from tests.pages.test_hostile import EVIL, poisoned

PIXEL = "data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA="


def drawn(width: float, letters: float, title: str) -> Drawing:
    """Return a drawing with one word of letters so high, both in mm."""
    word = Label(text="360", at=(width / 2, 20.0), height=letters)
    return Drawing(box=(0.0, 0.0, width, 60.0), items=(word,), title=title)


FINE, COARSE = drawn(400.0, 5.0, "A rail"), drawn(100.0, 5.0, "A peg")
PHOTO = Photo(file="peg.jpg", alt="A peg in its hole")

PARTS = Table(
    title="Parts of the rack",
    columns=(
        Column(head="Mark", kind=Kind.MARK),
        Column(head="Part"),
        Column(head="Overall size"),
        Column(head="Each", kind=Kind.NUMBER, spare=True),
    ),
    rows=(
        Row(
            cells=(
                (Mark(text="A1"), Mark(text="A2")),
                Cell(words="Rail", below=("grain along the width",)),
                (Both(first="360 × 40 mm", other="14 3/16 × 1 9/16 in"),),
                "0.4 kg",
            )
        ),
    ),
    foot=Row(cells=("", "In all", "", "0.8 kg"), chief=True),
)

STEP = Step(
    number=1,
    title="Slide in the rail",
    begins="The rack",
    need=(Fact(head="Pieces", lines=(((Mark(text="A1"), " Rail"),),)),),
    figures=(Figure(picture=still("step-1", FINE)), Figure(picture=Shot(photo=PHOTO))),
    text=prose("Until it clicks."),
    by_hand="A knife will do.",
    caution="Mind your fingers.",
)

EVERY: tuple[Block, ...] = (
    Paragraph(words="Read this.", manner=Manner.LEAD),
    Paragraph(words=("See ", Reference(text="the saw", chapter="saw"), "."), loud=True),
    Paragraph(words=(Reference(text="elsewhere", chapter="nowhere"), ".")),
    Paragraph(words=(File(name="booklet-a4.pdf", text="the booklet"), " ", File(name="cut/18mm"))),
    Told(prose=prose("In the maker’s words.")),
    Heading(words="Sums", id="sums"),
    Listing(entries=("one", (Span(text="two", strong=True), " ", typed("ab"))), ticked=True),
    Facts(facts=(Fact(head="Size", lines=(((Both(first="40 mm", other="1 9/16 in"),), "tall"),)),)),
    PARTS,
    Table(title="Nothing", columns=(Column(head="A"),), rows=()),
    Figures(
        figures=(
            Figure(picture=still("fine", FINE), caption="A rail.", size=Size.HALF),
            Figure(picture=still("coarse", COARSE), alt="A peg, upright", size=Size.HALF),
        )
    ),
    Figure(picture=still("missing", FINE), caption="Not here."),
    Caution(head="Sharp", lines=("Cuts.", "Saws.")),
    STEP,
    Asked(question="Will it hold?", answer=prose("Yes.")),
    Dated(day="1 May 2026", iso="2026-05-01", head="1.1.0", flag="Correction", words="Wider."),
    Folded(summary="What this rests on", blocks=(Live(name="model"),)),
    Live(name="fitting", blocks=(Paragraph(words="Not on this page."),)),
)

CHAPTERS = (
    Chapter(id="all", title="Everything", blocks=EVERY),
    Chapter(
        id="saw",
        title="With a saw",
        blocks=(Paragraph(words="Rip it."), Figure(picture=still("fine", FINE), alt="Cuts")),
        who=frozenset({Who.SAW}),
    ),
    Chapter(id="tape", title="With tape", blocks=(Paragraph(words="Stick it."),), who=BUILDERS),
    Chapter(id="sag", title="Sag", blocks=(Paragraph(words="2 mm."),), soon=Soon.BACKGROUND),
)
OPENING = Opening(
    title="Rack",
    summary="It holds.",
    picture=still("coarse", COARSE),
    alt="The rack from the left",
    facts=(Fact(head="Cost", lines=(("12 EUR",),)),),
    notices=("Files before 1.1.0 were wrong.",),
)
WAYS = paths_of(CHAPTERS, METRIC)


def show(photo: Photo | None) -> ShownPhoto | None:
    return ShownPhoto(src=PIXEL, alt=photo.alt) if photo else None


def setting(chapters: tuple[Chapter, ...] = CHAPTERS) -> Setting:
    drawings = {"fine": FINE, "coarse": COARSE, "step-1": FINE}
    pictures = {name: Markup(inline(name, each)) for name, each in drawings.items()}
    return Setting(
        chapters=chapters,
        pictures=pictures,
        show=show,
        unit="mm",
        language="en",
        files={"booklet-a4.pdf": "downloads/rack-booklet-a4.pdf"},
        steps="steps/index.html",
    )


PAGE = """\
{% extends "base.html" %}{% import "document.html" as doc with context %}{% block main %}
{{ doc.opening(opening, page) }}
<div class="with-list">{{ doc.chapter_list(page, [("path", "Choose your path")]) }}
<div class="chapters">{{ doc.paths_chapter(paths, page, live, "Look.") }}
{% for each in page.chapters | beside_paths %}
{{ doc.chapter(each, page, live, brief=brief) }}
{% endfor %}
</div></div>{% endblock %}
"""


def page_of(page: Setting, live: Mapping[str, Markup] | None = None, brief: bool = False) -> str:
    """Return a page of one file with a document on it."""
    script = page_script(METRIC)
    frame = lone_frame(Identity(title="A bench", maker="Ada"), "Rack", "A rack", scripts=[script])
    return (
        _environment()
        .from_string(PAGE)
        .render(
            reader=METRIC,
            say=partial(spoken, METRIC),
            frame=replace(frame, script=script),
            page=page,
            live=live or {},
            opening=OPENING,
            paths=WAYS,
            brief=brief,
        )
    )


TEXT = page_of(setting())
TREE = Tree(TEXT)


DRAWN = [each.attributes for each in TREE.all("svg") if "aria-label" in each.attributes]


def within(tag: str, **attributes: str) -> list[str]:
    """Return the text of each element of a tag that has these attributes."""
    found = [each for each in TREE.all(tag) if attributes.items() <= each.attributes.items()]
    return [" ".join(each.text.split()) for each in found]


def test_every_kind_of_block_is_told() -> None:
    assert TREE.faults == []
    text = " ".join(TREE.text_of("main").split())
    for words in (
        *("Read this.", "In the maker’s words.", "Sums", "one", "40 mm (1 9/16 in)", "Rail"),
        *("grain along the width", "In all", "A rail.", "Cuts.", "Saws.", "Slide in the rail"),
        *("Until it clicks.", "A knife will do.", "Mind your fingers.", "Will it hold? Yes."),
        *("1 May 2026", "Correction", "Wider.", "What this rests on", "Not on this page."),
        *("It holds.", "12 EUR", "Files before 1.1.0 were wrong.", "Rip it."),
    ):
        assert words in text
    assert "Nothing" not in text, "a table without rows is not shown"
    assert "Not here." not in text, "nor is a figure without a picture"


def test_ways_lead_where_they_can() -> None:
    links = [(each.attributes["href"], each.text) for each in TREE.all("a")]
    assert ("#saw", "the saw") in links
    assert ("downloads/rack-booklet-a4.pdf", "the booklet") in links
    assert not [href for href, _ in links if href == "#nowhere"]
    assert within("code") == ["cut/18mm", "ab"]


def test_pictures_say_what_they_show_and_headings_are_not_said_twice() -> None:
    names = [each["aria-label"] for each in DRAWN]
    assert names == ["The rack from the left", "Cuts", "A rail", "A peg, upright", "A rail"]
    assert [each.attributes["alt"] for each in TREE.all("img")] == ["A peg in its hole"]


def test_a_step_shows_its_drawing_and_its_photo() -> None:
    step = next(each for each in TREE.all("section") if each.attributes.get("id") == "step-1")
    place = TREE.elements.index(step)
    inside = TREE.elements[place : place + 40]
    assert [each.tag for each in inside if each.tag in ("svg", "img")] == ["svg", "img"]


def test_letters_decide_how_narrow_a_drawing_may_be() -> None:
    """5 mm of 400 mm are 11 px at 880 px, of 100 mm at 220 px, which every phone has.

    Where there is room they are drawn 1.3 times as large.
    """
    assert least_width(inline("x", FINE)) == pytest.approx(880)
    assert least_width(inline("x", COARSE)) == pytest.approx(220)
    assert [each["width"] for each in DRAWN] == ["286", "1144", "1144", "286", "1144"]


def test_cells_are_labelled_by_their_heads() -> None:
    table = next(each for each in TREE.all("table"))
    cells = [each.attributes.get("data-label") for each in TREE.all("td")][:4]
    assert cells == ["Mark", "Part", "Overall size", "Each"]
    assert table.attributes["class"] == "told stacks"
    assert within("caption") == ["Parts of the rack"]
    assert within("th", scope="col") == ["Mark", "Part", "Overall size", "Each"]


def test_a_path_s_chapters_and_the_background_are_closed_at_first() -> None:
    found = [each.attributes for each in TREE.all("details")]
    assert {"class": "chapter way", "data-who": "hand router saw shop"} in found
    assert {"class": "chapter background"} in found
    assert not [each for each in found if "open" in each]


def test_brief_steps_lead_to_their_page() -> None:
    brief = Tree(page_of(setting(), brief=True))
    assert "steps/index.html#step-1" in brief.values("href")
    assert "Until it clicks." not in brief.text_of("main")


def test_what_only_a_screen_can_do_stands_in_its_place() -> None:
    found = Tree(page_of(setting(), {"model": Markup("<b>In 3-D</b>")})).text_of("main")
    assert "In 3-D" in found
    assert setting().live("model") == "all", "it is found within what is folded, too"
    assert setting().live("yard") == ""


def test_signs_are_those_of_print_but_in_what_is_typed() -> None:
    page = setting()
    line = ('A "rail" of 2 x 4 isn\'t ', Mark(text="A1"), " ", typed('say "2 x 4"'))
    assert page.words(line) == (
        'A “rail” of 2 × 4 isn’t <b class="mark">A1</b> <code>say &#34;2 x 4&#34;</code>'
    )
    assert signs(prose('Say "rail".', "It isn't."), METRIC).plain() == "Say “rail”. It isn’t."
    assert replace(page, language="de").words('"Leiste"') == "„Leiste“"


def test_hostile_words_stay_words() -> None:
    evil = poisoned(CHAPTERS[0])
    found = Tree(page_of(setting((replace(evil, id="all"),))))
    assert found.faults == []
    assert len(found.all("script")) == 1
    assert not [each for each in found.elements if each.attributes.keys() & {"onerror", "style"}]
    assert EVIL[:20] in found.text_of("main")


# ---------------------------------------------------------------------- in a browser


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("document") / "index.html"
    found.write_text(TEXT, "utf-8")
    return found


def opened(browser: Any, page: Path, width: int, **options: Any) -> Any:
    context = browser.new_context(viewport={"width": width, "height": 844}, **options)
    found = context.new_page()
    found.goto(page.as_uri())
    return found


OPEN_ALL = """() => document.querySelectorAll('.chapters details').forEach(each => {
    each.removeAttribute('name');
    each.open = true;
})"""
"""Opens ways too, of which a reader opens one at a time."""

SPACED = """\
* { line-height: 1.5 !important; letter-spacing: 0.12em !important; }
* { word-spacing: 0.16em !important; }
p { margin-block-end: 2em !important; }
"""
"""Text spacing as WCAG 2.2, 1.4.12, asks a page to bear."""


@pytest.mark.browser
@pytest.mark.parametrize("spaced", [False, True])
def test_nothing_is_wider_than_a_phone(browser: Any, written: Path, spaced: bool) -> None:
    page = opened(browser, written, 320, bypass_csp=True)
    page.evaluate(OPEN_ALL)
    if spaced:
        page.add_style_tag(content=SPACED)
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 320
    page.context.close()


@pytest.mark.browser
@pytest.mark.parametrize("width", [320, 390, 1280])
def test_letters_of_drawings_are_never_under_eleven_px(
    browser: Any, written: Path, width: int
) -> None:
    page = opened(browser, written, width)
    page.evaluate(OPEN_ALL)
    sizes = page.evaluate(
        "() => [...document.querySelectorAll('main svg text')].map("
        "t => parseFloat(t.getAttribute('font-size')) * t.getScreenCTM().a)"
    )
    assert len(sizes) == 5
    assert min(sizes) >= 10.99
    sliding = page.evaluate(
        "() => [...document.querySelectorAll('.pan')].map(p => p.scrollWidth > p.clientWidth + 1)"
    )
    cues = page.evaluate(
        "() => [...document.querySelectorAll('.cue')].map(c => c.getClientRects().length > 0)"
    )
    assert cues == sliding, "what slides says so"
    assert all(cues) or width == 1280
    page.context.close()


@pytest.mark.browser
def test_one_unit_is_shown_and_the_other_at_a_press(browser: Any, written: Path) -> None:
    page = opened(browser, written, 390)
    size = page.locator(".facts .both").first
    assert size.inner_text() == "40 mm"
    page.get_by_role("button", name="inches").click()
    assert size.inner_text() == "1 9/16 in"
    page.reload()
    page.wait_for_function("() => document.documentElement.dataset.unit === 'in'")
    assert size.inner_text() == "1 9/16 in", "it is remembered"
    page.context.close()
    silent = opened(browser, written, 390, java_script_enabled=False)
    assert silent.locator(".facts .both").first.inner_text() == "40 mm (1 9/16 in)"
    assert silent.get_by_role("button", name="inches").count() == 0
    silent.context.close()


@pytest.mark.browser
def test_a_path_opens_its_chapters_and_is_remembered(browser: Any, written: Path) -> None:
    page = opened(browser, written, 390)
    rip, stick = page.get_by_text("Rip it."), page.get_by_text("Stick it.")
    assert not rip.is_visible()
    assert not stick.is_visible()
    page.locator("summary", has_text="I have a table saw").click()
    assert rip.is_visible()
    assert stick.is_visible(), "what ways share opens, too"
    page.reload()
    assert rip.is_visible()
    page.locator("summary", has_text="I only want to look").click()
    assert not rip.is_visible()
    assert not stick.is_visible()
    page.context.close()
    silent = opened(browser, written, 390, java_script_enabled=False)
    silent.locator("summary", has_text="I have a table saw").click()
    assert silent.get_by_text("Rip it.").is_visible()
    silent.locator("details[open] .own a").click()
    assert silent.get_by_text("Stick it.").is_visible(), "a link opens what it leads to"
    silent.context.close()


@pytest.mark.browser
def test_a_drawing_opens_large_and_closes_by_keyboard(browser: Any, written: Path) -> None:
    page = opened(browser, written, 390)
    opener = page.get_by_role("button", name="Open large").first
    opener.focus()
    page.keyboard.press("Enter")
    large = page.locator("dialog.large svg")
    before = large.bounding_box()["width"]
    page.keyboard.press("+")
    assert large.bounding_box()["width"] > before * 1.4
    page.keyboard.press("Escape")
    page.locator("dialog").wait_for(state="detached")
    assert opener.evaluate("node => node === document.activeElement")
    page.context.close()


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize(("width", "scheme"), [(320, "light"), (390, "dark"), (1280, "light")])
def test_axe_finds_nothing(browser: Any, written: Path, width: int, scheme: str) -> None:
    page = opened(browser, written, width, color_scheme=scheme, bypass_csp=True)
    page.evaluate(OPEN_ALL)
    assert axe_finds(page, but=lettering_of_a_drawing) == []
    page.context.close()


@pytest.mark.java
@pytest.mark.node
def test_the_nu_checker_finds_nothing(written: Path) -> None:
    assert [f"{each['message']}: {each.get('extract', '')}" for each in nu_messages(written)] == []
