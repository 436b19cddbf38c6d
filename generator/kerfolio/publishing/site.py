"""The files of a site that are no plan's own: home, lists, feed, map, log, looks and fonts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from kerfolio.model.workshop import Workshop
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.listed import listed_from
from kerfolio.pages.log import private_log_page
from kerfolio.pages.typefaces import FONT_FOLDER, files_of
from kerfolio.publishing.plan_site import Files, badge_files, log_photos, site_of
from kerfolio.publishing.standing import ListingError
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.shop.outdated import PlanNow
from kerfolio.writing.webfont import web_fonts


def log_and_files(
    folder: Path, plans: Iterable[Mapping[str, Any]], now: Iterable[PlanNow]
) -> tuple[bytes, Files]:
    """Read what plans share; return the maker's own page of the log and the files of a site."""
    shared, refused = read_shared(folder)
    assert shared is not None, refused
    workshop, _ = with_plans(shared, ())
    assert workshop is not None, "what plans share was read before, without an error"
    log = private_log_page(workshop, now)
    return log.encode(), site_files(workshop, plans)


def site_files(workshop: Workshop, plans: Iterable[Mapping[str, Any]]) -> Files:
    """Return all files of a site by name but those of its plans and the manifest.

    ``plans`` are what the manifest says that lists tell of each. Raises ListingError where that
    cannot be read.
    """
    look = workshop.identity.look
    files: Files = {f"{FONT_FOLDER}{name}": web_fonts()[name] for name in files_of(look.type)}
    photos = log_photos(workshop, files)
    try:
        others = tuple(listed_from(each) for each in plans)
    except (KeyError, TypeError, ValueError) as trouble:
        raise ListingError("a manifest that somebody changed") from trouble
    site = replace(site_of(workshop, photos), others=others)
    files |= badge_files(workshop.identity)
    return files | {name: text.encode() for name, text in site_texts(site).items()}
