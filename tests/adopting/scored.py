"""How much of a drawing was adopted rightly, by its right answer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain

from kerfolio.adopting.sets import PartPlan
from kerfolio.basis.finding import has_errors
from kerfolio.commands.adopt_told import told_of
from kerfolio.publishing.adopting import AdoptedPlan
from kerfolio.settling.settled import SettledPlan
from tests.adopting.by_hand import Right, RightAnswer

_NEAR = 1.5
_SAME_GROWTH = 0.1
KINDS = ("tab", "slot", "notch", "fingers", "hole", "window", "pocket", "housing")


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """By kind how much there is, how much of it was found, and what was guessed wrongly.

    ``told`` are wrong or missing things that a question, a remark or a finding names; ``silent``
    are the others, in words.
    """

    there: Mapping[str, int]
    found: Mapping[str, int]
    wrong: Mapping[str, int]
    questions: int
    told: tuple[str, ...] = ()
    silent: tuple[str, ...] = ()
    errors: bool = False
    parts: Mapping[str, str] = field(default_factory=dict)


def scored(made: AdoptedPlan, right: RightAnswer) -> Score:
    """Compare what was adopted with the right answer."""
    assert made.found is not None, made.findings
    pairs = dict(_paired(made.found.parts, right.parts))
    there, found, wrong = Counter[str](), Counter[str](), Counter[str]()
    off: list[tuple[str, str]] = []

    def count(kind: str, name: str, wanted: int, got: int) -> None:
        there[kind] += wanted
        found[kind] += min(wanted, got)
        wrong[kind] += max(0, got - wanted)
        if got != wanted:
            off.append((name, f"{name}: {got} of {wanted} {kind}"))

    for name, part in right.parts.items():
        own = pairs.get(name)
        count("piece", name, part.count, len(own.numbers) if own else 0)
        has = _features(own) if own else Counter[str]()
        for kind in KINDS:
            times = len(own.numbers) if own else 0
            count(kind, name, part.features.get(kind, 0) * part.count, has[kind] * times)
    extra = [each.name for each in made.found.parts if each not in pairs.values()]
    off += [(name, f"{name}: a part that is none") for name in extra]
    wrong["piece"] += len(extra)
    called = {own.name: name for name, own in pairs.items()}
    joints = Counter(_joints(made, called))
    for pair in sorted({*joints, *right.joints}):
        wanted, got = right.joints.get(pair, 0), joints[pair]
        there["joint"] += wanted
        found["joint"] += min(wanted, got)
        wrong["joint"] += max(0, got - wanted)
        if wanted != got:
            off += [(each, f"{pair}: {got} of {wanted} joints") for each in _ends(pair, right)]
    for name, goal, grows in _growths(made, right.parts, pairs):
        there["growth"] += any(goal)
        good = max(abs(a - b) for a, b in zip(goal, grows, strict=True)) <= _SAME_GROWTH
        found["growth"] += any(goal) and good
        wrong["growth"] += not good and any(abs(each) > _SAME_GROWTH for each in grows)
        if not good:
            off.append((name, f"{name} grows by {grows}, not by {goal}"))
    thick = sorted(each.drawn.mm for each in made.found.sheets)
    if len(thick) != len(right.thickness) or any(
        abs(a - b) > 0.3 for a, b in zip(thick, sorted(right.thickness), strict=True)
    ):
        off.append(("", f"sheets are {thick}, not {right.thickness}"))
    words = list(chain(told_of(made), (str(each) for each in made.findings)))
    told, silent = [], []
    for name, what in off:
        own = pairs.get(name)
        known = {name, own.name if own else name} - {""}
        (told if any(_names(line, known) for line in words) else silent).append(what)
    return Score(
        there=there,
        found=found,
        wrong=wrong,
        questions=len(made.questions),
        told=tuple(dict.fromkeys(told)),
        silent=tuple(dict.fromkeys(silent)),
        errors=has_errors(made.findings),
        parts={name: own.name for name, own in pairs.items()},
    )


def _names(line: str, known: set[str]) -> bool:
    telling = ("to confirm", "not understood", "not as drawn", "[", "left out")
    return line.startswith(telling) and any(f"`{each}" in line for each in known)


def _paired(
    parts: Sequence[PartPlan], right: Mapping[str, Right]
) -> Iterator[tuple[str, PartPlan]]:
    """Yield each right part with the one that has its name, else its size."""
    left = list(parts)
    for name, part in right.items():
        near = [each for each in left if _off(each, part) <= _NEAR]
        near.sort(key=lambda each: (each.name != name, len(each.numbers) != part.count))
        near.sort(key=lambda each: abs(sum(_features(each).values()) - sum(part.features.values())))
        if near:
            left.remove(near[0])
            yield name, near[0]


def _off(found: PartPlan, right: Right) -> float:
    mine, theirs = sorted(found.made.draft.size), sorted(right.size)
    return max(abs(a - b) for a, b in zip(mine, theirs, strict=True))


def _features(part: PartPlan) -> Counter[str]:
    made = part.made
    deep = sum(slot.depth is not None for slot in made.slots)
    return Counter(
        tab=len(made.tabs),
        slot=len(made.slots) - deep,
        notch=len(made.notches),
        fingers=len(made.fingers),
        hole=len(made.holes),
        window=len(made.windows),
        pocket=len(made.pockets),
        housing=deep,
    )


def _joints(made: AdoptedPlan, called: Mapping[str, str]) -> Iterator[str]:
    assert made.found is not None
    owner = {n: called.get(p.name, p.name) for p in made.found.parts for n in p.numbers}
    for meet in made.found.arranged.meets:
        yield "-".join(sorted((owner[meet.one], owner[meet.other])))
    for wedge in made.found.wedges:
        yield "-".join(sorted((owner[wedge.piece], owner[wedge.through])))


def _ends(pair: str, right: RightAnswer) -> list[str]:
    return [
        name for name in right.parts if pair.startswith(f"{name}-") or pair.endswith(f"-{name}")
    ]


def _growths(
    made: AdoptedPlan, right: Mapping[str, Right], pairs: Mapping[str, PartPlan]
) -> Iterator[tuple[str, tuple[float, float], tuple[float, float]]]:
    """Yield how each part's outline grows while the sheet does: as it should, and as it is."""
    points: Sequence[SettledPlan] = made.proof.points if made.proof else ()
    if len(points) < 2 or len(made.found.sheets if made.found else ()) > 1:
        return  # where several sheets grow at once, nobody knows what follows which
    low, high = points[0], points[-1]
    for name, own in pairs.items():
        ends = [next((p for p in at.parts if p.name == own.name), None) for at in (low, high)]
        if ends[0] is None or ends[1] is None:
            continue
        (w0, h0), (w1, h1) = ends[0].size, ends[1].size
        more = ends[1].thickness - ends[0].thickness
        if more <= 0:
            continue
        grows = (round((w1 - w0) / more, 2), round((h1 - h0) / more, 2))
        goal = right[name].grows
        wide, tall = own.made.draft.size
        turned = (wide < tall) != (right[name].size[0] < right[name].size[1])
        yield name, goal, grows[::-1] if turned else grows
