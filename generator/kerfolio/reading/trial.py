"""The form of ``log/*.yaml``."""

from __future__ import annotations

from kerfolio.basis.said import written
from kerfolio.model.statement import Named
from kerfolio.model.trial import Trial
from kerfolio.reading.files import PHOTO
from kerfolio.reading.forms import ListOf
from kerfolio.reading.prose import PROSE
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import (
    DATE,
    FEED,
    FLAG,
    NAMED,
    QUANTITY,
    READING,
    SPEED,
    TITLE_TEXT,
    choice,
)

OUTCOME = choice("an outcome", "clean", "light fuzz", "fuzz to sand", "chipped", "burned")


def _make_log(trials: tuple[Trial, ...] = ()) -> tuple[Trial, ...]:
    return trials


_TRIAL: Record[Trial] = Record(
    name="trial",
    noun="a trial",
    keys=(
        Key(name="date", form=DATE, says="Day of the trial.", required=True),
        Key(name="title", form=TITLE_TEXT, says="What was tried.", required=True),
        Key(name="plan", form=NAMED, says="The plan it belongs to."),
        Key(name="stock", form=NAMED, says="The sheet material."),
        Key(name="thickness", form=READING, says="Thickness as measured."),
        Key(name="cutter", form=NAMED, says="The cutter."),
        Key(name="speed", form=SPEED, says="Turns a minute.", field="speed_rpm"),
        Key(name="feed", form=FEED, says="Feed along the cut.", field="feed_mm_per_min"),
        Key(name="plunge", form=FEED, says="Feed downwards.", field="plunge_mm_per_min"),
        Key(
            name="passes",
            form=ListOf(
                item=QUANTITY,
                noun="a list of depths",
                advice=written("passes: [8 mm, 10 mm]", "passes: [3/8 in, 3/8 in]"),
                single=True,
            ),
            says="Depth of each pass.",
        ),
        Key(name="fit", form=QUANTITY, says="Clearance on each side."),
        Key(name="outcome", form=OUTCOME, says="How the edge came out."),
        Key(name="public", form=FLAG, says="True to show it on the plan's page."),
        Key(name="photo", form=PHOTO, says="A picture of the cut."),
        Key(name="text", form=PROSE, says="Notes, in Markdown."),
    ),
    make=Trial,
    advice="Write `- date: 2026-09-30` and `title:` below it.",
)
LOG: Record[tuple[Trial, ...]] = Record(
    name="log",
    noun="a log file",
    keys=(
        Key(
            name="trials",
            form=ListOf(
                item=_TRIAL,
                noun="a list of trials",
                advice="Write `- date: 2026-09-30` and `title:` below it.",
                lenient=True,
            ),
            says="Tests and jobs: settings in, outcome out.",
            required=True,
        ),
    ),
    make=_make_log,
    advice="Begin with `trials:`.",
    placed=False,
    lenient=True,
)


def names_in(trial: Trial) -> dict[str, Named | None]:
    """Return the names a trial refers to, by the kind of thing they name."""
    return {"plan": trial.plan, "stock": trial.stock, "cutter": trial.cutter}
