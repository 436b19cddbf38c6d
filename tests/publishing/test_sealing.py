"""Supporters' bundles on the site: sealed where their circle has a key, nothing of them plain."""

from __future__ import annotations

import json
import stat
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.basis.source_date import source_day
from kerfolio.bundles.archive import sha256
from kerfolio.publishing.build import Outcome, Request, publish
from kerfolio.publishing.cabinet import Cabinet, cabinet_of
from kerfolio.publishing.keys import keys_of, make_key, withdraw_key
from kerfolio.publishing.rebuilt import compare_with_plans
from kerfolio.publishing.way_out import Access, HandingOut, Way
from tests.conftest import files_of
from tests.publishing.quick_work import worked
from tests.publishing.small_shop import another, small_shop
from tests.sealing.open_sealed import opened

CIRCLES = "circles: {friends: {who: Friends of the bench}, patrons: {who: Patrons}}\n"
FOR_FRIENDS = "access: supporters\ncircle: friends\n"
DAY = f"{FOR_FRIENDS}opens-to-all: 2027-03-01\n"
PLACE = "plans/board/downloads/board-1.0.0.zip.sealed"
BUNDLE = "board.zip"


def write(file: Path, more: str) -> None:
    file.write_text(file.read_text("utf-8") + more, "utf-8")


def shop_in(folder: Path, *, plan: str = FOR_FRIENDS) -> Path:
    shop = small_shop(folder / "shop")
    write(shop / "workshop.yaml", CIRCLES)
    write(shop / "plans" / "board" / "plan.yaml", plan)
    return shop


def published(shop: Path, **more: Any) -> Outcome:
    """Publish beside the workshop, with keys kept beside it."""
    home = shop.parent
    request = Request(
        folder=shop,
        out=home / "site",
        supporters_out=home / "handed",
        keys=home / "keys",
        seals=True,
    )
    return publish(replace(request, **more))


def made(shop: Path, circle: str = "friends", month: str = "2026-12") -> str:
    return make_key(shop, circle, month, shop.parent / "keys").words


@pytest.fixture(autouse=True)
def no_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("KERFOLIO_KEYS", raising=False)


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch) -> Any:
    return worked(monkeypatch)


def rules(findings: tuple[Finding, ...]) -> list[str]:
    return [each.rule for each in findings if each.rule != "drawn"]


def bundle_row(shop: Path) -> dict[str, Any]:
    manifest = json.loads((shop.parent / "site" / "manifest.json").read_text("utf-8"))
    row: dict[str, Any] = manifest["plans"][0]["bundle"]
    return row


def test_a_bundle_whose_circle_has_a_key_is_sealed_into_the_site(tmp_path: Path) -> None:
    """For real: drawn, sealed, opened; made once more; then open to all."""
    shop = shop_in(tmp_path, plan=DAY)
    words = made(shop)
    outcome = published(shop)
    assert outcome.published
    (told,) = outcome.sealed
    assert (told.circle, told.keys, told.title) == ("friends", ("2026-12",), "Plain board")
    site, plain = (
        files_of(tmp_path / "site"),
        (tmp_path / "handed" / "board-1.0.0.zip").read_bytes(),
    )
    assert opened(site[PLACE], words) == plain
    manifest = json.loads(site["manifest.json"])
    listed = {each["name"]: (each["bytes"], each["sha256"]) for each in manifest["files"]}
    del site["manifest.json"]
    assert listed == {name: (len(data), sha256(data)) for name, data in site.items()}
    assert manifest["plans"][0]["bundle"]["sealed"] == PLACE
    page = site["plans/board/index.html"].decode()
    assert 'data-sealed="downloads/board-1.0.0.zip.sealed"' in page
    assert "Friends of the bench" in page
    assert "Patrons" not in page
    for name, content in (*site.items(), *files_of(shop / ".kerfolio").items()):
        assert not any(word.encode() in content for word in (words, words.split()[0] + "-"))
        if name in site:
            assert plain not in content
    assert compare_with_plans(tmp_path / "site", shop, tmp_path / "keys") == ()
    late = published(shop, day="2027-03-01")
    assert (late.sealed, late.handed_over) == ((), ())
    site = files_of(tmp_path / "site")
    assert site["plans/board/downloads/board-1.0.0.zip"] == plain
    assert PLACE not in site
    assert "Friends" not in site["plans/board/index.html"].decode()


def test_who_has_no_key_hands_over_as_before(tmp_path: Path, quick: Any) -> None:
    shop = shop_in(tmp_path)
    assert published(shop).sealed == ()
    assert not (tmp_path / "keys").exists()
    made(shop, "patrons")
    assert published(shop).sealed == ()
    assert "sealed" not in bundle_row(shop)
    assert (tmp_path / "handed" / BUNDLE).is_file()


def test_a_key_renews_the_plans_of_its_circle_alone(tmp_path: Path, quick: Any) -> None:
    shop = shop_in(tmp_path)
    write(another(shop, "crate"), "access: supporters\ncircle: patrons\n")
    another(shop, "rack")
    published(shop)
    assert quick.since() == ["board", "crate", "rack", "site"]
    made(shop)
    published(shop)
    assert quick.since() == ["board"]
    made(shop, month="2027-01")
    published(shop)
    assert quick.since() == []


def sealed_file(shop: Path) -> bytes:
    return (shop.parent / "site" / f"plans/board/downloads/{BUNDLE}.sealed").read_bytes()


def test_a_withdrawn_key_opens_no_bundle_that_is_published_from_then_on(
    tmp_path: Path, quick: Any
) -> None:
    shop = shop_in(tmp_path)
    first, second = made(shop), made(shop, month="2027-01")
    published(shop)
    before = sealed_file(shop)
    plain = opened(before, first)
    assert opened(before, second) == plain
    gone = withdraw_key(shop, "friends", "2026-12", tmp_path / "keys")
    assert (gone.name, gone.left) == ("2026-12", 1)
    published(shop)
    assert opened(sealed_file(shop), second) == plain
    with pytest.raises(SystemExit):
        opened(sealed_file(shop), first)
    withdraw_key(shop, "friends", "2027-01", tmp_path / "keys")
    outcome = published(shop)
    assert "no-longer-sealed" in rules(outcome.findings)
    assert not list((tmp_path / "site").rglob("*.sealed"))


def test_changed_content_has_another_key_and_the_same_has_the_same(
    tmp_path: Path, quick: Any
) -> None:
    shop = shop_in(tmp_path)
    words = made(shop)
    published(shop)
    before = sealed_file(shop)
    plan = shop / "plans" / "board" / "plan.yaml"
    text = plan.read_text("utf-8")
    plan.write_text(text.replace("A board.", "A wider board."), "utf-8")
    published(shop)
    after = sealed_file(shop)
    assert opened(after, words) != opened(before, words)
    assert not {before[i : i + 16] for i in range(99, 3000, 16)} & {
        after[i : i + 16] for i in range(99, 3000, 16)
    }
    plan.write_text(text, "utf-8")
    published(shop)
    assert sealed_file(shop) == before


def test_a_plan_opens_to_all_on_a_stated_day(tmp_path: Path, quick: Any) -> None:
    shop = shop_in(tmp_path, plan=DAY)
    made(shop)
    early = published(shop, day="2027-02-28", today=date(2027, 3, 4))
    assert early.sealed
    (note,) = (each for each in early.findings if each.rule == "day-has-come")
    assert "2027-03-01" in str(note.message)
    assert "`--day 2027-03-04`" in str(note.advice)
    late = published(shop, day="2027-03-01", today=date(2027, 3, 4))
    assert (late.sealed, late.handed_over) == ((), ())
    assert rules(late.findings) == []
    assert quick.since() == ["board", "board", "site"]


@pytest.mark.parametrize(
    ("access", "day", "way"),
    [
        (Access(), "", Way.TO_ALL),
        (Access(access="supporters"), "2027-01-01", Way.BY_HAND),
        (Access(access="supporters", circle="friends"), "", Way.SEALED),
        (Access(access="supporters", circle="patrons"), "", Way.BY_HAND),
        (Access(access="supporters", circle="friends", opens="2027-03-01"), "", Way.SEALED),
        (Access(access="supporters", opens="2027-03-01"), "2027-02-28", Way.BY_HAND),
        (Access(access="supporters", opens="2027-03-01"), "2027-03-01", Way.TO_ALL),
    ],
)
def test_the_way_hangs_on_what_is_stated_alone(access: Access, day: str, way: Way) -> None:
    assert HandingOut(day=day, circles=("friends",)).way_of(access) is way


def test_the_day_of_the_environment_is_that_of_utc() -> None:
    assert source_day("1772323199") == "2026-02-28"
    assert source_day("1772323200") == "2026-03-01"
    assert source_day(None) == ""


def test_keys_are_for_their_owner_alone_and_no_word_of_them_is_written(tmp_path: Path) -> None:
    shop = shop_in(tmp_path)
    words = made(shop)
    (file,) = (tmp_path / "keys").iterdir()
    assert file.name == "friends.keys.json"
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert stat.S_IMODE(file.parent.stat().st_mode) == 0o700
    text = file.read_text("utf-8")
    assert not any(f'"{word}' in text or f" {word} " in text for word in words.split())


@pytest.mark.parametrize(
    ("inside", "rule"),
    [
        ("site/keys", "keys-in-site"),
        ("handed", "keys-in-site"),
        ("shop/.kerfolio/keys", "keys-in-store"),
        ("shop/keys", "keys-in-workshop"),
        ("shop/.kerfolio", "keys-in-store"),
    ],
)
def test_keys_lie_neither_in_a_site_nor_where_they_get_lost(
    tmp_path: Path, quick: Any, inside: str, rule: str
) -> None:
    shop, keys = shop_in(tmp_path), tmp_path / inside
    make_key(shop, "friends", "2026-12", tmp_path / "keys")
    published(shop)
    change = make_key(shop, "friends", "2026-12", keys)
    if rule == "keys-in-workshop":
        assert rules(change.findings) == [rule]
    elif inside != "handed":
        assert (rules(change.findings), change.words) == ([rule], "")
        assert not keys.is_dir() or not list(keys.glob("*.keys.json"))
        keys.mkdir(parents=True, exist_ok=True)
        (tmp_path / "keys" / "friends.keys.json").rename(keys / "friends.keys.json")
    outcome = published(shop, keys=keys)
    assert rule in rules(outcome.findings)
    assert outcome.published == (rule == "keys-in-workshop")


def test_damaged_keys_stop_a_publish_and_are_not_quoted(tmp_path: Path, quick: Any) -> None:
    shop = shop_in(tmp_path)
    made(shop)
    file = tmp_path / "keys" / "friends.keys.json"
    text = file.read_text("utf-8")
    file.write_text(text[:-40], "utf-8")
    outcome = published(shop)
    assert (outcome.published, rules(outcome.findings)) == (False, ["keys-damaged"])
    opener = json.loads(text)["keys"][0]["opener"]
    assert opener[:20] not in f"{outcome.findings[0].message}{outcome.findings[0].advice}"
    found = keys_of(shop, tmp_path / "keys")
    assert found.cabinet is None
    assert make_key(shop, "friends", "2026-12", tmp_path / "keys").words == ""
    file.write_text(text.replace('"friends"', '"patrons"'), "utf-8")
    assert "another circle" in str(published(shop).findings[0].message)


@pytest.mark.parametrize(
    ("asked", "environment", "stated", "where"),
    [
        (Path("/a"), {"KERFOLIO_KEYS": "/b"}, "/c", "/a"),
        (None, {"KERFOLIO_KEYS": "/b"}, "/c", "/b"),
        (None, {}, "/c", "/c"),
        (None, {}, "../mine", "/shelf/mine"),
        (None, {"XDG_DATA_HOME": "/data"}, "", "/data/kerfolio/keys/the-tidemill-bench"),
    ],
)
def test_where_keys_are_kept(
    monkeypatch: pytest.MonkeyPatch,
    asked: Path | None,
    environment: dict[str, str],
    stated: str,
    where: str,
) -> None:
    monkeypatch.setattr("sys.platform", "linux")
    found = cabinet_of(Path("/shelf/shop"), "The Tidemill Bench", stated, asked, environment)
    assert found == Cabinet(Path(where))


def test_a_publish_that_does_not_seal_looks_for_no_key(
    tmp_path: Path, quick: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = shop_in(tmp_path)
    made(shop)
    monkeypatch.setattr(Cabinet, "rings", None)
    assert published(shop, seals=False).published
