"""The kinds of feature: what is declared of each of them, once for every room.

A stated feature (``model/feature.py``) and a settled one carry their kind. What a room does with a
kind stands in that room's ``feature_kinds.py``, keyed by these constants.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.said import ByUnit


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FeatureKind:
    """A kind of feature; one is told from another by identity (``feature.kind is HOLE``).

    ``name`` is its word in findings and in ``plan.json``, ``key`` the one that states it in a
    plan; ``noun`` is what one of it is called. ``says`` explains the key, ``example`` is a
    statement to copy, in mm and in inches.

    ``opens``: it takes wood away right through the sheet, unless a depth is stated.
    ``on_edge``: it stands on an edge of its part; the others lie in the face.
    ``takes``: it may say which sheet goes into it, or which one it goes through.
    ``cleared``: a cutter works between its walls, and has to pass them; a hole can be drilled.
    ``round``: it is as wide in every way, for what is turned or hammered in.
    ``by_hand``: no machine of a plan makes it: it is in no cut file.
    ``drawn``: it may be an element of a drawing.
    ``outlined``: what those within a drawn outline are called, which is also the key that says
    what they take; empty for kinds that are not looked for there.
    ``by_mate``: the key that states it by what it meets; empty where nothing does.
    """

    name: str
    key: str
    noun: str
    says: str
    example: ByUnit
    opens: bool = False
    on_edge: bool = False
    takes: bool = False
    cleared: bool = False
    round: bool = False
    by_hand: bool = False
    drawn: bool = False
    outlined: str = ""
    by_mate: str = ""

    @property
    def fitted(self) -> bool:
        """Whether it is as wide as the sheet that it takes, with the fit."""
        return self.takes and self.cleared

    @property
    def interlocks(self) -> bool:
        """Whether it does nothing but go into something: it stands on an edge, between no walls."""
        return self.on_edge and not self.cleared and not self.by_hand

    @property
    def recessed(self) -> bool:
        """Whether it is cleared to a depth, so that it can be entered from one face only."""
        return self.cleared and not self.opens

    def __str__(self) -> str:
        return self.name


SLOT = FeatureKind(
    name="slot",
    key="slot",
    noun="a slot",
    says="A slot through the part.",
    example=ByUnit(
        "{at: [180, 370], length: 120, takes: ply}", "{at: [7, 15], length: 5, takes: ply}"
    ),
    opens=True,
    takes=True,
    cleared=True,
    drawn=True,
    by_mate="slots",
)
NOTCH = FeatureKind(
    name="notch",
    key="notch",
    noun="a notch",
    says="A slot from an edge inwards.",
    example=ByUnit(
        "{edge: top, at: 180, depth: 60, takes: ply}", "{edge: top, at: 7, depth: 2.5, takes: ply}"
    ),
    opens=True,
    on_edge=True,
    takes=True,
    cleared=True,
    outlined="notches",
    by_mate="notches",
)
HOLE = FeatureKind(
    name="hole",
    key="hole",
    noun="a hole",
    says="A round hole.",
    example=ByUnit("{at: [30, 30], diameter: 8}", "{at: [1, 1], diameter: 3/8 in}"),
    opens=True,
    drawn=True,
    by_mate="holes",
    round=True,
)
WINDOW = FeatureKind(
    name="window",
    key="window",
    noun="a window",
    says="An opening of any shape.",
    example=ByUnit(
        "{at: [180, 400], rounded-slot: [100, 30]}", "{at: [7, 16], rounded-slot: [4, 1]}"
    ),
    opens=True,
    cleared=True,
    drawn=True,
)
POCKET = FeatureKind(
    name="pocket",
    key="pocket",
    noun="a pocket",
    says="A recess of any shape to a depth.",
    example=ByUnit(
        "{at: [100, 100], rectangle: [60, 20], depth: 6}",
        "{at: [4, 4], rectangle: [2.5, 1], depth: 1/4 in}",
    ),
    takes=True,
    cleared=True,
    drawn=True,
    by_mate="housings",
)
GROOVE = FeatureKind(
    name="groove",
    key="groove",
    noun="a groove",
    says="A channel between two points.",
    example=ByUnit(
        "{from: [0, 40], to: [360, 40], takes: thin, depth: 6}",
        "{from: [0, 2], to: [14, 2], takes: thin, depth: 1/4 in}",
    ),
    takes=True,
    cleared=True,
    by_mate="grooves",
)
TAB = FeatureKind(
    name="tab",
    key="tabs",
    noun="a tab",
    says="Tabs that stand out of an edge.",
    example=ByUnit(
        "{edge: top, at: [60, 240], width: 60, depth: t}",
        "{edge: top, at: [2, 9], width: 2.5, depth: t}",
    ),
    on_edge=True,
    takes=True,
    outlined="tabs",
)
FINGERS = FeatureKind(
    name="fingers",
    key="fingers",
    noun="fingers",
    says="Fingers along a whole edge.",
    example=ByUnit("{edge: left, count: 5, takes: ply}", "{edge: left, count: 5, takes: ply}"),
    opens=True,
    on_edge=True,
    takes=True,
    by_mate="fingers",
)
ENGRAVING = FeatureKind(
    name="engraving",
    key="engrave",
    noun="an engraving",
    says="A text or drawing scratched into the face.",
    example=ByUnit(
        '{text: "18 mm", at: [180, 225], height: 12, depth: 0.5}',
        '{text: "3/4 in", at: [7, 9], height: 0.5, depth: 0.02}',
    ),
    drawn=True,
)
BORE = FeatureKind(
    name="bore",
    key="bore",
    noun="a bore",
    says="A round bore by hand into an edge.",
    example=ByUnit(
        "{edge: left, at: 50, diameter: 7, depth: 35}",
        "{edge: left, at: 2, diameter: 9/32 in, depth: 1-3/8 in}",
    ),
    on_edge=True,
    by_hand=True,
    round=True,
)
FEATURE_KINDS = (SLOT, NOTCH, HOLE, WINDOW, POCKET, GROOVE, TAB, FINGERS, ENGRAVING, BORE)
"""Every kind, in the order in which a plan's schema lists them."""
OUTLINED = tuple(kind for kind in FEATURE_KINDS if kind.outlined)
"""The kinds that are looked for in a drawn outline."""
