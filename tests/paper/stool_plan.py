"""The invented stool as its maker stated it, for the tests of everything printed."""

from __future__ import annotations

from datetime import date

from kerfolio.model.bridges import Bridges
from kerfolio.model.plan import (
    BoardUse,
    CutSetting,
    HardwareUse,
    Photo,
    Plan,
    Question,
    Release,
    Step,
)
from kerfolio.model.prose import Paragraph, Prose, Span
from kerfolio.model.statement import Amount, Named


def prose(*paragraphs: str) -> Prose:
    return Prose(blocks=tuple(Paragraph(spans=(Span(text=text),)) for text in paragraphs))


_STEP_TEXT = (
    "Stand the left side on its back edge, show face outward, and slide the rail into its slot "
    "until the shoulder meets the face. It should go in with the push of a hand.",
    "Turn the pair over and let the right side follow. Tap it home with a mallet and a scrap of "
    "wood, never on the bare edge: plywood bruises easily and the bruise stays.",
)

PLAN = Plan(
    name="harbour-stool",
    title="Harbour stool",
    version="1.2.0",
    summary="A stool that slots together without glue and stores flat.",
    licence="CC-BY-SA-4.0",
    cautions=("The seat is not to be stood on.", "Round the upper edges before first use."),
    boards=(BoardUse(name="foot", stock=Named("pine-45x45"), length=Amount("300")),),
    cuts=(
        CutSetting(
            name="ply-profile",
            sheet=Named("ply"),
            cutter=Named("compression-6"),
            speed_rpm=18000.0,
            feed_mm_per_min=4500.0,
            plunge_mm_per_min=1200.0,
            passes=("8", "rest"),
            skim=Amount("0.3"),
            bridges=Bridges(count=4),
        ),
    ),
    steps=(
        Step(
            title="Slide the rail into both sides",
            add=(Named("side.left"), Named("rail"), Named("side.right")),
            tools=("mallet", "scrap of wood"),
            minutes=5,
            photo=Photo(
                file="photos/rail.jpg", alt="The rail half way into its slot", made="drawing"
            ),
            text=prose(*_STEP_TEXT),
            by_hand="File the slots until a tab goes in.",
            caution="Keep fingers out of the slot.",
        ),
        Step(
            title="Lay on the seat and drive the wedges",
            add=(*(Named(f"wedge.{n}") for n in range(1, 5)), Named("seat")),
            tools=("mallet",),
            hardware=(HardwareUse(item=Named("bolt-m6x40"), count=2),),
            minutes=7.5,
            text=prose(*_STEP_TEXT),
        ),
    ),
    photos=(
        Photo(file="photos/finished.jpg", alt="The finished stool", cover=True, made="drawing"),
    ),
    questions=(
        Question(question="Will it take an adult?", answer=prose("It has taken its maker since.")),
    ),
    releases=(
        Release(version="1.2.0", date=date(2026, 10, 2), changed="Slots moved 12 mm inward."),
        Release(version="1.1.0", date=date(2026, 5, 9), changed="Rail 2 mm longer.", errata=True),
    ),
)
