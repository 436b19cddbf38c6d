"""A thing in use, in words: one place for page, booklet and ``plan.json``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.in_use import (
    BRACE,
    JOINTS_ALONE,
    PANEL,
    SHOULDER,
    Edge,
    Fit,
    InUse,
    Push,
    fits,
)
from kerfolio.assembly.stability_words import way_words
from kerfolio.basis.figures import degrees_text, figure
from kerfolio.basis.lengths import about_text, both_text, sag_pair
from kerfolio.basis.masses import force_text, load_pair
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.edition.loads import Figure
from kerfolio.model.use import LEAN, PLANE, SIT, STAND, STORE, WALL
from kerfolio.shop.assumption import COMMON_PRACTICE, Assumption
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import SagResult, overloaded

DOING = {
    SIT: "sitting",
    STAND: "carrying",
    STORE: "storing",
    LEAN: "leaning on",
    PLANE: "planing",
}
CAUTIONS = (
    "Estimates from stated values for a stiff, sound thing on a hard, level floor; no rating. Try "
    "it with care before you trust it.",
    "Who jumps, rocks, climbs or stands on it asks more than is reckoned here.",
    "Local codes and licensed practice come first.",
)
_STATICS = "statics of a rigid body"


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """What is told of it: the plain ``sentence``, the figures, and what stands beside them."""

    sentence: str
    fits: tuple[Fit, ...]
    figures: tuple[Figure, ...]
    assumptions: tuple[Assumption, ...]
    cautions: tuple[str, ...] = CAUTIONS
    heading: str = "Estimates, no ratings"


def used_of(edition: Edition) -> Used | None:
    """Return what is told of a thing in use; None where the plan states no uses, or no whole."""
    found = edition.in_use
    if found is None:
        return None
    results = [each for each in edition.spans if isinstance(each, SagResult | LegResult)]
    carries = not any(overloaded(each) for each in results)
    sits = edition.sat_on is None or not overloaded(edition.sat_on)
    judged = fits(edition.plan, found, sits=sits, carries=carries)
    first = edition.first
    return Used(
        sentence=sentence_of(judged),
        fits=judged,
        figures=(
            *_sags(edition, found, first),
            *_edge(found.edge, found, SIT in edition.plan.uses, first),
            *(each for push in found.pushes for each in _push(push, found, first)),
        ),
        assumptions=_assumptions(edition, found, first),
    )


def sentence_of(judged: tuple[Fit, ...]) -> str:
    """Return the plain sentence: ``For sitting and carrying; not for planing: ...``."""
    good = [DOING[each.use] for each in judged if not each.why]
    bad = [each for each in judged if each.why]
    reasons: dict[str, list[str]] = {}
    for each in bad:
        reasons.setdefault(each.why, []).append(DOING[each.use])
    parts = [f"for {listed(good)}"] if good else []
    parts += [f"not for {' or '.join(uses)}: {why}" for why, uses in reasons.items()]
    text = "; ".join(parts)
    return f"{text[:1].upper()}{text[1:]}."


def _both(pair: tuple[str, str]) -> str:
    return f"{pair[0]} ({pair[1]})"


def _sags(edition: Edition, found: InUse, first: str) -> Iterator[Figure]:
    """Yield the panel's sag with the person in its middle, and with what its span is stated for."""
    uses, sat = edition.plan.uses, edition.sat_on
    if SIT in uses:
        head = f"{found.panel.capitalize()} with a person in its middle sags"
        if sat is None:
            yield Figure(head=head, value="not known", notes=(f"no span of `{found.part}` tells",))
        else:
            yield Figure(head=head, value=_sag(sat, first), notes=_later(sat, first))
    for each in edition.spans:
        if {STAND, STORE} & set(uses) and isinstance(each, SagResult):
            load = _both(load_pair(each.load, first))
            head = f"{each.name.replace('-', ' ').capitalize()} with {load} sags"
            yield Figure(head=head, value=_sag(each, first), notes=_later(each, first))


def _sag(result: SagResult, first: str) -> str:
    return f"{_both(sag_pair(result.sags[0].first_day, first))} on the first day"


def _later(result: SagResult, first: str) -> tuple[str, ...]:
    later = result.sags[0].long_term
    if later is None:
        return ("after years: not known, no creep is stated",)
    return (f"{_both(sag_pair(later, first))} after years",)


def _edge(edge: Edge, found: InUse, sitting: bool, first: str) -> Iterator[Figure]:
    """Yield where a person may sit before it tips, and how it tips with them at the edge."""
    towards, person = way_words(edge.way), _both(load_pair(found.person.kg, first))
    if edge.load is None:
        yield Figure(
            head="A load on its edge tips it",
            value="nowhere: it stays over the feet",
            notes=(f"nearest {towards}, {about_text(-edge.out, first)} inside",),
        )
    else:
        inset = max(0.0, edge.out - edge.beyond)
        where = f"no nearer than {about_text(inset, first)} to that edge" if inset else "anywhere"
        yield Figure(
            head="A load on its edge tips it, from",
            value=f"{_both(load_pair(edge.load, first))} {towards}",
            notes=(
                f"there it reaches {about_text(edge.out, first)} beyond the feet",
                f"{'a person' if sitting else 'a load'} of {person} may be {where}",
            ),
        )
    tilt = "by itself" if edge.angle <= 0 else f"when tilted by {degrees_text(edge.angle)}"
    yield Figure(head=f"With {person} on that edge it tips", value=f"{tilt}, {towards}")


_STIFF = {
    PANEL: "a panel stiffens it",
    BRACE: "a brace stiffens it",
    SHOULDER: "a bolted shoulder stiffens it",
}


def _push(push: Push, found: InUse, first: str) -> Iterator[Figure]:
    """Yield what a push one way does, and what stands against it."""
    empty = _moves(push.slides_empty, push.tips_empty, first)
    loaded = _moves(push.slides_loaded, push.tips_loaded, first)
    yield Figure(
        head=f"Pushed {push.way}, {about_text(found.height, first)} up, empty it",
        value=empty,
        notes=(f"with the person on it, it {loaded}",),
    )
    kept = f"{_STIFF[push.stiffened]}: {listed(push.by)}" if push.stiffened else JOINTS_ALONE
    count = f"{push.tabs} tab{'' if push.tabs == 1 else 's'}" if push.tabs else "no tab"
    lean = "none: what stands along the push, or bolts, leave no play"
    if push.lean is not None:
        lean = f"up to {both_text(push.lean, first)} at the top, by the play of its joints"
    elif not push.stiffened:
        lean = "not known: no tab holds it this way"
    yield Figure(head=f"It leans {push.way}", value=lean, notes=(f"{count} there; {kept}",))


def _moves(slides: float, tips: float, first: str) -> str:
    """Return which of sliding and tipping comes first, and at what push."""
    if slides <= tips:
        return f"slides at {force_text(slides, first)}, before it tips at {force_text(tips, first)}"
    return f"tips at {force_text(tips, first)}, before it slides at {force_text(slides, first)}"


def _assumptions(edition: Edition, found: InUse, first: str) -> tuple[Assumption, ...]:
    person, fixed = found.person, edition.plan.placed == WALL
    stands = "free on the floor" + (", as before it is fixed to the wall" if fixed else "")
    facts = (
        (
            "Person",
            _both(load_pair(person.kg, first)),
            "stated in the plan, else the scope of EN 1022:2018",
        ),
        (
            "Push of a person who leans or planes",
            force_text(person.push, first),
            f"stated in the plan, else {COMMON_PRACTICE}",
        ),
        (
            "Friction between feet and floor",
            figure(found.friction),
            "stated in the plan, else 0.3, wood on a hard floor; from memory",
        ),
        ("It stands", stands, "simplification"),
        (
            "Panel that carries",
            f"{found.panel}, the highest broad one that lies flat",
            "the plan put together",
        ),
        (
            "Tipping",
            "over the hull of what touches the floor; a load at the panel's edge over m b / o",
            _STATICS,
        ),
        ("Pushing", "level, at the height of the panel, the worse of both directions", _STATICS),
        (
            "Lean",
            "each tab turns in its slot by twice the fit over its depth",
            "geometry of small angles; give of the wood not reckoned",
        ),
        (
            "Stiffening",
            "a panel half as high as the uprights, a shoulder drawn up by bolts, or braces "
            "together a quarter as high",
            COMMON_PRACTICE,
        ),
    )
    return tuple(Assumption(label=a, value=b, source=c) for a, b, c in facts)
