"""What plans share is read once a run, as long as the disk says that nothing of it changed."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from kerfolio.keeping.store import Store
from kerfolio.publishing import sources
from kerfolio.publishing.sources import Sources, digest_of, sources_of
from tests.publishing.small_shop import another, small_shop


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    return small_shop(tmp_path / "shop")


def read(shop: Path) -> Sources:
    found = sources_of(shop, Store(shop.parent / "kept"))
    assert found is not None
    return found


def still(found: Sources, shop: Path) -> bool:
    return found.are_still(Store(shop.parent / "kept"))


def test_nothing_is_read_again(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found, counted = read(shop), Counter[Path]()

    def counting(path: Path, *more: Path) -> str:
        counted[path] += 1
        return digest_of(path, *more)

    monkeypatch.setattr(sources, "digest_of", counting)
    assert still(found, shop)
    assert not counted
    text = (shop / "workshop.yaml").read_text("utf-8")
    (shop / "workshop.yaml").write_text(text, "utf-8")
    assert still(found, shop)  # it was written, and holds the same
    assert counted[shop / "stock"] == 1


@pytest.mark.parametrize(
    "file", ["workshop.yaml", "stock/own.yaml", "log/day.yaml", "pages/about.md", "mark.svg"]
)
def test_whatever_changes_is_seen(file: str, shop: Path) -> None:
    found = read(shop)
    with (shop / file).open("a", encoding="utf-8") as opened:
        opened.write("\n")
    assert not still(found, shop)


def test_a_plan_that_comes_is_seen(shop: Path) -> None:
    found = read(shop)
    another(shop, "shelf")
    assert not still(found, shop)
