"""The public log and the maker's own page of everything."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import METRIC
from kerfolio.model.outcome import Feel, Grade, Mark, Outcome
from kerfolio.model.trial import Batch, Log, Trial
from kerfolio.pages.log import log_page, tallies
from kerfolio.reading.log_ids import with_ids
from kerfolio.trials.log import public
from tests.pages.invented import SECRET, TRIALS, site, whole_log, workshop
from tests.pages.markup import Element, Tree
from tests.trials.hidden_truth import COMPRESSION, invented_log, stock


def test_the_public_log_has_only_what_it_is_given() -> None:
    text = Tree(log_page(site())).text_of("main")
    assert "Slots in the new birch" in text
    assert SECRET.title not in text


def test_the_private_log_has_all_and_says_so() -> None:
    page = Tree(whole_log(workshop()))
    text = page.text_of("body")
    for trial in (*TRIALS, SECRET):
        assert trial.title in text
    assert "Private: for the maker’s own disk." in text
    robots = [e for e in page.all("meta") if e.attributes.get("name") == "robots"]
    assert [each.attributes["content"] for each in robots] == ["noindex, nofollow"]
    assert [e for e in page.all("link") if e.attributes["rel"] == "stylesheet"] == []


def test_trials_stand_newest_first() -> None:
    days = [each.attributes["datetime"] for each in Tree(whole_log(workshop())).all("time")]
    assert days == ["2026-09-30", "2026-09-28", "2026-09-01"]


def _addressed(*trials: Trial) -> tuple[Trial, ...]:
    return with_ids(Log(trials=tuple(replace(each, id="") for each in trials))).trials


def test_of_one_day_the_last_is_first_in_public_too() -> None:
    first, second = (replace(TRIALS[0], title=title) for title in ("In the morning", "At noon"))
    page = Tree(log_page(replace(site(), trials=public(_addressed(first, second)))))
    places = [each.attributes["id"] for each in page.all("li") if "id" in each.attributes]
    day = first.date.isoformat()
    assert places == [f"{day}-at-noon", f"{day}-in-the-morning"]


def test_of_one_day_the_last_is_first_and_each_has_an_address_that_stays() -> None:
    first, second = (replace(TRIALS[0], title=title) for title in ("Kante, längs", "Again"))
    found = replace(workshop(), trials=_addressed(first, second, first, second))
    page = Tree(whole_log(found))
    day = first.date.isoformat()
    places = [each.attributes["id"] for each in page.all("li") if "id" in each.attributes]
    assert places == [
        f"{day}-again--2",
        f"{day}-kante-laengs--2",
        f"{day}-again",
        f"{day}-kante-laengs",
    ]
    assert f"#{day}-again--2" in page.values("href")
    later = Tree(whole_log(replace(found, trials=_addressed(first, second, first, second, first))))
    assert set(places) < {each.attributes.get("id") for each in later.all("li")}


def test_the_log_speaks_the_language_of_its_readers_and_sets_their_signs() -> None:
    found = workshop()
    fuzzy = Outcome(whole=Grade.NEARLY_CLEAN, marks=(Mark.FUZZ,))
    trial = replace(TRIALS[0], outcome=fuzzy, title='The "rail"')
    german = replace(found, identity=replace(found.identity, language="de"), trials=(trial,))
    text = Tree(whole_log(german)).text_of("main")
    assert "Fast sauber: Flaum" in text
    assert "Das ganze Logbuch" in text
    assert "The „rail“" in text


def test_photos_of_the_private_log_stay_in_the_log_folder() -> None:
    found = workshop()
    assert [e.attributes["src"] for e in Tree(whole_log(found)).all("img")] == [
        "../../../log/edge.jpg"
    ]
    photo = TRIALS[0].photo
    assert photo is not None
    odd = replace(TRIALS[0], photo=replace(photo, file='a "b".jpg'))
    page = Tree(whole_log(replace(found, trials=(odd,)), log_folder="here/"))
    assert page.all("img")[0].attributes["src"] == "here/a%20%22b%22.jpg"


def test_outcomes_are_counted_for_sheet_and_cutter_failures_too() -> None:
    stock = workshop().stock
    (row,) = tallies((*TRIALS, SECRET), stock, METRIC)
    assert (row.sheet, row.cutter) == ("Birch plywood 18 mm", "Compression cutter 6 mm")
    assert row.count == 2
    assert row.outcomes == (("Clean", 1), ("To mend", 1))


def test_an_empty_log_is_a_page_still() -> None:
    page = Tree(whole_log(replace(workshop(), trials=())))
    assert page.faults == []
    assert "Nothing is logged yet." in page.text_of("main")


def test_the_private_log_answers_with_charts_and_a_table_behind_each() -> None:
    shop = workshop()
    log = tuple(each for each in invented_log(3, 0.1) if str(each.cutter) == COMPRESSION)
    fits = tuple(
        Trial(date=day, fit=fit, went=went, id=f"fit-{went.value}")
        for day, fit, went in zip([each.date for each in log], (0.05, 0.1, 0.2), Feel, strict=False)
    )
    sheet = replace(log[0], id="batch", batch=Batch(name="May", readings=(18.1, 18.3)))
    found = replace(shop, stock=stock(), trials=(*log, *fits, sheet))
    page = Tree(whole_log(found))
    text = page.text_of("main")
    assert "Best known settings" in text
    assert "The next trial" in text
    charts = [e for e in page.all("figure") if "chart" in e.attributes.get("class", "")]
    names = [e.attributes["aria-label"] for each in charts for e in _within(each, "svg")]
    assert {each.partition(":")[0] for each in names} == {
        *("Edge over chip load", "Edge over first pass", "Fit over clearance"),
        "Thickness by batch",
    }
    places = {e.attributes["id"] for e in page.all("li") if "id" in e.attributes}
    for each in charts:
        links = [e.attributes["href"].removeprefix("#") for e in _within(each, "a")]
        assert links
        assert set(links) <= places, "each row leads to its entry"


def _within(element: Element, tag: str) -> list[Element]:
    return [
        found
        for each in element.children
        for found in ([each] if each.tag == tag else _within(each, tag))
    ]
