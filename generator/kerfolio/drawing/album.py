"""What a finding is shown by: the part with its place, the pieces as they meet, or a sketch."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.assembled import Assembled, PosedJoint, PosedPiece
from kerfolio.assembly.ends import End, end_of, pieces_of
from kerfolio.assembly.extent import corners, reach
from kerfolio.assembly.placed import Placed, placed_in
from kerfolio.assembly.poses import Together, put_together
from kerfolio.basis.finding import Axial, Finding, Mark, Meeting, Ring
from kerfolio.drawing.block import seated
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of_contours, extent, padded
from kerfolio.drawing.fastening_view import along_fastening, axial_view, bored_alone
from kerfolio.drawing.finding_view import finding_view
from kerfolio.drawing.meeting_view import Shown, meeting_view, planes_at
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.sketch_view import sketch_view
from kerfolio.drawing.standing_view import standing_view
from kerfolio.drawing.vocabulary import Drawing, Item
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.panel_shared import shared
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.rigid import Vector, length, scaled
from kerfolio.model.joint import Joint
from kerfolio.settling.making import one_of
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_AIR = 3.0
_BESIDE = 8.0
_TRIED = 48
"""So many places along a move are tried for the one at which pieces touch."""
_AROUND = 12.0
"""The cut shows so much round a joint, mm."""


class Album:
    """A plan at the points its findings are shown at; what is put together for one serves all.

    ``points`` may lack parts that do not settle, and come as drawn first. Where no point is named
    or known, the first serves that has the part. ``whole`` is all of a set in its place.
    """

    def __init__(self, points: Sequence[SettledPlan], whole: Assembled | None = None) -> None:
        self._points, self._whole = points, whole
        self._made: dict[tuple[int, int], Together | None] = {}

    def picture(self, finding: Finding, measured: str | None = None) -> Drawing | None:
        """Return what shows where a finding is; None where it is about no shape and no joint.

        ``measured`` tells that it is about a joint, and what is to be measured there: ``x`` along
        the joint, ``y`` across it, ``z`` the way the first piece goes; empty: how far the two are
        off. None where it is about no joint.
        """
        if finding.sketch:
            return sketch_view(finding.sketch)
        stated = finding.axial or finding.meeting or finding.mark
        settled = self._at(stated.variant if stated else "")
        if settled is None:
            return None
        if finding.axial:
            return self._along(finding, finding.axial, settled)
        if finding.meeting:
            return self._of_pieces(finding, finding.meeting, settled)
        if measured is not None:
            joint = _joint_of(finding, settled)
            if joint is not None:
                return self._of_joint(finding, joint, measured, settled)
        return self._of_part(finding, settled)

    def _at(self, label: str) -> SettledPlan | None:
        named = (each for each in self._points if each.variant.label == label)
        return next(named, self._points[0] if self._points else None)

    def _of_part(self, finding: Finding, settled: SettledPlan) -> Drawing | None:
        mark = finding.mark or _mark_of(finding.subject, settled)
        if mark is None:
            return None
        part = next((each for each in settled.parts if each.name == mark.part), None)
        if part is None:
            return None
        named = end_of(finding.subject, {part.name: part})
        return finding_view(settled, part, mark, _shapes(named.features if named else ()))

    def _each(self, settled: SettledPlan) -> Iterator[tuple[SettledPlan, Together]]:
        """Yield each thing that a plan makes as a plan of its own, put together."""
        for number, stated in enumerate(settled.plan.made):
            key, one = (id(settled), number), one_of(settled, stated)
            if key not in self._made:
                self._made[key] = put_together(one)
            made = self._made[key]
            if made is not None:
                yield one, made

    def _together(self, settled: SettledPlan) -> Iterator[Together]:
        return (together for _, together in self._each(settled))

    def _along(self, finding: Finding, axial: Axial, settled: SettledPlan) -> Drawing | None:
        """Return a fastening in its place, or a bore in its part."""
        title, unit = _title(settled, finding), settled.plan.units
        if not axial.number:
            bored = bored_alone(settled, axial.bore)
            return axial_view(bored, axial, title, unit) if bored else None
        for one, together in self._each(settled):
            placed = placed_in(one, together.assembled)
            there = _with_boards(together.assembled, placed)
            for posed in placed.fastenings:
                stated = posed.settled.stated
                if (stated.place, posed.settled.number) == (axial.place, axial.number):
                    labels = {*posed.settled.pieces, *axial.others}
                    pieces = [each for each in there if each.label in labels]
                    return axial_view(along_fastening(posed, pieces), axial, title, unit)
        return self._of_part(finding, settled)

    def _of_pieces(
        self, finding: Finding, meeting: Meeting, settled: SettledPlan
    ) -> Drawing | None:
        for assembled, there in self._wholes(settled, grounded=meeting.grounded):
            pieces = {each.label: each for each in there}
            if all(each in pieces for each in (*meeting.pieces, *meeting.others)):
                moving = tuple(pieces[each] for each in meeting.pieces)
                others = tuple(pieces[each] for each in meeting.others)
                title, unit = _title(settled, finding), settled.plan.units
                if meeting.grounded:
                    return standing_view(moving, others, meeting.measured, title, unit)
                shown = _shown(meeting, moving, others, assembled, finding, settled)
                return meeting_view(shown, title, unit)
        return self._of_part(finding, settled)

    def _wholes(
        self, settled: SettledPlan, *, grounded: bool
    ) -> Iterator[tuple[Assembled, tuple[PosedPiece, ...]]]:
        """Yield what is put together, with its pieces and boards; a set first where that counts."""
        if grounded and self._whole:
            yield self._whole, self._whole.pieces
        for one, together in self._each(settled):
            yield (
                together.assembled,
                _with_boards(together.assembled, placed_in(one, together.assembled)),
            )

    def _of_joint(
        self, finding: Finding, joint: Joint, measured: str, settled: SettledPlan
    ) -> Drawing | None:
        for together in self._together(settled):
            found = _posed_joint(finding, joint, together)
            if found is None:
                continue
            posed, off = found
            one, other = (together.assembled.piece(label) for label in (posed.a, posed.b))
            frame = posed.frame
            axis = {"x": frame.x, "y": frame.y, "z": frame.z}.get(measured, off)
            at = frame.origin
            shown = Shown(
                moving=(one,),
                others=(other,),
                at=at,
                planes=planes_at(posed, at, axis, one, other),
                near=max(posed.size) / 2 + _AROUND,
                wanted=length(off) if off else _measure(finding),
            )
            return meeting_view(shown, _title(settled, finding), settled.plan.units)
        return self._two_faces(joint, finding, settled)

    def _two_faces(self, joint: Joint, finding: Finding, settled: SettledPlan) -> Drawing | None:
        """Return both parts of a joint that puts nothing anywhere, side by side."""
        pieces = pieces_of(settled)
        ends = [end_of(each.name, pieces) for each in (joint.a, joint.b)]
        faces = [
            finding_view(settled, end.part, _mark(end.part, end.features), _shapes(end.features))
            for end in ends
            if end
        ]
        if not faces:
            return self._of_part(finding, settled)
        items: list[Item] = []
        for face in faces:
            left = extent(items)[2] + _BESIDE if items else 0.0
            seat = Seat(x=left - face.box[0], y=-face.box[1])
            items += (seated(one, seat) for each in face.items for one in expanded(each))
        return Drawing(
            box=padded(extent(items), 0.8),
            items=tuple(items),
            title=_title(settled, finding),
            description=" ".join(each.description for each in faces),
        )


def _with_boards(assembled: Assembled, placed: Placed) -> tuple[PosedPiece, ...]:
    """Return the pieces of a thing, and its boards as such."""
    return (*assembled.pieces, *(each.as_piece() for each in placed.boards))


def _shapes(features: Sequence[SettledFeature]) -> tuple[Contour, ...]:
    return tuple(each for feature in features for each in feature.shape)


def _title(settled: SettledPlan, finding: Finding) -> str:
    return f"{settled.plan.title}: {finding.subject or finding.rule}"


def _measure(finding: Finding) -> float | None:
    return next((abs(each.value) for each in finding.facts if each.unit == "mm"), None)


def _mark_of(subject: str, settled: SettledPlan) -> Mark | None:
    """Return the mark of what a finding is about: features, a piece or a part; None for others."""
    end = _end_about(subject, settled)
    return _mark(end.part, end.features) if end else None


def _end_about(subject: str, settled: SettledPlan) -> End | None:
    """Return what a finding is about, as an end of a joint names it; a part is named, too."""
    return end_of(subject, {**{each.name: each for each in settled.parts}, **pieces_of(settled)})


def _mark(part: SettledPart, features: Sequence[SettledFeature]) -> Mark:
    rings = []
    for feature in features:
        x0, y0, x1, y1 = box_of_contours(feature.shape)
        radius = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 / 2 + _AIR
        rings.append(Ring((x0 + x1) / 2, (y0 + y1) / 2, radius))
    return Mark(part=part.name, rings=tuple(rings), variant="", at="")


def _joint_of(finding: Finding, settled: SettledPlan) -> Joint | None:
    """Return the joint that a finding stands at, else one that what it is about is an end of."""
    joints = settled.plan.joints
    for joint in joints:
        if finding.place in (joint.place, joint.a.place, joint.b.place):
            return joint
    pieces = pieces_of(settled)
    about = _end_about(finding.subject, settled)
    for joint in joints:
        for name in (joint.a.name, joint.b.name):
            end = end_of(name, pieces)
            if end and about and _same(end, about):
                return joint
    return None


def _same(end: End, about: End) -> bool:
    names = {each.name for each in about.features}
    ours = {each.name for each in end.features}
    return end.part.name == about.part.name and (not names or not names.isdisjoint(ours))


def _posed_joint(
    finding: Finding, joint: Joint, together: Together
) -> tuple[PosedJoint, Vector | None] | None:
    """Return the joint in its place, and how far it is off in the world, the worst gap first."""
    joints = together.assembled.joints
    gaps = sorted(together.gaps, key=lambda each: -length(each.off))
    for gap in gaps if finding.rule.startswith("joint") else ():
        pair = {gap.pairing.a, gap.pairing.b}
        for each in joints:
            if {each.a, each.b} == pair and _is_of(each, gap.pairing.index, joints):
                off = together.assembled.piece(gap.pairing.b).pose.vector(gap.off)
                return each, off if length(off) > 1e-3 else None
    own = [each for each in joints if each.place == joint.place]
    exact = [each for each in own if finding.subject in each.ends]
    return ((exact or own)[0], None) if own else None


def _is_of(posed: PosedJoint, index: int, joints: Sequence[PosedJoint]) -> bool:
    alike = [each for each in joints if each.place == posed.place]
    return alike.index(posed) == index


def _shown(
    meeting: Meeting,
    moving: tuple[PosedPiece, ...],
    others: tuple[PosedPiece, ...],
    assembled: Assembled,
    finding: Finding,
    settled: SettledPlan,
) -> Shown:
    if not others:
        rest = tuple(each for each in assembled.pieces if each not in moving)
        return Shown(moving=moving, rest=rest)
    if meeting.way is None:
        return _meeting_place(meeting, moving, others, assembled, finding)
    back, touched = _touching(moving, others, meeting.way)
    standing = {
        name.name
        for step in settled.plan.steps
        if step.place != finding.place and step.place < finding.place
        for name in step.add
    }
    rest = tuple(
        each
        for each in assembled.pieces
        if each.label in standing and each not in (*moving, *others)
    )
    return Shown(moving=moving, others=others, rest=rest, at=touched, way=meeting.way, back=back)


def _meeting_place(
    meeting: Meeting,
    moving: tuple[PosedPiece, ...],
    others: tuple[PosedPiece, ...],
    assembled: Assembled,
    finding: Finding,
) -> Shown:
    """Return what is drawn of pieces where they meet: what is measured, else what they share."""
    one, other, measured = moving[0], others[0], meeting.measured
    if measured:
        (ax, ay, az), (bx, by, bz) = measured.a, measured.b
        at: Vector = ((ax + bx) / 2, (ay + by) / 2, (az + bz) / 2)
        planes = planes_at(None, at, (bx - ax, by - ay, bz - az), one, other)
        near = _AROUND * 3
        return Shown(
            moving=moving, others=others, at=at, planes=planes, near=near, measured=measured
        )
    space = shared(*(Posed(solid_of(each.panel), each.pose) for each in (one, other)))
    pair = {one.label, other.label}
    joint = next((each for each in assembled.joints if {each.a, each.b} == pair), None)
    at = space.at if space else joint.frame.origin if joint else one.pose.origin
    return Shown(
        moving=moving,
        others=others,
        at=at,
        planes=planes_at(None, at, None, one, other) if space else (),
        near=_AROUND * 2,
        wanted=_measure(finding),
    )


def _touching(
    moving: Sequence[PosedPiece], others: Sequence[PosedPiece], way: Vector
) -> tuple[float, Vector | None]:
    """Return how far back along their way pieces first touch others, mm, and where."""
    mine, theirs = (
        reach((spot for each in group for spot in corners(each)), way) for group in (moving, others)
    )
    most = mine[1] - theirs[0]
    solids = {id(each): solid_of(each.panel) for each in (*moving, *others)}
    for step in range(_TRIED):
        back = most * (1 - step / _TRIED)
        for one in moving:
            moved = Posed(solids[id(one)], one.pose.moved(scaled(way, -back)))
            for other in others:
                space = shared(moved, Posed(solids[id(other)], other.pose))
                if space:
                    return back, space.at
    return max(0.0, most / 2), None
