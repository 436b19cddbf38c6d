"""Ways of spoiling a written file, each for every kind of file; used by test and table alike."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

import pikepdf

from kerfolio.agreement.cut_files import cut_files
from kerfolio.agreement.templates import templates
from kerfolio.agreement.written import Written
from kerfolio.basis.place import Place
from kerfolio.drawing.cut_sheet import cut_art, cut_coupon, cut_part, cut_sheet
from kerfolio.drawing.template_shape import SHAPE
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import (
    art_name,
    coupon_name,
    cut_part_name,
    cut_sheet_name,
    template_name,
)
from kerfolio.geometry.contour import Contour
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.model.stock import PaperStock
from kerfolio.paper.seams import tiled_on
from kerfolio.paper.template import template_pdf
from kerfolio.publishing.cut_files import art_files, coupon_files, part_files, sheet_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.settling.sawn_joint import with_test_joints
from kerfolio.shop.art import arts_of
from kerfolio.writing.circle import circle_of
from tests.drawing.templates import template_of
from tests.drawing.templates import templates_of as drawn_templates
from tests.plans import RACK, proved, small_layout, workshop

BOX = """\
plan: Inch box
version: 1.0.0
units: in
summary: Fingers, a pocket, an oblique slot and an engraving, in inches.
sheets:
  ply: {stock: plywood-1-2, size: 96 x 48, published-for: 31/64 in, fit: 0.004}
parts:
  front:
    sheet: ply
    outline: {polygon: [[0, 0], [12, 0], [12, 5, {round: 1}], [0, 5]]}
    features:
      corner: {fingers: {edge: left, count: 5, takes: ply, first: gap}}
      slope: {slot: {at: [6, 3], length: 3, angle: 33, takes: ply}}
      mark: {engrave: {text: FRONT, at: [9, 1], height: 0.5, depth: 0.02}}
  end:
    sheet: ply
    outline: {rectangle: [6, 5], round: 1/4}
    features:
      bed: {pocket: {at: [3, 2], rectangle: [2, 1], depth: 1/8}}
      pin: {hole: {at: [5, 4], diameter: 1/4}}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""


def box_layout() -> Layout:
    placements = (
        Placement(piece="front", part="front", x=20.0, y=20.0, turn=0.0),
        Placement(piece="end", part="end", x=600.0, y=20.0, turn=90.0),
    )
    sheet = SheetLayout(number=1, sheet="ply", size=(2438.4, 1219.2), placements=placements)
    return Layout(sheets=(sheet,), engine="by hand", computed_from="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """A plan to spoil: its text, its layout, and what an older release had otherwise."""

    text: str
    layout: Callable[[], Layout]
    older: tuple[str, str]


LETTERED = RACK.replace("text: I,", "text: IV,")  # lines enough to swap two
PROBES = {
    "rack": Probe(text=LETTERED, layout=small_layout, older=("at: [100, 60]", "at: [100, 58]")),
    "inches": Probe(text=BOX, layout=box_layout, older=("at: [6, 3]", "at: [6, 2.875]")),
}


@cache
def edition(text: str, layout: Callable[[], Layout]) -> Edition:
    """Return a plan worked out at the thickness it is drawn for alone."""
    found = LaidOut(proof=proved(text), layout=layout(), fresh="")
    made = edition_of(workshop(text), found)
    return replace(made, variants=(made.settled,), corners=(made.settled,))


@cache
def files(text: str, layout: Callable[[], Layout]) -> Mapping[str, bytes]:
    """Return its cut files and templates as they are written."""
    made = edition(text, layout)
    settled, formats, reader = made.settled, made.formats, made.reader
    found = dict(sheet_files(settled, made.layout, formats, reader))
    found |= dict(part_files(settled, formats, reader))
    found |= dict(coupon_files(settled, formats, reader))
    found |= dict(art_files(settled, formats, reader))
    for name in papers(made):
        found[template_name(settled.variant.label, name)] = templates_of(made, name)
    return found


def templates_of(made: Edition, paper: str, drawing: Drawing | None = None) -> bytes:
    """Return the templates of all parts, the first of them as drawn here."""
    settled = with_test_joints(made.settled)
    drawings = drawn_templates(settled, made.reader.unit)
    stock = papers(made)[paper]
    on = stock and tiled_on((drawings,), stock)
    if drawing is not None:
        drawings[made.settled.parts[0].name] = drawing
    return template_pdf(settled, drawings, on, made.identity)


def papers(made: Edition) -> dict[str, PaperStock | None]:
    return {"roll": None, **{name: made.settled.stock.paper(name) for name in ("a4", "letter")}}


def told(made: Edition, content: Mapping[str, bytes]) -> list[str]:
    """Return what the check says of these files."""
    written = Written(edition=made, files=content, facts={}, place=Place("plan.yaml"))
    found = (*cut_files(written), *templates(written))
    return [each.message for each in found]


Change = Callable[[Drawing], Drawing]


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of file: its name without ending, its drawing, and another to stand in its place."""

    name: Callable[[str], str]
    drawing: Drawing
    other: Drawing
    at_zero: bool = False


def kinds(made: Edition) -> Iterator[tuple[str, Kind]]:
    """Yield every kind of file of a plan, by what it is called."""
    settled, (sheet,) = made.settled, made.layout.sheets
    fit, (part, other, *_) = settled.variant.label, settled.parts
    (coupon,), (art,) = settled.coupons, arts_of(settled)
    first, second = sheet.placements[:2]
    swapped = (
        replace(first, x=second.x, y=second.y, turn=second.turn),
        replace(second, x=first.x, y=first.y, turn=first.turn),
        *sheet.placements[2:],
    )
    turned = replace(coupon, plate=coupon.tab, tab=coupon.plate)
    elsewhere = replace(art, lines=tuple(reversed_lines(art.lines)))
    yield (
        "sheet",
        Kind(
            lambda ending: cut_sheet_name(fit, 1, ending),
            cut_sheet(settled, sheet, reader=made.reader),
            cut_sheet(settled, replace(sheet, placements=swapped), reader=made.reader),
        ),
    )
    yield (
        "part",
        Kind(
            lambda ending: cut_part_name(fit, part.name, ending),
            cut_part(settled, part, reader=made.reader),
            cut_part(settled, other, reader=made.reader),
        ),
    )
    yield (
        "coupon",
        Kind(
            lambda ending: coupon_name("ply", ending),
            cut_coupon(settled, coupon, reader=made.reader),
            cut_coupon(settled, turned, reader=made.reader),
        ),
    )
    yield (
        "engraving",
        Kind(
            lambda ending: art_name(art.file, ending),
            cut_art(settled, art, reader=made.reader),
            cut_art(settled, elsewhere, reader=made.reader),
            at_zero=True,
        ),
    )
    unit = made.reader.unit
    yield (
        "template",
        Kind(
            lambda paper: template_name(fit, paper),
            template_of(settled, part, unit),
            template_of(settled, other, unit),
        ),
    )


def reversed_lines(lines: tuple[Contour, ...]) -> Iterator[Contour]:
    """Swap the first and the last line of an engraving by their places."""
    x, y, _ = lines[0].vertices[0]
    u, v, _ = lines[-1].vertices[0]
    yield moved(lines[0], u - x, v - y)
    yield from lines[1:-1]
    yield moved(lines[-1], x - u, y - v)


def mapped(contour: Contour, change: Callable[[float, float], tuple[float, float]]) -> Contour:
    return Contour(tuple((*change(x, y), b) for x, y, b in contour.vertices), contour.closed)


def moved(contour: Contour, dx: float, dy: float) -> Contour:
    return mapped(contour, lambda x, y: (x + dx, y + dy))


def every(change: Callable[[Contour], Contour]) -> Change:
    """Change every line of a drawing."""

    def spoil(drawing: Drawing) -> Drawing:
        items = (
            replace(each, contour=change(each.contour), holes=tuple(map(change, each.holes)))
            if isinstance(each, Stroke)
            else each
            for each in drawing.items
        )
        return replace(drawing, items=tuple(items))

    return spoil


def mirrored(drawing: Drawing) -> Drawing:
    """Mirror all lines about the upright middle of the drawing."""
    both = drawing.box[0] + drawing.box[2]
    return every(lambda c: Contour(tuple((both - x, y, -b) for x, y, b in c.vertices), c.closed))(
        drawing
    )


def cuts(drawing: Drawing) -> list[int]:
    """Return which items are lines of the shape."""
    layers = {each.name for each in drawing.layers if each.cuts} or {SHAPE.name}
    return [at for at, each in enumerate(drawing.items) if each.layer in layers]


def one(change: Callable[[Stroke], tuple[Stroke, ...]], which: int = -1) -> Change:
    """Change one line of the shape: it becomes none, another or two."""

    def spoil(drawing: Drawing) -> Drawing:
        at = cuts(drawing)[which]
        item = drawing.items[at]
        assert isinstance(item, Stroke)
        items = (*drawing.items[:at], *change(item), *drawing.items[at + 1 :])
        return replace(drawing, items=items)

    return spoil


def on_another_layer(drawing: Drawing) -> Drawing:
    """Put a line on another layer; where pens stand for layers, draw it with another."""
    item = drawing.items[cuts(drawing)[-1]]
    assert isinstance(item, Stroke)
    spoilt = replace(item, layer="note", width=0.18)
    return one(lambda _: (spoilt,))(drawing)


def arc_reversed(drawing: Drawing) -> Drawing:
    """Bend the first arc of the last line that has one, and is no circle, the other way."""
    for which in range(len(cuts(drawing)) - 1, -1, -1):
        item = drawing.items[cuts(drawing)[which]]
        assert isinstance(item, Stroke)
        bent = [at for at, vertex in enumerate(item.contour.vertices) if vertex[2]]
        if bent and not circle_of(item.contour):
            vertices = list(item.contour.vertices)
            x, y, bulge = vertices[bent[0]]
            vertices[bent[0]] = (x, y, -bulge)
            changed = replace(item, contour=Contour(tuple(vertices), item.contour.closed))
            return one(lambda _, changed=changed: (changed,), which)(drawing)  # type: ignore[misc]
    return drawing


def mislabelled(drawing: Drawing) -> Drawing:
    """Change the last word on it."""
    at = max(at for at, each in enumerate(drawing.items) if isinstance(each, Label))
    label = drawing.items[at]
    assert isinstance(label, Label)
    items = list(drawing.items)
    items[at] = replace(label, text=f"{label.text[:-1]}?")
    return replace(drawing, items=tuple(items))


DRAWN: dict[str, tuple[Change | None, str]] = {
    "shift by 0.01 mm": (every(lambda c: moved(c, 0.01, 0.0)), "by 0.01 mm across and 0 mm up"),
    "shift by 7 mm": (every(lambda c: moved(c, 7.0, 0.0)), "by 7 mm across and 0 mm up"),
    "mirror": (mirrored, "everything is mirrored"),
    "scale by 1.001": (
        every(lambda c: mapped(c, lambda x, y: (1.001 * x, 1.001 * y))),
        "everything is 1.001 times as large",
    ),
    "two pieces swapped": (None, ""),
    "a contour missing": (one(lambda _: ()), "is missing on layer"),
    "a contour doubled": (one(lambda s: (s, s)), "twice"),
    "a contour on a wrong layer": (on_another_layer, "is on layer"),
    "an arc reversed": (arc_reversed, "bends elsewhere"),
    "a wrong label": (mislabelled, "say"),
}
"""What is done to a drawing before it is written, and the words that name it."""

UNIT = "a wrong unit"
STALE = "a stale file"
SPOILINGS = (*DRAWN, UNIT, STALE)


def spoiled(probe: Probe, how: str) -> Iterator[tuple[str, str, bytes]]:
    """Yield every kind of file, its name, and its bytes spoiled; what cannot be is left out."""
    made = edition(probe.text, probe.layout)
    good = files(probe.text, probe.layout)
    text = probe.text.replace("1.0.0", "0.9.0").replace(*probe.older)
    older = files(text, probe.layout) if how == STALE else {}
    for what, kind in kinds(made):
        for ending in ("a4", "letter", "roll") if what == "template" else ("svg", "dxf"):
            name = kind.name(ending)
            if how == UNIT:
                content = in_another_unit(good[name], ending)
            elif how == STALE:
                content = older[name]
            else:
                change = DRAWN[how][0]
                drawing = change(kind.drawing) if change else kind.other
                content = written(made, kind, drawing, ending)
            if content != good[name]:
                yield f"{what} ({ending})", name, content


def written(made: Edition, kind: Kind, drawing: Drawing, ending: str) -> bytes:
    for each in made.formats:
        if each.ending == ending:
            return each.write(drawing, own_origin=kind.at_zero)
    return templates_of(made, ending, drawing)


def in_another_unit(content: bytes, ending: str) -> bytes:
    if ending == "svg":
        return content.replace(b'mm" height="', b'in" height="', 1).replace(
            b'mm" viewBox', b'in" viewBox', 1
        )
    if ending == "dxf":
        return content.replace(b"$INSUNITS\n 70\n4\n", b"$INSUNITS\n 70\n1\n")
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(content)) as document:
        for page in document.pages:
            page.obj.UserUnit = 2
        document.save(out, deterministic_id=True)
    return out.getvalue()
