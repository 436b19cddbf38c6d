"""What is said of features that are to blame for joints that do not meet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import degrees

from kerfolio.assembly.adjustment import LEVER
from kerfolio.assembly.blame import Blame, Culprit
from kerfolio.assembly.feature_kinds import Freedom
from kerfolio.assembly.links import Link
from kerfolio.assembly.misses import as_drawn, fit_of
from kerfolio.assembly.pairing import TOLERANCE
from kerfolio.basis.finding import Finding, error, warning
from kerfolio.basis.measures import angle, reading
from kerfolio.basis.said import Text, Words, enumerated, said, strung
from kerfolio.basis.thickness import read_off
from kerfolio.basis.words import listed
from kerfolio.geometry.rigid import added, scaled

_MOST = 3
"""As many other readings, and as many features that do not meet, are told at most."""


def verdicts(blames: Sequence[Blame], links: Sequence[Link]) -> Iterator[Finding]:
    """Yield a finding for each culprit of the first explanation; the others stand in its advice."""
    first = blames[0]
    count = len(first.culprits)
    right = "this is" if count == 1 else f"these {count} are"
    told = dict.fromkeys(_sentence(each.culprits) for each in blames)
    others = [each for each in told if each != _sentence(first.culprits)]
    for culprit in first.culprits:
        advice: Text = f"Every joint agrees once {right} put right."
        if others:
            advice = said("{} Or else {}.", advice, strung(others[:_MOST], ", or "))
        yield _finding(culprit, links, advice, sure=not others)


def _sentence(culprits: Sequence[Culprit]) -> Words:
    return enumerated([charge(each) for each in culprits])


def _finding(culprit: Culprit, links: Sequence[Link], advice: Text, *, sure: bool) -> Finding:
    message, subject = charge(culprit), culprit.suspect.part.name
    if not is_length(culprit):
        message = said("{} for {}", message, _met(culprit, links))
        subject = culprit.suspect.name
    pairing = culprit.gaps[0].pairing
    link = links[pairing.link]
    stated = culprit.suspect.part.place if is_length(culprit) else culprit.suspect.place
    place = stated if sure else link.joint.stated.place
    if max(abs(v) for v in culprit.by) <= fit_of(link, pairing.index):
        less = said("It is less than the fit, so the pieces go together with less play. {}", advice)
        return warning("joint-off", message, place, less, subject=subject)
    return error("joint-off", message, place, advice, subject=subject)


def is_length(culprit: Culprit) -> bool:
    """Tell whether nothing is wrong but how far the outline goes."""
    outward, along, *_ = culprit.by
    return culprit.suspect.freedom is Freedom.OUTLINE and abs(along) < TOLERANCE < abs(outward)


def charge(culprit: Culprit) -> Words:
    """Return what is wrong with a suspect, as its part is drawn."""
    suspect, by = culprit.suspect, culprit.by
    charges: list[Words] = []
    words: list[Words] = []
    along = scaled(suspect.axes[0], by[0])
    if suspect.freedom is Freedom.OUTLINE and abs(by[0]) > TOLERANCE:
        across = abs(suspect.outward[0]) > abs(suspect.outward[1])
        ends = "from left to right" if across else "from bottom to top"
        how = "long" if by[0] < 0 else "short"
        size = reading(f"too-{how}", read_off(abs(by[0])))
        charges.append(said("`{}` is {} too {} {}", suspect.part.name, size, how, ends))
    elif suspect.freedom is Freedom.DEPTH and abs(by[0]) > TOLERANCE:
        how = "shallow" if by[0] < 0 else "deep"
        words.append(said("{} too {}", reading(f"too-{how}", read_off(abs(by[0]))), how))
    if suspect.freedom.on_edge:
        along = (0.0, 0.0, 0.0)
    words += as_drawn(added(along, scaled(suspect.axes[1], by[1])))
    if suspect.turns and abs(by[2]) > 2 * TOLERANCE:
        way = "clockwise" if by[2] > 0 else "counter-clockwise"
        turned = angle("turned", degrees(abs(by[2]) / LEVER))
        words.append(said("turned {} too far {}", turned, way))
    if words:
        charges.append(said("`{}` is {}", suspect.name, enumerated(words)))
    return strung(charges, " and ")


def _met(culprit: Culprit, links: Sequence[Link]) -> str:
    """Return the other ends of the joints that a culprit spoils."""
    names = []
    for gap in culprit.gaps:
        link = links[gap.pairing.link]
        stated, first = link.joint.stated, link.a.part is culprit.suspect.part
        whole = "." not in culprit.suspect.feature
        ends = (stated.a.name, stated.b.name) if whole else link.names(gap.pairing.index)
        names.append(f"`{ends[1] if first else ends[0]}`")
    known = list(dict.fromkeys(names))
    more = [f"{len(known) - _MOST} more"] if len(known) > _MOST else []
    return listed([*known[:_MOST], *more])
