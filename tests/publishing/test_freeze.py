"""Frozen layouts as files: one plan makes one site, and nothing made by hand is lost on the way."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.layouts import best
from kerfolio.layouts.frozen import CHANGED, MISSING
from kerfolio.layouts.outside import OutsideEngine
from kerfolio.publishing import afresh
from kerfolio.publishing.afresh import LayoutRequest, engine_fault, lay_out_afresh
from kerfolio.publishing.examine import examine
from kerfolio.publishing.freeze import Frozen, freeze_layouts
from kerfolio.publishing.fresh import foretold, fresh_layouts
from tests.plans import RACK, lay_down

LADDER, OTHER = "17.6 to 18.2 by 0.2", "17.4 to 18.2 by 0.2"


def refrozen(shop: Path) -> tuple[Frozen, ...]:
    return freeze_layouts(shop, fresh_layouts(examine(shop).laid_out))


def frozen_file(shop: Path) -> Path:
    return shop / "plans" / "rack" / "layout.json"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A workshop whose layout is frozen."""
    made = lay_down(tmp_path / "shop")
    (written,) = refrozen(made)
    assert (written.file, written.fresh.why, written.spare) == (frozen_file(made), MISSING, None)
    assert refrozen(made) == ()
    return made


def told(findings: Iterable[Finding]) -> list[str]:
    return [str(each) for each in findings if each.rule.startswith("layout")]


def change_the_ladder(shop: Path) -> None:
    plan = shop / "plans" / "rack" / "plan.yaml"
    plan.write_text(plan.read_text("utf-8").replace(LADDER, OTHER), "utf-8")


def move_by_hand(shop: Path, x: float = 1500.0) -> bytes:
    stated = json.loads(frozen_file(shop).read_text("utf-8"))
    stated["sheets"][0]["pieces"][0]["x"] = x
    frozen_file(shop).write_text(json.dumps(stated, indent=1), "utf-8")
    return frozen_file(shop).read_bytes()


def test_two_makers_with_other_histories_get_the_same_layout(shop: Path, tmp_path: Path) -> None:
    move_by_hand(shop)
    change_the_ladder(shop)
    refrozen(shop)
    other = lay_down(tmp_path / "other", RACK.replace(LADDER, OTHER))
    refrozen(other)
    assert frozen_file(shop).read_bytes() == frozen_file(other).read_bytes()


def test_a_layout_moved_by_hand_is_kept_while_the_plan_stays(shop: Path) -> None:
    moved = move_by_hand(shop)
    assert refrozen(shop) == ()
    assert frozen_file(shop).read_bytes() == moved


def test_what_can_be_computed_again_is_replaced(shop: Path) -> None:
    change_the_ladder(shop)
    (written,) = refrozen(shop)
    assert (written.fresh.why, written.spare, written.reason) == (CHANGED, None, "")
    assert [each.name for each in frozen_file(shop).parent.glob("*.json")] == ["layout.json"]


def test_a_layout_moved_by_hand_is_kept_beside_the_new_one(shop: Path) -> None:
    first = move_by_hand(shop)
    change_the_ladder(shop)
    (written,) = refrozen(shop)
    spare = frozen_file(shop).with_name("layout.previous.json")
    assert (written.spare, written.reason) == (spare, "it was moved by hand")
    assert spare.read_bytes() == first
    # Another one does not push the first out; the same one needs no second copy.
    second = move_by_hand(shop, 1400.0)
    for _ in range(2):
        frozen_file(shop).write_bytes(second)
        (written,) = lay_out_afresh(LayoutRequest(folder=shop)).frozen
        assert written.spare == frozen_file(shop).with_name("layout.previous-2.json")
        assert written.spare.read_bytes() == second
    assert spare.read_bytes() == first


def test_what_nobody_can_read_is_kept_when_laid_out_afresh(shop: Path) -> None:
    frozen_file(shop).write_bytes(b'{"sheets": \xff')
    (written,) = lay_out_afresh(LayoutRequest(folder=shop)).frozen
    assert written.reason == "it could not be read"
    assert written.spare is not None
    assert written.spare.read_bytes() == b'{"sheets": \xff'


def test_who_only_proves_is_told_what_a_publish_will_do(shop: Path) -> None:
    assert told(foretold(examine(shop)).findings) == []
    change_the_ladder(shop)
    assert told(examine(shop).findings) == []
    assert told(foretold(examine(shop)).findings) == [
        "plans/rack/layout.json: note: the parts or sheets have changed [layout-stale]\n"
        "    `kerfolio publish` and `kerfolio layout` compute the layout anew."
    ]
    move_by_hand(shop)
    (note,) = told(foretold(examine(shop)).findings)
    assert note.endswith(
        " anew. This one is then kept as `layout.previous.json`: it was moved by hand."
    )


def test_without_asking_no_other_library_is_loaded_or_started(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def pack(*_: object) -> None:
        raise AssertionError("an engine was asked")

    monkeypatch.setattr(OutsideEngine, "pack", pack)
    change_the_ladder(shop)
    assert lay_out_afresh(LayoutRequest(folder=shop)).frozen[0].fresh.engine == "own-2"
    assert {"spyrrow", "packingsolver"}.isdisjoint(sys.modules)
    for asked in ({"engine": "shapely"}, {"seconds": 1.0}):
        monkeypatch.setattr(afresh, "ENGINES", (OutsideEngine("shapely"),))
        with pytest.raises(AssertionError, match="was asked"):
            lay_out_afresh(LayoutRequest(folder=shop, **asked))  # type: ignore[arg-type]


def test_an_engine_that_fails_is_told_and_changes_nothing(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = frozen_file(shop).read_bytes()
    monkeypatch.setattr(afresh, "ENGINES", (OutsideEngine("shapely"),))
    made = lay_out_afresh(LayoutRequest(folder=shop, engine="shapely", seconds=1.0))
    (note,) = told(made.findings)
    assert note.startswith(
        "plans/rack/layout.json: note: `shapely` laid nothing out on `ply` [layout-engine]\n"
        "    Our own layout stands: `shapely` failed: KeyError"
    )
    assert frozen_file(shop).read_bytes() == before


@pytest.mark.parametrize(
    ("there", "asked", "fault"),
    [
        (("json", "shapely"), {}, ""),
        (("json", "shapely"), {"engine": "json"}, ""),
        (("json", "no_such"), {"seconds": 3.0}, ""),
        (("json", "no_such"), {"engine": "jsn"}, "`jsn` is no engine; installed: json"),
        (
            ("json", "shapely", "no_such"),
            {"engine": "no_such"},
            "`no_such` is not installed; installed: json, shapely",
        ),
        (
            ("no_such",),
            {"seconds": 3.0},
            "--seconds is for engines of other libraries; installed: none",
        ),
        (("no_such",), {"seed": 3}, ""),
    ],
)
def test_an_engine_that_is_not_there_is_refused_in_words(
    there: tuple[str, ...],
    asked: dict[str, object],
    fault: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(afresh, "ENGINES", tuple(OutsideEngine(each) for each in there))
    request = LayoutRequest(folder=Path("nowhere"), **asked)  # type: ignore[arg-type]
    assert engine_fault(request) == fault


def test_the_engines_are_those_the_help_names() -> None:
    assert [each.library for each in best.ENGINES] == ["packingsolver", "spyrrow"]
