"""What everybody may see of a supporters' plan: by default what one gets, the rest by ``show:``."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from kerfolio.edition.edition import Edition
from kerfolio.edition.public import public_of, shown_to_all
from kerfolio.model.showing import ALWAYS, SHOWABLE
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.site import Site
from tests.pages.invented import edition, plan_files, prose, site
from tests.plans import RACK, proved

LOCKED = RACK.replace("version: 1.0.0", "version: 1.0.0\naccess: supporters\nshow: [steps]")


@cache
def invented() -> Edition:
    """Return the invented stool as a plan for supporters, with a text of its own in everything."""
    found = edition()
    steps = tuple(
        replace(step, title=f"Step secret {n}", text=prose("A secret of the steps."))
        for n, step in enumerate(found.plan.steps)
    )
    plan = replace(found.plan, access="supporters", steps=steps)
    return replace(found, plan=plan, settled=replace(found.settled, plan=plan))


def texts(*show: str) -> str:
    """Return all pages of a site that has this plan alone, as one text."""
    whole = replace(invented(), plan=replace(invented().plan, show=show))
    seen = shown_to_all(whole)
    files = replace(plan_files(seen), pictures={})
    made: Site = replace(site(), editions=(seen,), files={seen.name: files}, trials=())
    return "\n".join(site_texts(made).values())


def test_by_default_pages_tell_what_one_gets_and_no_more() -> None:
    found = texts()
    page = found[found.index('<p class="kicker"><a href="../index.html">Plans') :]
    page = page[: page.index("</main>")]
    plan = invented().plan
    for told in (plan.title, plan.summary, "hands it to supporters", plan.releases[0].changed):
        assert told in found
    assert "secret" not in found
    for row in invented().parts:
        assert f"<td>{row.part}" not in found
    for head in ("Sheets", "Hardware", "Costs", "Parts", "Steps", "Video", "The idea"):
        assert f"<h2>{head}</h2>" not in page
    assert "steps/index.html" not in found
    assert '"@type": "HowToStep"' not in found


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("steps", "A secret of the steps."),
        ("sizes", "<h2>Parts</h2>"),
        ("hardware", "<h3>Hardware</h3>"),
        ("costs", "<h2>Costs</h2>"),
        ("story", "<h2>The idea</h2>"),
        ("questions", None),
        ("video", "Watch it being built"),
    ],
)
def test_each_word_shows_what_it_says_and_nothing_else(word: str, told: str | None) -> None:
    told = told or invented().plan.questions[0].question
    assert told in texts(word)
    assert told not in texts(*(each for each in SHOWABLE if each != word))


def test_photos_other_than_the_cover_are_not_even_written() -> None:
    found = shown_to_all(invented())
    cover = found.plan.photos
    assert len(cover) == 1
    assert set(found.pictures) <= {cover[0].file}
    assert all(step.photo is None for step in found.plan.steps)
    plan = replace(invented().plan, show=("photos", "steps"))
    assert shown_to_all(replace(invented(), plan=plan)).pictures == invented().pictures


def test_an_open_plan_is_seen_whole() -> None:
    found = edition()
    assert shown_to_all(found) is found


def test_what_is_public_is_told_in_words() -> None:
    plan = proved(LOCKED).plan
    assert plan.show == ("steps",)
    public = public_of(plan)
    assert (public.always, public.shown) == (ALWAYS, ("steps",))
    assert public.kept == tuple(each for each in SHOWABLE if each != "steps")


def test_a_word_that_does_nothing_is_told() -> None:
    text = LOCKED.replace("access: supporters", "access: open")
    found = [f for f in proved(text).findings if f.rule == "show-open"]
    assert [(str(f.message), str(f.advice)) for f in found] == [
        (
            "`show` does nothing: the plan is open",
            "Take it out, or write `access: supporters`.",
        )
    ]
