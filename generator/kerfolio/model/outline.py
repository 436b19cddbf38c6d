"""Outlines of parts and openings, as stated."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.feature_kind import NOTCH, FeatureKind
from kerfolio.model.statement import Amount, Named, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """A corner of a polygon; ``round`` is the radius of its rounding."""

    at: Spot
    round: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mirror:
    """A mirror line: vertical at ``x`` or horizontal at ``y`` (exactly one is stated)."""

    x: Amount | None = None
    y: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """``rectangle: [width, height]``, lower left corner at 0,0 (centred in features)."""

    width: Amount
    height: Amount
    round: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Polygon:
    """``polygon: [...]``; with a mirror, the corners are one half and the other half is added."""

    corners: tuple[Corner, ...]
    mirror: Mirror | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """``circle: diameter``; an outline touches x = 0 and y = 0, a feature is centred."""

    diameter: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Ellipse:
    """``ellipse: [width, height]``, placed as a circle is."""

    width: Amount
    height: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundedSlot:
    """``rounded-slot: [length, width]``: straight sides, half-round ends, placed as a circle is."""

    length: Amount
    width: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class PathText:
    """``path: "M 0 0 L {width} 0 ..."``: SVG path text, y up, expressions in braces."""

    text: str
    mirror: Mirror | None = None
    place: Place = NOWHERE


Outline = Rectangle | Polygon | Circle | Ellipse | RoundedSlot | PathText


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnFeatureRule:
    """How drawn elements named ``element`` become features: ``slot: takes ply``, ``hole``.

    A hole without a ``depth`` goes through.
    """

    element: Named
    kind: FeatureKind
    takes: Named | None = None
    depth: Amount | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnEdgeRule:
    """What notches or tabs within a drawn outline are: ``takes ply``, or ``as drawn`` (None)."""

    takes: Named | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A part taken from a drawing; ``drawn_for`` is the thickness its slots were drawn at.

    ``at`` is a point of the drawing inside the part, where several outlines have one name.
    ``notches`` and ``tabs`` are those within the outline; None where nothing is said of them.
    """

    file: str
    outline: Named
    at: Spot | None = None
    notches: DrawnEdgeRule | None = None
    tabs: DrawnEdgeRule | None = None
    features: tuple[DrawnFeatureRule, ...] = ()
    drawn_for: Amount | None = None
    place: Place = NOWHERE

    def said_of(self, kind: FeatureKind) -> DrawnEdgeRule | None:
        """Return what is said of notches or tabs within the outline."""
        return self.notches if kind is NOTCH else self.tabs


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnElement:
    """One path read from a drawing, in mm, y up.

    ``names`` holds its id, the ids of its groups and its layer, ``inserts`` the inserts of blocks
    it comes by, each with its number (``SIDE.2``); ``vertices`` are
    ``(x, y, bulge)``: the bulge is the tangent of a quarter of the included angle of the arc to
    the next vertex, positive counter-clockwise, 0 for a straight line.
    """

    name: str
    names: tuple[str, ...]
    vertices: tuple[tuple[float, float, float], ...]
    closed: bool
    inserts: tuple[str, ...] = ()
    place: Place = NOWHERE

    @property
    def every_name(self) -> tuple[str, ...]:
        """All that a plan may call it by."""
        return (self.name, *self.names, *self.inserts)

    def answers_to(self, name: str) -> bool:
        """Tell whether a plan may call it by that name."""
        return name == self.name or name in self.names or name in self.inserts


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnText:
    """A line of text in a drawing, ``at`` where it begins, mm, y up. It is not cut."""

    text: str
    at: tuple[float, float]
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawing file read: its elements in the order of the file, and what is written in it.

    ``unread`` are the names of what stands in the file but could not be read, and was told.
    """

    file: str
    elements: tuple[DrawnElement, ...]
    texts: tuple[DrawnText, ...] = ()
    unread: frozenset[str] = frozenset()
