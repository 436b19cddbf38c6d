"""The whole way, from a workshop to OUT, on one screen."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_order
from kerfolio.basis.place import Place
from kerfolio.publishing.agreement import disagreements
from kerfolio.publishing.bundle import bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import Say, examine, silent
from kerfolio.publishing.freeze import freeze_layouts
from kerfolio.publishing.private_log import write_private_log
from kerfolio.publishing.site import SUPPORTERS, site_files
from kerfolio.publishing.swap import other_plans, out_faults, put, swap_in


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What to publish and where; ``only`` names a single plan or is empty."""

    folder: Path
    out: Path
    supporters_out: Path
    only: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came of a publish; nothing was written unless ``published``."""

    published: bool
    findings: tuple[Finding, ...]
    plans: tuple[str, ...] = ()
    handed_over: tuple[Path, ...] = ()


def publish(request: Request, say: Say = silent) -> Outcome:
    """Prove, compute, draw, bind, check and write. Raises OSError when the disk refuses.

    OUT is swapped in whole at the very end; whatever fails before leaves the last site standing.
    """
    refused = _refusals(request)
    examined = examine(request.folder, request.only, say)
    findings = in_order((*refused, *examined.findings))
    if examined.workshop is None or has_errors(findings):
        return Outcome(published=False, findings=findings)
    bundles = []
    for laid_out in examined.laid_out:
        edition = edition_of(examined.workshop, laid_out)
        say(f"drawing and binding {edition.plan.title}")
        bundles.append(bundle_of(edition))
    say("checking that all files agree")
    findings = in_order((*findings, *(f for each in bundles for f in disagreements(each))))
    if has_errors(findings):
        return Outcome(published=False, findings=findings)
    say("writing the site")
    files, notes = site_files(examined.workshop, bundles)
    handed = [each for each in bundles if each.edition.plan.access == SUPPORTERS]
    for each in handed:
        put(request.supporters_out / each.name, each.content)
    swap_in(request.out, files)
    freeze_layouts(request.folder, examined.laid_out)
    write_private_log(request.folder, examined.workshop)
    return Outcome(
        published=True,
        findings=in_order((*findings, *notes)),
        plans=tuple(each.edition.name for each in bundles),
        handed_over=tuple(request.supporters_out / each.name for each in handed),
    )


def _refusals(request: Request) -> tuple[Finding, ...]:
    """Look at where the output would go before any work is done."""
    out, supporters = request.out.resolve(), request.supporters_out.resolve()
    faults = list(out_faults(request.out))
    if supporters == out or out in supporters.parents:
        message = "supporters' bundles would lie inside the site"
        advice = "Name a --supporters-out folder that is not under the site."
        faults.append(error("supporters-inside-out", message, Place(str(supporters)), advice))
    if out == request.folder.resolve() or out in request.folder.resolve().parents:
        message = "the site would replace the workshop"
        faults.append(error("out-over-workshop", message, Place(str(out)), "Name another --out."))
    others = other_plans(request.out, request.only) if request.only and not faults else ()
    if others:
        message = f"the site there also holds {', '.join(others)}"
        advice = "Publish all plans, or give this one a site of its own with --out."
        faults.append(error("out-holds-more", message, Place(str(request.out)), advice))
    return tuple(faults)
