"""The log: what is shown to all, and the maker's own page of everything."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from urllib.parse import quote

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.chapters.trials import outdated_words
from kerfolio.model.outcome import Grade
from kerfolio.model.plan import Photo
from kerfolio.model.stock import CutterStock, SheetStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Workshop
from kerfolio.pages.frame import lone_frame, site_frame
from kerfolio.pages.listed import listed, site_image
from kerfolio.pages.log_answers import log_answers
from kerfolio.pages.log_private import cutter_views, private_facts, sent_views
from kerfolio.pages.photos import ShownPhoto, largest, shown
from kerfolio.pages.site import Site
from kerfolio.pages.theme import render
from kerfolio.pages.trial_view import TrialView, trial_views
from kerfolio.shop.outdated import Outdated, PlanNow, outdated
from kerfolio.trials.log import newest_first
from kerfolio.trials.outcome_told import grade_told


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """How often a cutter gave which outcome on a sheet; ``outcomes`` is (grade in words, count)."""

    sheet: str
    cutter: str
    count: int
    outcomes: tuple[tuple[str, int], ...]


def log_page(site: Site) -> str:
    """Return ``log/index.html``: the trials that the maker marked public."""
    reader = site.identity.reader
    words = say(reader, "pagelog-about", house=site.identity.title)
    frame = site_frame(site, "log/", say(reader, "pagelog-title"), words, _image(site))
    titles = {each.name: each.title for each in listed(site)}
    stock = site.stock if site.has_stock else None
    views = trial_views(
        site.trials,
        stock,
        site.identity.reader,
        lambda photo: shown(photo, site.log_photos, "../"),
    )
    return render(
        "log.html", site.identity.reader, frame=frame, trials=views, titles=titles, root="../"
    )


def _image(site: Site) -> str:
    """Return the path of the newest trial's photo, else of what stands for the site."""
    newest = sorted(site.trials, key=lambda each: each.date, reverse=True)
    photos = (site.log_photos.get(each.photo.file, ()) for each in newest if each.photo)
    files = next(filter(None, photos), ())
    return largest(files) or site_image(site)


def private_log_page(
    workshop: Workshop, plans: Iterable[PlanNow], log_folder: str = "../../../log/"
) -> str:
    """Return all entries on one page of one file, for the maker's own disk.

    ``plans`` are what those of the workshop are now. ``log_folder`` leads from where the page lies
    to the photos of the log, which stay there.
    """
    identity = workshop.identity
    reader = identity.reader
    title = say(reader, "pagelog-whole-of", house=identity.title)
    frame = lone_frame(identity, title, say(reader, "pagelog-whole-about"), private=True)
    now = {each.name: each for each in plans}
    trials = newest_first(workshop.trials)
    views = trial_views(trials, workshop.stock, reader, lambda photo: _beside(photo, log_folder))
    whole = (_whole(*each, workshop, now) for each in zip(views, trials, strict=True))
    return render(
        "private-log.html",
        reader,
        frame=frame,
        trials=tuple(whole),
        answers=log_answers(workshop),
        tallies=tallies(workshop.trials, workshop.stock, reader),
        cutters=cutter_views(workshop),
        sent=sent_views(workshop),
        titles={name: each.title for name, each in now.items()},
    )


def _whole(
    view: TrialView, trial: Trial, workshop: Workshop, now: Mapping[str, PlanNow]
) -> TrialView:
    """Return an entry with what only its maker sees."""
    identity, stock = workshop.identity, workshop.stock
    plan = now.get(trial.plan.name) if trial.plan else None
    why = outdated(trial, plan) if plan else Outdated()
    return replace(
        view,
        private=private_facts(trial, identity.reader, identity.currency),
        outdated=outdated_words(why, stock, identity.reader),
        shown=trial.public,
    )


def _beside(photo: Photo | None, folder: str) -> ShownPhoto | None:
    return ShownPhoto(src=f"{folder}{quote(photo.file)}", alt=photo.alt) if photo else None


def tallies(trials: Iterable[Trial], stock: Stock, reader: Reader) -> tuple[Tally, ...]:
    """Return the outcomes for every sheet and cutter tried together, failures counted too."""
    graded: dict[tuple[str, str], Counter[Grade]] = {}
    for each in trials:
        if each.stock and each.cutter and each.grade:
            pair = (each.stock.name, each.cutter.name)
            graded.setdefault(pair, Counter())[each.grade] += 1
    return tuple(
        Tally(
            sheet=_title(stock.sheet(sheet), sheet),
            cutter=_title(stock.cutter(cutter), cutter),
            count=sum(outcomes.values()),
            outcomes=tuple(
                (grade_told(grade, reader), outcomes[grade])
                for grade in reversed(Grade)
                if outcomes[grade]
            ),
        )
        for (sheet, cutter), outcomes in sorted(graded.items())
    )


def _title(stocked: SheetStock | CutterStock | None, name: str) -> str:
    return stocked.title if stocked else name
