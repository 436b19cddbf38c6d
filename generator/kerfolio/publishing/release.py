"""The next release of a plan: its version, its day and what changed, and its record."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_order
from kerfolio.basis.reader import Reader
from kerfolio.chapters.changes import draft_of, letter
from kerfolio.disk.put import put
from kerfolio.model.plan import Plan, Release
from kerfolio.model.release_form import RECORDS
from kerfolio.model.release_record import ReleaseRecord
from kerfolio.publishing.examine import examine
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.still_released import what_changed
from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from kerfolio.releasing.change import ReleaseChange, Weight, change_between
from kerfolio.releasing.record_text import record_text
from kerfolio.releasing.recording import corners_of, record_of
from kerfolio.releasing.stated import FIX, next_version, with_release
from kerfolio.releasing.weighing import step_for


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleaseRequest:
    """Which plan to release: by what ``step`` (``fix``, ``change``, ``redesign``), in what words.

    Without both the release that the plan states is recorded. ``today`` is its day.
    """

    folder: Path
    name: str
    today: date
    step: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Released:
    """What came of it: the version, empty where nothing was written, and the files written.

    ``change`` is what changed since the release before it, None where that has no record, and
    ``letter`` the text for those who have that one.
    """

    version: str
    files: tuple[Path, ...]
    findings: tuple[Finding, ...]
    change: ReleaseChange | None = None
    letter: str = ""


def release(request: ReleaseRequest, say: Say = silent) -> Released:
    """Prove a plan, and write its next release into it, with a record.

    Nothing is written where it has an error. Raises OSError when the disk refuses.
    """
    examined = examine(request.folder, request.name, say, pictures=False)
    findings = examined.findings
    if has_errors(findings) or not examined.laid_out or examined.workshop is None:
        return Released(version="", files=(), findings=findings)
    (found,) = examined.laid_out
    plan = next(each for each in examined.workshop.plans if each.name == request.name)
    say("recording")
    now = record_of(corners_of(plan, examined.workshop.stock), len(found.layout.sheets))
    if not (request.step or request.words):
        return _recorded(request, plan, now, findings)
    return _next(request, plan, now, findings, examined.workshop.identity.reader_of(plan))


def _recorded(
    request: ReleaseRequest, plan: Plan, now: ReleaseRecord, findings: tuple[Finding, ...]
) -> Released:
    """Record the release that the plan states; one that is recorded stays what it was."""
    known = plan.record
    if known is None:
        target = _record_file(request, plan.version)
        put(target, record_text(now).encode())
        return Released(version=plan.version, files=(target,), findings=findings)
    changed = what_changed(change_between(known, now))
    message = f"release {plan.version} has its record"
    advice = "Nothing changed since: there is nothing to release."
    if changed:
        advice = f'Something changed since. Say what: `kerfolio release {plan.name} --fix "..."`.'
    fault = error("release-recorded", message, plan.place, advice)
    return Released(version="", files=(), findings=in_order((*findings, fault)))


def _next(
    request: ReleaseRequest,
    plan: Plan,
    now: ReleaseRecord,
    findings: tuple[Finding, ...],
    reader: Reader,
) -> Released:
    change = change_between(plan.record, now) if plan.record else None
    step = request.step or (step_for(change) if change else "")
    fault = _fault(request, plan, change, step)
    if fault is not None:
        return Released(version="", files=(), findings=in_order((*findings, fault)))
    version = next_version(plan.releases, step)
    change = replace(change, new=version) if change else None
    errata = step == FIX and change is not None and change.class_ is Weight.CORRECTION
    words = request.words or (draft_of(change, plan, reader) if change else "")
    source = request.folder / "plans" / plan.name / "plan.yaml"
    text = source.read_text("utf-8")
    made = with_release(text, version, request.today, words, errata=errata)
    stated = Release(version=version, date=request.today, changed=words, errata=errata)
    shelf = Shelf(folder=source.parent, prefix=f"plans/{plan.name}", decodes=False)
    if not _says(made, plan, stated, shelf):
        place = plan.releases[0].place if plan.releases else plan.place
        message = "`releases:` is written in a way that cannot be added to"
        advice = f"Write {version} yourself, then `kerfolio release {plan.name}` records it."
        refusal = error("release-unwritten", message, place, advice)
        return Released(version="", files=(), findings=in_order((*findings, refusal)))
    record = _record_file(request, version)
    put(record, record_text(replace(now, version=version)).encode())
    put(source, made.encode())
    told = letter(change, plan, stated, reader) if change else ""
    return Released(
        version=version, files=(source, record), findings=findings, change=change, letter=told
    )


def _fault(
    request: ReleaseRequest, plan: Plan, change: ReleaseChange | None, step: str
) -> Finding | None:
    """Return why there is no next release, None where there is one."""
    command = f"kerfolio release {plan.name}"
    if change is not None and change.nothing:
        message = f"nothing changed since {plan.version}"
        return error("release-same", message, plan.place, "Change the plan first.")
    last = max((each.date for each in plan.releases), default=request.today)
    if last > request.today:
        message = f"the last release is dated {last}, and today is {request.today}"
        return error("release-date", message, plan.place, "Correct its date first.")
    if not step:
        message = "older pieces no longer fit" if change else f"{plan.version} has no record"
        advice = (
            f"Say `--fix` if {plan.version} was wrong, `--redesign` if this is another thing now."
            if change
            else f"Say how far this goes: `{command} --fix`, `--change` or `--redesign`."
        )
        return error("release-step", message, plan.place, advice)
    if not request.words and change is None:
        advice = f'Say what changed: `{command} --{step} "The slots moved 12 mm inward."`.'
        return error("release-words", "nobody can tell what changed", plan.place, advice)
    return None


def _says(text: str, plan: Plan, stated: Release, shelf: Shelf) -> bool:
    """Tell whether the text of a plan says what it said, with one release more."""
    read = read_plan(text.encode(), plan.name, shelf).plan
    if read is None:
        return False
    told = {(each.version, each.date, each.changed, each.errata) for each in read.releases}
    wanted = {
        (each.version, each.date, each.changed, each.errata) for each in (*plan.releases, stated)
    }
    return read.version == stated.version and told == wanted


def _record_file(request: ReleaseRequest, version: str) -> Path:
    return request.folder / "plans" / request.name / RECORDS / f"{version}.json"
