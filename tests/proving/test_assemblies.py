"""A plan that makes a set: read, proved each and as a set, and what is said of mistakes in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from tests.plans import proved, workshop
from tests.sets import PAIR, SET, changed


def findings(text: str) -> list[Finding]:
    """Return what is said of a plan's text but notes."""
    read = read_plan(text.encode(), "rack", Shelf(folder=Path(), prefix="plans/rack"))
    found = list(read.findings)
    if read.plan is not None:
        found += prove_plan(read.plan, workshop(SET).stock).findings
    return [each for each in found if each.severity is not Severity.NOTE]


def test_a_set_is_proved_without_a_remark() -> None:
    proof = proved(SET)
    assert [each.message for each in proof.findings if each.severity is not Severity.NOTE] == []
    assert [(each.stated.name, each.stated.count) for each in proof.made] == [
        ("foot", 2),
        ("board", 1),
    ]


def test_the_second_thing_is_proved_like_the_first() -> None:
    spoiled = changed(
        ("  board:\n    sheet: ply\n    outline: {rectangle: [900, 300]}\n", BOARD_OF_TWO),
        ("    pieces: [board]\n", "    pieces: [board, rib]\n" + RIB_JOINT),
        ("add: [board]", "add: [board, rib]"),
    )
    assert [each.rule for each in findings(spoiled)] == []
    two = spoiled.replace("at: 40, width: 40", "at: [10, 70], width: 40")
    assert [each.message for each in findings(two)] == ["`rib.tab` are 2, `board.rib-slot` are 1"]


BOARD_OF_TWO = """\
  board:
    sheet: ply
    outline: {rectangle: [900, 300]}
    features:
      rib-slot: {slot: {at: [450, 150], length: 40, angle: 0, takes: ply}}
  rib:
    sheet: ply
    outline: {rectangle: [120, 60]}
    features:
      tab: {tabs: {edge: top, at: 40, width: 40, depth: 12}}
"""
RIB_JOINT = """\
    standing: {piece: board, looks: up}
    joints:
      - {tab: rib.tab, into: board.rib-slot, show: out, looking: down}
"""


def test_pieces_of_twins_are_told_apart_in_the_set() -> None:
    drawn = proved(SET).drawn
    assert drawn is not None
    pieces = {part.name: [(each.label, each.mark) for each in part.pieces] for part in drawn.parts}
    assert pieces == {
        "lower": [("1/lower", "1/A"), ("2/lower", "2/A")],
        "upper": [("1/upper", "1/B"), ("2/upper", "2/B")],
        "board": [("board", "C")],
    }


def test_two_of_the_whole_need_no_assemblies() -> None:
    proof = proved(PAIR)
    assert proof.drawn is not None
    assert [len(part.pieces) for part in proof.drawn.parts] == [2, 2]
    assert [each.message for each in proof.findings if each.severity is not Severity.NOTE] == []


@pytest.mark.parametrize(
    ("old", "new", "rule", "message", "advice"),
    [
        (
            "pieces: [lower, upper]",
            "pieces: [lower, uper]",
            "unknown-assembly-piece",
            "no piece `uper`",
            "Did you mean `upper`?",
        ),
        (
            "    pieces: [board]",
            "    pieces: [board, upper]",
            "piece-in-two",
            "piece `upper` is in `foot` and `board`",
            "Give each its own pieces: state them under the part, `pieces: [left, right]`.",
        ),
        (
            "    pieces: [lower, upper]",
            "    pieces: [lower]",
            "piece-unassembled",
            "piece `upper` is in no assembly",
            "Put `upper` under `pieces` of the assembly it belongs to.",
        ),
        (
            "add: [board]",
            "add: [board, lower]",
            "foreign-piece",
            "`lower` belongs to `foot`, not to `board`",
            "Pieces joined with each other are one assembly; what only lies on another one is told "
            "by `lies-on`.",
        ),
        (
            "makes: {foot: 2, board: 1}",
            "makes: {fot: 2, board: 1}",
            "unknown-assembly",
            "no assembly `fot`",
            "Did you mean `foot`?",
        ),
        (
            "makes: {foot: 2, board: 1}",
            "makes: 2",
            "made-twice-told",
            "`makes` is one count for several assemblies",
            "Write `makes: {foot: 2, board: 2}`.",
        ),
        (
            "makes: {foot: 2, board: 1}",
            "makes: {foot: 2, board: 1}\njoints: []",
            "made-twice-told",
            "`joints` stands beside `assemblies`",
            "Write `joints` under the assembly it belongs to.",
        ),
        (
            "supports: [foot]",
            "supports: [fot]",
            "unknown-support",
            "no assembly `fot`",
            "Did you mean `foot`?",
        ),
        (
            "supports: [foot]",
            "supports: [foot.3]",
            "unknown-support",
            "no `foot.3`",
            "The plan makes `foot.1` and `foot.2`; `foot` alone means all of them.",
        ),
        (
            "supports: [foot]",
            "supports: [board]",
            "unknown-support",
            "`board` lies on itself",
            "Name the assemblies that bear it.",
        ),
        (
            "overhang: 110",
            "overhang: 200",
            "lies-too-short",
            "`board` is too short for what it lies on",
            "Make it longer, let it overhang less, or put fewer under it.",
        ),
    ],
)
def test_a_mistake_is_told(old: str, new: str, rule: str, message: str, advice: str) -> None:
    found = [(each.rule, each.message, each.advice) for each in findings(changed((old, new)))]
    assert (rule, message, advice) in found


def test_makes_by_name_needs_assemblies() -> None:
    found = findings(changed(("makes: 2", "makes: {foot: 2}"), text=PAIR))
    assert [(each.rule, each.message, each.advice) for each in found] == [
        (
            "unknown-assembly",
            "`makes` names assemblies, and the plan states none",
            "State them under `assemblies`, or write `makes: 2` for two of the whole.",
        )
    ]


BLOCK = """\
  block:
    pieces: [block]
    steps: [{title: Set the block down, add: [block], text: So.}]
"""


def test_a_board_on_feet_of_unlike_height_is_told() -> None:
    block = "  block:\n    sheet: ply\n    outline: {rectangle: [200, 200]}\n  board:\n    sheet"
    text = changed(
        ("  board:\n    sheet", block),
        ("makes: {foot: 2,", "makes: {foot: 1, block: 1,"),
        ("supports: [foot]", "supports: [foot, block]"),
        ("  board:\n    pieces", BLOCK + "  board:\n    pieces"),
    )
    found = findings(text)
    assert ("lies-unlevel", "`board` lies on supports 12 mm and 220 mm high") in [
        (each.rule, each.message) for each in found
    ]


def rules(text: str) -> list[tuple[str, str, str | None]]:
    return [(each.rule, each.message, each.advice) for each in findings(text)]


@pytest.mark.parametrize(
    ("held", "what", "where", "listed"),
    [
        ("clamped", "clamps", "tools", "tools: [two bar clamps]"),
        ("screwed", "screws", "hardware", "hardware: {screw-4x30: 4}"),
        ("brackets", "brackets", "hardware", ""),
    ],
)
def test_what_holds_a_thing_must_be_listed(held: str, what: str, where: str, listed: str) -> None:
    text = changed(("overhang: 110}", f"overhang: 110, held: {held}}}"))
    assert rules(text) == [
        (
            "held-unlisted",
            f"`board` is held by {what}, and no list names them",
            f"Name them under `{where}` of the step that lays it on, or write `held: lying`.",
        )
    ]
    if listed:
        assert rules(text.replace("minutes: 1, text: Lay", f"{listed}, text: Lay")) == []


SPANS = "spans: {s: {part: board, supports: [110, 790], load: {kg: KG}, limit: span/1HELD}}\n"


def spanned(kg: int, held: str = "", lying: str = "") -> str:
    """Return the set with a span of its board from foot to foot."""
    spans = SPANS.replace("KG", str(kg)).replace("HELD", f", held: {held}" if held else "")
    return changed(
        ("makes:", f"{spans}makes:"),
        ("overhang: 110}", f"overhang: 110{lying}}}"),
        ("minutes: 1, text", "tools: [clamps], text"),
    )


def test_a_lying_board_lifts_whatever_its_limit() -> None:
    """By hand: 2.25 kg x 340 / 110 = 7 kg at its end, 6.8 kg at 11.8 mm."""
    assert rules(spanned(6)) == []
    assert rules(spanned(8)) == [
        (
            "span-lifts",
            "`s` lifts off with 6.8 kg at its end, not 8 kg",
            "Hold its far end down and write `held: clamped` under `lies-on`, or let it reach out "
            "less.",
        )
    ]
    assert rules(spanned(8, lying=", held: clamped")) == []


def test_where_the_overhang_is_stated_the_shelf_is_not_asked_there() -> None:
    over = "s: {part: board, as: overhang, supports: [790, right], load: {kg: 5, at: end}}, t:"
    text = spanned(10).replace("{s:", f"{{{over}")
    assert rules(text) == []
    assert [each[0] for each in rules(text.replace("{kg: 5,", "{kg: 8,"))] == ["span-lifts"]


def test_a_span_and_its_assembly_agree_on_what_holds() -> None:
    told = rules(spanned(5, held="fixed"))
    assert told == [
        (
            "held-otherwise",
            "span `s` says `held: fixed`, `lies-on` `held: lying`",
            "Say it under `lies-on` alone; it counts as lying until both agree.",
        )
    ]
    assert "span-lifts" in [each[0] for each in rules(spanned(8, held="fixed"))]


def test_a_span_that_lies_counts_as_lying_where_its_assembly_is_held() -> None:
    found = [each[0] for each in rules(spanned(8, held="lying", lying=", held: clamped"))]
    assert sorted(found) == ["held-otherwise", "span-lifts"]


def test_a_tall_pile_of_low_things_is_told_to_tip() -> None:
    """A board of 900 that stands on end on feet of 220: 1120 mm."""
    tall = (
        ("sheets:", "uses: [store things]\nsheets:"),
        ("  board:\n    pieces: [board]\n", f"  board:\n    pieces: [board]\n{UPRIGHT}"),
    )
    found = proved(changed(*tall)).findings
    told = [each.message for each in found if each.rule == "set-tips"]
    assert told == ["`board` and what it lies on may tip over, and no caution says so"]
    low = proved(changed(tall[0])).findings
    assert "set-tips" not in [each.rule for each in low]


UPRIGHT = "    standing: {piece: board, looks: front, top: right}\n"


def test_a_use_is_judged_with_what_a_thing_lies_on() -> None:
    stated = ("sheets:", "uses: [stand things on, lean on]\nsheets:")
    assert rules(changed(stated)) == [
        (
            "set-unfit",
            "`lean on`: `board`: it slides to the left or right before it takes the push",
            "Take the use out, or stiffen it, widen its feet or hold it on what it lies on.",
        )
    ]


def test_pieces_joined_with_each_other_alone_are_told_together() -> None:
    parts = PAIR[PAIR.index("  lower:") : PAIR.index("makes")]
    again = parts.replace("lower:", "lower-2:").replace("upper:", "upper-2:")
    joint = "  - {notch: upper-2.crossing, with: lower-2.crossing, looking: right}\n"
    text = changed(
        ("makes: 2\n", ""),
        ("  upper:\n", again + "  upper:\n"),
        ("looking: right}\n", "looking: right}\n" + joint),
        ("add: [lower, upper]", "add: [lower, upper, lower-2, upper-2]"),
        text=PAIR,
    )
    found = [each for each in findings(text) if each.rule == "piece-unjoined"]
    assert [(each.message, each.advice) for each in found] == [
        (
            "no joint joins `lower-2` and `upper-2` with the rest",
            "Add a joint between them and the rest; if they are a thing of their own, write "
            "`assemblies`. They are left out of the drawings.",
        )
    ]


def test_photos_and_cautions_of_a_sets_steps_are_those_of_the_plan() -> None:
    text = changed(
        ("text: Push.", "text: Push.\n        photo: {file: photos/push.jpg, alt: Push.}"),
        ("plan: Shelf on feet", "plan: Stool on feet"),
    )
    read = read_plan(text.encode(), "rack", Shelf(folder=Path(), prefix="plans/rack"))
    assert read.plan is not None
    assert [each.file for each in read.plan.pictured] == ["photos/push.jpg"]
    warned = text.replace("text: Lay it on.", "text: Lay it on., caution: Never stand on it.")
    rules = [each.rule for each in proved(changed(("Shelf on", "Stool on"))).findings]
    assert "seat-caution" in rules
    cautioned = warned.replace("        photo: {file: photos/push.jpg, alt: Push.}\n", "")
    assert "seat-caution" not in [each.rule for each in proved(cautioned).findings]


def test_what_falls_off_by_itself_is_told() -> None:
    """Two boards of 300 side by side on 260 from front to back: each has 130 of its 300 there.

    Their middles lie 20 mm outside. Boards of 240 have theirs 10 mm inside, and those of 254 only
    3 mm.
    """
    two = ("board: 1", "board: 2")
    wide = rules(changed(two))
    advice = "Bring more of it over its supports, or hold it and write `held: clamped`."
    falls = ("lies-off", "`board` falls off what it lies on, by its own weight", advice)
    assert wide == [falls]
    assert rules(changed(two, ("[900, 300]", "[900, 240]"))) == []
    near = "the middle of `board` is only 3 mm inside what bears it"
    assert rules(changed(two, ("[900, 300]", "[900, 254]"))) == [("lies-off", near, advice)]


def test_a_spare_board_is_in_no_use() -> None:
    spare = changed(
        ("sheets:", "uses: [stand things on, lean on]\nsheets:"),
        ("    lies-on: {supports: [foot], overhang: 110}\n", ""),
    )
    assert rules(spare) == []
