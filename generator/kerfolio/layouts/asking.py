"""Asks an engine of another library in a process of its own.

A crash, an endless loop or a nonsensical answer of such an engine ends with that process; here it
is an ``EngineError`` like any other.
"""

from __future__ import annotations

import math
import subprocess
import sys
from collections import Counter

from kerfolio.layouts.engine import EngineError
from kerfolio.layouts.question import Answer, Question, answer_from, question_text

_COMMAND = (sys.executable, "-m", "kerfolio.layouts.child")
_PATIENCE = 20.0
"""Seconds given beyond those asked for: starting the process, a loaded machine."""


def answered(question: Question) -> Answer:
    """Return what the engine answers, of all the pieces asked for and no others.

    Raises EngineError when it fails, takes too long or answers nonsense.
    """
    answer = _answer(question)
    counts = Counter(kind for _, places in answer for kind, *_ in places)
    if counts != Counter({number: kind.count for number, kind in enumerate(question.kinds)}):
        raise EngineError("the answer holds other pieces than were asked for")
    if not all(0 <= room < len(question.rooms) for room, _ in answer):
        raise EngineError("the answer uses sheets that there are not")
    if not all(math.isfinite(v) for _, places in answer for _, *at in places for v in at):
        raise EngineError("the answer holds places that are no numbers")
    return answer


def _answer(question: Question) -> Answer:
    try:
        done = subprocess.run(
            _COMMAND,
            input=question_text(question),
            capture_output=True,
            text=True,
            timeout=question.seconds + _PATIENCE,
            check=False,
        )
    except subprocess.TimeoutExpired as late:
        raise EngineError(f"`{question.engine}` took too long") from late
    if done.returncode != 0:
        told = done.stderr.strip().splitlines()
        raise EngineError(f"`{question.engine}` failed: {told[-1] if told else done.returncode}")
    answer = answer_from(done.stdout)
    if not answer:
        raise EngineError(f"`{question.engine}` placed not all pieces")
    return answer
