"""The agreement check names the two that disagree; each case spoils one file of a good bundle."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from kerfolio.agreement.check import disagreements
from kerfolio.bundles.archive import unzipped
from kerfolio.drawing.model_view import viewer_data
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import SUMS
from kerfolio.fitted.writing import fitted_json
from kerfolio.publishing.bundle import Bundle, bundle_files, bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.pictures import model_3d
from tests.plans import READY, proved, small_layout, workshop
from tests.publishing.spoiling import Files, faults_of, repacked

CUT = (
    READY.replace("{rectangle: [w, h]}", "{rectangle: [w, h]}\n    edges: {top: ease}").replace(
        "17.8, 18, 18.2", "17.8, 18.2"
    )
    + """\
cuts:
  profile: {sheet: ply, cutter: compression-6, feed: 3000 mm/min, passes: [9, rest], skim: 0.3}
consumables: [{what: Oil, price: 3.50}]
"""
)


@pytest.fixture(scope="module")
def edition() -> Edition:
    found = LaidOut(proof=proved(CUT), layout=small_layout(), fresh="")
    return edition_of(workshop(CUT), found)


@pytest.fixture(scope="module")
def files(edition: Edition) -> Files:
    model = model_3d(edition)
    assert model is not None
    return bundle_files(edition, {}, model, viewer_data(model))


@pytest.fixture(scope="module")
def bundle(edition: Edition) -> Bundle:
    return bundle_of(edition)


def test_a_good_bundle_agrees(edition: Edition, bundle: Bundle) -> None:
    assert faults_of(bundle) == ()
    assert bundle.fitted is not None
    fitted = fitted_json(bundle.fitted)
    other = fitted.replace("Part A, Side: cut", "Part A, Side: saw")
    found = [str(each.message) for each in disagreements(edition, bundle.content, other)]
    assert len(found) == len(edition.variants) * len(edition.formats)
    assert found[0].endswith("and the fitted files disagree: they give another file of this name")
    lost = fitted.replace("thickness.ply", "thickness.oak")
    assert [str(each.message) for each in disagreements(edition, bundle.content, lost)] == [
        "the fitted files and the cut files disagree: No file depends on thickness.ply."
    ]


def without_a_piece(text: str) -> str:
    return text.replace("side.left side.right,2", "side.left,1")


SPOILED: dict[str, tuple[str, Callable[[bytes], bytes], str]] = {
    "missing": ("booklet-a4.pdf", lambda _: b"", "`booklet-a4.pdf` and the bundle's contents"),
    "parts": (
        "lists/parts.csv",
        lambda data: without_a_piece(data.decode()).encode(),
        "`lists/parts.csv` and the parts for 17.6mm disagree: piece `side.right`",
    ),
    "hardware": (
        "lists/hardware.csv",
        lambda data: data.replace(b",2,sides", b",3,sides"),
        "`lists/hardware.csv` and the steps disagree: the counts differ",
    ),
    "steps": (
        "plan.json",
        lambda data: data.replace(b'"add": [\n    "side.left",\n', b'"add": [\n'),
        "`lists/parts.csv` and the steps disagree: piece `side.left`",
    ),
    "layout": (
        "plan.json",
        lambda data: data.replace(b'"piece": "rail"', b'"piece": "side.left"'),
        "`lists/parts.csv` and the sheet layouts disagree: piece `rail`, `side.left`",
    ),
    "mass": (
        "plan.json",
        lambda data: data.replace(b'"mass": ', b'"mass": 1'),
        "`lists/parts.csv` and `plan.json` disagree: the mass of `side`",
    ),
    "time": (
        "lists/cutting.csv",
        lambda data: data.replace(b"moves above the sheet,,,,,,0", b"moves above the sheet,,,,,,9"),
        "`lists/cutting.csv` and `plan.json` disagree: the time of sheet 1",
    ),
    "costs": (
        "lists/costs.csv",
        lambda data: data.replace(b"2,Oil,2,3.50,7.00", b"2,Oil,2,3.50,7.50"),
        "`lists/costs.csv` and `plan.json` disagree: what 2 cost",
    ),
    "edges": (
        "lists/edges.csv",
        lambda data: data.replace(b",0.300,", b",0.400,"),
        "`lists/edges.csv` and `plan.json` disagree: the metres of `ease`",
    ),
    "sheets": (
        "plan.json",
        lambda data: data.replace(b'"copies": 1,\n   "sheets": 1', b'"copies": 1,\n   "sheets": 2'),
        "`lists/costs.csv` and the sheet layouts disagree: the count of sheets",
    ),
    "thickness": (
        "cut/17.8mm/sheet-1-17.8mm.svg",
        lambda data: data.replace(b'data-thickness="17.8"', b'data-thickness="17.6"'),
        "`cut/17.8mm/sheet-1-17.8mm.svg` and its own name disagree: "
        "it is for 17.6 mm, the sheet is 17.8 mm",
    ),
    "thickness of a DXF": (
        "cut/17.8mm/sheet-1-17.8mm.dxf",
        lambda data: data.replace(b"$CUSTOMPROPERTY\n  1\n17.8\n", b"$CUSTOMPROPERTY\n  1\n18\n"),
        "`cut/17.8mm/sheet-1-17.8mm.dxf` and its own name disagree: "
        "it is for 18 mm, the sheet is 17.8 mm",
    ),
    "toolpath": (
        "plan.json",
        lambda data: data.replace(b'"contours": 3', b'"contours": 4'),
        "`plan.json` and `cut/17.6mm/sheet-1-17.6mm.svg` disagree: "
        "the paths on layer `outline_through`",
    ),
    "no thickness": (
        "cut/17.8mm/sheet-1-17.8mm.svg",
        lambda data: data.replace(b' data-thickness="17.8"', b""),
        "`cut/17.8mm/sheet-1-17.8mm.svg` and its own name disagree: "
        "it is for no thickness, the sheet is 17.8 mm",
    ),
}


@pytest.mark.parametrize("case", SPOILED)
def test_each_disagreement_is_named(edition: Edition, files: Files, case: str) -> None:
    name, spoil, message = SPOILED[case]
    spoiled = {**files, name: spoil(files[name])}
    assert spoiled[name] != files[name]
    messages = [finding.message for finding in faults_of(repacked(edition, spoiled))]
    assert any(each.startswith(message) for each in messages), messages


def test_files_of_another_thickness_are_found(edition: Edition, files: Files) -> None:
    """The side for 18.2 mm under the name of 17.6 mm: slots 0.6 mm too wide."""
    for kind in ("svg", "dxf"):
        wrong = files[f"cut/18.2mm/parts/side-18.2mm.{kind}"]
        spoiled = {**files, f"cut/17.6mm/parts/side-17.6mm.{kind}": wrong}
        messages = [each.message for each in faults_of(repacked(edition, spoiled))]
        name = f"`cut/17.6mm/parts/side-17.6mm.{kind}`"
        assert (
            f"{name} and the settled plan disagree: a contour of `side` at 100, 60 mm on layer "
            "`opening_through` has another shape" in messages
        )
        assert f"slot `side.rail-slot` and {name} disagree: 18.4 mm is not 17.8 mm" in messages
        assert any(each.startswith(f"{name} and its own name disagree") for each in messages)


def test_missing_extra_and_unsummed_files_are_found(edition: Edition, files: Files) -> None:
    name = "cut/17.6mm/parts/rail-17.6mm.dxf"
    fewer = {key: data for key, data in files.items() if key != name}
    (finding,) = faults_of(repacked(edition, fewer))
    assert finding.message == f"`{name}` and the bundle's contents disagree: it is missing"
    (finding,) = faults_of(repacked(edition, {**files, "stray.txt": b"?"}))
    assert finding.message.endswith("it was not meant to be there")
    assert "lists/boards.csv" not in files, "a list without a row is not written"
    (finding,) = faults_of(repacked(edition, {**files, "lists/boards.csv": b"board\r\n"}))
    assert finding.message.endswith("it was not meant to be there")
    fewer = {key: data for key, data in files.items() if key != "lists/costs.csv"}
    (finding,) = faults_of(repacked(edition, fewer))
    assert finding.message.endswith("it is missing")
    changed = {**files, "LICENCE.txt": files["LICENCE.txt"] + b"!"}
    (finding,) = faults_of(repacked(edition, changed, summed=False))
    assert finding.message == f"`{SUMS}` and the files disagree: a check sum does not hold"


def test_a_disagreement_stops_a_publish(edition: Edition) -> None:
    """A slot that is not as wide as its label says is found, whoever put it there."""
    settled = edition.variants[0]
    side = settled.parts[0]
    slot = replace(side.features[0], width=replace(side.features[0].width, value=19.0))
    wrong = replace(side, features=(slot, *side.features[1:]))
    variants = (replace(settled, parts=(wrong, *settled.parts[1:])), *edition.variants[1:])
    spoiled = replace(edition, variants=variants)
    messages = [each.message for each in faults_of(bundle_of(spoiled))]
    assert "slot `side.rail-slot` and 17.6mm disagree: 19 mm is not 17.8 mm" in messages


def test_names_in_the_zip_lie_in_one_folder_the_page_to_open_first(bundle: Bundle) -> None:
    names = list(unzipped(bundle.content))
    assert {name.split("/")[0] for name in names} == {"rack-1.0.0"}
    assert names[0] == "rack-1.0.0/start-here.html"
    assert names[1:] == sorted(names[1:])
