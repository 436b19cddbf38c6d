"""Nothing a maker writes vanishes: each word stands on the page and in the booklet, or is told."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import Finding
from kerfolio.booklet.lines import Lines as SetLines
from kerfolio.booklet.prose import prose_blocks
from kerfolio.model.prose import Prose
from kerfolio.model.workshop import Page
from kerfolio.pages.home import own_page
from kerfolio.reading.prose import read_prose
from tests.pages.invented import site
from tests.pages.markup import Tree

SITE = site()
WORD = "Xq"
"""Stands for a word; each gets a number of its own, by which it is found again."""

Lines = list[str]
Written = st.SearchStrategy[Lines]

SET_SPANS = st.sampled_from(
    [
        "Xq",
        "*Xq*",
        "**Xq *Xq* Xq**",
        "`Xq`",
        "[Xq](Xq/)",
        "[**Xq** Xq](https://example.org)",
        "<https://example.org/Xq>",
        "Xq  \nXq",
        "Xq\\\nXq",
        "5 < Xq & 3*4",
        "\\*Xq\\*",
        "&lt;Xq&gt;",
        "Xq\nXq",
    ]
)
OTHER_SPANS = st.sampled_from(
    [
        "![Xq](Xq.png)",
        "<b>Xq</b>",
        "<!-- Xq -->",
        "[^Xq]",
        "~~Xq~~",
        "[Xq](Xq 'Xq')",
        "[a [Xq](Xq) b](Xq)",
        "[Xq](Xq Xq)",
        "[Xq][Xq]",
        "[Xq](javascript:Xq)",
        "[](Xq)",
        "*Xq",
        "`Xq",
    ]
)


def sentence(spans: st.SearchStrategy[str]) -> Written:
    return st.lists(spans, min_size=1, max_size=3).map(lambda each: " ".join(each).split("\n"))


def cells(spans: st.SearchStrategy[str], count: int) -> st.SearchStrategy[str]:
    whole = spans.filter(lambda each: "\n" not in each)
    return st.lists(whole, min_size=count, max_size=count).map(lambda row: "| " + " | ".join(row))


@st.composite
def tables(draw: st.DrawFn, spans: st.SearchStrategy[str], most: int) -> Lines:
    count = draw(st.integers(1, most))
    rows = draw(st.lists(cells(spans, count), min_size=2, max_size=4))
    dashes = "|" + "".join(draw(st.sampled_from(["---|", ":-:|", "--:|"])) for _ in range(count))
    return [rows[0], dashes, *rows[1:]]


def prefixed(lines: Lines, first: str, others: str) -> Lines:
    return [(first if n == 0 else others if line else "") + line for n, line in enumerate(lines)]


@st.composite
def lists(draw: st.DrawFn, inner: Written) -> Lines:
    entries = draw(st.lists(inner, min_size=1, max_size=3))
    mark = draw(st.sampled_from(["-", "*", "[ ]", "7.", "1)"]))
    found: Lines = []
    for number, entry in enumerate(entries):
        count = {"7.": f"{7 + number}. ", "1)": "1) ", "[ ]": "- "}.get(mark, f"{mark} ")
        tick = "[ ] " if mark == "[ ]" and entry[0][:1].isalpha() else ""
        found += prefixed([tick + entry[0], *entry[1:]], count, " " * len(count))
    return found


def quotations(inner: Written) -> Written:
    return inner.map(lambda lines: [f"> {line}" if line else ">" for line in lines])


def stacked(blocks: Written, most: int) -> Written:
    """Return blocks under each other, a sentence between, so that no list goes on in the next."""
    return st.lists(blocks, min_size=1, max_size=most).map(
        lambda found: [line for each in found for line in ("", "Xq", "", *each)][3:]
    )


def containers(leaves: Written, deepest: int) -> Written:
    inner = leaves
    for _ in range(deepest):
        column = stacked(inner, 2)
        inner = leaves | lists(column) | quotations(column)
    return inner


CODE = st.sampled_from(["```\nXq\n\n  Xq *Xq* <Xq>\n```", "~~~\nXq | Xq\n~~~"]).map(
    lambda each: each.split("\n")
)
HEADINGS = st.sampled_from(["# Xq", "## Xq *Xq*", "### Xq #", "Xq\n==="]).map(
    lambda each: each.split("\n")
)
OTHER_BLOCKS = st.sampled_from(
    [
        "    Xq\n      Xq",
        "#### Xq",
        "##### Xq",
        "<div>\nXq\n</div>",
        "<!--\nXq\n-->",
        "***",
        "Xq\n---",
        "[Xq]: Xq",
        "[^Xq]: Xq",
        "[Xq]: Xq 'Xq'",
        "```Xq\nXq\n```",
        "| Xq | Xq |\n| Xq | Xq |",
        "| Xq |\n|---|\n| Xq | Xq |",
        "1. Xq\n2. Xq\n4. Xq",
        "-\n- Xq",
        "- # Xq",
        "```\nXq",
    ]
).map(lambda each: each.split("\n"))

GOOD = containers(sentence(SET_SPANS) | CODE | tables(SET_SPANS, 6), 3) | HEADINGS
ALL = SET_SPANS | OTHER_SPANS
ANY = containers(sentence(ALL) | CODE | tables(ALL, 8) | OTHER_BLOCKS, 5) | HEADINGS


def numbered(lines: Lines) -> str:
    """Return the text with a number in each of its words."""
    count = iter(range(10_000))
    return re.sub(WORD, lambda _: f"Xq{next(count)}x", "\n".join(lines))


def words(text: str) -> list[str]:
    return re.findall(r"Xq\d+x", text)


def on_page(prose: Prose) -> list[str]:
    page = own_page(SITE, Page(name="own", title="Own", text=prose))
    tree = Tree(page)
    assert tree.faults == []
    main = next(each for each in tree.all("main"))
    return words(main.text)


def on_paper(prose: Prose) -> list[str]:
    """Return the words handed to the booklet's template; ``tests/booklet`` looks at its PDF."""
    lines = SetLines(language="en", targets=frozenset())
    return words("".join(_texts([*prose_blocks(prose, lines, 2)])))


def _texts(data: Any) -> Iterator[str]:
    if isinstance(data, dict):
        yield from ([data["text"]] if "text" in data else ())
        yield from (each for value in data.values() for each in _texts(value))
    elif isinstance(data, list):
        yield from (each for value in data for each in _texts(value))


def shown_words(text: str) -> list[str]:
    """Return the words a reader sees: all but those in the addresses of links."""
    return words(re.sub(r"(?<=\])\([^)\s]*\)", "", text))


def lines_of(findings: tuple[Finding, ...]) -> set[int]:
    return {each.place.line for each in findings}


@settings(max_examples=80)
@given(stacked(GOOD, 4))
def test_what_is_set_stands_on_page_and_paper_in_its_order(lines: Lines) -> None:
    text = numbered(lines)
    prose, findings = read_prose(text, "a.md")
    assert findings == (), text
    assert on_page(prose) == shown_words(text)
    assert sorted(on_paper(prose)) == sorted(shown_words(text))


@settings(max_examples=120)
@given(stacked(ANY, 4))
def test_what_does_not_stand_there_is_told_where_it_is(lines: Lines) -> None:
    text = numbered(lines)
    prose, findings = read_prose(text, "a.md")
    page, paper = set(on_page(prose)), set(on_paper(prose))
    assert page == paper
    for number, line in enumerate(text.split("\n"), start=1):
        missing = [word for word in shown_words(line) if word not in page]
        assert not missing or number in lines_of(findings), (text, missing)
