"""Drawings as DXF (release R2010), in millimetres or inches."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from typing import Any

from kerfolio.basis.digits import LENGTH_DECIMALS, RATIO_DECIMALS, digits, plain, rounded
from kerfolio.basis.unconfigured import unconfigured
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.lettering import CAPITAL
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.writing.circle import circle_of
from kerfolio.writing.palette import PALETTE, rgb

with unconfigured():
    from ezdxf import filemanagement
    from ezdxf.enums import TextEntityAlignment
    from ezdxf.lldxf.tagwriter import TagWriter
    from ezdxf.lldxf.types import DXFTag, DXFVertex

THICKNESS = "thickness_mm"
"""The custom property (``$CUSTOMPROPERTYTAG``) that holds the thickness a cut file is for."""

_UNITS = {"mm": (4, 1), "in": (1, 0)}
"""``$INSUNITS`` and ``$MEASUREMENT`` of a unit (DXF reference: 4 and 1 are mm and metric, 1 and 0
inches and English)."""
_GREY = 8
"""Index colour for programs that know no true colours; the true colour says what is meant."""
_DAY = 2_451_545.0
"""Every file says it was made on the first day of 2000: a Julian day, counted from midnight."""
_IDENTIFIER = "{00000000-0000-0000-0000-000000000000}"
_MARK = "0.0 @ 2000-01-01T00:00:00.000000+00:00"
_ALIGNMENT = {
    Anchor.START: TextEntityAlignment.LEFT,
    Anchor.MIDDLE: TextEntityAlignment.CENTER,
    Anchor.END: TextEntityAlignment.RIGHT,
}


def dxf_bytes(drawing: Drawing, unit: str = "mm", decimals: int = LENGTH_DECIMALS) -> bytes:
    """Return the drawing as DXF R2010, which says that its lengths are mm or, stated so, in.

    Contours are LWPOLYLINE with their arcs as bulges, full circles are CIRCLE, lettering is TEXT;
    fills are left out. Every layer of the drawing becomes a layer. The thickness that a cut file is
    for is a custom property of the drawing, in mm. Lengths have at most ``decimals``, angles 4,
    bulges 8. Raises ValueError when
    lettering or a dimension lies on a layer that is cut.
    """
    _refuse_lettering_on_cuts(drawing)
    document = filemanagement.new("R2010")
    _header(document, drawing, _UNITS[unit], decimals)
    for layer in drawing.layers:
        _add_layer(document, layer, _ink_of(drawing, layer))
    space = document.modelspace()
    for item in _in_layer_order(drawing):
        _add(space, item, decimals)
    return _written(document).encode("utf-8")


def _refuse_lettering_on_cuts(drawing: Drawing) -> None:
    cut = {layer.name for layer in drawing.layers if layer.cuts}
    for item in drawing.items:
        if item.layer in cut and not isinstance(item, Stroke):
            raise ValueError(f"lettering on the cut layer {item.layer}")


def _written(document: Any) -> str:
    """Return the text of a document, without the time stamps and random identifiers of its making.

    These are the steps of the library's own ``write``, which stamps the document in between.
    """
    document.commit_pending_changes()
    document.update_all()
    _sort_classes(document)
    _unstamp(document)
    page = io.StringIO()
    document.export_sections(_Tags(page, dxfversion=document.dxfversion))
    return page.getvalue()


class _Tags(TagWriter):
    """Writes every number in plain digits; the library's own way has powers of ten."""

    def write_tag(self, tag: DXFTag) -> None:
        """Write one tag; a vertex is one for each axis."""
        if isinstance(tag, DXFVertex):
            for code, value in tag.dxftags():
                self.write_tag2(code, value)
        elif isinstance(tag.value, float):
            self.write_tag2(tag.code, tag.value)
        else:
            super().write_tag(tag)

    def write_tag2(self, code: int, value: Any) -> None:
        """Write a group code with its value."""
        super().write_tag2(code, plain(value) if isinstance(value, float) else value)

    def write_vertex(self, code: int, vertex: Iterable[float]) -> None:
        """Write a point, an axis after the other."""
        for index, value in enumerate(vertex):
            self.write_tag2(code + index * 10, value)


def _sort_classes(document: Any) -> None:
    """The library keeps the classes it requires in a set, whose order changes with the process."""
    section = document.classes
    in_order = sorted(section.classes.items())
    section.classes.clear()
    section.classes.update(in_order)


def _unstamp(document: Any) -> None:
    for name in ("$TDCREATE", "$TDUCREATE", "$TDUPDATE", "$TDUUPDATE"):
        document.header[name] = _DAY
    for name in ("$FINGERPRINTGUID", "$VERSIONGUID"):
        document.header[name] = _IDENTIFIER
    notes = document.ezdxf_metadata()
    for name in ("CREATED_BY_EZDXF", "WRITTEN_BY_EZDXF"):
        notes[name] = _MARK


def _header(document: Any, drawing: Drawing, unit: tuple[int, int], decimals: int) -> None:
    document.header["$INSUNITS"], document.header["$MEASUREMENT"] = unit
    if drawing.thickness is not None:
        document.header.custom_vars.append(THICKNESS, digits(drawing.thickness))
    left, bottom, right, top = (rounded(each, decimals) for each in drawing.box)
    document.header["$EXTMIN"] = (left, bottom, 0)
    document.header["$EXTMAX"] = (right, top, 0)
    document.modelspace().dxf.extmin = (left, bottom, 0)
    document.modelspace().dxf.extmax = (right, top, 0)


def _ink_of(drawing: Drawing, layer: Layer) -> Ink:
    inks = (item.ink for item in drawing.items if item.layer == layer.name)
    return next(inks, Ink.INK)


def _add_layer(document: Any, layer: Layer, ink: Ink) -> None:
    entry = document.layers.add(layer.name, color=_GREY)
    entry.rgb = rgb(PALETTE[ink])
    entry.description = layer.purpose


def _in_layer_order(drawing: Drawing) -> Iterator[Stroke | Label]:
    ranks = {layer.name: rank for rank, layer in enumerate(drawing.layers)}
    items: list[Item] = sorted(drawing.items, key=lambda item: ranks.get(item.layer, -1))
    for item in items:
        yield from expanded(item)


def _add(space: Any, item: Stroke | Label, decimals: int) -> None:
    attributes = {"layer": item.layer or "0"}
    if isinstance(item, Label):
        _add_text(space, item, attributes, decimals)
    elif item.width is not None:
        for contour in (item.contour, *item.holes):
            _add_contour(space, contour, attributes, decimals)


def _add_text(space: Any, label: Label, attributes: dict[str, str], decimals: int) -> None:
    """DXF counts a text's height by its capitals."""
    height, angle = rounded(label.height * CAPITAL, decimals), rounded(label.angle)
    text = space.add_text(label.text, height=height, rotation=angle, dxfattribs=attributes)
    x, y = (rounded(each, decimals) for each in label.at)
    text.set_placement((x, y), align=_ALIGNMENT[label.anchor])


def _add_contour(space: Any, contour: Contour, attributes: dict[str, str], decimals: int) -> None:
    round_one = circle_of(contour)
    if round_one:
        (x, y), radius = round_one
        middle = rounded(x, decimals), rounded(y, decimals)
        space.add_circle(middle, rounded(radius, decimals), dxfattribs=attributes)
        return
    placed = [
        (rounded(x, decimals), rounded(y, decimals), rounded(b, RATIO_DECIMALS))
        for x, y, b in contour.vertices
    ]
    space.add_lwpolyline(placed, format="xyb", close=contour.closed, dxfattribs=attributes)
