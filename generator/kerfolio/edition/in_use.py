"""A thing in use, in words: one place for page, booklet and ``plan.json``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.in_use import (
    Edge,
    Fit,
    InUse,
    Push,
    fits,
)
from kerfolio.assembly.stability_words import way_words
from kerfolio.basis.figures import degrees_text, figure
from kerfolio.basis.lengths import about_text, both, both_text, sag_pair
from kerfolio.basis.masses import force_text, load_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import told
from kerfolio.basis.saying import listed, say
from kerfolio.edition.edition import Edition, ThingInUse
from kerfolio.edition.loads import Figure
from kerfolio.edition.making import counted_things
from kerfolio.model.plan import Plan
from kerfolio.model.use import SIT, STAND, STORE, WALL
from kerfolio.settling.titles import called, part_title, piece_title, within
from kerfolio.shop.assumption import Assumption
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import SagResult, overloaded, span_title


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
    cautions: tuple[str, ...]
    heading: str


def used_of(edition: Edition) -> Used | None:
    """Return what is told of things in use; None where the plan states no uses, or no whole."""
    if not edition.in_use:
        return None
    rests = [each for thing in edition.in_use for each in _assumptions(edition, thing)]
    reader, cautions = edition.reader, ("estimates", "more", "codes")
    return Used(
        things=tuple(_words(edition, each) for each in edition.in_use),
        assumptions=tuple(dict.fromkeys(rests)),
        cautions=tuple(say(reader, f"inuse-caution-{each}") for each in cautions),
        heading=say(reader, "inuse-heading"),
    )


def _words(edition: Edition, thing: ThingInUse) -> UsedWords:
    found, reader, spans = thing.found, edition.reader, _spans(edition, thing)
    carries = not any(overloaded(each) for each in spans)
    sits = thing.sat_on is None or not overloaded(thing.sat_on)
    judged = fits(edition.plan, found, sits=sits, carries=carries)
    return UsedWords(
        title=_title(edition.plan, thing, reader),
        sentence=sentence_of(judged, reader),
        fits=judged,
        figures=(
            *_sags(edition.plan, thing, spans, reader),
            *_edge(found.edge, found, SIT in edition.plan.uses, reader),
            *(each for push in found.pushes for each in _push(push, edition.plan, found, reader)),
        ),
    )


def _title(plan: Plan, thing: ThingInUse, reader: Reader) -> str:
    """Return which thing of a set is told of: ``Board on 2 × Foot``; nothing of a single one."""
    if thing.stated is None:
        return ""
    own = called(thing.stated)
    if thing.on:
        return say(reader, "inuse-on", thing=own, others=counted_things(thing.on, plan, reader))
    return say(reader, "inuse-alone", thing=own) if thing.bears else own


def _spans(edition: Edition, thing: ThingInUse) -> list[SagResult | LegResult]:
    """Return the spans of a thing, and of what it lies on."""
    results = [each for each in edition.spans if isinstance(each, SagResult | LegResult)]
    if thing.stated is None:
        return results
    owned = [each for each in edition.plan.assemblies if each.name in thing.on]
    names = thing.stated.parts.union(*(each.parts for each in owned))
    parts = {span.name: span.part.name for span in edition.plan.spans if span.part}
    return [each for each in results if parts.get(each.name) in names]


def sentence_of(judged: tuple[Fit, ...], reader: Reader) -> str:
    """Return the plain sentence: ``For sitting and carrying; not for planing: ...``."""
    doing = {each.use: say(reader, f"inuse-doing-{each.use.replace(' ', '-')}") for each in judged}
    good = listed(reader, [doing[each.use] for each in judged if not each.why])
    reasons: dict[str, list[str]] = {}
    for each in judged:
        if each.why:
            reasons.setdefault(told(each.why, reader), []).append(doing[each.use])
    parts = [say(reader, "inuse-for", uses=good)] if good else []
    parts += [
        say(reader, "inuse-not-for", uses=listed(reader, uses, "or"), why=why)
        for why, uses in reasons.items()
    ]
    text = "; ".join(parts)
    return f"{text[:1].upper()}{text[1:]}."


def _sags(
    plan: Plan, thing: ThingInUse, spans: Sequence[SagResult | LegResult], reader: Reader
) -> Iterator[Figure]:
    """Yield the panel's sag with the person in its middle, and with what its span is stated for."""
    uses, sat, found = plan.uses, thing.sat_on, thing.found
    if SIT in uses and found.panel:
        head = say(reader, "inuse-sags-sat", panel=piece_title(plan, found.panel, reader))
        if sat is None:
            part = within(part_title(plan, found.part, reader), reader)
            none = say(reader, "inuse-no-span", part=part)
            yield Figure(head=head, value=say(reader, "inuse-not-known"), notes=(none,))
        else:
            yield Figure(head=head, value=_sag(sat, reader), notes=_later(sat, reader))
    for each in spans:
        if {STAND, STORE} & set(uses) and isinstance(each, SagResult):
            load = say(reader, "inuse-with", load=both(load_pair(each.load, reader)))
            head = say(reader, "inuse-sags", span=span_title(each.name))
            yield Figure(head=head, value=_sag(each, reader), notes=(load, *_later(each, reader)))


def _sag(result: SagResult, reader: Reader) -> str:
    sag = both(sag_pair(result.sags[0].first_day, reader))
    return say(reader, "inuse-first-day", sag=sag)


def _later(result: SagResult, reader: Reader) -> tuple[str, ...]:
    later = result.sags[0].long_term
    if later is None:
        return (say(reader, "inuse-no-creep"),)
    return (say(reader, "inuse-after-years", sag=both(sag_pair(later, reader))),)


def _edge(edge: Edge, found: InUse, sitting: bool, reader: Reader) -> Iterator[Figure]:
    """Yield where a person may sit before it tips, and how it tips with them at the edge."""
    on = "others" if found.lies else "feet"
    towards, person = way_words(edge.way, reader), both(load_pair(found.person.kg, reader))
    if edge.load is None:
        near = say(reader, "inuse-nearest", towards=towards, inside=about_text(-edge.out, reader))
        yield Figure(
            head=say(reader, "inuse-edge"),
            value=say(reader, "inuse-edge-nowhere", on=on),
            notes=(near,),
        )
    else:
        inset = max(0.0, edge.out - edge.beyond)
        yield Figure(
            head=say(reader, "inuse-edge-from", on=on),
            value=say(
                reader,
                "inuse-load-towards",
                load=both(load_pair(edge.load, reader)),
                towards=towards,
            ),
            notes=(
                say(reader, "inuse-reaches", beyond=about_text(edge.out, reader), on=on),
                say(
                    reader,
                    "inuse-may-be-near" if inset else "inuse-may-be-anywhere",
                    who="person" if sitting else "load",
                    mass=person,
                    near=about_text(inset, reader),
                ),
            ),
        )
    yield Figure(
        head=say(reader, "inuse-edge-sat"),
        value=_tilt(edge, towards, reader),
        notes=(say(reader, "inuse-person-of", mass=person),),
    )


def _tilt(edge: Edge, towards: str, reader: Reader) -> str:
    if edge.angle <= 0:
        return say(reader, "inuse-tips-itself", towards=towards)
    return say(reader, "inuse-tips-tilted", angle=degrees_text(edge.angle), towards=towards)


def _push(push: Push, plan: Plan, found: InUse, reader: Reader) -> Iterator[Figure]:
    """Yield what a push one way does, and what stands against it."""
    on = "others" if found.lies else "floor"
    loaded = _moves(push.slides_loaded, push.tips_loaded, on, reader)
    yield Figure(
        head=say(reader, "inuse-pushed", way=told(push.way, reader)),
        value=_moves(push.slides_empty, push.tips_empty, on, reader),
        notes=(
            say(reader, "inuse-pushed-up", height=about_text(found.height, reader)),
            say(reader, "inuse-pushed-loaded", moves=loaded),
        ),
    )
    yield Figure(
        head=say(reader, "inuse-leans", way=told(push.way, reader)),
        value=_lean(push, reader),
        notes=(say(reader, "inuse-tabs-there", tabs=push.tabs, kept=_kept(push, plan, reader)),),
    )


def _kept(push: Push, plan: Plan, reader: Reader) -> str:
    """Return what stiffens it against a push."""
    if not push.stiffened:
        return say(reader, "inuse-joints-alone")
    by = listed(reader, [within(piece_title(plan, each, reader), reader) for each in push.by])
    return say(reader, f"inuse-stiff-{push.stiffened}", by=by)


def _lean(push: Push, reader: Reader) -> str:
    if push.lean is not None:
        return say(reader, "inuse-lean-upto", most=both_text(push.lean, reader))
    return say(reader, "inuse-lean-none" if push.stiffened else "inuse-lean-unknown")


def _moves(slides: float, tips: float, on: str, reader: Reader) -> str:
    """Return which of sliding ``on`` something and tipping comes first, and at what push."""
    slide, tip = force_text(slides, reader), force_text(tips, reader)
    first = "slides" if slides <= tips else "tips"
    return say(reader, f"inuse-first-{first}", slide=slide, tip=tip, on=on)


def _assumptions(edition: Edition, thing: ThingInUse) -> tuple[Assumption, ...]:
    found, reader = thing.found, edition.reader
    person, fixed = found.person, edition.plan.placed == WALL
    panel = within(piece_title(edition.plan, found.panel, reader), reader) if found.panel else ""
    facts = (
        ("person", both(load_pair(person.kg, reader)), "en1022"),
        ("push", force_text(person.push, reader), "stated"),
        ("friction", figure(found.friction, reader=reader), "friction"),
        ("stands", say(reader, f"inuse-stands-{'fixed' if fixed else 'free'}"), "simplified"),
        (
            "carrying",
            say(reader, "inuse-carrying-panel" if panel else "inuse-carrying-none", panel=panel),
            "together",
        ),
        ("tipping", say(reader, "inuse-tipping-is"), "statics"),
        ("pushing", say(reader, "inuse-pushing-is"), "statics"),
        ("lean", say(reader, "inuse-lean-is"), "angles"),
        ("stiffening", say(reader, "inuse-stiffening-is"), "practice"),
        *_holding(thing, reader),
    )
    return tuple(
        Assumption(
            label=say(reader, f"inuse-rest-{name}"),
            value=value,
            source=say(reader, f"inuse-source-{source}"),
        )
        for name, value, source in facts
    )


def _holding(thing: ThingInUse, reader: Reader) -> tuple[tuple[str, str, str], ...]:
    """Return what is taken of a thing that lies on others, loose or held: name, value, source."""
    laid = thing.stated.lies_on if thing.stated else None
    if laid is None:
        return ()
    if not thing.found.lies:
        return (("held", say(reader, "inuse-held-by", held=laid.held), "simplified"),)
    return (
        ("loose", say(reader, "inuse-loose-is"), "statics"),
        ("loose-pushed", say(reader, "inuse-loose-pushed-is"), "simplified"),
    )
