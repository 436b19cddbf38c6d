"""What a plan's spans carry, in words: one place for page and booklet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.figures import figure
from kerfolio.basis.lengths import MM_PER_UNIT, both_text, sag_pair
from kerfolio.basis.masses import load_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import BRACKETS, CLAMPED, SCREWED, Plan
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

OVERLOADED = "More is asked here than this estimate allows."
LIFTS = "It only lies there, and this load on what hangs out lifts its far end: it tips off."


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
    heading: str = "Estimates, no ratings"
    cautions: tuple[str, ...] = SPAN_CAUTIONS
    racking: str = RACKING


def loads_of(edition: Edition) -> Loads | None:
    """Return every span of a plan in words, the reader's unit in front; None without spans."""
    if not edition.spans:
        return None
    stated = {span.name: span for span in edition.plan.spans}
    reader = edition.reader
    plan = edition.plan
    return Loads(
        spans=tuple(_words(stated[each.name], each, plan, reader) for each in edition.spans)
    )


def _words(span: Span, result: SpanResult, plan: Plan, reader: Reader) -> LoadWords:
    title = span_title(span.name)
    if isinstance(result, Unreckoned):
        asked = f"{_load(span.load, span.load.kg, reader)} {_called(result.carrier, plan)}."
        return LoadWords(title=title, asked=asked, warning=f"No figure: {result.why}.")
    over = overloaded(result)
    lifts = isinstance(result, SagResult) and result.lifts
    warnings = (LIFTS if lifts else "", _overloaded(result, plan, reader) if over else "")
    words = LoadWords(
        title=title,
        asked=_asked(span, result, plan, reader),
        warning=" ".join(each for each in warnings if each),
        assumptions=tuple(each.told(reader) for each in result.assumptions),
    )
    if isinstance(result, LegResult):
        return replace(words, figures=_leg_figures(result, reader))
    bounds = tuple(_bound(each, reader) for each in result.sags)
    held = (*_sag_figures(result, plan, reader), *_held_down(span, result, plan))
    return replace(words, figures=held, bounds=bounds)


def _overloaded(result: SagResult | LegResult, plan: Plan, reader: Reader) -> str:
    """Return that more is asked than allowed, what gives way, and which limit would suit."""
    if isinstance(result, LegResult):
        return OVERLOADED
    words = [OVERLOADED]
    if result.load_for_limit == 0:
        sag, limit = (_both(sag_pair(each, reader)) for each in (result.rest.final, result.limit))
        words.append(f"Its own weight alone sags {sag}, beyond the limit of {limit}.")
    if result.load_for_strength == 0:
        words.append("Its own weight alone brings it to its strength over the safety factor.")
    if result.load > result.load_for_limit * (1 + 1e-9):
        suits = result.share_that_suits
        words.append(f"The sag alone would suit a limit of span/{suits}.")
    weak = weak_tabs(result)
    if weak is not None:
        words.append(f"Without glue the tabs of the {_called(weak.member, plan)} give way first.")
    return " ".join(words)


_WHERE = {
    "even": "spread evenly on the",
    "middle": "in the middle of the",
    "end": "at the end of the",
}
_REACH = {
    "shelf": "{} from support to support",
    "rail": "{} from support to support",
    "overhang": "hanging out {}",
    "leg": "{} long",
}
_LIES = {"edge": "On edge under it", "flat": "Flat under it"}
_HOLDS = {"loose": "not glued to it", "glued": "glued to it"}


def _both(pair: tuple[str, str]) -> str:
    one, other = pair
    return f"{one} ({other})"


def _called(name: str, plan: Plan) -> str:
    """Return what a part or a board is called within a sentence."""
    known = any(each.name == name for each in plan.parts)
    return within(part_title(plan, name) if known else board_title(name))


def _load(load: SpanLoad, kg: float, reader: Reader) -> str:
    """Return the whole load; one stated by the metre says that too."""
    words = f"{_both(load_pair(kg, reader))} {_WHERE[load.where]}"
    if not load.per_metre:
        return words
    metric = f"{load_pair(load.kg, reader.metric)[0]} a metre"
    foot = f"{load_pair(load.kg * _METRES_PER_FOOT, reader.inches)[0]} a foot"
    return f"{_both((metric, foot) if reader.unit == 'mm' else (foot, metric))}, in all {words}"


def _asked(span: Span, result: SagResult | LegResult, plan: Plan, reader: Reader) -> str:
    reach = _REACH[span.kind].format(both_text(result.length, reader))
    carrier = _called(result.carrier, plan)
    if span.kind == "leg":
        load = _both(load_pair(result.load, reader))
        return f"{load} straight down on the {carrier}, {reach}."
    load = _load(span.load, result.load, reader)
    stays = "the load stays" if span.lasting else "the load comes and goes"
    under = [
        f" {_LIES[each.lies]}: {each.count} × {called}, {_HOLDS[each.joined]}."
        for each in span.under
        for called in (_called(each.part.name, plan),)
    ]
    return f"{load} {carrier}, {reach}; {stays}.{''.join(under)}"


def _sag_figures(result: SagResult, plan: Plan, reader: Reader) -> tuple[Figure, ...]:
    """Return both sags as bounds, the limit, and the greatest load with what sets it."""
    counts, best = result.sags[0], min(result.sags, key=lambda each: each.first_day)
    limit = (result.limit_words,) if result.limit_words.startswith("span") else ()
    return (
        _sag("Sag on the first day", counts.first_day, best.first_day, best, reader),
        _sag("Sag after years", counts.long_term, best.long_term, best, reader),
        Figure(head="Limit", value=_both(sag_pair(result.limit, reader)), notes=limit),
        *_lifting(result, reader),
        _greatest(result.greatest_load, _reasons(result, plan, reader), reader),
    )


def _lifting(result: SagResult, reader: Reader) -> Iterator[Figure]:
    """Yield the load on an overhang that lifts the far end, where nothing holds it down."""
    if result.lifting is not None:
        even = load_pair(result.lifting.load_even, reader)[0]
        yield Figure(
            head="Its far end lifts with, at the end",
            value=_both(load_pair(result.lifting.load_end, reader)),
            notes=(
                f"{even} spread over the overhang of {both_text(result.lifting.reach, reader)}",
                "it only lies there, held by its own weight alone; no limit of sag changes that",
            ),
        )


HELD_BY = {CLAMPED: "clamps", SCREWED: "screws", BRACKETS: "brackets"}
"""What keeps a thing on what it lies on, by the word that says so."""


def _held_down(span: Span, result: SagResult, plan: Plan) -> Iterator[Figure]:
    """Yield what keeps a slab of a set down on what it lies on."""
    laid = plan.laid(span.part.name) if span.part else None
    if laid is not None and result.lifting is None and laid.held in HELD_BY:
        by = HELD_BY[laid.held]
        note = f"the {by} bear what would lift it; how much they bear is not reckoned"
        yield Figure(head="It does not lift", value=f"held down by {by}", notes=(note,))


def _sag(head: str, sag: float | None, least: float | None, best: Sag, reader: Reader) -> Figure:
    if sag is None or least is None:
        return Figure(head=head, value="not known", notes=("no creep is stated",))
    if sag == least:
        return Figure(head=head, value=_both(sag_pair(sag, reader)))
    glued = " and glued" if best.joined == "glued" else ""
    note = f"{sag_pair(least, reader)[0]} were it clamped{glued}"
    return Figure(head=head, value=_both(sag_pair(sag, reader)), notes=(note,))


def _reasons(result: SagResult, plan: Plan, reader: Reader) -> tuple[str, ...]:
    sag = f"sag at its limit: {load_pair(result.load_for_limit, reader)[0]}"
    tabs = [_tab_words(each, plan, reader) for each in result.tabs]
    if result.kind == "overhang" and result.load_lifting is not None:
        tabs.append(f"lifting off: {load_pair(result.load_lifting, reader)[0]}")
    if result.load_for_strength is None:
        return (sag, "strength: not known", *tabs)
    strength = load_pair(result.load_for_strength, reader)[0]
    where = _spot(result.weakest, result, plan, reader)
    factor = figure(result.safety)
    return (sag, f"strength over a safety factor of {factor}: {strength}, {where}", *tabs)


def _spot(weak: Weak, result: SagResult, plan: Plan, reader: Reader) -> str:
    """Return where a span comes nearest to its strength, in words."""
    near = weak.at if result.kind == "overhang" else min(weak.at, 1 - weak.at)
    member = _called(weak.member, plan)
    if near > _MIDDLE:
        return f"in the middle of the {member}"
    if near < _AT_AN_END:
        return f"in the {member}, at a support"
    at = both_text(near * result.length, reader)
    return f"in the {member}, {at} from a support"


def _tab_words(tabs: TabResult, plan: Plan, reader: Reader) -> str:
    """Return what the tabs at an end of a member bear, over the safety factor as well."""
    known = [each for each in (tabs.load_shear, tabs.load_bearing) if each is not None]
    member = _called(tabs.member, plan)
    whose = f"{counted(tabs.count, 'tab')} of the {member} at an end"
    if not known:
        return f"{whose}: strength not known"
    least = min(known)
    how = "shear" if least == tabs.load_shear else "pressure"
    return f"{whose}, without glue ({how}): {load_pair(least, reader)[0]}"


def _leg_figures(result: LegResult, reader: Reader) -> tuple[Figure, ...]:
    factor = f"each over a safety factor of {figure(result.safety)}"
    crushing = result.load_crushing
    return (
        Figure(
            head="Buckles, swaying, at",
            value=_both(load_pair(result.load_swaying, reader)),
            notes=("its upper end is free, as in a frame without a brace",),
        ),
        Figure(
            head="Buckles, held, at",
            value=_both(load_pair(result.load_held, reader)),
            notes=("neither end can move sideways",),
        ),
        Figure(
            head="Is crushed at",
            value="not known" if crushing is None else _both(load_pair(crushing, reader)),
        ),
        _greatest(result.greatest_load, ("the least of them", factor), reader),
    )


def _greatest(kg: float, notes: tuple[str, ...], reader: Reader) -> Figure:
    head = "Greatest load, estimated"
    return Figure(head=head, value=_both(load_pair(kg, reader)), notes=notes)


_MIDDLE, _AT_AN_END = 0.45, 0.02
"""Shares of the span: no nearer to a support than the first is its middle, nearer than the second
is at a support."""

_ENDS = {"free": "Ends free to turn", "clamped": "Ends clamped", "one": "Clamped at one end"}
_JOINED = {
    "": "",
    "loose": ", not glued",
    "glued": ", glued",
    "stated": ", glued where the plan says so",
}


def _bound(sag: Sag, reader: Reader) -> Bound:
    later = sag.long_term
    return Bound(
        held=_ENDS[sag.ends] + _JOINED[sag.joined],
        first_day=_both(sag_pair(sag.first_day, reader)),
        after_years="not known" if later is None else _both(sag_pair(later, reader)),
    )
