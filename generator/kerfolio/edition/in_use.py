"""A thing in use, in words: one place for page, booklet and ``plan.json``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
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
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted, listed
from kerfolio.edition.edition import Edition, ThingInUse
from kerfolio.edition.loads import HELD_BY, Figure
from kerfolio.edition.making import counted_things
from kerfolio.model.plan import Plan
from kerfolio.model.use import LEAN, PLANE, SIT, STAND, STORE, WALL
from kerfolio.settling.titles import called, part_title, piece_title, within
from kerfolio.shop.assumption import COMMON_PRACTICE, Assumption
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import SagResult, overloaded, span_title

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
class UsedWords:
    """What is told of a thing: the plain ``sentence`` and its figures; ``title`` in a set."""

    title: str
    sentence: str
    fits: tuple[Fit, ...]
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """What is told of all things in use, and what stands beside their figures."""

    things: tuple[UsedWords, ...]
    assumptions: tuple[Assumption, ...]
    cautions: tuple[str, ...] = CAUTIONS
    heading: str = "Estimates, no ratings"


def used_of(edition: Edition) -> Used | None:
    """Return what is told of things in use; None where the plan states no uses, or no whole."""
    if not edition.in_use:
        return None
    rests = [each for thing in edition.in_use for each in _assumptions(edition, thing)]
    return Used(
        things=tuple(_words(edition, each) for each in edition.in_use),
        assumptions=tuple(dict.fromkeys(rests)),
    )


def _words(edition: Edition, thing: ThingInUse) -> UsedWords:
    found, reader, spans = thing.found, edition.reader, _spans(edition, thing)
    carries = not any(overloaded(each) for each in spans)
    sits = thing.sat_on is None or not overloaded(thing.sat_on)
    judged = fits(edition.plan, found, sits=sits, carries=carries)
    return UsedWords(
        title=_title(edition.plan, thing),
        sentence=sentence_of(judged),
        fits=judged,
        figures=(
            *_sags(edition.plan, thing, spans, reader),
            *_edge(found.edge, found, SIT in edition.plan.uses, reader),
            *(each for push in found.pushes for each in _push(push, edition.plan, found, reader)),
        ),
    )


def _title(plan: Plan, thing: ThingInUse) -> str:
    """Return which thing of a set is told of: ``Board on 2 × Foot``; nothing of a single one."""
    if thing.stated is None:
        return ""
    if thing.on:
        return f"{called(thing.stated)} on {counted_things(thing.on, plan)}"
    return f"{called(thing.stated)}{', by itself' if thing.bears else ''}"


def _spans(edition: Edition, thing: ThingInUse) -> list[SagResult | LegResult]:
    """Return the spans of a thing, and of what it lies on."""
    results = [each for each in edition.spans if isinstance(each, SagResult | LegResult)]
    if thing.stated is None:
        return results
    owned = [each for each in edition.plan.assemblies if each.name in thing.on]
    names = thing.stated.parts.union(*(each.parts for each in owned))
    parts = {span.name: span.part.name for span in edition.plan.spans if span.part}
    return [each for each in results if parts.get(each.name) in names]


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


def _sags(
    plan: Plan, thing: ThingInUse, spans: Sequence[SagResult | LegResult], reader: Reader
) -> Iterator[Figure]:
    """Yield the panel's sag with the person in its middle, and with what its span is stated for."""
    uses, sat, found = plan.uses, thing.sat_on, thing.found
    if SIT in uses and found.panel:
        panel = piece_title(plan, found.panel)
        head = f"{panel} with a person in its middle sags"
        if sat is None:
            none = f"no span of the {within(part_title(plan, found.part))} is stated"
            yield Figure(head=head, value="not known", notes=(none,))
        else:
            yield Figure(head=head, value=_sag(sat, reader), notes=_later(sat, reader))
    for each in spans:
        if {STAND, STORE} & set(uses) and isinstance(each, SagResult):
            notes = (f"with {_both(load_pair(each.load, reader))}", *_later(each, reader))
            head = f"{span_title(each.name)} sags"
            yield Figure(head=head, value=_sag(each, reader), notes=notes)


def _sag(result: SagResult, reader: Reader) -> str:
    return f"{_both(sag_pair(result.sags[0].first_day, reader))} on the first day"


def _later(result: SagResult, reader: Reader) -> tuple[str, ...]:
    later = result.sags[0].long_term
    if later is None:
        return ("after years: not known, no creep is stated",)
    return (f"{_both(sag_pair(later, reader))} after years",)


def _edge(edge: Edge, found: InUse, sitting: bool, reader: Reader) -> Iterator[Figure]:
    """Yield where a person may sit before it tips, and how it tips with them at the edge."""
    borne = "what it lies on" if found.lies else "the feet"
    towards, person = way_words(edge.way), _both(load_pair(found.person.kg, reader))
    if edge.load is None:
        yield Figure(
            head="A load on its edge tips it",
            value=f"nowhere: it stays over {borne}",
            notes=(f"nearest {towards}, {about_text(-edge.out, reader)} inside",),
        )
    else:
        inset = max(0.0, edge.out - edge.beyond)
        where = f"no nearer than {about_text(inset, reader)} to that edge" if inset else "anywhere"
        yield Figure(
            head=f"A load on its edge tips it{' off' if found.lies else ''}, from",
            value=f"{_both(load_pair(edge.load, reader))} {towards}",
            notes=(
                f"there it reaches {about_text(edge.out, reader)} beyond {borne}",
                f"{'a person' if sitting else 'a load'} of {person} may be {where}",
            ),
        )
    tilt = "by itself" if edge.angle <= 0 else f"when tilted by {degrees_text(edge.angle)}"
    yield Figure(
        head="With a person on that edge it tips",
        value=f"{tilt}, {towards}",
        notes=(f"a person of {person}",),
    )


_STIFF = {
    PANEL: "a panel stiffens it",
    BRACE: "a brace stiffens it",
    SHOULDER: "a bolted shoulder stiffens it",
}


def _push(push: Push, plan: Plan, found: InUse, reader: Reader) -> Iterator[Figure]:
    """Yield what a push one way does, and what stands against it."""
    on = " on what it lies on" if found.lies else ""
    empty = _moves(push.slides_empty, push.tips_empty, on, reader)
    loaded = _moves(push.slides_loaded, push.tips_loaded, on, reader)
    yield Figure(
        head=f"Pushed {push.way}, empty, it",
        value=empty,
        notes=(
            f"pushed {about_text(found.height, reader)} up",
            f"with the person on it, it {loaded}",
        ),
    )
    by = listed([within(piece_title(plan, each)) for each in push.by])
    kept = f"{_STIFF[push.stiffened]}: {by}" if push.stiffened else JOINTS_ALONE
    count = counted(push.tabs, "tab") if push.tabs else "no tab"
    lean = "none: what stands along the push, or bolts, leave no play"
    if push.lean is not None:
        lean = f"up to {both_text(push.lean, reader)} at the top, by the play of its joints"
    elif not push.stiffened:
        lean = "not known: no tab holds it this way"
    yield Figure(head=f"It leans {push.way}", value=lean, notes=(f"{count} there; {kept}",))


def _moves(slides: float, tips: float, on: str, reader: Reader) -> str:
    """Return which of sliding ``on`` something and tipping comes first, and at what push."""
    slide, tip = force_text(slides, reader), force_text(tips, reader)
    if slides <= tips:
        return f"slides{on} at {slide}, before it tips at {tip}"
    return f"tips at {tip}, before it slides{on} at {slide}"


def _assumptions(edition: Edition, thing: ThingInUse) -> tuple[Assumption, ...]:
    found, reader = thing.found, edition.reader
    person, fixed = found.person, edition.plan.placed == WALL
    stands = "free on the floor" + (", as before it is fixed to the wall" if fixed else "")
    facts = (
        (
            "Person",
            _both(load_pair(person.kg, reader)),
            "stated in the plan, else the scope of EN 1022:2018",
        ),
        (
            "Push of a person who leans or planes",
            force_text(person.push, reader),
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
            f"{within(piece_title(edition.plan, found.panel))}, the highest broad one to lie flat"
            if found.panel
            else "none lies flat: what of it is highest",
            "the plan put together",
        ),
        (
            "Tipping",
            "over the hull of what touches the floor; a load at the panel’s edge over m b / o",
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
    held = _holding(thing)
    return tuple(Assumption(label=a, value=b, source=c) for a, b, c in (*facts, *held))


def _holding(thing: ThingInUse) -> tuple[tuple[str, str, str], ...]:
    """Return what is taken of a thing that lies on others, loose or held: label, value, source."""
    laid = thing.stated.lies_on if thing.stated else None
    if laid is None:
        return ()
    if not thing.found.lies:
        by = HELD_BY[laid.held]
        return (
            ("It is held on what bears it", f"by {by}: all move as one body", "simplification"),
        )
    return (
        (
            "It lies loose on what bears it",
            "its own weight alone keeps it there: it tips off over the hull of their tops",
            _STATICS,
        ),
        (
            "A push on what lies loose",
            "reaches its supports by friction; each takes an even share of the load and tips "
            "about its own foot",
            "simplification",
        ),
    )
