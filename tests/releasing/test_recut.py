"""What the newest release cuts as an older one did; the answers follow from the plans by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.releasing.recut import cut_since
from tests.releasing.pairs import RACK
from tests.releasing.test_pairs import recorded, with_changes

PLY = "birch-plywood-18"
BOTH = ("side", "rail")


@pytest.mark.parametrize(
    ("changes", "parts", "sheets"),
    [
        ((("Two sides and a rail.", "Two sides, one rail."),), BOTH, (PLY,)),
        ((("w: 300", "w: 320"),), ("side",), ()),
        ((("fit: 0.1", "fit: 0.15"),), ("rail",), ()),
        ((("17.4 to 18.2", "17.2 to 18.4"),), BOTH, (PLY,)),  # a wider range alone cuts nothing
        ((("17.4 to 18.2", "18.3 to 18.6"), ("for: 17.8", "for: 18.5")), (), ()),
        ((("pieces: [left, right]", "pieces: [left, right, spare]"),), BOTH, ()),
        ((("birch-plywood-18", "mdf-18"),), (), ()),
    ],
)
def test_what_is_cut_as_it_was_is_told_part_by_part_and_sheet_by_sheet(
    changes: tuple[tuple[str, str], ...], parts: tuple[str, ...], sheets: tuple[str, ...]
) -> None:
    new = with_changes(RACK, changes)
    old, _ = cut_since((recorded(RACK), replace(recorded(new), version="1.1.0")))
    assert (old.parts, old.sheets) == (parts, sheets)


def test_a_part_of_another_name_is_known_and_one_that_is_gone_is_told() -> None:
    renamed = RACK.replace("rail:\n    sheet", "bar:\n    sheet").replace("rail.l", "bar.l")
    renamed = renamed.replace("rail.r", "bar.r")
    old, _ = cut_since((recorded(RACK), replace(recorded(renamed), version="1.1.0")))
    assert (old.parts, old.sheets) == (BOTH, (PLY,))
    back, _ = cut_since((recorded(_with_foot()), replace(recorded(RACK), version="1.1.0")))
    assert (back.parts, back.sheets) == (BOTH, ())


def _with_foot() -> str:
    foot = "  foot:\n    sheet: ply\n    outline: {rectangle: [90, 40]}\n"
    return RACK.replace("joints:", f"{foot}joints:")


def test_reliefs_are_cut_too() -> None:
    record = recorded(RACK)
    parts = tuple(replace(e, cut="other") if e.name == "side" else e for e in record.parts)
    old, _ = cut_since((record, replace(record, version="1.1.0", parts=parts)))
    assert (old.parts, old.sheets) == (("rail",), ())


def test_without_two_records_there_is_nothing_to_compare() -> None:
    assert cut_since(()) == ()
    (only,) = cut_since((recorded(RACK),))
    assert (only.version, only.by, only.sheets) == ("1.0.0", "1.0.0", (PLY,))
