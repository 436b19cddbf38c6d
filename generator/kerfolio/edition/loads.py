"""What a plan's spans carry, in words: one place for page and booklet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.figures import figure
from kerfolio.basis.lengths import MM_PER_UNIT, both, both_text, sag_pair
from kerfolio.basis.masses import load_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import told
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import LYING, Plan
from kerfolio.model.span import Span, SpanLoad
from kerfolio.settling.titles import board_title, part_title, within
from kerfolio.shop.assumption import Assumption
from kerfolio.shop.leg import LegResult
from kerfolio.shop.rigidity import Weak
from kerfolio.shop.span import (
    RACKING,
    SPAN_CAUTIONS,
    Sag,
    SagResult,
    SpanResult,
    Unreckoned,
    overloaded,
    span_title,
    weak_tabs,
)
from kerfolio.shop.tab import TabResult

_METRES_PER_FOOT = float(MM_PER_UNIT["ft"]) / 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A figure in words: its head, its value, and what is to be known beside it."""

    head: str
    value: str
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """One way a span may be held, with its sag on the first day and after years."""

    held: str
    first_day: str
    after_years: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadWords:
    """A span as people read it.

    ``warning`` says that more is asked than it bears, or that there is no figure; else it is empty.
    ``bounds`` are all ways it may be held, the one that counts first; of a leg there are none.
    """

    title: str
    asked: str
    figures: tuple[Figure, ...] = ()
    bounds: tuple[Bound, ...] = ()
    warning: str = ""
    assumptions: tuple[Assumption, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Loads:
    """All spans of a plan, with the words that must stand beside them."""

    spans: tuple[LoadWords, ...]
    heading: str
    cautions: tuple[str, ...]
    racking: str


def loads_of(edition: Edition) -> Loads | None:
    """Return every span of a plan in words, the reader's unit in front; None without spans."""
    if not edition.spans:
        return None
    stated = {span.name: span for span in edition.plan.spans}
    reader = edition.reader
    plan = edition.plan
    return Loads(
        spans=tuple(_words(stated[each.name], each, plan, reader) for each in edition.spans),
        heading=say(reader, "loads-heading"),
        cautions=tuple(say(reader, each) for each in SPAN_CAUTIONS),
        racking=say(reader, RACKING),
    )


def _words(span: Span, result: SpanResult, plan: Plan, reader: Reader) -> LoadWords:
    title = span_title(span.name)
    if isinstance(result, Unreckoned):
        placed = _placed(span.load, span.load.kg, _called(result.carrier, plan, reader), reader)
        none = say(reader, "loads-no-figure", why=told(result.why, reader))
        return LoadWords(
            title=title,
            asked=say(reader, "loads-asked-alone", load=placed),
            warning=none,
        )
    over = overloaded(result)
    lifts = isinstance(result, SagResult) and result.lifts
    warnings = (
        say(reader, "loads-lifts") if lifts else "",
        _overloaded(result, plan, reader) if over else "",
    )
    words = LoadWords(
        title=title,
        asked=_asked(span, result, plan, reader),
        warning=" ".join(each for each in warnings if each),
        assumptions=tuple(each.told(reader) for each in result.assumptions),
    )
    if isinstance(result, LegResult):
        return replace(words, figures=_leg_figures(result, reader))
    bounds = tuple(_bound(each, reader) for each in result.sags)
    held = (*_sag_figures(result, plan, reader), *_held_down(span, result, plan, reader))
    return replace(words, figures=held, bounds=bounds)


def _overloaded(result: SagResult | LegResult, plan: Plan, reader: Reader) -> str:
    """Return that more is asked than allowed, what gives way, and which limit would suit."""
    words = [say(reader, "loads-overloaded")]
    if isinstance(result, LegResult):
        return words[0]
    if result.load_for_limit == 0:
        sag, limit = (both(sag_pair(each, reader)) for each in (result.rest.final, result.limit))
        words.append(say(reader, "loads-own-sag", sag=sag, limit=limit))
    if result.load_for_strength == 0:
        words.append(say(reader, "loads-own-strength"))
    if result.load > result.load_for_limit * (1 + 1e-9):
        words.append(say(reader, "loads-suits", share=result.share_that_suits))
    weak = weak_tabs(result)
    if weak is not None:
        part = _called(weak.member, plan, reader)
        words.append(say(reader, "loads-tabs-first", part=part))
    return " ".join(words)


def _called(name: str, plan: Plan, reader: Reader) -> str:
    """Return what a part or a board is called within a sentence."""
    known = any(each.name == name for each in plan.parts)
    return within(part_title(plan, name, reader) if known else board_title(name), reader)


def _placed(load: SpanLoad, kg: float, carrier: str, reader: Reader) -> str:
    """Return the whole load, and where on what it lies; one stated by the metre says that too."""
    words = both(load_pair(kg, reader))
    if load.per_metre:
        metric = load_pair(load.kg, reader.metric)[0]
        foot = load_pair(load.kg * _METRES_PER_FOOT, reader.inches)[0]
        words = say(
            reader, "loads-by-metre", metre=metric, foot=foot, unit=reader.unit, whole=words
        )
    return say(reader, f"loads-placed-{load.where}", load=words, carrier=carrier)


def _asked(span: Span, result: SagResult | LegResult, plan: Plan, reader: Reader) -> str:
    length = both_text(result.length, reader)
    reach = say(reader, f"loads-reach-{span.kind}", length=length)
    carrier = _called(result.carrier, plan, reader)
    if span.kind == "leg":
        load = both(load_pair(result.load, reader))
        return say(reader, "loads-asked-leg", load=load, carrier=carrier, reach=reach)
    stays = "stays" if span.lasting else "goes"
    placed = _placed(span.load, result.load, carrier, reader)
    asked = [say(reader, f"loads-asked-{stays}", load=placed, reach=reach)]
    asked += [
        say(
            reader,
            f"loads-under-{each.lies}",
            count=each.count,
            part=_called(each.part.name, plan, reader),
            joined=each.joined,
        )
        for each in span.under
    ]
    return " ".join(asked)


def _sag_figures(result: SagResult, plan: Plan, reader: Reader) -> tuple[Figure, ...]:
    """Return both sags as bounds, the limit, and the greatest load with what sets it."""
    counts, best = result.sags[0], min(result.sags, key=lambda each: each.first_day)
    limit = (result.limit_words,) if result.limit_words.startswith("span") else ()
    return (
        _sag(say(reader, "loads-first-day"), counts.first_day, best.first_day, best, reader),
        _sag(say(reader, "loads-after-years"), counts.long_term, best.long_term, best, reader),
        Figure(
            head=say(reader, "loads-limit"), value=both(sag_pair(result.limit, reader)), notes=limit
        ),
        *_lifting(result, reader),
        _greatest(result.greatest_load, _reasons(result, plan, reader), reader),
    )


def _lifting(result: SagResult, reader: Reader) -> Iterator[Figure]:
    """Yield the load on an overhang that lifts the far end, where nothing holds it down."""
    if result.lifting is not None:
        even = load_pair(result.lifting.load_even, reader)[0]
        reach = both_text(result.lifting.reach, reader)
        yield Figure(
            head=say(reader, "loads-lifting"),
            value=both(load_pair(result.lifting.load_end, reader)),
            notes=(
                say(reader, "loads-lifting-even", load=even, reach=reach),
                say(reader, "loads-lifting-why"),
            ),
        )


def _held_down(span: Span, result: SagResult, plan: Plan, reader: Reader) -> Iterator[Figure]:
    """Yield what keeps a slab of a set down on what it lies on."""
    laid = plan.laid(span.part.name) if span.part else None
    if laid is not None and result.lifting is None and laid.held != LYING:
        yield Figure(
            head=say(reader, "loads-no-lift"),
            value=say(reader, "loads-held", held=laid.held),
            notes=(say(reader, "loads-held-bears", held=laid.held),),
        )


def _sag(head: str, sag: float | None, least: float | None, best: Sag, reader: Reader) -> Figure:
    if sag is None or least is None:
        unknown, none = say(reader, "loads-not-known"), say(reader, "loads-no-creep")
        return Figure(head=head, value=unknown, notes=(none,))
    value = both(sag_pair(sag, reader))
    if sag == least:
        return Figure(head=head, value=value)
    glued = "clamped-glued" if best.joined == "glued" else "clamped"
    note = say(reader, f"loads-were-{glued}", sag=sag_pair(least, reader)[0])
    return Figure(head=head, value=value, notes=(note,))


def _reasons(result: SagResult, plan: Plan, reader: Reader) -> tuple[str, ...]:
    sag = say(reader, "loads-by-sag", load=load_pair(result.load_for_limit, reader)[0])
    tabs = [_tab_words(each, plan, reader) for each in result.tabs]
    if result.kind == "overhang" and result.load_lifting is not None:
        lifting = load_pair(result.load_lifting, reader)[0]
        tabs.append(say(reader, "loads-by-lifting", load=lifting))
    if result.load_for_strength is None:
        return (sag, say(reader, "loads-strength-unknown"), *tabs)
    strength = say(
        reader,
        "loads-by-strength",
        factor=figure(result.safety, reader=reader),
        load=load_pair(result.load_for_strength, reader)[0],
        where=_spot(result.weakest, result, plan, reader),
    )
    return (sag, strength, *tabs)


def _spot(weak: Weak, result: SagResult, plan: Plan, reader: Reader) -> str:
    """Return where a span comes nearest to its strength, in words."""
    near = weak.at if result.kind == "overhang" else min(weak.at, 1 - weak.at)
    member = _called(weak.member, plan, reader)
    if near > _MIDDLE:
        return say(reader, "loads-spot-middle", part=member)
    if near < _AT_AN_END:
        return say(reader, "loads-spot-support", part=member)
    away = both_text(near * result.length, reader)
    return say(reader, "loads-spot-away", part=member, away=away)


def _tab_words(tabs: TabResult, plan: Plan, reader: Reader) -> str:
    """Return what the tabs at an end of a member bear, over the safety factor as well."""
    known = [each for each in (tabs.load_shear, tabs.load_bearing) if each is not None]
    whose = say(reader, "loads-tabs", tabs=tabs.count, part=_called(tabs.member, plan, reader))
    if not known:
        return say(reader, "loads-tabs-unknown", tabs=whose)
    least = min(known)
    how = "shear" if least == tabs.load_shear else "pressure"
    return say(reader, f"loads-tabs-{how}", tabs=whose, load=load_pair(least, reader)[0])


def _leg_figures(result: LegResult, reader: Reader) -> tuple[Figure, ...]:
    factor = say(reader, "loads-each-over", factor=figure(result.safety, reader=reader))
    crushing, least = result.load_crushing, say(reader, "loads-least")
    unknown = say(reader, "loads-not-known")
    return (
        Figure(
            head=say(reader, "loads-swaying"),
            value=both(load_pair(result.load_swaying, reader)),
            notes=(say(reader, "loads-swaying-why"),),
        ),
        Figure(
            head=say(reader, "loads-held-ends"),
            value=both(load_pair(result.load_held, reader)),
            notes=(say(reader, "loads-held-ends-why"),),
        ),
        Figure(
            head=say(reader, "loads-crushed"),
            value=unknown if crushing is None else both(load_pair(crushing, reader)),
        ),
        _greatest(result.greatest_load, (least, factor), reader),
    )


def _greatest(kg: float, notes: tuple[str, ...], reader: Reader) -> Figure:
    head = say(reader, "loads-greatest")
    return Figure(head=head, value=both(load_pair(kg, reader)), notes=notes)


_MIDDLE, _AT_AN_END = 0.45, 0.02
"""Shares of the span: no nearer to a support than the first is its middle, nearer than the second
is at a support."""


def _bound(sag: Sag, reader: Reader) -> Bound:
    later, joined = sag.long_term, sag.joined or "none"
    return Bound(
        held=say(reader, f"loads-ends-{sag.ends}", joined=joined),
        first_day=both(sag_pair(sag.first_day, reader)),
        after_years=(
            say(reader, "loads-not-known") if later is None else both(sag_pair(later, reader))
        ),
    )
