"""The form of what a workshop's router can do."""

from __future__ import annotations

import re
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.said import written
from kerfolio.model.router import Router
from kerfolio.model.stock import MACHINES
from kerfolio.reading.amounts import PASS_MM
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.play import MmForm
from kerfolio.reading.rates import FEED, RPM
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import SCALAR, choice

_RANGE = re.compile(r"([0-9]+) to ([0-9]+)(?: rpm)?")


def _speeds(node: Scalar) -> tuple[float, float] | Complaint:
    text = node.text.strip()
    found = _RANGE.fullmatch(text)
    if not found:
        return Complaint(f"{quoted(text)} is no range of speeds")
    least, most = float(found[1]), float(found[2])
    if RPM[0] <= least < most <= RPM[1]:
        return least, most
    return Complaint(
        f"{quoted(text)} is no range of speeds for a router",
        "The slower speed stands first; cutters turn 100 to 100000 rpm.",
    )


_SPEEDS: ScalarForm[tuple[float, float]] = ScalarForm(
    noun="a range of speeds",
    advice="Write the slowest and the fastest: `8000 to 24000 rpm`.",
    convert=_speeds,
    json=SCALAR,
)


def _make(**values: Any) -> Router:
    return Router(**values)


ROUTER: Record[Router] = Record(
    name="machine",
    noun="a machine",
    keys=(
        Key(
            name="class",
            form=choice("a class of machine", *MACHINES),
            says="Which chip loads are meant for it.",
            field="kind",
        ),
        Key(name="speed", form=_SPEEDS, says="What its spindle turns at: 8000 to 24000 rpm."),
        Key(name="feed", form=FEED, says="The fastest it feeds: 6000 mm/min."),
        Key(
            name="pass",
            form=MmForm(noun=PASS_MM.noun, advice=PASS_MM.advice, amount=PASS_MM),
            says="The deepest that it cuts in one pass.",
            field="deepest",
        ),
    ),
    make=_make,
    placed=False,
    advice=written(
        "{class: small shop, speed: 8000 to 24000 rpm, feed: 6000 mm/min, pass: 10 mm}",
        "{class: small shop, speed: 8000 to 24000 rpm, feed: 240 in/min, pass: 3/8 in}",
    ),
)
