"""Drawings as SVG in real millimetres."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from xml.sax.saxutils import escape, quoteattr

from kerfolio.basis.digits import digits
from kerfolio.basis.figured import Figured, joined, resolved
from kerfolio.basis.style import Numbers, Style, told_as
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.lettering import text_width
from kerfolio.drawing.palette import PALETTE, Palette
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Label, Layer, Stroke
from kerfolio.geometry.arc import Arc, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.writing.circle import circle_of
from kerfolio.writing.glyphs import glyph_path

_FONTS = "'Source Sans Pro','Source Sans 3',sans-serif"
_UNFIT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff\ud800-\udfff]")
"""Characters that XML 1.0 cannot hold."""


@dataclass(frozen=True, slots=True)
class _Look:
    """How the elements of one file are written."""

    left: float
    top: float
    length: Style
    numbers: Numbers
    palette: Palette
    classes: str
    outlined: bool
    stretched: bool

    def number(self, value: float) -> str:
        return self.numbers(value, self.length)

    def point(self, x: float, y: float) -> str:
        """The one place where the y axis is turned downwards."""
        return f"{self.number(x - self.left)} {self.number(self.top - y)}"

    def text(self, text: str) -> str:
        return escape(resolved(text, self.numbers, _fit))

    def quoted(self, text: str) -> str:
        return quoteattr(resolved(text, self.numbers, _fit))

    def paint(self, stroke: Ink | None, fill: Ink | None) -> str:
        named = [f"{self.classes}line-{stroke}"] if stroke else []
        named += [f"{self.classes}fill-{fill}"] if fill else []
        marks = f' class="{" ".join(named)}"' if self.classes and named else ""
        inside = f' fill="{self.palette[fill]}"' if fill else ' fill="none"'
        line = f' stroke="{self.palette[stroke]}"' if stroke else ""
        return f"{marks}{inside}{line}"


def svg_bytes(
    drawing: Drawing,
    palette: Palette = PALETTE,
    decimals: int = 3,
    *,
    real_size: bool = True,
    unit: str = "mm",
    own_origin: bool = False,
    class_prefix: str = "",
    id_prefix: str = "",
    outlined: bool = False,
    stretched: bool = True,
    numbers: Numbers = told_as,
) -> bytes:
    """Return the drawing as an SVG document; one user unit is one ``unit`` of the drawing.

    With ``real_size`` the width and height say so in that unit (1 in = 96 user units of CSS, so a
    viewer shows it at full size); without, the page decides. With ``own_origin`` the drawing's 0,0
    is the file's too, else that is the upper left corner of its box. A layer is a group with its
    name as id (after ``id_prefix``, for several drawings on one page). ``class_prefix`` adds the
    classes ``PREFIXline-INK`` and ``PREFIXfill-INK``, by which a page's style sheet overrides the
    colours.
    ``outlined`` writes lettering as outlines, the same on every machine, instead of as text. Text
    states its length unless it is not to be ``stretched``: where the typeface is sure to be there.
    ``numbers`` tells every number that is written.
    The thickness that a cut file is for stands at its root as ``data-thickness``, mm.
    """
    left, top = (0.0, 0.0) if own_origin else (drawing.box[0], drawing.box[3])
    length = Style(decimals=decimals)
    look = _Look(left, top, length, numbers, palette, class_prefix, outlined, stretched)
    body = "".join(_groups(drawing, look, id_prefix))
    opening = _opening(drawing, look, unit if real_size else "")
    return f"{opening}{body}</svg>\n".encode()


def inline_svg(drawing: Drawing, palette: Palette = PALETTE, id_prefix: str = "") -> str:
    """Return the drawing as SVG for a page, whose style sheet gives it size and colours.

    It is told to a hundredth of a millimetre: far below a pixel on any page.
    """
    return svg_bytes(
        drawing, palette, 2, real_size=False, class_prefix="k-", id_prefix=id_prefix
    ).decode()


def _opening(drawing: Drawing, look: _Look, unit: str) -> str:
    width, height = look.number(drawing.width), look.number(drawing.height)
    size = f' width="{width}{unit}" height="{height}{unit}"' if unit else ""
    corner = look.point(drawing.box[0], drawing.box[3])
    data = _origin(drawing, look)
    if drawing.thickness is not None:
        data += f' data-thickness="{look.numbers(drawing.thickness, Style())}"'
    name = f' role="img" aria-label={look.quoted(drawing.title)}' if drawing.title else ""
    title = f"<title>{look.text(drawing.title)}</title>\n" if drawing.title else ""
    about = f"<desc>{look.text(drawing.description)}</desc>\n" if drawing.description else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg"{size} viewBox="{corner} {width} {height}"'
        f'{data}{name} font-family="{_FONTS}" stroke-linejoin="round" stroke-linecap="round">\n'
        f"{title}{about}"
    )


def _origin(drawing: Drawing, look: _Look) -> str:
    corner = drawing.box[:2]
    if all(digits(each, look.length.decimals) == "0" for each in corner):
        return ""
    return f' data-origin="{" ".join(map(look.number, corner))}"'


def _groups(drawing: Drawing, look: _Look, id_prefix: str) -> Iterator[str]:
    known = {layer.name for layer in drawing.layers}
    loose = [item for item in drawing.items if item.layer not in known]
    yield from (_element(each, look) for item in loose for each in expanded(item))
    for layer in drawing.layers:
        items = [item for item in drawing.items if item.layer == layer.name]
        name = look.quoted(joined("", (id_prefix, layer.name)))
        yield f"<g id={name}>\n{_purpose(layer, look)}"
        yield from (_element(each, look) for item in items for each in expanded(item))
        yield "</g>\n"


def _purpose(layer: Layer, look: _Look) -> str:
    return f"<desc>{look.text(layer.purpose)}</desc>\n" if layer.purpose else ""


def _element(item: Stroke | Label, look: _Look) -> str:
    if isinstance(item, Label):
        return _outlines(item, look) if look.outlined else _lettering(item, look)
    return _stroke(item, look)


def _stroke(stroke: Stroke, look: _Look) -> str:
    line = stroke.ink if stroke.width is not None else None
    paint = look.paint(line, stroke.fill)
    if stroke.width is not None:
        paint += f' stroke-width="{look.number(stroke.width)}"'
        if stroke.dash:
            paint += f' stroke-dasharray="{" ".join(look.number(dash) for dash in stroke.dash)}"'
    round_one = None if stroke.holes else circle_of(stroke.contour)
    if round_one:
        (x, y), radius = round_one
        across, down = look.point(x, y).split()
        return f'<circle cx="{across}" cy="{down}" r="{look.number(radius)}"{paint}/>\n'
    rule = ' fill-rule="evenodd"' if stroke.holes and stroke.fill else ""
    path = " ".join(_path(each, look) for each in (stroke.contour, *stroke.holes))
    return f'<path d="{path}"{rule}{paint}/>\n'


def _path(contour: Contour, look: _Look) -> str:
    first = contour.vertices[0]
    words = [f"M{look.point(first[0], first[1])}"]
    lines = list(edges(contour))
    for edge in lines:
        arc = edge.arc
        if arc:
            words += _arcs(arc, edge.end, look)
        elif not (contour.closed and edge is lines[-1]):
            words.append(f"L{look.point(*edge.end)}")
    return "".join(words) + ("Z" if contour.closed else "")


def _arcs(arc: Arc, end: Point, look: _Look) -> Iterator[str]:
    """Write an arc in parts of at most a quarter turn.

    A half turn written with rounded ends and radius would leave its centre uncertain by the
    square root of the rounding; a quarter turn keeps it within the rounding.
    """
    parts = arc.quarters
    radius, turn = look.number(arc.radius), "0" if arc.sweep > 0 else "1"
    for part in range(1, parts + 1):
        point = end if part == parts else arc.point(arc.start + arc.sweep * part / parts)
        yield f"A{radius} {radius} 0 0 {turn} {look.point(*point)}"


def _lettering(label: Label, look: _Look) -> str:
    """Write text; its length is stated so that another font still keeps to its place.

    Not where figures in it may change: the length would have to follow them.
    """
    across, down = look.point(*label.at).split()
    length = ""
    if look.stretched and not isinstance(label.text, Figured):
        width = look.number(text_width(label.text, label.height, strong=label.strong))
        length = f' textLength="{width}" lengthAdjust="spacingAndGlyphs"'
    anchor = "" if label.anchor is Anchor.START else f' text-anchor="{label.anchor}"'
    weight = ' font-weight="600"' if label.strong else ""
    turned = f' transform="rotate({look.number(-label.angle)} {across} {down})"'
    return (
        f'<text x="{across}" y="{down}" font-size="{look.number(label.height)}"{anchor}{weight}'
        f"{look.paint(None, label.ink)}{length}"
        f"{turned if label.angle else ''}>{look.text(label.text)}</text>\n"
    )


def _outlines(label: Label, look: _Look) -> str:
    path = glyph_path(label, look.point)
    return f'<path d="{path}"{look.paint(None, label.ink)}/>\n' if path else ""


def _fit(text: str) -> str:
    return _UNFIT.sub("", text)
