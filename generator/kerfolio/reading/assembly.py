"""Forms of the things that a plan makes, and how many of each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean
from kerfolio.model.plan import HOLDS, Assembly, LiesOn, Plan
from kerfolio.reading.amounts import LENGTH
from kerfolio.reading.counts import Counts, CountsForm
from kerfolio.reading.fastening import FASTENINGS
from kerfolio.reading.fit import JOINT_FIT
from kerfolio.reading.forms import Either, ListOf
from kerfolio.reading.joint import JOINTS, STANDING
from kerfolio.reading.record import Entries, Fields, Key, Record
from kerfolio.reading.step import STEPS
from kerfolio.reading.values import LABEL, TITLE_TEXT, choice, name_fault, whole

MOST_MADE = 50
"""So many of one thing a set has at most; more are cut as a batch."""

_LIES_ON: Record[LiesOn] = Record(
    name="lies-on",
    noun="what it lies on",
    keys=(
        Key(
            name="supports",
            form=ListOf(
                item=LABEL,
                noun="a list of assemblies",
                advice="Write `supports: [stand]`, or `[stand.1, stand.2]`.",
                least=1,
                single=True,
            ),
            says="The assemblies it lies on: all of a name, or those of a number.",
            required=True,
        ),
        Key(name="overhang", form=LENGTH, says="How far it reaches past the outermost of them."),
        Key(name="held", form=choice("a way of holding", *HOLDS), says="What keeps it there."),
    ),
    make=LiesOn,
    advice="Write `lies-on: {supports: [stand], overhang: 60}`.",
)
_ADVICE = "Write `stand: {pieces: [leg, rail], joints: [...], steps: [...]}`."
_ASSEMBLY: Record[Assembly] = Record(
    name="assembly",
    noun="one of the things the plan makes",
    keys=(
        Key(name="title", form=TITLE_TEXT, says="What readers know it by."),
        Key(
            name="pieces",
            form=ListOf(
                item=LABEL,
                noun="a list of parts or pieces",
                advice="Write `pieces: [leg, rail.front]`: parts with all their pieces, or pieces.",
                least=1,
            ),
            says="Its parts with all their pieces, or single pieces.",
            required=True,
        ),
        Key(name="joints", form=JOINTS, says="Which of its features meet."),
        Key(name="fastenings", form=FASTENINGS, says="Hardware with what it joins in it."),
        Key(
            name="joint-fit",
            form=JOINT_FIT,
            says="The fit of its joints that state none.",
            field="fit",
        ),
        Key(name="standing", form=STANDING, says="How it stands, where that is left open."),
        Key(name="lies-on", form=_LIES_ON, says="What it lies on, where it lies loose."),
        Key(name="steps", form=STEPS, says="How one of it is put together, a step each."),
    ),
    make=Assembly,
    advice=_ADVICE,
    named=True,
    lenient=True,
)
ASSEMBLIES: Entries[Assembly] = Entries(
    record=_ASSEMBLY,
    noun="assemblies by name",
    advice=_ADVICE,
    fault=name_fault,
    pattern="[a-z][a-z0-9]*(?:[-_][a-z0-9]+)*",
)
_COUNTS = CountsForm(
    noun="assemblies with counts", advice="Write `makes: {stand: 2, top: 1}`.", most=MOST_MADE
)
MAKES = Either(
    scalar=whole(1, MOST_MADE),
    other=_COUNTS,
    noun="a count, or assemblies with counts",
    advice="Write `makes: 2`, or `makes: {stand: 2, top: 1}` for `assemblies`.",
)


def making_faults(fields: Fields) -> Iterator[Finding]:
    """Yield what does not go together of a plan's `assemblies` and `makes`."""
    assemblies: Sequence[Assembly] = fields.values.get("assemblies", ())
    makes = fields.values.get("makes")
    if "assemblies" in fields.places:
        for key in ("joints", "fastenings", "standing", "steps"):
            if key in fields.places:
                message = f"`{key}` stands beside `assemblies`"
                advice = f"Write `{key}` under the assembly it belongs to."
                yield error("made-twice-told", message, fields.places[key], advice)
        if isinstance(makes, int):
            names = ", ".join(f"{each.name}: {makes}" for each in assemblies)
            advice = f"Write `makes: {{{names}}}`." if names else "Write `makes: {stand: 2}`."
            message = "`makes` is one count for several assemblies"
            yield error("made-twice-told", message, fields.places["makes"], advice)
    elif isinstance(makes, tuple):
        advice = "State them under `assemblies`, or write `makes: 2` for two of the whole."
        message = "`makes` names assemblies, and the plan states none"
        yield error("unknown-assembly", message, fields.places["makes"], advice)
    if isinstance(makes, tuple) and assemblies:
        known = [each.name for each in assemblies]
        for named, _ in makes:
            if named.name not in known:
                advice, message = did_you_mean(named.name, known), f"no assembly `{named.name}`"
                yield error("unknown-assembly", message, named.place, advice)


def made_of(plan: Plan, makes: int | Counts) -> Plan:
    """Return a plan with how many of each it makes, and the joints and steps of all of them."""
    if not plan.assemblies:
        count = makes if isinstance(makes, int) else 1
        twins = tuple(replace(each, count=count) for each in plan.made) if count > 1 else ()
        return replace(plan, assemblies=twins)
    counts = {} if isinstance(makes, int) else {named.name: count for named, count in makes}
    assemblies = tuple(replace(each, count=counts.get(each.name, 1)) for each in plan.assemblies)
    return replace(
        plan,
        assemblies=assemblies,
        joints=tuple(joint for each in assemblies for joint in each.joints),
        fastenings=tuple(item for each in assemblies for item in each.fastenings),
        steps=tuple(step for each in assemblies for step in each.steps),
        standing=None,
    )
