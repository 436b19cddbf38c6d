"""Checks that pieces lie to each other as their names say: left of the right one, on its feet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kerfolio.assembly.building import Build
from kerfolio.assembly.ends import pieces_of
from kerfolio.assembly.hypotheses import Slip
from kerfolio.assembly.named_sides import Opposites, contradicted, opposites
from kerfolio.assembly.posing import panels_of
from kerfolio.assembly.standing import stood
from kerfolio.assembly.trying import ways_tried
from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.said import said
from kerfolio.geometry.rigid import Rigid
from kerfolio.proving.rule import COMMON_PRACTICE, together

_UPRIGHT = 0.1
"""A piece stands upright where its face looks up or down by no more than this share."""

_LIES = ("to the left of", "in front of", "below")


@together(
    "names-disagree",
    reason="Who reads `left` or `front` on a drawing looks for the piece there.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def stands_as_named(build: Build) -> Iterator[Finding]:
    """Look for pieces named by sides that lie the other way, and for a joint that turns them."""
    if build.drawn.gaps:
        return
    poses = {each.label: each.pose for each in build.drawn.assembled.pieces}
    named = opposites(poses)
    wrong = contradicted(named, poses, pieces_of(build.settled))
    if wrong:
        yield _turned(build, named, wrong[0]) or _asked(build, wrong[0])
    elif _heights(poses) == {-1.0}:
        yield from _upside_down(build)


def _heights(poses: Mapping[str, Rigid]) -> set[float]:
    """Return where the top of the drawing points of all that stands upright: 1 up, -1 down."""
    return {round(pose.y[2], 3) for pose in poses.values() if abs(pose.z[2]) < _UPRIGHT}


def _upside_down(build: Build) -> Iterator[Finding]:
    """Yield a note where a stated way alone makes everything stand upside down."""
    parts, panels = pieces_of(build.settled), panels_of(build.settled)
    standing = build.settled.plan.standing
    for each in ways_tried(build.settled):
        stands = _heights(stood(each.poses, parts, panels, standing)) == {1.0}
        if stands and each.hypothesis.slip is Slip.WAY:
            slip = each.hypothesis
            message = f"`{slip.subject}` makes all that stands upright stand upside down"
            advice = said("{} Or leave it, if that is meant.", slip.cure)
            yield note("names-disagree", message, slip.place, advice, subject=slip.subject)
            return


def _turned(build: Build, named: tuple[Opposites, ...], wrong: Opposites) -> Finding | None:
    """Return what is said of a joint without whose words all pieces lie as named, None of none."""
    parts, panels = pieces_of(build.settled), panels_of(build.settled)
    standing = build.settled.plan.standing

    def as_named(poses: Mapping[str, Rigid]) -> bool:
        return not contradicted(named, stood(poses, parts, panels, standing), parts)

    found = [each for each in ways_tried(build.settled) if as_named(each.poses)]
    if not found:
        return None
    first = min(found, key=lambda each: (each.hypothesis.slip, each.standing.unusual)).hypothesis
    advice = said("{} As it is, {}, against their names.", first.cure, _lie(wrong))
    return warning("names-disagree", first.words, first.place, advice, subject=first.subject)


def _asked(build: Build, wrong: Opposites) -> Finding:
    standing = build.settled.plan.standing
    place = standing.place if standing else pieces_of(build.settled)[wrong.high].place
    advice = (
        "State another `standing`, or exchange the names."
        if standing
        else "Write `standing: {piece: NAME, looks: front}` to say how the whole stands, or "
        "exchange the names."
    )
    return note(
        "names-disagree",
        f"the names say otherwise, but {_lie(wrong)}",
        place,
        advice,
        subject=wrong.high,
    )


def _lie(wrong: Opposites) -> str:
    return f"`{wrong.high}` lies {_LIES[wrong.axis]} `{wrong.low}`"
