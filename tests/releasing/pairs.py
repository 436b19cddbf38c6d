"""Pairs of releases with their right answers, fixed from the plans before anything was computed.

An older piece serves where it can be laid among the newer ones so that all its joints meet. Each
answer says why. "Derived" are the pairs in which one stated number moves features of several parts.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.releasing.change import State, Weight

STAND = """\
plan: Probe stand
version: 1.0.0
summary: Two sides, a rail, a stretcher and a top.
sizes:
  t: thickness(ply)
  wide: 300
  deep: 200
  high: 250
  rise: 150
  foot: 40
  over: 20
  tab: 60
  between: wide - 2*t
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.2, drawn-for: 17.8, fit: 0.1}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [deep, high]}
    features:
      rail-slot: {slot: {at: [deep/2, rise], length: tab, angle: 90, takes: ply}}
      stretcher-slot: {slot: {at: [deep/2, foot], length: 40, angle: 90, takes: ply}}
      top-tab: {tabs: {edge: top, at: deep/2 - tab/2, width: tab, depth: t}}
  rail:
    sheet: ply
    outline: {rectangle: [between, 90]}
    features:
      left-tab: {tabs: {edge: left, at: 45 - tab/2, width: tab, depth: t}}
      right-tab: {tabs: {edge: right, at: 45 - tab/2, width: tab, depth: t}}
  stretcher:
    sheet: ply
    outline: {rectangle: [between, 70]}
    features:
      left-tab: {tabs: {edge: left, at: 15, width: 40, depth: t}}
      right-tab: {tabs: {edge: right, at: 15, width: 40, depth: t}}
  top:
    sheet: ply
    outline: {rectangle: [wide + 2*over, deep]}
    features:
      left-slot: {slot: {at: [over + t/2, deep/2], length: tab, angle: 90, takes: ply}}
      right-slot: {slot: {at: [over + wide - t/2, deep/2], length: tab, angle: 90, takes: ply}}
joints:
  - {tab: rail.left-tab, into: side.left.rail-slot, show: out, looking: right}
  - {tab: rail.right-tab, into: side.right.rail-slot, show: out, looking: left}
  - {tab: stretcher.left-tab, into: side.left.stretcher-slot, show: out}
  - {tab: stretcher.right-tab, into: side.right.stretcher-slot, show: out}
  - {tab: side.left.top-tab, into: top.left-slot}
  - {tab: side.right.top-tab, into: top.right-slot}
hardware: [{item: bolt-m6x40, count: 2, for: sides}]
steps:
  - {title: Rail and stretcher, add: [side.left, rail, stretcher], people: 2, text: Push the tabs home.}
  - {title: Right side, add: [side.right], hardware: {bolt-m6x40: 2}, text: Push it on.}
  - {title: Top, add: [top], text: Lay it on.}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line

RACK = """\
plan: Probe rack
version: 1.0.0
summary: Two sides and a rail.
sizes: {t: thickness(ply), w: 300}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.2, drawn-for: 17.8, fit: 0.1}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [200, 120]}
    features:
      rail-slot: {slot: {at: [100, 60], length: 60, angle: 90, takes: ply}}
  rail:
    sheet: ply
    outline: {rectangle: [w, 120]}
    features:
      left-tab: {tabs: {edge: left, at: 30, width: 60, depth: t}}
      right-tab: {tabs: {edge: right, at: 30, width: 60, depth: t}}
joints:
  - {tab: rail.left-tab, into: side.left.rail-slot, show: out, looking: right}
  - {tab: rail.right-tab, into: side.right.rail-slot, show: out, looking: left}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line

CROSS = """\
plan: Probe cross
version: 1.0.0
summary: Two feet that cross.
sizes: {t: thickness(ply), long: 300, mid: long/2}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.2, drawn-for: 17.8, fit: 0.1}
parts:
  upper:
    sheet: ply
    outline: {rectangle: [long, 100]}
    features: {cross: {notch: {edge: bottom, at: mid, depth: 50, takes: ply}}}
  lower:
    sheet: ply
    outline: {rectangle: [long, 100]}
    features: {cross: {notch: {edge: top, at: mid, depth: 50, takes: ply}}}
joints: [{notch: upper.cross, with: lower.cross}]
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line

BOX = """\
plan: Probe box
version: 1.0.0
summary: Four walls with fingers.
sizes: {t: thickness(ply), wide: 200, deep: 150, high: 90, count: 3}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.2, drawn-for: 17.8, fit: 0.1}
parts:
  front:
    sheet: ply
    pieces: [near, far]
    outline: {rectangle: [wide, high]}
    features:
      left: {fingers: {edge: left, count: 3, takes: ply, first: finger}}
      right: {fingers: {edge: right, count: 3, takes: ply, first: finger}}
  end:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [deep, high]}
    features:
      left: {fingers: {edge: left, count: 3, takes: ply, first: gap}}
      right: {fingers: {edge: right, count: 3, takes: ply, first: gap}}
joints:
  - {fingers: front.near.left, with: end.left.right}
  - {fingers: front.near.right, with: end.right.left}
  - {fingers: front.far.left, with: end.right.right}
  - {fingers: front.far.right, with: end.left.left}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line

Changes = tuple[tuple[str, str], ...]


@dataclass(frozen=True, kw_only=True)
class Case:
    """A plan with what differs in its older and its newer release, and the right answer."""

    plan: str = STAND
    base: Changes = ()
    change: Changes = ()
    weight: Weight
    anew: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    together: tuple[tuple[str, ...], ...] = ()
    states: tuple[tuple[str, State], ...] = ()
    derived: bool = False
    why: str


SIDES = ("side.left", "side.right")
ALL = ("side.left", "side.right", "rail", "stretcher", "top")
_SLOT = "rail-slot: {slot: {at: [deep/2, rise]"
_HOLE = "      top-tab:"
_TABS = (
    (
        "top-tab: {tabs: {edge: top, at: deep/2 - tab/2, width: tab, depth: t}}",
        "top-tab: {tabs: {edge: top, at: [20, deep - 20 - tab], width: tab, depth: t}}",
    ),
    *(
        (
            f"at: [{x}, deep/2], length: tab, angle: 90, takes: ply}}}}",
            f"at: [{x}, {y}], length: tab, angle: 90, takes: ply}}, "
            f"repeat: {{count: 2, step: [0, {step}]}}}}",
        )
        # The sides' show faces look outward: on the left their tabs run from the rear to the front.
        for x, y, step in (
            ("over + t/2", "deep - 20 - tab/2", "40 + tab - deep"),
            ("over + wide - t/2", "20 + tab/2", "deep - 40 - tab"),
        )
    ),
)
_OFF_CENTRE = (
    (_SLOT, "rail-slot: {slot: {at: [deep/2 + 30, rise]"),
    # Both sides look the same way, or the slots would lie across from each other.
    (
        "into: side.left.rail-slot, show: out, looking: right",
        "into: side.left.rail-slot, show: out",
    ),
    (
        "into: side.right.rail-slot, show: out, looking: left",
        "into: side.right.rail-slot, show: in",
    ),
    ("into: side.right.stretcher-slot, show: out", "into: side.right.stretcher-slot, show: in"),
)
_MIRRORED = (("[deep/2 + 30, rise]", "[deep/2 - 30, rise]"),)
_POCKET = (
    (_HOLE, "      bed: {pocket: {at: [deep/2, 200], length: 30, takes: ply, depth: 5}}\n" + _HOLE),
)
_STRETCHER = (
    "      stretcher-slot: {slot: {at: [deep/2, foot], length: 40, angle: 90, takes: ply}}\n"
)
_HANGING = (("rise: 150", "rise: high - 100"), ("foot: 40", "foot: high - 210"))

CASES: dict[str, Case] = {
    "slot moved": Case(
        change=(("rise: 150", "rise: 162"),),
        weight=Weight.CORRECTION,
        anew=SIDES,
        states=(("side", State.CHANGED), ("rail", State.SAME)),
        why="The rail's slot lies elsewhere between the stretcher's and the top's tab.",
    ),
    "longer rail": Case(
        plan=RACK,
        change=(("w: 300", "w: 320"),),
        weight=Weight.CORRECTION,
        anew=("rail",),
        why="Its tabs are further apart than the sides would stand.",
    ),
    "text only": Case(
        change=(("text: Lay it on.", "text: Lay it on and press it down."),),
        weight=Weight.WORDS,
        why="No edge moved.",
    ),
    "summary only": Case(
        change=(("summary: Two sides", "summary: A pair of sides"),),
        weight=Weight.WORDS,
        why="No edge moved.",
    ),
    "new fit": Case(
        change=(("fit: 0.1", "fit: 0.16"),),
        weight=Weight.BETTER,
        states=(("side", State.CHANGED), ("rail", State.SAME)),
        derived=True,
        why="Slots got wider in sides and top; tabs stayed, so either slot takes them.",
    ),
    "renamed part": Case(
        change=(("  side:", "  cheek:"), ("side.", "cheek.")),
        weight=Weight.WORDS,
        states=(("cheek", State.SAME),),
        why="The same pieces by another name.",
    ),
    "renamed feature": Case(
        change=(("rail-slot", "beam-slot"),), weight=Weight.WORDS, why="The same slot."
    ),
    "mirrored, mates in the middle": Case(
        base=((_HOLE, "      hole: {hole: {at: [30, 200], diameter: 8}}\n" + _HOLE),),
        change=(("at: [30, 200]", "at: [deep - 30, 200]"),),
        weight=Weight.BETTER,
        states=(("side", State.MIRRORED),),
        why="Only a hole that nothing meets changed sides: the piece serves as it lay.",
    ),
    "mirrored": Case(
        base=_OFF_CENTRE,
        change=_MIRRORED,
        weight=Weight.BETTER,
        over=SIDES,
        states=(("side", State.MIRRORED),),
        derived=True,
        why="Everything goes through, so that an older side turned over is a newer one.",
    ),
    "mirrored, a pocket in one face": Case(
        base=(*_OFF_CENTRE, *_POCKET),
        change=_MIRRORED,
        weight=Weight.CORRECTION,
        anew=SIDES,
        derived=True,
        why="Turned over, the pocket would lie on the other face.",
    ),
    "range widened": Case(
        change=(("17.4 to 18.2", "17 to 18.6"),),
        weight=Weight.BETTER,
        why="At every thickness of the older range all edges are where they were.",
    ),
    "order of steps": Case(
        change=(
            ("  - {title: Top, add: [top], text: Lay it on.}\n", ""),
            ("steps:\n", "steps:\n  - {title: Top, add: [top], text: Lay it on.}\n"),
        ),
        weight=Weight.WORDS,
        why="No edge moved.",
    ),
    "hardware": Case(
        change=(("count: 2", "count: 4"), ("{bolt-m6x40: 2}", "{bolt-m6x40: 4}")),
        weight=Weight.BETTER,
        why="More to buy, nothing to cut.",
    ),
    "a hole that nothing meets": Case(
        change=((_HOLE, "      grip: {hole: {at: [deep/2, 210], diameter: 20}}\n" + _HOLE),),
        weight=Weight.BETTER,
        states=(("side", State.CHANGED),),
        why="All its joints are where they were.",
    ),
    "wider": Case(
        change=(("wide: 300", "wide: 320"),),
        weight=Weight.CORRECTION,
        anew=("rail", "stretcher", "top"),
        states=(("side", State.SAME),),
        derived=True,
        why="What spans the sides became longer; the sides stayed as they are.",
    ),
    "deeper": Case(
        change=(("deep: 200", "deep: 240"),),
        weight=Weight.BETTER,
        states=(("side", State.CHANGED), ("top", State.CHANGED)),
        derived=True,
        why="All that meets lies in the middle: it moved with the edge that is measured from.",
    ),
    "higher": Case(
        change=(("high: 250", "high: 270"),),
        weight=Weight.CORRECTION,
        anew=SIDES,
        derived=True,
        why="The top's tab moved away from both slots.",
    ),
    "longer feet": Case(
        base=_HANGING,
        change=(("high: 250", "high: 270"),),
        weight=Weight.BETTER,
        derived=True,
        why="All that meets is measured from the top: only the feet became longer.",
    ),
    "wider overhang": Case(
        change=(("over: 20", "over: 30"),),
        weight=Weight.BETTER,
        states=(("top", State.CHANGED),),
        derived=True,
        why="Both slots moved with the edge that they are measured from.",
    ),
    "tabs further apart": Case(
        base=_TABS,
        change=(("deep: 200", "deep: 220"),),
        weight=Weight.BETTER,
        together=(("side.left", "side.right", "top"),),
        derived=True,
        why="Older sides fit the older top alone; rail and stretcher go with either.",
    ),
    "narrower tabs": Case(
        change=(("tab: 60", "tab: 50"),),
        weight=Weight.BETTER,
        together=(("side.left", "side.right", "rail", "top"),),
        states=(("stretcher", State.SAME),),
        derived=True,
        why="An older tab goes into no newer slot, and rattles the other way about.",
    ),
    "tabs of one joint wider": Case(
        change=(
            ("at: [deep/2, rise], length: tab", "at: [deep/2, rise], length: 70"),
            ("edge: left, at: 45 - tab/2, width: tab", "edge: left, at: 10, width: 70"),
            ("edge: right, at: 45 - tab/2, width: tab", "edge: right, at: 10, width: 70"),
        ),
        weight=Weight.BETTER,
        together=(("side.left", "side.right", "rail"),),
        why="Rail and sides need each other's release; the rest meets both.",
    ),
    "another sheet": Case(
        change=(
            ("birch-plywood-18", "birch-plywood-12"),
            ("17.4 to 18.2, drawn-for: 17.8", "11.4 to 12.2, drawn-for: 11.8"),
        ),
        weight=Weight.CORRECTION,
        anew=ALL,
        derived=True,
        why="No sheet is both 12 and 18 mm thick.",
    ),
    "a part more": Case(
        change=(
            (
                _HOLE,
                "      brace-slot: {slot: {at: [deep/2, 95], length: 20, angle: 90, takes: ply}}\n"
                + _HOLE,
            ),
            (
                "  top:\n",
                "  brace:\n    sheet: ply\n    outline: {rectangle: [between, 40]}\n    features:\n"
                "      left-tab: {tabs: {edge: left, at: 10, width: 20, depth: t}}\n"
                "      right-tab: {tabs: {edge: right, at: 10, width: 20, depth: t}}\n  top:\n",
            ),
            (
                "joints:\n",
                "joints:\n  - {tab: brace.left-tab, into: side.left.brace-slot, show: out}\n"
                "  - {tab: brace.right-tab, into: side.right.brace-slot, show: out}\n",
            ),
            ("rail, stretcher]", "rail, stretcher, brace]"),
        ),
        weight=Weight.CORRECTION,
        anew=SIDES,
        states=(("brace", State.NEW),),
        why="An older side has no slot for it.",
    ),
    "a part fewer": Case(
        change=(
            (_STRETCHER, ""),
            (STAND[STAND.index("  stretcher:") : STAND.index("  top:\n")], ""),
            ("  - {tab: stretcher.left-tab, into: side.left.stretcher-slot, show: out}\n", ""),
            ("  - {tab: stretcher.right-tab, into: side.right.stretcher-slot, show: out}\n", ""),
            ("rail, stretcher]", "rail]"),
        ),
        weight=Weight.BETTER,
        states=(("stretcher", State.GONE), ("side", State.CHANGED)),
        why="A slot that nothing goes into harms nothing.",
    ),
    "crossing moved": Case(
        plan=CROSS,
        change=(("mid: long/2", "mid: long/3"),),
        weight=Weight.BETTER,
        derived=True,
        why="One joint alone: an older foot crosses a newer one; its ends stand out more.",
    ),
    "crossing deeper in one": Case(
        plan=CROSS,
        base=(
            ("edge: top, at: mid, depth: 50", "edge: top, at: mid, depth: 100 - down"),
            ("edge: bottom, at: mid, depth: 50", "edge: bottom, at: mid, depth: down"),
            ("mid: long/2", "mid: long/2, down: 50"),
        ),
        change=(("down: 50", "down: 60"),),
        weight=Weight.BETTER,
        derived=True,
        why="The bottoms still meet: an older foot crosses a newer one, edges 10 mm apart.",
    ),
    "wider box": Case(
        plan=BOX,
        change=(("wide: 200", "wide: 230"),),
        weight=Weight.CORRECTION,
        anew=("front.near", "front.far"),
        states=(("end", State.SAME),),
        derived=True,
        why="The ends are as they were; between them is more room.",
    ),
    "larger box": Case(
        plan=BOX,
        change=(("wide: 200", "wide: 230"), ("deep: 150", "deep: 170")),
        weight=Weight.CORRECTION,
        anew=("front.near", "front.far", "end.left", "end.right"),
        derived=True,
        why="Every wall is longer, and each is held between two others.",
    ),
    "more fingers": Case(
        plan=BOX,
        change=(("count: 3, takes", "count: 5, takes"),),
        weight=Weight.BETTER,
        together=(("front.near", "front.far", "end.left", "end.right"),),
        why="Older rows fill older rows alone.",
    ),
}
