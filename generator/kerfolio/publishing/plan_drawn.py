"""A proved plan drawn, bound and checked: all that a site has of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from hashlib import sha256

from kerfolio.agreement.check import disagreements
from kerfolio.basis.finding import Finding, in_order
from kerfolio.basis.shortened import shortened
from kerfolio.bundles.manifest import rows_of
from kerfolio.edition.public import public_of
from kerfolio.keeping.kept import NOTHING_KEPT, Kept
from kerfolio.keeping.pack import packed
from kerfolio.model.access import OPEN
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.cell_ends import found_at_cell_ends
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.plan_record import HANDED, Written
from kerfolio.publishing.plan_site import plan_site
from kerfolio.publishing.say import Say
from kerfolio.publishing.unfitted import unfitted
from kerfolio.publishing.way_out import Way


def drawn(
    workshop: Workshop,
    laid_out: LaidOut,
    say: Say,
    kept: Kept = NOTHING_KEPT,
    way: Way = Way.BY_HAND,
) -> tuple[Written, bytes]:
    """Return what came of drawing, binding and checking a plan, and the files written, packed.

    What of it hangs on less than the whole plan may be ``kept``. A supporters' plan goes its
    ``way``, an open one to all.
    """
    edition = edition_of(workshop, laid_out, kept=kept)
    if way is Way.TO_ALL:
        edition = replace(edition, plan=replace(edition.plan, access=OPEN))
    plan = edition.plan
    say(f"drawing and binding {plan.title}")
    bundle = bundle_of(edition, kept)
    say(f"checking that all files of {plan.title} agree")
    findings = in_order(_findings(workshop, laid_out, bundle))
    say(f"writing the pages of {plan.title}")
    site = plan_site(workshop, bundle, sealed=way is Way.SEALED)
    handed = {} if plan.is_open else {HANDED: bundle.content}
    pack = packed({**dict(sorted(site.files.items())), **handed})
    written = Written(
        findings=findings,
        entry=site.entry,
        files=rows_of(site.files),
        pack=sha256(pack).hexdigest(),
        public=None if plan.is_open else public_of(bundle.edition.plan),
        lacking=site.lacking,
        handed="" if plan.is_open else sha256(bundle.content).hexdigest(),
    )
    return written, pack


def _findings(workshop: Workshop, laid_out: LaidOut, bundle: Bundle) -> Iterable[Finding]:
    """Yield what is found in what was written, and where that changes its form."""
    yield from unfitted(bundle.edition.settled, bundle.fitted)
    yield from found_at_cell_ends(laid_out.proof, workshop.stock, bundle.fitted)
    assert bundle.shapes is not None, "it was drawn here"
    told = disagreements(bundle.edition, bundle.content, bundle.fitted_text, bundle.shapes.checked)
    yield from shortened(told)
