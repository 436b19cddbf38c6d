"""Forms of cut settings and of the relief of inside corners."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.names import NAME
from kerfolio.basis.said import Text, written
from kerfolio.model.plan import CutSetting, Relief
from kerfolio.reading.amounts import EXTRA, LENGTH
from kerfolio.reading.bridges import BRIDGES
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.rates import FEED, SPEED
from kerfolio.reading.record import Entries, Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import SCALAR, choice, name_fault

STYLE = choice("a relief", "dog-bone", "sideways", "none")


_PASSES = written(
    "passes: [8, rest]", "passes: [3/8 in, rest]", "Write depths from the face down: `{}`."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PassForm(Form[str]):
    """A depth of cut, or ``rest``."""

    noun: str = "a depth of cut"
    advice: Text = _PASSES

    def read(self, node: Node, desk: Desk) -> str | None:
        """Return the depth as written, its form and names checked."""
        if isinstance(node, Scalar) and node.text.strip() == "rest":
            return "rest"
        amount = LENGTH.read(node, desk)
        return None if amount is None else amount.text

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a number or a text."""
        return dict(SCALAR)


_CUT: Record[CutSetting] = Record(
    name="cut",
    noun="a cut setting",
    keys=(
        Key(name="sheet", form=REFERENCE, says="The sheet it is for.", required=True),
        Key(name="cutter", form=REFERENCE, says="The cutter, by its name.", required=True),
        Key(name="speed", form=SPEED, says="Turns a minute.", field="speed_rpm"),
        Key(name="feed", form=FEED, says="Feed along the cut.", field="feed_mm_per_min"),
        Key(name="plunge", form=FEED, says="Feed downwards.", field="plunge_mm_per_min"),
        Key(
            name="passes",
            form=ListOf(
                item=PassForm(),
                noun="a list of depths",
                advice=_PASSES,
                least=1,
                single=True,
            ),
            says="Depth of each pass; `rest` goes through.",
        ),
        Key(name="skim", form=LENGTH, says="How deep the last pass goes into the spoilboard."),
        Key(name="bridges", form=BRIDGES, says="Bridges that hold each piece in its sheet."),
    ),
    make=CutSetting,
    advice="Write `ply-profile: {sheet: ply, cutter: compression-6}`.",
    named=True,
)
CUTS: Entries[CutSetting] = Entries(
    record=_CUT,
    noun="cut settings by name",
    advice="Write `ply-profile: {sheet: ply, cutter: compression-6}`.",
    fault=name_fault,
    pattern=NAME.pattern,
)


def _short_relief(node: Scalar) -> Relief | Complaint:
    style = STYLE.convert(node)
    return style if isinstance(style, Complaint) else Relief(style=style, place=node.place)


RELIEF: Record[Relief] = Record(
    name="relief",
    noun="a relief",
    keys=(
        Key(name="style", form=STYLE, says="How inside corners are relieved."),
        Key(name="cutter", form=REFERENCE, says="The cutter it is made for."),
        Key(
            name="extra",
            form=EXTRA,
            says="By how much its arcs are larger across than the cutter (0.1 mm).",
        ),
    ),
    make=Relief,
    advice="Write `dog-bone`, `sideways`, `none` or `{style: dog-bone, cutter: compression-6}`.",
    short=ScalarForm(
        noun="a relief",
        advice=STYLE.advice,
        convert=_short_relief,
        json=STYLE.json,
        rule="not-a-choice",
    ),
)
