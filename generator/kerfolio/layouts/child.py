"""The process in which an outside engine runs: a question comes in, an answer goes out.

Whatever the engine prints goes to the standard error, so that the answer stands alone.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable

from kerfolio.layouts.packingsolver_engine import solve_sheets
from kerfolio.layouts.question import Answer, Question, question_from
from kerfolio.layouts.spyrrow_engine import solve_strip

SOLVERS: dict[str, Callable[[Question], Answer]] = {
    "packingsolver": solve_sheets,
    "spyrrow": solve_strip,
}


def main() -> None:
    """Answer the question on standard input."""
    own = os.dup(1)
    os.dup2(2, 1)
    question = question_from(sys.stdin.read())
    answer = SOLVERS[question.engine](question)
    with os.fdopen(own, "w") as out:
        out.write(json.dumps(answer))


if __name__ == "__main__":
    main()
