"""A drawing measured in inches: for programs of the trade that know no other unit."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.lengths import INCH
from kerfolio.drawing.cut_note import said_in_inches
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.geometry.transform import scaled

_SCALE = 1 / INCH


def in_inches(drawing: Drawing) -> Drawing:
    """Return a drawing with every length in inches but the thickness, which stays data in mm."""
    left, bottom, right, top = (each * _SCALE for each in drawing.box)
    items = (part for item in drawing.items for part in expanded(item))
    return replace(
        drawing, box=(left, bottom, right, top), items=tuple(_scaled(each) for each in items)
    )


def _scaled(item: Stroke | Label) -> Stroke | Label:
    if isinstance(item, Label):
        x, y = item.at
        text = said_in_inches(item.text)
        return replace(item, text=text, at=(x * _SCALE, y * _SCALE), height=item.height * _SCALE)
    return replace(
        item,
        contour=scaled(item.contour, _SCALE),
        holes=tuple(scaled(each, _SCALE) for each in item.holes),
        width=None if item.width is None else item.width * _SCALE,
        dash=tuple(each * _SCALE for each in item.dash),
    )
