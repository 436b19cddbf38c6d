"""What the watching pages show of a plan: as it is, as it differs from before the last save."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from kerfolio.basis.finding import Finding, in_order
from kerfolio.drawing.named_part import named_part
from kerfolio.drawing.named_whole import named_whole
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.workshop import Identity
from kerfolio.publishing.sight import Sight, sight_of
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.watching.changes import PartChange, part_changes
from kerfolio.watching.prover import Proven
from kerfolio.writing.svg import inline_svg


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSeen:
    """A plan as it is shown.

    ``sight`` is None where it never could be read; ``is_old`` tells that it is how the plan was
    when it could be read last. ``findings`` are those of a look at it, or of proving once that is
    done; ``pictures`` shows the places of some. ``looked`` are those of the look alone; ``waiting``
    what proving found before the save, which is being proved again. ``is_proven`` tells that it is
    proved, ``is_all`` that all is found that there is. ``before`` are the findings, ``changes`` the
    parts that differ, since a file was saved last. ``parts`` are the drawings of its parts by name,
    ``whole`` that of the whole: inline SVG.
    """

    name: str
    title: str
    sight: Sight | None = None
    is_old: bool = False
    findings: tuple[Finding, ...] = ()
    looked: tuple[Finding, ...] = ()
    waiting: tuple[Finding, ...] = ()
    is_proven: bool = True
    is_all: bool = True
    pictures: Mapping[Finding, str] = field(default_factory=dict)
    before: tuple[Finding, ...] | None = None
    changes: Mapping[str, PartChange] = field(default_factory=dict)
    parts: Mapping[str, str] = field(default_factory=dict)
    whole: str = ""

    @property
    def settled(self) -> SettledPlan | None:
        """The parts that settle."""
        return self.sight.settled if self.sight else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A workshop as it is shown: what concerns it as a whole, and each of its plans.

    ``version`` grows with every change of what is shown. ``doing`` says what is still being done.
    ``sites`` counts how often the readers' pages were made.
    """

    version: int = 0
    identity: Identity
    findings: tuple[Finding, ...] = ()
    plans: tuple[PlanSeen, ...] = ()
    doing: str = ""
    sites: int = 0


def plan_seen(
    name: str,
    plan: Plan | None,
    stock: Stock,
    read: Iterable[Finding],
    before: PlanSeen | None,
) -> PlanSeen:
    """Return what is to be seen of a plan that was read anew; None where it cannot be read.

    The pictures of parts that are as ``before`` are taken from there.
    """
    told, was = in_order(read), before or PlanSeen(name=name, title=name)
    last = _last(before)
    proved = was.findings if was.is_all else was.waiting
    if plan is None:
        return replace(
            calm(was),
            is_old=True,
            findings=told,
            looked=told,
            waiting=proved,
            is_all=False,
            pictures={},
            before=last,
        )
    sight = sight_of(plan, stock)
    found = in_order((*told, *sight.findings))
    seen = PlanSeen(
        name=name,
        title=plan.title,
        sight=sight,
        findings=found,
        looked=found,
        waiting=tuple(each for each in proved if each not in (*was.looked, *found)),
        is_proven=False,
        is_all=False,
        pictures=was.pictures,
        before=last,
        changes=part_changes(was.settled, sight.settled),
        whole=was.whole,
    )
    return _with_parts(seen, was)


def _last(before: PlanSeen | None) -> tuple[Finding, ...] | None:
    """Return what was found before a save: of a plan that was not proven since, before that."""
    if before is None or before.is_all or before.before is None:
        return before.findings if before else None
    return before.before


def calm(seen: PlanSeen) -> PlanSeen:
    """Return a plan as it is shown when another file was saved: nothing of it is new."""
    if not seen.changes and seen.before == seen.findings:
        return seen
    tinted, seen = seen, replace(seen, changes={}, before=seen.findings)
    return with_whole(_with_parts(seen, tinted)) if tinted.changes else seen


def with_proof(seen: PlanSeen, made: Proven) -> PlanSeen:
    """Return a plan with all that proving found in place of what a look did."""
    pictures = dict(zip(made.findings, made.pictures, strict=True))
    return replace(
        seen,
        findings=made.findings,
        pictures=pictures,
        waiting=(),
        is_proven=True,
        is_all=made.is_all,
    )


def with_whole(seen: PlanSeen) -> PlanSeen:
    """Return a plan with the drawing of the whole as its parts are now."""
    settled = seen.settled
    if settled is None or seen.is_old or seen.sight is None:
        return seen
    whole = named_whole(settled, seen.sight.wholes, set(seen.changes))
    return replace(seen, whole=inline_svg(whole, id_prefix=f"{seen.name}-") if whole else "")


def _with_parts(seen: PlanSeen, before: PlanSeen) -> PlanSeen:
    """Return a plan with the drawings of its parts; what looks as it did is not drawn again."""
    settled = seen.settled
    if settled is None:
        return seen
    return replace(
        seen, parts={each.name: _part(settled, each, seen, before) for each in settled.parts}
    )


def _part(settled: SettledPlan, part: SettledPart, seen: PlanSeen, before: PlanSeen) -> str:
    change = seen.changes.get(part.name, PartChange())
    if before.settled is not None:
        was = next((each for each in before.settled.parts if each.name == part.name), None)
        tint = before.changes.get(part.name, PartChange())
        if was == part and tint == change and before.settled.plan.title == settled.plan.title:
            return before.parts[part.name]
    drawing = named_part(settled, part, change.features, headed=False)
    return inline_svg(drawing, id_prefix=f"{seen.name}-{part.name}-")
