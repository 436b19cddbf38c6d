"""Checks that shelves and rails are held by more than friction once all is in place.

Only straight moves of one piece out of the finished whole are looked at. What can be lifted off is
held by its weight; what slides out level, or drops, is held by nothing but its fit.
"""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.ends import pieces_of
from kerfolio.assembly.extent import corners
from kerfolio.assembly.handworked import glued_ends, has_ends, is_of
from kerfolio.basis.finding import Finding, Meeting, Severity, note
from kerfolio.basis.place import Place
from kerfolio.geometry.rigid import Vector, dot
from kerfolio.model.joint_kind import WEDGE_JOINT
from kerfolio.model.plan import Plan
from kerfolio.model.purpose import DROP_IN, PRESS
from kerfolio.proving.rule import COMMON_PRACTICE, together
from kerfolio.settling.fastened import fastenings_of

_BOTH = 2
"""A shelf or a rail lies between so many others at least."""

_DROPS = -0.5
_LEVEL = 0.5
_IN_PLANE = 0.3
"""Shares of a unit vector: a way that drops, one that is level, one that runs along a panel."""

_FLOOR = 0.5
"""What comes this near to the lowest point, mm, stands on the floor."""


@together(
    "held-by-friction",
    reason="What only its fit holds works loose as wood dries, and slides out under a hand.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def shelves_held(build: Build) -> Iterator[Finding]:
    """Look for shelves and rails that slide out or drop once all is in place, and nothing holds."""
    assembled, plan = build.drawn.assembled, build.settled.plan
    if build.apart is None or build.drawn.gaps or plan.listed or _unplaced(plan):
        return  # what hardware without a place holds is not known
    held = _held(build)
    for label, ways in build.apart.free:
        piece = assembled.piece(label)
        if label in held or _on_floor(piece, assembled) or len(_mates(label, assembled)) < _BOTH:
            continue
        way = next((each for each in ways if _lets_go(piece, each)), None)
        if way is None:
            continue
        how = "drops out" if way[2] < _DROPS else "slides out"
        message = f"only friction holds `{label}`: it {how} once all is in place"
        advice = (
            "Let a later piece, a wedge or a fastening hold it, glue it (`fit: glued`), or say "
            "that it is to hold so: `fit: press`, `fit: drop-in`."
        )
        meeting = Meeting(pieces=(label,), way=way, variant=build.settled.variant.label)
        yield note(
            "held-by-friction",
            message,
            pieces_of(build.settled)[label].place,
            advice,
            subject=label,
            meeting=meeting,
        )


def _lets_go(piece: PosedPiece, way: Vector) -> bool:
    """Tell whether a way drops a piece, or slides it level along its own plane."""
    along = abs(dot(piece.pose.z, way)) < _IN_PLANE
    return way[2] < _DROPS or (abs(way[2]) < _LEVEL and along)


def _held(build: Build) -> set[str]:
    """Return the pieces that a fastening, glue or a wedge holds, or a fit that says it is meant."""
    plan, assembled = build.settled.plan, build.drawn.assembled
    held = {label for each in fastenings_of(build.settled) for label in each.pieces}
    meant, ends = {*_meant(plan)}, glued_ends(plan)
    glued = [each.name for step in plan.steps if step.glues for each in step.glues.of]
    for joint in assembled.joints:
        named = any(is_of(joint, name) for name in glued)
        if joint.kind is WEDGE_JOINT or joint.place in meant or named or has_ends(joint, ends):
            held |= {joint.a, joint.b}
    return held


def _meant(plan: Plan) -> Iterator[Place]:
    for joint, fit in plan.fits:
        if fit is not None and fit.purpose in (PRESS, DROP_IN):
            yield joint.place


def _unplaced(plan: Plan) -> bool:
    return any(step.hardware for step in plan.steps)


def _mates(label: str, assembled: Assembled) -> set[str]:
    pairs = [{each.a, each.b} for each in assembled.joints if label in (each.a, each.b)]
    return {other for pair in pairs for other in pair if other != label}


def _on_floor(piece: PosedPiece, assembled: Assembled) -> bool:
    floor = min(point[2] for each in assembled.pieces for point in corners(each))
    return min(point[2] for point in corners(piece)) < floor + _FLOOR
