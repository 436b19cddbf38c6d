"""The form of ``log/*.yaml``."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.measures import length
from kerfolio.basis.said import Text, said, written
from kerfolio.basis.slips import meant_length, slip_advice
from kerfolio.model.statement import Named
from kerfolio.model.trial import Trial
from kerfolio.reading.desk import Desk
from kerfolio.reading.files import PHOTO
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.prose import PROSE
from kerfolio.reading.rates import FEED, SPEED
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import DATE, FLAG, NAMED, QUANTITY, READING, TITLE_TEXT, choice

THICKNESS = (0.2, 150.0)
"""mm; from the thinnest aircraft plywood to the thickest laminated boards (common practice, no
single source)."""

_FAR, _NEAR = 2.0, 1.2
"""No sheet measures half or double of what it is sold as; one within a fifth of it may (common
practice, no single source)."""

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


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialForm(Form[Trial]):
    """A trial whose thickness, where it has one, is one that its sheet can have."""

    noun: str = _TRIAL.noun
    advice: Text = _TRIAL.advice

    def read(self, node: Node, desk: Desk) -> Trial | None:
        """Return the trial."""
        trial = _TRIAL.read(node, desk)
        if trial is not None and isinstance(node, Mapping) and trial.thickness is not None:
            stated = node.get("thickness")
            if isinstance(stated, Scalar):
                _check_thickness(trial, trial.thickness, stated, desk)
        return trial

    def schema(self, book: Book) -> Schema:
        """Return the schema of a trial."""
        return _TRIAL.schema(book)


def _check_thickness(trial: Trial, mm: float, stated: Scalar, desk: Desk) -> None:
    """Refuse a thickness that no sheet has, or none that is sold as the named one is."""
    nominal = desk.nominals.get(trial.stock.name) if trial.stock else None
    least, most = (nominal / _FAR, nominal * _FAR) if nominal else THICKNESS
    if least <= mm <= most:
        return
    near = (nominal / _NEAR, nominal * _NEAR) if nominal else THICKNESS
    limits = length("least", THICKNESS[0]), length("most", THICKNESS[1])
    otherwise = said("Sheets are {} to {} thick.", *limits)
    if nominal:
        otherwise = said("It is sold as {}: measure again.", length("nominal", nominal))
    advice = slip_advice(meant_length(mm, *near), otherwise)
    what = f"`{trial.stock.name}`" if trial.stock and nominal else "a sheet"
    message = f"{quoted(stated.text)} is no thickness of {what}"
    desk.refuse("out-of-range", message, stated.place, advice)


LOG: Record[tuple[Trial, ...]] = Record(
    name="log",
    noun="a log file",
    keys=(
        Key(
            name="trials",
            form=ListOf(
                item=TrialForm(),
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
