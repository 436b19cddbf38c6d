"""Files that hang on shapes alone are made once, and are what they would be if made anew."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from kerfolio.agreement.check import Check
from kerfolio.agreement.templates import templates
from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.edition.edition import Edition
from kerfolio.keeping.kept import Kept
from kerfolio.keeping.store import Store
from kerfolio.publishing import shape_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.fitted_files import filled_at
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.shape_files import ShapeFiles
from tests.plans import ONE, proved, small_layout, workshop

MAKES = ("fitted_files", "fitted_to_print", "rescue_fitted")


@cache
def edition(text: str = ONE) -> Edition:
    found = LaidOut(proof=proved(text), layout=small_layout(), fresh="")
    return edition_of(workshop(text), found)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store that holds the files of the rack."""
    store = tmp_path_factory.mktemp("store") / "kept"
    told(ShapeFiles(edition(), Kept(Store(store))))
    return store


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch, folder: Path) -> list[str]:
    """Note what is made from now on."""
    names: list[str] = []

    def noting(name: str, make: Callable[..., object]) -> Callable[..., object]:
        def noted(*inputs: object) -> object:
            names.append(name)
            return make(*inputs)

        return noted

    assert folder.is_dir()
    for name in MAKES:
        monkeypatch.setattr(shape_files, name, noting(name, getattr(shape_files, name)))
    return names


def told(shapes: ShapeFiles) -> tuple[object, ...]:
    """Return all that is made of an edition's shapes."""
    assert shapes.fitted is not None
    return shapes.fitted, shapes.rescue(shapes.fitted.numbers), dict(shapes.printed_apart())


def kept(found: Edition, folder: Path) -> tuple[object, ...]:
    return told(ShapeFiles(found, Kept(Store(folder))))


WORDED = (
    ONE.replace("summary: A rack", "# a line more\nsummary: The rack")
    .replace("text: Push the tabs home.", "text: Push.")
    .replace("steps:", "questions: [{q: Why?, a: So.}]\nsteps:")
    .replace("changed: First release.", "changed: The first.")
)
SHAPED = {
    "a size": ("w: 300", "w: 301"),
    "the title": ("plan: Probe rack", "plan: Rack"),
}


def test_words_change_none_of_them(folder: Path, made: list[str]) -> None:
    found = edition(WORDED)
    files = kept(found, folder)
    assert made == []
    assert files == told(ShapeFiles(found))
    assert len(made) == len(MAKES) + 1


@pytest.mark.parametrize("change", SHAPED.values(), ids=SHAPED)
def test_shapes_and_names_change_all_of_them(
    change: tuple[str, str], folder: Path, made: list[str]
) -> None:
    kept(edition(ONE.replace(*change)), folder)
    assert len(made) == len(MAKES) + 1


def test_prices_change_none_of_them(folder: Path, made: list[str]) -> None:
    found = edition()
    settled = found.settled
    sheets = tuple(
        replace(each, prices=(((1.0, 2.0), Decimal(3)),), source="a shop")
        for each in settled.stock.sheets
    )
    dear = replace(settled, stock=replace(settled.stock, sheets=sheets))
    identity = replace(found.identity, machine_hour=Decimal(9), currency="SEK")
    assert kept(replace(found, settled=dear, identity=identity), folder) == kept(found, folder)
    assert made == []


def test_who_makes_it_stands_on_paper_alone(folder: Path, made: list[str]) -> None:
    identity = replace(edition().identity, maker="Somebody else")
    kept(replace(edition(), identity=identity), folder)
    assert made == ["fitted_to_print", "fitted_to_print"]


def test_a_corrupted_entry_is_made_anew(tmp_path: Path, made: list[str]) -> None:
    before = kept(edition(), tmp_path)
    entries = sorted(tmp_path.glob("[!.]*"))
    assert len(entries) == len(made) == len(MAKES) + 1
    for each in entries:
        content = each.read_bytes()
        each.write_bytes(content[:100] + bytes([content[100] ^ 1]) + content[101:])
    made.clear()
    assert kept(edition(), tmp_path) == before
    assert len(made) == len(MAKES) + 1
    assert kept(edition(), tmp_path) == before
    assert len(made) == len(MAKES) + 1


def test_what_hangs_on_more_is_made_and_not_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def curious(found: Edition, _: object) -> bytes:
        return " ".join(str(each.by_hand.upper()) for each in found.plan.steps).encode()

    curious.__qualname__ = "curious"
    monkeypatch.setattr(shape_files, "of_all", lambda make, *inputs: make(*inputs))
    shapes = ShapeFiles(edition(), Kept(Store(tmp_path)))
    assert shapes._made(curious, shapes._bare) == b""
    assert list(tmp_path.iterdir()) == []


def test_what_of_templates_was_found_is_kept_for_the_same_bytes(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = edition()
    looked: list[int] = []

    def counting(written: Written) -> Iterable[Finding]:
        looked.append(1)
        return templates(written)

    monkeypatch.setattr(shape_files, "templates", counting)
    fitted = ShapeFiles(found, Kept(Store(folder))).fitted
    assert fitted is not None
    files = filled_at(fitted, found.settled.variant)

    def faults(changed: dict[str, bytes]) -> tuple[str, ...]:
        written = Written(edition=found, files=files | changed, facts={}, place=Place("plan.yaml"))
        checked = ShapeFiles(found, Kept(Store(tmp_path / "kept"))).checked(counting, written)
        return tuple(str(each) for each in checked)

    assert [faults({}), faults({}), len(looked)] == [(), (), 1]
    name = next(each for each in files if each.endswith("-roll.pdf"))
    spoiled = {name: files[name][:200]}
    assert "disagree" in faults(spoiled)[0]
    assert [faults(spoiled), len(looked)] == [faults(spoiled), 2]


def test_other_checks_are_always_run(tmp_path: Path) -> None:
    ran: list[Written] = []

    def check(written: Written) -> Iterable[Finding]:
        ran.append(written)
        return ()

    other: Check = check
    written = Written(edition=edition(), files={}, facts={}, place=Place("plan.yaml"))
    for _ in range(2):
        assert ShapeFiles(edition(), Kept(Store(tmp_path))).checked(other, written) == ()
    assert ran == [written, written]
