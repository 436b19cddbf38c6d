"""In a plan of inches everything that people read leads with inches: a sweep over all its words."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from pathlib import PurePosixPath
from xml.etree import ElementTree

import pytest

from kerfolio.bundles.archive import unzipped
from kerfolio.edition.edition import Edition
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.model.workshop import Identity
from kerfolio.pages.home import home_page
from kerfolio.pages.plan import plan_page
from kerfolio.pages.setup import setup_page
from kerfolio.publishing.bundle import bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.pages.invented import plan_files, site
from tests.pages.markup import Tree
from tests.paper.reading import texts
from tests.plans import proved, workshop
from tests.proving.test_inches import RACK

PLAN = (
    RACK.replace("bolt-m6x40", "bolt-1-4x1-1-2in")
    .replace(
        "bolt: {hole: {at: [1.5, 1.5], for: bolt-1-4x1-1-2in}}",
        "bolt: {hole: {at: [1.5, 1.5], for: bolt-1-4x1-1-2in}}\n"
        "      tiny: {hole: {at: [6.5, 1.5], diameter: 3 mm}}\n"
        "      word: {engrave: {text: SIDE, at: [5-1/2, 3 in], height: 1/2, depth: 1/64}}",
    )
    .replace(
        "hardware: [", "boards: {batten: {stock: pine-1x2, length: 12-1/2, count: 2}}\nhardware: ["
    )
    .replace(
        "steps:",
        "spans: {rail: {part: rail, supports: [0, 12], load: {kg: 20}, limit: 1/8 in}}\nsteps:",
        1,
    )
)

ALLOWED = {
    r"\((?:under )?[\d.]+(?:(?: ×| to)? [\d.]+)* (?:mm|kg)(?: a metre)?\)": "the other unit",
    r"(?<= in |lbs |.lb )[\d.]+(?: × [\d.]+)* (?:mm|kg)(?![\w/])": "the other unit, a line below",
    r"feed [\d]+, plunge [\d]+ mm/min": "the feeds of a machine that shows mm",
    r"(?:SIZE|LENGTH|Size|Length), (?:mm|MM)": "the column of the other unit",
    r"Units: mm\.": "cut files are in mm",
    r"(?:engrave|pocket|groove|hole|bridge)_[\d.]+mm": "layers of cut files",
    r"Lengths are mm; the world": "a remark in the script of the 3-D view",
    r"Squares of 100 mm and of 4 in": "cut files have both check squares",
    r"4 in and 100 mm|4 in, or 100 mm|100 mm(?= |$)": "the check length of the other unit",
    r"kg/m³": "the density of a table",
    r"N/mm²": "the stiffness and strength of tables",
}
"""What may stand in mm or kg, and why."""


def swept(text: str) -> list[str]:
    """Return what is said in mm or kg and may not be, each with some words around it."""
    for pattern in ALLOWED:
        text = re.sub(pattern, "~", text)
    return re.findall(r".{0,40}(?:\bmm\b|\dmm\b|\bkg\b|\bMM\b|\bKG\b).{0,20}", text)


@cache
def edition() -> Edition:
    shop = workshop(PLAN)
    proof = proved(PLAN)
    assert not [each for each in proof.findings if str(each.severity) == "error"]
    layout, _ = lay_out(proof.points)
    return edition_of(shop, LaidOut(proof=proof, layout=layout, fresh=""))


@cache
def files() -> dict[str, bytes]:
    packed = unzipped(bundle_of(edition()).content)
    return {name.split("/", 1)[1]: data for name, data in packed.items()}


@cache
def pages() -> dict[str, str]:
    found = edition()
    around = replace(site("in"), identity=found.identity, editions=(found,), trials=())
    around = replace(around, files={found.name: plan_files(found)})
    made = {"plan": plan_page(around, found), "setup": setup_page(around, found)}
    return {**made, "home": home_page(around), "start": files()["start-here.html"].decode()}


def unscripted(page: str) -> str:
    """Return a page without its scripts and their data, which is in mm."""
    return re.sub(r"<script\b.*?</script>", "", page, flags=re.DOTALL)


def said() -> dict[str, str]:
    """Return the words of every page, paper and drawing that readers get."""
    found = {name: Tree(unscripted(text)).all("body")[0].text for name, text in pages().items()}
    for name, content in files().items():
        ending = PurePosixPath(name).suffix
        if ending == ".pdf" and "a4" not in name:
            found[name] = " ".join(texts(content))
        elif ending == ".svg":
            root = ElementTree.fromstring(content)
            found[name] = " ".join(each.text or "" for each in root.iter() if each.text)
    return {name: " ".join(text.split()) for name, text in found.items()}


def test_nothing_that_people_read_leads_with_millimetres_or_kilograms() -> None:
    assert {name: left for name, text in said().items() if (left := swept(text))} == {}


@pytest.mark.parametrize(
    "text",
    [
        "Take the folder cut/18.26mm now",
        "published for 17.2 to 18.6 by 0.2 mm",
        "Drill ø 6.3 mm at the small circles",
        "18.51 mm (47/64 in) wide",
        "KG EACH 0.76",
        "FIT PER SIDE, MM 0.13",
        "Rapid moves 6000 mm/min",
        "17.46 mm sheet + 2 x 0.127 mm fit",
        "2 pieces, together 1.5 kg, for",
    ],
)
def test_the_sweep_sees_what_makers_in_inches_once_read(text: str) -> None:
    assert swept(text)


def test_folders_and_files_are_called_by_the_fraction_sold() -> None:
    assert "cut/23-32in/sheet-1-23-32in.dxf" in files()
    assert "templates/23-32in-letter.pdf" in files()
    assert not [name for name in files() if "mm" in name.replace("comm", "")]


def test_what_a_maker_in_inches_looks_for_is_there() -> None:
    words = said()
    booklet = words["booklet-letter.pdf"]
    assert "1 × Plywood 23/32 in category" in booklet
    assert "cut/23-32in 0.719 in (18.26 mm) 0.005 in" in booklet
    assert "caliper that shows 0.001 in, at eight points 2 in (50 mm) in from" in booklet
    assert "about 2.3 lb (1.0 kg)" in booklet
    assert "feed 180 in/min, plunge 45 in/min" in booklet
    template = words["templates/23-32in-letter.pdf"]
    assert "Each must be 4 in to within 1/64 in" in template
    assert "Drill ø 1/4 in at the small circles" in template
    assert "ø 9/32 in (7.1 mm)" in template
    assert "ø 1/8 in, 0.007 in over (3 mm)" in template
    assert "0.729 in (18.51 mm) wide" in template
    assert "0.719 in sheet + 2 x 0.0050 in fit" in template
    setup = words["setup/setup-23-32in-letter.pdf"]
    assert "passes to 0.31 in (7.87 mm), then through" in setup
    assert "0.01 in (0.25 mm)" in setup
    art = words["setup/engravings-letter.pdf"]
    assert "5 1/2 in (139.7 mm)" in art or "2 1/2 in (63.5 mm)" in art
    assert "0.016 in (0.4 mm) deep" in art


def test_lists_say_the_unit_that_is_in_them() -> None:
    heads = {
        name: content.decode().splitlines()[0]
        for name, content in files().items()
        if name.endswith(".csv")
    }
    assert heads["lists/parts.csv"] == (
        "marks,part,pieces,count,sheet,thickness_in,width_in,height_in,width_mm,height_mm,"
        "area_in2,mass_lb_each,centre_x_in,centre_y_in,centre_z_in,grain,note"
    )
    assert heads["lists/board-cuts.csv"] == (
        "board,title,number,length_in,length_mm,pieces_in,waste_in"
    )
    assert heads["lists/cutting.csv"].endswith("cuts,most_passes,feet,minutes")


@pytest.mark.parametrize(("plan", "shop", "first"), [("in", "mm", "in"), ("mm", "in", "in")])
def test_inches_lead_where_the_plan_or_the_workshop_is_in_inches(
    plan: str, shop: str, first: str
) -> None:
    stated = replace(edition().plan, units=plan)
    identity = Identity(title="Shed", maker="Ada", units_first=shop)
    assert identity.reader_of(stated).unit == first
    metric = replace(stated, units="mm")
    assert Identity(title="Shed", maker="Ada").reader_of(metric).unit == "mm"
