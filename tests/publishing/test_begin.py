"""The kinds of plan to begin from prove as they are written, and follow their sizes."""

from __future__ import annotations

import re
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding, Severity, has_errors
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import apart, box_of
from kerfolio.drawing.named_whole import named_whole
from kerfolio.drawing.vocabulary import Dimension, Ink, Label, Stroke
from kerfolio.model.workshop import Workshop
from kerfolio.proving.prove import prove_plan
from kerfolio.publishing.begin import begin_plan, begin_workshop
from kerfolio.publishing.sight import sight_of
from kerfolio.reading.beginnings import beginnings
from kerfolio.reading.workshop import read_workshop
from tests.command import run

DAY = date(2026, 10, 2)
KINDS = [each.name for each in beginnings()]
_SIZE = re.compile(r"^  ([a-z_]+): ([0-9][0-9/-]*) *#", re.MULTILINE)


def begun(folder: Path, unit: str, kind: str) -> Path:
    """Return the plan of a kind that a maker began with in a new workshop."""
    begin_workshop(folder / "shop", DAY, unit)
    files, findings = begin_plan(folder / "shop", "mine", DAY, kind)
    assert not findings
    return files[0]


def read(plan: Path) -> tuple[Workshop, tuple[Finding, ...]]:
    """Return a workshop of which a plan alone is read."""
    workshop, findings = read_workshop(plan.parent.parent.parent)
    assert workshop is not None
    return workshop, findings


def remarks(plan: Path) -> list[str]:
    """Return the rules of all that is remarked on when a plan is proved."""
    workshop, findings = read(plan)
    (stated,) = (each for each in workshop.plans if each.name == plan.parent.name)
    found = (*findings, *prove_plan(stated, workshop.stock).findings)
    assert all(each.severity is Severity.NOTE for each in found), [str(each) for each in found]
    return [each.rule for each in found]


def scaled(plan: Path, by: float) -> int:
    """Multiply every size that a plan states as a number; return how many there are."""
    text = plan.read_text("utf-8")

    def larger(found: re.Match[str]) -> str:
        stated = sum(map(Fraction, found[2].split("-")))  # 12-1/2 is twelve and a half
        return f"  {found[1]}: {float(stated) * by:.4f} #"

    head, mark, rest = text.partition("  # what follows")
    changed, count = _SIZE.subn(larger, head)
    plan.write_text(changed + mark + rest, "utf-8")
    return count


@pytest.mark.parametrize(("number", "kind"), [*enumerate(KINDS[1:])])
def test_a_plan_proves_as_it_is_begun(tmp_path: Path, number: int, kind: str) -> None:
    # Every other one in inches; the rest of them with `-m bench`.
    plan = begun(tmp_path, ("mm", "in")[number % 2], kind)
    assert remarks(plan) == (["joint-unchecked"] if kind == "table" else [])


@pytest.mark.bench
@pytest.mark.parametrize("unit", ["mm", "in"])
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("by", [1, 0.8, 1.2])
def test_a_plan_proves_at_other_sizes(tmp_path: Path, unit: str, kind: str, by: float) -> None:
    plan = begun(tmp_path, unit, kind)
    assert kind == "cross" or scaled(plan, by) >= 3
    workshop, findings = read(plan)
    proof = prove_plan(workshop.plans[0], workshop.stock)
    assert not has_errors((*findings, *proof.findings)), [str(each) for each in proof.findings]


@pytest.mark.parametrize(("unit", "by"), [("mm", 0.8), ("in", 1.2)])
def test_joints_follow_the_sizes(tmp_path: Path, unit: str, by: float) -> None:
    shop = begun(tmp_path, unit, "cross").parent.parent.parent
    for kind in KINDS[1:]:
        (plan,), _ = begin_plan(shop, kind, DAY, kind)
        assert scaled(plan, by) >= 3, kind
    workshop, findings = read(plan)
    assert not has_errors(findings)
    for each in workshop.plans:
        sight = sight_of(each, workshop.stock)
        (whole,) = sight.wholes
        assert not has_errors(sight.findings), [str(found) for found in sight.findings]
        assert len(whole.assembled.pieces) == sum(len(part.labels) for part in each.parts)


def test_a_remark_keeps_its_column_where_a_word_is_filled_in() -> None:
    box = next(each for each in beginnings() if each.name == "box")
    for unit in ("mm", "in"):
        lines = box.written("Box", unit, DAY).splitlines()
        assert f"units: {unit}" in lines
        assert {line.index("#") for line in lines if _SIZE.match(line)} == {31}


def test_kinds_are_told_and_drawn(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    few = beginnings()[:3]  # hidden lines take their time
    monkeypatch.setattr("kerfolio.publishing.kinds.beginnings", lambda: few)
    begin_workshop(tmp_path / "shop", DAY, "in")
    done = run("add", "plan", "--kinds", str(tmp_path / "shop"), "--out", str(tmp_path / "k.svg"))
    assert done.returncode == 0
    picture = (tmp_path / "k.svg").read_text("utf-8")
    for each in few:
        assert f"{each.name} " in done.stdout
        assert f"--like {each.name}" in picture
    assert run("add", "plan", "x", "--out", "k.svg").returncode == 2
    assert run("add", "plan", "--kinds", "--out", "k.pdf").returncode == 2
    assert run("add", "plan").returncode == 2


def test_an_unknown_kind_is_told(tmp_path: Path) -> None:
    begin_workshop(tmp_path / "shop", DAY, "mm")
    done = run("add", "plan", "mine", str(tmp_path / "shop"), "--like", "bok")
    assert done.returncode == 1
    assert "Did you mean `box`?" in done.stdout
    assert not (tmp_path / "shop" / "plans" / "mine").exists()


def test_no_mark_of_a_piece_covers_a_size(tmp_path: Path) -> None:
    workshop, _ = read(begun(tmp_path, "mm", "crate"))
    crate = next(each for each in workshop.plans if each.name == "mine")
    sight = sight_of(crate, workshop.stock)
    assert sight.settled is not None
    drawing = named_whole(sight.settled, sight.wholes)
    assert drawing is not None
    parts = [
        each for item in drawing.items if isinstance(item, Dimension) for each in expanded(item)
    ]
    sizes = [box_of(each) for each in parts if isinstance(each, Label)]
    strokes = (each for each in drawing.items if isinstance(each, Stroke))
    marks = [box_of(each) for each in strokes if each.fill is Ink.PAPER]
    assert (len(sizes), len(marks)) == (3, 8)
    assert [(mark, size) for mark in marks for size in sizes if not apart(mark, size)] == []
