"""The forms of fits: of a sheet, of a joint, and what a workshop calls tight and loose."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

import pytest

from kerfolio.model.play import Play
from kerfolio.model.purpose import PURPOSES
from kerfolio.reading.fit import FIT, JOINT_FIT
from kerfolio.reading.play import PLAY
from kerfolio.reading.workshop import read_workshop
from tests.plans import WORKSHOP, lay_down
from tests.reading.desks import changed, plan_of, read
from tests.reading.desks import said as told
from tests.reading.test_schemas import faults


@pytest.mark.parametrize("purpose", PURPOSES, ids=str)
def test_a_word_is_a_purpose(purpose: object) -> None:
    found, said = read(JOINT_FIT, f"{purpose}\n")
    assert said == []
    assert (found.purpose, found.width, found.ends) == (purpose, None, None)


@pytest.mark.parametrize(
    ("text", "purpose", "width", "ends"),
    [
        ("0.15", "", "0.15", "0.15"),
        ("0.006 in", "", "0.006 in", "0.006 in"),
        ("{purpose: glued}", "glued", "", ""),
        ("{width: 0.15}", "", "0.15", ""),
        ("{purpose: press, ends: 0.3}", "press", "", "0.3"),
    ],
)
def test_a_fit_of_a_joint(text: str, purpose: str, width: str, ends: str) -> None:
    found, said = read(JOINT_FIT, f"{text}\n")
    assert said == []
    own = [each.text if each else "" for each in (found.width, found.ends)]
    assert (str(found.purpose or ""), own) == (purpose, [width, ends])


ADVICE = "Write `fit: glued`, `fit: 0.15` or `fit: {purpose: glued, ends: 0.4}`."


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("glue", "`glue` is no purpose / Did you mean `glued`?"),
        ("knock down", "`knock down` is no purpose / Did you mean `knock-down`?"),
        (
            "{purpose: tight}",
            "`tight` is not a purpose / Known here: `drop-in`, `glued`, `knock-down`, `press`.",
        ),
        ("{}", f"`fit` says nothing / {ADVICE}"),
        ("[glued]", f"expected a fit, found a list / {ADVICE}"),
        (
            "6",
            "`6` comes to 6 mm / 0 mm to 5 mm is usual: is the unit the one you mean?",
        ),
        (
            "{width: t}",
            "`t` uses sizes or sheets / "
            "Write a number or a quantity here: sizes may depend on the sheets.",
        ),
    ],
)
def test_what_is_no_fit_of_a_joint(text: str, complaint: str) -> None:
    _, said = read(JOINT_FIT, f"{text}\n")
    assert said == [complaint]


def test_a_purpose_at_a_sheet_belongs_to_its_joints() -> None:
    _, said = read(FIT, "glued\n")
    assert said == [
        "`glued` is no fit of a sheet / "
        "Write a length here, and `fit: glued` at a joint, or `joint-fit: glued`."
    ]


def test_joints_that_nothing_goes_into_have_none() -> None:
    text = changed("joints:", "joints:\n  - {edge: shelf.lower.left, on: side.left.x, fit: glued}")
    _, findings = plan_of(text)
    assert "unknown key `fit` / Known here: `edge`, `looking`, `on`, `show`." in told(findings)


def test_the_schema_knows_fits() -> None:
    fit = "joint-fit: {}\njoints: [{{tab: a.tab, into: b.slot, fit: {}}}]\n"
    head = "plan: Try\nversion: 1.0.0\nsummary: A plan.\nparts: {}\n"
    assert faults("plan.schema.json", head + fit.format("press", "0.15")) == []
    assert faults("plan.schema.json", head + fit.format("{ends: 0.3}", "{purpose: glued}")) == []
    assert faults("plan.schema.json", head + fit.format("{length: 0.3}", "glued")) != []
    assert faults("workshop.schema.json", WORKSHOP + "play: {loose: 0.4, ends: 1/32 in}\n") == []
    assert faults("workshop.schema.json", WORKSHOP + "play: {wide: 0.4}\n") != []


def test_a_workshop_says_what_is_tight_and_loose() -> None:
    found, said = read(PLAY, "{tight: 0.08, slides: 0.012 in}\n")
    assert said == []
    assert asdict(found) == pytest.approx(
        {**asdict(Play()), "tight": 0.08, "slides": 0.3048}, abs=1e-9
    )


def test_a_scale_that_does_not_ascend_is_refused() -> None:
    _, said = read(PLAY, "{loose: 0.2}\n")
    assert said == [
        "`slides` is 0.25 mm, `loose` 0.2 mm / The looser a joint, the more play it has."
    ]


def test_every_plan_has_the_play_of_its_workshop(tmp_path: Path) -> None:
    folder = lay_down(tmp_path / "shop", workshop=WORKSHOP + "play: {loose: 0.4}\n")
    found, _ = read_workshop(folder)
    assert found is not None
    assert [each.play for each in found.plans] == [Play(loose=0.4)]
