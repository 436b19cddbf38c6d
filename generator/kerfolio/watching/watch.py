"""Watches a workshop: looks at what a save touched, proves it, makes the readers' pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from threading import Condition
from typing import Any

from kerfolio.basis.finding import has_errors, in_order
from kerfolio.basis.place import Place
from kerfolio.model.workshop import Identity
from kerfolio.reading.plan_folders import lies_in, titled_twice
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.watching.prover import Prove
from kerfolio.watching.publisher import Publisher
from kerfolio.watching.saves import Stamps, stamps_of, touched
from kerfolio.watching.seen import PlanSeen, Seen, calm, plan_seen, with_proof, with_whole

NOBODY = Identity(title="A workshop", maker="its maker")
"""Whose workshop it is where ``workshop.yaml`` cannot be read."""


class Stage:
    """What is shown at this moment; the server reads it, and waits for what comes next."""

    def __init__(self) -> None:
        self._seen = Seen(identity=NOBODY, doing="Reading.")
        self._changed = Condition()
        self._closed = False

    @property
    def seen(self) -> Seen:
        """What is shown now."""
        return self._seen

    def show(self, seen: Seen) -> Seen:
        """Show something else, under the next version; returns it so."""
        with self._changed:
            self._seen = replace(seen, version=self._seen.version + 1)
            self._changed.notify_all()
        return self._seen

    def newer(self, version: int, seconds: float) -> int | None:
        """Wait until there is another version and return it, or the same after so long.

        None once the stage is closed.
        """
        with self._changed:
            self._changed.wait_for(
                lambda: self._closed or self._seen.version != version, timeout=seconds
            )
            return None if self._closed else self._seen.version

    def close(self) -> None:
        """Let nobody wait any longer."""
        with self._changed:
            self._closed = True
            self._changed.notify_all()


@dataclass(slots=True)
class Watch:
    """Follows a workshop's files onto a stage, one round for each save.

    ``prove`` proves plans; ``only`` names a single plan or is empty; ``publisher`` is None where no
    readers' pages are wanted.
    """

    folder: Path
    stage: Stage
    prove: Prove
    only: str = ""
    publisher: Publisher | None = None
    _stamps: Stamps = field(default_factory=dict)
    _pending: list[str] = field(default_factory=list)

    def is_touched(self) -> bool:
        """Tell whether a file was saved since the last round began."""
        return bool(touched(self._stamps, stamps_of(self.folder)))

    def look(self) -> None:
        """Read and draw what was saved; nothing is proved yet.

        What was saved is shown before what only follows from it is drawn: parts, the whole, then
        the other plans without the tints of the save before.
        """
        stamps = stamps_of(self.folder)
        files, self._stamps = touched(self._stamps, stamps), stamps
        shared, refused = read_shared(self.folder, pictures=False)
        if shared is None:
            self._show(findings=refused, doing="")
            return
        names = [each for each in shared.plans if not self.only or each == self.only]
        before = {each.name: each for each in self.stage.seen.plans if each.name in names}
        again = _concerned(files, names, before)
        said = "Drawing what was saved." if again else self.stage.seen.doing
        plans_before = tuple(before.values())
        self._show(identity=shared.identity or NOBODY, plans=plans_before, doing=said)
        read = {name: with_plans(shared, [name]) for name in again}
        plans = {
            name: next(iter(workshop.plans), None) if workshop else None
            for name, (workshop, _) in read.items()
        }
        rest = (name for name in self._pending if name in names and name not in again)
        self._pending = [*(name for name, plan in plans.items() if plan is not None), *rest]
        self.prove.begin(self._pending)
        for name, (_, found) in read.items():
            of_plan = tuple(each for each in found if lies_in(each, name))
            self._show_plan(plan_seen(name, plans[name], shared.stock, of_plan, before.get(name)))
        for name in again:
            self._show_plan(with_whole(self._plan(name)))
        for name in before:
            if name not in again:
                self._show_plan(calm(before[name]))
        loose = [each for each in shared.findings if not _folder_of(each.place.file)]
        twice = titled_twice(_titles(self.stage.seen.plans))
        doing = "Proving what was saved." if self._pending else ""
        self._show(findings=in_order((*loose, *twice)), doing=doing)

    def finish(self, is_over: Callable[[], bool]) -> None:
        """Prove what was looked at and make the readers' pages, unless a newer save is_over it."""
        for made in self.prove.told(is_over):
            self._show_plan(with_proof(self._plan(made.name), made))
            if made.is_all:
                self._pending.remove(made.name)
            doing = "Proving what was saved." if made.is_all else "Laying out what was saved."
            self._show(doing=doing)
        if is_over():
            return
        if self._pending:
            self._show(doing="Proving stopped short: `kerfolio prove` tells why.")
        else:
            self._publish(is_over)

    def _plan(self, name: str) -> PlanSeen:
        return next(each for each in self.stage.seen.plans if each.name == name)

    def _show_plan(self, plan: PlanSeen) -> None:
        """Show a plan as it is now, in its place among the others."""
        plans = {each.name: each for each in self.stage.seen.plans} | {plan.name: plan}
        if self.stage.seen.plans != tuple(plans.values()):
            self._show(plans=tuple(plans[name] for name in sorted(plans)))

    def _show(self, **what: Any) -> None:
        self.stage.show(replace(self.stage.seen, **what))

    def _publish(self, is_over: Callable[[], bool]) -> None:
        seen = self.stage.seen
        every = [*seen.findings, *(found for plan in seen.plans for found in plan.findings)]
        if self.publisher is None or has_errors(every):
            stands = " The readers’ pages stay as they were." if seen.sites else ""
            told = f"Errors stop a publish.{stands}" if has_errors(every) else ""
            self._show(doing=told)
            return
        self._show(doing="Making the readers’ pages.")
        made = self.publisher.publish(self._stamps, is_over)
        if is_over():
            return
        told = "" if made else "The readers’ pages cannot be made: `kerfolio publish` tells why."
        self._show(doing=told, sites=seen.sites + made)


def _concerned(
    files: Iterable[str], names: Sequence[str], before: dict[str, PlanSeen]
) -> tuple[str, ...]:
    """Return the plans that saved files bear on: those of its own folder, or what plans share."""
    files = list(files)
    own = set(map(_folder_of, files))
    shared = any(not name.startswith(("plans/", "pages/")) for name in files)
    return tuple(each for each in names if shared or each in own or each not in before)


def _titles(plans: Iterable[PlanSeen]) -> Iterator[tuple[str, str, Place]]:
    for each in plans:
        if each.sight is not None:
            yield each.name, each.title, each.sight.plan.place


def _folder_of(file: str) -> str:
    """Return the plan in whose folder a file is, empty for what concerns the workshop."""
    head, _, rest = file.partition("/")
    return rest.partition("/")[0] if head == "plans" else ""
