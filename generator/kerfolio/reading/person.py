"""Forms of who uses a thing, and of the floor it stands on."""

from __future__ import annotations

import re
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.figures import figure
from kerfolio.basis.masses import GRAVITY, KG_PER_POUND
from kerfolio.basis.said import written
from kerfolio.model.person import Person
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.record import Key, Record

_KG_PER_LB = float(KG_PER_POUND)
_EXAMPLE = written("person: {kg: 90, push-n: 150}", "person: {lb: 200, push-lbf: 35}")


def _number(noun: str, least: float, most: float) -> ScalarForm[float]:
    def convert(node: Scalar) -> float | Complaint:
        text = node.text.strip()
        if re.fullmatch(r"[0-9]{1,4}(?:\.[0-9]{1,3})?", text) and least <= float(text) <= most:
            return float(text)
        return Complaint(f"{quoted(text)} is no {noun}")

    return ScalarForm(
        noun=f"a {noun}",
        advice=f"Write a number from {figure(least, 2)} to {figure(most)}.",
        convert=convert,
        json={"type": "number", "minimum": least, "maximum": most},
    )


def _make_person(place: Any = None, **values: float) -> Person:
    found = {key: value for key, value in values.items() if key in ("kg", "push")}
    if "lb" in values:
        found["kg"] = values["lb"] * _KG_PER_LB
    if "lbf" in values:
        found["push"] = values["lbf"] * _KG_PER_LB * GRAVITY
    return Person(**found, place=place)


PERSON: Record[Person] = Record(
    name="person",
    noun="a person",
    keys=(
        Key(name="kg", form=_number("person's mass", 10, 400), says="Their mass, in kg."),
        Key(name="lb", form=_number("person's weight", 20, 900), says="Their mass, in pounds."),
        Key(
            name="push-n",
            form=_number("push", 10, 2000),
            says="How hard they lean or plane, level, in N.",
            field="push",
        ),
        Key(
            name="push-lbf",
            form=_number("push", 2, 450),
            says="How hard they lean or plane, level, in pounds-force.",
            field="lbf",
        ),
    ),
    make=_make_person,
    not_both=(("kg", "lb"), ("push-n", "push-lbf")),
    advice=_EXAMPLE,
)
FRICTION = _number("friction", 0.05, 1.5)
