"""New files for a maker: a workshop that publishes at once, a plan, an entry of the log."""

from __future__ import annotations

import os
import re
from datetime import date
from pathlib import Path

from kerfolio.basis.budgets import TITLE, WORD, longest_word
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import is_plan_name, name_of
from kerfolio.basis.place import Place
from kerfolio.disk.put import put

Begun = tuple[tuple[Path, ...], tuple[Finding, ...]]
"""The files written, or the findings that say why none was."""

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

_PLAN = """\
plan: {title}
version: 1.0.0
summary: Two halves that slide into each other and stand.
units: {unit}
access: open

sizes:                      # named numbers; every length below may use them
  t: thickness(ply)         # what the reader's sheet measures
  wide: {wide}
  tall: {tall}

sheets:
  ply: {{stock: {stock}, published-for: {ladder}, fit: {fit}}}

relief: sideways            # inside corners are opened for a round cutter, beside their walls

parts:
  lower:
    sheet: ply
    outline: {{rectangle: [wide, tall], round: {round}}}
    features:
      crossing: {{notch: {{edge: top, at: wide/2, depth: tall/2, takes: ply}}}}
  upper:
    sheet: ply
    outline: {{rectangle: [wide, tall], round: {round}}}
    features:
      crossing: {{notch: {{edge: bottom, at: wide/2, depth: tall/2, takes: ply}}}}

joints:
  - {{notch: lower.crossing, with: upper.crossing}}

steps:
  - title: Slide them together
    add: [lower, upper]
    minutes: 1
    text: Hold the lower half upright and push the upper half down over it until both stand.
    caution: Keep fingertips clear of the notches as they close.

releases:
  1.0.0: {{date: {day}, changed: First release.}}
"""

_TRIAL = """\
trials:
  - date: {day}
    title: What was tried
    # Fill in what is known, leave out what is not.
    # plan: NAME
    # stock: {stock}
    # thickness: {thickness}
    # cutter: {cutter}
    # speed: 18000 rpm
    # feed: {feed}
    # passes: {passes}
    # outcome: clean          # clean | light fuzz | fuzz to sand | chipped | burned
    public: false
"""

_SHOP_WORDS = {
    "mm": {"unit": "mm", "currency": "EUR", "paper": "a4"},
    "in": {"unit": "in", "currency": "USD", "paper": "letter"},
}
_PLAN_WORDS = {
    "mm": {
        **{"unit": "mm", "wide": "200", "tall": "120", "round": "8", "fit": "0.1"},
        **{"stock": "birch-plywood-9", "ladder": "8.8 to 9.4"},
    },
    "in": {
        **{"unit": "in", "wide": "8", "tall": "4-3/4", "round": "5/16", "fit": "0.005"},
        **{"stock": "plywood-23-32", "ladder": "11/16 to 3/4"},
    },
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
    plan = _PLAN.format(title="Standing cross", day=day.isoformat(), **_PLAN_WORDS[unit])
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


def begin_plan(workshop: Path, name: str, day: date) -> Begun:
    """Write a new plan folder into a workshop, in its first unit.

    Raises OSError when the disk refuses.
    """
    target = workshop / "plans" / name / "plan.yaml"
    if not is_plan_name(name):
        meant = name_of(name) if is_plan_name(name_of(name)) else "garden-bench"
        advice = f"Use small letters, digits and hyphens: `{meant}`."
        return (), (error("bad-name", f"`{name}` is no plan name", Place("plans"), advice),)
    if target.exists():
        advice = "Name another plan, or change this one."
        message = f"there is a plan `{name}` already"
        return (), (error("not-empty", message, Place(f"plans/{name}"), advice),)
    title = name.replace("-", " ").capitalize()
    words = _PLAN_WORDS[_unit_of(workshop)]
    return _written({target: _PLAN.format(title=title, day=day.isoformat(), **words)}), ()


def begin_trial(workshop: Path, day: date) -> Begun:
    """Write a new file of the log for a day, in the workshop's first unit.

    Raises OSError when the disk refuses.
    """
    target = workshop / "log" / f"{day.isoformat()}.yaml"
    if target.exists():
        message, advice = "there is an entry for this day already", "Add the trial to that file."
        return (), (error("not-empty", message, Place(f"log/{target.name}"), advice),)
    words = _TRIAL_WORDS[_unit_of(workshop)]
    return _written({target: _TRIAL.format(day=day.isoformat(), **words)}), ()


def _unit_of(workshop: Path) -> str:
    """Return the unit a workshop shows first; mm where its ``workshop.yaml`` does not tell."""
    from kerfolio.reading.workshop import read_identity

    identity = read_identity(workshop)
    return identity.units_first if identity else "mm"


def _written(files: dict[Path, str]) -> tuple[Path, ...]:
    for target, text in files.items():
        put(target, text.encode())
    return tuple(files)
