"""Cut settings against the workshop's machine: its own figures, else common practice."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import WORKSHOP, lay_down
from tests.proving.two_panels import plan_text

RULES = ("speed-out-of-reach", "feed-out-of-reach", "pass-over-machine")
CHIPS = ("chip-too-thin", "chip-too-thick", "machine-unsaid")
SETTING = "cutter: compression-6, speed: {speed} rpm, feed: {feed} mm/min, passes: {passes}"
MACHINE = (
    "machine: {class: light hobby, speed: 10000 to 24000 rpm, feed: 3000 mm/min, pass: 9 mm}\n"
)


def found(
    machine: str = "", speed: int = 18000, feed: int = 2800, passes: str = "[9, rest]"
) -> list[Finding]:
    setting = SETTING.format(speed=speed, feed=feed, passes=passes)
    text = plan_text(head=f"cuts:\n  profile: {{sheet: ply, {setting}, skim: 0.2, bridges: 4}}")
    with TemporaryDirectory() as folder:
        shop, faults = read_workshop(
            lay_down(Path(folder) / "shop", text, "panels", WORKSHOP + machine)
        )
    assert shop is not None, faults
    return list(prove_plan(shop.plans[0], shop.stock).findings)


def told(*rules: str, **asked: object) -> list[str]:
    return [each.message for each in found(**asked) if each.rule in rules]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("asked", "messages"),
    [
        ({"machine": MACHINE}, []),
        ({"machine": MACHINE, "speed": 24000}, []),
        ({"machine": MACHINE, "speed": 28000}, ["`profile` turns at 28000 rpm"]),
        ({"machine": MACHINE, "speed": 9000}, ["`profile` turns at 9000 rpm"]),
        ({"speed": 28000}, []),
        ({"speed": 40000}, ["`profile` turns at 40000 rpm"]),
        ({"machine": MACHINE, "feed": 3000}, []),
        ({"machine": MACHINE, "feed": 3600}, ["`profile` feeds 3600 mm/min"]),
        ({"feed": 3600}, []),
        ({"machine": MACHINE, "passes": "[7, rest]"}, ["`profile` takes 11 mm at once"]),
        ({"passes": "[7, rest]"}, []),
    ],
)
def test_what_the_machine_does_not_reach_is_told(
    asked: dict[str, object], messages: list[str]
) -> None:
    assert told(*RULES, **asked) == messages


@pytest.mark.parametrize(
    ("kind", "feed", "messages"),
    [
        # 2 flutes at 18000 rpm: 0.04, 0.1, 0.2 and 0.36 mm a tooth; 1.5 diameters deep leave 7/8.
        ("light hobby", 1440, []),
        ("light hobby", 3600, []),
        ("light hobby", 10000, ["`profile`: a chip of 0.278 mm overloads the cutter"]),
        ("light hobby", 720, ["`profile`: a chip of 0.02 mm rubs and burns"]),
        ("small shop", 1440, ["`profile`: a chip of 0.04 mm rubs and burns"]),
        ("small shop", 3600, []),
        ("small shop", 13000, ["`profile`: a chip of 0.361 mm overloads the cutter"]),
        ("industrial", 3600, ["`profile`: a chip of 0.1 mm rubs and burns"]),
        ("industrial", 13000, []),
        ("", 3600, []),
        ("", 1440, ["`profile`: a chip of 0.04 mm is right on light hobby machines alone"]),
        ("", 13000, ["`profile`: a chip of 0.361 mm is right on industrial machines alone"]),
    ],
)
def test_chips_are_judged_by_the_class_of_machine(
    kind: str, feed: int, messages: list[str]
) -> None:
    machine = f"machine: {{class: {kind}}}\n" if kind else ""
    assert told(*CHIPS, machine=machine, feed=feed) == messages


def test_the_advice_keeps_to_what_the_machine_can_do() -> None:
    machine = "machine: {class: small shop, speed: 16000 to 24000 rpm, feed: 2000 mm/min}\n"
    (thin,) = [each for each in found(machine, feed=1440) if each.rule == "chip-too-thin"]
    assert thin.advice.startswith("To thicken it, take a cutter of fewer flutes. Published are ")
    assert "(small shop; " in thin.advice
    wide = machine.replace("16000", "8000").replace("2000 mm", "4000 mm")
    (thin,) = [each for each in found(wide, feed=1440) if each.rule == "chip-too-thin"]
    assert thin.advice.startswith(
        "To thicken it, feed 2500 mm/min or more, or turn at 10700 rpm or less, or take a cutter "
    )
