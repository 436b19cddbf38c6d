"""The pictures of setup sheets that pages show."""

from __future__ import annotations

from kerfolio.drawing.art_view import art_place_view
from kerfolio.drawing.setup_view import setup_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_coupon import setup_coupons
from kerfolio.layouts.clamp_spots import clamp_spots
from kerfolio.settling.settled import Coupon
from kerfolio.shop.art import Art, arts_of

_SHEET_ROOM, _ART_ROOM = (178.0, 120.0), (150.0, 95.0)


def setup_pictures(edition: Edition) -> dict[str, Drawing]:
    """Return ``setup-N`` for sheet N, and a picture for every coupon and every engraving."""
    settled, reader = edition.settled, edition.reader
    found = {
        f"setup-{sheet.number}": setup_view(
            settled, sheet, clamp_spots(settled, sheet), _SHEET_ROOM, reader
        )
        for sheet in edition.layout.sheets
    }
    found |= {
        coupon_picture(each.coupon): setup_view(
            each.settled, each.layout, (), _SHEET_ROOM, reader, each.zero
        )
        for each in setup_coupons(edition)
    }
    arts = arts_of(settled)
    return found | {
        art_picture(each): art_place_view(settled, each, _ART_ROOM, reader) for each in arts
    }


def art_picture(art: Art) -> str:
    """Return the name of the picture of where an engraving lies: ``art-PART.NAME``."""
    return f"art-{art.file}"


def coupon_picture(coupon: Coupon) -> str:
    """Return the name of the picture of a coupon on the machine: ``setup-coupon-SHEET``."""
    return f"setup-coupon-{coupon.sheet}"
