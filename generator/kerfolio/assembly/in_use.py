"""What a thing put together does under a person: where it tips, slides and leans.

Statics of a rigid body on a level floor (any statics textbook). With m its mass, b the way from its
centre of mass to an edge of what touches the floor, M a person on its carrying panel, o how far
that panel's edge reaches beyond the floor's edge, H the height of the panel and mu the friction:

- a load at the panel's edge tips it when it is over m b / o; a person M may be m b / M beyond;
- a level push at H slides it at mu (m + M) g, and tips it at (m b + M b') g / H, b' being the way
  from the person to that edge.

The lean is that of a tab of depth e in a slot with the clearance f on each side: it turns by
2 f / e until two opposite corners touch (geometry of small angles), and so does what stands on it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedJoint
from kerfolio.assembly.bracing import ENOUGH, Braced, bracing
from kerfolio.assembly.stability import Stability, along, sides, top_panel
from kerfolio.basis.masses import GRAVITY
from kerfolio.basis.said import Text, Words, phrase
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Vector, dot
from kerfolio.model.feature import Hole
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.model.person import Person
from kerfolio.model.plan import Plan
from kerfolio.model.use import LEAN, SIT, STAND, STORE, WALL
from kerfolio.settling.settled import SettledFeature, SettledPlan

PANEL, BRACE, SHOULDER = "panel", "brace", "bolted-shoulder"

_ALONG = 0.9
_HALF = 0.5
_NUTS = ("barrel-nut", "insert", "tee-nut", "nut")


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """A person at the edge of the panel, over one side of what touches the floor; mm, kg, degrees.

    ``way`` is a unit vector out of that side. ``out`` is how far the panel's edge reaches beyond
    it (below 0: it stays inside). ``load`` is what tips it there, None where none does; ``beyond``
    how far beyond the side the person may be. ``angle`` is the tilt that tips it with the person
    at the panel's edge, below 0 where it falls by itself.
    """

    way: Point
    out: float
    load: float | None
    beyond: float
    angle: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Push:
    """A level push at the height of the panel, one way and back; N, the lesser of the two.

    ``tabs`` resist it; ``lean`` is how far their play lets the panel go, mm, None where a panel
    that stands along the push or a bolted shoulder leaves none. ``stiffened`` is what keeps it
    square: ``panel``, ``brace``, ``bolted shoulder``, or empty: the joints alone. ``by`` are its
    pieces.
    """

    way: Words
    slides_empty: float
    slides_loaded: float
    tips_empty: float
    tips_loaded: float
    tabs: int
    lean: float | None
    stiffened: str
    by: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class InUse:
    """A thing under a person on its ``panel`` (a piece's label), whose upper face is ``height`` up.

    ``panel`` is empty where none lies flat: the person is on what of it is highest.
    ``edge`` is where it tips first. ``pushes`` are to the side and to the front or back; ``along``
    tells which of them goes along the panel. ``middle_tips``: it falls with the person in its
    middle. ``lies``: the panel lies loose on what bears it, so that it tips off and slides on that.
    """

    panel: str
    part: str
    height: float
    person: Person
    friction: float
    edge: Edge
    pushes: tuple[Push, ...]
    along: int
    middle_tips: bool
    lies: bool = False


def in_use_of(
    settled: SettledPlan, assembled: Assembled, stability: Stability, *, bare: bool = False
) -> InUse | None:
    """Return what it does in use; None where nothing asks for it.

    That is where nothing but storing is stated, nothing flat is on the floor or, unless ``bare``,
    no panel lies flat.
    """
    panel, plan = top_panel(assembled), settled.plan
    if not set(plan.uses) - {STORE} or not stability.contact or not (panel or bare):
        return None
    return InUse(
        panel=panel.label if panel else "",
        part=panel.part if panel else "",
        height=stability.crown_height,
        person=plan.person,
        friction=plan.friction,
        edge=first_edge((stability,), plan.person),
        pushes=pushes_of(settled, assembled, stability),
        along=longer_axis(stability.crown),
        middle_tips=tips_in_the_middle(stability, plan.person),
    )


def pushes_of(settled: SettledPlan, assembled: Assembled, whole: Stability) -> tuple[Push, ...]:
    """Return what a push to the side does, and one to the front or back."""
    return tuple(_push(each, settled, assembled, whole) for each in bracing(assembled))


def first_edge(bodies: Sequence[Stability], person: Person) -> Edge:
    """Return where the first of bodies tips with a person at the edge of its panel."""
    around = [(body, side) for body in bodies for side in sides(body)]
    return min((_edge(body, *side, person.kg) for body, side in around), key=_first)


def tips_in_the_middle(body: Stability, person: Person) -> bool:
    """Tell whether a body falls with a person in the middle of its panel."""
    middle = middle_of(body.crown)
    return any(_moment(body, person.kg, *side, middle) < 0 for side in sides(body))


def longer_axis(hull: tuple[Point, ...]) -> int:
    """Return 0 where a hull is longer from left to right, 1 where it is from front to back."""
    spans = [max(axis) - min(axis) for axis in zip(*hull, strict=True)]
    return 0 if spans[0] >= spans[1] else 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """Whether a stated ``use`` fits; ``why`` not, empty where it does. An estimate, no rating."""

    use: str
    why: Text = ""


def fits(plan: Plan, found: InUse, *, sits: bool, carries: bool) -> tuple[Fit, ...]:
    """Return whether each use of the plan fits.

    ``sits`` and ``carries`` tell whether its spans bear the person and what they are stated for.
    What is fixed to the wall neither tips nor slides.
    """
    bears = {SIT: sits, STAND: carries, STORE: carries}
    fixed = plan.placed == WALL
    return tuple(Fit(use=use, why=_why_not(use, found, bears, fixed=fixed)) for use in plan.uses)


def _why_not(use: str, found: InUse, bears: dict[str, bool], *, fixed: bool) -> Text:
    if use in bears:
        if not found.panel:
            return phrase("pushes-no-panel")
        if not bears[use]:
            return phrase("pushes-too-much")
        tips = use == SIT and found.middle_tips and not fixed
        return phrase("pushes-tips-middle") if tips else ""
    if fixed:
        return ""
    pushes = found.pushes if use == LEAN else found.pushes[found.along : found.along + 1]
    return next((why for why in (_yields(each, found.person) for each in pushes) if why), "")


def _yields(push: Push, person: Person) -> Text:
    """Return that its joints alone stand against a push, or how the person's moves it empty."""
    if not push.stiffened:
        return phrase("pushes-joints-alone", way=push.way)
    if push.tips_empty < min(person.push, push.slides_empty):
        return phrase("pushes-tips", way=push.way)
    if push.slides_empty < person.push:
        return phrase("pushes-slides", way=push.way)
    return ""


def _first(edge: Edge) -> tuple[float, Point]:
    return round(edge.angle, 6), edge.way


def middle_of(hull: tuple[Point, ...]) -> Point:
    """Return the middle of the box around a hull."""
    (left, right), (front, back) = ((min(axis), max(axis)) for axis in zip(*hull, strict=True))
    return (left + right) / 2, (front + back) / 2


def _edge(whole: Stability, way: Point, side: float, kg: float) -> Edge:
    out = max(along(point, way) for point in whole.crown) - side
    reach = side - along((whole.centre[0], whole.centre[1]), way)
    held = whole.mass * reach
    height = (whole.mass * whole.centre[2] + kg * whole.crown_height) / (whole.mass + kg)
    return Edge(
        way=way,
        out=out,
        load=max(0.0, held / out) if out > 0 else None,
        beyond=max(0.0, held / kg),
        angle=math.degrees(math.atan2((held - kg * out) / (whole.mass + kg), height)),
    )


def _moment(whole: Stability, kg: float, way: Point, side: float, person: Point) -> float:
    """Return what holds it down about a side, kg mm: its own weight and the person's."""
    own = whole.mass * (side - along((whole.centre[0], whole.centre[1]), way))
    return own + kg * (side - along(person, way))


def _push(braced: Braced, settled: SettledPlan, assembled: Assembled, whole: Stability) -> Push:
    kg, middle = settled.plan.person.kg, middle_of(whole.crown)
    slide = settled.plan.friction * GRAVITY
    tabs = [each for each in assembled.joints if _resists(each, braced.push)]
    stiffened, by = _stiffening(braced, settled, assembled)
    play = [_turn(each, settled, assembled) for each in tabs]
    square = stiffened == SHOULDER or not braced.uprights
    return Push(
        way=braced.way,
        slides_empty=slide * whole.mass,
        slides_loaded=slide * (whole.mass + kg),
        tips_empty=tipped_by(whole, 0.0, middle, braced.push),
        tips_loaded=tipped_by(whole, kg, middle, braced.push),
        tabs=len(tabs),
        lean=None if square or not play else whole.crown_height * min(play),
        stiffened=stiffened,
        by=by,
    )


def tipped_by(whole: Stability, kg: float, person: Point, push: Vector) -> float:
    """Return the lesser push, one way or back, that tips it about any side it drives against, N.

    ``kg`` stands on it at ``person``; the push is at the height of its panel.
    """
    found = [math.inf]
    for way, side in sides(whole):
        lever = abs(along((push[0], push[1]), way)) * whole.crown_height
        if lever > whole.crown_height * 1e-6:
            found.append(_moment(whole, kg, way, side, person) * GRAVITY / lever)
    return max(0.0, min(found))


def _resists(joint: PosedJoint, push: Vector) -> bool:
    return joint.kind is TAB_JOINT and abs(dot(joint.frame.z, push)) > _ALONG


def _turn(joint: PosedJoint, settled: SettledPlan, assembled: Assembled) -> float:
    """Return how far a tab turns in its slot when that is dry, radians: 2 f / e."""
    piece, into = assembled.piece(joint.a), assembled.piece(joint.b)
    tab, slot = (
        _feature(end, label, settled, assembled)
        for end, label in zip(joint.ends, (joint.a, joint.b), strict=True)
    )
    deep = tab.length.value if tab else math.inf
    fit = slot.room.dry if slot and slot.room else settled.sheet(piece.sheet).fit
    return 2 * fit / min(deep, into.panel.thickness)


def _feature(
    end: str, label: str, settled: SettledPlan, assembled: Assembled
) -> SettledFeature | None:
    """Return the feature that an end of a joint names."""
    part, name = settled.part(assembled.piece(label).part), end[len(label) + 1 :]
    return next((each for each in part.features if each.name == name), None)


def _stiffening(
    braced: Braced, settled: SettledPlan, assembled: Assembled
) -> tuple[str, tuple[str, ...]]:
    """Return what keeps it square against a push, the surest first, and its pieces."""
    if len(braced.uprights) < 2:
        return (PANEL, braced.planes) if braced.planes else ("", ())
    height = min(_tall(label, assembled) for label in braced.uprights)
    deep = tuple(label for label, high in braced.braces if high >= _HALF * height)
    if deep:
        return PANEL, deep
    bolted = tuple(
        label for label, _ in braced.braces if _is_bolted(label, braced, settled, assembled)
    )
    if bolted:
        return SHOULDER, bolted
    if braced.share >= ENOUGH:
        return BRACE, tuple(label for label, _ in braced.braces)
    return "", ()


def _tall(label: str, assembled: Assembled) -> float:
    piece = assembled.piece(label)
    heights = [piece.pose.point((x, y, 0.0))[2] for x, y in piece.panel.shape.outer]
    return max(heights) - min(heights)


def _is_bolted(label: str, braced: Braced, settled: SettledPlan, assembled: Assembled) -> bool:
    """Tell whether bolts through the uprights draw a brace's shoulders on to them."""
    kinds = _hardware(assembled.piece(label).part, settled)
    through = [_hardware(assembled.piece(each).part, settled) for each in braced.uprights]
    return bool(kinds & set(_NUTS)) and all("bolt" in each for each in through)


def _hardware(part: str, settled: SettledPlan) -> set[str]:
    """Return the kinds of hardware that a part has holes for."""
    stated = settled.plan.part(part)
    holes = [each.cutting for each in stated.features if isinstance(each.cutting, Hole)]
    items = [settled.stock.item(each.for_.name) for each in holes if each.for_ is not None]
    return {getattr(each, "kind", "") for each in items if each is not None}
