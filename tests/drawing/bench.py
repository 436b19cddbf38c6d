"""A settled plan built by hand, with every kind of cut, independent of reading and settling."""

from __future__ import annotations

from datetime import date

from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.relief import inside_corners, plain_centre
from kerfolio.geometry.shapes import circle, polygon, rectangle, rounded_slot, slot
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.model.feature_kind import HOLE, POCKET, SLOT
from kerfolio.model.plan import Plan, Release
from kerfolio.model.stock import CutterStock, SheetStock, Stock
from kerfolio.settling.coupon import coupon as made_coupon
from kerfolio.settling.settled import (
    Coupon,
    Cut,
    FitVariant,
    Operation,
    Relieving,
    SettledFeature,
    SettledPart,
    SettledPiece,
    SettledPlan,
    SettledSheet,
    Sized,
)
from tests.geometry.shape_cases import relieved

THICKNESS = 17.8
FIT = 0.1
WIDE = THICKNESS + 2 * FIT
REASON = "17.8 mm sheet + 2 x 0.1 mm fit"
CUTTER = CutterStock(
    name="compression-6",
    title="Compression cutter 6 mm",
    diameter=6,
    kind="compression",
    flutes=2,
    cutting_length=22,
)
STOCK = SheetStock(
    name="birch-plywood-18",
    title="Birch plywood 18 mm",
    nominal=18,
    actual=17.7,
    least=17.1,
    most=18.1,
    density=685,
    sizes=((2440, 1220),),
)
SHEET = SettledSheet(
    name="ply",
    stock=STOCK,
    thickness=THICKNESS,
    published=(THICKNESS, THICKNESS),
    fit=FIT,
    size=(2440, 1220),
    margin=10,
    gap=8,
    cutter=CUTTER,
    diameter=CUTTER.diameter,
    relief=Relieving(style="dog-bone", diameter=6),
)


def part_of(
    name: str,
    mark: str,
    plain: Region,
    cuts: tuple[Cut, ...] = (),
    *,
    pieces: tuple[str, ...] = ("",),
    grain: str = "any",
    features: tuple[SettledFeature, ...] = (),
) -> SettledPart:
    """Return a settled part whose openings are cut through, corners relieved for a 6 mm cutter."""
    corners = inside_corners(plain)
    routed = relieved(plain, corners, 3.0, "dog-bone")
    through = tuple(
        Cut(
            operation=Operation.HOLE if len(each.vertices) == 2 else Operation.OPENING,
            depth=None,
            contours=(each,),
        )
        for each in routed.openings
    )
    outline = Cut(operation=Operation.OUTLINE, depth=None, contours=(routed.outer,))
    labelled = [f"{name}.{piece}" if piece else name for piece in pieces]
    return SettledPart(
        name=name,
        mark=mark,
        sheet="ply",
        thickness=THICKNESS,
        pieces=tuple(
            SettledPiece(label=label, mark=f"{mark}{number}" if len(pieces) > 1 else mark)
            for number, label in enumerate(labelled, 1)
        ),
        grain=grain,
        plain=plain,
        routed=routed,
        cuts=(*cuts, *through, outline),
        drill_centres=tuple(plain_centre(corner, 3.0) for corner in corners),
        features=features,
        size=(bounds(plain).width, bounds(plain).height),
        area=area(plain),
        mass=area(plain) * THICKNESS * 685e-9,
    )


def slot_feature(name: str, at: Point, direction: Point, length: float) -> SettledFeature:
    """Return a slot that takes the sheet."""
    return SettledFeature(
        name=name,
        kind=SLOT,
        at=at,
        direction=direction,
        width=Sized(WIDE, REASON),
        length=Sized(length + 2 * FIT, f"{length:g} mm + 2 x 0.1 mm fit"),
        takes="ply",
    )


def side() -> SettledPart:
    """Return a leg-like side: rounded corners, two slots, a bolt hole, a grip, an engraving."""
    outer = polygon(
        [
            (0, 0, 0),
            (60, 0, 0),
            (90, 330, 40),
            (270, 330, 40),
            (300, 0, 0),
            (360, 0, 0),
            (320, 450, 20),
            (40, 450, 20),
        ]
    )
    slots = (
        slot_feature("rail-slot", (180, 370), (1, 0), 120),
        slot_feature("foot-slot", (50, 90), (0, 1), 60),
    )
    openings = [slot(each.at, each.direction, each.length.value, WIDE) for each in slots]
    bolts = [(60.0, 400.0), (300.0, 400.0)]
    holes = [
        SettledFeature(
            name=f"bolt.{number}",
            kind=HOLE,
            at=at,
            direction=(1, 0),
            width=Sized(6.6, "clearance of M6"),
            length=Sized(6.6),
        )
        for number, at in enumerate(bolts, 1)
    ]
    shape = region(outer, [*openings, *(circle(at, 6.6) for at in bolts)])
    word = (
        Contour(((160, 420, 0), (160, 432, 0)), closed=False),
        Contour(((170, 426, 1), (182, 426, 1), (170, 426, 0)), closed=False),
    )
    engraved = Cut(operation=Operation.ENGRAVE, depth=0.5, contours=word, feature="mark")
    return part_of(
        "side",
        "A",
        shape,
        (engraved,),
        pieces=("left", "right"),
        grain="along y",
        features=(*slots, *holes),
    )


def rail() -> SettledPart:
    """Return a long rail with tabs that reach below its 0,0."""
    outer = polygon(
        [
            (0, 0, 0),
            (0, -20, 0),
            (40, -20, 0),
            (40, 0, 0),
            (560, 0, 0),
            (560, -20, 0),
            (600, -20, 0),
            (600, 0, 0),
            (600, 80, 0),
            (0, 80, 0),
        ]
    )
    return part_of("rail", "B", region(outer), pieces=("front", "back"), grain="along x")


def shelf() -> SettledPart:
    """Return a shelf with pockets at two depths, a blind hole and a window."""
    grip = rounded_slot((200, 150), 90, 30)
    outer = rectangle(0, 0, 400, 300, 15)
    housings = (slot((60, 150), (0, 1), 200.2, WIDE), slot((340, 150), (0, 1), 200.2, WIDE))
    cuts = (
        Cut(operation=Operation.POCKET, depth=6.0, contours=housings, feature="housing"),
        Cut(operation=Operation.POCKET, depth=3.25, contours=(circle((200, 60), 50),)),
        Cut(operation=Operation.HOLE, depth=12.0, contours=(circle((200, 240), 8),)),
    )
    features = tuple(
        SettledFeature(
            name=f"housing.{number}",
            kind=POCKET,
            at=(x, 150),
            direction=(0, 1),
            width=Sized(WIDE, REASON),
            length=Sized(200.2),
            depth=Sized(6.0),
            takes="ply",
        )
        for number, x in enumerate((60, 340), 1)
    )
    return part_of("shelf", "C", region(outer, [grip]), cuts, grain="along x", features=features)


def button() -> SettledPart:
    """Return a small disc with a hole, too small for a mark inside it on a sheet's picture."""
    return part_of(
        "button", "D", region(circle((15, 15), 30), [circle((15, 15), 4)]), pieces=("1", "2", "3")
    )


def coupon() -> Coupon:
    """Return a coupon of the sheet, for tabs of 60 mm and halvings of 40 mm."""
    return made_coupon(SHEET, "mm", 60.0, 40.0)


def bench() -> SettledPlan:
    """Return the whole plan."""
    plan = Plan(
        name="test-bench",
        title="Test bench",
        version="1.2.0",
        summary="A plan for tests.",
        releases=(Release(version="1.2.0", date=date(2026, 10, 2), changed="First."),),
    )
    return SettledPlan(
        plan=plan,
        stock=Stock(sheets=(STOCK,), cutters=(CUTTER,)),
        variant=FitVariant(label="17.8mm", thickness=(("ply", THICKNESS),)),
        sizes=(),
        sheets=(SHEET,),
        parts=(side(), rail(), shelf(), button()),
        coupons=(coupon(),),
    )


def bench_layout() -> SheetLayout:
    """Return one sheet of the plan, some pieces turned."""
    rows = (
        ("side.left", "side", 470, 10, 90),
        ("side.right", "side", 1500, 460, 180),
        ("rail.front", "rail", 520, 40, 0),
        ("rail.back", "rail", 520, 160, 0),
        ("shelf", "shelf", 520, 260, 0),
        ("button.1", "button", 940, 300, 0),
        ("button.2", "button", 980, 300, 0),
        ("button.3", "button", 1040, 300, 30),
    )
    placements = tuple(
        Placement(piece=piece, part=part, x=x, y=y, turn=turn) for piece, part, x, y, turn in rows
    )
    return SheetLayout(number=1, sheet="ply", size=(2440, 1220), placements=placements)
