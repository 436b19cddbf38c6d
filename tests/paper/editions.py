"""A small invented edition, written out by hand, for the tests of everything printed."""

from __future__ import annotations

import io
from dataclasses import replace
from decimal import Decimal

from PIL import Image, ImageDraw

from kerfolio.edition.edition import Edition
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Region
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.shapes import circle, polygon, rectangle
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.model.plan import Plan
from kerfolio.model.stock import CutterStock, PaperStock, SheetStock, Stock
from kerfolio.model.workshop import Identity
from kerfolio.settling.coupon import coupon
from kerfolio.settling.settled import (
    Cut,
    FitVariant,
    Operation,
    Relieving,
    SettledPart,
    SettledPiece,
    SettledPlan,
    SettledSheet,
)
from kerfolio.shop.cost import CopiesCost
from kerfolio.shop.rows import BoardRow, CostRow, HardwareRow, PartRow, SheetRow
from tests.paper.stool_plan import PLAN

A4 = PaperStock(name="a4", title="A4", width=210.0, height=297.0)
LETTER = PaperStock(name="letter", title="US Letter", width=215.9, height=279.4)

_CUTTER = CutterStock(
    name="compression-6",
    title="Compression cutter 6 mm",
    diameter=6.0,
    kind="compression",
    flutes=2,
    cutting_length=22.0,
)
_PLY = SheetStock(
    name="birch-plywood-18",
    title="Birch plywood 18 mm",
    nominal=18.0,
    actual=17.7,
    least=17.1,
    most=18.1,
    density=685.0,
    sizes=((2440.0, 1220.0),),
)


def picture(width: int = 1200, height: int = 800, colour: str = "#cdb088") -> bytes:
    image = Image.new("RGB", (width, height), "#efe6d6")
    draw = ImageDraw.Draw(image)
    draw.rectangle((width // 5, height // 3, 4 * width // 5, 4 * height // 5), fill=colour)
    draw.ellipse((width // 3, height // 8, 2 * width // 3, height // 2), fill="#b5532a")
    out = io.BytesIO()
    image.save(out, format="JPEG", quality=80)
    return out.getvalue()


def part(
    name: str, mark: str, pieces: tuple[str, ...], shape: Region, cuts: tuple[Cut, ...] = ()
) -> SettledPart:
    box = bounds(shape)
    openings = tuple(
        Cut(operation=Operation.OPENING, depth=None, contours=(each,)) for each in shape.openings
    )
    labels = [f"{name}.{piece}" for piece in pieces] or [name]
    return SettledPart(
        name=name,
        mark=mark,
        sheet="ply",
        thickness=17.8,
        pieces=tuple(
            SettledPiece(label=label, mark=f"{mark}{index}" if pieces else mark)
            for index, label in enumerate(labels, start=1)
        ),
        grain="along y",
        plain=shape,
        routed=shape,
        cuts=(
            *cuts,
            *openings,
            Cut(operation=Operation.OUTLINE, depth=None, contours=(shape.outer,)),
        ),
        drill_centres=(),
        features=(),
        size=(box.width, box.height),
        area=area(shape),
        mass=area(shape) * 17.8 * 685e-9,
    )


def _side(thickness: float) -> SettledPart:
    wide = thickness + 0.2
    outer = polygon(
        [
            *((0, 0, 0), (60, 0, 0), (90, 330, 40), (270, 330, 40)),
            *((300, 0, 0), (360, 0, 0), (320, 450, 12), (40, 450, 12)),
        ]
    )
    slot = rectangle(120, 385 - wide / 2, 240, 385 + wide / 2)
    recess = Cut(operation=Operation.POCKET, depth=6.0, contours=(rectangle(100, 350, 140, 362),))
    shape = region(outer, (slot, circle((180, 425), 20)))
    return part("side", "A", ("left", "right"), shape, (recess,))


def parts_at(thickness: float) -> tuple[SettledPart, ...]:
    rail = region(rectangle(0, 0, 420, 80))
    seat = region(rectangle(0, 0, 360, 300, 20), (rectangle(130, 135, 230, 165),))
    wedge = region(polygon([(0, 0, 0), (90, 0, 0), (90, 14, 0), (0, 24, 0)]))
    return (
        _side(thickness),
        part("rail", "B", (), rail),
        part("seat", "C", (), seat),
        part("wedge", "D", ("1", "2", "3", "4"), wedge),
    )


def _sheet(thickness: float) -> SettledSheet:
    return SettledSheet(
        name="ply",
        stock=_PLY,
        thickness=thickness,
        published=(17.6, 18.0),
        fit=0.1,
        size=(2440.0, 1220.0),
        margin=10.0,
        gap=8.0,
        cutter=_CUTTER,
        diameter=_CUTTER.diameter,
        relief=Relieving(style="dog-bone", diameter=6.1),
    )


def settled_at(plan: Plan, thickness: float) -> SettledPlan:
    return SettledPlan(
        plan=plan,
        stock=Stock(sheets=(_PLY,), cutters=(_CUTTER,)),
        variant=FitVariant(label=f"{thickness}mm", thickness=(("ply", thickness),)),
        sizes=(),
        sheets=(_sheet(thickness),),
        parts=parts_at(thickness),
        coupons=(coupon(replace(_sheet(17.8), step=0.2)),),
    )


def _layout(settled: SettledPlan) -> Layout:
    spots = {"side": (20.0, 20.0), "rail": (760.0, 20.0), "seat": (760.0, 120.0)}
    spots["wedge"] = (1200.0, 20.0)
    placements, shift = [], 0.0
    for each in settled.parts:
        for index, piece in enumerate(each.pieces):
            x, y = spots[each.name]
            shift = index * (each.size[0] + 8)
            placements.append(
                Placement(piece=piece.label, part=each.name, x=x + shift, y=y, turn=0.0)
            )
    sheet = SheetLayout(number=1, sheet="ply", size=(2440.0, 1220.0), placements=tuple(placements))
    return Layout(sheets=(sheet,), engine="by hand", computed_from="")


def _rows(settled: SettledPlan) -> tuple[PartRow, ...]:
    return tuple(
        PartRow(
            part=each.name,
            mark=each.mark,
            marks=tuple(piece.mark for piece in each.pieces),
            labels=tuple(piece.label for piece in each.pieces),
            count=len(each.pieces),
            sheet=each.sheet,
            thickness=each.thickness,
            width=each.size[0],
            height=each.size[1],
            area=each.area,
            mass=each.mass,
            grain=each.grain,
            note="glue nothing" if each.name == "wedge" else "",
        )
        for each in settled.parts
    )


def _cost(copies: int) -> CopiesCost:
    price = Decimal("92.50")
    ply = CostRow(what="Birch plywood 18 mm", count=copies, price=price, total=price * copies)
    pine = CostRow(what="Pine 45 × 45", count=copies, price=None, total=None)
    return CopiesCost(copies=copies, sheets=copies, lines=(ply, pine))


def stool(units_first: str = "mm") -> Edition:
    """Return the edition of an invented stool at 17.8 mm, published for three thicknesses."""
    settled = settled_at(PLAN, 17.8)
    return Edition(
        identity=Identity(
            title="Fernhill Bench",
            maker="Ida Fernhill",
            base_url="https://example.org",
            units_first=units_first,
            licence="CC-BY-4.0",
        ),
        plan=PLAN,
        settled=settled,
        variants=tuple(settled_at(PLAN, each) for each in (17.6, 17.8, 18.0)),
        corners=tuple(settled_at(PLAN, each) for each in (17.8, 17.6, 18.0)),
        layout=_layout(settled),
        parts=_rows(settled),
        hardware=(
            HardwareRow(
                item="bolt-m6x40",
                title="Bolt M6 × 40, hexagon socket",
                count=2,
                purpose="seat",
                inch_twin="1/4-20 × 1 1/2 in",
                price=Decimal("0.35"),
            ),
        ),
        sheets=(
            SheetRow(
                sheet="ply",
                title="Birch plywood 18 mm",
                thickness=17.8,
                width=2440.0,
                height=1220.0,
                count=1,
                price=Decimal("92.50"),
            ),
        ),
        boards=(
            BoardRow(
                name="foot", title="Pine 45 × 45", thickness=45, width=45, length=300.0, count=1
            ),
        ),
        copies=(_cost(1), _cost(2)),
        trials=(),
        pictures={"photos/finished.jpg": picture(), "photos/rail.jpg": picture(900, 700)},
    )
