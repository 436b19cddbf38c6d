"""Watches a workshop: looks at what a save touched, proves it, makes the readers' pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from threading import Condition

from kerfolio.basis.finding import Finding, has_errors, in_order
from kerfolio.model.workshop import Identity
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.watching.prover import Prove, proven_beside
from kerfolio.watching.publisher import Publisher
from kerfolio.watching.saves import Stamps, stamps_of, touched
from kerfolio.watching.seen import PlanSeen, Seen, calm, plan_seen, with_proof

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

    ``only`` names a single plan or is empty; ``prove`` proves plans; ``publisher`` is None where no
    readers' pages are wanted.
    """

    folder: Path
    stage: Stage
    only: str = ""
    prove: Prove = proven_beside
    publisher: Publisher | None = None
    _stamps: Stamps = field(default_factory=dict)
    _pending: set[str] = field(default_factory=set)

    def is_touched(self) -> bool:
        """Tell whether a file was saved since the last round began."""
        return bool(touched(self._stamps, stamps_of(self.folder)))

    def look(self) -> None:
        """Read and draw what was saved; nothing is proved yet."""
        stamps = stamps_of(self.folder)
        files, self._stamps = touched(self._stamps, stamps), stamps
        shared, refused = read_shared(self.folder, pictures=False)
        if shared is None:
            shown = replace(self.stage.seen, findings=refused, doing="")
            self.stage.show(shown)
            return
        names = [each for each in shared.plans if not self.only or each == self.only]
        before = {each.name: each for each in self.stage.seen.plans}
        again = _concerned(files, names, before)
        workshop, found = with_plans(shared, again)
        plans = {each.name: each for each in workshop.plans} if workshop else {}
        seen = tuple(
            plan_seen(name, plans.get(name), shared.stock, _of(found, name), before.get(name))
            if name in again
            else calm(before[name])
            for name in names
        )
        self._pending = (self._pending - set(again) | set(plans)) & set(names)
        loose = [each for each in (*shared.findings, *found) if not _plan_of(each)]
        self.stage.show(
            replace(
                self.stage.seen,
                identity=shared.identity or NOBODY,
                findings=in_order(loose),
                plans=seen,
                doing="Proving what was saved." if self._pending else "",
            )
        )

    def finish(self, is_over: Callable[[], bool]) -> None:
        """Prove what was looked at and make the readers' pages, unless a newer save is_over it."""
        for made in self.prove(self.folder, sorted(self._pending), is_over):
            seen = self.stage.seen
            plans = (with_proof(p, made) if p.name == made.name else p for p in seen.plans)
            self.stage.show(replace(seen, plans=tuple(plans)))
            self._pending.discard(made.name)
        if is_over():
            return
        if self._pending:
            told = "Proving stopped short: `kerfolio prove` tells why."
            self.stage.show(replace(self.stage.seen, doing=told))
        else:
            self._publish(is_over)

    def _publish(self, is_over: Callable[[], bool]) -> None:
        seen = self.stage.seen
        every = [*seen.findings, *(found for plan in seen.plans for found in plan.findings)]
        if self.publisher is None or has_errors(every):
            stands = " The readers’ pages stay as they were." if seen.sites else ""
            told = f"Errors stop a publish.{stands}" if has_errors(every) else ""
            self.stage.show(replace(seen, doing=told))
            return
        self.stage.show(replace(seen, doing="Making the readers’ pages."))
        made = self.publisher.publish(self._stamps, is_over)
        if is_over():
            return
        told = "" if made else "The readers’ pages cannot be made: `kerfolio publish` tells why."
        self.stage.show(replace(seen, doing=told, sites=seen.sites + made))


def _concerned(
    files: Iterable[str], names: Sequence[str], before: dict[str, PlanSeen]
) -> tuple[str, ...]:
    """Return the plans that saved files bear on: those of its own folder, or what plans share."""
    files = list(files)
    own = set(map(_folder_of, files))
    shared = any(not name.startswith(("plans/", "pages/")) for name in files)
    return tuple(each for each in names if shared or each in own or each not in before)


def _plan_of(finding: Finding) -> str:
    """Return the plan that a finding is about, empty for what concerns the workshop."""
    return _folder_of(finding.place.file)


def _folder_of(file: str) -> str:
    head, _, rest = file.partition("/")
    return rest.partition("/")[0] if head == "plans" else ""


def _of(findings: Iterable[Finding], name: str) -> tuple[Finding, ...]:
    return tuple(each for each in findings if _plan_of(each) == name)
