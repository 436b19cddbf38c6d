"""Remarks over many thicknesses: the same one once, others with the thickness they concern."""

from __future__ import annotations

from kerfolio.basis.finding import Finding, error, in_unit
from kerfolio.basis.measures import length
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, Words, named, said, stated_name
from kerfolio.proving.folding import folded
from kerfolio.settling.settled import FitVariant
from tests.settling.panels import findings_of

LADDER = "17.2 to 18.6 by 0.2"
A, B, C = (FitVariant(label=f"{n}.0mm", thickness=(("ply", float(n)),)) for n in (1, 2, 3))


def remark(words: Text, line: int = 1, subject: str = "") -> Finding:
    return error("rule", words, Place("plan.yaml", line, 1), subject=subject)


def deep(mm: float) -> Words:
    return said("{} deep", length("depth", mm))


def hole(name: str, line: int = 1) -> Finding:
    return remark(said("hole {} off", named(name)), line, stated_name(name))


def test_what_is_wrong_at_every_thickness_is_told_once_and_plainly() -> None:
    found = folded([(A, remark(deep(5))), (B, remark(deep(6)))], (A, B))
    assert [each.message for each in found] == ["5 mm deep"]


def test_what_is_wrong_at_an_end_of_the_range_too_names_that() -> None:
    found = folded([(B, remark(deep(5))), (C, remark(deep(6)))], (A, B, C))
    assert [each.message for each in found] == ["6 mm deep (at 3.0mm)"]
    found = folded([(A, remark(deep(5))), (B, remark(deep(6)))], (A, B, C))
    assert [each.message for each in found] == ["5 mm deep (at 1.0mm)"]


def test_what_is_wrong_at_some_thicknesses_names_the_first_of_them() -> None:
    found = folded([(B, remark(deep(5)))], (A, B, C))
    assert [each.message for each in found] == ["5 mm deep (at 2.0mm)"]
    assert [each.message for each in in_unit(found, "in")] == ["0.197 in deep (at 0.079 in)"]


def test_the_same_words_on_another_subject_stay_apart() -> None:
    alike = [remark(deep(5), subject="side"), remark(deep(6), subject="rail")]
    assert len(folded([(A, each) for each in alike], (A,))) == 2
    alike = [remark(deep(5), subject="side"), remark(deep(6), subject="side")]
    assert len(folded([(A, each) for each in alike], (A,))) == 1


def test_numbers_that_are_words_keep_remarks_apart() -> None:
    assert len(folded([(A, remark("5 mm deep")), (A, remark("6 mm deep"))], (A,))) == 2


def test_copies_of_a_feature_make_one_remark() -> None:
    found = folded([(A, hole("p.h.1")), (A, hole("p.h.2"))], (A,))
    assert [each.message for each in found] == ["hole `p.h.1` off"]


def test_other_places_and_names_stay_apart() -> None:
    remarks = [hole("p.m6"), hole("p.m8"), hole("p.m6", 2)]
    assert len(folded([(A, each) for each in remarks], (A,))) == 3


def test_a_fault_of_the_statement_does_not_name_a_thickness() -> None:
    findings = findings_of("t: {tabs: {edge: top, at: 390, width: 60, depth: 9}}", ladder=LADDER)
    assert [each.message for each in findings] == [
        "tab `panel.t` is not on the edge: edge 0 mm to 400 mm, tab 390 mm to 450 mm"
    ]


def test_a_fault_of_the_thinnest_sheets_only_names_the_first_thickness() -> None:
    # A recess of 17.5 mm goes through the sheets of 17.2 and 17.4 mm and leaves a floor in others.
    text = "p: {pocket: {at: [100, 100], circle: 40, depth: 17.5}}"
    findings = findings_of(text, ladder=LADDER)
    assert [each.message for each in findings] == [
        "pocket `panel.p` is 17.5 mm deep (at ply-17.2mm_thin-6.4mm)"
    ]


def test_a_fault_of_the_thickest_sheets_only_names_the_thickest() -> None:
    # Slots of 18.6 mm (18.4 mm and twice the fit) every 18.5 mm leave no land between them.
    text = """
s:
  slot: {at: [30, 150], length: 60, angle: 90, takes: ply}
  repeat: {count: 3, step: [18.5, 0]}
"""
    findings = findings_of(text, ladder=LADDER, relief="none")
    messages = [each.message for each in findings if each.rule == "features-overlap"]
    assert messages == ["`panel.s.1` and `s.2` run into each other (at ply-18.6mm_thin-6.4mm)"]
