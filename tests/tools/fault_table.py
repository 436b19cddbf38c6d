"""Print what proving says of each fault of ``tests/faults``: right, half, misled or missed.

``python -m tests.tools.fault_table [PLAN]``; with ``--found`` the findings of what is not right.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.faults.table import Bench, faults


def main(*words: str) -> None:
    """Print the table, or the rows of one plan."""
    plans = [each for each in words if not each.startswith("-")]
    grades: Counter[str] = Counter()
    with TemporaryDirectory() as folder:
        bench = Bench(Path(folder))
        for fault in faults():
            if plans and fault.plan not in plans:
                continue
            told = bench.told(fault)
            grades[told.grade] += 1
            first = told.found[0].message if told.found else "nothing"
            print(f"{told.grade:7} {fault.id:60} {first}")
            if "--found" in words and told.grade != "right":
                print(f"        {fault.cause}\n{told.shown}\n")
    of = grades.total()
    print(", ".join(f"{grades[each]} {each}" for each in ("right", "half", "misled", "missed")), of)


if __name__ == "__main__":
    main(*sys.argv[1:])
