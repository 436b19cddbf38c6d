"""Plans as lists, feed and map tell of them, made from editions or read back from JSON."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict
from datetime import date
from typing import Any, TypeVar

from kerfolio.basis.saying import say
from kerfolio.chapters.changes import serving
from kerfolio.edition.cover import cover_of
from kerfolio.edition.difficulty import difficulty_of
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import NO_DAY, Photo, Release
from kerfolio.pages.facts import short_line
from kerfolio.pages.photos import image_of
from kerfolio.pages.releases import newest_first
from kerfolio.pages.setup import has_setup
from kerfolio.pages.site import Listed, PhotoFile, Site, last_day
from kerfolio.pages.yard import has_yard


def listed(site: Site) -> tuple[Listed, ...]:
    """Return all plans of a site, the one released last first; those of one day by title."""
    plans = (*(listed_of(site, each) for each in site.editions), *site.others)
    named = sorted(plans, key=lambda each: (each.title, each.name))
    return tuple(sorted(named, key=lambda each: each.released, reverse=True))


def updated(site: Site) -> date:
    """Return the day of the newest release; the site never asks the clock."""
    return max((each.day for each in listed(site)), default=NO_DAY)


def listed_of(site: Site, edition: Edition) -> Listed:
    """Return what a site tells of a plan besides its pages."""
    plan, files = edition.plan, site.files[edition.name]
    cover = cover_of(plan.photos)
    difficulty = difficulty_of(edition)
    cover_files = files.photos.get(cover.file, ()) if cover else ()
    pages = (
        ("", True),
        ("steps/", bool(plan.steps)),
        ("setup/", has_setup(site, edition)),
        ("yard/", has_yard(edition)),
    )
    return Listed(
        name=edition.name,
        title=plan.title,
        summary=plan.summary,
        version=plan.version,
        released=plan.released,
        day=last_day(edition),
        is_open=plan.is_open,
        line=short_line(edition),
        category=plan.category,
        tags=plan.tags,
        level=difficulty.words(edition.reader) if difficulty else "",
        cover=cover,
        cover_files=cover_files,
        picture=files.pictures.get("cover", ""),
        image=image_of(site, edition),
        releases=newest_first(plan.releases),
        pages=tuple(path for path, there in pages if there),
        serving=dict(_serving(edition)),
    )


def _serving(edition: Edition) -> Iterator[tuple[str, str]]:
    """Yield the releases of which it is known what changed, with what whoever has the last does."""
    for release in edition.plan.releases:
        change = edition.change_to(release.version)
        if change is not None:
            told = serving(change, edition.plan, edition.reader)
            yield (
                release.version,
                say(edition.reader, "changes-you-have", old=change.old, told=told),
            )


def site_image(site: Site) -> str:
    """Return the path of a picture that stands for the site: the newest plan's that has one."""
    return next(filter(None, (each.image for each in listed(site))), site.touch_icon)


def listed_json(plan: Listed) -> dict[str, Any]:
    """Return plain values, from which ``listed_from`` makes the same again."""
    cover = plan.cover
    return asdict(plan) | {
        "released": plan.released.isoformat(),
        "day": plan.day.isoformat(),
        "cover": cover and {"file": cover.file, "alt": cover.alt, "made": cover.made},
        "releases": [
            {
                "version": each.version,
                "date": each.date.isoformat(),
                "changed": each.changed,
                "errata": each.errata,
            }
            for each in plan.releases
        ],
    }


def listed_from(found: Mapping[str, Any]) -> Listed:
    """Return what ``listed_json`` told; KeyError, TypeError or ValueError for other values."""
    cover = found["cover"]
    texts = {name: _of(str, found[name]) for name in _TEXTS}
    return Listed(
        **texts,
        tags=tuple(_of(str, each) for each in found["tags"]),
        is_open=_of(bool, found["is_open"]),
        released=date.fromisoformat(found["released"]),
        day=date.fromisoformat(found["day"]),
        cover=None if cover is None else _photo(cover),
        cover_files=tuple(_file(each) for each in found["cover_files"]),
        releases=tuple(_release(each) for each in found["releases"]),
        pages=tuple(_of(str, each) for each in found["pages"]),
        serving={str(name): _of(str, each) for name, each in found.get("serving", {}).items()},
    )


_TEXTS = ("name", "title", "summary", "version", "line", "category", "level", "picture", "image")


def _photo(found: Mapping[str, Any]) -> Photo:
    return Photo(
        file=_of(str, found["file"]), alt=_of(str, found["alt"]), made=_of(str, found["made"])
    )


def _file(found: Mapping[str, Any]) -> PhotoFile:
    return PhotoFile(
        href=_of(str, found["href"]),
        width=_of(int, found["width"]),
        height=_of(int, found["height"]),
    )


def _release(found: Mapping[str, Any]) -> Release:
    return Release(
        version=_of(str, found["version"]),
        date=date.fromisoformat(found["date"]),
        changed=_of(str, found["changed"]),
        errata=_of(bool, found["errata"]),
    )


_Value = TypeVar("_Value")


def _of(kind: type[_Value], value: Any) -> _Value:
    if not isinstance(value, kind):
        raise TypeError(value)
    return value
