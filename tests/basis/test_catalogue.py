"""The catalogue of words: every message in every language, none missing, none to spare."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest
from fluent.syntax import FluentParser
from fluent.syntax import ast as fluent
from fluent.syntax.visitor import Visitor

from kerfolio.basis.catalogue import languages, message, spoken
from kerfolio.basis.cutting_lengths import chosen_in, drill_in
from kerfolio.basis.figured import Figure, Figured
from kerfolio.basis.figures import minutes_text, money_text
from kerfolio.basis.lengths import both_text, mm_text, sag_pair
from kerfolio.basis.masses import mass_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import day_text, listed, say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import sold_range_text
from kerfolio.document.words import Mark, worded

HOME = Path(__file__).resolve().parents[2]
WORDS = HOME / "words"
SAYERS = {"say": 1, "says": 0, "worded": 1, "listed": 99, "phrase": 0}
"""Calls that name a message, and which of their arguments does."""

GERMAN = Reader(language="de")

SAID = (
    *("chapters", "document", "booklet", "edition", "paper", "drawing"),
    *("assembly/bracing.py", "assembly/in_use.py", "assembly/proof_words.py"),
    *("assembly/stability_words.py", "assembly/storing_words.py", "assembly/told.py"),
    *("layouts/saw_cuts.py", "settling/fitted.py", "settling/measured.py", "settling/titles.py"),
)
"""Rooms, and modules of others, whose words for readers stand in the catalogue alone."""
MAKERS_PICTURES = (
    "album",
    "edge_ruler",
    "fastening_view",
    "finding_view",
    "gallery",
    "meeting_view",
    "name_tags",
    "named_part",
    "named_whole",
    "sketch_view",
    "standing_view",
)
"""Modules of pictures for a maker, who is told in English."""
PROSE = re.compile(
    r"[^\W\d_]{2,}[,:;.]? [^\W\d_]{2,}|^[A-Z][a-z]+$"
    r"|^[,;]? (?!(?:mm|in|ft|kg)\b)[^\W\d_]{2,}\b|[^\W\d_]{2,},? $"
)
"""Two words, one with a capital, or one that goes on before or after; units are none."""
NO_PROSE = {
    "booklet/faces.py": ("SourceSansPro", "SourceSerifPro", "Regular", "It", "Semibold", "Bold"),
    "booklet/look.py": ("Source Sans Pro", "Source Serif Pro"),
    "edition/licence_words.py": ("Unlicense",),
    "edition/names.py": ("US Letter",),
    "assembly/told.py": ("  - title: ",),
}
"""Texts that are none: names of fonts and of their cuts, of licences, of paper; YAML."""


class Wanted(Visitor):  # type: ignore[misc]
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: fluent.VariableReference) -> None:  # noqa: N802
        self.names.add(node.id.name)


@cache
def messages(language: str) -> dict[str, tuple[str, frozenset[str]]]:
    """Return the file and the variables of every message of a language."""
    found: dict[str, tuple[str, frozenset[str]]] = {}
    for path in sorted((WORDS / language).glob("*.ftl")):
        for entry in FluentParser().parse(path.read_text("utf-8")).body:
            assert not isinstance(entry, fluent.Junk), f"{path.name}: {entry.content[:60]}"
            if isinstance(entry, fluent.Message):
                wanted = Wanted()
                wanted.visit(entry)
                assert entry.id.name not in found, entry.id.name
                found[entry.id.name] = path.stem, frozenset(wanted.names)
    return found


@cache
def nodes() -> tuple[ast.AST, ...]:
    """Return every call and every text of the program."""
    paths = sorted((HOME / "generator").rglob("*.py"))
    trees = (ast.parse(path.read_text("utf-8")) for path in paths)
    kinds = (ast.Call, ast.Constant, ast.JoinedStr)
    return tuple(node for tree in trees for node in ast.walk(tree) if isinstance(node, kinds))


def _texts(found: Iterable[ast.AST]) -> tuple[set[str], set[str]]:
    """Return whole texts among nodes, and what made-up texts begin with."""
    whole, beginnings = set[str](), set[str]()
    for node in found:
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            whole.add(node.value)
        elif isinstance(node, ast.JoinedStr) and isinstance(node.values[0], ast.Constant):
            beginnings.add(str(node.values[0].value))
    return whole, beginnings


@cache
def theme_texts() -> tuple[str, ...]:
    """Return the templates and scripts of the theme."""
    kinds = (".html", ".xml", ".typ", ".js")
    paths = sorted((HOME / "themes").rglob("*.*"))
    return tuple(path.read_text("utf-8") for path in paths if path.suffix in kinds)


@cache
def named() -> tuple[frozenset[str], frozenset[str]]:
    """Return the messages that the program and its theme name, and beginnings of made-up names."""
    names, beginnings = _texts(argument for node in nodes() for argument in _arguments(node))
    for text in theme_texts():
        names |= set(re.findall(r"\bsay\(\s*[\"']([a-z0-9-]+)[\"'] *[,)]", text))
        beginnings |= set(re.findall(r"\bsay\(\s*[\"']([a-z0-9]+-[a-z0-9-]*)[\"'] *~", text))
    return frozenset(names), frozenset(beginnings)


@cache
def whatever_is_quoted() -> tuple[frozenset[str], frozenset[str]]:
    """Return every text in quotes of program and theme, and what made-up texts begin with."""
    quoted, beginnings = _texts(nodes())
    for text in theme_texts():
        quoted |= set(re.findall(r"[\"']([a-z0-9]+-[a-z0-9-]*)[\"']", text))
        beginnings |= set(re.findall(r"[\"'`]([a-z0-9]+-[a-z0-9-]*)(?:[\"'] *[~+]|\$\{)", text))
    files = {file for file, _ in messages("en").values()}
    return frozenset(quoted), frozenset(b for b in beginnings if b.partition("-")[0] in files)


def _arguments(node: ast.AST) -> Iterator[ast.expr]:
    """Yield what may name a message, each branch of a choice by itself."""
    if isinstance(node, ast.Call):
        called = node.func
        name = called.id if isinstance(called, ast.Name) else getattr(called, "attr", "")
        place = SAYERS.get(name, 99)
        if place < len(node.args):
            yield from _branches(node.args[place])


def _branches(node: ast.expr) -> Iterator[ast.expr]:
    if isinstance(node, ast.IfExp):
        yield from _branches(node.body)
        yield from _branches(node.orelse)
    else:
        yield node


@pytest.mark.parametrize("language", languages())
def test_every_language_has_every_message_with_the_same_values(language: str) -> None:
    ours, english = messages(language), messages("en")
    assert ours.keys() ^ english.keys() == set()
    assert {n: v for n, v in ours.items() if v != english[n]} == {}


def prose_in(source: str) -> Iterator[str]:
    """Yield the prose in a module's texts, but for docstrings, errors and names of types."""
    waiting: list[ast.AST] = [ast.parse(source)]
    while waiting:
        node = waiting.pop()
        match node:
            case ast.Raise() | ast.Assert() | ast.Expr(value=ast.Constant()):
                continue
            case ast.Call(func=ast.Name(id="cast")):
                waiting += node.args[1:]
            case ast.Call(func=ast.Name(id="TypeVar")):
                continue
            case ast.Constant(value=str() as text) if PROSE.search(text):
                yield text
            case _:
                waiting += ast.iter_child_nodes(node)


@pytest.mark.parametrize("name", SAID)
def test_no_words_for_readers_stand_in_the_code(name: str) -> None:
    kerfolio = HOME / "generator" / "kerfolio"
    at = kerfolio / name
    found = {
        (path.name, text)
        for path in (sorted(at.glob("*.py")) if at.is_dir() else [at])
        if path.stem not in MAKERS_PICTURES
        for text in prose_in(path.read_text("utf-8"))
        if text not in NO_PROSE.get(str(path.relative_to(kerfolio)), ())
    }
    assert found == set()


def test_words_in_code_are_found() -> None:
    source = """'What it is'
raise ValueError("no such thing")
head = "Tools"
said = f"{3} of them"
deep = f"{3} mm" + " deep"
name = say(reader, "costs-title")
"""
    assert sorted(prose_in(source)) == [" deep", " of them", "Tools"]


def test_a_message_is_named_after_its_file() -> None:
    wrong = [n for n, (file, _) in messages("en").items() if not n.startswith(f"{file}-")]
    assert wrong == []


def test_every_message_that_is_named_is_there() -> None:
    names, beginnings = named()
    assert sorted(names - messages("en").keys()) == []
    there = messages("en")
    assert sorted(b for b in beginnings if not any(n.startswith(b) for n in there)) == []


def test_no_message_is_left_that_nothing_names() -> None:
    quoted, beginnings = whatever_is_quoted()
    kept = tuple(sorted(beginnings))
    assert sorted(n for n in messages("en") if n not in quoted and not n.startswith(kept)) == []


def test_a_reader_without_a_catalogue_reads_english() -> None:
    assert languages() == ("de", "en")
    assert [spoken(each) for each in ("de", "de-AT", "DE", "fr", "en-GB")] == [
        *("de", "de-AT", "DE", "en", "en-GB"),
    ]
    assert say(Reader(language="fr"), "lists-and", head="a", item="b") == "a and b"
    assert say(Reader(language="de-AT"), "lists-and", head="a", item="b") == "a und b"


def test_figures_and_pieces_are_still_known_in_a_message() -> None:
    figure = Figure(17.8, Style(rule=Rule.FIXED, decimals=2, after=" mm"))
    said = say(GERMAN, "lists-or", head=figure, item="nichts")
    assert said == "17.80 mm oder nichts"
    assert isinstance(said, Figured)
    assert said.parts == (figure, " oder nichts")
    assert worded(METRIC, "lists-and", head=Mark(text="A1"), item=("the ", Mark(text="B"))) == (
        *(Mark(text="A1"), " and the ", Mark(text="B")),
    )


def test_counts_are_not_grouped_and_unknown_names_are_told() -> None:
    assert say(METRIC, "lists-and", head=1200, item="more") == "1200 and more"
    with pytest.raises(KeyError, match="lists-nor"):
        say(METRIC, "lists-nor", head="a", item="b")
    with pytest.raises(ValueError, match="lists-and"):
        say(METRIC, "lists-and", head="a")
    assert message("en", "lists-one", {"item": chr(0xF0000)}) == (chr(0xF0000),)


def test_lists_days_and_decimals_follow_the_language() -> None:
    """Names of months and decimal marks as the Unicode CLDR has them."""
    assert listed(GERMAN, ("a", "b", "c")) == "a, b und c"
    assert (listed(METRIC, ()), listed(METRIC, ("a",), "or")) == ("", "a")
    assert day_text(METRIC, date(2026, 10, 2)) == "2 October 2026"
    assert day_text(GERMAN, date(2026, 3, 2)) == "2. März 2026"
    assert (METRIC.number("17.80"), GERMAN.number("17.80")) == ("17.80", "17,80")


def test_figures_are_told_with_the_mark_and_the_words_of_the_language() -> None:
    german, inches = GERMAN, GERMAN.inches
    assert both_text(360.5, german) == "360,5 mm (14 3/16 in)"
    assert sold_range_text(17.2, 18.6, german) == "17,2 bis 18,6 mm (0,677 bis 0,732 in)"
    assert sheet_text((2440, 1220), german) == "2440 × 1220 mm (etwa 96 × 48 in)"
    assert mass_text(8.2, inches) == "18,1 lb (8,2 kg)"
    assert drill_in(7.0, inches) == "9/32 in, 0,006 in darüber"
    assert chosen_in(3.3, inches) == "0,12992 in"
    assert [minutes_text(each, german) for each in (1, 59, 60, 80)] == [
        *("1 Minute", "59 Minuten", "1 h", "1 h 20 min"),
    ]
    assert money_text(Decimal("92.5"), "EUR", german) == "92,50 EUR"
    assert sag_pair(0.01, german) == ("unter 0,1 mm", "unter 0,01 in")
    assert mm_text(17.8, 1, german.plain) == "17.8 mm"


FOR_MAKERS = ("adopted.html", "private-log.html", "report.html", "remark.html", "watch")
"""How templates of pages begin that never leave the maker's disk; what they say is English."""

_TOLD = re.compile(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}|<(script|style|svg|code)\b.*?</\1>", re.DOTALL)
_SPOKEN_ATTRIBUTES = re.compile(r'\b(?:aria-label|alt|title|placeholder|data-label)="([^"]*)"')


def words_in(template: str) -> list[str]:
    """Return the words that a template itself says, those of attributes that are read out too."""
    bare = _TOLD.sub("", template)
    texts = [*re.findall(r">([^<>]+)<", f">{bare}<"), *_SPOKEN_ATTRIBUTES.findall(bare)]
    return [word for text in texts for word in re.findall(r"[^\W\d_]{2,}", text)]


@pytest.mark.parametrize(
    "path",
    sorted((HOME / "themes" / "workbench" / "templates").glob("*.html")),
    ids=lambda p: p.name,
)
def test_no_template_says_words_of_its_own(path: Path) -> None:
    if not path.name.startswith(FOR_MAKERS):
        assert [each for each in words_in(path.read_text("utf-8")) if each != "mm"] == []


def test_words_of_a_template_are_seen() -> None:
    text = (
        '{% if x %}<p title="A tip">{{ say("a-b") }} and <b>this</b></p>{# not that #}{% endif %}'
    )
    assert words_in(text) == ["and", "this", "tip"]
