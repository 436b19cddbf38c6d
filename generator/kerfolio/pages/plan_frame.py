"""What stands around every page of a plan."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.pages.frame import Frame, release_line, site_frame
from kerfolio.pages.photos import image_of
from kerfolio.pages.site import Site


def plan_frame(site: Site, edition: Edition, path: str, title: str, words: str) -> Frame:
    """Return the frame of a page of a plan at ``path``, its first one or one below that."""
    plan, own = edition.plan, f"plans/{edition.name}/"
    plans = (say(edition.reader, "pagehome-plans"), "plans/")
    above = (plans,) if path == own else (plans, (plan.title, own))
    image = image_of(site, edition)
    frame = site_frame(site, path, title, words, image, "article", above)
    return replace(frame, release=release_line(plan, edition.reader))
