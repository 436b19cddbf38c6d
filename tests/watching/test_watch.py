"""What a save changes of what is shown, and that the workshop itself is left alone."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import pytest

from kerfolio.basis.finding import has_errors
from kerfolio.watching.page import maker_page, readers_page
from kerfolio.watching.prover import Proven, Prover
from kerfolio.watching.proving_child import proven
from kerfolio.watching.publisher import Publisher
from kerfolio.watching.saves import stamps_of
from kerfolio.watching.watch import Stage, Watch
from tests.command import run
from tests.conftest import files_of
from tests.plans import lay_down
from tests.watching.test_server import Unproved

LOST = "at: [100, 60], length: 60"


def never() -> bool:
    return False


class ProvenHere:
    """Proves in this process, when it is asked what it found."""

    def __init__(self, folder: Path) -> None:
        self._folder, self._names = folder, list[str]()

    def begin(self, names: Sequence[str]) -> None:
        self._names = [*names]

    def told(self, is_over: Callable[[], bool]) -> Iterator[Proven]:
        for name in self._names:
            if is_over():
                return
            yield from proven(self._folder, name)


class Shop:
    """A workshop that is watched, and saved to."""

    def __init__(self, folder: Path, publisher: Publisher | None = None) -> None:
        self.folder = lay_down(folder / "shop")
        self.plan = self.folder / "plans" / "rack" / "plan.yaml"
        self.stage = Stage()
        self.watch = Watch(
            folder=self.folder,
            stage=self.stage,
            prove=ProvenHere(self.folder),
            publisher=publisher,
        )
        self.watch.look()

    def save(self, old: str, new: str) -> str:
        text = self.plan.read_text("utf-8")
        assert old in text
        self.plan.write_text(text.replace(old, new), "utf-8")
        assert self.watch.is_touched()
        self.watch.look()
        assert not self.watch.is_touched()
        return maker_page(self.stage.seen)


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop(tmp_path)


def test_the_first_look_shows_everything_and_nothing_as_new(shop: Shop) -> None:
    page = maker_page(shop.stage.seen)
    for words in ("Probe rack", "rail-slot", "side.left", ">200 mm<", "1 note"):
        assert words in page
    assert 'class="fresh"' not in page
    assert "is-changed" not in page


def test_a_save_tints_what_it_changed_and_the_next_one_no_longer(shop: Shop) -> None:
    page = shop.save("at: [30, 30]", "at: [30, 35]")
    assert page.count("drawn-part is-changed") == 1
    assert page.count("Changed by the last save") == 1
    assert '<li class="is-changed"><a href="/lines?at=plans%2Frack%2Fplan.yaml' in page
    assert "k-line-new-line" in page, "the hole on the drawing"
    assert "k-fill-new-" in page, "both pieces of the part in the whole"
    page = shop.save("summary: A rack", "summary: One rack")
    assert "is-changed" not in page
    assert "new-line" not in page


def test_an_error_is_shown_with_what_can_be_shown_beside_it(shop: Shop) -> None:
    page = shop.save("width: 60, depth: t", "width: -6, depth: t")
    assert "width `-6` comes to" not in page, "a word of the file is marked as one"
    assert "<code>-6</code> comes to -6 mm" in page
    assert '<span class="fresh">new</span>' in page
    assert 'data-feature="right-tab"' in page
    assert 'data-feature="left-tab"' not in page
    shop.watch.finish(never)
    page = shop.save("width: -6, depth: t", "width: 60, depth: t")
    assert 'data-feature="left-tab"' in page
    assert "gone with the last save" not in page, "not before it is proved"
    shop.watch.finish(never)
    assert " gone with the last save." in maker_page(shop.stage.seen)


def test_what_proving_found_stays_until_it_is_proved_again(shop: Shop) -> None:
    shop.save("at: [30, 30]", "at: [2, 30]")
    shop.watch.finish(never)
    page = shop.save("summary: A rack", "summary: One rack")
    assert "As it was before this save, being proved again (" in page
    assert 'class="remark error"' in page
    page = shop.save("at: [2, 30]", "at: [30, 30]")
    shop.watch.finish(never)
    page = maker_page(shop.stage.seen)
    assert "being proved again" not in page
    assert 'class="remark error"' not in page


def test_a_feature_that_cannot_be_read_is_left_out_of_its_part_and_named(shop: Shop) -> None:
    page = shop.save(LOST, "at: [nope, 60], length: 60")
    assert "unknown size <code>nope</code>" in page
    assert 'id="rack-side"' in page
    assert "; without rail-slot<" in page, "where it was to be is not known"
    assert 'data-feature="rail-slot"' not in page
    page = shop.save("at: [nope, 60], length: 60", "at: [100, 60], length: sixty")
    assert "left out: see what was found of it" in page, "with a cross where it was to be"
    assert "; without rail-slot<" not in page


def test_a_part_that_cannot_be_read_is_named(shop: Shop) -> None:
    page = shop.save("polygon: [[0, 0]", "polygon: [[0]")
    assert "Left out, for what was found of it: <code>side</code>." in page
    assert 'id="rack-rail"' in page


def test_a_plan_that_cannot_be_read_stays_as_it_was_last_drawn(shop: Shop) -> None:
    page = shop.save("parts:\n", "parts: [\n")
    assert "Drawn as it was when it could last be read." in page
    assert "rail-slot" in page
    assert "gone with the last save" not in page, "nobody knows"
    page = shop.save("parts: [\n", "parts:\n")
    assert "could last be read" not in page


def test_proving_tells_more_than_a_look_with_pictures(shop: Shop) -> None:
    shop.save("at: [30, 30]", "at: [2, 30]")
    assert not has_errors(shop.stage.seen.plans[0].findings)
    shop.watch.finish(never)
    page = maker_page(shop.stage.seen)
    assert has_errors(shop.stage.seen.plans[0].findings)
    assert 'class="remark error"' in page
    assert "<figcaption>side" in page, "its place in a picture"
    assert "Errors stop a publish." in page


def test_a_newer_save_ends_a_round(shop: Shop) -> None:
    shop.watch.finish(lambda: True)
    assert shop.stage.seen.doing == "Proving what was saved."
    shop.watch.finish(never)
    assert shop.stage.seen.doing == ""


def test_readers_pages_are_made_of_a_copy_and_reach_neither_workshop_nor_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What stands in for a publish writes where one is told to, and beside its plan."""
    beside = tmp_path / "beside"
    beside.mkdir()
    fake = tmp_path / "python"
    fake.write_text(
        f"#!{sys.executable}\n"
        "import pathlib, sys\n"
        "module, name, command, shop, draft, out, site, supporters, hidden = sys.argv[1:]\n"
        "assert (module, name, command) == ('-m', 'kerfolio', 'publish')\n"
        "assert (draft, out) == ('--draft', '--out')\n"
        "assert supporters == '--supporters-out'\n"
        "(pathlib.Path(shop) / 'plans/rack/layout.json').write_text('{}')\n"
        "pathlib.Path(site).mkdir(exist_ok=True)\n"
        "text = (pathlib.Path(shop) / 'plans/rack/plan.yaml').read_text()\n"
        "(pathlib.Path(site) / 'index.html').write_text(text.splitlines()[0])\n",
        "utf-8",
    )
    fake.chmod(0o755)
    shop = Shop(tmp_path, Publisher(tmp_path / "shop", beside))
    before = files_of(shop.folder)
    monkeypatch.setattr(sys, "executable", str(fake))
    assert "No readers’ pages yet" in readers_page(shop.stage.seen)
    shop.watch.finish(never)
    assert files_of(shop.folder) == before
    assert (beside / "site" / "index.html").read_text() == "plan: Probe rack"
    assert "/site/index.html" in readers_page(shop.stage.seen)
    shop.save("plan: Probe rack", "plan: Second rack")
    shop.watch.finish(never)
    assert (beside / "site" / "index.html").read_text() == "plan: Second rack"
    assert shop.stage.seen.sites == 2
    assert "--supporters-out" in run("publish", "--help").stdout


def test_hidden_files_and_results_are_no_saves(tmp_path: Path) -> None:
    folder = lay_down(tmp_path / "shop")
    before = stamps_of(folder)
    for name in (
        ".kerfolio/private/log/index.html",
        "site/index.html",
        "plans/rack/.plan.yaml.swp",
    ):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text("x")
    assert stamps_of(folder) == before
    (folder / "plans" / "rack" / "photo.jpg").write_bytes(b"x")
    assert stamps_of(folder) != before


def test_plans_are_proven_in_a_process_beside_until_it_is_over(shop: Shop) -> None:
    shop.save("at: [30, 30]", "at: [2, 30]")
    with Prover(shop.folder) as prover:
        prover.begin(["rack"])
        first = list(prover.told(never))
        assert first == list(proven(shop.folder, "rack"))
        assert has_errors(first[-1].findings)
        assert [each.is_all for each in first] == [False, False, True], "words, pictures, all"
        assert not any(first[0].pictures)
        assert any(first[1].pictures)
        prover.begin(["rack"])
        assert list(prover.told(lambda: True)) == []
        prover.begin(["rack", "rack"])
        shop.save("at: [2, 30]", "at: [30, 30]")
        prover.begin(["rack"])
        again = list(prover.told(never))
        assert not has_errors(again[-1].findings)
    with Prover(shop.folder) as knows_nothing:
        knows_nothing.begin(["rack"])
        assert again == list(knows_nothing.told(never)), "what is known changes nothing"


def test_a_proof_that_fails_is_told(shop: Shop) -> None:
    shop.watch.prove = Unproved()
    shop.watch.finish(never)
    assert "`kerfolio prove` tells why" in shop.stage.seen.doing
