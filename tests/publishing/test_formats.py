"""A format more is an entry of the table: here an invented one, found wherever formats count."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from kerfolio.basis.figured import resolved
from kerfolio.basis.json_text import Number, json_text
from kerfolio.basis.style import Numbers, Style, told_as
from kerfolio.chapters.document_of import booklet_document
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import is_of_batch
from kerfolio.geometry.contour import Contour
from kerfolio.layouts.effort import Effort
from kerfolio.pages.plan import plan_page
from kerfolio.publishing.batch import BatchRequest, make_batch
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.writing.formats import CUT_FORMATS, CutFormat
from kerfolio.writing.read_back import ReadBack
from tests.chapters.told import words_of
from tests.pages.invented import edition as stool
from tests.pages.invented import site
from tests.pages.markup import Tree
from tests.plans import READY, lay_down, proved, small_layout, workshop
from tests.publishing.spoiling import faults_of, files_of, repacked


def write(drawing: Drawing, *, own_origin: bool, numbers: Numbers = told_as) -> bytes:
    """Write corners, words and thickness as JSON, in tenths of a millimetre."""
    del own_origin

    def told(value: float) -> Number:
        return Number(numbers(value, Style(decimals=5)))

    items = [each for item in drawing.items for each in expanded(item)]
    contours = [(each.layer, each.contour) for each in items if isinstance(each, Stroke)]
    content = {
        "tenths": [
            [
                layer,
                contour.closed,
                [(told(10 * x), told(10 * y), told(b)) for x, y, b in contour.vertices],
            ]
            for layer, contour in contours
        ],
        "words": [
            (each.layer, resolved(each.text, numbers)) for each in items if isinstance(each, Label)
        ],
        "thickness": drawing.thickness and told(10 * drawing.thickness),
    }
    return json_text(content).encode()


def read(content: bytes) -> ReadBack:
    layers: dict[str, tuple[Contour, ...]] = {}
    words: dict[str, tuple[str, ...]] = {}
    stated = json.loads(content)
    for layer, closed, spots in stated["tenths"]:
        contour = Contour(tuple((x / 10, y / 10, b) for x, y, b in spots), closed=closed)
        layers[layer] = (*layers.get(layer, ()), contour)
    for layer, text in stated["words"]:
        words[layer] = (*words.get(layer, ()), text)
    thickness = stated["thickness"]
    return ReadBack(layers=layers, words=words, thickness=thickness and float(thickness) / 10)


TENTHS = CutFormat(
    ending="tenths.json",
    title="tenths list",
    unit="mm",
    write=write,
    read=read,
)
TWO = tuple(each for each in CUT_FORMATS if each.ending in ("svg", "dxf"))
FORMATS = (*TWO, TENTHS)


@pytest.fixture(scope="module")
def bundle() -> Bundle:
    found = LaidOut(proof=proved(READY), layout=small_layout(), fresh="")
    return bundle_of(edition_of(workshop(READY), found, FORMATS))


def test_endings_differ_and_a_shop_is_sent_something() -> None:
    endings = [each.ending for each in CUT_FORMATS]
    assert len(set(endings)) == len(endings)
    assert any(each.sent for each in CUT_FORMATS)


def test_the_bundle_holds_every_cut_file_in_every_format(bundle: Bundle) -> None:
    names = {name for name in files_of(bundle) if name.startswith("cut/")}
    stems = {each.ending: {n for n in names if n.endswith(f".{each.ending}")} for each in FORMATS}
    assert set().union(*stems.values()) == names
    for ending, found in stems.items():
        assert {each.removesuffix(ending) for each in found} == {
            each.removesuffix("svg") for each in stems["svg"]
        }
    assert {
        "cut/17.8mm/sheet-1-17.8mm.tenths.json",
        "cut/engravings/side.mark.tenths.json",
    } <= names
    assert "cut/fit-coupon/fit-coupon-ply.tenths.json" in names
    assert "cut/17.6mm/parts/rail-17.6mm.tenths.json" in names


def moved(content: bytes) -> bytes:
    found: dict[str, Any] = json.loads(content)
    found["tenths"] = [
        [layer, closed, [(x + 1, y, b) for x, y, b in spots]]
        for layer, closed, spots in found["tenths"]
    ]
    return json.dumps(found).encode()


def test_the_agreement_check_reads_its_files_back(bundle: Bundle) -> None:
    assert faults_of(bundle) == ()
    files = files_of(bundle)
    name = "cut/17.6mm/parts/side-17.6mm.tenths.json"
    other = files["cut/18.2mm/parts/side-18.2mm.tenths.json"]
    assert said(bundle.edition, {**files, name: other}) == [
        *(
            f"`{name}` and the settled plan disagree: a contour of `side` at 100, 60 mm on layer "
            f"`{layer}_through` has another shape"
            for layer in ("opening", "outline")
        ),
        f"slot `side.rail-slot` and `{name}` disagree: 18.4 mm is not 17.8 mm",
        f"slot `side.foot` and `{name}` disagree: 18.4 mm is not 17.8 mm",
        f"`{name}` and what it is for disagree: "
        "it does not say “Cut for Birch plywood 18 mm at 17.60 mm (0.693 in)”",
        f"`{name}` and what it is for disagree: "
        "it does not say “Files for sheets 17.60 mm thick. Units: mm.”",
        f"`{name}` and what it is for disagree: "
        "it says “Cut for Birch plywood 18 mm at 18.20 mm (0.717 in)” on layer `note`",
        f"`{name}` and what it is for disagree: "
        "it says “Files for sheets 18.20 mm thick. Units: mm.” on layer `note`",
        f"`{name}` and its own name disagree: it is for 18.2 mm, the sheet is 17.6 mm",
    ]
    name = "cut/17.6mm/sheet-1-17.6mm.tenths.json"
    assert said(bundle.edition, {**files, name: moved(files[name])}) == [
        f"`{name}` and the settled plan disagree: "
        "everything lies elsewhere, by 0.1 mm across and 0 mm up"
    ]
    name = "cut/engravings/side.mark.tenths.json"
    assert said(bundle.edition, {**files, name: moved(files[name])}) == [
        f"`{name}` and the settled plan disagree: "
        "everything lies elsewhere, by 0.1 mm across and 0 mm up"
    ]
    del files[name]
    assert said(bundle.edition, files) == [
        f"`{name}` and the bundle's contents disagree: it is missing"
    ]


def said(edition: Edition, files: dict[str, bytes]) -> list[str]:
    return [each.message for each in faults_of(repacked(edition, files))]


def test_a_batch_writes_it_and_knows_it_again(tmp_path: Path) -> None:
    shop, out = lay_down(tmp_path / "shop"), tmp_path / "batch"
    request = BatchRequest(
        folder=shop,
        plan="rack",
        copies=2,
        out=out,
        effort=Effort(moves=10_000, seconds=1.0),
        formats=FORMATS,
    )
    made = make_batch(request)
    assert "cut/17.6mm/sheet-1-17.6mm.tenths.json" in made.written
    assert "cut/engravings/side.mark.tenths.json" in made.written
    assert [name for name in made.written if not is_of_batch(name, FORMATS)] == []
    assert make_batch(request).written == made.written
    refused = make_batch(replace(request, formats=CUT_FORMATS))
    assert refused.written == ()
    assert [each.rule for each in refused.findings] == ["out-not-ours"]


def test_other_names_are_no_batchs() -> None:
    for name in (
        "cut/17.8mm/sheet-1-17.6mm.dxf",
        "cut/17.8mm/sheet-one-17.8mm.dxf",
        "cut/17.8mm/sheet-1-17.8mm.nc",
        "cut/17.8mm/sheet-1-17.8mm.tenths.json",
        "cut/17.8mm/parts/side-17.8mm.dxf",
        "cut/engravings/side.dxf",
        "my/cut/17.8mm/sheet-1-17.8mm.dxf",
        "lists/mine.csv",
        "notes.txt",
    ):
        assert not is_of_batch(name, CUT_FORMATS), name


def test_readers_are_told_of_it(bundle: Bundle) -> None:
    start = Tree(files_of(bundle)["start-here.html"].decode()).text_of("main")
    found = replace(stool(), formats=FORMATS)
    page = Tree(plan_page(replace(site(), editions=(found,)), found)).text_of("main")
    units = "in millimetres"
    for text in (start, page):
        assert "one SVG, one DXF and one tenths list for each" in text
        assert f"all are {units}, whatever your machine shows" in text
        assert "The DXF files of" in text
    assert f"Cut files come as SVG, as DXF and as tenths list, all {units}, one file" in page
    assert "one SVG, one DXF and one tenths list for each" in words_of(booklet_document(found))


def test_readers_are_told_of_two() -> None:
    found = replace(stool(), formats=TWO)
    page = Tree(plan_page(replace(site(), editions=(found,)), found)).text_of("main")
    assert "one SVG and one DXF for each" in page
    assert "all are in millimetres, whatever your machine shows" in page
    assert "Cut files come as SVG and as DXF, both in millimetres, one file" in page
