"""YAML taken apart: places, what is refused, and in which words."""

from __future__ import annotations

import pytest
import yaml

from kerfolio.basis.place import Place
from kerfolio.reading import yaml_text
from kerfolio.reading.nodes import Broken, Mapping, Node, Scalar, Sequence
from kerfolio.reading.yaml_text import MOST_BYTES, read_yaml
from tests.reading.desks import FILE, node_of, said

CONTROL = "the control character"
LOADERS = [yaml.Loader, *([yaml.CLoader] if yaml.__with_libyaml__ else [])]


@pytest.fixture(params=LOADERS, ids=lambda loader: loader.__name__, autouse=True)
def loader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run every test with the parser in C, where there is one, and with the one in Python."""
    monkeypatch.setattr(yaml_text, "_LOADER", request.param)


def told(text: str | bytes) -> list[tuple[str, str, int, int]]:
    content = text.encode() if isinstance(text, str) else text
    _, findings = read_yaml(content, FILE)
    return [(f.rule, f.message, f.place.line, f.place.column) for f in findings]


def plain(node: Node) -> object:
    if isinstance(node, Mapping):
        return {each.key.text: plain(each.value) for each in node.entries}
    if isinstance(node, Sequence):
        return [plain(each) for each in node.items]
    return node.text if isinstance(node, Scalar) else None


def test_every_value_knows_its_place() -> None:
    node = node_of("a: 1\nb:\n  - x\n  - {c: é, d: 2}\n")
    assert isinstance(node, Mapping)
    listed = node.get("b")
    assert isinstance(listed, Sequence)
    inner = listed.items[1]
    assert isinstance(inner, Mapping)
    assert inner.flow
    assert listed.items[0].place == Place(FILE, 3, 5)
    assert inner.entries[1].key.place == Place(FILE, 4, 12)
    assert inner.entries[1].value.place == Place(FILE, 4, 15)


@pytest.mark.parametrize(
    ("text", "value"),
    # What YAML 1.1 would turn into something else stays the text that stands in the file.
    [
        ("yes", "yes"),
        ("on", "on"),
        ("0:00", "0:00"),
        ("010", "010"),
        ("0x10", "0x10"),
        ("1_000", "1_000"),
        ("2026-10-02", "2026-10-02"),
        ("1.10", "1.10"),
        ("~", "~"),
        ("null", "null"),
        (".inf", ".inf"),
        ('23/32"', '23/32"'),
        ("1' 6-1/2\"", "1' 6-1/2\""),
    ],
)
def test_scalars_stay_texts(text: str, value: str) -> None:
    assert plain(node_of(f"{{a: {text}, b: [{text}]}}")) == {"a": value, "b": [value]}


def test_chapters_inside_braces() -> None:
    node = node_of("{0:00 The idea, 2:10 Cutting}")
    assert plain(node) == {"0:00 The idea": "", "2:10 Cutting": ""}


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        ("a:\n\tb: 1\n", ("yaml-tab", "a tab in the indentation", 2, 1)),
        ("a: 1\n\tb: 2\n", ("yaml-tab", "a tab in the indentation", 2, 1)),
        ("a: Begin: now\n", ("yaml-syntax", "a second `: ` in one line", 1, 9)),
        ("a: [1, 2\nb: 3\n", ("yaml-syntax", "a list in [ ] is not closed", 1, 4)),
        ("a: {x: 1\nb: 2}\n", ("yaml-syntax", "a { is not closed", 1, 4)),
        ('a: "open\nb: 1\n', ("yaml-syntax", "a quotation mark is not closed", 1, 4)),
        ("a: 'don't'\n", ("yaml-syntax", "text goes on after the closing quote", 1, 9)),
        ("  a: 1\n b: 2\n", ("yaml-syntax", "the indentation goes back too far", 2, 2)),
        ("a: 1\n  b: 2\n", ("yaml-syntax", "a key that cannot stand here", 2, 4)),
        ("a: @x\n", ("yaml-syntax", "a text begins with `@`", 1, 4)),
        ("a: %x\n", ("yaml-syntax", "a text begins with `%`", 1, 4)),
        ("a: 1\n- b\n", ("yaml-syntax", "a list where a key was expected", 2, 1)),
        ("a: |x\n", ("yaml-syntax", "text right after `|` or `>`", 1, 5)),
        ("a: [1,,2]\n", ("yaml-syntax", "a value is missing before this sign", 1, 7)),
        ("a: - b\n", ("yaml-syntax", "a `-` where no list can begin", 1, 4)),
        ("a:1\nb\nc: 2\n", ("yaml-syntax", "a key that cannot stand here", 3, 2)),
        ("%YAML 2.0\n---\na: 1\n", ("yaml-syntax", "a `%YAML` line", 1, 1)),
        ("a: x\x01y\n", ("control-character", "a control character U+0001", 1, 5)),
        ('a: 1\nb: "x\\ud800"\n', ("yaml-escape", "`\\ud800` is half a character", 2, 6)),
        ('a: "\\uDC00"\n', ("yaml-escape", "`\\uDC00` is half a character", 1, 5)),
        ('a: "\\U00110000"\n', ("yaml-escape", "`\\U00110000` is no character", 1, 5)),
        (
            'a: "x\n  \\e[1m"\n',
            ("control-character", "`\\e` is the control character U+001B", 2, 3),
        ),
        (
            'a: "\\\\ud800 \\x07"\n',
            ("control-character", "`\\x07` is the control character U+0007", 1, 13),
        ),
        ("", ("empty-file", "the file says nothing", 0, 0)),
        ("# only a remark\n", ("empty-file", "the file says nothing", 0, 0)),
        ("a: 1\n---\nb: 2\n", ("second-document", "a second document", 2, 1)),
        ("a: 1\na: 2\n", ("doubled-key", "`a` is stated twice", 2, 1)),
        ("a: &x 1\n", ("yaml-anchor", "`&x` is a YAML anchor", 1, 4)),
        ("a: *x\n", ("yaml-alias", "`*x` is a YAML alias", 1, 4)),
        ("a: !!str 1\n", ("yaml-tag", "`!!str` is a YAML tag", 1, 4)),
        ("a: !made x\n", ("yaml-tag", "`!made` is a YAML tag", 1, 4)),
        ("<<: {a: 1}\n", ("yaml-merge-key", "`<<` is a YAML merge key", 1, 1)),
        ("? [a, b]\n: 1\n", ("wrong-kind", "a key must be a plain word", 1, 3)),
        ("a: use #10 screws\n", ("comment", "`#10` is taken for a comment", 1, 8)),
    ],
)
def test_refuses(text: str, finding: tuple[str, str, int, int]) -> None:
    assert told(text) == [finding]


def test_a_quotation_mark_that_is_closed_by_a_later_one() -> None:
    rule, message, line, _ = told('a: "open\nb: "x"\n')[0]
    assert rule == "yaml-syntax"
    # The parser in Python has read on by the time it fails, and so only knows the second line.
    assert (message, line) in [
        ("a quotation mark is not closed", 1),
        ("text goes on after the closing quote", 2),
    ]


def test_a_backslash_in_quotes_is_told() -> None:
    assert [each[:3] for each in told('a: "C:\\dir"\n')] == [
        ("yaml-syntax", "a backslash in double quotes", 1)
    ]


@pytest.mark.parametrize("text", ["a: 1 # a remark\n", "a: 1 #\n", "a: b#c\n", 'a: "#10"\n'])
def test_remarks_are_no_findings(text: str) -> None:
    assert told(text) == []


@pytest.mark.parametrize(
    ("written", "finding"),
    [
        (r"\ud83d\ude00 x", r"`\ud83d\ude00` is one character in two halves / Write the character "
         "itself: `😀`."),
        (r"\ud800", r"`\ud800` is half a character / Write the character itself, not its escape."),
        (r"C:\build", r"`\b` is the control character U+0008 / Write file names with `/`, or use "
         "single quotes."),
        (r"\u0007", r"`\u0007` is the control character U+0007 / Remove it."),
    ],
)  # fmt: skip
def test_an_escape_that_stands_for_no_sign_says_what_to_write(written: str, finding: str) -> None:
    _, findings = read_yaml(f'a: "{written}"\n'.encode(), FILE)
    assert said(findings) == [finding]


def test_several_mistakes_come_in_one_run() -> None:
    text = "a: !x 1\nb: *y\na: 2\n<<: 3\n"
    assert [each[0] for each in told(text)] == [
        "yaml-tag",
        "yaml-alias",
        "doubled-key",
        "yaml-merge-key",
    ]


def test_an_alias_leaves_a_broken_value_and_no_second_finding() -> None:
    node, _ = read_yaml(b"a: *y\n", FILE)
    assert isinstance(node, Mapping)
    assert node.get("a") == Broken(place=Place(FILE, 1, 4))


def test_a_bomb_of_aliases_is_refused_at_once() -> None:
    lines = [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 9)]
    text = "a0: &a0 [lol]\n" + "\n".join(lines)
    assert len(told(text)) == 9 + 8 * 9


def test_depth_is_bounded() -> None:
    assert told("[" * 50 + "]" * 50) == [("too-deep", "more than 40 levels deep", 1, 41)]
    assert told("[" * 100_000)[0][0] == "too-deep"
    assert told("[" * 40 + "]" * 40) == []


def test_size_is_bounded() -> None:
    assert told("#" * (MOST_BYTES + 1)) == [("too-large", "the file has more than 2 MB", 0, 0)]


def test_the_number_of_values_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(yaml_text, "MOST_VALUES", 20)
    assert told(f"[{'1,' * 19}]") == []
    assert told(f"[{'1,' * 20}]") == [("too-large", "more than 20 values in one file", 1, 40)]


def test_only_utf_8() -> None:
    message = "a byte that is no UTF-8: 0xFC"
    assert told(b"a: 1\nb: M\xfcller\n") == [("not-utf-8", message, 2, 5)]
    assert told("\ufeffa: 1\n") == []


def test_line_ends_of_other_systems() -> None:
    assert plain(node_of("a: 1\r\nb: 2\r\n")) == {"a": "1", "b": "2"}
