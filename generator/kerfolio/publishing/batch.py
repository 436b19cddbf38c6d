"""A batch: what a maker needs to cut several copies of a plan at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_order, in_unit
from kerfolio.basis.place import Place
from kerfolio.disk.hand_over import hand_over
from kerfolio.disk.out_folder import is_site, out_faults
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import has_saw, is_of_batch, layout_name, saw_name, setup_name
from kerfolio.layouts.batch import several
from kerfolio.layouts.check import first_faults
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.plan_layout import OWN_PLACER, lay_out
from kerfolio.layouts.together import KeptTogether
from kerfolio.paper.layout_sheets import layout_pdf
from kerfolio.paper.saw_sheets import saw_pdf
from kerfolio.paper.setup_sheets import setup_pdf
from kerfolio.proving.prove import Proof
from kerfolio.publishing.cut_files import Named, art_files, sheet_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import LaidOut, Say, examine, silent
from kerfolio.publishing.lists import list_files
from kerfolio.publishing.refusals import among_sources
from kerfolio.writing.formats import EVERY_FORMAT, CutFormat

_LISTS = tuple(
    f"lists/{each}.csv" for each in ("parts", "sheets", "boards", "board-cuts", "cutting")
)
"""The lists that tell of all copies; the others of a bundle are those of one."""

_OF_VIEWERS = (".DS_Store", "Thumbs.db", "desktop.ini")
"""Files that a system's file viewer lays into folders that were looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRequest:
    """Which plan to make how often, and the folder its files go to.

    ``formats`` None: those that plan and workshop ask for.
    """

    folder: Path
    plan: str
    copies: int
    out: Path
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
    examined = examine(request.folder, request.plan, say, pictures=False)
    findings = examined.findings
    if examined.workshop is None or has_errors(findings):
        return BatchMade(findings=findings)
    (one,) = examined.laid_out
    say(f"laying out {request.copies} copies")
    proof = _multiplied(one.proof, request.copies)
    engine = KeptTogether(OWN_PLACER, one.layout)
    layout, faults = lay_out(proof.variants, request.effort, engine, copies=1)
    faults = faults if layout is None else first_faults(layout, proof.variants)
    findings = in_order((*findings, *in_unit(faults, proof.plan.units)))
    if layout is None or has_errors(faults):
        return BatchMade(findings=findings)
    laid_out = LaidOut(proof=proof, layout=layout, fresh="")
    edition = edition_of(examined.workshop, laid_out, request.formats)
    say("drawing the sheets")
    files = dict(_files(edition))
    hand_over(request.out, files, carries=False, whole="The last batch is untouched.")
    return BatchMade(findings=findings, written=tuple(files), sheets=len(layout.sheets))


def _refusals(request: BatchRequest) -> Iterator[Finding]:
    """Refuse a folder that holds something else or is public, so that nothing is lost or leaks."""
    out, place = request.out, Place(str(request.out))
    if not request.plan:
        yield error("unknown-plan", "no plan is named", Place("plans"), "Write `--plan NAME`.")
    yield from out_faults(out, partial(_stranger, formats=request.formats or EVERY_FORMAT), "batch")
    yield from among_sources(request.folder, out, "--out")
    if any(is_site(each) for each in out.resolve().parents):
        yield error(
            "out-in-site", "the batch would lie inside a site", place, "Name another --out."
        )


def _stranger(out: Path, formats: tuple[CutFormat, ...]) -> str:
    """Return the first file of a folder that neither a batch nor the system's file viewer wrote.

    A link is a stranger wherever it leads.
    """
    strangers = (
        each.relative_to(out).as_posix()
        for each in out.rglob("*")
        if each.is_symlink() or not (each.is_dir() or _is_known(each, out, formats))
    )
    return min(strangers, default="")


def _is_known(file: Path, out: Path, formats: tuple[CutFormat, ...]) -> bool:
    return file.name in _OF_VIEWERS or is_of_batch(file.relative_to(out).as_posix(), formats)


def _multiplied(proof: Proof, copies: int) -> Proof:
    """Return the proof of a plan that has the pieces of all copies; how they go is left out."""
    assert proof.drawn is not None, "only proved plans are laid out"
    drawn = several(proof.drawn, copies)
    variants = tuple(several(each, copies) for each in proof.variants)
    return replace(proof, plan=drawn.plan, drawn=drawn, variants=variants, made=())


def _files(edition: Edition) -> Iterator[Named]:
    for settled in edition.variants:
        yield from sheet_files(settled, edition.layout, edition.formats, edition.first)
    yield from art_files(edition.settled, edition.formats, edition.first)
    name = edition.identity.paper
    paper = edition.settled.stock.paper(name)
    assert paper is not None, "the workshop's paper is in the library"
    yield layout_name(name), layout_pdf(edition, paper)
    if has_saw(edition):
        yield saw_name(name), saw_pdf(edition, edition.saw, edition.board_plans, paper)
    yield setup_name(name), setup_pdf(edition, paper)
    lists = list_files(edition)
    yield from ((each, lists[each]) for each in _LISTS if each in lists)
