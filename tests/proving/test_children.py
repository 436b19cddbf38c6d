"""Openings as wide as a child's finger: up to 12 mm by DIN EN 747-1:2015-08, 4.1.2.1; from 5 mm on
from memory of EN 716 and EN 14988.
"""

from __future__ import annotations

import pytest

from tests.proving.two_panels import plan_text, told

RULE = "finger-trap"


@pytest.mark.parametrize(
    ("feature", "message"),
    [
        ("hole: {at: [100, 150], diameter: 8}", "hole `side.f` is 8 mm wide: a finger's width"),
        ("hole: {at: [100, 150], diameter: 4.5}", ""),
        ("hole: {at: [100, 150], diameter: 13}", ""),
        (
            "window: {at: [100, 150], rounded-slot: [60, 10]}",
            "window `side.f` is 10 mm wide: a finger's width",
        ),
        (
            "slot: {at: [100, 150], length: 60, width: 12}",
            "slot `side.f` is 12 mm wide: a finger's width",
        ),
        # Filled by a sheet, a bolt or a screw.
        ("slot: {at: [100, 150], length: 60, takes: ply}", ""),
        ("hole: {at: [100, 150], for: bolt-m6x40}", ""),
    ],
)
def test_openings_for_fingers(feature: str, message: str) -> None:
    side = f"f: {{{feature}}}"
    rail = "r: {hole: {at: [150, 60], diameter: 20}}"
    plain = plan_text(side, rail)
    assert told(plain, RULE) == []
    children = plan_text(side, rail, head="for-children: true")
    assert told(children, RULE) == ([message] if message else [])


@pytest.mark.parametrize(
    ("stated", "messages"),
    [
        # 3.5 to 9 in (ASTM F1487, from memory).
        (
            "window: {at: [200, 150], circle: 100}",
            ["window `side.f` is 100 mm wide: it holds a head"],
        ),
        (
            "window: {at: [200, 150], rounded-slot: [250, 120]}",
            ["window `side.f` is 120 mm wide: it holds a head"],
        ),
        ("window: {at: [200, 150], rounded-slot: [250, 80]}", []),
        ("window: {at: [200, 150], circle: 235}", []),
        ("pocket: {at: [200, 150], circle: 120, depth: 5}", []),
    ],
)
def test_openings_that_hold_a_head_are_told(stated: str, messages: list[str]) -> None:
    text = plan_text(f"f: {{{stated}}}", head="for-children: true")
    assert told(text, "head-trap") == messages
    assert told(text.replace("for-children: true", ""), "head-trap") == []


@pytest.mark.parametrize(
    ("title", "refused"),
    [
        ("Cot of birch", "“Cot”: no plan for a cot is published from here"),
        ("A loft bed", "“loft bed”: no plan for a bunk bed is published from here"),
        ("Kinderhochstuhl", "“Kinderhochstuhl”: no plan for a high chair is published from here"),
        ("Child's chair", ""),
        ("A high shelf", ""),
        ("Cottage table", ""),
    ],
)
def test_what_children_sleep_or_are_strapped_in_is_refused(title: str, refused: str) -> None:
    text = plan_text().replace("plan: Two panels", f"plan: {title}")
    assert told(text, "child-bed-refused") == ([refused] if refused else [])
