"""Forms of what happens with the parts: hardware and steps."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from kerfolio.basis.budgets import STEPS as STEPS_TAKEN
from kerfolio.model.plan import HardwareUse, Step
from kerfolio.model.prose import Prose
from kerfolio.model.statement import Named
from kerfolio.reading.counts import Counts, CountsForm
from kerfolio.reading.files import PHOTO, ProseFile
from kerfolio.reading.forms import ListOf
from kerfolio.reading.handwork import CLAMPS, GLUES, MARKS, SANDS
from kerfolio.reading.lying import LyingForm
from kerfolio.reading.prose import PROSE
from kerfolio.reading.record import Key, Record
from kerfolio.reading.reference import REFERENCE
from kerfolio.reading.values import CELL_TEXT, FLAG, LABEL, TEXT, TEXTS, TITLE_TEXT, number, whole

HARDWARE = ListOf(
    item=Record(
        name="hardware",
        noun="a line of hardware",
        keys=(
            Key(name="item", form=REFERENCE, says="The fastener, by its name.", required=True),
            Key(name="count", form=whole(1), says="How many in all.", required=True),
            Key(name="for", form=CELL_TEXT, says="What it is for.", field="purpose"),
        ),
        make=HardwareUse,
        advice="Write `{item: bolt-m6x40, count: 4}`.",
    ),
    noun="a list of hardware",
    advice="Write `- {item: bolt-m6x40, count: 4}`, a line each.",
    lenient=True,
)


_USED = CountsForm(noun="hardware with counts", advice="Write `{bolt-m6x40: 2}`.")
_TOOLS = replace(TEXTS, item=CELL_TEXT)


def _make_step(
    title: str = "", text_file: Prose | None = None, hardware: Counts = (), **values: Any
) -> Step:
    if text_file is not None:
        values["text"] = text_file
    uses = tuple(HardwareUse(item=item, count=n, place=item.place) for item, n in hardware)
    return Step(title=title, hardware=uses, **values)


def _pieces(example: str, least: int = 0) -> ListOf[Named]:
    return ListOf(
        item=LABEL,
        noun="a list of pieces",
        advice=f"Write `{example}`.",
        lenient=True,
        single=least < 2,
        least=least,
    )


_STEP: Record[Step] = Record(
    name="step",
    noun="a step",
    keys=(
        Key(name="title", form=TITLE_TEXT, says="What is done, in a few words.", required=True),
        Key(
            name="add",
            form=_pieces("add: [side.left, rail]"),
            says="Pieces that join in this step.",
        ),
        Key(
            name="bores",
            form=ListOf(
                item=LABEL,
                noun="a list of bores",
                advice="Write `bores: [rail.left-bore, rail.right-bore]`.",
                single=True,
            ),
            says="Bores into edges that are made in this step; its picture shows them.",
        ),
        Key(
            name="marks",
            form=MARKS,
            says="What is marked out: features by their middles, or lines off sides.",
        ),
        Key(
            name="sands",
            form=SANDS,
            says="What is sanded before anything joins; what is sanded later is a step of its own.",
        ),
        Key(
            name="glues",
            form=GLUES,
            says="What is glued; joints whose fit is `glued` are where they close, without this.",
        ),
        Key(name="clamps", form=CLAMPS, says="What is clamped, by how many, for how long."),
        Key(
            name="lies",
            form=LyingForm(),
            says="How the work lies; the step's picture shows it so.",
        ),
        Key(
            name="beside",
            form=FLAG,
            says="Whether its pieces are put together apart from what stands.",
        ),
        Key(name="people", form=whole(1, 9), says="How many people it takes."),
        Key(
            name="holds",
            form=_pieces("holds: [handle]"),
            says="Pieces that somebody holds in their place meanwhile.",
        ),
        Key(
            name="order",
            form=_pieces("order: [worktop, lower-shelf]", least=2),
            says="A piece of each lot that comes home by itself, first to last.",
        ),
        Key(name="tools", form=_TOOLS, says="Tools used."),
        Key(name="hardware", form=_USED, says="Hardware used in this step."),
        Key(name="minutes", form=number(0, 10_000), says="How long it takes."),
        Key(name="photo", form=PHOTO, says="A picture of the step."),
        Key(name="text", form=PROSE, says="What to do, in Markdown."),
        Key(name="text-file", form=ProseFile(), says="A Markdown file with what to do."),
        Key(
            name="by-hand",
            form=TEXT,
            says="What stands in for the machine, for those who cut by hand.",
            field="by_hand",
        ),
        Key(name="caution", form=TEXT, says="A warning for this step."),
    ),
    make=_make_step,
    not_both=(("text", "text-file"),),
    advice="Write `- title: Slide the rail in`, then its other keys below.",
    lenient=True,
)
STEPS = ListOf(
    item=_STEP,
    budget=STEPS_TAKEN,
    noun="a list of steps",
    advice="Write `- title: Slide the rail in`, a step each.",
    lenient=True,
)
