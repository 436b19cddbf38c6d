"""Computes the layout of a plan: one that serves all its fit variants."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import takewhile

from kerfolio.basis.digits import rounded
from kerfolio.basis.finding import Finding, error, has_errors, note
from kerfolio.basis.measures import size
from kerfolio.basis.said import said
from kerfolio.geometry.packing import Flat, envelope
from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.check import layout_place
from kerfolio.layouts.copies import COPIES, copied, groups_of, sheets_by_stack
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.engine import Bed, Blank, Engine, Job, Packed
from kerfolio.layouts.fingerprint import fingerprint, placements_digest
from kerfolio.layouts.kept_layout import packed_of
from kerfolio.layouts.layout import COORDINATE_DECIMALS, CopiesCount, Layout, Placement, SheetLayout
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.stacks import stacks_of
from kerfolio.layouts.turns import turns_of
from kerfolio.settling.settled import SettledPart, SettledPlan, SettledSheet

OWN_PLACER = OwnPlacer()
"""Whoever runs unasked: the same plan gives the same layout on every machine."""


def lay_out(
    variants: Sequence[SettledPlan],
    effort: Effort = EFFORT,
    engine: Engine = OWN_PLACER,
    copies: int = COPIES,
) -> tuple[Layout | None, tuple[Finding, ...]]:
    """Place every piece of a plan on as few sheets as the engine finds.

    Each part is taken as large as all variants together make it, so the layout fits them all.
    Sheets count from 1 over the plan, in the order of its sheet materials. A piece that no sheet
    can hold is an error, and there is then no layout; an engine that was asked and failed is a
    note. The sheets for up to ``copies`` copies are counted besides.
    """
    first = variants[0]
    shapes = _envelopes(variants)
    sheets: list[SheetLayout] = []
    findings: list[Finding] = []
    engines: list[str] = []
    for sheet in first.sheets:
        parts = [part for part in first.parts if part.sheet == sheet.name]
        packed = engine.pack(_job(sheet, parts, shapes, effort))
        findings += _too_large(packed, sheet, parts, shapes)
        findings += _failed(packed, sheet, first)
        sheets += _sheets(packed, sheet, parts, len(sheets) + 1)
        engines.append(packed.engine)
    if has_errors(findings):
        return None, tuple(findings)
    made = Layout(
        sheets=tuple(sheets),
        engine=", ".join(dict.fromkeys(engines)),
        computed_from=fingerprint(variants),
        as_computed=placements_digest(sheets),
        seed=effort.seed,
    )
    return _counted(made, first, shapes, effort, copies), tuple(findings)


def counted(layout: Layout, variants: Sequence[SettledPlan], effort: Effort) -> Layout:
    """Return a layout with the bound on its sheets and the sheets that more copies take."""
    return _counted(layout, variants[0], _envelopes(variants), effort, COPIES)


def _counted(
    layout: Layout, first: SettledPlan, shapes: dict[str, Flat], effort: Effort, most: int
) -> Layout:
    bounds: list[tuple[str, int]] = []
    copies: list[CopiesCount] = []
    for sheet in first.sheets:
        parts = [part for part in first.parts if part.sheet == sheet.name]
        if not parts:
            continue
        job = _job(sheet, parts, shapes, effort)
        bounds.append((sheet.name, fewest_sheets(job)))
        copies += _copies(replace(job, blanks=copied(job.blanks, most)), layout, sheet.name)
    return replace(layout, bounds=tuple(bounds), copies=tuple(copies))


def _copies(job: Job, layout: Layout, sheet: str) -> Iterator[CopiesCount]:
    """Yield for each size what copies take of it; the table ends where a piece finds no sheet."""
    stacks = job.bed.stacks
    groups = groups_of(job, OwnPlacer(counting=True), packed_of(layout, job))[1:]
    table = [sheets_by_stack(job, each) for each in takewhile(lambda each: each, groups) if each]
    for sides in dict.fromkeys(stack.size for stack in stacks):
        alike = [number for number, stack in enumerate(stacks) if stack.size == sides]
        counts = tuple(sum(taken[number] for number in alike) for taken in table)
        if any(counts):
            yield CopiesCount(sheet=sheet, size=sides, counts=counts)


def _envelopes(variants: Sequence[SettledPlan]) -> dict[str, Flat]:
    found = {}
    for part in variants[0].parts:
        regions = [other.routed for each in variants for other in each.parts if _same(other, part)]
        found[part.name] = envelope(tuple(dict.fromkeys(regions)))
    return found


def _same(one: SettledPart, other: SettledPart) -> bool:
    return one.name == other.name


def _job(
    sheet: SettledSheet,
    parts: Sequence[SettledPart],
    shapes: dict[str, Flat],
    effort: Effort,
) -> Job:
    blanks = tuple(
        Blank(
            label=piece.label,
            shape=shapes[part.name],
            turns=turns_of(part, sheet),
            copy=piece.copy,
            twin=part.name,
        )
        for part in parts
        for piece in part.pieces
    )
    bed = Bed(stacks=stacks_of(sheet), margin=sheet.margin, gap=sheet.gap)
    return Job(
        bed=bed,
        blanks=blanks,
        moves=effort.moves,
        seconds=effort.seconds,
        seed=effort.seed,
    )


def _too_large(
    packed: Packed, sheet: SettledSheet, parts: Sequence[SettledPart], shapes: dict[str, Flat]
) -> Iterator[Finding]:
    refused = set(packed.too_large)
    room = tuple(side - 2 * sheet.margin for side in sheet.size)
    for part in parts:
        if not any(piece.label in refused for piece in part.pieces):
            continue
        x0, y0, x1, y1 = shapes[part.name].box
        grain = f" with its grain {part.grain}" if sheet.stock.grain and part.grained else ""
        if len(stacks_of(sheet)) > 1 or sheet.clamps:
            message = f"`{part.name}` finds no room on any sheet"
            advice = (
                "Its size, other sizes of sheet, the number of offcuts and clamps were looked at."
            )
            yield error("piece-too-large", message, part.place, advice, subject=part.name)
            continue
        message = f"`{part.name}` is too large for its sheet"
        measured = said(
            "It measures {}{}; inside its margin the sheet `{}` has {}.",
            size((x1 - x0, y1 - y0)),
            grain,
            sheet.name,
            size(room, "room-"),
        )
        yield error("piece-too-large", message, part.place, measured, subject=part.name)


def _failed(packed: Packed, sheet: SettledSheet, plan: SettledPlan) -> Iterator[Finding]:
    for engine, reason in packed.failed:
        message = f"`{engine}` laid nothing out on `{sheet.name}`"
        advice = f"Our own layout stands: {reason}."
        yield note("layout-engine", message, layout_place(plan), advice, subject=sheet.name)


def _sheets(
    packed: Packed, sheet: SettledSheet, parts: Sequence[SettledPart], number: int
) -> Iterator[SheetLayout]:
    owners = {piece.label: part.name for part in parts for piece in part.pieces}
    stacks = stacks_of(sheet)
    for index, stack in enumerate(packed.sheets):
        placements = [
            Placement(
                piece=spot.label,
                part=owners[spot.label],
                x=rounded(spot.x, COORDINATE_DECIMALS),
                y=rounded(spot.y, COORDINATE_DECIMALS),
                turn=spot.turn,
            )
            for spot in packed.spots
            if spot.sheet == index
        ]
        yield SheetLayout(
            number=number + index,
            sheet=sheet.name,
            size=stacks[stack].size,
            placements=tuple(sorted(placements, key=lambda each: each.piece)),
        )
