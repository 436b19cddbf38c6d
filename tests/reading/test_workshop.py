"""Whole workshops: what is gathered, and folders that are none."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from shutil import copytree

import pytest

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import NOWHERE
from kerfolio.model.circle import Circle
from kerfolio.model.trial import Sent
from kerfolio.model.workshop import Workshop
from kerfolio.reading.entry import read_entry
from kerfolio.reading.log_names import LogNames
from kerfolio.reading.page import read_page
from kerfolio.reading.workshop import read_workshop
from tests.broken.good_workshop import PICTURE, lay_out, png


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return lay_out(tmp_path / "bench")


def sound(folder: Path) -> Workshop:
    workshop, findings = read_workshop(folder)
    assert findings == ()
    assert workshop is not None
    return workshop


def told(findings: tuple[Finding, ...]) -> list[tuple[str, str, str]]:
    return [(f.message, f.advice, str(f.place)) for f in findings]


def test_the_good_workshop(folder: Path) -> None:
    workshop = sound(folder)
    identity = workshop.identity
    assert (identity.title, identity.maker) == ("Fernhill Bench", "Ada Fern")
    assert tuple(replace(each, place=NOWHERE) for each in identity.circles) == (
        Circle(who="friends", gives="4 EUR a month"),
        Circle(who="patrons", link="https://example.org/join"),
    )
    assert identity.base_url == "https://fernhill.example.org"
    assert [plan.name for plan in workshop.plans] == ["rack"]
    assert workshop.plans[0].licence == "CC-BY-SA-4.0"
    assert [(p.name, p.title, p.order) for p in workshop.pages] == [
        ("about", "About this bench", 10)
    ]
    assert [(t.title, t.outcome.clean, t.passes) for t in workshop.trials] == [
        ("First profile in birch", True, (8.0, 10.0))
    ]
    grey = Pixels(width=8, height=6, content=b"\x80" * 3 * 8 * 6)
    assert [(p.path, p.pixels) for p in workshop.pictures] == [(PICTURE, grey)]
    sheet = workshop.stock.sheet("birch-plywood-18")
    assert sheet is not None
    assert sheet.actual == 17.8
    assert workshop.stock.cutter("old-faithful") is not None


def test_reading_twice_gives_the_same(folder: Path) -> None:
    assert read_workshop(folder) == read_workshop(folder)


def test_the_frozen_layout_is_kept_as_text(folder: Path) -> None:
    (folder / "plans" / "rack" / "layout.json").write_text('{"sheets": []}')
    assert sound(folder).plans[0].layout_text == '{"sheets": []}'


def test_a_plan_may_state_its_own_licence(folder: Path) -> None:
    path = folder / "plans" / "rack" / "plan.yaml"
    path.write_text(path.read_text("utf-8").replace("access: open", "licence: MIT"), "utf-8")
    assert sound(folder).plans[0].licence == "MIT"


def test_a_plan_without_any_licence_is_told(folder: Path) -> None:
    (folder / "workshop.yaml").write_text("workshop: Bare\nmaker: Ada Fern\n")
    _, findings = read_workshop(folder)
    assert [(each.rule, each.severity, str(each.place)) for each in findings] == [
        ("no-licence", "warning", "plans/rack/plan.yaml:1:1")
    ]


def test_hidden_and_put_aside_folders_are_passed_over(folder: Path) -> None:
    for name in (".git", "_drafts"):
        (folder / "plans" / name).mkdir()
        (folder / "plans" / name / "plan.yaml").write_text("not: a plan")
    (folder / "plans" / "notes.txt").write_text("a note")
    (folder / "log" / ".yaml").write_text("x")
    sound(folder)


BEGIN = "`kerfolio start DIR` writes a new workshop."


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    workshop, findings = read_workshop(tmp_path / "none")
    assert workshop is None
    assert told(findings)[0][1:] == (BEGIN, "none")
    assert findings[0].message.startswith("no folder `")


def test_a_file_for_a_folder(folder: Path) -> None:
    workshop, findings = read_workshop(folder / "workshop.yaml")
    assert workshop is None
    assert told(findings) == [
        (
            "`workshop.yaml` is a file",
            "Name the folder that holds `workshop.yaml`.",
            "workshop.yaml",
        )
    ]


def test_an_empty_folder(tmp_path: Path) -> None:
    workshop, findings = read_workshop(tmp_path)
    assert workshop is None
    assert told(findings) == [
        ("no `workshop.yaml` in this folder", f"Name a workshop's folder; {BEGIN}", "workshop.yaml")
    ]


def test_a_workshop_of_its_name_alone(tmp_path: Path) -> None:
    (tmp_path / "workshop.yaml").write_text("workshop: Bare\nmaker: Ada Fern\n")
    workshop = sound(tmp_path)
    assert (workshop.plans, workshop.trials, workshop.pages, workshop.pictures) == ((), (), (), ())
    assert workshop.stock.sheets


def test_a_broken_workshop_file_still_tells_of_the_others(folder: Path) -> None:
    (folder / "workshop.yaml").write_text("workshop: 'open\n")
    path = folder / "plans" / "rack" / "plan.yaml"
    path.write_text(path.read_text("utf-8").replace("depth: 200", "depth: 200,5"), "utf-8")
    workshop, findings = read_workshop(folder)
    assert workshop is None
    assert [each.message for each in findings] == [
        "`200,5` has a comma",
        "a quotation mark is not closed",
    ]


def test_a_nameless_workshop_is_read_all_the_same(folder: Path) -> None:
    (folder / "workshop.yaml").write_text("maker: Ada Fern\nlicence: MIT\n")
    workshop, findings = read_workshop(folder)
    assert workshop is not None
    assert [each.message for each in findings] == ["`workshop` is missing"]


def test_a_plan_that_is_no_yaml_leaves_the_others(folder: Path) -> None:
    (folder / "plans" / "other").mkdir()
    (folder / "plans" / "other" / "plan.yaml").write_bytes(b"\xff\xfe\x00")
    workshop, findings = read_workshop(folder)
    assert workshop is not None
    assert [plan.name for plan in workshop.plans] == ["rack"]
    assert told(findings) == [
        (
            "a byte that is no UTF-8: 0xFF",
            "Save the file with the encoding UTF-8.",
            "plans/other/plan.yaml:1:1",
        )
    ]


def test_two_plans_of_one_title_are_told(folder: Path) -> None:
    copytree(folder / "plans" / "rack", folder / "plans" / "rack-for-a-child")
    workshop, findings = read_workshop(folder)
    assert workshop is not None
    assert told(findings) == [
        (
            "`Desk rack` is the title of `rack`, too",
            "Readers know a plan by its title: give each its own.",
            "plans/rack-for-a-child/plan.yaml:1:1",
        )
    ]
    assert not has_errors(findings)


def test_short_endings_are_told(folder: Path) -> None:
    (folder / "log" / "may.yml").write_text("trials: []")
    (folder / "plans" / "other").mkdir()
    (folder / "plans" / "other" / "plan.yml").write_text("plan: X")
    _, findings = read_workshop(folder)
    assert told(findings) == [
        ("`may.yml` is not read", "Rename it to `may.yaml`.", "log/may.yml"),
        ("no `plan.yaml` in this folder", "Name it `plan.yaml`.", "plans/other"),
    ]


def test_photos_of_trials_lie_beside_the_log(folder: Path) -> None:
    (folder / "log" / "cut.png").write_bytes(png())
    (folder / "log" / "b.yaml").write_text(
        "trials: [{date: 2026-10-01, title: T, photo: {file: cut.png, alt: A clean edge}}]"
    )
    workshop = sound(folder)
    assert [each.path for each in workshop.pictures] == ["log/cut.png", PICTURE]


def test_stock_that_cannot_be_read_blames_no_plan(folder: Path) -> None:
    path = folder / "stock" / "own.yaml"
    path.write_text("sheets: {my-ply: {title: Mine, nominal: 18}}")
    plan = folder / "plans" / "rack" / "plan.yaml"
    text = plan.read_text("utf-8").replace("stock: birch-plywood-18", "stock: my-ply")
    plan.write_text(text, "utf-8")
    workshop, findings = read_workshop(folder)
    assert {each.place.file for each in findings} == {"stock/own.yaml"}
    assert workshop is not None
    assert {"my-ply", "ply", "t", "side", "shelf"} <= set(workshop.plans[0].unread)


@pytest.mark.parametrize(
    ("text", "title", "order", "messages"),
    [
        ("# Title\n\nText.", "Title", 100, []),
        ("---\norder: 7\n---\n\n# Title\n", "Title", 7, []),
        ("---\n---\n# Title\n", "Title", 100, []),
        (
            "---\norder: 7\n# Title\n",
            "",
            100,
            [("`---` is not closed", 1), ("a page without a title", 2)],
        ),
        (
            "---\norder: first\n---\n# T\n",
            "T",
            100,
            [("`first` is no whole number from 0 to 9999", 2)],
        ),
        (
            "---\nrank: 7\n---\n# T\n",
            "T",
            100,
            [("unknown key `rank`", 2), ("`order` is missing", 2)],
        ),
        ("Text alone.", "", 100, [("a page without a title", 1)]),
        ("", "", 100, [("a page without a title", 1)]),
        ("# T\n\n<hr>\n", "T", 100, [("raw HTML", 3)]),
        ("---\norder: 1\n---\n\n# T\n\na <b>\n", "T", 1, [("raw HTML `<b>`", 7)]),
    ],
)
def test_pages(text: str, title: str, order: int, messages: list[tuple[str, int]]) -> None:
    page, findings = read_page(text.encode(), "pages/a.md", "a")
    assert page is not None
    assert (page.title, page.order) == (title, order)
    assert [(each.message, each.place.line) for each in findings] == messages


SECRET = "root: x: 0: 0\n"


@pytest.mark.parametrize(
    "file",
    [
        *("workshop.yaml", "plans/rack/plan.yaml", "plans/rack", "plans/rack/layout.json"),
        *("stock/own.yaml", "log/2026.yaml", "pages/about.md", "plans", "log", "pages"),
    ],
)
def test_no_link_out_of_the_workshop_is_followed(tmp_path: Path, folder: Path, file: str) -> None:
    target = folder / file
    away = tmp_path / "away" / target.name
    away.parent.mkdir()
    if target.exists():
        target.rename(away)
    else:
        away.write_text(SECRET)
    if target.suffix:
        away.write_text(SECRET)
    target.symlink_to(away)
    workshop, findings = read_workshop(folder)
    (finding, *_) = [each for each in findings if each.rule == "link-out"]
    assert finding.message == "a link leads out of the workshop"
    assert finding.place.file.startswith(file)
    assert not [each for each in findings if "root" in str(each)]
    if workshop is not None and target.suffix != ".json":
        assert not [plan for plan in workshop.plans if file.startswith("plans")]
        assert not [page for page in workshop.pages if file.startswith("pages")]


def test_a_link_that_stays_inside_is_followed(folder: Path) -> None:
    plan = folder / "plans" / "rack" / "plan.yaml"
    plan.rename(folder / "rack.yaml")
    plan.symlink_to("../../rack.yaml")
    assert sound(folder).plans


def test_a_link_that_leads_to_itself_is_told(folder: Path) -> None:
    page = folder / "pages" / "loop.md"
    page.symlink_to(page)
    (folder / "plans" / "ring").symlink_to("ring")
    assert sound(folder).pages


def test_what_a_reader_sent_names_its_sheet_by_a_plain_word() -> None:
    names = LogNames(plans=("stool",))
    stated = {"id": "sent-a", "date": "2026-12-01", "plan": "stool", "sheet": "ply"}
    entry, findings = read_entry("sent", stated, names, NOWHERE)
    assert not findings
    assert isinstance(entry, Sent)
    assert entry.sheet == "ply"
    _, refused = read_entry("sent", {**stated, "sheet": "Ply 18"}, names, NOWHERE)
    assert [each.message for each in refused] == ["`Ply 18` is no name"]
