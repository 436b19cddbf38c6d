"""What asking a long log costs; run by hand with ``pytest -m bench -n 0 -s``.

Growth is to stay near linear: eight times the trials may take twelve times as long, and no
question of 5,000 may take a second once the log is read.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from time import process_time

import pytest

from kerfolio.model.workshop import Identity, Workshop
from kerfolio.publishing.log_text import answers, best_text, english, trials_text
from kerfolio.trials.asking import Asked
from kerfolio.trials.best import answer
from kerfolio.trials.subject import sorted_log
from tests.trials.hidden_truth import COMPRESSION, MACHINE, PLYWOOD, invented_log, stock

pytestmark = pytest.mark.bench
SIZES = (625, 1250, 2500, 5000)
GROWTH = 12.0
LONGEST_S = 1.0


def log_of(count: int) -> Workshop:
    trials = invented_log(1, 0.1, times=count // 60 + 1)
    step = len(trials) / count
    some = (replace(trials[int(number * step)], id=f"t{number}") for number in range(count))
    identity = Identity(title="A", maker="B", machine=MACHINE)
    return Workshop(identity=identity, stock=stock(), trials=tuple(some))


def spent(question: Callable[[Workshop], object], shop: Workshop) -> float:
    began = process_time()
    question(shop)
    return process_time() - began


def trials(shop: Workshop) -> object:
    return list(trials_text(shop, Asked(cutter=COMPRESSION, verdict="clean")))


def best(shop: Workshop) -> object:
    asked = Asked(sheet=PLYWOOD, cutter=COMPRESSION)
    return [list(best_text(each, english(shop))) for each in answers(shop, asked)]


def every_answer(shop: Workshop) -> object:
    log = sorted_log(shop.trials, shop.stock)
    return [answer(each, log, shop.stock, MACHINE, "mm") for each in log]


@pytest.mark.parametrize("question", [trials, best, every_answer])
def test_questions_of_a_long_log(question: Callable[[Workshop], object]) -> None:
    question(log_of(100))  # what loads late is loaded
    costs = {}
    for count in SIZES:
        shop = log_of(count)
        costs[count] = min(spent(question, shop) for _ in range(3))
        print(f"{question.__name__:14} {count:6d} trials {costs[count]:7.3f} s")
    assert costs[SIZES[-1]] < LONGEST_S or question is every_answer
    assert costs[SIZES[-1]] / costs[SIZES[0]] <= GROWTH
