"""What a publish refuses before it works: places where its output would do harm or cannot go."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from kerfolio.basis.finding import Finding, error, warning
from kerfolio.basis.place import Place
from kerfolio.disk.out_folder import nearest, out_faults
from kerfolio.publishing.standing import Standing

_SOURCES = ("plans", "stock", "log", "pages", ".kerfolio")
"""Folders of a workshop that hold what the maker wrote, or what is private."""


def refusals(folder: Path, out: Path, supporters: Path) -> tuple[Finding, ...]:
    """Look at where site and supporters' bundles would go; every finding is an error."""
    return tuple(_refusals(folder, out, supporters))


def holds_more(out: Path, standing: Standing) -> tuple[Finding, ...]:
    """Refuse to renew one plan of a site whose other plans an older release wrote."""
    return (left_out(out, standing.unknown),) if standing.unknown else ()


def left_out(out: Path, plans: Iterable[str]) -> Finding:
    """Return the finding about plans of a site that lists would lose."""
    named = ", ".join(plans)
    message = f"the site there also holds {named}, and does not say what lists tell of that"
    advice = "Publish all plans, or give this one a site of its own with --out."
    return error("out-holds-more", message, Place(str(out)), advice)


def _refusals(folder: Path, out: Path, supporters: Path) -> Iterator[Finding]:
    yield from out_faults(out)
    site, shop, handed = out.resolve(), folder.resolve(), supporters.resolve()
    if handed == site or site in handed.parents:
        message = "supporters' bundles would lie inside the site"
        advice = "Name a --supporters-out folder that is not under the site."
        yield error("supporters-inside-out", message, Place(str(handed)), advice)
    if site == shop or site in shop.parents:
        message = "the site would replace the workshop"
        yield error("out-over-workshop", message, Place(str(site)), "Name another --out.")
    yield from among_sources(folder, out, "--out")
    yield from among_sources(folder, supporters, "--supporters-out")
    if not _is_in((shop / ".kerfolio").resolve(), shop):
        message, advice = "a link leads out of the workshop", "Remove it: a folder is made anew."
        yield error("link-out", message, Place(".kerfolio"), advice)
    home = nearest(handed)
    if not (home.is_dir() and os.access(home, os.W_OK | os.X_OK)):
        message = f"nothing can be written in `{home}`"
        yield error("out-barred", message, Place(str(handed)), "Name another --supporters-out.")


def among_sources(folder: Path, out: Path, option: str) -> Iterator[Finding]:
    """Refuse an output among what the maker wrote, where the next run would take it for that."""
    target, shop = out.resolve(), folder.resolve()
    within = next((each for each in _SOURCES if _is_in(target, shop / each)), None)
    if within:
        message = f"it would lie among what the workshop is made of, in `{within}/`"
        yield error("out-in-source", message, Place(str(target)), f"Name another {option}.")


def _is_in(target: Path, folder: Path) -> bool:
    return folder == target or folder in target.parents


def keeps_nothing(folder: Path) -> tuple[Finding, ...]:
    """Return a warning where a workshop cannot be written to: layouts and log are not kept."""
    if not folder.is_dir() or os.access(folder, os.W_OK | os.X_OK):
        return ()
    message = "the workshop cannot be written to: no layout and no private log is kept"
    advice = "The site is complete. See that you may write here, so that layouts stay frozen."
    return (warning("workshop-read-only", message, Place("workshop.yaml"), advice),)
