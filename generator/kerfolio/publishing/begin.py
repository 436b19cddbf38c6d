"""New files for a maker: a workshop that publishes at once, a plan, an entry of the log."""

from __future__ import annotations

import os
import re
from datetime import date
from pathlib import Path

from kerfolio.basis.budgets import TITLE, WORD, longest_word
from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean, is_plan_name, name_of
from kerfolio.basis.place import Place
from kerfolio.disk.put import put
from kerfolio.model.beginning import Beginning

Begun = tuple[tuple[Path, ...], tuple[Finding, ...]]
"""The files written, or the findings that say why none was."""

FIRST = "cross"
"""The kind of plan that a workshop begins with, and any plan that is not to be like another."""

_WORKSHOP = """\
# Who publishes. Every key is explained in the schema: kerfolio schema FOLDER
workshop: {title}
maker: Your name
tagline: What you make, in a line.
units-first: {unit}
licence: CC-BY-SA-4.0
currency: {currency}
paper: {paper}
"""

_REMARKS = """\
Fill in what is known, leave out what is not.
plan: NAME
stock: {stock}
thickness: {thickness}
cutter: {cutter}
speed: 18000 rpm
feed: {feed}
passes: {passes}
outcome: clean          # clean | nearly clean | to sand | to mend | spoiled
photo: {{file: photos/cut.jpg, alt: What it shows}}
public: true\
"""
"""Comments below an entry that is to be filled in."""

_SHOP_WORDS = {
    "mm": {"unit": "mm", "currency": "EUR", "paper": "a4"},
    "in": {"unit": "in", "currency": "USD", "paper": "letter"},
}
_TRIAL_WORDS = {
    "mm": {
        **{"stock": "birch-plywood-18", "thickness": "17.8 mm", "cutter": "compression-6"},
        **{"feed": "4500 mm/min", "passes": "[8 mm, 10 mm]"},
    },
    "in": {
        **{"stock": "plywood-23-32", "thickness": "0.703 in", "cutter": "compression-1-4in"},
        **{"feed": "180 in/min", "passes": "[5/16 in, 3/8 in]"},
    },
}
"""What stands in the files of a maker in mm, and of one in inches."""


def begin_workshop(folder: Path, day: date, unit: str = "mm") -> Begun:
    """Write a new workshop with one small plan, in mm or ``in``.

    Raises OSError when the disk refuses.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        advice = "Name a new or empty folder."
        message = "there is something here already"
        return (), (error("not-empty", message, Place(str(folder)), advice),)
    title = _title(folder.resolve().name)
    plan = _kinds()[FIRST].written("Standing cross", unit, day)
    files = {
        folder / "workshop.yaml": _WORKSHOP.format(title=title, **_SHOP_WORDS[unit]),
        folder / "plans" / "standing-cross" / "plan.yaml": plan,
    }
    return _written(files), ()


def _title(name: str) -> str:
    """Return a workshop's title by its folder's name, or a plain one where that would make none."""
    words = os.fsencode(name).decode("utf-8", "replace")  # as UTF-8 in every locale
    title = " ".join(re.sub(r"[^\w.,'&()]+|_", " ", words).split()).capitalize()
    good = title[:1].isalnum() and longest_word(title) <= WORD.most and len(title) <= TITLE.most
    return title if good else "Workshop"


def begin_plan(workshop: Path, name: str, day: date, like: str = FIRST) -> Begun:
    """Write a new plan folder of the kind ``like`` into a workshop, in its first unit.

    Raises OSError when the disk refuses.
    """
    target = workshop / "plans" / name / "plan.yaml"
    kinds = _kinds()
    if not is_plan_name(name):
        meant = name_of(name) if is_plan_name(name_of(name)) else "garden-bench"
        advice = f"Use small letters, digits and hyphens: `{meant}`."
        return (), (error("bad-name", f"`{name}` is no plan name", Place("plans"), advice),)
    if like not in kinds:
        message = f"no kind of plan {quoted(like)}"
        advice = f"{did_you_mean(like, kinds)} `kerfolio add plan --kinds` tells of each."
        return (), (error("unknown-kind", message, Place("plans"), advice),)
    if target.exists():
        advice = "Name another plan, or change this one."
        message = f"there is a plan `{name}` already"
        return (), (error("not-empty", message, Place(f"plans/{name}"), advice),)
    title = name.replace("-", " ").capitalize()
    return _written({target: kinds[like].written(title, unit_of(workshop), day)}), ()


def _kinds() -> dict[str, Beginning]:
    from kerfolio.reading.beginnings import beginnings

    return {each.name: each for each in beginnings()}


def begin_trial(workshop: Path, day: date, *, job: bool = False) -> Path:
    """Write an entry of the log to fill in, for a day, in the workshop's first unit.

    It stands in the day's file, below what is there. Raises OSError when the disk refuses.
    """
    from kerfolio.publishing.adding import ids_in_use
    from kerfolio.publishing.log_append import log_entry
    from kerfolio.reading.log_ids import fresh_id

    id_ = fresh_id(day, "job" if job else "trial", ids_in_use(workshop))
    entry = {"id": id_, "date": day.isoformat(), "title": "What was tried", "public": "false"}
    remarks = _REMARKS.format(**_TRIAL_WORDS[unit_of(workshop)]).split("\n")
    return log_entry(workshop, day, "jobs" if job else "trials", entry, remarks)


def unit_of(workshop: Path) -> str:
    """Return the unit a workshop shows first; mm where its ``workshop.yaml`` does not tell."""
    from kerfolio.reading.workshop import read_identity

    identity = read_identity(workshop)
    return identity.units_first if identity else "mm"


def _written(files: dict[Path, str]) -> tuple[Path, ...]:
    for target, text in files.items():
        put(target, text.encode())
    return tuple(files)
