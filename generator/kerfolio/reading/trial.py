"""The form of ``log/*.yaml``."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.measures import length
from kerfolio.basis.said import Text, said, written
from kerfolio.basis.slips import meant_length, slip_advice
from kerfolio.model.outcome import Outcome
from kerfolio.model.statement import Named
from kerfolio.model.trial import Batch, Log, Sent, Spent, Trial
from kerfolio.reading.desk import Desk
from kerfolio.reading.files import PHOTO
from kerfolio.reading.forms import Book, Form, ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.outcome import CLIMB, FEEL, GRADE, MARKS, OPERATION, OUTCOME
from kerfolio.reading.prose import PROSE
from kerfolio.reading.rates import FEED, SPEED
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import (
    DATE,
    FLAG,
    MONEY,
    NAMED,
    QUANTITY,
    READING,
    SCALAR,
    TEXT,
    TEXTS,
    TITLE_TEXT,
    VERSION,
    name_fault,
    number,
)

T = TypeVar("T")
_ID = re.compile(r"[0-9a-z]+(?:-{1,2}[0-9a-z]+)*")
_ENTRY = "Write `- date: 2026-09-30`, and below it `stock:`, `cutter:`, `outcome:`."

THICKNESS = (0.2, 150.0)
"""mm; from the thinnest aircraft plywood to the thickest laminated boards (common practice, no
single source)."""

_FAR, _NEAR = 2.0, 1.2
"""No sheet measures half or double of what it is sold as; one within a fifth of it may (common
practice, no single source)."""

ID: ScalarForm[str] = ScalarForm(
    noun="an id",
    advice="Leave it out, or write small letters, digits and hyphens: `2026-09-30-rail`.",
    convert=lambda node: (
        node.text.strip()
        if _ID.fullmatch(node.text.strip())
        else Complaint(f"{quoted(node.text.strip())} is no id")
    ),
)

_BATCH_ADVICE = "Write `batch: august` or `batch: {name: august, readings: [17.7 mm, 17.9 mm]}`."
_READINGS = ListOf(
    item=READING,
    noun="a list of thicknesses",
    advice=written("readings: [17.7 mm, 17.9 mm]", "readings: [0.698 in, 0.704 in]"),
    single=True,
)


def _named_batch(node: Scalar) -> Batch | Complaint:
    word = TITLE_TEXT.convert(node)
    return word if isinstance(word, Complaint) else Batch(name=word)


BATCH: Record[Batch] = Record(
    name="batch",
    noun="a batch of sheets",
    keys=(
        Key(name="name", form=TITLE_TEXT, says="What you call sheets bought together."),
        Key(name="readings", form=_READINGS, says="What a caliper says at several places."),
        Key(name="moisture", form=number(1, 40), says="Moisture, percent of the dry mass."),
    ),
    make=Batch,
    advice=_BATCH_ADVICE,
    placed=False,
    short=ScalarForm(
        noun="a batch of sheets", advice=_BATCH_ADVICE, convert=_named_batch, json=SCALAR
    ),
)

_SPENT = (
    Key(name="metres", form=number(0.01, 100_000), says="Metres that the cutter cut."),
    Key(name="reckoned-minutes", form=number(0.1, 100_000), says="Minutes that it was to take."),
    Key(name="minutes", form=number(0.1, 100_000), says="Minutes that the machine took."),
    Key(name="hours", form=number(0.01, 10_000), says="Hours of all the work."),
    Key(name="money", form=MONEY, says="What it cost, in the workshop's currency."),
)
_LISTS = (
    Key(name="finishes", form=TEXTS, says="Oils, lacquers, paints."),
    Key(name="glues", form=TEXTS, says="Glues."),
    Key(name="mistakes", form=TEXTS, says="What went wrong."),
    Key(name="repairs", form=TEXTS, says="How it was put right."),
)


def _make_trial(**stated: Any) -> Trial:
    """Gather what a trial states of its outcome and of what it took."""
    spent = {key.fills: stated.pop(key.fills) for key in _SPENT if key.fills in stated}
    marks = stated.pop("marks", ())
    outcome = stated.pop("outcome", Outcome())
    seen = dict.fromkeys((*outcome.marks, *marks))
    return Trial(outcome=replace(outcome, marks=tuple(seen)), spent=Spent(**spent), **stated)


_TRIAL: Record[Trial] = Record(
    name="trial",
    noun="a trial",
    keys=(
        Key(name="id", form=ID, says="Its address; written once and never changed."),
        Key(name="date", form=DATE, says="Day of the trial.", required=True),
        Key(name="title", form=TITLE_TEXT, says="What was tried."),
        Key(name="plan", form=NAMED, says="The plan it belongs to."),
        Key(name="release", form=VERSION, says="The release of the plan that was cut."),
        Key(name="part", form=NAMED, says="The part that was cut."),
        Key(name="stock", form=NAMED, says="The sheet material."),
        Key(name="thickness", form=READING, says="Thickness as measured."),
        Key(name="batch", form=BATCH, says="Sheets bought together, with what was measured."),
        Key(name="cutter", form=NAMED, says="The cutter."),
        Key(name="operation", form=OPERATION, says="What was cut."),
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
        Key(name="direction", form=CLIMB, says="With the feed or against it.", field="climb"),
        Key(name="workholding", form=TEXT, says="How the sheet was held."),
        Key(name="extraction", form=TEXT, says="How dust and chips were taken away."),
        Key(name="fit", form=QUANTITY, says="Clearance on each side."),
        Key(name="went", form=FEEL, says="How the joint went together."),
        Key(name="true-cut", form=READING, says="What the cutter really cut."),
        Key(name="outcome", form=OUTCOME, says="How it came out: of the whole, or of each edge."),
        Key(name="marks", form=MARKS, says="What is seen or heard on it."),
        *_SPENT,
        *_LISTS,
        Key(name="public", form=FLAG, says="True to show it on the plan's page."),
        Key(name="photo", form=PHOTO, says="A picture of the cut."),
        Key(name="text", form=PROSE, says="Notes, in Markdown."),
    ),
    make=_make_trial,
    advice=_ENTRY,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialForm(Form[Trial]):
    """A trial, or a ``job``, whose thickness, where it has one, is one that its sheet can have."""

    job: bool = False
    noun: str = _TRIAL.noun
    advice: Text = _TRIAL.advice

    def read(self, node: Node, desk: Desk) -> Trial | None:
        """Return the trial."""
        trial = _TRIAL.read(node, desk)
        if trial is not None and isinstance(node, Mapping) and trial.thickness is not None:
            stated = node.get("thickness")
            if isinstance(stated, Scalar):
                _check_thickness(trial, trial.thickness, stated, desk)
        return trial and replace(trial, job=self.job)

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


def _sheet_name(node: Scalar) -> str | Complaint:
    text = node.text.strip()
    return name_fault(text) or text


_SHEET: ScalarForm[str] = ScalarForm(
    noun="a name", advice=NAMED.advice, convert=_sheet_name, rule="name"
)

_SENT: Record[Sent] = Record(
    name="sent",
    noun="what a reader measured",
    keys=(
        Key(name="id", form=ID, says="Written once and never changed."),
        Key(name="date", form=DATE, says="Day it came.", required=True),
        Key(name="plan", form=NAMED, says="The plan that was built.", required=True),
        Key(name="release", form=VERSION, says="Its release."),
        Key(name="sheet", form=_SHEET, says="The plan's sheet, by its name there."),
        Key(name="thickness", form=READING, says="What the sheet measured."),
        Key(name="true-cut", form=READING, says="What the cutter really cuts."),
        Key(name="fit", form=QUANTITY, says="Clearance of the files they took."),
        Key(name="went", form=FEEL, says="How the joints went together."),
        Key(name="outcome", form=GRADE, says="How it came out.", field="grade"),
    ),
    make=Sent,
    advice="Write `- {date: 2026-09-30, plan: NAME, thickness: 17.6 mm}`.",
)


ENTRIES: dict[str, Form[Trial] | Form[Sent]] = {
    "trials": TrialForm(),
    "jobs": TrialForm(job=True),
    "sent": _SENT,
}
"""The form of an entry of each section of a log."""


def _entries(form: Form[T], noun: str) -> ListOf[T]:
    return ListOf(item=form, noun=noun, advice=_ENTRY, lenient=True)


def _make_log(
    trials: tuple[Trial, ...] = (), jobs: tuple[Trial, ...] = (), sent: tuple[Sent, ...] = ()
) -> Log:
    return Log(trials=(*trials, *jobs), sent=sent)


LOG: Record[Log] = Record(
    name="log",
    noun="a log file",
    keys=(
        Key(
            name="trials",
            form=_entries(TrialForm(), "a list of trials"),
            says="Tests: settings in, outcome out.",
        ),
        Key(
            name="jobs",
            form=_entries(TrialForm(job=True), "a list of jobs"),
            says="What was cut to be used, with the keys of a trial.",
        ),
        Key(
            name="sent",
            form=_entries(_SENT, "a list of what readers measured"),
            says="What readers measured and sent.",
        ),
    ),
    make=_make_log,
    advice="Begin with `trials:`, `jobs:` or `sent:`.",
    placed=False,
    lenient=True,
)


def names_in(trial: Trial | Sent) -> dict[str, Named | None]:
    """Return the names a trial refers to, by the kind of thing they name."""
    if isinstance(trial, Sent):
        return {"plan": trial.plan}
    return {"plan": trial.plan, "stock": trial.stock, "cutter": trial.cutter}
