"""Checks of what a set holds: whose each piece is, and what lies on what."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise

from kerfolio.assembly.extent import box_around
from kerfolio.assembly.set_in_use import Laid
from kerfolio.assembly.set_together import SetTogether
from kerfolio.basis.finding import Beside, Finding, Measured, Meeting, Severity, error, warning
from kerfolio.basis.measures import length
from kerfolio.basis.names import did_you_mean, split_feature
from kerfolio.basis.said import Text, said
from kerfolio.basis.words import listed
from kerfolio.geometry.rigid import Vector
from kerfolio.model.part import Part
from kerfolio.model.plan import BRACKETS, CLAMPED, LYING, SCREWED, Assembly, Plan
from kerfolio.model.statement import Named
from kerfolio.proving.going_together import unfit
from kerfolio.proving.naming import is_unread, pieces_of
from kerfolio.proving.rule import OUR_FORM, Stated, as_set, before

_LEVEL = 0.3  # mm: what a board or the floor makes up for


@before(
    "unknown-assembly-piece",
    reason="An assembly is made of pieces the plan has.",
    source=OUR_FORM,
    unbuilt=True,
)
def assembly_pieces(stated: Stated) -> Iterator[Finding]:
    """Look for assemblies that name pieces the plan does not have."""
    plan, known = stated.plan, pieces_of(stated.plan)
    names = {*known, *(part.name for part in plan.parts)}
    for assembly in plan.assemblies:
        for each in assembly.pieces:
            if each.name not in names and not is_unread(each.name, plan):
                advice, message = did_you_mean(each.name, sorted(names)), f"no piece `{each.name}`"
                rule = "unknown-assembly-piece"
                yield error(rule, message, each.place, advice, subject=each.name)


@before(
    "piece-unassembled",
    reason="Each piece belongs to one of the things a set holds.",
    source=OUR_FORM,
    also=("piece-in-two",),
    unbuilt=True,
)
def pieces_owned(stated: Stated) -> Iterator[Finding]:
    """Look for pieces that no assembly holds, or two."""
    plan = stated.plan
    for label, part in pieces_of(plan).items() if plan.is_set else ():
        owners = [each.name for each in plan.assemblies if each.owns(label)]
        if not owners:
            advice = f"Put `{label}` under `pieces` of the assembly it belongs to."
            message = f"piece `{label}` is in no assembly"
            yield error("piece-unassembled", message, part.place, advice, subject=label)
        elif len(owners) > 1:
            names = listed([f"`{name}`" for name in owners])
            advice = "Give each its own pieces: state them under the part, `pieces: [left, right]`."
            message = f"piece `{label}` is in {names}"
            yield error("piece-in-two", message, part.place, advice, subject=label)


@before(
    "foreign-piece",
    reason="Joints and steps of an assembly tell of its own pieces.",
    source=OUR_FORM,
    unbuilt=True,
)
def own_pieces(stated: Stated) -> Iterator[Finding]:
    """Look for joints and steps that name pieces of another assembly."""
    plan, known = stated.plan, pieces_of(stated.plan)
    for assembly in plan.assemblies:
        for named in _named_in(assembly):
            label = _piece(named, known)
            owner = next((each.name for each in plan.assemblies if each.owns(label)), "")
            if label and owner and not assembly.owns(label):
                message = f"`{label}` belongs to `{owner}`, not to `{assembly.name}`"
                advice = (
                    "Pieces joined with each other are one assembly; what only lies on another one "
                    "is told by `lies-on`."
                )
                yield error("foreign-piece", message, named.place, advice, subject=label)


def _named_in(assembly: Assembly) -> Iterator[Named]:
    for joint in assembly.joints:
        yield from (joint.a, joint.b)
    for step in assembly.steps:
        yield from step.add
    if assembly.standing is not None:
        yield assembly.standing.piece


def _piece(named: Named, known: Mapping[str, Part]) -> str:
    return named.name if named.name in known else split_feature(named.name, known)[0]


@before(
    "unknown-support",
    reason="A thing lies on others that stand by themselves.",
    source=OUR_FORM,
    unbuilt=True,
)
def supports_known(stated: Stated) -> Iterator[Finding]:
    """Look for supports that are not there, or lie on something themselves."""
    for assembly in stated.plan.assemblies:
        for each in assembly.lies_on.supports if assembly.lies_on else ():
            fault = _support_fault(each.name, assembly, stated.plan)
            if fault is not None:
                message, advice = fault
                yield error("unknown-support", message, each.place, advice, subject=assembly.name)


def _support_fault(name: str, lying: Assembly, plan: Plan) -> tuple[str, str] | None:
    base, _, number = name.partition(".")
    known = {each.name: each for each in plan.assemblies if each is not lying}
    support = known.get(base)
    if base == lying.name:
        return f"`{base}` lies on itself", "Name the assemblies that bear it."
    if support is None:
        return f"no assembly `{base}`", did_you_mean(base, known)
    if support.lies_on is not None:
        return f"`{base}` lies loose itself", "Name what stands on the floor by itself."
    if number and not (number.isdigit() and 1 <= int(number) <= support.count):
        ways = listed([f"`{base}.{each}`" for each in range(1, support.count + 1)])
        return f"no `{name}`", f"The plan makes {ways}; `{base}` alone means all of them."
    return None


@before(
    "held-unlisted",
    reason="What holds a thing on others must be there when it is put together.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def holding_listed(stated: Stated) -> Iterator[Finding]:
    """Look for things held on others by what no list names."""
    for assembly in stated.plan.assemblies:
        if assembly.held == LYING or _is_listed(assembly, stated):
            continue
        what, where = _WANTED[assembly.held]
        message = f"`{assembly.name}` is held by {what}, and no list names them"
        advice = f"Name them {where}, or write `held: lying`."
        yield warning("held-unlisted", message, assembly.place, advice, subject=assembly.name)


_WANTED = {
    CLAMPED: ("clamps", "under `tools` of the step that lays it on"),
    SCREWED: ("screws", "under `hardware` of the step that lays it on"),
    BRACKETS: ("brackets", "under `hardware` of the step that lays it on"),
}
"""By what a thing is held, and where its maker lists that."""
_SCREWS = ("screw", "bolt")


def _is_listed(assembly: Assembly, stated: Stated) -> bool:
    """Tell whether tools or hardware, of its steps or of the plan, name what holds it."""
    if assembly.held == CLAMPED:
        return any("clamp" in tool.lower() for step in assembly.steps for tool in step.tools)
    uses = (*stated.plan.hardware, *(use for step in assembly.steps for use in step.hardware))
    fastened = (item for each in stated.plan.fastenings for item, _ in each.parts)
    names = [*(use.item.name for use in uses), *(item.name for item in fastened)]
    if assembly.held == BRACKETS:
        titles = [f"{name} {getattr(stated.stock.item(name), 'title', '')}" for name in names]
        return any("bracket" in title.lower() for title in titles)
    return any(getattr(stated.stock.item(name), "kind", "") in _SCREWS for name in names)


@before(
    "held-otherwise",
    reason="A slab lies loose or is held, not both.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def holding_agrees(stated: Stated) -> Iterator[Finding]:
    """Look for spans that say otherwise than their assembly how they are held."""
    for span in stated.plan.spans:
        laid = stated.plan.laid(span.part.name) if span.part else None
        if laid and span.held and (span.held == LYING) != (laid.held == LYING):
            message = f"span `{span.name}` says `held: {span.held}`, `lies-on` `held: {laid.held}`"
            advice = "Say it under `lies-on` alone; it counts as lying until both agree."
            yield warning("held-otherwise", message, span.place, advice, subject=span.name)


@as_set(
    "lies-too-short",
    reason="What lies on several reaches over all of them.",
    source="geometry of a row of supports",
    also=("lies-otherwise",),
)
def reaches_over(together: SetTogether) -> Iterator[Finding]:
    """Look for things too short for a row of what bears them, or shared supports that differ."""
    for row in together.rows:
        name, place = row.lying.name, row.lying.place
        least, stated = min(row.overhangs), together.overhangs.get(name, 0.0)
        if row.crowded or least <= -min(width for width, _, _ in row.sizes):
            message = f"`{name}` is too short for what it lies on"
            advice = "Make it longer, let it overhang less, or put fewer under it."
            what = _lying(together, name, _crowd if row.crowded else _short)
            yield error("lies-too-short", message, place, advice, **what)
        elif stated and len(row.supports) > 1 and abs(least - stated) > _LEVEL:
            both = length("overhang", least), length("stated", stated)
            words = said("`{}` reaches {} past its supports, not {}", name, *both)
            advice = (
                "Something else lies on them too and says where they stand: state what it comes "
                "to, or change its length."
            )
            yield error("lies-otherwise", words, place, advice, **_lying(together, name, _short))


@as_set(
    "lies-unlevel",
    reason="A thing on supports of unlike heights slopes or rocks.",
    source="geometry",
    severity=Severity.WARNING,
)
def lies_level(together: SetTogether) -> Iterator[Finding]:
    """Look for things that lie on supports of unlike heights."""
    for row in together.rows:
        assembly, heights = row.lying, [height for _, _, height in row.sizes]
        low, high = min(heights), max(heights)
        if high - low > _LEVEL:
            both = length("low", low), length("high", high)
            message = said("`{}` lies on supports {} and {} high", assembly.name, *both)
            advice = "It will slope or rock: make them of one height."
            what = _lying(together, assembly.name, _slope)
            yield warning("lies-unlevel", message, assembly.place, advice, **what)


@as_set(
    "lies-off",
    reason="A thing falls off whose middle is not over what bears it.",
    source="statics of a rigid body",
    severity=Severity.WARNING,
)
def lies_over(together: SetTogether) -> Iterator[Finding]:
    """Look for things whose centre of mass is not over what they lie on, or only just."""
    told: set[str] = set()
    for each in together.laid:
        name, inset = each.stated.name, each.inset
        loose = each.stated.held == LYING
        if loose and name not in told and (inset is None or inset < _SAFE):
            told.add(name)
            message: Text = f"`{name}` falls off what it lies on, by its own weight"
            if inset is not None and inset > 0:
                near = length("inset", inset)
                message = said("the middle of `{}` is only {} inside what bears it", name, near)
            advice = "Bring more of it over its supports, or hold it and write `held: clamped`."
            what = _lying(together, name, _to_side)
            yield warning("lies-off", message, each.stated.place, advice, **what)


_SAFE = 5.0  # mm: what wood and floor are out of true


@as_set(
    "set-unfit",
    reason="What is stated to be done with a thing must be what it stands.",
    source="statics of rigid bodies on a level floor",
    severity=Severity.WARNING,
)
def set_fits(together: SetTogether) -> Iterator[Finding]:
    """Look for stated uses that a thing of a set does not stand, what lies on others with them."""
    for each in together.in_use:
        if not each.bears:
            name = each.stated.name
            laid = next((one for one in together.laid if one.stated.name == name), None)
            whole = laid.whole if laid else together.stood[name, 1]
            labels = [piece.label for piece in whole.pieces]
            yield from unfit("set-unfit", together.plan, each.found, labels, name)


Line = tuple[Vector, Vector, str]
"""What is measured, from where to where in the world, mm, and a word for it."""


def _lying(together: SetTogether, name: str, line: Callable[[Laid], Line | None]) -> Beside:
    """Return what a finding on a thing that lies has besides its words."""
    laid = next(each for each in together.laid if each.stated.name == name)
    found = line(laid)
    return {
        "subject": name,
        "meeting": Meeting(
            pieces=tuple(each.label for each in laid.lying.pieces),
            others=tuple(each.label for one in laid.supports for each in one.pieces),
            grounded=True,
            measured=Measured(a=found[0], b=found[1], word=found[2]) if found else None,
        ),
    }


def _short(laid: Laid) -> Line:
    """Return how far a thing reaches past its outermost supports, or ends over them."""
    (left, front, low), (right, *_) = box_around(laid.lying.pieces)
    reaches = [box_around(each.pieces) for each in laid.supports]
    first, last = min(low_[0] for low_, _ in reaches), max(high[0] for _, high in reaches)
    over, end, edge = min((first - left, left, first), (right - last, right, last))
    return (end, front, low), (edge, front, low), "past it" if over >= 0 else "short"


def _crowd(laid: Laid) -> Line:
    """Return how far one support would stand in the next."""
    reaches = sorted(box_around(each.pieces) for each in laid.supports)
    _, one, other = max((a[1][0] - b[0][0], a, b) for a, b in pairwise(reaches))
    return (other[0][0], other[0][1], 0.0), (one[1][0], other[0][1], 0.0), "overlap"


def _slope(laid: Laid) -> Line:
    """Return the gap over the lowest of what bears a thing."""
    (left, front, _), (right, _, top) = min(
        (box_around(each.pieces) for each in laid.supports), key=lambda box: box[1][2]
    )
    under = box_around(laid.lying.pieces)[0][2]
    middle = (left + right) / 2
    return (middle, front, top), (middle, front, under), "gap"


def _to_side(laid: Laid) -> Line | None:
    """Return the way from under the middle of a thing to the side of what bears it."""
    ends = laid.to_side
    if ends is None:
        return None
    return *ends, "inside" if (laid.inset or 0.0) > 0 else "outside"
