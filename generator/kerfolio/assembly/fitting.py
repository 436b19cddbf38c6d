"""Where each piece of hardware goes when it is drawn out of its place, and what it follows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from kerfolio.assembly.assembled import Assembled, BuildOrder
from kerfolio.assembly.boards import PosedBoard
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.fastening_body import Body, Role
from kerfolio.assembly.placed import placed_in
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.plated import Plated
from kerfolio.geometry.rigid import Rigid, Vector, added, between, dot, length, scaled
from kerfolio.geometry.turned import Turned
from kerfolio.model.fastening import CROSS_NUT, Fastening
from kerfolio.model.stock import BoardStock, HardwareStock
from kerfolio.settling.settled import SettledBoard, SettledPlan

_AIR = 12.0
"""Between what is drawn out and the wood, or what is drawn out before it, mm."""

_BOARD_AIR = 2.5
"""How far a board is drawn from its piece, in its widths: past the edge that hides it."""


Shape = Panel | Plated | Turned
"""What has a shape of its own: a board, a bracket, a clamp and its screw."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """A piece of hardware or a board at home in ``frame`` (world), and how it is drawn out.

    It goes ``far`` mm along ``out`` (unit) from the piece ``follows``; where it may as well go the
    other way, ``either``. ``mouth`` is where it enters the wood. ``step`` is the one it is new in,
    ``number`` tells its fastening. ``pieces`` are those it joins. ``shape`` is a board as it is
    cut, or a bracket or a clamp, ``name`` what the plan calls a board.
    """

    item: HardwareStock | BoardStock
    role: Role
    frame: Rigid
    follows: str
    out: Vector
    far: float
    mouth: Vector
    pieces: tuple[str, ...]
    step: int
    number: int
    either: bool = False
    shape: Shape | None = None
    name: str = ""

    @property
    def length(self) -> float:
        """How long a piece of hardware or a board is, mm; 0 where that is not known."""
        if isinstance(self.item, HardwareStock):
            return self.item.length or 0.0
        assert isinstance(self.shape, Panel), "a board is cut to its length"
        return 2 * max(x for x, _ in self.shape.shape.outer)

    def turned(self, turn: Rigid) -> Fitting:
        """Return it with the whole turned."""
        return replace(
            self,
            frame=turn.after(self.frame),
            out=turn.vector(self.out),
            mouth=turn.point(self.mouth),
        )

    def drawn_out(self, away: Vector, to_viewer: Vector | None = None) -> Vector:
        """Return how far from home it is drawn, its piece being ``away``; towards the viewer where
        it may go either way.
        """
        back = self.either and to_viewer is not None and _behind(self.out, to_viewer)
        return added(away, scaled(self.out, -self.far if back else self.far))


def _behind(out: Vector, to_viewer: Vector) -> bool:
    return dot(out, to_viewer) < 0


def fittings_in(
    settled: SettledPlan, assembled: Assembled, order: BuildOrder
) -> tuple[Fitting, ...]:
    """Return the hardware and the boards of a plan put together, as far as they have a place."""
    placed = placed_in(settled, assembled)
    return fittings_of(placed.fastenings, order, placed.boards)


def fittings_of(
    fastenings: Sequence[PosedFastening], order: BuildOrder, boards: Sequence[PosedBoard] = ()
) -> tuple[Fitting, ...]:
    """Return the hardware of fastenings in the order of the plan, each with the step it is new in,
    and the boards after it.

    Where no step is stated that is the one in which the last of its pieces joins.
    """
    joins = {label: step.number for step in order.steps for label in step.added}
    first: dict[Fastening, int] = {}
    for number, fastening in enumerate(fastenings):
        first.setdefault(fastening.settled.stated, number)
    hardware = (
        each
        for number, fastening in enumerate(fastenings)
        for each in _fittings(
            fastening,
            first[fastening.settled.stated] if fastening.bracket else number,
            joins,
        )
    )
    timber = (_of_board(each, len(fastenings) + n, joins) for n, each in enumerate(boards))
    return (*hardware, *timber)


def _of_board(board: PosedBoard, number: int, joins: Mapping[str, int]) -> Fitting:
    return Fitting(
        item=board.board.stock,
        role=Role.BOARD,
        frame=board.frame,
        follows=board.piece,
        out=board.frame.z,
        far=_past_board(board.board),
        mouth=board.frame.origin,
        pieces=(board.piece,),
        step=board.step or joins.get(board.piece, 0),
        number=number,
        shape=board.panel,
        name=board.board.use.name,
    )


def _past_board(board: SettledBoard) -> float:
    """Return how far a board is drawn out, and what goes through it, too."""
    return _BOARD_AIR * min(board.stock.width, 8 * _AIR) + _AIR


def _fittings(
    fastening: PosedFastening, number: int, joins: Mapping[str, int]
) -> Iterator[Fitting]:
    settled = fastening.settled
    step = fastening.step or max((joins.get(each, 0) for each in settled.pieces), default=0)
    head = settled.under_head
    tail = settled.last.piece or head
    back, ahead = scaled(fastening.direction, -1.0), fastening.direction
    washer = settled.washer.height or 0.0 if settled.washer else 0.0
    clear = _AIR + washer if settled.washer else 0.0
    past = _past_board(settled.first.board) if settled.first.board else 0.0
    of_it = partial(Fitting, pieces=settled.pieces, step=step, number=number)
    if fastening.bracket or fastening.clamp:
        yield from _of_plate(fastening, of_it)
        return
    for body in fastening.bodies:
        made = partial(of_it, item=body.item, role=body.role, frame=body.frame)
        own = body.frame.origin
        if body.role is Role.NUT and body.item.kind == CROSS_NUT:
            assert settled.cross is not None, "its hole gave it its place"
            assert settled.cross.part is not None, "its hole gave it its place"
            far = settled.cross.part.thickness + _AIR
            follows = settled.cross.piece
            yield made(follows=follows, out=body.frame.z, far=far, mouth=own, either=True)
        elif body.role is Role.NUT:
            yield made(follows=tail, out=ahead, far=2 * _AIR, mouth=own)
        elif body.role is Role.WASHER and _past(fastening, body):
            yield made(follows=tail, out=ahead, far=_AIR, mouth=own)
        elif body.role is Role.WASHER:
            far = _AIR + past
            yield made(follows=head, out=back, far=far, mouth=fastening.frame.origin)
        elif body.role is Role.SHANK:
            far = (body.item.length or 0.0) + _AIR + clear + past
            yield made(follows=head, out=back, far=far, mouth=fastening.frame.origin)


def _of_plate(fastening: PosedFastening, of_it: partial[Fitting]) -> Iterator[Fitting]:
    """Yield a bracket or a clamp, and the screws that hold it: drawn out before it."""
    bracket, clamp = fastening.bracket, fastening.clamp
    follows = fastening.settled.first.piece
    if clamp is not None:
        way, far = scaled(clamp.frame.x, 1.0), clamp.deep + 2 * _AIR
    else:
        assert bracket is not None, "asked for by the caller"
        frame = bracket.frame
        way = scaled(added(frame.x, frame.y), 0.5**0.5)
        far = min(leg.reach for leg in bracket.legs) + _AIR
    for body in fastening.bodies:
        made = partial(of_it, item=body.item, role=body.role, frame=body.frame, follows=follows)
        if body.role is Role.FITTING:
            mouth = body.frame.origin
            yield made(out=way, far=far, mouth=mouth, shape=body.shape)
            continue
        out = scaled(way, far)  # a screw is drawn out past the other leg, so that none cross
        back = (body.item.length or 0.0) + far
        gone = added(out, scaled(body.frame.z, -back))
        reach = length(gone)
        mouth = added(body.frame.origin, out)
        yield made(out=scaled(gone, 1 / reach), far=reach, mouth=mouth)


def _past(fastening: PosedFastening, body: Body) -> bool:
    """Tell whether a washer lies under the nut."""
    return dot(fastening.direction, between(fastening.frame.origin, body.frame.origin)) > 1.0
