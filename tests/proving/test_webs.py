"""Too little wood beside openings, and necks: multiples of thickness are common practice."""

from __future__ import annotations

import pytest

from tests.settling.panels import findings_of

SHEET = 17.8


def told(features: str, **asked: str) -> list[tuple[str, str]]:
    rules = ("breaks-out", "thin-neck")
    found = findings_of(features, **asked)
    return [(each.rule, each.message) for each in found if each.rule in rules]


@pytest.mark.parametrize(
    ("features", "expected"),
    [
        # 18 mm slot 10 mm below the top edge: middle at 300 - 10 - 9 = 281.
        (
            "s: {slot: {at: [200, 281], length: 60, width: 18}}",
            [("breaks-out", "10 mm of wood between slot `panel.s` and the edge")],
        ),
        # Three quarters of 17.8 mm are 13.35 mm.
        ("s: {slot: {at: [200, 277.5], length: 60, width: 18}}", []),
        (
            """
a: {slot: {at: [100, 150], length: 60, width: 18}}
b: {slot: {at: [100, 178], length: 60, width: 18}}
""",
            [("breaks-out", "10 mm of wood between slot `panel.a` and slot `b`")],
        ),
        # The notch is 40 deep, so its bottom is at 260; the window's top is at 252.
        (
            """
n: {notch: {edge: top, at: 100, depth: 40, width: 18}}
w: {window: {at: [100, 232], rectangle: [60, 40]}}
""",
            [("breaks-out", "8 mm of wood between notch `panel.n` and window `w`")],
        ),
        # A hole is filled by its bolt: a quarter of the sheet, 4.45 mm, is enough beside it.
        ("h: {hole: {at: [9, 150], diameter: 8}}", []),
        (
            "h: {hole: {at: [8, 150], diameter: 8}}",
            [("breaks-out", "4 mm of wood between hole `panel.h` and the edge")],
        ),
        # What does not go through leaves a floor.
        ("p: {pocket: {at: [200, 286], rectangle: [60, 20], depth: 6}}", []),
        ("h: {hole: {at: [6, 150], diameter: 8, depth: 6}}", []),
    ],
)
def test_wood_beside_openings(features: str, expected: list[tuple[str, str]]) -> None:
    assert told(features) == expected


def test_relief_counts_for_what_is_left() -> None:
    # A sideways relief of 3.05 mm eats the long walls of the slot, towards its neighbour.
    pair = """
a: {slot: {at: [100, 150], length: 60, takes: ply}}
b: {slot: {at: [100, 184], length: 60, takes: ply}}
"""
    # 34 mm less 18 mm are 16 mm; two reliefs leave 9.9 mm.
    assert told(pair, relief="none") == []
    message = "9.9 mm of wood between slot `panel.a` and slot `b`"
    assert told(pair, relief="sideways") == [("breaks-out", message)]


def test_copies_make_one_remark_with_a_ring_for_each() -> None:
    row = """
s:
  slot: {at: [60, 150], length: 60, width: 18, angle: 90}
  repeat: {count: 4, step: [28, 0]}
"""
    (finding,) = [each for each in findings_of(row) if each.rule == "breaks-out"]
    assert finding.message == "10 mm of wood between slot `panel.s.1` and slot `s.2`"
    assert finding.mark is not None
    assert [round(ring.x) for ring in finding.mark.rings] == [74, 102, 130]


WAIST = (
    "{polygon: [[0, 0], [400, 0], [400, 300], [230, 300], "
    "[230, %s], [170, %s], [170, 300], [0, 300]]}"
)


def test_a_waist_of_the_outline_is_a_neck() -> None:
    hole = "h: {hole: {at: [40, 40], diameter: 8}}"
    narrow = told(hole, outline=WAIST % (8, 8))
    assert narrow == [("thin-neck", "a neck of `panel` is 8 mm wide at 200 mm, 4 mm")]
    assert told(hole, outline=WAIST % (9, 9)) == []  # half of 17.8 mm


def test_a_thin_tab_is_a_tongue() -> None:
    thin = "t: {tabs: {edge: top, at: 100, width: %s, depth: 40}}"
    assert told(thin % 8) == [
        ("thin-neck", "a tongue of `panel` is 6.3 mm wide at 104 mm, 302.5 mm"),
    ]
    assert told(thin % 12) == []
