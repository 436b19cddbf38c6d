"""Layouts for other sheets and beds: computed once, frozen beside the first, told when stale."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from io import StringIO
from pathlib import Path

import ezdxf
import pytest

from kerfolio.agreement.cut_files import cut_files
from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.basis.reader import METRIC
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import expected_names
from kerfolio.edition.other_sheets import other_words
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.frozen import CHANGED, MISSING, freeze
from kerfolio.layouts.panel_cuts import box_of
from kerfolio.model.carrying import Carries
from kerfolio.proving.prove import Proof
from kerfolio.publishing.cut_files import (
    art_files,
    coupon_files,
    other_files,
    part_files,
    sheet_files,
)
from kerfolio.publishing.examine import Examined
from kerfolio.publishing.freeze import freeze_layouts
from kerfolio.publishing.fresh import foretold, fresh_layouts
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.other_sheets import asked_sheet, laid_for, other_layouts
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.also_for import OtherSheet, label_of
from kerfolio.writing.formats import CUT_FORMATS
from tests.layouts.yard_edition import edition_in
from tests.plans import RACK, lay_down, proved, small_layout, workshop

ALSO = RACK.replace("joints:", "also-for: [500 x 400, 260 x 460 bed]\njoints:", 1)
BRIEF = Effort(moves=1)
MARGIN = 10.0


def proof_of(plan: str) -> Proof:
    """Return the proof of the probe rack, as if that plan stated it: other sheets prove nothing."""
    return replace(proved(RACK), plan=workshop(plan).plans[0])


@cache
def laid_out() -> LaidOut:
    proof = proof_of(ALSO)
    others, findings = other_layouts(proof, BRIEF, None, afresh=False)
    assert findings == ()
    return LaidOut(proof=proof, layout=small_layout(), fresh=MISSING, others=others)


def frozen_texts() -> tuple[tuple[str, str], ...]:
    return tuple((each.sheet.label, freeze(each.layout)) for each in laid_out().others)


def with_texts(texts: Iterable[tuple[str, str]]) -> Proof:
    proof = proof_of(ALSO)
    return replace(proof, plan=replace(proof.plan, other_layouts=tuple(texts)))


def test_every_piece_lies_inside_the_margin_of_each_sheet() -> None:
    one = laid_out()
    assert [each.sheet.label for each in one.others] == ["500x400", "260x460-bed"]
    for other in one.others:
        pieces = [each.piece for sheet in other.layout.sheets for each in sheet.placements]
        assert sorted(pieces) == ["rail", "side.left", "side.right"]
        for sheet in other.layout.sheets:
            assert sorted(sheet.size) == sorted(other.sheet.size)
            boxes = [box_of(each, one.proof.points) for each in sheet.placements]
            assert min(min(each[:2]) for each in boxes) >= MARGIN - 1e-3
            assert max(each[2] for each in boxes) <= sheet.size[0] - MARGIN + 1e-3
            assert max(each[3] for each in boxes) <= sheet.size[1] - MARGIN + 1e-3


def test_what_is_cut_to_a_bed_may_lie_on_it_either_way() -> None:
    # The rail is 335 mm along the grain: on a bed of 260 x 460 it goes only along its long side.
    sheets = laid_out().others[1].layout.sheets
    (rail,) = (each for each in sheets if "rail" in {laid.part for laid in each.placements})
    assert rail.size == (460.0, 260.0)


def test_they_are_frozen_beside_the_first(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", ALSO)
    frozen = freeze_layouts(shop, fresh_layouts((laid_out(),)))
    names = ["layout.json", "layout-500x400.json", "layout-260x460-bed.json"]
    assert [each.file.name for each in frozen] == names
    found, _ = read_workshop(shop, pictures=False)
    assert found is not None
    assert found.plans[0].other_layouts == tuple(sorted(frozen_texts()))


def test_one_that_stands_is_kept_and_one_that_is_stale_is_told() -> None:
    kept, _ = other_layouts(with_texts(frozen_texts()), BRIEF, None, afresh=False)
    assert [each.fresh for each in kept] == ["", ""]
    assert [each.layout for each in kept] == [each.layout for each in laid_out().others]
    (one, first), (other, second) = frozen_texts()
    crossed = with_texts(((one, second), (other, first)))
    stale, _ = other_layouts(crossed, BRIEF, None, afresh=False)
    assert [each.fresh for each in stale] == [CHANGED, CHANGED]
    found = LaidOut(proof=crossed, layout=small_layout(), fresh="", others=stale)
    told = foretold(Examined(workshop=None, laid_out=(found,), findings=())).findings
    assert sorted(each.place.file for each in told) == [
        "plans/rack/layout-260x460-bed.json",
        "plans/rack/layout-500x400.json",
    ]


def test_one_that_nothing_asks_for_is_told() -> None:
    (_, (label, text)) = frozen_texts()
    proof = with_texts((*frozen_texts(), ("900x900", text)))
    _, (told,) = other_layouts(proof, BRIEF, None, afresh=False)
    assert (label, str(told.message)) == ("260x460-bed", "no `also-for` asks for `900x900`")
    assert told.place.file == "plans/rack/layout-900x900.json"


def test_files_are_made_with_the_layout_that_is_asked_for() -> None:
    other = asked_sheet("500 x 400", laid_out().proof.plan)
    assert isinstance(other, OtherSheet)
    found = laid_for(laid_out(), other)
    assert found is not None
    assert found.proof.drawn is not None
    assert {sheet.size for sheet in found.layout.sheets} == {(500.0, 400.0)}
    assert found.proof.drawn.laid_for == "500x400"
    assert found.proof.drawn.sheets[0].size == (500.0, 400.0)


def test_pieces_that_do_not_fit_are_named() -> None:
    small = proof_of(RACK.replace("joints:", "also-for: 130 x 300\njoints:", 1))
    made, (fault,) = other_layouts(small, BRIEF, None, afresh=False)
    assert (made, fault.rule) == ((), "also-for-too-small")
    assert (fault.message, fault.advice) == (
        "`side` and `rail` find no room on `130x300`",
        "Leave it out of `also-for`, or state a larger one.",
    )


@pytest.mark.parametrize(
    ("text", "label"),
    [("500x400", "500x400"), ("260 × 460 bed", "260x460-bed"), ("500 X 400", "500x400")],
)
def test_a_sheet_is_asked_for_in_words(text: str, label: str) -> None:
    found = asked_sheet(text, workshop(ALSO).plans[0])
    assert isinstance(found, OtherSheet)
    assert found.label == label


def test_a_sheet_that_is_not_laid_out_for_is_refused_by_name() -> None:
    found = asked_sheet("500 x 450", workshop(ALSO).plans[0])
    assert isinstance(found, Finding)
    assert found.message == "it is not laid out for `500x450`"
    assert found.advice == "Did you mean `500x400`?"
    none = asked_sheet("500 x 450", workshop(RACK).plans[0])
    assert isinstance(none, Finding)
    assert none.advice == "State `also-for: [500 x 450]` in the plan, and lay it out."


def test_inches_are_named_as_they_are_sold() -> None:
    assert label_of((1219.2, 609.6), "in", bed=False) == "48x24in"
    assert label_of((609.6, 914.4), "in", bed=True) == "24x36in-bed"


def test_their_cut_files_are_in_the_bundle_and_checked() -> None:
    one = laid_out()
    assert one.proof.drawn is not None
    edition = replace(
        edition_in(Carries(), one.proof.drawn, one.layout), others=one.others, corners=()
    )
    (dxf,) = (each for each in CUT_FORMATS if each.ending == "dxf")
    edition = replace(edition, formats=(dxf,))
    settled, sheets = edition.settled, one.others[0].layout.sheets
    files = dict(other_files(settled, one.others, (dxf,), METRIC))
    assert files.keys() <= expected_names(edition)
    name = "cut/17.6mm/on-500x400/sheet-1-on-500x400-17.6mm.dxf"
    space = ezdxf.read(StringIO(files[name].decode())).modelspace()
    outlines = [each for each in space if each.dxf.layer.startswith("outline")]
    assert len(outlines) == len(sheets[0].placements)
    files |= dict(sheet_files(settled, edition.layout, (dxf,), METRIC))
    files |= dict(part_files(settled, (dxf,), METRIC))
    files |= dict(coupon_files(settled, (dxf,), METRIC))
    files |= dict(art_files(settled, (dxf,), METRIC))
    assert faults_of(edition, files) == []
    bed = "cut/17.6mm/on-260x460-bed/sheet-1-on-260x460-bed-17.6mm.dxf"
    assert any(name in each for each in faults_of(edition, {**files, name: files[bed]}))


def faults_of(edition: Edition, files: dict[str, bytes]) -> list[str]:
    written = Written(edition=edition, files=files, facts={}, place=Place("plan.yaml"))
    return [str(each.message) for each in cut_files(written)]


def test_pages_say_where_their_files_are() -> None:
    one = laid_out()
    assert one.proof.drawn is not None
    edition = replace(edition_in(Carries(), one.proof.drawn, one.layout), others=one.others)
    sheet, bed = other_words(edition)
    count = len(one.others[0].layout.sheets)
    assert sheet.title == "Sheets of 500 × 400 mm (about 19 1/2 × 15 1/2 in)"
    assert sheet.takes == f"{count} sheet{'s' * (count > 1)} of Birch plywood 18 mm"
    assert (bed.title.split(" mm")[0], bed.folder) == ("A bed of 260 × 460", "on-260x460-bed")
