"""Which files a reader takes: the coupon's slots and the folders by thickness."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.lengths import size_text
from kerfolio.basis.thickness import thickness_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import choice_words
from kerfolio.edition.measuring import arms_words
from kerfolio.settling.coupon import size_of
from kerfolio.settling.settled import CouponSlot


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotRow:
    """A step of a coupon's slots: its number, its width as drawn, the sheet that suits and what to
    take for it.

    ``take`` is a folder, or of a plan of several sheets what to look up in the table of folders;
    empty where there is none. ``note`` says so, that files are made for it, or that those of the
    folder are for the next thicker sheet.
    """

    number: int
    width: str
    thickness: str
    take: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CouponTable:
    """The steps of the coupon of one sheet; ``by_folder`` when a step alone names the folder.

    ``arms`` tells how wide the steps of its arms are, ``size`` what scrap it takes.
    """

    sheet: str
    title: str
    size: str
    arms: str
    rows: tuple[SlotRow, ...]
    by_folder: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FolderRow:
    """A folder of cut files and the thickness of every sheet it is for."""

    folder: str
    thicknesses: tuple[str, ...]
    drawn: bool


def coupon_tables(edition: Edition) -> tuple[CouponTable, ...]:
    """Return the table of every coupon of the plan."""
    titles = {sheet.name: sheet.stock.title for sheet in edition.settled.sheets}
    return tuple(
        CouponTable(
            sheet=coupon.sheet,
            title=titles.get(coupon.sheet, coupon.sheet),
            size=size_text(size_of(coupon), edition.first),
            arms=arms_words(coupon, edition.first),
            by_folder=len(edition.settled.sheets) == 1,
            rows=tuple(_slot_row(edition, coupon.sheet, slot) for slot in coupon.slots),
        )
        for coupon in edition.settled.coupons
    )


def folder_rows(edition: Edition) -> tuple[FolderRow, ...]:
    """Return every folder of cut files, thinnest first; ``drawn`` marks that of the pictures."""
    first = edition.first
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


def _slot_row(edition: Edition, sheet: str, slot: CouponSlot) -> SlotRow:
    take, note = choice_words(edition, sheet, slot.thickness)
    thickness = thickness_text(slot.thickness, edition.first)
    width = thickness_text(slot.width, edition.first)
    return SlotRow(number=slot.number, width=width, thickness=thickness, take=take, note=note)
