"""How much room a joint has: by its purpose, by how long it touches, by how many enter together.

Every clearance is linear in the sheet's fit, so that files follow any fit a reader chooses.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.said import stated_name
from kerfolio.model.joint import Joint, JointFit
from kerfolio.model.plan import Plan
from kerfolio.model.purpose import DROP_IN, GLUED, KNOCK_DOWN, PRESS, Purpose
from kerfolio.settling.scope import Scope
from kerfolio.settling.surroundings import Needs

_NOTHING = Needs()


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """The room of a feature on each side of what goes in, mm.

    ``width`` is that between a face and a wall, ``ends`` that at either end and at a notch's
    bottom. ``contact`` is how long the walls are, mm, and ``together`` how many features like it
    enter at once. ``asked`` says that a joint, an assembly or the plan states its fit, with its
    ``purpose`` where it has one; else both are the sheet's fit. ``needs`` is what finish and damp
    want of it, ``allowed`` how much of that is in ``width`` and in ``ends``: nothing of what is
    just as a maker states.
    """

    width: float
    ends: float
    contact: float = 0.0
    together: int = 1
    asked: bool = False
    purpose: Purpose | None = None
    needs: Needs = _NOTHING
    allowed: tuple[float, float] = (0.0, 0.0)

    @property
    def fit(self) -> float:
        """The fit between a face and a wall without what is allowed besides, mm a side."""
        return self.width - self.allowed[0]

    @property
    def fit_at_ends(self) -> float:
        """The fit at either end without what is allowed besides, mm."""
        return self.ends - self.allowed[1]

    @property
    def felt(self) -> float:
        """The play of a short joint of one or two features that is as tight as this one, mm a side.

        Long walls and many features use up some of what they have.
        """
        return self.fit - for_length(self.contact) - for_number(self.together)

    @property
    def filled(self) -> float:
        """What finish and damp take of the fit itself, where nothing is allowed for them; mm."""
        return max(0.0, self.needs.width - self.allowed[0])

    @property
    def left(self) -> float:
        """The play that is left when all is finished, and at its dampest, mm a side."""
        return self.width - self.needs.width

    @property
    def dry(self) -> float:
        """The play when all is finished, and as dry as it was cut, mm a side."""
        return max(0.0, self.left + self.needs.swelling)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a joint asks for: a purpose, or clearances of its own, mm a side."""

    purpose: Purpose | None = None
    width: float | None = None
    ends: float | None = None


AskedOfPart = Mapping[str, tuple[Asked | None, ...]]
"""What is asked of each feature of a part, by all joints that name it; None for the sheet's fit."""


@dataclass(frozen=True, slots=True)
class _Room:
    """A clearance as a share of the sheet's fit and so much more, mm a side."""

    share: float
    more: float

    def of(self, fit: float) -> float:
        return self.share * fit + self.more


BY_PURPOSE: dict[Purpose, tuple[_Room, _Room]] = {
    KNOCK_DOWN: (_Room(1.0, 0.0), _Room(1.0, 0.0)),
    GLUED: (_Room(1.0, 0.05), _Room(1.0, 0.1)),
    PRESS: (_Room(0.2, 0.0), _Room(1.0, 0.0)),
    DROP_IN: (_Room(1.0, 0.15), _Room(1.0, 0.4)),
}
"""The room between faces and that at the ends, by purpose; common practice, no single source.

The sheet's fit is that of a short joint that goes together by hand. A film of PVA is about 0.05 to
0.15 mm thick, and what is pressed out of it wants room at the ends. A press fit has a fifth of the
fit, never less than nothing, and plain room at the ends: driven in endways, plies split.
"""

_LONG, _PER_LENGTH, _MOST_LENGTH = 100.0, 0.0002, 0.06
_FEW, _PER_FEATURE, _MOST_FEATURES = 2, 0.01, 0.06
"""From what length on, mm, and from how many features on a joint has more room, how much for each
mm or feature beyond, and the most of it, mm a side; common practice, no single source: long walls
are never quite straight, and many features are never quite in step."""


def for_length(contact: float) -> float:
    """Return how much more room a joint has whose walls are ``contact`` mm long; mm a side."""
    return min(max(0.0, contact - _LONG) * _PER_LENGTH, _MOST_LENGTH)


def for_number(together: int) -> float:
    """Return how much more room each of so many features has that enter together; mm a side."""
    return min(max(0, together - _FEW) * _PER_FEATURE, _MOST_FEATURES)


def clearance_of(
    fit: float, asked: Asked | None, contact: float, together: int, needs: Needs = _NOTHING
) -> Clearance:
    """Return the room of a feature by what a joint asks for, and the sheet's ``fit``, mm a side.

    Walls ``contact`` mm long, and more than two features that enter ``together``, have more between
    their faces; at their ends only the number counts. What finish and damp want comes on top. A
    clearance of a maker's own is just that.
    """
    faces, ends = fit, fit
    if asked is not None and asked.purpose is not None:
        of_faces, of_ends = BY_PURPOSE[asked.purpose]
        faces = of_faces.of(fit) + for_length(contact) + for_number(together)
        ends = of_ends.of(fit) + for_number(together)
    own = (None, None) if asked is None else (asked.width, asked.ends)
    (width, wider), (long, longer) = (
        (found + more, more) if stated is None else (stated, 0.0)
        for stated, found, more in zip(
            own, (faces, ends), (max(needs.width, -faces), needs.ends), strict=True
        )
    )
    return Clearance(
        width=width,
        ends=long,
        contact=contact,
        together=together,
        asked=asked is not None,
        purpose=asked.purpose if asked else None,
        needs=needs,
        allowed=(wider, longer),
    )


def loosest(found: Sequence[Clearance]) -> Clearance:
    """Return the room of a feature that several joints name: the most that one of them asks for."""
    widest = max(found, key=lambda each: each.width)
    longest = max(found, key=lambda each: each.ends)
    return replace(
        widest,
        ends=longest.ends,
        asked=any(each.asked for each in found),
        allowed=(widest.allowed[0], longest.allowed[1]),
    )


def asked_of(plan: Plan, scope: Scope) -> Mapping[str, AskedOfPart]:
    """Return what joints ask of each part's features, by the part's name; empty where none does.

    A part is cut once: what is asked of one copy of a feature, or of one piece, is asked of all.
    Raises SettlingError.
    """
    if not any(fit for _, fit in plan.fits):
        return {}
    owners = {label: part.name for part in plan.parts for label in part.labels}
    found: dict[str, dict[str, tuple[Asked | None, ...]]] = {}
    for joint, fit in plan.fits:
        asked = None if fit is None else _asked(fit, scope)
        for part, feature in features_named(joint, owners):
            of_part = found.setdefault(part, {})
            every = of_part.get(feature, ())
            of_part[feature] = every if asked in every else (*every, asked)
    return found


def _asked(fit: JointFit, scope: Scope) -> Asked:
    return Asked(
        purpose=fit.purpose,
        width=None if fit.width is None else scope.not_negative(fit.width, "fit"),
        ends=None if fit.ends is None else scope.not_negative(fit.ends, "fit"),
    )


def features_named(joint: Joint, owners: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Yield the part and the feature that a joint names at each end, without a copy's number.

    ``owners`` are the parts' names by the labels of their pieces.
    """
    for end in (joint.a.name, joint.b.name):
        words = end.split(".")
        for count in range(len(words) - 1, 0, -1):  # the longest label first
            part = owners.get(".".join(words[:count]))
            if part is not None:
                yield part, stated_name(".".join(words[count:]))
                break
