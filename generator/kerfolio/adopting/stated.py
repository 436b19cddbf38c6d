"""A plan's YAML from what was recognised: each thing stated once, guesses said in comments."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import dist

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.edge_key import row_key
from kerfolio.adopting.finger_rows import FingerRow
from kerfolio.adopting.linear import Linear
from kerfolio.adopting.outlined import Outlined
from kerfolio.adopting.recognised import AS_LONG, Notch
from kerfolio.adopting.sets import PartPlan, SlotSet, TabSet, of_kind, slot_sets, tab_sets
from kerfolio.adopting.shapes_text import (
    Pen,
    angle_text,
    body_text,
    hole_texts,
    pocket_texts,
    window_texts,
)
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.transform import moved, turn_of
from kerfolio.model.feature_kind import FINGERS, NOTCH, SLOT, TAB

_LEVEL = 0.15
_DEEP = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanText:
    """The parts of a plan's YAML; ``drawings`` are bodies that cannot be stated, by part."""

    parts: str
    joints: tuple[str, ...]
    drawings: Mapping[str, Contour] = field(default_factory=dict)


class PlanWriter:
    """States the parts and joints that a drawing has, in a plan's unit."""

    def __init__(self, found: Adopted, unit: str, clears: Mapping[int, str]) -> None:
        parts, arranged = found.parts, found.arranged
        self._wedges = found.wedges
        self._parts, self._arranged = parts, arranged
        self._sizes = {each.name: (each.size, each.drawn.mm) for each in found.sheets}
        self._fits = {each.name: each.drawn.fit for each in found.sheets}
        self._pen = Pen(unit, self._sizes, clears)
        self._bodies = [Outlined(part, i, found.follows) for i, part in enumerate(parts)]
        self._owner = {n: i for i, part in enumerate(parts) for n in part.numbers}
        self._label = {
            n: label for part in parts for n, label in zip(part.numbers, part.labels, strict=True)
        }
        self._sets, self._slots = slot_sets(parts, tab_sets(parts, arranged), arranged)
        self._set_names = self._named_sets()
        self._rows = self._named_rows()
        self._notches = self._named_notches()
        self._joints: list[str] = []

    def written(self) -> PlanText:
        """Return the parts and joints as a plan states them."""
        drawings: dict[str, Contour] = {}
        lines = ["parts:"]
        for number, part in enumerate(self._parts):
            lines += [f"  {part.name}:", f"    sheet: {part.sheet}", *self._pieces(part)]
            if any(each.piece in part.numbers for each in self._wedges):
                lines.append("    grain: along y")
            body = self._bodies[number]
            stated = body_text(body, self._pen)
            if stated is None:
                x, y = body.origin
                drawings[part.name] = moved(body.body, -x, -y)
                file = f"drawings/{part.name}.svg"
                rest = "outline: outline, tabs: as drawn, notches: as drawn"
                lines.append(f"    drawing: {{file: {file}, {rest}}}")
            else:
                lines.append(f"    outline: {stated}")
            features = [*self._features(number)]
            if features:
                lines.append("    features:")
                lines += [f"      {name}: {text}" for name, text in features]
        for meet in of_kind(self._arranged.meets, NOTCH):
            one = self._end(meet.one, self._notches[self._owner[meet.one]], meet.first)
            other = self._end(meet.other, self._notches[self._owner[meet.other]], meet.second)
            poses = self._arranged.poses
            x, y, _ = poses[meet.other].inverse.vector(poses[meet.one].z)
            self._joints.append(f"{{notch: {one}, with: {other}, looking: {looking((x, y))}}}")
        self._joints += [*self._loose_joints(), *self._wedge_joints()]
        return PlanText(parts="\n".join(lines), joints=tuple(self._joints), drawings=drawings)

    def tab_joints(self) -> Iterator[tuple[int, int, str, str, Point]]:
        """Yield each set of tabs with its slots: both pieces, both names, the tabs' way out."""
        for number, part in enumerate(self._parts):
            for each in (s for s in self._slots if s.part == number):
                name = self._slot_name(number, each)
                for piece, mate in zip(part.numbers, each.mates, strict=True):
                    if mate is not None:
                        first = f"{self._label[mate[0]]}.{self._set_names[mate[1]]}"
                        out = self._parts[mate[1].part].made.tabs[mate[1].tabs[0]].out
                        yield mate[0], piece, first, f"{self._label[piece]}.{name}", out

    def _end(self, piece: int, names: Mapping[int, tuple[str, int, int]], index: int) -> str:
        name, place, count = names[index]
        copy = f".{place}" if count > 1 else ""
        return f"{self._label[piece]}.{name}{copy}"

    def _pieces(self, part: PartPlan) -> Iterator[str]:
        if len(part.labels) == 1:
            return
        ends = [each.partition(".")[2] for each in part.labels]
        if ends == [str(i + 1) for i in range(len(ends))]:
            yield f"    count: {len(ends)}"
        else:
            yield f"    pieces: [{', '.join(ends)}]"

    def _features(self, number: int) -> Iterator[tuple[str, str]]:
        body = self._bodies[number]
        for key, name in self._set_names.items():
            if key.part == number:
                yield name, self._tabs(body, key)
        yield from self._notched(number, body)
        yield from self._fingered(number, body)
        for each in (s for s in self._slots if s.part == number):
            yield self._slot_name(number, each), self._slotted(body, each)
        for index, name in self._left_names(number).items():
            yield name, self._single_slot(body, index)
        yield from hole_texts(body, self._pen)
        yield from window_texts(body, self._pen)
        yield from pocket_texts(body, self._pen)

    def _named_sets(self) -> dict[TabSet, str]:
        """Return what each set of tabs is called: by its side, numbered where there are more."""
        sides: dict[tuple[int, str], list[TabSet]] = {}
        for each in self._sets:
            tab = self._parts[each.part].made.tabs[each.tabs[0]]
            sides.setdefault((each.part, _side(tab.out)), []).append(each)
        found = {}
        for (_, side), members in sides.items():
            for place, each in enumerate(members):
                word = TAB.name if len(each.tabs) == 1 else f"{TAB.name}s"
                number = "" if len(members) == 1 else f"-{place + 1}"
                found[each] = f"{side}-{word}{number}"
        return found

    def _tabs(self, body: Outlined, tabs: TabSet) -> str:
        made = [body.part.made.tabs[i] for i in tabs.tabs]
        first = made[0]
        edge, begins = self._along(body, first.out, [each.at for each in made], first.width)
        deep = self._depth(first.depth, tabs)
        at = begins[0] if len(begins) == 1 else f"[{', '.join(begins)}]"
        width = self._pen.number(first.width)
        return f"{{tabs: {{edge: {edge}, at: {at}, width: {width}, depth: {deep}}}}}"

    def _depth(self, depth: float, tabs: TabSet) -> str:
        """Return how deep tabs are: as their mate's sheet is thick, and what stands out."""
        mates = [
            self._parts[each.part].sheet
            for each in self._slots
            if any(mate and mate[1] == tabs for mate in each.mates)
        ]
        first = self._parts[tabs.part].made.tabs[tabs.tabs[0]]
        for name in (*mates, self._parts[tabs.part].sheet) if first.stretch else ():
            size, mm = self._sizes[name]
            if abs(depth - mm) <= _DEEP:
                return size
        for name in mates:
            if first.stretch and depth > self._sizes[name][1]:
                return self._pen.text(Linear(drawn=depth, per={name: Fraction(1)}))
        return self._pen.number(depth)

    def _along(
        self, body: Outlined, out: Point, spots: Sequence[Point], width: float
    ) -> tuple[str, list[str]]:
        """Return an edge as stated, and where along it things of a width begin."""
        side = _named_side(body, out, spots[0])
        if side:
            upright_edge = side in ("left", "right")
            place = body.y if upright_edge else body.x
            axis = 1 if upright_edge else 0
            return side, [self._pen.text(place(each[axis] - width / 2)) for each in spots]
        ends = body.edge_at(out, spots[0])
        assert ends is not None, "a tab stands on an edge"
        (x0, y0), (x1, y1) = ((x.drawn, y.drawn) for x, y in ends)
        size = dist((x0, y0), (x1, y1))
        ux, uy = (x1 - x0) / size, (y1 - y0) / size
        left, low = body.origin
        runs = [(x - left - x0) * ux + (y - low - y0) * uy - width / 2 for x, y in spots]
        told = [self._pen.spot(each) for each in ends]
        return f"{{from: {told[0]}, to: {told[1]}}}", [self._pen.number(run) for run in runs]

    def _notched(self, number: int, body: Outlined) -> Iterator[tuple[str, str]]:
        names = self._notches[number]
        made = self._parts[number].made.notches
        groups: dict[str, list[int]] = {}
        for index, (name, *_) in sorted(names.items(), key=lambda each: each[1][1]):
            groups.setdefault(name, []).append(index)
        for name, members in groups.items():
            first = made[members[0]]
            spots = [made[i].stretch.middle for i in members]
            edge, at = self._along(body, first.out, spots, 0.0)
            places = at[0] if len(at) == 1 else f"[{', '.join(at)}]"
            takes = self._notch_takes(number, members[0])
            deep = self._pen.number(first.depth)
            yield name, f"{{notch: {{edge: {edge}, at: {places}, depth: {deep}, takes: {takes}}}}}"

    def _notch_takes(self, number: int, index: int) -> str:
        """Return the sheet that a notch takes: that of what it meets, else as wide as it is."""
        mine = set(self._parts[number].numbers)
        for meet in of_kind(self._arranged.meets, NOTCH):
            for (piece, own), other in (
                ((meet.one, meet.first), meet.other),
                ((meet.other, meet.second), meet.one),
            ):
                if piece in mine and own == index:
                    return self._parts[self._owner[other]].sheet
        return self._by_width(self._parts[number].made.notches[index].width)

    def _by_width(self, width: float) -> str:
        return min(self._sizes, key=lambda name: abs(self._sizes[name][1] - width))

    def _named_notches(self) -> list[dict[int, tuple[str, int, int]]]:
        """Return for each part what each notch is called: the set's name, its place, the count."""
        found = []
        for part in self._parts:
            groups: dict[tuple[object, ...], list[int]] = {}
            for index, notch in enumerate(part.made.notches):
                groups.setdefault(row_key(notch), []).append(index)
            named: dict[int, tuple[str, int, int]] = {}
            sides: dict[str, int] = {}
            for members in groups.values():
                side = _side(part.made.notches[members[0]].out)
                sides[side] = sides.get(side, 0) + 1
                number = "" if sides[side] == 1 else f"-{sides[side]}"
                name = f"{side}-{NOTCH.name if len(members) == 1 else 'notches'}{number}"
                along = sorted((_run(part.made.notches[index]), index) for index in members)
                for place, (_, index) in enumerate(along):
                    named[index] = (name, place + 1, len(members))
            found.append(named)
        return found

    def _named_rows(self) -> list[list[str]]:
        return [[f"{row.side}-fingers" for row in part.made.fingers] for part in self._parts]

    def _fingered(self, number: int, body: Outlined) -> Iterator[tuple[str, str]]:
        part = self._parts[number]
        for index, row in enumerate(part.made.fingers):
            name = self._rows[number][index]
            mates = self._leaders(number, index)
            edge = self._row_edge(body, row)
            if mates:
                yield name, f"{{fingers: {{of: {self._of(part, mates)}, edge: {edge}}}}}"
                continue
            takes = self._row_takes(number, index)
            first = "finger" if row.finger_first else "gap"
            what = f"count: {row.count}, takes: {takes}, first: {first}"
            yield name, f"{{fingers: {{edge: {edge}, {what}}}}}"

    def _leaders(self, number: int, index: int) -> dict[int, str]:
        """Return the row that each piece's row follows, where all follow an earlier part's."""
        found: dict[int, str] = {}
        for meet in of_kind(self._arranged.meets, FINGERS):
            ends = (
                (meet.one, meet.first, meet.other, meet.second),
                (meet.other, meet.second, meet.one, meet.first),
            )
            for piece, own, other, theirs in ends:
                leads = self._owner[other] < number
                if self._owner[piece] == number and own == index and leads:
                    found[piece] = f"{self._label[other]}.{self._rows[self._owner[other]][theirs]}"
        return found if len(found) == len(self._parts[number].numbers) else {}

    def _row_edge(self, body: Outlined, row: FingerRow) -> str:
        box = body.sides()
        low, high = (
            (box["bottom"], box["top"])
            if row.side in ("left", "right")
            else (box["left"], box["right"])
        )
        begins, ends = (
            (row.start[1], row.end[1])
            if row.side in ("left", "right")
            else (row.start[0], row.end[0])
        )
        if abs(begins - low) <= _LEVEL and abs(ends - high) <= _LEVEL:
            return row.side
        spots = [self._pen.spot(body.spot(each)) for each in (row.start, row.end)]
        return f"{{from: {spots[0]}, to: {spots[1]}}}"

    def _row_takes(self, number: int, index: int) -> str:
        mine = set(self._parts[number].numbers)
        for meet in of_kind(self._arranged.meets, FINGERS):
            if meet.one in mine and meet.first == index:
                return self._parts[self._owner[meet.other]].sheet
            if meet.other in mine and meet.second == index:
                return self._parts[self._owner[meet.one]].sheet
        return self._by_width(self._parts[number].made.fingers[index].depth)

    def _slot_name(self, number: int, slots: SlotSet) -> str:
        mates = {self._parts[mate[1].part].name for mate in slots.mates if mate}
        deep = self._parts[number].made.slots[slots.slots[0]].depth is not None
        one = "housing" if deep else SLOT.name
        word = one if len(slots.slots) == 1 else f"{one}s"
        base = f"{min(mates)}-{word}" if len(mates) == 1 else word
        alike = [
            each
            for each in self._slots
            if each.part == number
            and len(each.slots) == len(slots.slots)
            and {self._parts[m[1].part].name for m in each.mates if m} == mates
        ]
        return base if len(alike) == 1 else f"{base}-{alike.index(slots) + 1}"

    def _slotted(self, body: Outlined, slots: SlotSet) -> str:
        made = [body.part.made.slots[i] for i in slots.slots]
        mates = {
            piece: f"{self._label[mate[0]]}.{self._set_names[mate[1]]}"
            for piece, mate in zip(body.part.numbers, slots.mates, strict=True)
            if mate is not None
        }
        first, last = body.spot(made[0].at, slots.slots[0]), body.spot(made[-1].at, slots.slots[-1])
        middle = (_half(first[0], last[0]), _half(first[1], last[1]))
        if self._is_loose(slots):
            spots = [
                self._pen.spot(body.spot(e.at, i)) for e, i in zip(made, slots.slots, strict=True)
            ]
            places = spots[0] if len(spots) == 1 else f"[{', '.join(spots)}]"
            turn, takes = angle_text(turn_of(made[0].along) % 180), self._by_width(made[0].width)
            long = self._pen.number(made[0].length - 2 * self._fits[takes])
            return f"{{slot: {{at: {places}, length: {long}{turn}, takes: {takes}}}}}"
        if len(made) == 1:
            angle = turn_of(made[0].along) % 180
        else:
            (ax, ay), (bx, by) = made[0].at, made[-1].at
            angle = turn_of((bx - ax, by - ay)) % 360
        at = f"{self._pen.spot(middle)}{angle_text(angle)}"
        of = self._of(body.part, mates)
        if made[0].depth is not None:
            return f"{{housings: {{of: {of}, at: {at}, depth: {self._pen.number(made[0].depth)}}}}}"
        return f"{{slots: {{of: {of}, at: {at}}}}}"

    def _is_loose(self, slots: SlotSet) -> bool:
        """Tell whether slots are longer than their tabs by more than play: they do not follow."""
        part, mate = self._parts[slots.part], next(each for each in slots.mates if each)
        tab = self._parts[mate[1].part].made.tabs[mate[1].tabs[0]]
        slot = part.made.slots[slots.slots[0]]
        return slot.depth is None and slot.length - tab.width > AS_LONG

    def _loose_joints(self) -> Iterator[str]:
        """Yield the joints of tabs with slots that do not follow them."""
        for each in (slots for slots in self._slots if self._is_loose(slots)):
            name = self._slot_name(each.part, each)
            for piece, mate in zip(self._parts[each.part].numbers, each.mates, strict=True):
                if mate is not None:
                    first = f"{self._label[mate[0]]}.{self._set_names[mate[1]]}"
                    yield f"{{tab: {first}, into: {self._label[piece]}.{name}}}"

    def _of(self, part: PartPlan, mates: Mapping[int, str]) -> str:
        """Return whom a set follows: a name, or one for each piece."""
        if len(part.numbers) == 1:
            return next(iter(mates.values()))
        rows = [f"{self._label[n].partition('.')[2]}: {mate}" for n, mate in sorted(mates.items())]
        return f"{{{', '.join(rows)}}}"

    def _left_names(self, number: int) -> dict[int, str]:
        """Return what the slots of a part are called that no tab meets."""
        slots = self._parts[number].made.slots
        met = {slot for each in self._slots if each.part == number for slot in each.slots}
        left = [i for i in range(len(slots)) if i not in met]
        driven = {w.slot for w in self._wedges if w.through in self._parts[number].numbers}
        words = {
            i: "wedge-slot" if i in driven else SLOT.name if slots[i].depth is None else "housing"
            for i in left
        }
        alike = {word: [i for i in left if words[i] == word] for word in words.values()}
        return {
            i: word if len(alike[word]) == 1 else f"{word}-{alike[word].index(i) + 1}"
            for i, word in words.items()
        }

    def _wedge_joints(self) -> Iterator[str]:
        for each in self._wedges:
            number = self._owner[each.through]
            slot = f"{self._label[each.through]}.{self._left_names(number)[each.slot]}"
            at = ", ".join(self._pen.number(side) for side in each.at)
            look = looking(each.looks)
            name = self._label[each.piece]
            yield f"{{wedge: {name}, through: {slot}, at: [{at}], show: out, looking: {look}}}"

    def _single_slot(self, body: Outlined, index: int) -> str:
        slot = body.part.made.slots[index]
        angle = turn_of(slot.along) % 180
        turn = angle_text(angle)
        at, takes = self._pen.spot(body.slot_spot(slot.at, index)), self._by_width(slot.width)
        long = slot.length - 2 * self._fits[takes]  # what takes a sheet is lengthened by the fit
        what = f"at: {at}, length: {self._pen.number(long)}{turn}, takes: {takes}"
        if slot.depth is not None:
            return f"{{pocket: {{{what}, depth: {self._pen.number(slot.depth)}}}}}"
        return f"{{slot: {{{what}}}}}"


def looking(along: Point) -> str:
    """Return where a unit vector in a piece's drawing points most."""
    words = {"right": along[0], "up": along[1], "left": -along[0], "down": -along[1]}
    return max(words, key=lambda word: round(words[word], 6))


def _half(one: Linear, other: Linear) -> Linear:
    per = {sheet: (one.per[sheet] + other.per[sheet]) / 2 for sheet in one.per}
    return Linear(drawn=(one.drawn + other.drawn) / 2, per=per)


def _side(out: Point) -> str:
    """Return the side that a way out points to most."""
    x, y = out
    if abs(x) > abs(y):
        return "right" if x > 0 else "left"
    return "top" if y > 0 else "bottom"


def _named_side(body: Outlined, out: Point, at: Point) -> str:
    """Return the side of the body's box that an edge is, empty where it is none."""
    side = _side(out)
    if max(abs(out[0]), abs(out[1])) < 1 - 1e-6:
        return ""
    level = body.sides()[side]
    here = at[0] if side in ("left", "right") else at[1]
    return side if abs(here - level) <= _LEVEL else ""


def _run(notch: Notch) -> float:
    """Return where a notch lies along its edge: rightwards, or upwards."""
    (x, y), (ux, uy) = notch.stretch.middle, notch.out
    return x * abs(uy) + y * abs(ux)
