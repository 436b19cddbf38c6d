"""Features as stated: what is cut into a part or stands out of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.feature_kind import (
    BORE,
    ENGRAVING,
    FINGERS,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    TAB,
    WINDOW,
    FeatureKind,
)
from kerfolio.model.outline import Mirror, Outline
from kerfolio.model.statement import Amount, Named, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeLine:
    """An edge of the part: ``top``, ``bottom``, ``left``, ``right``, or from one point to another.

    Distances along a named edge are the part's own x (top, bottom) or y (left, right); along a
    two-point edge they run from ``start``.
    """

    side: str = ""
    start: Spot | None = None
    end: Spot | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeat:
    """``repeat: {count: 5, step: [32, 0]}``."""

    count: Amount
    step: Spot
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A through slot about each of its centres; ``takes`` a sheet or has a ``width``.

    The length runs along ``angle`` (degrees from the x axis). A slot that takes a sheet is
    widened and lengthened by the fit on every side.
    """

    kind: ClassVar[FeatureKind] = SLOT
    at: tuple[Spot, ...]
    length: Amount
    angle: Amount | None = None
    takes: Named | None = None
    width: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """An open slot from an edge inwards; ``at`` is its centre line along the edge."""

    kind: ClassVar[FeatureKind] = NOTCH
    edge: EdgeLine
    at: tuple[Amount, ...]
    depth: Amount
    takes: Named | None = None
    width: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """A round hole: a ``diameter``, or what goes ``for_`` it (clearance) or ``pilot`` (a screw).

    ``depth`` is None for a through hole; a counterbore is a wider, shallower bore on the face the
    cutter enters.
    """

    kind: ClassVar[FeatureKind] = HOLE
    at: tuple[Spot, ...]
    diameter: Amount | None = None
    for_: Named | None = None
    pilot: Named | None = None
    depth: Amount | None = None
    counterbore_diameter: Amount | None = None
    counterbore_depth: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """An opening of any outline, cut through, centred on ``at`` (a polygon: moved by ``at``)."""

    kind: ClassVar[FeatureKind] = WINDOW
    at: Spot
    outline: Outline
    angle: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A recess of any outline to a depth; with ``takes`` a blind tab's housing, given the fit."""

    kind: ClassVar[FeatureKind] = POCKET
    at: tuple[Spot, ...]
    outline: Outline
    depth: Amount
    angle: Amount | None = None
    takes: Named | None = None
    length: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A channel between two points to a depth; takes a sheet or has a width."""

    kind: ClassVar[FeatureKind] = GROOVE
    start: Spot
    end: Spot
    depth: Amount
    takes: Named | None = None
    width: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tabs:
    """Tabs on an edge; ``at`` is where each begins; ``depth``, or ``takes`` a sheet through.

    ``end`` is the maker's word that they are to end otherwise than flush (``TAB_ENDS``).
    """

    kind: ClassVar[FeatureKind] = TAB
    edge: EdgeLine
    at: tuple[Amount, ...]
    width: Amount
    depth: Amount | None = None
    takes: Named | None = None
    round: Amount | None = None
    end: str = ""


PROUD, SHORT = TAB_ENDS = ("proud", "short")
"""How tabs end on purpose: out of what they go through, or within it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fingers:
    """Equal fingers along a whole edge, meeting a panel of the sheet they take at a corner.

    ``first`` is ``finger`` or ``gap``, at the lower end of the edge. The gaps are cut inwards.
    """

    kind: ClassVar[FeatureKind] = FINGERS
    edge: EdgeLine
    count: Amount
    takes: Named
    first: str = "finger"


@dataclass(frozen=True, slots=True, kw_only=True)
class Engraving:
    """Text or a drawing scratched to a depth; ``style`` is ``stroke`` or ``outline``."""

    kind: ClassVar[FeatureKind] = ENGRAVING
    at: Spot
    depth: Amount
    height: Amount
    text: str = ""
    drawing: str = ""
    angle: Amount | None = None
    style: str = "stroke"


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeBore:
    """A round bore by hand into an edge, square to it; ``at`` is its middle along the edge.

    It is as wide as stated by ``diameter``, as goes ``for_`` something (clearance) or as a
    ``pilot`` hole. It lies half way through the sheet, or ``from_face``: so far from the show face.
    ``guided``: a drilling guide or the hole that it meets leads the bit.
    """

    kind: ClassVar[FeatureKind] = BORE
    edge: EdgeLine
    at: tuple[Amount, ...]
    depth: Amount
    diameter: Amount | None = None
    for_: Named | None = None
    pilot: Named | None = None
    from_face: Amount | None = None
    guided: bool = False


Cutting = Slot | Notch | Hole | Window | Pocket | Groove | Tabs | Fingers | Engraving | EdgeBore


def places_of(cutting: object) -> int:
    """Return at how many places a statement puts its kind: one, or as many as ``at`` lists."""
    match cutting:
        case Slot() | Pocket() | Hole() | Notch() | Tabs() | EdgeBore():
            return len(cutting.at)
        case _:
            return 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Mated:
    """What meets a feature of one piece; ``piece`` is its name, empty where none is named."""

    piece: Named
    mate: Named


@dataclass(frozen=True, slots=True, kw_only=True)
class ByMate:
    """A feature that is as the one it meets has it: how many, how far apart, of which sheet.

    Reading makes it into what it comes to: no plan that has been read holds one. ``at`` is where
    the middle of the set lies, half way between its first and its last, ``zero`` where the 0 lies
    that its mate is measured from; on an edge both are one distance. ``angle`` is the way the set
    runs, first to last (``backward`` along an edge: the other way); a pattern of holes may be seen
    from the other side (``mirrored``); ``bore`` is what is stated of its size.
    """

    kind: FeatureKind
    of: tuple[Mated, ...]
    at: Spot | Amount | None = None
    zero: Spot | Amount | None = None
    angle: Amount | None = None
    edge: EdgeLine | None = None
    depth: Amount | None = None
    backward: bool = False
    mirrored: bool = False
    bore: Hole | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Feature:
    """A named feature, perhaps repeated and mirrored (copies are numbered ``name.1`` ...)."""

    name: str
    cutting: Cutting | ByMate
    repeat: Repeat | None = None
    mirror: Mirror | None = None
    place: Place = NOWHERE

    @property
    def kind(self) -> FeatureKind:
        """The kind of feature that is stated."""
        return self.cutting.kind
