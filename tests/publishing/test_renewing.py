"""Only what changed is made anew, and a result from the store is the one made without it."""

from __future__ import annotations

import os
from collections import Counter
from pathlib import Path

import pytest

from kerfolio.keeping.store import Store
from kerfolio.publishing.build import Outcome, Request, publish
from kerfolio.publishing.sources import KEPT
from tests.conftest import files_of
from tests.publishing.edits import steps
from tests.publishing.quick_work import Worked, worked
from tests.publishing.small_shop import BOARD, another, small_shop

EDITS = int(os.environ.get("BENCH_EDITS", "50"))


@pytest.fixture
def work(monkeypatch: pytest.MonkeyPatch) -> Worked:
    return worked(monkeypatch)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    made = small_shop(tmp_path / "shop")
    another(made, "shelf")
    return made


def published(shop: Path, only: str = "") -> Outcome:
    out = shop.parent / "site"
    return publish(Request(folder=shop, out=out, supporters_out=shop.parent / "given", only=only))


def plan_of(shop: Path, name: str) -> Path:
    return shop / "plans" / name / "plan.yaml"


def test_fifty_edits_by_chance_change_nothing_but_what_they_change(
    tmp_path: Path, work: Worked
) -> None:
    for number, (edit, kept, bare) in enumerate(steps(tmp_path, 7, 50)):
        assert kept == bare, f"{number}: {edit}"


@pytest.mark.bench
def test_fifty_edits_of_a_workshop_that_is_really_drawn(tmp_path: Path) -> None:
    for number, (edit, kept, bare) in enumerate(steps(tmp_path, 11, EDITS)):
        print(f"{number}: {edit}", flush=True)
        assert kept == bare, f"{number}: {edit}"


def test_only_what_changed_is_worked_on(shop: Path, work: Worked) -> None:
    assert published(shop).plans == ("board", "shelf")
    assert work.since() == ["board", "shelf", "site"]
    assert published(shop).plans == ("board", "shelf")  # though layouts were frozen meanwhile
    assert work.since() == []
    plan_of(shop, "shelf").write_text(BOARD.replace("Plain board", "The rack"), "utf-8")
    assert published(shop).published
    assert work.since() == ["shelf", "site"]
    (shop / "pages" / "about.md").write_text("# About\n\nBye.\n", "utf-8")
    assert published(shop).published
    assert work.since() == ["site"]


def test_what_is_kept_is_read_once(
    shop: Path, work: Worked, monkeypatch: pytest.MonkeyPatch
) -> None:
    published(shop)
    read: Counter[str] = Counter()
    get = Store.get

    def counting(store: Store, key: str) -> bytes | None:
        read[key] += 1
        return get(store, key)

    monkeypatch.setattr(Store, "get", counting)
    work.since()
    assert published(shop).published
    assert work.since() == []
    assert set(read.values()) == {1}


def test_an_unreadable_plan_stops_a_publish_before_any_work(shop: Path, work: Worked) -> None:
    plan_of(shop, "shelf").write_text("plan: [", "utf-8")
    outcome = published(shop)
    assert not outcome.published
    assert {each.place.file for each in outcome.findings} == {"plans/shelf/plan.yaml"}
    assert work.since() == []
    assert not published(shop, "rack").published
    assert work.since() == []
    assert published(shop, "board").plans == ("board",)


def test_one_plan_is_renewed_in_a_site_that_holds_more(shop: Path, work: Worked) -> None:
    published(shop)
    before = files_of(shop.parent / "site")
    for name in ("board", "shelf"):
        plan_of(shop, name).write_text(
            plan_of(shop, name).read_text("utf-8").replace("Done", "Well done"), "utf-8"
        )
    assert published(shop, "shelf").plans == ("shelf",)
    after = files_of(shop.parent / "site")
    assert after["plans/board/index.html"] == before["plans/board/index.html"]
    assert b"Well done" in after["plans/shelf/index.html"]
    assert b"Plain board" in after["index.html"]
    work.since()
    assert published(shop).plans == ("board", "shelf")
    assert work.since() == ["board"]  # all else was kept


def test_what_one_workshop_keeps_is_nothing_to_a_copy_of_it(shop: Path, work: Worked) -> None:
    import shutil

    published(shop)
    work.since()
    copy = shop.parent / "copy" / "shop"
    shutil.copytree(shop, copy)
    assert len(list((copy / KEPT).iterdir())) > 3
    assert published(copy).published
    assert work.since() == ["board", "shelf", "site"]


def test_what_changes_while_it_is_worked_on_is_not_kept(
    shop: Path, work: Worked, monkeypatch: pytest.MonkeyPatch
) -> None:
    from kerfolio.publishing import plan_work

    quick = plan_work.make_plan

    def meddling(order: plan_work.PlanOrder, say: object = None) -> plan_work.PlanMade:
        made = quick(order)
        (shop / "plans" / order.name / "steps.txt").write_text("edited meanwhile")
        return made

    with monkeypatch.context() as patched:
        patched.setattr(plan_work, "make_plan", meddling)
        assert published(shop).published
    for each in (shop / "plans").glob("*/steps.txt"):
        each.unlink()
    for each in (shop / "plans").glob("*/layout.json"):
        each.unlink()
    work.since()
    assert published(shop).published
    assert work.since() == ["board", "shelf"]
