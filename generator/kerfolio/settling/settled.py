"""The settled plan: every length in mm, every size with its reason; one for each fit variant."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import Text
from kerfolio.geometry.arc import Edge
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import edge_length
from kerfolio.geometry.relief import InsideCorner
from kerfolio.model.edge_treatment import BOTH_FACES, EdgeKind
from kerfolio.model.fastening import Fastening
from kerfolio.model.feature_kind import FeatureKind
from kerfolio.model.joint import Joint
from kerfolio.model.plan import BoardPlace, BoardUse, Plan
from kerfolio.model.stock import BoardStock, CutterStock, SheetStock, Stock
from kerfolio.settling.clearance import Clearance
from kerfolio.settling.surroundings import Surroundings

CENTRE = "centre"
"""The datum of sheets whose cut files have 0,0 in the middle; else it is the lower left corner."""

SheetSize = tuple[float, float]
"""A sheet's size along its grain and across it, mm."""


@dataclass(frozen=True, slots=True)
class Sized:
    """A value (mm; degrees or a plain number where said) with the reason it came to be."""

    value: float
    reason: Text = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Relief:
    """An inside corner opened for the cutter, the radius of the arc in mm."""

    corner: InsideCorner
    style: str
    radius: float


class Operation(StrEnum):
    """What the router does along a contour."""

    ENGRAVE = "engrave"
    POCKET = "pocket"
    HOLE = "hole"
    OPENING = "opening"
    OUTLINE = "outline"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """Contours cut by one operation to one depth (mm from the face; None goes through).

    Contours are the finished edges, not tool paths; open ones occur only in engravings. Of a
    recess with ``reliefs`` they are ``square`` but for those.
    """

    operation: Operation
    depth: float | None
    contours: tuple[Contour, ...]
    feature: str = ""
    square: tuple[Contour, ...] = ()
    reliefs: tuple[Relief, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledFeature:
    """One feature after repeats and mirrors, in the part's frame.

    ``at`` is its centre (slot, hole, window, pocket, groove), the middle of its root (tab) or the
    middle of its bottom (notch); ``direction`` is a unit vector: along the length (slot, groove,
    pocket) or outward (tab) or towards the open end (notch). ``width`` is across, ``length``
    along; ``depth`` None goes through. ``shape`` is what it cuts away, or adds (tab), before
    relief: one closed contour, or one for each gap (fingers); the lines of an engraving. ``room``
    is what it leaves round a sheet that it takes, None where it takes none. ``counterbore`` are the
    diameter and the depth of a hole's wider bore on the show face. ``ruler``, of a feature on an
    edge as it is stated, is where its ``at`` is 0, and the end of the edge; a copy has none.

    A bore into an edge has its mouth ``at`` the edge, ``direction`` looks out of that, ``depth``
    and ``length`` go in; ``level`` is how high its axis lies above the rear face, None for others.
    """

    name: str
    kind: FeatureKind
    at: Point
    direction: Point
    width: Sized
    length: Sized
    depth: Sized | None = None
    takes: str = ""
    shape: tuple[Contour, ...] = ()
    room: Clearance | None = None
    counterbore: tuple[Sized, Sized] | None = None
    level: Sized | None = None
    ruler: tuple[Point, Point] | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledOffcut:
    """Left-over sheets at hand: size (along the grain, across it) in mm, and how many."""

    size: tuple[float, float]
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledClamp:
    """A zone at an edge of every sheet that pieces keep clear of, mm.

    ``at`` is its middle along the edge, ``width`` runs along it, ``depth`` into the sheet.
    """

    edge: str
    at: float
    width: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Relieving:
    """How inside corners are relieved where nothing speaks against it.

    ``style`` is ``dog-bone``, ``sideways`` or ``none``, ``diameter`` that of the relief's arcs, mm:
    the cutter's and a little more; 0 where no cutter cuts.
    """

    style: str
    diameter: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedRelief:
    """The relief of features that share walls, where the style asked for would eat too much.

    ``style`` is what they have instead, or the best there is. ``wall`` is the length of the wall
    that speaks against the style asked for, ``left`` what that would leave of it, mm. ``widest`` is
    the diameter of the largest arcs, mm, of any style, that leave every wall its share.
    """

    features: tuple[str, ...]
    style: str
    wall: float
    left: float
    widest: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledSheet:
    """A sheet material at one thickness; ``size`` (along, across), margin and gap for layouts.

    ``published`` are the thinnest and the thickest that the plan is for, ``step`` that of the
    coupon where the plan states one.
    ``fits`` are the least and the most fit that a reader may choose, None where none may be.
    ``cutter`` is the plan's own, whatever is cut with: drills of templates, bridges and layouts go
    by it. ``diameter`` is that of what cuts, mm; None is no cutter (a laser, a hand's tools).
    ``cut`` is by how much the cutter cuts wider than that, mm, where its files have this built in.
    ``datum`` is where its cut files have 0,0: ``corner`` (lower left) or ``centre``. ``also`` are
    other sizes it may be bought in.
    """

    name: str
    stock: SheetStock
    thickness: float
    published: tuple[float, float]
    step: float | None = None
    fit: float
    fits: tuple[float, float] | None = None
    size: tuple[float, float]
    margin: float
    gap: float
    cutter: CutterStock
    diameter: float | None
    relief: Relieving
    cut: float = 0.0
    datum: str = "corner"
    also: tuple[tuple[float, float], ...] = ()
    offcuts: tuple[SettledOffcut, ...] = ()
    clamps: tuple[SettledClamp, ...] = ()
    place: Place = NOWHERE

    @property
    def cut_width(self) -> float:
        """How wide what cuts it is, mm: the cutter's diameter, and nothing without a cutter."""
        return self.diameter or 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledBridge:
    """What is left standing between a piece, or what falls out of it, and the sheet; mm.

    ``at`` is its middle on the finished edge, ``direction`` a unit vector along that, ``width``
    along it, ``height`` above the lower face. ``operation`` is the cut it interrupts. ``spot`` says
    which contour (0 the outline), which straight run of it and which eighth of that it stands on,
    so that it keeps its place at other thicknesses; None where a maker states the place.
    """

    at: Point
    direction: Point
    width: float
    height: float
    operation: Operation
    spot: tuple[int, int, int] | None = None

    @property
    def line(self) -> Contour:
        """The stretch of the finished edge over which the cutter lifts."""
        (x, y), (ux, uy), half = self.at, self.direction, self.width / 2
        ends = ((x - half * ux, y - half * uy, 0.0), (x + half * ux, y + half * uy, 0.0))
        return Contour(ends, closed=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledPiece:
    """One piece: ``label`` as in joints and steps (``side.left``), ``mark`` short (``A1``).

    ``copy`` tells of which copy of the plan it is, where several are made at once.
    """

    label: str
    mark: str
    copy: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnEdges:
    """Notches, tabs or (no kind) steps of a drawn outline, of which the plan says nothing.

    Each is as wide or as deep (``size``, mm) as a sheet is thick. ``spots`` are where they lie in
    the drawing, mm. Where they have been taken for ``kind`` they follow the sheet that they
    ``takes``; else they stay as drawn.
    """

    kind: FeatureKind | None
    size: float
    spots: tuple[Point, ...]
    element: str
    takes: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledEdge:
    """What is done to an edge of a part once it is cut; lengths in mm.

    ``runs`` are its stretches: what of the outline's own edge tabs and notches leave. It is a
    ``side``, goes between two ``ends``, or is the rims of ``openings``, by their names; else it is
    all other edges. ``radius`` is that of a rounding over, ``of`` and ``thickness`` a banding's.
    """

    kind: EdgeKind
    runs: tuple[Edge, ...]
    side: str = ""
    ends: tuple[Point, Point] | None = None
    openings: tuple[str, ...] = ()
    radius: float = 0.0
    faces: str = BOTH_FACES
    of: str = ""
    thickness: float | None = None
    place: Place = NOWHERE

    @property
    def length(self) -> float:
        """How long its stretches are together, mm."""
        return math.fsum(edge_length(run) for run in self.runs)


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOff:
    """A feature that could not be made, and where it was to be, as far as that is known, mm."""

    name: str
    at: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledPart:
    """A part's flat shape at one thickness. The face seen is the show face; x right, y up.

    ``plain`` is the shape a hand tool cuts (square inside corners, drilled first at
    ``drill_centres``); ``routed`` has its inside corners relieved for the sheet's cutter. ``cuts``
    are in cutting order, inside before outside; the last is the outline. ``reliefs`` are those of
    what goes through, ``moved`` those that are not as asked for; ``bridges`` hold each piece.
    ``edges`` are those that something is done to afterwards, which no cut knows of. ``mass`` in kg.
    ``left_off`` is what it lacks, for a look, since it could not be read or made.
    """

    name: str
    mark: str
    sheet: str
    thickness: float
    pieces: tuple[SettledPiece, ...]
    grain: str
    plain: Region
    routed: Region
    cuts: tuple[Cut, ...]
    drill_centres: tuple[Point, ...]
    features: tuple[SettledFeature, ...]
    size: tuple[float, float]
    area: float
    mass: float
    reliefs: tuple[Relief, ...] = ()
    moved: tuple[MovedRelief, ...] = ()
    bridges: tuple[SettledBridge, ...] = ()
    note: str = ""
    drawn_edges: tuple[DrawnEdges, ...] = ()
    edges: tuple[SettledEdge, ...] = ()
    left_off: tuple[LeftOff, ...] = ()
    place: Place = NOWHERE

    @property
    def is_held(self) -> bool:
        """Tell whether bridges hold it in its sheet."""
        return any(each.operation is Operation.OUTLINE for each in self.bridges)

    @property
    def grained(self) -> bool:
        """Tell whether the plan says which way the part's grain runs."""
        return self.grain in ("along x", "along y")


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledJoint:
    """A stated joint with what it says in numbers: ``at`` in mm, ``turn`` in degrees."""

    stated: Joint
    at: Point | None = None
    turn: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledBoard:
    """A board cut to length, mm; mass in kg for one.

    ``held_over`` is how much of its width is held by what fixes it on a part, mm; 0 where nothing
    does, or lets it move.
    """

    use: BoardUse
    stock: BoardStock
    length: float
    mass: float
    held_over: float = 0.0
    places: tuple[SettledPlace, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledPlace:
    """Where a board lies, as stated: on a ``face`` of a piece (``show``, ``back``) or a side of it.

    ``at`` is its middle in mm, None for the middle of that face or side.
    """

    stated: BoardPlace
    piece: str
    face: str
    at: Point | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FitVariant:
    """A point: a thickness for every sheet, mm; ``label`` names it in folders and files.

    ``fit`` (mm a side) and ``cutter`` (the diameter in mm, None for no cutter) are those of sheets
    that have others than the plan's own; ``cut`` (mm) is by how much a cutter cuts wider than that,
    of sheets whose files have this built in.
    """

    label: str
    thickness: tuple[tuple[str, float], ...]
    fit: tuple[tuple[str, float], ...] = ()
    cutter: tuple[tuple[str, float | None], ...] = ()
    cut: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledPlan:
    """A plan at one fit variant; a pure function of the plan, the stock and the variant.

    ``overhangs`` tells of each assembly that lies on others how far it reaches past them, mm,
    ``pencilled`` of the distances of lines that steps mark out what each comes to, mm.
    ``pressed`` are the places on faces that its clamps state, each by its statement.
    ``surroundings`` are those of its finish and its place, None where it says nothing of them.
    ``laid_for`` is the label of another sheet or bed that it is to be laid out for, else empty.
    """

    plan: Plan
    stock: Stock
    variant: FitVariant
    sizes: tuple[tuple[str, Sized], ...]
    sheets: tuple[SettledSheet, ...]
    parts: tuple[SettledPart, ...]
    boards: tuple[SettledBoard, ...] = ()
    joints: tuple[SettledJoint, ...] = ()
    overhangs: tuple[tuple[str, float], ...] = ()
    pencilled: tuple[tuple[str, float], ...] = ()
    pressed: tuple[tuple[Fastening, Point], ...] = ()
    coupons: tuple[Coupon, ...] = ()
    surroundings: Surroundings | None = None
    laid_for: str = ""

    def sheet(self, name: str) -> SettledSheet:
        """Return the sheet of that name; KeyError when the plan has none."""
        for each in self.sheets:
            if each.name == name:
                return each
        raise KeyError(name)

    def part(self, name: str) -> SettledPart:
        """Return the part of that name; KeyError when the plan has none."""
        for each in self.parts:
            if each.name == name:
                return each
        raise KeyError(name)


@dataclass(frozen=True, slots=True, kw_only=True)
class CouponSlot:
    """A step of a coupon's stepped slots, numbered from the narrowest.

    ``width`` is how wide it is drawn, ``thickness`` the sheet it is so wide for, mm.
    ``spots`` are its middles on the plate: where its width lies in x, and where in y.
    """

    number: int
    thickness: float
    width: float
    spots: tuple[Point, Point]


@dataclass(frozen=True, slots=True, kw_only=True)
class CouponStep:
    """A step of a coupon's arms, numbered from the tip: its width, mm, its middles on the tab."""

    number: int
    width: float
    spots: tuple[Point, Point]


@dataclass(frozen=True, slots=True, kw_only=True)
class Coupon:
    """A fit coupon for one sheet: a plate with stepped slots, and the tab that is tried with it.

    ``usual`` is how wide the plan's usual tab is, ``opening`` how long the long slot is that the
    arms are tried in, ``halving`` how deep the tab's notch is, 0 where the plan has none; mm.
    ``beside`` is where the tab's lower left corner lies when that of the plate is at 0,0.
    """

    sheet: str
    plate: SettledPart
    tab: SettledPart
    beside: Point
    slots: tuple[CouponSlot, ...]
    steps: tuple[CouponStep, ...]
    usual: float
    opening: float
    halving: float = 0.0
