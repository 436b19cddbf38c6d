"""Brings a proved plan and its layout together into the edition everything is made from."""

from __future__ import annotations

from generator.edition.edition import Edition
from generator.layouts.count import sheets_used
from generator.model.plan import Plan
from generator.model.workshop import Workshop
from generator.publishing.examine import LaidOut
from generator.shop.lists import board_list, cost_list, hardware_list, parts_list, sheet_list
from generator.trials.log import public_for
from generator.writing.photo import sized

_PRINT_WIDTH = 1400  # px: about 250 dpi over the width of a booklet's text


def edition_of(workshop: Workshop, found: LaidOut) -> Edition:
    """Work out a proved plan whole: lists, counts, the pictures made ready to print."""
    settled = found.proof.drawn
    assert settled is not None, "only proved plans are laid out"
    plan = found.proof.plan
    sheets = sheet_list(settled, sheets_used(found.layout))
    hardware, boards = hardware_list(settled), board_list(settled)
    return Edition(
        identity=workshop.identity,
        plan=plan,
        settled=settled,
        variants=found.proof.variants,
        layout=found.layout,
        parts=parts_list(settled),
        hardware=hardware,
        sheets=sheets,
        boards=boards,
        costs=cost_list(sheets, boards, hardware),
        trials=public_for(workshop.trials, plan.name),
        pictures=_pictures(workshop, plan),
    )


def _pictures(workshop: Workshop, plan: Plan) -> dict[str, bytes]:
    wanted = {photo.file for photo in plan.photos}
    wanted |= {step.photo.file for step in plan.steps if step.photo}
    folder = f"plans/{plan.name}/"
    return {
        picture.path.removeprefix(folder): sized(picture.content, _PRINT_WIDTH)
        for picture in workshop.pictures
        if picture.path.startswith(folder) and picture.path.removeprefix(folder) in wanted
    }
