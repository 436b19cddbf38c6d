"""Files for one point: the thickness, fit and cutter that somebody has."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.saying import say
from kerfolio.disk.hand_over import hand_over
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import FILES, is_of_point, papers_of
from kerfolio.fitted.fill import PointError
from kerfolio.model.workshop import Workshop
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.cut_files import Named, art_files, part_files, sheet_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine_at import examine_at
from kerfolio.publishing.fitted_files import (
    Printed,
    Settling,
    filled_at,
    fitted_files,
    with_printed,
)
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.other_sheets import typed
from kerfolio.publishing.own_folder import Writer, folder_faults
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.sheet_papers import drawn_papers, sheet_papers
from kerfolio.publishing.template_files import template_files
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.trials.metres import metres_at, metres_words, way_text
from kerfolio.writing.formats import EVERY_FORMAT

FORMAT = "kerfolio-files/1"

WRITER = Writer(
    name="run of `files`", what="the files", wrote=lambda name: is_of_point(name, EVERY_FORMAT)
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FilesRequest:
    """Which plan to make files of, for which point, and the folder they go to.

    ``lay_for`` is another sheet or bed that the plan is laid out for, in words; empty: its own.
    ``out`` None: ``files/NAME-LABEL`` in the workshop.
    """

    folder: Path
    plan: str
    asked: Asked
    lay_for: str = ""
    out: Path | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FilesMade:
    """What came of it: nothing was written where findings are errors. ``label`` is the point's.

    ``told`` says what is to be done with them, a line each.
    """

    findings: tuple[Finding, ...]
    written: tuple[str, ...] = ()
    label: str = ""
    out: Path = Path()
    told: tuple[str, ...] = ()


def make_files(request: FilesRequest, say: Say = silent) -> FilesMade:
    """Settle and prove a plan at a point, and write its files. Raises OSError when a disk refuses.

    What is asked for is looked at before anything is proved; the plan's own layout stays as it is.
    """

    def refused(_: Workshop, there: FitVariant | None) -> Iterable[Finding]:
        return folder_faults(request.folder, _out(request, there), WRITER)

    found = examine_at(
        *(request.folder, request.plan, request.asked, say, refused), on=request.lay_for
    )
    published = found.published
    if found.workshop is None or found.laid_out is None or published is None:
        return FilesMade(findings=found.findings)
    if has_errors(found.findings):
        return FilesMade(findings=found.findings)
    edition = edition_of(found.workshop, found.laid_out)
    there = edition.settled.variant
    say(f"drawing the files for {there.label}")
    drawn = edition.corners[0]
    settling = Settling(drawn, (*edition.corners, edition.settled))
    told = (*found.told, *_wear_told(edition, found.workshop))
    templates, papers = Templates.of(edition), SheetPapers(edition, settling.at)
    files = dict(_cut_files(edition, published, (templates.at, papers.at)))
    files |= template_files(edition, templates, known=files.keys())
    files |= sheet_papers(edition, papers, known=files.keys())
    files |= _other_files(edition)
    out = _out(request, there)
    hand_over(out, files, carries=False, whole="The last files are untouched.")
    return FilesMade(
        findings=found.findings, written=tuple(files), label=there.label, out=out, told=told
    )


def _wear_told(edition: Edition, workshop: Workshop) -> Iterator[str]:
    """Yield for each cutter that the log has metres of how far it has cut, and will."""
    reader = edition.reader
    for each in edition.wear:
        cutter = workshop.stock.cutter(each.cutter)
        so_far = metres_at(cutter, workshop.trials) if cutter else None
        if so_far and so_far.new:
            cut, way = metres_words(so_far, reader), way_text(each.metres, reader)
            yield say(reader, "metres-more", cutter=so_far.cutter, cut=cut, way=way)


def _out(request: FilesRequest, there: FitVariant | None) -> Path:
    label = f"-{there.label}" if there else ""
    on = f"-on-{typed(request.lay_for)}" if request.lay_for else ""
    return request.out or request.folder / "files" / f"{request.plan}{label}{on}"


def _cut_files(
    edition: Edition, published: LaidOut, printed: Iterable[Printed]
) -> Mapping[str, bytes]:
    """Return the cut files of sheets and parts, with those to print where the page has them.

    They are what the published page fills in, too. Where it does not reach, or other sheets are
    needed, cut files are drawn.
    """
    settled, formats, reader = edition.settled, edition.formats, edition.reader
    drawn = published.proof.drawn
    if drawn is not None and edition.layout == published.layout:
        settling = Settling(drawn, published.proof.corners)
        fitted = fitted_files(settling, published.layout, formats, reader)
        if fitted is not None:
            for each in printed:
                fitted = with_printed(fitted, settling, each)
            with suppress(PointError):
                return filled_at(fitted, settled.variant)
    parts = part_files(settled, formats, reader)
    return dict((*sheet_files(settled, edition.layout, formats, reader), *parts))


def _other_files(edition: Edition) -> Iterator[Named]:
    settled = edition.settled
    yield from art_files(settled, edition.formats, edition.reader)
    yield from drawn_papers(edition, papers_of(edition))
    yield FILES, files_json(settled)


def files_json(settled: SettledPlan, about: Mapping[str, object] | None = None) -> bytes:
    """Return what files were made for: plan, release, and of each sheet thickness, fit and cutter.

    Lengths in mm; a cutter of null is none, ``cut`` what is built in of its true cut. Who cuts a
    spare part later asks for the same. ``about`` says what else was asked for.
    """
    plan = settled.plan
    content = {
        "format": FORMAT,
        "plan": plan.name,
        "title": plan.title,
        "release": plan.version,
        "date": plan.released.isoformat(),
        "label": settled.variant.label,
        "unit": "mm",
        **({"laid-for": settled.laid_for} if settled.laid_for else {}),
        "sheets": {
            each.name: {
                "stock": each.stock.name,
                "thickness": number(each.thickness),
                "fit": number(each.fit),
                "cutter": None if each.diameter is None else number(each.diameter),
                **({"cut": number(each.cut)} if each.cut else {}),
            }
            for each in settled.sheets
        },
        **(about or {}),
    }
    return (json_text(content, 1) + "\n").encode()
