"""Statistics of the log against examples that are printed elsewhere."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.trials.chances import chance_of, share_within
from kerfolio.trials.metres import chance_of_fall
from tests.shop.outside_check import MEMORY, WORKED, OutsideCheck

TUNA = (
    *((44.4, 2.6), (45.9, 3.1), (41.9, 2.5), (53.3, 5.0), (44.7, 3.6)),
    *((44.1, 4.0), (50.7, 5.2), (45.2, 2.8), (60.1, 3.8)),
)
"""Lightness of canned tuna and what a panel thought of it: Hollander and Wolfe, Nonparametric
Statistical Methods (1973), page 187, as the help of R's ``cor.test`` has it."""


def log_checks() -> Iterator[OutsideCheck]:
    """Yield the checks: sign test, Clopper and Pearson's interval, Kendall's tau."""
    fallen = tuple((lightness, -liked) for lightness, liked in TUNA)
    rows = (
        (
            "Sign test: chance of 7 of 8 or more, were it half",
            "HyperStat, sign test, worked example",
            MEMORY,
            (0.0352, 0.00005),
            lambda: chance_of(7, 8),
        ),
        (
            "Sign test: chance of 4 of 4, were it half",
            "Binomial tail: 1 / 2 to the fourth",
            WORKED,
            (0.0625, 1e-9),
            lambda: chance_of(4, 4),
        ),
        (
            "Sign test: most of the rarer sign among 25, one tail, 0.05",
            "Triola, Elementary Statistics, Table A-7",
            MEMORY,
            (7, 0),
            lambda: _rarer(25),
        ),
        (
            "Exact interval of a share, 4 of 20, 90 %: lower end",
            "NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1",
            MEMORY,
            (0.071354, 5e-7),
            lambda: share_within(4, 20)[0],
        ),
        (
            "Exact interval of a share, 4 of 20, 90 %: upper end",
            "NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1",
            MEMORY,
            (0.401029, 1e-6),
            lambda: share_within(4, 20)[1],
        ),
        (
            "Kendall's tau, nine tins of tuna: one-sided chance",
            "Hollander and Wolfe, Nonparametric Statistical Methods (1973), as R's help prints it",
            MEMORY,
            (0.05972, 0.000005),
            lambda: chance_of_fall(fallen),
        ),
    )
    for what, source, standing, (value, within), ours in rows:
        yield OutsideCheck(
            what=what,
            source=source,
            standing=standing,
            unit="",
            value=value,
            within=within,
            ours=ours,
        )


def _rarer(total: int) -> int:
    """Return how many of the rarer sign the sign test allows at most."""
    return max(odd for odd in range(total) if chance_of(total - odd, total) <= 0.05)
