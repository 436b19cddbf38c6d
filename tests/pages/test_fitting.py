"""The fitting page: what it makes of readings, what it refuses in which words, what it keeps."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any
from xml.etree import ElementTree

import pytest

from kerfolio.basis.digits import rounded
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.shipped import shipped
from kerfolio.basis.style import Style
from kerfolio.basis.thickness import thickness_text
from kerfolio.bundles.archive import zip_bytes
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import folder_choice
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Slot
from kerfolio.fitted.writing import fitted_json
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.feature_kind import SLOT
from kerfolio.pages.fitting import FITTED_FILES, fitting_of
from kerfolio.pages.plan import plan_page
from kerfolio.pages.rescue import RESCUE_FILES
from kerfolio.pages.script_words import script_words
from kerfolio.pages.start import start_here
from kerfolio.pages.theme import THEME
from kerfolio.publishing.point_files import FORMAT, files_json
from kerfolio.publishing.rescue_fitted import REOPEN
from kerfolio.reading.entries_file import read_entries
from kerfolio.reading.log_names import LogNames
from kerfolio.settling.fitted import of_sheet, taking
from kerfolio.settling.settled import SettledFeature, Sized
from tests.fitted.made import LABEL, NUMBERS, fitted
from tests.pages.axe import axe_finds, lettering_of_a_drawing
from tests.pages.invented import CONTENTS, edition, of_two_sheets, pictures, put, site, write

FOLDER = shipped("themes") / THEME
WORDS = ("fitscript", "truecut", "rescuescript")
RECKONING = script_words(METRIC, WORDS) + "\n".join(
    (FOLDER / each).read_text("utf-8") for each in ("fitted.js", "fitting.js")
)
SHEET = {
    "name": "ply",
    "title": "Birch plywood 18 mm",
    **{"stock": "birch-plywood-18", "sold": [17.0, 19.0], "fit": 0.1, "planned": 6},
    **{
        "least": 17.2,
        "most": 18.6,
        "drawn": 17.8,
        "curve": 3,
        "recessed": True,
        "narrow": [{"takes": "ply", "width": 18}],
    },
}
DATA: dict[str, Any] = json.loads(str(fitting_of(edition()).data)) | {"sheets": [SHEET]}  # type: ignore[union-attr]


@pytest.fixture(scope="module")
def blank(browser: Any) -> Iterator[Any]:
    page = browser.new_page()
    yield page
    page.close()


def reckoned(page: Any, expression: str, given: Any = None) -> Any:
    """Return what an expression over the script's functions gives; ``given`` is its argument."""
    return page.evaluate(f"given => {{ {RECKONING}\nreturn {expression}; }}", given)


READINGS = {
    "17.6": 17.6,
    "17,6": 17.6,
    " 17.634 mm ": 17.63,
    "17.635": 17.64,  # halves go up
    "1.76 cm": 17.6,
    "0.693": 17.6,
    ".693": 17.6,
    '0.693"': 17.6,
    "0.693 in": 17.6,
    "23/32": 18.26,
    "11/16 in": 17.46,
    "11 / 16": None,
    "1 1/16 in": 26.99,
    "1-1/16": 26.99,
    "¾": 19.05,
    "½ in": 12.7,
    "17.6 \u00a0mm": 17.6,
    **dict.fromkeys(("", "x", "17.6.5", "-17.6", "17.6 m", "1/0", "17..6", "1e1", "23/32/2")),
}


@pytest.mark.browser
def test_readings_are_read_as_people_write_them(blank: Any) -> None:
    found = reckoned(
        blank,
        "given.texts.map((text) => readingOf(text, given.sheet, 'mm').mm ?? null)",
        {"texts": list(READINGS), "sheet": SHEET},
    )
    assert dict(zip(READINGS, found, strict=True)) == READINGS


SEVERAL = {
    "17.6 17.63 17,7": ["17.6", "17.63", "17,7"],
    "17.6\n17.63\r\n17,7\n": ["17.6", "17.63", "17,7"],
    "1\t17.6 mm\n2\t17.63 mm": ["1", "17.6 mm", "2", "17.63 mm"],
    "Thickness\tmm\n17.6\t17.63": ["17.6", "17.63"],
    "17,6; 17,63 ;17,7": ["17,6", "17,63", "17,7"],
    "17,6, 17,63, 17,7": ["17,6", "17,63", "17,7"],
    "17.6,17.63, 17.7": ["17.6", "17.63", "17.7"],
    "17.6 mm 17.63 mm": ["17.6 mm", "17.63 mm"],
    "11/16 in 23/32 in": ["11/16 in", "23/32 in"],
    '.693" .694" 0.7 inch': ['.693"', '.694"', "0.7 inch"],
    "1 1/16 in": ["1 1/16 in"],
    "17.6": ["17.6"],
    "17,6,17,7": ["17,6,17,7"],  # what was meant is not told: a fault
    "about 17.6 17.7": ["about 17.6 17.7"],
    "": [],
}


@pytest.mark.browser
def test_several_readings_are_told_apart(blank: Any) -> None:
    found = reckoned(blank, "given.map(readingTexts)", list(SEVERAL))
    assert dict(zip(SEVERAL, found, strict=True)) == SEVERAL


SLIPS = {
    "0.7 mm": "“0.7 mm” cannot be the thickness of Birch plywood 18 mm. Is it 0.7 in?",
    "17.5 in": "“17.5 in” cannot be the thickness of Birch plywood 18 mm. Is it 17.5 mm?",
    "1763": "“1763” cannot be the thickness of Birch plywood 18 mm. Is it 17.63 mm?",
    "0.0176": "“0.0176” cannot be the thickness of Birch plywood 18 mm. Is it 17.6 mm?",
    "3 mm": "“3 mm” cannot be the thickness of Birch plywood 18 mm.",
    "abc": "“abc” is no number: write 17.9, 0.705 in or 23/32 in.",
}


@pytest.mark.browser
def test_slips_are_asked_back_in_words(blank: Any) -> None:
    found = reckoned(
        blank,
        "given.texts.map((text) => readingOf(text, given.sheet, 'mm').fault)",
        {"texts": list(SLIPS), "sheet": SHEET},
    )
    assert dict(zip(SLIPS, found, strict=True)) == SLIPS


@pytest.mark.browser
def test_of_eight_readings_the_thickest_counts(blank: Any) -> None:
    readings = [17.6, 17.83, 17.7, 17.75, 17.46, 17.9, 17.73, 17.72]
    found = reckoned(blank, "summed(given)", readings)
    assert found == {"thickest": 17.9, "thinnest": 17.46, "mean": rounded(sum(readings) / 8, 2)}


@pytest.mark.browser
def test_slots_that_follow_a_purpose_are_not_told_as_those_of_the_sheet_s_fit(blank: Any) -> None:
    sums = {"made": 17.8, "thickest": 17.8, "thinnest": 17.8}
    given = {"sums": sums, "data": {"unit": "mm", "fitWords": [[99, "loose"]]}}
    told = "reckoned => playWords(0.1, given.sums, {...given.data, jointFits: reckoned})"
    found = reckoned(blank, f"[false, true].map({told})", given)
    assert [each.partition(" are ")[0] for each in found] == [
        "Slots for it",
        "Slots for it with the sheet’s own fit",
    ]


@pytest.mark.browser
def test_room_for_finish_and_damp_is_told_beside_the_play_that_is_left(blank: Any) -> None:
    sums = {"made": 17.8, "thickest": 17.8, "thinnest": 17.6, "more": 0.27}
    given = {"sums": sums, "data": {"unit": "mm", "fitWords": [[0.15, "close"], [99, "loose"]]}}
    assert reckoned(blank, "playWords(0.1, given.sums, given.data)", given) == (
        "Slots for it are 18.54 mm (0.730 in) wide, 0.54 mm (0.021 in) of it for finish and damp. "
        "Finished, at its dampest, where the sheet is thickest, the joint has 0.2 mm (0.008 in) of "
        "play: close; where it is thinnest, 0.4 mm (0.016 in): loose."
    )


@pytest.mark.browser
def test_widths_play_and_words_of_them_are_the_program_s(blank: Any) -> None:
    for thick, thin, fit in ((17.83, 17.46, 0.1), (18.0, 18.0, 0.15), (12.3, 11.83, 0.102)):
        sums = {"made": thick, "thickest": thick, "thinnest": thin, "fit": fit}
        found = reckoned(blank, "playOf(given.fit, given)", sums)
        slot = taking(thick, of_sheet(fit)).value
        wanted = {"slot": slot, "thick": slot - thick, "thin": slot - thin}
        assert found == pytest.approx(wanted, abs=1e-9)
        for unit in ("mm", "in"):
            told = reckoned(blank, "told(given[0], given[1])", [slot, unit])
            assert told == thickness_text(rounded(slot, 2), Reader(unit=unit))


OUTSIDE = {
    17.05: (
        "17.05 mm (0.671 in) is thinner than the plan is proved for: 17.2 to 18.6 mm (0.677 to "
        "0.732 in). Files for 17.2 mm (0.677 in) would go together with 0.35 mm (0.014 in) of "
        "play. Ida Fernhill may prove and make others: kerfolio files --plan harbour-stool "
        "--sheet ply=17.05"
    ),
    18.7: (
        "18.7 mm (0.736 in) is thicker than the plan is proved for: 17.2 to 18.6 mm (0.677 to "
        "0.732 in). No file of the plan lets it in. Ida Fernhill may prove and make others: "
        "kerfolio files --plan harbour-stool --sheet ply=18.7"
    ),
    21.0: (
        "21 mm (0.827 in) is thicker than the plan is proved for: 17.2 to 18.6 mm (0.677 to "
        "0.732 in). No file of the plan lets it in. Birch plywood 18 mm is sold from 17 to 19 mm "
        "(0.669 to 0.748 in): is it this sheet?"
    ),
    17.2: "",
    18.6: "",
}


@pytest.mark.browser
def test_what_is_not_proved_is_refused_with_what_can_be_done(blank: Any) -> None:
    given = {"data": DATA, "sheet": SHEET, "all": list(OUTSIDE)}
    found = reckoned(blank, "given.all.map((mm) => refusal(given.sheet, mm, given.data))", given)
    assert dict(zip(OUTSIDE, found, strict=True)) == OUTSIDE


@pytest.mark.browser
def test_what_a_cutter_no_longer_does_is_told(blank: Any) -> None:
    given = {"data": DATA, "sheet": SHEET, "at": {"ply": {"thickness": 17.8, "fit": 0.1}}}
    call = (
        "[6, 8, 19, null].map((d) => cutterWords(given.sheet, d, given.at, given.data).join(' '))"
    )
    six, eight, nineteen, none = reckoned(blank, call, given)
    curve = (
        "It does not follow the tightest inside curve, of 3 mm (0.118 in) radius: what it leaves "
        "there is cut by hand."
    )
    assert (six, eight) == ("", curve)
    assert nineteen == (
        f"A cutter of 19 mm (0.748 in) does not go into what is 18 mm (0.709 in) wide. {curve}"
    )
    assert none == (
        "Inside corners stay square: for a laser, or for a saw and a chisel; a router leaves them "
        "full. A laser cuts no recesses: those of this sheet want a router or a chisel."
    )


@pytest.mark.browser
def test_a_ready_made_set_is_the_one_the_program_names(blank: Any) -> None:
    found = edition()
    data = json.loads(str(fitting_of(found).data))  # type: ignore[union-attr]
    readings = [hundredths / 100 for hundredths in range(1761, 1800, 4)]
    call = "given.all.map((mm) => readySet(given.data, { ply: mm }).at.ply)"
    taken = reckoned(blank, call, {"data": data, "all": readings})
    assert taken == [folder_choice(found, "ply", each).thickness for each in readings]


CHOICE = {
    "sheets": {"ply": {"readings": [17.83, 17.6], "fit": 0.08, "cut": 0}},
    **{"cutter": 3.175, "built": False},
}


@pytest.mark.browser
def test_a_card_gives_back_what_was_chosen(blank: Any) -> None:
    for cutter in (3.175, None):
        choice = {**CHOICE, "cutter": cutter}
        given = {"data": DATA, "choice": choice}
        call = "readCard(cardText(given.data, given.choice), given.data)"
        found = reckoned(blank, call, given)
        assert found == {"choice": choice, "words": "The choices of the card are back."}
    for built in (False, True):
        cut = {**CHOICE, "sheets": {"ply": {**CHOICE["sheets"]["ply"], "cut": 0.19}}}
        given = {"data": DATA, "choice": {**cut, "built": built}}
        assert reckoned(blank, call, given)["choice"] == given["choice"]
    given = {"data": DATA, "choice": choice}
    as_planned = "readCard(cardText(given.data, {sheets: given.choice.sheets}), given.data)"
    found = reckoned(blank, as_planned, {"data": DATA, "choice": CHOICE})
    assert found["choice"].get("cutter") is None
    card = json.loads(reckoned(blank, "cardText(given.data, given.choice)", given))
    assert card == {
        **{"format": FORMAT, "plan": "harbour-stool", "title": "Harbour stool"},
        **{"release": "1.2.0", "date": "2026-10-02", "unit": "mm"},
        "sheets": {
            "ply": {
                **{"stock": "birch-plywood-18", "thickness": 17.83, "fit": 0.08, "cutter": None},
                "readings": [17.83, 17.6],
            }
        },
    }
    del card["sheets"]["ply"]["readings"]
    by_the_program = json.loads(files_json(edition().settled))
    assert by_the_program.keys() - card.keys() == {"label"}
    assert by_the_program["sheets"]["ply"].keys() == card["sheets"]["ply"].keys()


@pytest.mark.browser
def test_what_the_program_writes_beside_its_files_is_a_card(blank: Any) -> None:
    given = [files_json(edition().settled).decode(), DATA]
    found = reckoned(blank, "readCard(given[0], given[1])", given)
    assert found["choice"]["sheets"] == {"ply": {"readings": [17.8], "fit": 0.1, "cut": 0}}
    assert found["choice"].get("cutter") is None


@pytest.mark.browser
def test_a_card_of_something_else_is_told(blank: Any) -> None:
    def words(**others: Any) -> Any:
        call = "readCard(cardText({...given.data, ...given.others}, given.choice), given.data)"
        return reckoned(blank, call, {"data": DATA, "choice": CHOICE, "others": others})

    other = words(plan="desk-rack", title="Desk rack", release="1.0.0")
    assert other == {
        "choice": None,
        "words": "This card is for Desk rack 1.0.0, not for Harbour stool. Nothing was changed.",
    }
    older = words(release="1.1.0")
    assert older["choice"] == CHOICE
    assert "written for release 1.1.0 and these files are of 1.2.0" in older["words"]
    for text in ("", "[]", "null", "not a card", '{"format": "other/1"}'):
        read = reckoned(blank, "readCard(given[0], given[1])", [text, DATA])
        assert read["words"] == "This file is no build card. Nothing was changed."


@pytest.mark.browser
def test_a_label_is_a_drawing_of_real_size_with_all_that_matters(blank: Any) -> None:
    data = {**DATA, "title": "Stool & <bench>"}
    text = reckoned(blank, "labelText(given.data, given.choice)", {"data": data, "choice": CHOICE})
    root = ElementTree.fromstring(text)
    assert root.attrib["width"] == "90mm"
    assert root.attrib["viewBox"].split()[2:] == ["90", root.attrib["height"].removesuffix("mm")]
    said = [each.text for each in root.iter() if each.tag.endswith("text")]
    assert said == [
        "Stool & <bench>",
        "Release 1.2.0, Fernhill Bench",
        "Birch plywood 18 mm: 17.83 mm (0.702 in), fit 0.08 mm (0.0031 in)",
        "Cutter: 3.175 mm (0.125 in)",
        "https://example.org/plans/harbour-stool/",
    ]


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("fitting")
    write(site(), folder)
    start = start_here(edition(), CONTENTS, pictures(edition()))
    put(folder / "bundle" / "start-here.html", start.encode())
    two = of_two_sheets()
    put(
        folder / "plans" / "two" / "index.html",
        plan_page(replace(site(), editions=(two,)), two).encode(),
    )
    return folder


START, PLAN = "bundle/start-here.html", "plans/harbour-stool/index.html"


def opened(browser: Any, file: Path | str, **options: Any) -> Any:
    width = options.pop("width", 390)
    page = browser.new_context(viewport={"width": width, "height": 844}, **options).new_page()
    page.faults = []
    page.on("console", lambda said: said.type == "error" and page.faults.append(said.text))
    page.on("pageerror", lambda fault: page.faults.append(str(fault)))
    page.goto(file if isinstance(file, str) else file.as_uri())
    # On a plan's page the chapter is closed until a reader chooses a path.
    page.evaluate("() => document.querySelectorAll('details.way').forEach(e => (e.open = true))")
    return page


def typed(page: Any, *readings: str) -> str:
    for place, text in enumerate(readings, start=1):
        page.get_by_label(f"Reading {place}").first.fill(text)
    page.keyboard.press("Tab")
    return str(page.locator("[data-fit=results]").inner_text())


@pytest.mark.browser
@pytest.mark.parametrize("name", [START, PLAN])
def test_a_reader_types_and_is_told_at_once(browser: Any, written: Path, name: str) -> None:
    page = opened(browser, written / name)
    assert "As drawn: 17.8 mm" in page.locator("[data-fit=results]").inner_text()
    found = typed(page, "17.83", "17,7", "0.693")
    assert "Take the set cut/17.8mm" in found
    assert "0.17 mm (0.007 in) of play" in found
    assert page.locator(".fit-sum").inner_text().split() == [
        *("most", "17.83", "mean", "17.71", "least", "17.6"),
    ]
    assert "Take the set" in page.locator("[data-fit=told]").inner_text()
    assert typed(page, "0.7 mm") == ""
    field = page.get_by_label("Reading 1")
    assert field.get_attribute("aria-invalid") == "true"
    assert "Is it 0.7 in?" in page.get_by_role("alert").first.inner_text()
    assert typed(page, "0.7 in") != ""
    assert field.get_attribute("aria-invalid") == "false"
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_examples_of_readings_are_of_the_very_sheet(browser: Any, written: Path) -> None:
    page = opened(browser, written / "plans/two/index.html")
    hints = [each.inner_text() for each in page.locator("[id^=fit-hint]").all()]
    begins = (
        "One reading will do, eight are better. Type them as the caliper shows them, with a point "
        "or a comma, in mm or in inches: "
    )
    assert hints == [
        f"{begins}17.8, 0.701 in or 11/16 in. Several can be pasted at once.",
        f"{begins}11.8, 0.465 in or 15/32 in. Several can be pasted at once.",
    ]
    page.context.close()


def pasted(page: Any, place: int, text: str) -> list[str]:
    """Copy a text as from a table, paste it with the keyboard, and return what all fields hold."""
    page.evaluate("document.body.append(document.createElement('textarea'))")
    page.locator("textarea").fill(text)
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.press("ControlOrMeta+C")
    page.locator("textarea").evaluate("node => node.remove()")
    page.get_by_label(f"Reading {place}").focus()
    page.keyboard.press("ControlOrMeta+V")
    return [page.get_by_label(f"Reading {n}").input_value() for n in range(1, 9)]


@pytest.mark.browser
def test_several_readings_are_pasted_at_once(browser: Any, written: Path) -> None:
    page = opened(browser, written / START)
    assert pasted(page, 1, "17.83") == ["17.83", *[""] * 7]
    assert pasted(page, 1, "17.6\t17.63\n17,7\n") == ["17.6", "17.63", "17,7", *[""] * 5]
    assert "0.17 mm (0.007 in) of play" not in page.locator("[data-fit=results]").inner_text()
    assert page.locator(".fit-sum").inner_text().split()[:2] == ["most", "17.7"]
    assert pasted(page, 7, "17.5 17.55 17.8")[6:] == ["17.5", "17.55"]
    assert page.locator("[data-fit=status]").inner_text() == (
        "There are fields for 2 of the 3 readings: 17.8 was left out."
    )
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_on_paper_stands_what_was_typed_and_chosen(browser: Any, served: str) -> None:
    page = opened(browser, f"{served}/{START}")
    typed(page, "18.5 mm")
    page.get_by_label("Diameter of the cutter").fill("1/8")
    assert page.locator("[data-fit=width-read]").inner_text() == "3.175 mm (0.125 in)"
    page.emulate_media(media="print")
    for shown in ("Reading 1", "Reading 8", "Diameter of the cutter"):
        assert page.get_by_label(shown).is_visible()
    assert page.get_by_text("as the plan has it").first.is_visible()  # the fit, which stays
    for hidden in ("0.05 mm: tight by hand", "No cutter: a laser, or by hand", "Save all files"):
        assert page.get_by_text(hidden).is_hidden()
    page.context.close()


@pytest.mark.browser
def test_a_card_is_saved_and_loaded(browser: Any, written: Path, tmp_path: Path) -> None:
    page = opened(browser, written / START)
    typed(page, "17.83", "17.6")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save the card").click()
    assert waiting.value.suggested_filename == "harbour-stool-1.2.0-17.83mm.card.json"
    card = tmp_path / "card.json"
    waiting.value.save_as(card)
    page.reload()
    page.get_by_label("Load a card").set_input_files(card)
    page.get_by_text("The choices of the card are back.").wait_for(state="attached")
    fields = [page.get_by_label(f"Reading {n}").input_value() for n in (1, 2, 3)]
    assert fields == ["17.83 mm", "17.6 mm", ""]
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_what_was_measured_is_saved_without_a_name_and_taken_in(
    browser: Any, written: Path, tmp_path: Path
) -> None:
    page = opened(browser, written / START)
    assert page.get_by_text("Tell the maker what you measured").is_hidden()
    typed(page, "17.83", "17.63")
    assert page.get_by_text("Tell the maker what you measured").is_visible()
    page.get_by_label("How the joints went together").select_option("by palm")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save what I measured").click()
    assert waiting.value.suggested_filename == "measured-harbour-stool-1.2.0.entries.json"
    file = tmp_path / "measured.entries.json"
    waiting.value.save_as(file)
    assert page.faults == []
    page.context.close()
    (row,) = json.loads(file.read_text("utf-8"))["entries"]
    assert set(row) == {"section", "id", "entry"}
    assert set(row["entry"]) == {"plan", "release", "sheet", "thickness", "fit", "went"}
    names = LogNames(plans=("harbour-stool",))
    (came,), findings = read_entries(file.read_bytes(), file.name, names, date(2026, 12, 1))
    assert not findings
    assert came.stated["thickness"] == "17.73 mm"
    assert (came.section, came.stated["date"], came.day) == (
        "sent",
        "2026-12-01",
        date(2026, 12, 1),
    )


@pytest.mark.browser
def test_what_was_read_off_the_coupon_is_told_and_kept(
    browser: Any, written: Path, tmp_path: Path
) -> None:
    """The long slot is 30.2 mm by 18.6 mm, the arms 31.2 mm: 0.2 mm are cut too wide."""
    page = opened(browser, written / START)
    page.get_by_text("True cut: what the coupon told").click()
    read = {"Slot in x": "30.4", "Slot in y": "18.8", "Arm in x": "31", "Arm in y": "31"}
    for label, text in read.items():
        page.get_by_label(label).fill(text)
    page.keyboard.press("Tab")
    assert page.get_by_label("What the cutter really cuts").input_value() == "6.2 mm"
    told = "Tell your toolpath program a cutter of 6.2 mm (0.2441 in), and correct nothing else"
    assert told in page.locator("[data-fit=results]").inner_text()
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save the card").click()
    card = tmp_path / "card.json"
    waiting.value.save_as(card)
    page.reload()
    assert told not in page.locator("[data-fit=results]").inner_text()
    page.get_by_label("Load a card").set_input_files(card)
    page.get_by_text("The choices of the card are back.").wait_for(state="attached")
    assert told in page.locator("[data-fit=results]").inner_text()
    page.get_by_text("True cut: what the coupon told").click()
    page.get_by_label("What the cutter really cuts").fill("7")
    page.keyboard.press("Tab")
    assert page.locator("[data-fit=results]").inner_text() == ""
    assert "Look at the collet" in page.locator("[data-fit=cut-fault]").inner_text()
    assert page.faults == []
    page.context.close()


def made() -> Fitted:
    """Return files of chance that follow the invented sheet, named as those of plans."""
    found = fitted(9, 30)
    sheet, part = (replace(each.cells[0], box=()) for each in found.files)
    sheet = replace(sheet, name=("cut/", *LABEL, "/sheet-1-", *LABEL, ".svg"))
    part = replace(part, name=("cut/", *LABEL, "/parts/side-", *LABEL, ".svg"))
    files = tuple(FittedFile(cells=(each,)) for each in (sheet, part))
    return replace(found, files=files)


MADE = made()


BY = Slot(style=Style(decimals=3, after="mm"), constant=0.0, slopes=(0.0, 0.0, 0.0, 1.0))


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve a site whose plan has fitted files, and a start page with them inside."""
    folder = tmp_path_factory.mktemp("fitted")
    around = site()
    files = {name: replace(each, fitted=MADE, rescue=SECOND) for name, each in around.files.items()}
    editions = tuple(map(slotted, around.editions))
    write(replace(around, files=files, editions=editions), folder)
    put(folder / "plans/harbour-stool" / FITTED_FILES, fitted_json(MADE).encode())
    put(folder / "plans/harbour-stool" / RESCUE_FILES, fitted_json(SECOND).encode())
    own = slotted(edition())
    start = start_here(own, CONTENTS, pictures(own), fitted=MADE, rescue=SECOND)
    put(folder / START, start.encode())
    handler = partial(Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def slotted(found: Edition) -> Edition:
    """Return an edition whose first part has a slot that a sheet goes into."""
    first, *others = found.settled.parts
    slot = SettledFeature(
        name="slot",
        kind=SLOT,
        at=(60.0, 60.0),
        direction=(1.0, 0.0),
        width=Sized(18.0),
        length=Sized(60.0),
        takes="ply",
        shape=(rectangle(30, 51, 90, 69),),
    )
    parts = (replace(first, features=(*first.features, slot)), *others)
    return replace(found, settled=replace(found.settled, parts=parts))


SECOND = Fitted(
    numbers=(*(replace(each, none=False) for each in NUMBERS), REOPEN),
    files=(
        FittedFile(
            cells=(
                Cell(
                    name=("cut/", *LABEL, "/rescue/side-wider-", BY, "-", *LABEL, ".svg"),
                    text=("by ", BY),
                ),
            )
        ),
    ),
)


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Say nothing of what is fetched."""


def download(page: Any, button: str) -> tuple[str, bytes]:
    with page.expect_download() as waiting:
        page.get_by_role("button", name=button, exact=True).click()
    return str(waiting.value.suggested_filename), Path(waiting.value.path()).read_bytes()


@pytest.mark.browser
@pytest.mark.parametrize("name", [START, PLAN])
def test_what_is_saved_is_what_the_program_fills_in(browser: Any, served: str, name: str) -> None:
    page = opened(browser, f"{served}/{name}")
    assert "Made for 18.5 mm (0.728 in)" in typed(page, "18.5 mm", "18.46")
    assert "0.2 mm (0.008 in) of play" in page.locator("[data-fit=results]").inner_text()
    page.get_by_label("0.05 mm: tight by hand").check()
    page.get_by_label("Diameter of the cutter").fill("1/8")
    at = {"thickness.ply": 18.5, "fit.ply": 0.05, "cutter.ply": 3.175}
    wanted = dict(fill(MADE, at))
    page.get_by_text("One by one", exact=True).click()
    label = "18.5mm-fit-0.05mm-cutter-3.175mm"
    for shown, path in (("sheet-1", "sheet-1"), ("side", "parts/side")):
        name, content = download(page, f"{shown}.svg")
        assert name == f"{shown}-{label}.svg"
        assert content == wanted[f"cut/{label}/{path}-{label}.svg"].encode()
    stem = f"harbour-stool-1.2.0-{label}"
    packed = {path: text.encode() for path, text in wanted.items()}
    called, content = download(page, "Save all files as one zip")
    assert called == f"{stem}.zip"
    assert content == zip_bytes(packed, date(2026, 10, 2), stem, deflated=False)
    page.get_by_label("No cutter").check()
    assert "Inside corners stay square" in page.locator("[data-fit=results]").inner_text()
    page.get_by_label("Diameter of the cutter").fill("12")
    page.keyboard.press("Tab")
    assert page.locator("#fit-fault-cutter").inner_text() == (
        "For Birch plywood 18 mm files are made for cutters of 3 mm (0.1181 in) to 8 mm (0.315 in)."
    )
    assert page.get_by_role("button", name="Save all").is_hidden()
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
@pytest.mark.parametrize("name", [START, PLAN])
def test_a_piece_that_came_out_wrong_is_saved(browser: Any, served: str, name: str) -> None:
    page = opened(browser, f"{served}/{name}")
    typed(page, "18.5 mm")
    page.get_by_text("Rescue: a piece that came out wrong").click()
    page.locator("[data-fit=piece]").select_option("side")
    page.get_by_label("By how much in all").fill("0.15")
    label = "18.5mm-fit-0.1mm"
    found, content = download(page, f"side-wider-0.15mm-{label}.svg")
    at = {"thickness.ply": 18.5, "fit.ply": 0.1, "reopen": 0.15}
    assert dict(fill(SECOND, at)) == {f"cut/{label}/rescue/{found}": content.decode()}
    told = page.locator("[data-fit=rescue-told]")
    assert "side become 0.15 mm (0.0059 in) wider" in told.inner_text()
    page.get_by_label("It is spoilt").check()
    page.get_by_label("The offcut’s size").fill("200 x 200")
    fault = page.locator("#fit-rescue-fault")
    assert "side finds no room on 200 x 200 mm. It takes" in fault.inner_text()
    page.get_by_label("The offcut’s size").fill("600 x 600")
    page.get_by_role("button", name=f"side-{label}.svg", exact=True).wait_for()
    page.get_by_label("Its openings are too loose").check()
    page.get_by_label("By how much in all").fill("0.3")
    assert "Slips of about 0.3 mm: 1 layer of card (0.3 mm)" in told.inner_text()
    assert fault.inner_text() == ""
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_a_browser_that_cannot_unpack_is_told_what_can(browser: Any, served: str) -> None:
    page = opened(browser, f"{served}/{START}")
    page.evaluate("() => { delete globalThis.DecompressionStream; }")
    typed(page, "18.5 mm")
    page.get_by_role("button", name="Save all").click()
    page.get_by_text("This browser is too old to unpack the files").wait_for()
    page.context.close()


@pytest.mark.browser
def test_a_page_that_cannot_fetch_its_files_says_where_they_are(
    browser: Any, served: str, written: Path
) -> None:
    page = opened(browser, f"{served}/{PLAN}")
    page.route("**/fitted.json", lambda route: route.abort())
    page.get_by_role("button", name="Save all").click()
    told = page.get_by_text("open start-here.html in the bundle, which has them in it")
    told.wait_for()
    assert told.bounding_box()["height"] > 20  # in sight, not for screen readers alone
    page.context.close()


@pytest.mark.browser
def test_without_scripts_the_ready_made_sets_stand_there(browser: Any, written: Path) -> None:
    page = opened(browser, written / START, java_script_enabled=False)
    assert page.get_by_label("Reading 1").is_hidden()
    assert (
        "Without them, take one of the ready-made sets below" in page.locator("main").inner_text()
    )
    assert page.get_by_text("cut/17.8mm", exact=True).first.is_visible()
    page.context.close()


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_and_nothing_is_too_wide(
    browser: Any, written: Path, served: str, scheme: str
) -> None:
    two = written / "plans/two/index.html"
    for address in (f"{served}/{START}", f"{served}/{PLAN}", two.as_uri()):
        page = opened(browser, address, width=320, color_scheme=scheme)
        typed(page, "17.83", "abc", "17.6")
        typed(page, "17.83", "17.7")
        if address != two.as_uri():
            page.get_by_text("One by one", exact=True).click()
            page.get_by_role("button", name="sheet-1.svg").wait_for()
            page.get_by_text("Rescue: a piece that came out wrong").click()
            page.get_by_label("By how much in all").fill("x")
        assert page.locator("html").evaluate("node => node.scrollWidth") <= 320
        page.evaluate("() => scrollTo(0, 0)")  # else the list of chapters lies over some words
        assert axe_finds(page, "#measuring", but=lettering_of_a_drawing) == []
        page.context.close()


def test_the_page_tells_what_it_saves() -> None:
    files = ("cut/17.6mm/sheet-1-17.6mm.svg", "setup/setup-17.6mm-a4.pdf")
    cells = [Cell(name=(name,), text=("",)) for name in files]
    made = Fitted(numbers=NUMBERS, files=tuple(FittedFile(cells=(each,)) for each in cells))
    found = fitting_of(edition(), made)
    assert found is not None
    assert found.holds == (
        "the cut files of every sheet and part and setup sheets, which state the plan’s own cutter"
    )
