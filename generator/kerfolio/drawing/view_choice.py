"""From where each step is looked at: so that what is new and where it goes can be seen."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from kerfolio.assembly.lying import Shown
from kerfolio.drawing.joint_edges import joint_edges
from kerfolio.drawing.scene import Scene, step_scene
from kerfolio.drawing.wall import is_shown
from kerfolio.geometry.facing import Solids, extent_of
from kerfolio.geometry.rigid import added
from kerfolio.geometry.shown import Line, crowding, sharp_edges, shown_shares
from kerfolio.geometry.view import View

AZIMUTHS = (-32.0, 32.0, -58.0, 58.0, -122.0, 122.0, -148.0, 148.0)
"""Eight sides, the two usual ones first; none along a corner's bisector, where edges that run
across one another would fall into one line."""
ABOVE, BELOW = 28.0, -25.0

_JOINTS, _GUIDES, _OUTLINE, _AXES = 0.45, 0.2, 0.35, 0.35
_AXES_ALONE = 0.8
"""The same of a step that adds no piece."""
_FROM_BELOW, _FROM_BEHIND = 0.08, 0.08
"""What a view loses since things are seldom looked at so."""
_CHANGE = 0.15
"""What a change of view costs the reader, who must find the way about again."""

_BARRED = -9.0
"""What a view is worth that must not be taken."""

_PLAIN = 0.4
"""A step shown this well is plain: a reader who sees it so needs no rarer view."""

_TURNS = (0.0, 2.5, -2.5, 4.0, -4.0)
_PICTURE = (100.0, 75.0)
"""About how large a step is drawn, mm."""
_NEAR, _SAME = 0.5, 0.12
"""Contours between these distances on paper, mm, run together in print."""
_MOST = 60
"""Edges of a new piece that are looked at, its longest."""


def candidates() -> tuple[View, ...]:
    """Return the sixteen views that are tried: eight sides, from above and from below."""
    return tuple(View(side, height) for height in (ABOVE, BELOW) for side in AZIMUTHS)


def chosen_views(steps: Sequence[Shown]) -> tuple[View, ...]:
    """Return a view for each step, the best for all together when every change has its price.

    A step's view is worth the share it shows of the joints of the step, of the guide lines and
    of the new pieces' edges. The views taken are then turned by up to 4 degrees where contours
    would run close beside one another.
    """
    if not steps:
        return ()
    views = candidates()
    worth = [step_worths(step, views) for step in steps]
    taken = _best_row(worth, _CHANGE)
    turned = {
        which: _uncrowded(step, views[which])
        for which, step in zip(taken, steps, strict=True)  # the last of a view is the fullest
    }
    return tuple(turned[which] for which in taken)


def step_worths(shown: Shown, views: Sequence[View]) -> list[float]:
    """Return what each view is worth for a step, about 0 to 1.

    Views from the front and above are tried first, then those from behind, then from below; once
    the step is plain, the rest are not tried and count 0. Work that lies is seen from above alone.
    """
    scene = step_scene(shown.assembled, shown.step)
    lines, solids = _interests(scene, _axes(shown, scene)), scene.solids()
    known: dict[View, float] = {}
    for rank in range(2 if shown.lying else 3):
        if max(known.values(), default=0.0) < _PLAIN:
            known |= {each: _worth(solids, each, lines) for each in views if _rank(each) == rank}
    barred = {view for view in views if shown.lying and view.from_below}
    barred |= {view for view in views if shown.wall and not is_shown(view)}
    return [_BARRED if view in barred else known.get(view, 0.0) for view in views]


def _rank(view: View) -> int:
    return 2 if view.from_below else int(abs(view.azimuth) > 90)


@dataclass(frozen=True, slots=True)
class _Interests:
    """The lines of a step that its picture should show; ``axes`` are those of its hardware."""

    joints: tuple[Line, ...]
    guides: tuple[Line, ...]
    outline: tuple[Line, ...]
    axes: tuple[Line, ...]


def _axes(shown: Shown, scene: Scene) -> tuple[Line, ...]:
    """Return the ways that the hardware of a step goes in, from where its heads are drawn.

    What may come from either side is seen from the one or the other anyway.
    """
    return tuple(
        (added(each.frame.origin, each.drawn_out(away)), added(each.mouth, away))
        for each in shown.fittings
        if each.step == shown.step.number and not each.either
        for away in (scene.away[each.follows],)
    )


def _interests(scene: Scene, axes: tuple[Line, ...]) -> _Interests:
    solids = {piece.label: scene.posed(piece) for piece in scene.pieces}
    open_joints = scene.open_joints()
    joints = [line for each in open_joints for edges in joint_edges(each, solids) for line in edges]
    outline = [line for label in sorted(scene.new) for line in sharp_edges(solids[label], _MOST)]
    guides = tuple(each.ends for each in open_joints)
    return _Interests(tuple(joints), guides, tuple(outline), axes)


def _worth(solids: Solids, view: View, lines: _Interests) -> float:
    sets = (lines.joints, lines.guides, lines.outline, lines.axes)
    joints, guides, outline, axes = shown_shares(solids, view, sets)
    worth = _JOINTS * joints + _GUIDES * guides + _OUTLINE * outline
    if not lines.joints and not lines.guides:
        worth = outline
    worth += (_AXES if lines.outline else _AXES_ALONE) * axes
    worth -= _FROM_BELOW if view.from_below else 0.0
    return worth - (_FROM_BEHIND if abs(view.azimuth) > 90 else 0.0)


def _best_row(worth: Sequence[Sequence[float]], change: float) -> list[int]:
    """Return a choice for each row that is worth most in all, less the price of the changes.

    Rows are gone through once, keeping for every choice the best way to it (Viterbi's method).
    Ties go to the earlier choice.
    """
    totals, ways = list(worth[0]), [[-1] * len(worth[0])]
    for row in worth[1:]:
        leader = max(range(len(totals)), key=lambda each: (totals[each], -each))
        before = [
            each if totals[each] >= totals[leader] - change else leader for each in range(len(row))
        ]
        totals = [
            totals[was] - (change if was != each else 0.0) + row[each]
            for each, was in enumerate(before)
        ]
        ways.append(before)
    last = max(range(len(totals)), key=lambda each: (totals[each], -each))
    found = [last]
    for before in reversed(ways[1:]):
        found.append(before[found[-1]])
    return found[::-1]


def _uncrowded(shown: Shown, view: View) -> View:
    """Return the view turned a little to where the contours of a step crowd least."""
    solids = step_scene(shown.assembled, shown.step).solids()
    turned = [View(view.azimuth + turn, view.elevation) for turn in _TURNS]
    return min(turned, key=partial(_crowding, solids))


def _crowding(solids: Solids, view: View) -> float:
    left, bottom, right, top = extent_of(solids, view)
    mm = max((right - left) / _PICTURE[0], (top - bottom) / _PICTURE[1])
    return round(crowding(solids, view, _NEAR * mm, _SAME * mm) / mm, 1)
