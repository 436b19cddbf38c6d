"""Print of how many features, moved one at a time, the moved one is named first.

``python -m tests.tools.moved_features [PLAN ...]``: the sample plans, or those named; with
``--all`` a row for each move. ``first``: it is accused first; ``named``: in an advice, or later;
``another``: something else is said; ``nothing``: nothing is.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.basis.finding import Severity
from tests.conftest import SAMPLE
from tests.faults.moves import Move, moves
from tests.faults.table import Bench, accused, is_meant, named_in

LENGTHS = ("0.6 mm", "2.3 mm", "9 mm")
GRADES = ("first", "named", "another", "nothing")
SAMPLES = tuple(sorted(each.name for each in (SAMPLE / "plans").iterdir()))


def grade(bench: Bench, plan: str, move: Move, by: str) -> tuple[str, str]:
    """Return how a move is told, and the first thing said."""
    found = bench.news(plan, move.made(bench.sound[plan], by))
    alarms = [each for each in found if each.severity is not Severity.NOTE]
    if not alarms:
        return "nothing", ""
    first = alarms[0]
    if is_meant(move.name, accused(first)):
        return "first", first.message
    named = any(is_meant(move.name, each) for each in named_in(alarms))
    return "named" if named else "another", first.message


def main(*words: str) -> None:
    """Print the shares by length."""
    plans = [each for each in words if not each.startswith("-")] or list(SAMPLES)
    with TemporaryDirectory() as folder:
        bench = Bench(Path(folder), SAMPLES)
        for by in LENGTHS:
            counts: Counter[str] = Counter()
            for plan in plans:
                for move in moves(bench.sound[plan]):
                    told, first = grade(bench, plan, move, by)
                    counts[told] += 1
                    if "--all" in words:
                        print(f"{by:7} {told:8} {plan}: {move.name} {move.axis:5} {first}")
            shares = (f"{counts[each]:3} {each}" for each in GRADES)
            share = 100 * counts["first"] / counts.total()
            print(f"{by:7} {', '.join(shares)} of {counts.total()}: {share:.0f} %", flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
