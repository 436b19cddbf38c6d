"""Circles of supporters by name, and plans that name one."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from kerfolio.basis.place import NOWHERE
from kerfolio.model.circle import Circle
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import lay_down
from tests.publishing.small_shop import BOARD, WORKSHOP

NAMED = """\
circles:
  friends: {who: Friends of the bench, gives: 4 EUR a month}
  patrons: {who: Patrons}
"""


def told(folder: Path, circles: str, plan: str) -> list[str]:
    shop = lay_down(folder, BOARD + plan, "board", WORKSHOP.replace("look:", "#") + circles)
    (shop / "plans" / "board" / "whole.png").touch()
    workshop, found = read_workshop(shop, pictures=False)
    assert workshop is not None
    proof = prove_plan(workshop.plans[0], workshop.stock)
    heard = (*found, *proof.findings)
    about = ("unknown-name", "name", "show-open", "missing-key", "wrong-kind")
    return [f"{each.message} {each.advice}" for each in heard if each.rule in about]


def test_circles_have_names_or_are_listed(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "named", BOARD, "board", WORKSHOP + NAMED)
    workshop, _ = read_workshop(shop, pictures=False)
    assert workshop is not None
    assert tuple(replace(each, place=NOWHERE) for each in workshop.identity.circles) == (
        Circle(name="friends", who="Friends of the bench", gives="4 EUR a month"),
        Circle(name="patrons", who="Patrons"),
    )
    shop = lay_down(tmp_path / "listed", BOARD, "board", WORKSHOP + "circles: [{who: Friends}]")
    workshop, _ = read_workshop(shop, pictures=False)
    assert workshop is not None
    assert [(each.name, each.who) for each in workshop.identity.circles] == [("", "Friends")]


@pytest.mark.parametrize(
    ("circles", "plan", "expected"),
    [
        (NAMED, "access: supporters\ncircle: patrons\nopens-to-all: 2027-03-01", []),
        (NAMED, "access: supporters", []),
        (
            *(NAMED, "access: supporters\ncircle: freinds"),
            ["unknown circle `freinds` Did you mean `friends`?"],
        ),
        (
            *("circles: [{who: Friends}]", "access: supporters\ncircle: friends"),
            [
                "unknown circle `friends` "
                "Name it in `workshop.yaml`: `circles: {friends: {who: ...}}`."
            ],
        ),
        (
            *(NAMED, "circle: friends\nopens-to-all: 2027-03-01"),
            [
                "`circle` does nothing: the plan is open "
                "Take it out, or write `access: supporters`.",
                "`opens-to-all` does nothing: the plan is open "
                "Take it out, or write `access: supporters`.",
            ],
        ),
        (
            *("circles: {Good Friends: {who: Friends}}", ""),
            [
                "`Good Friends` is no name "
                "Write `good-friends`: lower case letters, digits and inner hyphens."
            ],
        ),
        (
            *("circles: friends", ""),
            [
                "expected circles by their names, found `friends` Write "
                "`friends: {who: Friends of the bench, gives: 4 EUR a month}`, a line each."
            ],
        ),
    ],
)
def test_a_plan_names_a_circle_that_is_there(
    tmp_path: Path, circles: str, plan: str, expected: list[str]
) -> None:
    assert told(tmp_path, circles, plan) == expected
