"""Lists and drawings beyond their budgets, told before they are expanded, in exact words."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import ezdxf
import pytest

from kerfolio.basis import budgets
from kerfolio.basis.budgets import ELEMENTS, LIST, NESTING, PATH, Budget
from kerfolio.basis.finding import Finding
from kerfolio.reading import drawn_dxf
from kerfolio.reading.amounts import SPOTS
from kerfolio.reading.drawn_dxf import read_dxf
from kerfolio.reading.drawn_svg import read_svg
from kerfolio.reading.dxf_lines import entity_count
from kerfolio.reading.feature import FEATURES
from kerfolio.reading.forms import ListOf
from kerfolio.reading.incomplete import PARTS
from kerfolio.reading.joint import JOINTS
from kerfolio.reading.outline import SHAPE_KEYS
from kerfolio.reading.release import PHOTOS
from kerfolio.reading.step import STEPS
from kerfolio.reading.values import TEXTS
from tests.bench.large import Large, block, circle, dxf, insert, svg, tagged
from tests.reading.desks import read

PATHS = next(each.form for each in SHAPE_KEYS if each.name == "path")


def told(large: Large, folder: Path) -> list[str]:
    """Return what reading a drawing says, without the notes on what is left out."""
    ((name, text),) = large.drawings.items()
    path = folder / Path(name).name
    path.write_text(text, "utf-8")
    drawing, findings = (read_svg if path.suffix == ".svg" else read_dxf)(path, name)
    errors = [_words(each) for each in findings if each.severity == "error"]
    assert (drawing is None) == bool(errors)
    return errors


def _words(finding: Finding) -> str:
    return f"{finding.message} [{finding.rule}] / {finding.advice}"


NAMES = enumerate(["knob", "knob", "knob", "peg", "knob.2", "peg"], start=1)
ELEMENTS_TOLD = (
    f"a drawing of more than {ELEMENTS.most} elements [drawing-too-large] / {ELEMENTS.advice}"
)
NESTING_TOLD = (
    "an element of more than 100 levels of groups and clones [drawing-too-large] / "
    "Draw it with fewer levels."
)


def test_a_list_of_points() -> None:
    at = "[" + "[1, 2], " * 15_000 + "]"
    assert read(SPOTS, at) == (None, [f"a list of 15000 entries, at most 4000 / {LIST.advice}"])
    assert len(read(SPOTS, "[" + "[1, 2], " * 4_000 + "]")[0]) == 4_000


def test_a_list_of_texts_and_features_by_name() -> None:
    words = [f"a list of 4001 entries, at most 4000 / {LIST.advice}"]
    assert read(TEXTS, "[" + "a, " * 4_001 + "]") == (None, words)
    many = "".join(f"h{n}: {{hole: {{at: [1, 2], diameter: 3}}}}\n" for n in range(4_001))
    assert read(FEATURES, many) == (None, words)


STEP, PHOTO = "- title: Slide it in\n", "- {file: photos/a.jpg, alt: A rack}\n"
JOINT = "- {tab: rail.left, into: side.left.slot}\n"


@pytest.mark.parametrize(
    ("form", "entry", "budget", "words"),
    [
        (STEPS, STEP, budgets.STEPS, "a plan of 101 steps, at most 100"),
        (PHOTOS, PHOTO, budgets.PHOTOS, "a plan of 31 photos, at most 30"),
        (JOINTS, JOINT, budgets.JOINTS, "a plan of 1001 joints, at most 1000"),
    ],
)
def test_what_a_plan_lists(
    form: ListOf[object],
    entry: str,
    budget: Budget,
    words: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    values, findings = read(form, entry * budget.most)
    assert len(values) == budget.most
    assert findings == []
    monkeypatch.setattr(type(form.item), "read", _never)
    assert read(form, entry * (budget.most + 1)) == (None, [f"{words} / {budget.advice}"])


def _never(*_: object) -> None:
    raise AssertionError("an entry was read before all were counted")


def test_parts_of_a_plan() -> None:
    def parts(count: int) -> str:
        return "".join(
            f"p{n}: {{sheet: ply, outline: {{rectangle: [9, 9]}}}}\n" for n in range(count)
        )

    assert len(read(PARTS, parts(200))[0]) == 200
    told = [f"a plan of 201 parts, at most 200 / {budgets.PARTS.advice}"]
    assert read(PARTS, parts(201)) == (None, told)


def test_a_path_in_a_plan() -> None:
    text = f"M0 0{'L1 1' * (PATH.most // 2)}Z"
    assert read(PATHS, f'"{text}"') == (
        None,
        [
            "a path of more than 100000 numbers / "
            "Draw it simpler: with arcs and curves for short lines."
        ],
    )


@pytest.mark.parametrize("shape", ['<path id="a" d="M0 0{}"/>', '<polygon id="a" points="{}"/>'])
def test_a_path_in_a_drawing(shape: str, tmp_path: Path) -> None:
    words = "a path of more than 100000 numbers [drawing-too-large] / " + PATH.advice
    assert told(svg(shape.format(" 1 1" * 50_001)), tmp_path) == [words]


def test_elements_of_a_drawing(tmp_path: Path) -> None:
    few = '<circle cx="9" cy="9" r="3"/>' * 30
    assert told(svg(few), tmp_path) == []
    assert told(svg('<circle cx="9" cy="9" r="3"/>' * ELEMENTS.most), tmp_path) == [ELEMENTS_TOLD]


def test_clones_count_as_often_as_they_are_used(tmp_path: Path) -> None:
    paths = "".join(f'<path d="M{n} 0h1v1h-1z"/>' for n in range(200))
    uses = "".join(f'<use href="#many" x="{n}"/>' for n in range(100))
    drawing = svg(f'<defs><g id="many">{paths}</g></defs>{uses}')
    assert told(drawing, tmp_path) == [ELEMENTS_TOLD]


def test_clones_of_clones_that_hold_nothing(tmp_path: Path) -> None:
    groups = '<g id="g0"></g>'
    for level in range(1, 12):
        groups += f'<g id="g{level}">' + f'<use href="#g{level - 1}"/>' * 10 + "</g>"
    drawing = svg(f'<defs>{groups}</defs><use href="#g11"/>')
    assert told(drawing, tmp_path) == [ELEMENTS_TOLD]


def test_levels_of_clones(tmp_path: Path) -> None:
    groups = '<g id="g0"><circle cx="9" cy="9" r="3"/></g>'
    groups += "".join(
        f'<g id="g{level}"><use href="#g{level - 1}"/></g>' for level in range(1, 600)
    )
    assert told(svg(f'<defs>{groups}</defs><use href="#g9"/>'), tmp_path) == []
    assert told(svg(f'<defs>{groups}</defs><use href="#g599"/>'), tmp_path) == [NESTING_TOLD]


def test_levels_of_groups(tmp_path: Path) -> None:
    deep = NESTING.most + 1
    drawing = svg("<g>" * deep + '<circle cx="9" cy="9" r="3"/>' + "</g>" * deep)
    assert told(drawing, tmp_path) == [NESTING_TOLD]


def test_an_insert_in_rows_and_columns(tmp_path: Path) -> None:
    once = block("b", circle())
    assert told(dxf(insert("b", 9, 9), once), tmp_path) == []
    assert told(dxf(insert("b", 30_000, 30_000), once), tmp_path) == [ELEMENTS_TOLD]


def test_inserts_in_inserts(tmp_path: Path) -> None:
    blocks = block("b0", circle())
    for level in range(1, 5):
        blocks += block(f"b{level}", insert(f"b{level - 1}", 60, 60, "0"))
    assert told(dxf(insert("b4"), blocks), tmp_path) == [ELEMENTS_TOLD]


@pytest.mark.parametrize("binary", [False, True])
def test_entities_of_a_dxf_file(
    binary: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    document = ezdxf.new(units=4)
    for n in range(60):
        document.modelspace().add_circle((20 * n, 0), 3)
    path = tmp_path / "board.dxf"
    document.saveas(path, fmt="bin" if binary else "asc")
    assert read_dxf(path, "board.dxf")[0] is not None
    count = entity_count(path.read_bytes())
    assert count >= 60
    monkeypatch.setattr(drawn_dxf, "NODES", replace(budgets.NODES, most=count - 1))
    opened: list[Path] = []
    monkeypatch.setattr(drawn_dxf.filemanagement, "readfile", opened.append)
    drawing, findings = read_dxf(path, "board.dxf")
    assert (drawing, opened) == (None, [])
    assert list(map(_words, findings)) == [
        f"a drawing of {count} elements in its file, at most {count - 1} [drawing-too-large] / "
        "Draw it simpler, and delete what is not cut."
    ]


def test_paths_of_one_name_are_numbered_in_order(tmp_path: Path) -> None:
    path = tmp_path / "board.svg"
    body = "".join(f'<circle id="{name}" cx="{9 * n}" cy="9" r="3"/>' for n, name in NAMES)
    path.write_text(svg(body).drawings["drawings/board.svg"], "utf-8")
    drawing, _ = read_svg(path, "board.svg")
    assert drawing is not None
    names = [each.name for each in drawing.elements]
    assert names == ["outline", "knob", "knob.2", "knob.3", "peg", "knob.2.2", "peg.2"]


def test_corners_of_old_polylines_are_no_entities() -> None:
    line = tagged(0, "POLYLINE", 8, "0") + tagged(0, "VERTEX", 10, 0, 20, 0) * 9
    assert entity_count((line + tagged(0, "SEQEND", 0, "EOF")).encode()) == 2


def test_the_size_of_a_drawing_file(tmp_path: Path) -> None:
    large = Large(plan="", drawings={"drawings/board.svg": " " * 10_000_001})
    assert told(large, tmp_path) == [
        "a drawing of 10000001 bytes, at most 10000000 [drawing-too-large] / "
        "Draw it simpler, and leave out pictures."
    ]
    assert told(Large(plan="", drawings={"board.dxf": " " * 10_000_001}), tmp_path) == [
        "a drawing of 10000001 bytes, at most 10000000 [drawing-too-large] / "
        "Draw it simpler, and leave out pictures."
    ]
