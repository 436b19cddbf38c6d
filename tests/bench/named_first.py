"""How often the feature that was moved is the first that is accused.

Features of sound plans that a joint holds are moved one at a time, in the text of the plan as a
maker's slip would, by 0.6, 2.3 and 9 mm; then the joints are looked at as proving does at the
thickness drawn for. By hand: ``python -m tests.bench.named_first [--all] [--show] [PLAN ...]``. A
hundred features of the sample plans, chosen by seed; ``--all`` adds the plans of tests and the
kinds to begin from, ``--show`` tells what was said where another one was named first.

``named`` the moved feature is the first accused; ``beside`` it stands in the advice of the first
remark; ``other`` is all else that was said; ``open`` are those of which nothing can be known: no
joint is off, since no loop of joints holds the feature in that direction.

Of the potting bench 19 of the 55 moves by 2.3 mm were counted last: 10 named, 2 other, 7 open. The
two are left tabs that slots of both sides follow: the right ones, which do not, are named for them.
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from random import Random
from shutil import copy2, copytree
from tempfile import TemporaryDirectory
from time import process_time

from kerfolio.assembly.poses import put_together
from kerfolio.basis.finding import Finding, has_errors
from kerfolio.basis.place import Place
from kerfolio.model.feature import Feature, Groove, Window
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount, Spot
from kerfolio.model.stock import Stock
from kerfolio.publishing.begin import begin_plan, begin_workshop
from kerfolio.reading.beginnings import beginnings
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.making import one_of
from kerfolio.settling.settle import settle
from kerfolio.settling.variant import drawn_variant
from tests.assembly.written import FOLDER, NAMES
from tests.plans import WORKSHOP

BY = (0.6, 2.3, 9.0)
COUNT = 100
SEED = 19
_SITE = Path(__file__).resolve().parents[2] / "sample-site"
_AMOUNT = re.compile(r"[^,\]\}\n#]+")


@dataclass(frozen=True)
class Move:
    """One feature to be moved: the places of the amounts that say where it is, and which way."""

    folder: Path
    plan: str
    feature: str
    axis: str
    places: tuple[Place, ...]
    sign: float


def read(folder: Path, name: str) -> tuple[Plan, Stock] | None:
    """Return a plan of a workshop, None where it cannot be read."""
    shop, findings = read_workshop(folder, pictures=False)
    if shop is None:
        return None
    mine = [each for each in findings if f"plans/{name}/" in each.place.file]
    plan = next((each for each in shop.plans if each.name == name), None)
    return None if plan is None or has_errors(mine) else (plan, shop.stock)


def moves(folder: Path, name: str) -> Iterator[Move]:
    """Yield every feature in a joint with each way in which its statement can be moved."""
    found = read(folder, name)
    assert found is not None, name
    plan = found[0]
    file = f"plans/{name}/plan.yaml"
    ends = {end.name for made in plan.made for joint in made.joints for end in (joint.a, joint.b)}
    random = Random(f"{SEED}, {name}")
    for part in plan.parts:
        for feature in part.features:
            names = {f"{label}.{feature.name}" for label in part.labels}
            if any(end == each or end.startswith(f"{each}.") for end in ends for each in names):
                for axis, places in _stated(feature, file):
                    called = f"{part.name}.{feature.name}"
                    sign = random.choice((1.0, -1.0))
                    yield Move(folder, name, called, axis, places, sign)


def _stated(feature: Feature, file: str) -> Iterator[tuple[str, tuple[Place, ...]]]:
    cutting = feature.cutting
    if isinstance(cutting, Groove):
        spots: Sequence[Spot | Amount] = (cutting.start, cutting.end)
    elif isinstance(cutting, Window):
        spots = (cutting.at,)
    else:
        spots = getattr(cutting, "at", ())
    for axis in ("x", "y", "along"):
        amounts = [_along(each, axis) for each in spots]
        places = {each.place for each in amounts if each and each.place.file == file}
        if places:
            yield axis, tuple(sorted(places))


def _along(stated: Spot | Amount, axis: str) -> Amount | None:
    if isinstance(stated, Amount):
        return stated if axis == "along" else None
    return {"x": stated.x, "y": stated.y, "along": None}[axis]


def moved(text: str, move: Move, by: float, unit: str) -> str:
    """Return the text of a plan with a feature moved, mm."""
    lines = text.split("\n")
    amount = f"{by * move.sign / (25.4 if unit == 'in' else 1.0):+.6g}"
    for place in sorted(move.places, reverse=True):
        line, start = lines[place.line - 1], place.column - 1
        stated = _AMOUNT.match(line, start)
        assert stated is not None
        end = start + len(stated[0].rstrip())
        sign, size = amount[0], amount[1:]
        lines[place.line - 1] = f"{line[:end]} {sign} {size}{line[end:]}"
    return "\n".join(lines)


def told(plan: Plan, stock: Stock) -> list[Finding] | None:
    """Return what is said of joints that are off; None where the plan cannot be made at all."""
    settled, _ = settle(plan, stock, drawn_variant(plan, stock))
    if settled is None:
        return None
    made = (put_together(one_of(settled, each)) for each in plan.made)
    return [f for each in made if each is not None for f in each.findings if f.rule == "joint-off"]


def verdict(move: Move, found: Sequence[Finding] | None) -> str:
    """Return how what is said fits the move."""
    if found is None:
        return "unmade"
    if not found:
        return "open"
    name = re.escape(move.feature)
    if re.match(rf"`{name}(\.\d+)?`", found[0].message):
        return "named"
    return "beside" if re.search(rf"`{name}(\.\d+)?`", found[0].advice) else "other"


def laid_down(folder: Path, name: str, text: str) -> Path:
    """Write a workshop of one plan."""
    (folder / "plans" / name).mkdir(parents=True)
    (folder / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    (folder / "plans" / name / "plan.yaml").write_text(text, "utf-8")
    return folder


def sample(folder: Path, name: str) -> Path:
    """Return a workshop with one of the sample plans alone."""
    folder.mkdir(parents=True)
    copy2(_SITE / "workshop.yaml", folder)
    for each in ("stock", f"plans/{name}"):
        copytree(_SITE / each, folder / each)
    return folder


def samples(root: Path) -> Iterator[Move]:
    """Yield what can be moved in the sample plans."""
    for each in sorted((_SITE / "plans").iterdir()):
        yield from moves(sample(root / each.name, each.name), each.name)


def others(root: Path) -> Iterator[Move]:
    """Yield what can be moved in the plans of tests and in the kinds to begin from."""
    for name in NAMES:
        folder = laid_down(root / name, name, (FOLDER / f"{name}.yaml").read_text("utf-8"))
        yield from moves(folder, name)
    from datetime import date

    for kind in beginnings():
        folder = root / f"kind-{kind.name}"
        begin_workshop(folder, date(2026, 10, 2), "mm")
        begin_plan(folder, f"a-{kind.name}", date(2026, 10, 2), kind.name)
        yield from moves(folder, f"a-{kind.name}")


def tried(move: Move, by: float) -> tuple[str, list[Finding] | None]:
    """Return how a move was told, and what was said."""
    file = move.folder / "plans" / move.plan / "plan.yaml"
    text = file.read_text("utf-8")
    unit = "in" if re.search(r"^units: in", text, re.MULTILINE) else "mm"
    file.write_text(moved(text, move, by, unit), "utf-8")
    try:
        found = read(move.folder, move.plan)
    finally:
        file.write_text(text, "utf-8")
    said = told(*found) if found else None
    return verdict(move, said), said


def chosen(every: list[Move], count: int) -> list[Move]:
    """Return so many moves by seed, of different features as long as there are such."""
    Random(SEED).shuffle(every)
    firsts = list({(each.plan, each.feature): each for each in reversed(every)}.values())
    rest = [each for each in every if each not in firsts]
    return sorted([*firsts, *rest][:count], key=lambda m: (m.plan, m.feature, m.axis))


def main() -> None:
    show = "--show" in sys.argv
    with TemporaryDirectory() as folder:
        picked = chosen(list(samples(Path(folder) / "samples")), COUNT)
        if "--all" in sys.argv:
            picked += chosen(list(others(Path(folder) / "others")), COUNT)
        only = {each for each in sys.argv[1:] if not each.startswith("--")}
        picked = [each for each in picked if not only or each.plan in only]
        start = process_time()
        counts: dict[tuple[str, float], Counter[str]] = {}
        for move in picked:
            for by in BY:
                outcome, said = tried(move, by)
                counts.setdefault((move.plan, by), Counter())[outcome] += 1
                if show and outcome not in ("named", "open"):
                    first = f"{said[0].message} / {said[0].advice}" if said else "nothing"
                    print(f"{move.plan}: {move.feature} {move.axis} {by * move.sign:+g}: {first}")
        _table(counts, len({(m.plan, m.feature) for m in picked}), len(picked))
        print(f"{process_time() - start:.0f} s of processor time")


def _table(counts: dict[tuple[str, float], Counter[str]], features: int, count: int) -> None:
    heads = ("named", "beside", "other", "open", "unmade", "share")
    print(f"{features} features, {count} moves")
    print(f"{'plan':20} {'mm':>5}", *(f"{head:>7}" for head in heads))
    rows = dict(counts)
    for by in BY:
        rows["all", by] = sum((c for (_, mm), c in counts.items() if mm == by), Counter())
    for (plan, by), found in rows.items():
        seen = found["named"] + found["beside"] + found["other"]
        share = f"{100 * found['named'] / seen:6.0f}%" if seen else "      -"
        print(f"{plan:20} {by:5g}", *(f"{found[head]:7d}" for head in heads[:-1]), share)


if __name__ == "__main__":
    main()
