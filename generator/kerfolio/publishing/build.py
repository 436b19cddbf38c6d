"""The whole way, from a workshop to OUT, on one screen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_order, note
from kerfolio.basis.place import Place
from kerfolio.bundles.manifest import manifest_text, rows_of
from kerfolio.disk.carry import in_the_way
from kerfolio.disk.hand_over import hand_over, take_up
from kerfolio.disk.out_folder import MANIFEST, foreign_in
from kerfolio.disk.put import put
from kerfolio.disk.trouble import if_stopped
from kerfolio.model.showing import Public
from kerfolio.publishing.cabinet import Cabinet, cabinet_of
from kerfolio.publishing.earlier import earlier_bundles
from kerfolio.publishing.freeze import Frozen, freeze_layouts
from kerfolio.publishing.going_out import handing_of, no_longer_sealed, still_closed
from kerfolio.publishing.refusals import holds_more, keeps_nothing, left_out, refusals
from kerfolio.publishing.released import before_its_day, changed_in, newest_in, recorded, unrecorded
from kerfolio.publishing.renewing import (
    Renewed,
    Renewing,
    keep_frozen,
    kept_of,
    renewed,
    unreadable,
)
from kerfolio.publishing.say import Say, Tally, silent, untold
from kerfolio.publishing.sealed_files import SealedFile, WithSealed, seal_bundles
from kerfolio.publishing.side_by_side import Workers
from kerfolio.publishing.site_written import HandedFiles, SiteFiles, shared_files
from kerfolio.publishing.sources import PRIVATE_LOG, Sources, sources_of, store_of
from kerfolio.publishing.standing import ListingError, Standing, standing_in
from kerfolio.publishing.way_out import HandingOut
from kerfolio.reading.plan_folders import concerns, titled_twice, unknown_plan

_NO_CAIRO = note(
    "no-cairo",
    "no PNG previews: the cairo library is missing",
    Place("workshop.yaml"),
    "Install it (Debian: libcairo2) for previews; all else is complete.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What to publish and where; ``only`` names a single plan or is empty.

    With ``seals`` bundles go out sealed where their circle has a key; ``keys`` is the folder of
    keys that was asked for. ``day`` is the one published for (ISO 8601, or empty), by which plans
    open to all. Releases dated after ``today``, the clock's day, are refused, where that is said,
    and so are those that changed since they were recorded, unless this is a ``draft`` for the maker
    alone.
    """

    folder: Path
    out: Path
    supporters_out: Path
    only: str = ""
    workers: Workers = field(default_factory=Workers)
    keys: Path | None = None
    seals: bool = False
    day: str = ""
    today: date | None = None
    draft: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came of a publish; nothing was written unless ``published``.

    ``frozen`` are the layouts that were computed anew.
    """

    published: bool
    findings: tuple[Finding, ...]
    plans: tuple[str, ...] = ()
    frozen: tuple[Frozen, ...] = ()
    handed_over: tuple[Path, ...] = ()
    public: tuple[Public, ...] = ()
    sealed: tuple[SealedFile, ...] = ()


def publish(request: Request, say: Say = silent, tally: Tally = untold) -> Outcome:
    """Publish a workshop; an interruption says what is whole, see ``disk.trouble.Stopped``.

    What can be refused at once is refused before anything is proved. Plans that are as they were
    are neither read nor made. Raises OSError when the disk refuses.
    """
    with if_stopped("The last site is untouched."):
        standing = standing_in(request.out, request.only) if request.only else Standing()
        refused = refusals(request.folder, request.out, request.supporters_out)
        refused = refused or holds_more(request.out, standing)
        if refused:
            return _refused(refused)
        locked = keeps_nothing(request.folder)
        for each in locked:
            say(str(each.message))
        said = (*locked, *take_up(request.out))
        with store_of(request.folder) as store:
            say(f"reading {request.folder.name or request.folder}")
            sources = sources_of(request.folder, store)
            if sources is None:
                return _refused((*said, *_unread(request)))
            cabinet, handing, faults = _going_out(request, sources)
            if has_errors(faults):
                return _refused((*said, *faults))
            how = Renewing(
                sources=sources,
                store=store,
                workers=request.workers,
                say=say,
                tally=tally,
                handing=handing,
            )
            return _published(request, how, standing, (*said, *faults), cabinet)


def _going_out(
    request: Request, sources: Sources
) -> tuple[Cabinet, HandingOut, tuple[Finding, ...]]:
    """Return where keys lie and what decides on the way of bundles; no key is looked for unasked.

    Raises OSError.
    """
    cabinet = cabinet_of(request.folder, sources.title, sources.keys, request.keys)
    if not request.seals:
        return cabinet, HandingOut(day=request.day), ()
    outs = (request.out, request.supporters_out)
    return (cabinet, *handing_of(cabinet, request.folder, outs, request.day))


def _published(
    request: Request,
    how: Renewing,
    standing: Standing,
    said: tuple[Finding, ...],
    cabinet: Cabinet,
) -> Outcome:
    """Prove, draw, check and write. Raises OSError when the disk refuses.

    OUT is exchanged whole at the very end, together with the supporters' bundles; whatever fails
    before leaves the last site standing. What others laid in OUT stays there.
    """
    names = (request.only,) if request.only else how.sources.plans
    said = (*said, *how.sources.findings)
    if request.only and request.only not in how.sources.plans:
        return _refused((*said, unknown_plan(request.only, how.sources.plans)))
    digests = how.sources.of_plans(names)
    found = kept_of(how, digests, draws=True)
    waiting = [name for name in digests if name not in found.proved]
    unread = unreadable(request.folder, waiting, request.today)
    unread = unread or tuple(before_its_day(newest_in(found.in_turn), request.today))
    if unread:
        return _refused((*said, *unread))
    changed = () if request.draft else _changed(request, how, digests)
    if changed:
        return _refused((*said, *changed))
    found = renewed(how, digests, found, draws=True)
    closed = still_closed(how.handing, found.in_turn, request.today)
    twice = titled_twice((each.name, each.title, each.place) for each in found.in_turn)
    bare = unrecorded(request.folder, found.in_turn)
    findings = in_order((*said, *found.findings, *twice, *closed, *bare))
    if has_errors(findings):
        return _refused(findings)
    how.say("writing the site")
    written = found.written
    entries = sorted(
        (*standing.entries, *(each.entry for each in written.values())), key=lambda each: each.name
    )
    try:
        shared, log = shared_files(how, entries)
    except ListingError:
        return _refused((left_out(request.out, (each.name for each in standing.entries)),))
    sealed = seal_bundles(how, cabinet, found.proved, written)
    rows = [*rows_of(shared), *(row for each in written.values() for row in each.files)]
    rows += [each.row for each in sealed]
    ours = {row.name for row in rows}
    earlier, damaged = earlier_bundles(request.out, [each.entry for each in written.values()])
    kept = [row for row in (*standing.files, *earlier) if row.name not in ours]
    shared[MANIFEST] = manifest_text(entries, (*rows, *kept)).encode()
    files = WithSealed(how, SiteFiles(how, shared, written), sealed)
    blocked = _blocked(request.out, (*files, *(row.name for row in kept)))
    if blocked:
        return _refused((*findings, *blocked))
    handed = {
        request.supporters_out / each.entry.bundle: name
        for name, each in sorted(written.items())
        if each.public is not None
    }
    unsealed = tuple(no_longer_sealed(request.out, written))
    hand_over(
        request.out,
        files,
        HandedFiles(how, handed, written),
        keeps=tuple(row.name for row in kept),
    )
    with if_stopped("The site is published; a layout or the private log may be missing."):
        frozen = _frozen(request, how, found, log)
    lacking = (_NO_CAIRO,) if any(each.lacking for each in written.values()) else ()
    return Outcome(
        published=True,
        findings=in_order((*findings, *lacking, *unsealed, *damaged)),
        plans=tuple(sorted(written)),
        frozen=frozen,
        handed_over=tuple(handed),
        public=tuple(each for _, w in sorted(written.items()) if (each := w.public) is not None),
        sealed=sealed,
    )


def _changed(request: Request, how: Renewing, digests: Mapping[str, str]) -> tuple[Finding, ...]:
    """Compare plans with the records of their versions; what was compared once is not again."""
    keys = {name: how.sources.key("compared", name, each) for name, each in digests.items()}
    fresh = [name for name in recorded(request.folder, keys) if how.store.get(keys[name]) is None]
    changed = changed_in(request.folder, fresh)
    if not changed:
        for name in fresh:
            how.store.put(keys[name], b"as recorded")
    return changed


def _frozen(request: Request, how: Renewing, found: Renewed, log: bytes) -> tuple[Frozen, ...]:
    """Write layouts and the maker's own log into the workshop, where that may be written to."""
    if keeps_nothing(request.folder):
        return ()
    layouts = (layout for each in found.in_turn for layout in each.layouts)
    frozen = freeze_layouts(request.folder, layouts)
    keep_frozen(how, found)
    put(request.folder / PRIVATE_LOG, log)
    return frozen


def _unread(request: Request) -> tuple[Finding, ...]:
    """Return what is wrong with a workshop where what its plans share cannot be read."""
    from kerfolio.reading.workshop import read_workshop  # which takes long to load

    _, found = read_workshop(request.folder)
    return tuple(each for each in found if not request.only or concerns(each, request.only))


def _refused(findings: Iterable[Finding]) -> Outcome:
    return Outcome(published=False, findings=in_order(findings))


def _blocked(out: Path, files: Iterable[str]) -> tuple[Finding, ...]:
    """Look for what others laid in OUT just where a file of the site is to stand."""
    advice = "Move it elsewhere: what a publish did not write it does not replace."
    return tuple(
        error("out-in-the-way", f"`{name}` was not written by a publish", Place(str(out)), advice)
        for name in in_the_way(foreign_in(out), files)
    )
