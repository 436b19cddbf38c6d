"""Openings as wide as a child's finger; 5 to 12 mm is from memory of EN 716 and EN 14988."""

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
