"""The whole way, from a workshop to OUT, on one screen."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from kerfolio.agreement.check import disagreements
from kerfolio.basis.finding import Finding, error, has_errors, in_order
from kerfolio.basis.place import Place
from kerfolio.basis.shortened import shortened
from kerfolio.disk.carry import in_the_way
from kerfolio.disk.hand_over import hand_over, take_up
from kerfolio.disk.out_folder import foreign_in
from kerfolio.disk.trouble import if_stopped
from kerfolio.edition.public import Public, public_of
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.cell_ends import found_at_cell_ends
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import Say, examine, silent
from kerfolio.publishing.freeze import Frozen, freeze_layouts
from kerfolio.publishing.private_log import write_private_log
from kerfolio.publishing.refusals import keeps_nothing, refusals
from kerfolio.publishing.site import Files, site_files
from kerfolio.publishing.swapping import with_swaps
from kerfolio.publishing.unfitted import unfitted


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What to publish and where; ``only`` names a single plan or is empty."""

    folder: Path
    out: Path
    supporters_out: Path
    only: str = ""


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


def publish(request: Request, say: Say = silent) -> Outcome:
    """Publish a workshop; an interruption says what is whole, see ``disk.trouble.Stopped``."""
    with if_stopped("The last site is untouched."):
        return _publish(request, say)


def _publish(request: Request, say: Say) -> Outcome:
    """Prove, compute, draw, bind, check and write. Raises OSError when the disk refuses.

    OUT is exchanged whole at the very end, together with the supporters' bundles; whatever fails
    before leaves the last site standing. What others laid in OUT stays there.
    """
    refused = refusals(request.folder, request.out, request.supporters_out, request.only)
    if refused:
        return Outcome(published=False, findings=in_order(refused))
    locked = keeps_nothing(request.folder)
    for each in locked:
        say(str(each.message))
    taken_up = take_up(request.out)
    examined = with_swaps(examine(request.folder, request.only, say), say)
    findings = in_order((*locked, *taken_up, *examined.findings))
    if examined.workshop is None or has_errors(findings):
        return Outcome(published=False, findings=findings)
    bundles: list[Bundle] = []
    for laid_out in examined.laid_out:
        edition = edition_of(examined.workshop, laid_out)
        say(f"drawing and binding {edition.plan.title}")
        bundles.append(bundle_of(edition))
    say("checking that all files agree")
    checked = (
        fault
        for each in bundles
        for fault in disagreements(each.edition, each.content, each.fitted_text, each.templates)
    )
    left_out = (f for each in bundles for f in unfitted(each.edition.settled, each.fitted))
    at_ends = (
        found
        for laid_out, each in zip(examined.laid_out, bundles, strict=True)
        for found in found_at_cell_ends(laid_out.proof, examined.workshop.stock, each.fitted)
    )
    findings = in_order((*findings, *left_out, *at_ends, *shortened(checked)))
    if has_errors(findings):
        return Outcome(published=False, findings=findings)
    say("writing the site")
    files, notes = site_files(examined.workshop, bundles)
    handed = [each for each in bundles if not each.edition.plan.is_open]
    blocked = _blocked(request.out, files)
    if blocked:
        return Outcome(published=False, findings=in_order((*findings, *blocked)))
    hand_over(
        request.out,
        files,
        {request.supporters_out / each.name: each.content for each in handed},
    )
    with if_stopped("The site is published; a layout or the private log may be missing."):
        frozen: tuple[Frozen, ...] = ()
        if not locked:
            frozen = freeze_layouts(request.folder, examined.laid_out)
            write_private_log(request.folder, examined.workshop)
    return Outcome(
        published=True,
        findings=in_order((*findings, *notes)),
        plans=tuple(each.edition.name for each in bundles),
        frozen=frozen,
        handed_over=tuple(request.supporters_out / each.name for each in handed),
        public=tuple(public_of(each.edition.plan) for each in handed),
    )


def _blocked(out: Path, files: Files) -> tuple[Finding, ...]:
    """Look for what others laid in OUT just where a file of the site is to stand."""
    advice = "Move it elsewhere: what a publish did not write it does not replace."
    return tuple(
        error("out-in-the-way", f"`{name}` was not written by a publish", Place(str(out)), advice)
        for name in in_the_way(foreign_in(out), files)
    )
