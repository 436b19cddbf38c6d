"""Checks of boards in their place: what they lie on, what they meet, and the screws into them."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from kerfolio.assembly.boards import PosedBoard, board_under, met_at
from kerfolio.assembly.building import Build, Fitted
from kerfolio.assembly.go_together import LEAST_CLASH, LEAST_DEPTH
from kerfolio.basis.finding import Beside, Finding, Meeting, Severity, error, warning
from kerfolio.basis.measures import length, number
from kerfolio.basis.names import did_you_mean, split_feature
from kerfolio.basis.said import said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_shared import shared
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.rigid import between, dot, scaled
from kerfolio.model.plan import BoardPlace, BoardUse
from kerfolio.proving.in_place import InPlace, beside, over_range
from kerfolio.proving.naming import is_unread, pieces_of
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, OWN_FIGURES, Stated, before, together
from kerfolio.proving.screws import FROM_EDGE
from kerfolio.settling.fastened import FACES, OUTWARD

TOUCHED = 0.5
"""So deep, mm, a board is pressed into a piece to see how much of it lies there."""

HELD = 100.0
"""Less than this of a board on its piece, mm2, is no seat (our own choice): 10 by 10 mm."""


@before(
    "board-place",
    reason="A board lies on a face or a side of a piece that there is.",
    source=OUR_FORM,
)
def places_known(stated: Stated) -> Iterator[Finding]:
    """Look for boards that lie on what there is not, or that are fewer than their places."""
    pieces = pieces_of(stated.plan)
    titles = [step.title for step in stated.plan.steps]
    for board in stated.plan.boards:
        if len(board.lies) > board.count:
            figures = number("places", len(board.lies)), number("count", board.count)
            message = said("`{}` has {} places, and there are {}", board.name, *figures)
            advice = "State as many under `count`, or take places out of `lies`."
            yield error("board-place", message, board.place, advice, subject=board.name)
        for each in board.lies:
            if not is_unread(each.on.name, stated.plan):
                yield from _unknown(board, each, pieces, titles)


def _unknown(
    board: BoardUse, each: BoardPlace, pieces: Collection[str], titles: list[str]
) -> Iterator[Finding]:
    piece, face = split_feature(each.on.name, pieces)
    sides = (*FACES, *OUTWARD)
    if not piece:
        message = f"no piece for `{each.on.name}`"
        known = [f"{label}.{side}" for label in pieces for side in sides]
        advice = did_you_mean(each.on.name, known)
        yield error("board-place", message, each.on.place, advice, subject=board.name)
    elif face not in sides:
        message = f"`{each.on.name}` is no face of `{piece}`, and no side"
        advice = f"Write `{piece}.back` or `{piece}.show`, or a side: `{piece}.left`."
        yield error("board-place", message, each.on.place, advice, subject=board.name)
    if each.step is not None and each.step.name not in titles:
        message, advice = f"no step `{each.step.name}`", did_you_mean(each.step.name, titles)
        yield error("board-place", message, each.step.place, advice, subject=board.name)


@together(
    "board-beside",
    reason="A board is held by what it lies on.",
    source=OWN_FIGURES,
    also=("board-clash",),
)
def boards_lie(build: Build) -> Iterator[Finding]:
    """Look for boards that touch nothing where they lie, or need the space of a piece."""

    def look(fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
        for board in fitted.boards:
            if board.piece not in off:
                yield from _lying(board, fitted, off)

    return over_range(build, look)


def _lying(board: PosedBoard, fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
    pieces = [each for each in fitted.together.assembled.pieces if each.label not in off]
    solid = solid_of(board.panel)
    there = [Posed(solid_of(each.panel), each.pose) for each in pieces]
    pressed = Posed(solid, board.frame.moved(scaled(board.frame.z, -TOUCHED)))
    own = next(i for i, each in enumerate(pieces) if each.label == board.piece)
    name = board.board.use.name
    (seat,) = (overlap_volumes([(pressed, there[own])]) / TOUCHED).tolist()
    if seat < HELD:
        message = said("`{}` lies beside `{}`: {} of it is on it", name, board.piece, _area(seat))
        advice = "Move its middle with `at`, which counts from the part's 0,0."
        yield error("board-beside", message, board.place, advice, **_on(board, board.piece, fitted))
    placed = Posed(solid, board.frame)
    volumes = overlap_volumes([(placed, each) for each in there]).tolist()
    for piece, posed, volume in zip(pieces, there, volumes, strict=True):
        space = shared(placed, posed) if volume > LEAST_CLASH else None
        if space is not None and space.depth > LEAST_DEPTH:
            deep = length("depth", space.depth)
            message = said("`{}` is {} deep in `{}`", name, deep, piece.label)
            advice = "Move it with `at` of `lies`, make it shorter, or cut the piece out for it."
            what = _on(board, piece.label, fitted)
            yield error("board-clash", message, board.place, advice, **what)


def _on(board: PosedBoard, piece: str, fitted: Fitted) -> Beside:
    """Return what a finding on a board has besides its words."""
    variant = fitted.settled.variant.label
    meeting = Meeting(pieces=(board.label,), others=(piece,), variant=variant)
    return {"subject": board.board.use.name, "meeting": meeting}


def _area(mm2: float) -> str:
    return "nothing" if mm2 < 1.0 else "less than 1 cm2"


@together(
    "screw-misses-board",
    reason="A screw holds in the middle of a board, and splits its edge.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def screws_meet_boards(build: Build) -> Iterator[Finding]:
    """Look for screws that go beside the board they end in or come through, or near its edge."""

    def look(fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
        for each in fitted.fastenings:
            board = board_under(each, fitted.boards)
            if board is not None and {*each.settled.pieces, board.piece}.isdisjoint(off):
                there = InPlace(
                    posed=each, settled=fitted.settled, pieces=fitted.together.assembled.pieces
                )
                yield from _met(there, board)

    return over_range(build, look)


def _met(there: InPlace, board: PosedBoard) -> Iterator[Finding]:
    each = there.posed
    x, y, _ = met_at(each, board)
    long, wide = board.panel.shape.outer[2]
    left, outward = min(
        (long - abs(x), scaled(board.frame.x, 1.0 if x > 0 else -1.0)),
        (wide - abs(y), scaled(board.frame.y, 1.0 if y > 0 else -1.0)),
    )
    least = FROM_EDGE * (each.settled.item.thread or 0.0)
    if left >= least - SAME:
        return
    seat, place = each.settled.first, each.settled.stated.place
    items = each.settled.item.name, seat.called, board.board.use.name
    if left < 0:
        message = said("`{}` in {} goes past `{}`, {} beside it", *items, length("off", -left))
    else:
        item, called, name = items
        near = length("distance", left)
        message = said("`{}` in {} is {} from an edge of `{}`", item, called, near, name)
    advice = said("Keep {}, two diameters of the screw.", length("least", least))
    at = dot(between(each.frame.origin, board.frame.origin), each.direction)
    what = there.about(
        seat,
        beside(at, abs(left), "away" if left > 0 else "beside it"),
        aside=scaled(outward, 1.0 if left > 0 else -1.0),
        others=(board.label,),
    )
    yield warning("screw-misses-board", message, place, advice, **what)
