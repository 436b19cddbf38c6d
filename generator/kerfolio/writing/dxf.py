"""Drawings as DXF (release R2010), in millimetres or inches."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from typing import Any

from kerfolio.basis.colour import rgb
from kerfolio.basis.digits import LENGTH_DECIMALS, RATIO_DECIMALS, plain, steps
from kerfolio.basis.figured import resolved
from kerfolio.basis.style import Numbers, Rule, Style, told_as
from kerfolio.basis.unconfigured import unconfigured
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.lettering import CAPITAL
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.writing.circle import circle_of

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


_LENGTHS = range(10, 41)
"""Group codes of points, radii and heights in what is drawn."""

_ANGLE, _BULGE = 50, 42
_DRAWN = ("CIRCLE", "LWPOLYLINE", "TEXT")
_BOX = frozenset((14, 24, 34, 15, 25, 35))
"""Group codes of the corners of what is drawn, in the space it is drawn in."""

_CORNERS = ("$EXTMIN", "$EXTMAX")
"""Variables of the header that say the same."""

_RATIO = Style(decimals=RATIO_DECIMALS)
_NOWHERE = 1e20
"""What empty spaces have for corners."""


def dxf_bytes(
    drawing: Drawing,
    unit: str = "mm",
    decimals: int = LENGTH_DECIMALS,
    *,
    numbers: Numbers = told_as,
) -> bytes:
    """Return the drawing as DXF R2010, which says that its lengths are mm or, stated so, in.

    Contours are LWPOLYLINE with their arcs as bulges, full circles are CIRCLE, lettering is TEXT;
    fills are left out. Every layer of the drawing becomes a layer. The thickness that a cut file is
    for is a custom property of the drawing, in mm. Lengths have at most ``decimals``, angles 4,
    bulges 8; ``numbers`` tells every one of them. Raises ValueError when lettering or a dimension
    lies on a layer that is cut.
    """
    _refuse_lettering_on_cuts(drawing)
    document = filemanagement.new("R2010")
    _header(document, drawing, _UNITS[unit], numbers)
    names = {each.name: resolved(each.name, numbers) for each in drawing.layers}
    for layer in drawing.layers:
        entry = _add_layer(document, names[layer.name], _ink_of(drawing, layer))
        entry.description = resolved(layer.purpose, numbers)
    space = document.modelspace()
    for item in _in_layer_order(drawing):
        _add(space, item, {"layer": names.get(item.layer, item.layer or "0")}, numbers)
    return _written(document, numbers, decimals).encode("utf-8")


def _refuse_lettering_on_cuts(drawing: Drawing) -> None:
    cut = {layer.name for layer in drawing.layers if layer.cuts}
    for item in drawing.items:
        if item.layer in cut and not isinstance(item, Stroke):
            raise ValueError(f"lettering on the cut layer {item.layer}")


def _written(document: Any, numbers: Numbers, decimals: int) -> str:
    """Return the text of a document, without the time stamps and random identifiers of its making.

    These are the steps of the library's own ``write``, which stamps the document in between.
    """
    document.commit_pending_changes()
    document.update_all()
    _sort_classes(document)
    _unstamp(document)
    page = io.StringIO()
    document.export_sections(_Tags(page, document.dxfversion, numbers, decimals))
    return page.getvalue()


class _Tags(TagWriter):
    """Writes every number in plain digits; the library's own way has powers of ten.

    What is drawn is rounded here, by what its group code says it is.
    """

    def __init__(self, page: io.StringIO, version: str, numbers: Numbers, decimals: int) -> None:
        super().__init__(page, version)
        self._numbers = numbers
        self._length = Style(decimals=decimals)
        self._corner = Style(rule=Rule.POINTED, decimals=decimals)
        self._kind = self._variable = ""

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
        if code == 0:
            self._kind = value
        elif code == 9:
            self._variable = value
        super().write_tag2(code, self._told(code, value) if isinstance(value, float) else value)

    def _told(self, code: int, value: float) -> str:
        style = self._style(code, value)
        return plain(value) if style is None else self._numbers(value, style)

    def _style(self, code: int, value: float) -> Style | None:
        if self._kind == "LAYOUT":
            return self._length if code in _BOX and abs(value) < _NOWHERE else None
        if self._kind not in _DRAWN:
            return None
        if code == _BULGE:
            return _RATIO
        return self._length if code in _LENGTHS else Style() if code == _ANGLE else None

    def write_str(self, s: str) -> None:
        """Write tags that are text already, as the header's, in which corners are numbers."""
        if self._variable in _CORNERS:
            tags = iter(s.splitlines())
            for code, value in zip(tags, tags, strict=True):
                super().write_tag2(int(code), self._numbers(float(value), self._corner))
        else:
            super().write_str(s)

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


def _header(document: Any, drawing: Drawing, unit: tuple[int, int], numbers: Numbers) -> None:
    document.header["$INSUNITS"], document.header["$MEASUREMENT"] = unit
    if drawing.thickness is not None:
        document.header.custom_vars.append(THICKNESS, numbers(drawing.thickness, Style()))
    left, bottom, right, top = drawing.box
    document.header["$EXTMIN"] = (left, bottom, 0)
    document.header["$EXTMAX"] = (right, top, 0)
    document.modelspace().dxf.extmin = (left, bottom, 0)
    document.modelspace().dxf.extmax = (right, top, 0)


def _ink_of(drawing: Drawing, layer: Layer) -> Ink:
    inks = (item.ink for item in drawing.items if item.layer == layer.name)
    return next(inks, Ink.ASIDE)


def _add_layer(document: Any, name: str, ink: Ink) -> Any:
    entry = document.layers.add(name, color=_GREY)
    entry.rgb = rgb(PALETTE[ink])
    return entry


def _in_layer_order(drawing: Drawing) -> Iterator[Stroke | Label]:
    ranks = {layer.name: rank for rank, layer in enumerate(drawing.layers)}
    items: list[Item] = sorted(drawing.items, key=lambda item: ranks.get(item.layer, -1))
    for item in items:
        yield from expanded(item)


def _add(space: Any, item: Stroke | Label, attributes: dict[str, str], numbers: Numbers) -> None:
    """Add what an item is made of, its numbers exact: they are rounded when they are written."""
    if isinstance(item, Label):
        _add_text(space, item, attributes, numbers)
    elif item.width is not None:
        for contour in (item.contour, *item.holes):
            _add_contour(space, contour, attributes)


def _add_text(space: Any, label: Label, attributes: dict[str, str], numbers: Numbers) -> None:
    """DXF counts a text's height by its capitals."""
    height, angle = label.height * CAPITAL, label.angle if steps(label.angle, 4) else 0.0
    words = resolved(label.text, numbers)
    text = space.add_text(words, height=height, rotation=angle, dxfattribs=attributes)
    text.set_placement(label.at, align=_ALIGNMENT[label.anchor])


def _add_contour(space: Any, contour: Contour, attributes: dict[str, str]) -> None:
    round_one = circle_of(contour)
    if round_one:
        middle, radius = round_one
        space.add_circle(middle, radius, dxfattribs=attributes)
        return
    placed = [(x, y, b if steps(b, RATIO_DECIMALS) else 0.0) for x, y, b in contour.vertices]
    space.add_lwpolyline(placed, format="xyb", close=contour.closed, dxfattribs=attributes)
