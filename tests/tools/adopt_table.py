"""Print how much of each drawing made by hand is adopted rightly.

``python -m tests.tools.adopt_table [NAME ...]``; with ``--off`` also what is wrong or missing, with
``--keep FOLDER`` the workshops stay there. Drawings of one's own are looked at with
``--hands FOLDER``: each beside its right answer, as ``tests/adopting/hands`` has them.
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from kerfolio.publishing.adopting import AdoptRequest, adopt
from tests.adopting import by_hand
from tests.adopting.scored import Score, scored
from tests.plans import WORKSHOP

_SHOWN = ("piece", "tab", "slot", "notch", "fingers", "housing", "joint", "growth")
_DAY = date(2026, 11, 30)


def looked_at(name: str, folder: Path, hands: Path = by_hand.HANDS) -> tuple[Score, float]:
    """Adopt a drawing into a new workshop; return its score, and how many seconds it took."""
    shop = folder / name
    shop.mkdir(parents=True)
    (shop / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    drawing = by_hand.write(name, folder, hands)
    began = perf_counter()
    made = adopt(AdoptRequest(drawing=drawing, workshop=shop, into=name, day=_DAY))
    return scored(made, by_hand.answer(name, hands)), perf_counter() - began


def main(words: Sequence[str]) -> None:
    """Print a row for each drawing, and all of them together."""
    parser = argparse.ArgumentParser()
    parser.add_argument("names", nargs="*")
    parser.add_argument("--off", action="store_true")
    parser.add_argument("--keep", type=Path)
    parser.add_argument("--hands", type=Path, default=by_hand.HANDS)
    asked = parser.parse_args(words)
    heads = "".join(f"{each:>9}" for each in _SHOWN)
    print(f"{'drawing':16}{heads}  wrong told silent asked seconds")
    there, found, wrong = Counter[str](), Counter[str](), Counter[str]()
    with TemporaryDirectory() as scratch:
        for name in asked.names or by_hand.names(asked.hands):
            score, seconds = looked_at(name, asked.keep or Path(scratch), asked.hands)
            for total, own in ((there, score.there), (found, score.found), (wrong, score.wrong)):
                total.update(own)
            print(_row(name, score, seconds))
            if asked.off:
                print("".join(f"    told   {each}\n" for each in score.told), end="")
                print("".join(f"    silent {each}\n" for each in score.silent), end="")
    shares = "".join(f"{found[k]:>4}/{there[k]:<4}" for k in _SHOWN)
    print(f"{'all':16} {shares} {wrong.total():>5}")


def _row(name: str, score: Score, seconds: float) -> str:
    shares = "".join(f"{score.found[k]:>4}/{score.there[k]:<4}" for k in _SHOWN)
    ends = f"{sum(score.wrong.values()):>5} {len(score.told):>4} {len(score.silent):>6}"
    errors = "  errors" if score.errors else ""
    return f"{name:16} {shares} {ends} {score.questions:>5} {seconds:>7.1f}{errors}"


if __name__ == "__main__":
    main(sys.argv[1:])
