"""Panels joined at random so that all joints agree, for tests of walking and blaming.

The features are not drawn: a joint is two frames that coincide, as the joints of a plan are.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, sin
from random import Random

import numpy as np

from kerfolio.assembly.ends import End
from kerfolio.assembly.links import Link
from kerfolio.assembly.pairing import Pairing
from kerfolio.assembly.ways import Way
from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.model.feature_kind import SLOT
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.model.statement import Named
from kerfolio.settling.settled import SettledFeature, SettledJoint, SettledPart, Sized
from tests.plans import small_settled

_SIZE = Sized(30.0)


@dataclass(frozen=True)
class Tangle:
    """Places of pieces (that of the first is the origin) and links that agree with them."""

    poses: dict[str, Rigid]
    links: tuple[Link, ...]


def tangle(seed: int, pieces: int, loops: int, *, decoys: bool = False) -> Tangle:
    """Join pieces in a random tree and ``loops`` times more; every piece is a part of its own.

    With ``decoys`` each joint could go another way round as well.
    """
    random = Random(seed)
    labels = [f"piece-{n}" for n in range(pieces)]
    poses = {label: _pose(random) for label in labels}
    poses[labels[0]] = Rigid()
    pairs = [(labels[random.randrange(n)], labels[n]) for n in range(1, pieces)]
    while len(pairs) < pieces - 1 + loops:
        a, b = random.sample(labels, 2)
        pairs.append((a, b))
    links = tuple(_link(random, n, a, b, poses, decoys) for n, (a, b) in enumerate(pairs))
    return Tangle(poses, links)


def spoilt(link: Link, by: Vector) -> Link:
    """Return a link whose second feature was drawn elsewhere in its part's face, mm."""
    (way,) = link.ways
    ((first, second),) = way.pairs
    return replace(link, ways=(replace(way, pairs=((first, second.moved(by)),)),))


def pairings(links: tuple[Link, ...]) -> tuple[Pairing, ...]:
    return tuple(
        Pairing(n, 0, link.a.piece, link.b.piece, link.ways[0]) for n, link in enumerate(links)
    )


def _link(
    random: Random, number: int, a: str, b: str, poses: dict[str, Rigid], decoys: bool
) -> Link:
    world = _pose(random)
    pair = (poses[a].inverse.after(world), poses[b].inverse.after(world))
    ways = [Way(pairs=(pair,), face="back", rank=(0, 0))]
    if decoys:
        turned = Rigid((0.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, 1.0))
        other = (pair[0], pair[1].after(turned))
        ways.insert(random.randrange(2), replace(ways[0], pairs=(other,)))
        ways = [replace(way, number=n) for n, way in enumerate(ways)]
    ends = [Named(name=f"{piece}.joint-{number}") for piece in (a, b)]
    return Link(
        joint=SettledJoint(stated=Joint(kind=TAB_JOINT, a=ends[0], b=ends[1])),
        a=_end(a, number),
        b=_end(b, number),
        ways=tuple(ways),
    )


def _end(piece: str, number: int) -> End:
    part: SettledPart = replace(small_settled().parts[0], name=piece)
    feature = SettledFeature(
        name=f"joint-{number}",
        kind=SLOT,
        at=(0.0, 0.0),
        direction=(1.0, 0.0),
        width=_SIZE,
        length=_SIZE,
    )
    return End(piece=piece, part=part, features=(feature,))


def _pose(random: Random) -> Rigid:
    """Return a place anywhere within a metre, turned anyhow (a unit quaternion)."""
    w, x, y, z = _unit([random.gauss(0.0, 1.0) for _ in range(4)])
    rows = np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
        ]
    )
    one, two, three = (tuple(float(v) for v in rows[:, i]) for i in range(3))
    at = tuple(random.uniform(-500.0, 500.0) for _ in range(3))
    return Rigid(_triple(at), _triple(one), _triple(two), _triple(three))


def _unit(values: list[float]) -> list[float]:
    size = sum(v * v for v in values) ** 0.5
    return [v / size for v in values]


def _triple(values: tuple[float, ...]) -> Vector:
    x, y, z = values
    return x, y, z


def tilted(angle: float) -> Rigid:
    """Return a turn about x, radians."""
    c, s = cos(angle), sin(angle)
    return Rigid((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, c, s), (0.0, -s, c))
