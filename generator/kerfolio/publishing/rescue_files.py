"""Files that save a piece: a second cut that opens it wider, slips to line it with, or it alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cache, partial
from pathlib import Path

from kerfolio.basis.digits import digits
from kerfolio.basis.finding import Finding, has_errors, in_order
from kerfolio.basis.json_text import number
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.disk.hand_over import hand_over
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.edition.names import FILES, rescue_name, wider_stem
from kerfolio.edition.rescue_words import laid_words, offcut_words, slip_words
from kerfolio.layouts.alone import laid_alone
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.cut_files import CutFile, files_of_parts, written
from kerfolio.publishing.examine_at import examine_at
from kerfolio.publishing.own_folder import folder_faults
from kerfolio.publishing.point_files import WRITER, FilesMade, files_json
from kerfolio.publishing.rescue import Rescue, RescueAsked, rescue_asked
from kerfolio.publishing.rescue_fitted import reopening_file
from kerfolio.publishing.say import Say, silent
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import CENTRE, FitVariant, SettledPlan, SheetSize
from kerfolio.settling.titles import part_title
from kerfolio.shop.reopening import reopening
from kerfolio.shop.shims import shims
from kerfolio.writing.formats import formats_in


@dataclass(frozen=True, slots=True, kw_only=True)
class RescueRequest:
    """Which piece of which plan to save, at which point, and the folder its files go to.

    ``out`` None: ``files/NAME-LABEL-RESCUE`` in the workshop.
    """

    folder: Path
    plan: str
    asked: Asked
    rescue: RescueAsked
    out: Path | None = None


def make_rescue(request: RescueRequest, say: Say = silent) -> FilesMade:
    """Settle and prove a plan at a point, and write what saves a piece of it.

    Raises OSError when a disk refuses. What is asked for is looked at before anything is proved.
    """

    def refused(workshop: Workshop, there: FitVariant | None) -> Iterable[Finding]:
        settled = None if there is None else _settled(workshop, request.plan, there)
        if settled is None:
            return ()
        rescue, faults = rescue_asked(request.rescue, settled)
        if rescue is None:
            return faults
        return folder_faults(request.folder, _out(request, rescue, settled), WRITER)

    found = examine_at(request.folder, request.plan, request.asked, say, refused)
    if found.workshop is None or found.laid_out is None or has_errors(found.findings):
        return FilesMade(findings=found.findings)
    settled = found.laid_out.proof.drawn
    assert settled is not None, "only proved plans are laid out"
    rescue, remarks = rescue_asked(request.rescue, settled)
    assert rescue is not None, "it was looked at before"
    identity = found.workshop.identity
    reader = identity.reader_of(settled.plan)
    formats = formats_in(identity.cut_files_of(settled.plan))
    say(f"drawing what saves {rescue.name}")
    files = dict(written(rescue_files(rescue, settled, reader), formats))
    out = _out(request, rescue, settled)
    if files:
        files[FILES] = files_json(settled, _about(rescue))
        hand_over(out, files, carries=False, whole="The last files are untouched.")
    return FilesMade(
        findings=in_order((*found.findings, *remarks)),
        written=tuple(files),
        label=settled.variant.label,
        out=out,
        told=(*found.told, *_told(rescue, settled, reader)),
    )


def _settled(workshop: Workshop, name: str, there: FitVariant) -> SettledPlan | None:
    plan = next(each for each in workshop.plans if each.name == name)
    found, _ = settle(plan, workshop.stock, there)
    return found and set_of(found)


def _out(request: RescueRequest, rescue: Rescue, settled: SettledPlan) -> Path:
    stem = f"{request.plan}-{settled.variant.label}-{rescue_stem(rescue, settled.plan.units)}"
    return request.out or request.folder / "files" / stem


def rescue_stem(rescue: Rescue, unit: str) -> str:
    """Return what is saved and how, for names: ``side-offcut-300x400mm``."""
    if rescue.offcut is not None:
        scale = INCH if unit == "in" else 1.0
        size = "x".join(digits(each / scale, 2) for each in rescue.offcut)
        return f"{rescue.part}-offcut-{size}{unit}"
    if rescue.reopen is not None:
        return wider_stem(rescue.name, rescue.reopen, unit)
    return rescue.part


def rescue_files(rescue: Rescue, settled: SettledPlan, reader: Reader) -> Iterator[CutFile]:
    """Yield the cut files that save a piece; none for one that is lined."""
    if rescue.offcut is not None:
        yield _on_offcut(rescue, rescue.offcut, settled, reader)
    elif rescue.reopen is not None:
        yield _reopening(rescue, rescue.reopen, settled, reader)
    elif rescue.loose is None:
        part = settled.part(rescue.part)
        yield from files_of_parts(replace(settled, parts=(part,)), reader)


def _reopening(rescue: Rescue, by: float, settled: SettledPlan, reader: Reader) -> CutFile:
    part = settled.part(rescue.part)
    found = reopening(rescue.name, part, settled.sheet(part.sheet), rescue.features, by)
    assert found is not None, "it was looked at before"
    return reopening_file(found, settled, reader)


def _on_offcut(rescue: Rescue, size: SheetSize, settled: SettledPlan, reader: Reader) -> CutFile:
    """Return the file of an offcut, which may have another thickness than its sheet."""
    part = settled.part(rescue.part)
    thick = rescue.thickness or part.thickness
    sheet = replace(settled.sheet(part.sheet), thickness=thick)
    sheets = tuple(sheet if each.name == sheet.name else each for each in settled.sheets)
    own = replace(settled, sheets=sheets, parts=(replace(part, thickness=thick),))
    laid = laid_alone(part, sheet, size)
    assert laid is not None, "it was looked at before"
    title = part_title(settled.plan, part.name)
    what = say(reader, "rescuewords-offcut-for", mark=part.mark, part=title)
    drawn = partial(cut_sheet, own, laid, reader, what)
    stem = rescue_stem(rescue, settled.plan.units)
    return CutFile(
        named=partial(rescue_name, settled.variant.label, stem),
        drawn=cache(drawn),
        own_origin=sheet.datum == CENTRE,
    )


def _about(rescue: Rescue) -> dict[str, object]:
    """Return what ``files.json`` says of it besides the point; lengths in mm."""
    lengths = {"wider": rescue.reopen, "thickness": rescue.thickness}
    return {
        "only": rescue.name,
        **({"offcut": [number(each) for each in rescue.offcut]} if rescue.offcut else {}),
        **{name: number(mm) for name, mm in lengths.items() if mm is not None},
    }


def _told(rescue: Rescue, settled: SettledPlan, reader: Reader) -> Iterator[str]:
    """Yield what is to be done, in words."""
    part = settled.part(rescue.part)
    if rescue.loose is not None:
        yield from slip_words(shims(settled, part, rescue.features), rescue.loose, reader)
    elif rescue.offcut is not None:
        laid = laid_alone(part, settled.sheet(part.sheet), rescue.offcut)
        assert laid is not None, "it was looked at before"
        yield offcut_words(part.name, laid.placements[0].turn, reader)
    elif rescue.reopen is not None:
        yield laid_words(reader)
