"""Files for one point: what may be asked, what is written, and that it agrees with a bundle."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.edition.names import is_of_point
from kerfolio.publishing import examine_at
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.cut_files import part_files, sheet_files
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import examine
from kerfolio.publishing.point_files import FilesMade, FilesRequest, make_files
from kerfolio.publishing.template_files import template_files
from kerfolio.writing.formats import EVERY_FORMAT
from tests.conftest import files_of
from tests.plans import RACK, READY, lay_down

TWO = RACK.replace(
    "sheets:\n",
    "sheets:\n  thin: {stock: birch-plywood-6-5, size: 1525 x 1525, published-for: 6.4}\n",
)


def made(folder: Path, *, plan: str = RACK, name: str = "rack", **asked: object) -> FilesMade:
    shop = folder / "shop"
    if not shop.exists():
        lay_down(shop, plan)
    return make_files(FilesRequest(folder=shop, plan=name, asked=Asked(**asked)))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({"sheets": ("mdf=18",)}, "no sheet `mdf` / Known here: `ply`, `thin`."),
        ({"sheets": ("17.8",)}, "which sheet is `17.8`? / Write `thin=17.8`."),
        (
            {"sheets": ("ply=a",)},
            "`a` is no length / Write a number or a quantity such as `17.63`.",
        ),
        ({"sheets": ("ply=18", "ply=17.8")}, "`ply` is named twice / Keep one of them."),
        (
            {"sheets": ("ply=25",)},
            "`ply` is not made for 25 mm / Ask for 17.1 to 18.2 mm: what `birch-plywood-18` "
            "(content/sheets.yaml) is sold at and the plan is published for.",
        ),
        (
            {"fits": ("ply=8",)},
            "a fit of 8 mm / 0 mm to 5 mm is usual: is the unit the one you mean?",
        ),
        (
            {"cutters": ("0.1",)},
            "a cutter of 0.1 mm / 0.5 mm to 50 mm is usual: is the unit the one you mean?",
        ),
        (
            {"cuts": ("0.5",)},
            "a cut of 0.5 mm / -0.3 mm to 0.3 mm is usual: is the unit the one you mean?",
        ),
        ({"name": "rake"}, "no plan `rake` / Did you mean `rack`?"),
    ],
)
def test_what_cannot_be_had_is_told_before_anything_is_proved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, asked: dict[str, object], words: str
) -> None:
    monkeypatch.setattr(examine_at, "examine_read", None)
    found = made(tmp_path, plan=TWO, **asked)  # type: ignore[arg-type]
    assert [f"{each.message} / {each.advice}" for each in found.findings] == [words]
    assert found.written == ()
    assert not (tmp_path / "shop" / "files").exists()


def test_a_folder_with_other_files_is_left_alone(tmp_path: Path) -> None:
    lay_down(tmp_path / "shop")
    out = tmp_path / "shop" / "files" / "rack-17.9mm"
    out.mkdir(parents=True)
    (out / "mine.nc").write_text("G0", "utf-8")
    (only,) = made(tmp_path, sheets=("17.9",)).findings
    assert only.message == "the output folder holds other files: `mine.nc`"
    assert only.advice.endswith("or one that an earlier run of `files` wrote.")


def test_files_at_a_published_point_are_those_of_the_bundle(tmp_path: Path) -> None:
    """Byte for byte: cut files and templates, in fresh settlings of both."""
    found = made(tmp_path, plan=READY, sheets=("18.2",))
    assert found.label == "18.2mm"
    examined = examine(tmp_path / "shop", "rack", pictures=False)
    assert examined.workshop is not None
    edition = edition_of(examined.workshop, examined.laid_out[0])
    settled = edition.variants[-1]
    bundle = dict(sheet_files(settled, edition.layout, edition.formats, METRIC))
    bundle |= dict(part_files(settled, edition.formats, METRIC))
    bundle |= {name: content for name, content in template_files(edition) if "18.2mm" in name}
    assert len(bundle) == 9
    for name, content in bundle.items():
        assert (found.out / name).read_bytes() == content, name


def test_what_is_written_says_what_it_is_for_and_is_known_again(tmp_path: Path) -> None:
    found = made(tmp_path, sheets=("17.634",), fits=("0.08",), cutters=("none",), cuts=("0.15",))
    assert found.label == "17.63mm-fit-0.08mm-no-cutter-cut+0.15mm"
    assert sorted(files_of(found.out)) == sorted(found.written)
    assert [name for name in found.written if not is_of_point(name, EVERY_FORMAT)] == []
    assert "templates/17.63mm-fit-0.08mm-roll.pdf" in found.written  # no cutter cuts a template
    told = json.loads((found.out / "files.json").read_bytes())
    assert told == {
        "format": "kerfolio-files/1",
        "plan": "rack",
        "title": "Probe rack",
        "release": "1.0.0",
        "date": "2026-10-02",
        "label": "17.63mm-fit-0.08mm-no-cutter-cut+0.15mm",
        "unit": "mm",
        "sheets": {
            "ply": {
                **{"stock": "birch-plywood-18", "thickness": 17.63, "fit": 0.08, "cutter": None},
                "cut": 0.15,
            }
        },
    }


def test_a_cutter_wider_than_a_slot_is_told_with_the_slot(tmp_path: Path) -> None:
    plan = RACK.replace("fit: 0.1}", "fit: 0.1, gap: 30}")
    found = made(tmp_path, plan=plan, cutters=("20",))
    assert found.written == ()
    told = [each for each in found.findings if each.rule == "smaller-than-cutter"]
    assert [each.message for each in told][:1] == [
        "slot `side.rail-slot` is 17.8 mm wide (at 17.6mm with a cutter of 20 mm)"
    ]
    assert {each.advice for each in told} == {"The cutter is 20 mm: use a smaller cutter."}


def test_beyond_what_is_published_a_plan_is_laid_out_anew_where_it_has_to(tmp_path: Path) -> None:
    """The stock is sold from 17.1 mm: as far as that the same layout holds."""
    found = made(tmp_path, sheets=("17.1",))
    assert (found.label, found.findings[-1].rule) == ("17.1mm", "joint-unchecked")
    assert (found.out / "cut/17.1mm/sheet-1-17.1mm.svg").is_file()
