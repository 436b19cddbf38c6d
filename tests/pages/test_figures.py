"""What a plan's page says of cutting time, several copies, load and sag."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kerfolio.basis.figures import minutes_text
from kerfolio.basis.reader import METRIC
from kerfolio.basis.saying import say
from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.in_use import used_of
from kerfolio.edition.loads import loads_of
from kerfolio.pages.plan import plan_page
from kerfolio.pages.start import start_here
from kerfolio.shop.assumption import Assumption
from kerfolio.shop.cost import CopiesCost
from kerfolio.shop.rows import CostRow
from kerfolio.shop.span import RACKING, SPAN_CAUTIONS
from tests.edition.carrying import carrying
from tests.edition.used import sat
from tests.pages.invented import CONTENTS, plan_files, site
from tests.pages.markup import Element, Tree


def text_page(found: Edition) -> str:
    around = replace(site(), editions=(found,), files={found.name: plan_files(found)})
    return plan_page(around, found)


def page_of(found: Edition) -> Tree:
    return Tree(text_page(found))


PAGE = page_of(carrying())


def chapter(name: str, page: Tree = PAGE) -> Element:
    (found,) = [each for each in page.all("section") if each.attributes.get("id") == name]
    return found


def text_of(element: Element) -> str:
    return " ".join(element.text.split())


def hidden(element: Element) -> str:
    """Return what lies in its details, closed at first."""
    inner = [hidden(each) for each in element.children if each.tag != "details"]
    return " ".join(
        [text_of(each) for each in element.children if each.tag == "details"] + inner
    ).strip()


def test_the_page_is_sound() -> None:
    assert PAGE.faults == []


def test_the_chapters_stand_among_the_others() -> None:
    ids = [each.attributes["id"] for each in PAGE.all("section")]
    wanted = ["sheets", "steps", "costs", "cutting", "loads"]
    assert [each for each in ids if each in wanted] == wanted


def test_each_sheet_has_its_time_and_the_total_says_of_how_many() -> None:
    words, text = cutting_of(carrying()), text_of(chapter("cutting"))
    assert words is not None
    minutes = minutes_text(words.minutes)
    assert f"{words.metres:.1f} {minutes} 2, " in text
    assert "no cut settings are stated for it – –" in text
    assert f"In all, 1 of 2 sheets {words.metres:.1f} {minutes}" in text
    assert words.remark in text


def test_assumptions_are_folded_away_with_their_sources() -> None:
    words, folded = cutting_of(carrying()), hidden(chapter("cutting"))
    assert words is not None
    for each in words.assumptions:
        assert " ".join(each.value.split()) in folded
    assert "common practice, no single source" in folded


def test_the_time_to_cut_is_told_first_and_rests_on_a_chapter() -> None:
    words = cutting_of(carrying())
    assert words is not None
    facts = text_of(PAGE.all("dl")[0])
    assert f"about {minutes_text(words.minutes)} to cut" in facts
    assert "1 of 2 sheets, on a small-shop router" in facts
    assert "#cutting" in PAGE.values("href")


def test_the_first_page_of_a_bundle_states_the_time_without_a_dead_link() -> None:
    page = Tree(start_here(carrying(), CONTENTS, {}))
    assert "on a small-shop router" in text_of(page.all("dl")[0])
    assert "#cutting-time" not in page.values("href")


def test_several_copies_have_a_row_each() -> None:
    text = text_of(chapter("costs"))
    for each in carrying().copies:
        assert f"{each.copies} {each.sheets} {each.total:.2f} {each.each:.2f}" in text


def test_copies_without_any_price_have_no_table() -> None:
    free = CostRow(what="Birch plywood", count=1, price=None, total=None)
    copies = tuple(CopiesCost(copies=n, sheets=n, lines=(free,)) for n in (1, 2))
    bare = page_of(replace(carrying(), copies=copies))
    assert "costs" not in [each.attributes["id"] for each in bare.all("section")]
    paid = replace(free, price=Decimal(2), total=Decimal(2))
    copies = tuple(replace(each, lines=(paid,)) for each in copies)
    assert "Copies" in text_of(chapter("costs", page_of(replace(carrying(), copies=copies))))


def test_cautions_and_racking_are_never_folded_away() -> None:
    found = chapter("loads")
    text, folded = text_of(found), hidden(found)
    said = [say(METRIC, each) for each in (*SPAN_CAUTIONS, RACKING)]
    for words in (*said, "Estimates, no ratings"):
        assert words in text
        assert words not in folded


def test_every_span_shows_what_was_asked_its_figures_and_its_bounds() -> None:
    loads, text = loads_of(carrying()), text_of(chapter("loads"))
    assert loads is not None
    for each in loads.spans:
        assert f"{each.title} {each.asked}" in text
        for figure in each.figures:
            assert f"{figure.head} {figure.value}" in text
        if each.warning:
            assert f"Mind {each.warning}" in text
    for bound in loads.spans[0].bounds:
        assert f"{bound.held} {bound.first_day} {bound.after_years}" in text
    folded = hidden(chapter("loads"))
    for fact in loads.spans[0].assumptions:
        assert fact.label in folded


def test_a_thing_in_use_has_a_chapter_with_its_cautions() -> None:
    words, found = used_of(sat()), chapter("in-use", page_of(sat()))
    assert words is not None
    (thing,) = words.things
    text = text_of(found)
    for each in (thing.sentence, *words.cautions, *(f.value for f in thing.figures)):
        assert each in text
        assert each not in hidden(found)
    assert all(each.label in hidden(found) for each in words.assumptions)
    assert "in-use" not in [each.attributes["id"] for each in PAGE.all("section")]


def test_no_load_is_called_a_rating() -> None:
    text = text_of(chapter("loads")).lower()
    assert text.count("rating") == text.count("no rating")


def test_a_plan_without_settings_and_spans_has_neither_chapter() -> None:
    bare = page_of(replace(carrying(), times=(), spans=()))
    ids = [each.attributes["id"] for each in bare.all("section")]
    assert not {"cutting", "loads"} & set(ids)
    assert not {"#cutting", "#loads"} & set(bare.values("href"))


def test_what_a_maker_wrote_stays_text() -> None:
    evil = "<script>alert(1)</script>"
    fact = Assumption(label=evil, value=evil, source=evil)
    spans = (replace(carrying().spans[0], carrier=evil, assumptions=(fact,)),)
    times = tuple(replace(each, assumptions=(fact,)) for each in carrying().times)
    text = text_page(replace(carrying(), spans=spans, times=times))
    assert evil not in text
    assert text.count("&lt;script&gt;alert(1)") == 7
