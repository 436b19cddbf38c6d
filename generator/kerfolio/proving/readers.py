"""Checks of what readers are told: words for pictures, and cautions beyond the usual ones."""

from __future__ import annotations

import re
from collections.abc import Iterator

from kerfolio.assembly.building import Build
from kerfolio.assembly.set_together import SetTogether
from kerfolio.assembly.stability import Stability
from kerfolio.assembly.stability_words import belongs_on_the_wall
from kerfolio.basis.finding import Finding, Severity, note
from kerfolio.basis.measures import length
from kerfolio.basis.said import said
from kerfolio.model.plan import Photo, Plan
from kerfolio.model.use import is_seat, is_storage
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, as_set, before, together

_FEW = 3
_OF_SITTING = ("stand", "sit", "tilt", "climb", "load", "weight", "rock")
_OF_TIPPING = ("wall", "tip", "anchor", "fix", "topple")
_OF_CHILDREN = ("child", "age", "supervis", "adult", "toddler", "baby")


@before(
    "show-open",
    reason="A word that does nothing misleads whoever reads it.",
    source=OUR_FORM,
    severity=Severity.NOTE,
)
def shown_of_open(stated: Stated) -> Iterator[Finding]:
    """Look for what is said of a supporters' plan in one that everybody sees whole."""
    plan = stated.plan
    if not plan.is_open:
        return
    told = {"show": plan.show, "circle": plan.circle, "opens-to-all": plan.opens_to_all}
    for word in (word for word, value in told.items() if value):
        advice = "Take it out, or write `access: supporters`."
        yield note("show-open", f"`{word}` does nothing: the plan is open", plan.place, advice)


@before(
    "alt-says-little",
    reason="Some readers hear a picture's words and never see it.",
    source="WCAG 2.2, success criterion 1.1.1",
    severity=Severity.NOTE,
)
def pictures_told(stated: Stated) -> Iterator[Finding]:
    """Look for pictures whose words tell somebody who cannot see them nothing."""
    plan = stated.plan
    for photo in plan.pictured:
        if _says_nothing(photo, plan):
            message = f"the words for `{photo.file}` say little"
            advice = "Say in a sentence what is to be seen, for those who cannot see it."
            yield note("alt-says-little", message, photo.place, advice, subject=photo.file)


def _says_nothing(photo: Photo, plan: Plan) -> bool:
    words = re.findall(r"\w+", photo.alt.lower())
    named = {*re.findall(r"\w+", f"{photo.file} {plan.title}".lower())}
    empty = {"a", "an", "the", "photo", "picture", "image", "of", "drawing"}
    return len(words) < _FEW or set(words) <= named | empty


@before(
    "seat-caution",
    reason="People stand on what they sit on.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def sitters_warned(stated: Stated) -> Iterator[Finding]:
    """Look for seats without a caution on sitting; ``uses`` tell, else title and summary."""
    plan = stated.plan
    if is_seat(plan) and not cautioned(plan, _OF_SITTING):
        message = "a seat without a caution of its own"
        advice = "Under `cautions`, say what it is not for: standing on, tilting, heavy loads."
        yield note("seat-caution", message, plan.place, advice)


@before(
    "children-caution",
    reason="Who gives a thing to a child must know for which age it is meant.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def children_warned(stated: Stated) -> Iterator[Finding]:
    """Look for plans for children that say nothing of them in their cautions."""
    plan = stated.plan
    if plan.for_children and not cautioned(plan, _OF_CHILDREN):
        message = "made for children, and no caution says so"
        advice = "Under `cautions`, say for which age, and that an adult stays near."
        yield note("children-caution", message, plan.place, advice)


@together(
    "tipping-caution",
    reason="Tall storage tips over, above all on to children.",
    source="16 CFR 1261 and ASTM F2057 give 27 in for clothes storage; used as a mark only",
    severity=Severity.NOTE,
)
def tipping_warned(build: Build) -> Iterator[Finding]:
    """Look for what stores things, stands tall or shallow, and has no caution on tipping over."""
    yield from _tips("tipping-caution", "storage that", build.settled.plan, build.stability)


@as_set(
    "set-tips",
    reason="Tall storage tips over, above all on to children; what lies on others is part of it.",
    source="16 CFR 1261 and ASTM F2057 give 27 in for clothes storage; used as a mark only",
    severity=Severity.NOTE,
)
def sets_warned(together: SetTogether) -> Iterator[Finding]:
    """Look for what is tall or shallow with what it lies on, and has no caution on tipping over."""
    for name, laid in {each.stated.name: each for each in together.laid}.items():
        what = f"`{name}` and what it lies on"
        yield from _tips("set-tips", what, together.plan, laid.stability)


def _tips(rule: str, what: str, plan: Plan, stability: Stability) -> Iterator[Finding]:
    _, depth, height = stability.size
    tall = is_storage(plan) and belongs_on_the_wall(stability, plan)
    if tall and not cautioned(plan, _OF_TIPPING):
        message = f"{what} may tip over, and no caution says so"
        template = "It stands {} tall and {} deep: under `cautions`, say how to fix it."
        advice = said(template, length("height", height), length("depth", depth))
        yield note(rule, message, plan.place, advice)


def cautioned(plan: Plan, stems: tuple[str, ...]) -> bool:
    """Tell whether a caution of a plan has a word that begins like one of ``stems``."""
    steps = (step for each in plan.made for step in each.steps)
    text = " ".join((*plan.cautions, *(step.caution for step in steps))).lower()
    return any(re.search(rf"\b{stem}", text) for stem in stems)
