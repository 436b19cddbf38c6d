"""What is said of joints that do not meet, are not checked, or leave a piece out."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from math import asin, degrees, dist

from kerfolio.assembly.adjustment import LEVER
from kerfolio.assembly.closure import Closure
from kerfolio.assembly.links import Link
from kerfolio.assembly.lots import lots
from kerfolio.assembly.misses import as_drawn, fit_of
from kerfolio.assembly.pairing import Gap
from kerfolio.assembly.trying import Trial
from kerfolio.assembly.verdicts import verdicts
from kerfolio.basis.finding import Finding, error, note, warning
from kerfolio.basis.measures import angle, reading
from kerfolio.basis.said import Text, Words, said, strung
from kerfolio.basis.words import listed
from kerfolio.geometry.rigid import Rigid, Vector, dot, length
from kerfolio.settling.settled import SettledPart

_MOST = 3
"""As many other readings are told at most."""

_NAMED = 4
"""So many joints are named at most where several things are wrong."""

_SLIGHT = 12.0
"""Where features miss each other by more, mm, and several do, no length is what is wrong."""

_SAME = 0.05
_NEAR = 1.0

_BACKWARD = 1.9 * LEVER
"""Features turned by more than so much, about 145 degrees as mm at the lever, lie backwards."""


def gap_findings(closure: Closure, links: Sequence[Link]) -> Iterator[Finding]:
    """Yield a finding for each feature to blame, or else for each joint that does not meet."""
    if closure.blames:
        yield from verdicts(closure.blames, links)
    elif closure.trials:
        yield _slip(closure.trials)
    else:
        yield from _missing(closure, links)


def _slip(trials: Sequence[Trial]) -> Finding:
    """Return what is said of a slip under which every loop closes; others stand in its advice."""
    first, *rest = (each.hypothesis for each in trials)
    advice: Text = first.cure
    others = [each.words for each in rest if each.words != first.words]
    if others:
        advice = said("{} Or else {}.", advice, strung(others[:_MOST], ", or "))
    return error("joint-off", first.words, first.place, advice, subject=first.subject)


def _missing(closure: Closure, links: Sequence[Link]) -> Iterator[Finding]:
    """Yield a finding for each joint that does not meet; pairs that are off alike share one."""
    joints = [list(each) for _, each in groupby(closure.gaps, key=lambda gap: gap.pairing.link)]
    several = len(joints) > 1
    if any(
        length(gap.off) > (_SLIGHT if several else _longest(gap, links)) for gap in closure.gaps
    ):
        yield _unsure(joints, links)
        return
    agree = (
        "Every other joint agrees without it."
        if len(joints) == 1
        else f"All joints but {len(joints)} agree."
    )
    for gaps in joints:
        link = links[gaps[0].pairing.link]
        if _counts_back(gaps, closure.poses):
            yield _counted_back(link)
            continue
        alike: list[list[Gap]] = []
        for each in gaps:
            fitting = [one for one in alike if _is_alike(one[0], each)]
            (fitting[0] if fitting else _opened(alike)).append(each)
        for one in alike:
            yield _told(link, one, agree)


def _longest(gap: Gap, links: Sequence[Link]) -> float:
    """Return the longest side of the two parts that do not meet, mm."""
    link = links[gap.pairing.link]
    return max(*link.a.part.size, *link.b.part.size)


def _unsure(joints: Sequence[Sequence[Gap]], links: Sequence[Link]) -> Finding:
    """Return what is said where neither a length nor one or two slips explain what is wrong.

    Where pieces lie is a guess then, so that no length between them means anything.
    """
    stated = [links[gaps[0].pairing.link].joint.stated for gaps in joints]
    names = listed([f"`{each.a}` and `{each.b}`" for each in stated[:_NAMED]])
    more = len(stated) - _NAMED
    names += f" and {more} more" if more > 0 else ""
    what = "several things seem wrong at once" if len(joints) > 1 else "no length alone is wrong"
    return error(
        "joint-off",
        f"{what} where {names} meet",
        stated[0].place,
        "Look at these joints one by one: their names, `show` and `looking`, and from which end "
        "their sets count. Leave joints out until the rest agrees.",
        subject=stated[0].a.name,
    )


def _counts_back(gaps: Sequence[Gap], poses: Mapping[str, Rigid]) -> bool:
    """Tell whether the first feature of a joint belongs to the last of the other end, and so on."""
    way, pairing = gaps[0].pairing.way, gaps[0].pairing
    if not 1 < len(way.pairs) == len(gaps):
        return False
    firsts = [poses[pairing.a].point(first.origin) for first, _ in way.pairs]
    seconds = [poses[pairing.b].point(second.origin) for _, second in way.pairs]
    if all(gap.turned > _BACKWARD for gap in gaps):
        return dist(_mean(firsts), _mean(seconds)) < dist(firsts[0], firsts[-1])
    return all(dist(a, b) < _NEAR for a, b in zip(firsts, reversed(seconds), strict=True))


def _mean(points: Sequence[Vector]) -> Vector:
    x, y, z = (math.fsum(axis) / len(points) for axis in zip(*points, strict=True))
    return x, y, z


def _counted_back(link: Link) -> Finding:
    stated = link.joint.stated
    message = f"`{stated.b}` count from the other end than `{stated.a}`"
    advice = "Each meets the one of its number: begin one of the two at its other end."
    return error("joint-off", message, stated.place, advice, subject=stated.b.name)


def _opened(groups: list[list[Gap]]) -> list[Gap]:
    groups.append([])
    return groups[-1]


def _is_alike(one: Gap, other: Gap) -> bool:
    return all(abs(a - b) < _SAME for a, b in zip(one.off, other.off, strict=True))


def _told(link: Link, gaps: Sequence[Gap], agree: str) -> Finding:
    gap = gaps[0]
    stated = link.joint.stated
    whole = len(gaps) == len(gap.pairing.way.pairs)
    first, second = link.names(gap.pairing.index)
    if whole:
        first, second = stated.a.name, stated.b.name
    message, cure = _wording(link, gap, first, second)
    advice, subject = f"{agree} {cure}", stated.b.name
    play = fit_of(link, gap.pairing.index)
    if length(gap.off) <= play and gap.turned <= play:
        advice = f"It is less than the fit, so the pieces go together with less play. {cure}"
        return warning("joint-off", message, stated.place, advice, subject=subject)
    return error("joint-off", message, stated.place, advice, subject=subject)


def _wording(link: Link, gap: Gap, first: str, second: str) -> tuple[Words, str]:
    """Return (what is wrong, what to look at) in words for a joint that is off."""
    inward = gap.pairing.pair[1].z
    depth = dot(gap.off, inward)
    flat = tuple(o - depth * i for o, i in zip(gap.off, inward, strict=True))
    across = length((flat[0], flat[1], flat[2]))
    if gap.turned > LEVER * _SAME and length(gap.off) < gap.turned:
        turned = angle("turned", degrees(2 * asin(min(1.0, gap.turned / LEVER / 2))))
        message = said("`{}` is turned {} against `{}`", second, turned, first)
        return message, "Look at the angles of both."
    if across >= abs(depth):
        ways = as_drawn((flat[0], flat[1], flat[2]))
        way = strung(ways, " and ") if ways else said("{} off", reading("off", across))
        message = said("`{}` is {} for `{}`", second, way, first)
        return message, "Look where both are measured from."
    a, b, part = link.a.piece, link.b.piece, link.a.part.name
    if depth > 0:
        size = reading("too-far", depth)
        message = said("`{}` reaches {} too far into `{}` at `{}`", a, size, b, second)
        return message, f"`{part}` is too long, or what holds the two apart too short."
    size = reading("short", -depth)
    message = said("`{}` ends {} short of `{}` at `{}`", a, size, b, second)
    return message, f"`{part}` is too short, or what holds the two apart too long."


def unchecked(bridges: Sequence[int], links: Sequence[Link]) -> Iterator[Finding]:
    """Yield a note on the joints that no loop checks."""
    if bridges:
        first = links[bridges[0]].joint.stated
        names = ", ".join(f"`{links[each].joint.stated.a}`" for each in bridges)
        message = f"nothing else checks where {names} {'lie' if len(bridges) > 1 else 'lies'}"
        advice, name = "No loop of joints closes there.", first.a.name
        yield note("joint-unchecked", message, first.place, advice, subject=name)


def unreached(
    parts: Mapping[str, SettledPart], reached: Mapping[str, object], links: Sequence[Link]
) -> Iterator[Finding]:
    """Yield a finding for each piece that no joint puts anywhere.

    Pieces that are joined with each other, but not with the rest, are told of together.
    """
    pairs = [(link.a.piece, link.b.piece) for link in links]
    for group in lots([piece for piece in parts if piece not in reached], pairs):
        piece, part = group[0], parts[group[0]]
        if len(group) > 1:
            names = listed([f"`{each}`" for each in group])
            message = f"no joint joins {names} with the rest"
            advice = (
                "Add a joint between them and the rest; if they are a thing of their own, write "
                "`assemblies`. They are left out of the drawings."
            )
            yield warning("piece-unjoined", message, part.place, advice, subject=piece)
        else:
            message = f"no joint says where `{piece}` goes"
            advice = f"Add a joint that ends in `{piece}`; it is left out of the drawings."
            yield warning("piece-unjoined", message, part.place, advice, subject=piece)
