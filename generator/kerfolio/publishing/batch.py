"""A batch: what a maker needs to cut several copies of a plan at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_order, in_unit
from kerfolio.basis.place import Place
from kerfolio.disk.hand_over import hand_over
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import is_of_batch
from kerfolio.layouts.batch import several
from kerfolio.layouts.check import first_faults
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.plan_layout import OWN_PLACER, lay_out
from kerfolio.layouts.together import KeptTogether
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.proving.prove import Proof
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.cut_files import Named, art_files, sheet_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine_at import examine_at
from kerfolio.publishing.fitted_files import Settling
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.lists import list_files
from kerfolio.publishing.own_folder import Writer, folder_faults
from kerfolio.publishing.ready_made import ready_made_sets
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.sheet_papers import drawn_papers, sheet_papers
from kerfolio.writing.formats import EVERY_FORMAT, CutFormat

_LISTS = tuple(
    f"lists/{each}.csv" for each in ("parts", "sheets", "boards", "board-cuts", "cutting", "edges")
)
"""The lists that tell of all copies; the others of a bundle are those of one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRequest:
    """Which plan to make how often, and the folder its files go to.

    ``asked`` is the point they are for, None: all that the plan is published for. ``formats`` None:
    those that plan and workshop ask for.
    """

    folder: Path
    plan: str
    copies: int
    out: Path
    asked: Asked | None = None
    effort: Effort = EFFORT
    formats: tuple[CutFormat, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchMade:
    """What came of it: nothing was written where findings are errors. ``sheets`` are counted."""

    findings: tuple[Finding, ...]
    written: tuple[str, ...] = ()
    sheets: int = 0


def make_batch(request: BatchRequest, say: Say = silent) -> BatchMade:
    """Lay out several copies together and write their files. Raises OSError when a disk refuses.

    The plan's own frozen layout stays as it is.
    """
    refused = tuple(_refusals(request))
    if refused:
        return BatchMade(findings=refused)
    found = examine_at(request.folder, request.plan, request.asked, say, lambda *_: ())
    findings, one = found.findings, found.laid_out
    if found.workshop is None or one is None or has_errors(findings):
        return BatchMade(findings=findings)
    say(f"laying out {request.copies} copies")
    proof = _multiplied(one.proof, request.copies)
    engine = KeptTogether(OWN_PLACER, one.layout)
    layout, faults = lay_out(proof.points, request.effort, engine, copies=1)
    faults = faults if layout is None else first_faults(layout, proof.points)
    findings = in_order((*findings, *in_unit(faults, proof.plan.units)))
    if layout is None or has_errors(faults):
        return BatchMade(findings=findings)
    laid_out = LaidOut(proof=proof, layout=layout, fresh="")
    edition = edition_of(found.workshop, laid_out, request.formats)
    say("drawing the sheets")
    files = dict(_files(edition))
    hand_over(request.out, files, carries=False, whole="The last batch is untouched.")
    return BatchMade(findings=findings, written=tuple(files), sheets=len(layout.sheets))


def _refusals(request: BatchRequest) -> Iterator[Finding]:
    """Refuse a folder that holds something else or is public, so that nothing is lost or leaks."""
    if not request.plan:
        yield error("unknown-plan", "no plan is named", Place("plans"), "Write `--plan NAME`.")
    wrote = partial(is_of_batch, formats=request.formats or EVERY_FORMAT)
    writer = Writer(name="batch", what="the batch", wrote=wrote)
    yield from folder_faults(request.folder, request.out, writer)


def _multiplied(proof: Proof, copies: int) -> Proof:
    """Return the proof of a plan that has the pieces of all copies; how they go is left out."""
    assert proof.drawn is not None, "only proved plans are laid out"
    drawn = several(proof.drawn, copies)
    every = {each.variant.label: each for each in (*proof.points, *ready_made_sets(proof))}
    points = tuple(several(each, copies) for each in every.values())
    corners = tuple(several(each, copies) for each in proof.corners)
    return replace(proof, plan=drawn.plan, drawn=drawn, points=points, corners=corners, made=())


def _files(edition: Edition) -> Iterator[Named]:
    for settled in edition.variants:
        yield from sheet_files(settled, edition.layout, edition.formats, edition.reader)
    yield from art_files(edition.settled, edition.formats, edition.reader)
    name = edition.identity.paper
    paper = edition.settled.stock.paper(name)
    assert paper is not None, "the workshop's paper is in the library"
    settling = Settling(edition.settled, edition.corners)
    yield from sheet_papers(edition, SheetPapers(edition, settling.at, {name: paper}))
    yield from drawn_papers(edition, {name: paper})
    lists = list_files(edition)
    yield from ((each, lists[each]) for each in _LISTS if each in lists)
