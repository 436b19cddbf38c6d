"""A frozen layout comes back as it was, is reused while it holds, and broken ones are findings."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache, partial

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.place import Place
from kerfolio.geometry.shapes import rectangle
from kerfolio.geometry.transform import moved
from kerfolio.layouts import frozen, plan_layout
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.fingerprint import fingerprint, placements_digest
from kerfolio.layouts.frozen import CHANGED, MISSING, UNCOUNTED, freeze, lost_with
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.layouts.thawing import thaw
from kerfolio.settling.settled import (
    SettledClamp,
    SettledOffcut,
    SettledPart,
    SettledPiece,
    SettledPlan,
    SettledSheet,
)
from tests.layouts.plans import part_of, plan_of, sheet_of, two_boards

FILE = Place("plans/trial-plan/layout.json")
BRIEF = Effort(moves=500_000)
layout_for = partial(frozen.layout_for, effort=BRIEF)


def laid_out(settled: SettledPlan) -> Layout:
    layout, findings = lay_out([settled], BRIEF)
    assert layout is not None
    assert findings == ()
    return layout


def with_part(settled: SettledPlan, **changes: object) -> SettledPlan:
    first, *others = settled.parts
    return replace(settled, parts=(replace(first, **changes), *others))  # type: ignore[arg-type]


def with_sheet(settled: SettledPlan, **changes: object) -> SettledPlan:
    sheet: SettledSheet = replace(settled.sheets[0], **changes)  # type: ignore[arg-type]
    return replace(settled, sheets=(sheet,))


def test_a_frozen_layout_reads_well() -> None:
    settled = plan_of((part_of("leg", rectangle(0, 0, 700, 60)),))
    text = freeze(replace(laid_out(settled), computed_from="0123", as_computed="4567"))
    assert text == (
        "{\n"
        '  "as-computed": "4567",\n'
        '  "bound": {"ply": 1},\n'
        '  "computed-from": "0123",\n'
        '  "copies": [{"counts": [1, 1, 1, 1, 1, 1], "sheet": "ply", "size": [2440, 1220]}],\n'
        '  "engine": "own-2",\n'
        '  "format": 4,\n'
        '  "seed": 0,\n'
        '  "sheets": [\n'
        "    {\n"
        '      "number": 1,\n'
        '      "pieces": [\n'
        '        {"part": "leg", "piece": "leg", "turn": 90, "x": 70, "y": 10}\n'
        "      ],\n"
        '      "sheet": "ply",\n'
        '      "size": [2440, 1220]\n'
        "    }\n"
        "  ]\n"
        "}\n"
    )


def test_a_layout_comes_back_as_it_was_frozen() -> None:
    layout = laid_out(two_boards())
    assert thaw(freeze(layout), FILE) == (layout, ())
    assert json.loads(freeze(layout))["computed-from"] == fingerprint([two_boards()])


def test_a_layout_of_nothing_comes_back() -> None:
    layout = laid_out(plan_of(()))
    assert layout.sheets == ()
    assert thaw(freeze(layout), FILE) == (layout, ())


def test_the_frozen_layout_is_reused_while_it_holds() -> None:
    text = freeze(laid_out(two_boards()))
    assert layout_for([two_boards()], text) == (laid_out(two_boards()), "", ())


def test_unchanged_parts_start_no_solver(monkeypatch: pytest.MonkeyPatch) -> None:
    text = freeze(laid_out(two_boards()))

    def start(*_: object) -> None:
        raise AssertionError("a solver was started")

    for solver in ("lay_out", "counted"):
        monkeypatch.setattr(plan_layout, solver, start)
    assert layout_for([two_boards()], text)[1] == ""
    with pytest.raises(AssertionError, match="a solver"):
        layout_for([with_sheet(two_boards(), margin=9.0)], text)


def test_without_a_frozen_layout_one_is_computed() -> None:
    assert layout_for([two_boards()], " \n") == (laid_out(two_boards()), MISSING, ())


def test_a_move_by_hand_that_proves_is_honoured() -> None:
    text = _moved(freeze(laid_out(two_boards())), "disc", x=1500.0)
    layout, why, findings = layout_for([two_boards()], text)
    assert (why, findings) == ("", ())
    assert layout is not None
    assert {each.piece: each.x for each in layout.sheets[0].placements}["disc"] == 1500.0


def test_a_move_by_hand_onto_another_piece_names_the_two() -> None:
    layout = laid_out(two_boards())
    there = next(each for each in layout.sheets[0].placements if each.piece == "board.b")
    text = _moved(freeze(layout), "disc", x=there.x + 50, y=there.y + 50)
    found, why, findings = layout_for([two_boards()], text)
    assert (found, why) == (None, "")
    assert [str(each) for each in findings] == [
        "plans/trial-plan/layout.json:14:27: error: `board.b` and `disc` overlap [layout-overlap]\n"
        "    Mend it, or run `kerfolio layout` to compute it anew."
    ]


def test_a_layout_that_fails_one_variant_only_is_an_error() -> None:
    large = with_part(two_boards(), routed=part_of("board", rectangle(0, 0, 401, 301)).routed)
    layout = replace(laid_out(two_boards()), computed_from=fingerprint([two_boards(), large]))
    found, why, findings = layout_for([two_boards(), large], freeze(layout))
    assert (found, why) == (None, "")
    assert [each.rule for each in findings][:1] == ["layout-gap"]


def test_a_changed_plan_is_laid_out_anew() -> None:
    text = freeze(laid_out(two_boards()))
    changed = with_part(two_boards(), routed=part_of("board", rectangle(0, 0, 900, 600)).routed)
    assert layout_for([changed], text) == (laid_out(changed), CHANGED, ())


@pytest.mark.parametrize("by_hand", [False, True])
def test_what_was_frozen_before_does_not_matter_once_the_shapes_have_changed(by_hand: bool) -> None:
    """A layout that still proves on other shapes would make two sites of one plan."""
    text = freeze(laid_out(two_boards()))
    slimmer = with_part(two_boards(), routed=part_of("board", rectangle(0, 0, 399.6, 300)).routed)
    old = _moved(text, "disc", x=1500.0) if by_hand else text
    assert layout_for([slimmer], old)[:2] == (laid_out(slimmer), CHANGED)
    assert layout_for([slimmer], "")[:2] == (laid_out(slimmer), MISSING)


def test_a_layout_on_other_sheets_is_computed_anew_though_it_proves() -> None:
    text = freeze(laid_out(two_boards()))
    wider = with_sheet(two_boards(), margin=9.0)
    assert layout_for([wider], text) == (laid_out(wider), CHANGED, ())


@cache
def _other() -> Layout:
    large = part_of("board", rectangle(0, 0, 900, 600))
    return laid_out(with_part(two_boards(), routed=large.routed))


def _lost(text: str) -> str:
    return lost_with(text, FILE, placements_digest(_other().sheets))


def test_what_the_own_placer_computed_is_no_loss() -> None:
    assert _lost(freeze(laid_out(two_boards()))) == ""
    assert _lost(" \n") == ""


def test_a_move_by_hand_would_be_lost() -> None:
    text = freeze(laid_out(two_boards()))
    assert _lost(_moved(text, "disc", x=1500.0)) == "it was moved by hand"
    stated = json.loads(text)
    del stated["as-computed"]
    old = json.dumps(stated | {"format": 3, "sheets-from": "4567"})
    assert _lost(old) == "it may have been moved by hand"
    assert _lost(text[:-9]) == "it could not be read"


def test_other_white_space_is_no_move_by_hand() -> None:
    assert _lost(json.dumps(json.loads(freeze(laid_out(two_boards()))))) == ""


@pytest.mark.parametrize(
    ("engine", "by"),
    [
        ("own-2, packingsolver-0.1.9", "packingsolver-0.1.9"),
        ("own-2 + spyrrow-0.9.0", "spyrrow-0.9.0"),
        ("own-1", ""),
        ("", ""),
    ],
)
def test_the_answer_of_an_engine_would_be_lost(engine: str, by: str) -> None:
    text = freeze(replace(laid_out(two_boards()), engine=engine))
    assert _lost(text) == (f"it was laid out by {by}" if by else "")


def test_nothing_is_lost_where_the_pieces_stay_where_they_were() -> None:
    layout = laid_out(two_boards())
    moved_by_hand = _moved(freeze(layout), "disc", x=1500.0)
    same, _ = thaw(moved_by_hand, FILE)
    assert same is not None
    assert lost_with(moved_by_hand, FILE, placements_digest(same.sheets)) == ""
    assert (
        lost_with(moved_by_hand, FILE, placements_digest(layout.sheets)) == "it was moved by hand"
    )


def test_a_file_of_the_first_format_still_holds() -> None:
    stated = json.loads(freeze(laid_out(two_boards())))
    old = {key: stated[key] for key in ("computed-from", "engine", "sheets")} | {"format": 1}
    layout, why, findings = layout_for([two_boards()], json.dumps(old))
    assert (why, findings) == (UNCOUNTED, ()), "it is written anew, its pieces where they were"
    assert layout is not None
    assert layout.sheets == laid_out(two_boards()).sheets
    assert layout.bounds == (("ply", 1),)


def test_a_table_that_knows_no_sizes_is_made_anew() -> None:
    stated = json.loads(freeze(laid_out(two_boards())))
    stated |= {"format": 2, "copies": {"ply": [1, 1, 1, 1, 1, 1]}}
    found = layout_for([two_boards()], json.dumps(stated))
    assert found == (laid_out(two_boards()), UNCOUNTED, ())


def _moved(text: str, piece: str, **to: float) -> str:
    stated = json.loads(text)
    for sheet in stated["sheets"]:
        for each in sheet["pieces"]:
            if each["piece"] == piece:
                each.update(to)
    layout, findings = thaw(json.dumps(stated), FILE)
    assert layout is not None, findings
    return freeze(layout)


def _changes() -> dict[str, SettledPlan]:
    plan = two_boards()
    board: SettledPart = plan.parts[0]
    stock = replace(plan.sheets[0].stock, grain=False)
    return {
        "a shape": with_part(plan, routed=moved(board.routed, 0.001, 0)),
        "a count": with_part(plan, pieces=(*board.pieces, SettledPiece(label="board.c", mark="c"))),
        "grain": with_part(plan, grain="any"),
        "the sheet's size": with_sheet(plan, size=(2500.0, 1250.0)),
        "the gap": with_sheet(plan, gap=9.0),
        "the margin": with_sheet(plan, margin=12.0),
        "the sheet's grain": with_sheet(plan, stock=stock),
        "another size": with_sheet(plan, also=((1220.0, 1220.0),)),
        "an offcut": with_sheet(plan, offcuts=(SettledOffcut(size=(600.0, 400.0), count=1),)),
        "a clamp": with_sheet(plan, clamps=(SettledClamp(edge="left", at=9, width=9, depth=9),)),
    }


@pytest.mark.parametrize("what", sorted(_changes()))
def test_the_fingerprint_changes_with(what: str) -> None:
    assert fingerprint([_changes()[what]]) != fingerprint([two_boards()])


def test_the_fingerprint_does_not_change_with_words_or_a_ten_thousandth() -> None:
    plan = two_boards()
    other = replace(
        plan.plan, title="Renamed", summary="Told anew.", version="2.0.0", cautions=("Mind it.",)
    )
    board = plan.parts[0]
    renamed = replace(
        with_part(plan, note="Sand it.", mark="Z", routed=moved(board.routed, 0.00004, -0.00004)),
        plan=other,
    )
    assert fingerprint([renamed]) == fingerprint([plan])


def test_the_fingerprint_is_a_sha_256() -> None:
    assert len(bytes.fromhex(fingerprint([two_boards()]))) == 32


SHEET = '{"number": 1, "pieces": [%s], "sheet": "ply", "size": [2440, 1220]}'
WHOLE = '{"computed-from": "", "engine": "x", "format": 1, "sheets": [%s]}'
THIRD = '{"copies": [], "computed-from": "", "engine": "x", "format": 3, "sheets": []}'
ROW = '{"counts": [1, 2], "sheet": "ply", "size": [2440, 1220]}'
PIECE = '{"part": "leg", "piece": "leg", "turn": 0, "x": 10, "y": 10}'


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("{", "no JSON: expecting property name enclosed in double quotes"),
        ("", "no JSON: expecting value"),
        ("[]", "the layout is no object in braces"),
        ("[" * 100_000, "no readable JSON"),
        ('{"format": 1, "format": 1}', "`format` stands twice in one place"),
        ('{"format": 1}', "the layout has no `computed-from`"),
        ((WHOLE % "").replace("sheets", "sheet"), "unknown key `sheet` in the layout"),
        ((WHOLE % "").replace('"format": 1', '"format": 5'), "format `5` is not known"),
        ((WHOLE % "").replace("[]", "{}"), "`sheets` of the layout is no list"),
        ((WHOLE % "").replace('"x"', "7"), "`engine` of the layout is no plain text"),
        ((WHOLE % "").replace('"x"', '"x", "seed": -1'), "`-1` at the layout is no count"),
        ((WHOLE % "").replace('"x"', '"x", "bound": []'), "`bound` of the layout is no object"),
        (
            THIRD.replace("[]", '{"ply": 1}', 1),
            "`copies` of the layout is no list",
        ),
        (THIRD.replace("[]", "[7]", 1), "`copies` is no object in braces"),
        (
            THIRD.replace("[]", f"[{ROW.replace('1,', '-1,')}]", 1),
            "`-1` at `copies` is no count",
        ),
        (
            THIRD.replace("[]", f"[{ROW.replace('[2440, 1220]', '[1]')}]", 1),
            "the size of `copies` is not two numbers",
        ),
        (WHOLE % "3", "a sheet is no object in braces"),
        (WHOLE % (SHEET % "").replace("1,", "true,"), "`true` is no number of a sheet"),
        (
            WHOLE % (SHEET % "").replace("[2440, 1220]", "[1]"),
            "the size of sheet 1 is not two numbers",
        ),
        (WHOLE % (SHEET % PIECE.replace('"x": 10', '"x": "10"')), '`"10"` at `leg` is no number'),
        (WHOLE % (SHEET % PIECE.replace('"x": 10', '"x": NaN')), "`NaN` is no number"),
        (
            WHOLE % (SHEET % PIECE.replace('"x": 10', '"x": 1e999')),
            "a number at `leg` is out of range",
        ),
        (
            WHOLE % (SHEET % PIECE.replace('"x": 10', f'"x": {"9" * 900}')),
            "a number at `leg` is out of range",
        ),
        (WHOLE % (SHEET % PIECE.replace('"x": 10', f'"x": {"9" * 9000}')), "no readable JSON"),
        (WHOLE % (SHEET % PIECE.replace(', "y": 10', "")), "a piece has no `y`"),
        (
            WHOLE % (SHEET % PIECE.replace('"leg", "turn"', '"\\ud800", "turn"')),
            "`piece` of a piece is no plain text",
        ),
    ],
)
def test_broken_files_are_findings(text: str, message: str) -> None:
    layout, findings = thaw(text, FILE)
    assert layout is None
    assert [each.message for each in findings] == [message]
    assert findings[0].rule == "layout-file"
    assert findings[0].place.file == FILE.file
    assert findings[0].advice


def test_broken_json_is_placed() -> None:
    _, findings = thaw('{\n  "format" 1\n}', FILE)
    assert str(findings[0].place) == "plans/trial-plan/layout.json:2:12"


def test_a_broken_frozen_layout_stops_the_plan() -> None:
    layout, why, findings = layout_for([two_boards()], "{}")
    assert (layout, why) == (None, "")
    assert [each.message for each in findings] == ["the layout has no `computed-from`"]


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.sampled_from(["format", "sheets", "engine", "computed-from"]), _JSON)
def test_whatever_stands_in_the_file_is_read_or_refused(key: str, value: object) -> None:
    stated = {**json.loads(WHOLE % (SHEET % PIECE)), key: value}
    layout, findings = thaw(json.dumps(stated), FILE)
    assert (layout is None) == bool(findings)


def test_pieces_of_another_sheet_material_are_kept_apart() -> None:
    parts = (
        part_of("side", rectangle(0, 0, 900, 400)),
        part_of("back", rectangle(0, 0, 900, 900), sheet="thin"),
    )
    settled = plan_of(parts, (sheet_of(), sheet_of("thin")))
    text = freeze(laid_out(settled)).replace('"sheet": "thin"', '"sheet": "ply"')
    _, _, findings = layout_for([settled], text)
    assert [each.message for each in findings] == ["`back` lies on `ply`"]
