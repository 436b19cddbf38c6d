"""Whatever stands in a file, reading gives findings or a value and never an exception."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import Finding
from kerfolio.reading.desk import Desk
from kerfolio.reading.identity import IDENTITY
from kerfolio.reading.page import read_page
from kerfolio.reading.plan import read_plan
from kerfolio.reading.stock import STOCK, make_stock
from kerfolio.reading.trial import LOG
from kerfolio.reading.yaml_text import read_yaml
from tests.reading.desks import PLAN_TEXT, SHELF

MANY = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
LINES = PLAN_TEXT.splitlines(keepends=True)
PIECES = [
    *("{", "}", "[", "]", ": ", ":", ",", "- ", "\n", "\n  ", "\n    ", "\t", "#", " #x", "'", '"'),
    *("*a", "&a ", "!!int ", "<<: ", "|", ">", "---\n", "...", "%", "@", "`", "? ", "~", "null"),
    *(
        "slot",
        "at",
        "takes: ply",
        "width",
        "ply",
        "sizes",
        "parts",
        "360",
        "18 mm",
        "t",
        "½",
        "1e9",
    ),
    *("depth: ", "{slot: {", "[[0, 0]", "thickness(", "\x00", "\x85", "\u2028", "😀", "é"),
]
SOUP = st.lists(st.sampled_from(PIECES), max_size=30).map("".join)


def check(findings: tuple[Finding, ...]) -> None:
    """Findings are fit to print: short words on one line, with a place in the file."""
    for each in findings:
        assert each.message
        assert "\n" not in each.message + each.advice
        assert len(each.message) < 200
        assert each.place.file.startswith("plans/rack/")


def read(text: str) -> None:
    made = read_plan(text.encode("utf-8", "surrogatepass"), "rack", SHELF)
    check(made.findings)
    assert made.plan is not None or made.findings


@MANY
@given(st.binary(max_size=200))
def test_any_bytes(content: bytes) -> None:
    made = read_plan(content, "rack", SHELF)
    check(made.findings)
    assert made.findings


@MANY
@given(st.text(max_size=120))
def test_any_text(text: str) -> None:
    read(text)


@MANY
@given(SOUP)
def test_yaml_soup(text: str) -> None:
    read(text)


@MANY
@given(st.integers(0, len(PLAN_TEXT)), st.integers(0, 12), SOUP)
def test_the_good_plan_with_a_hole_torn_in_it(at: int, length: int, patch: str) -> None:
    read(PLAN_TEXT[:at] + patch + PLAN_TEXT[at + length :])


@MANY
@given(st.lists(st.integers(0, len(LINES) - 1), min_size=1, max_size=6), st.booleans())
def test_the_good_plan_with_lines_lost_or_doubled(numbers: list[int], lost: bool) -> None:
    times = dict.fromkeys(numbers, 0 if lost else 2)
    read("".join(line * times.get(number, 1) for number, line in enumerate(LINES)))


VALUES = st.recursive(
    st.sampled_from(["360", "t", "yes", "ply", "18 mm", "''", "", "2026-01-01", "1.0.0", "x y"]),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda v: f"[{', '.join(v)}]")
        | st.dictionaries(
            st.sampled_from(["at", "slot", "x", "round", "file"]), inner, max_size=3
        ).map(lambda v: "{" + ", ".join(f"{key}: {value}" for key, value in v.items()) + "}")
    ),
    max_leaves=6,
)
SPOTS = [index for index, line in enumerate(LINES) if ": " in line and "{" not in line]


@MANY
@given(st.sampled_from(SPOTS), VALUES)
def test_the_good_plan_with_another_kind_of_value(index: int, value: str) -> None:
    line = f"{LINES[index].split(': ')[0]}: {value}\n"
    read("".join([*LINES[:index], line, *LINES[index + 1 :]]))


@MANY
@given(SOUP | st.text(max_size=80))
def test_the_other_files(text: str) -> None:
    content = text.encode("utf-8", "surrogatepass")
    page, told = read_page(content, "plans/rack/a.md", "a")
    check(told)
    assert page is not None or told
    node, findings = read_yaml(content, "plans/rack/x.yaml")
    check(findings)
    if node is None:
        return
    for form in (IDENTITY, STOCK, LOG):
        desk = Desk()
        value = form.read(node, desk)
        check(tuple(desk.findings))
        assert value is not None or desk.findings or findings
        if form is STOCK and value:
            make_stock({}, value, desk)
            check(tuple(desk.findings))


@pytest.mark.parametrize("text", ["a" * 500_000, "- " * 200_000, "a: " * 200_000, "{" * 5000])
def test_long_nonsense_is_refused_quickly(text: str) -> None:
    read(text)
