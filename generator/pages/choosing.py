"""Which files a reader takes: the coupon's slots and the folders by thickness."""

from __future__ import annotations

from dataclasses import dataclass

from generator.edition.edition import Edition
from generator.pages.words import thickness_text


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotRow:
    """A slot of a coupon: its number, the sheet thickness it suits, the folder to take.

    ``instead`` says what to do where no folder is for that thickness.
    """

    number: int
    thickness: str
    folder: str
    instead: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CouponTable:
    """The slots of the coupon of one sheet; ``own_folder`` when its slot alone names the folder."""

    sheet: str
    title: str
    rows: tuple[SlotRow, ...]
    own_folder: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FolderRow:
    """A folder of cut files and the thickness of every sheet it is for."""

    folder: str
    thicknesses: tuple[str, ...]
    drawn: bool


def coupon_tables(edition: Edition) -> tuple[CouponTable, ...]:
    """Return the table of every coupon; a slot between two folders has no folder of its own."""
    alone = len(edition.settled.sheets) == 1
    titles = {sheet.name: sheet.stock.title for sheet in edition.settled.sheets}
    first = edition.identity.units_first
    return tuple(
        CouponTable(
            sheet=coupon.sheet,
            title=titles.get(coupon.sheet, coupon.sheet),
            own_folder=alone,
            rows=tuple(
                SlotRow(
                    number=slot.number,
                    thickness=thickness_text(slot.thickness, first),
                    folder=_folder(edition, coupon.sheet, slot.thickness) if alone else "",
                    instead=_instead(edition, coupon.sheet, slot.thickness),
                )
                for slot in coupon.slots
            ),
        )
        for coupon in edition.settled.coupons
    )


def folder_rows(edition: Edition) -> tuple[FolderRow, ...]:
    """Return every folder of cut files, thinnest first; ``drawn`` marks that of the pictures."""
    first = edition.identity.units_first
    names = [sheet.name for sheet in edition.settled.sheets]
    return tuple(
        FolderRow(
            folder=each.variant.label,
            thicknesses=tuple(
                thickness_text(dict(each.variant.thickness)[name], first) for name in names
            ),
            drawn=each.variant.label == edition.settled.variant.label,
        )
        for each in edition.variants
    )


def sheet_titles(edition: Edition) -> tuple[str, ...]:
    """Return the titles of the plan's sheets, in the order of ``FolderRow.thicknesses``."""
    return tuple(sheet.stock.title for sheet in edition.settled.sheets)


def _instead(edition: Edition, sheet: str, thickness: float) -> str:
    known = [dict(each.variant.thickness).get(sheet, 0.0) for each in edition.variants]
    if thickness < min(known):
        return "none: thinner than the plan is published for"
    if thickness > max(known):
        return "none: thicker than the plan is published for"
    return "none of its own: the next thicker one"


def _folder(edition: Edition, sheet: str, thickness: float) -> str:
    for each in edition.variants:
        if abs(dict(each.variant.thickness).get(sheet, 0.0) - thickness) < 0.005:
            return each.variant.label
    return ""
