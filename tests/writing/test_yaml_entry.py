"""Entries written as YAML come back as they were."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from yaml import safe_load

from kerfolio.writing.yaml_entry import yaml_lines

TEXT = st.text(st.characters(exclude_categories=("Cs", "Cc", "Cf", "Zl", "Zp")), min_size=1)
LINES = st.lists(TEXT, min_size=2, max_size=4).map("\n".join)
VALUE = st.recursive(
    TEXT | LINES,
    lambda inner: (
        st.lists(inner, max_size=3).map(tuple)
        | st.dictionaries(st.sampled_from(("name", "top")), inner, min_size=1)
    ),
    max_leaves=5,
)


def as_lists(value: object) -> object:
    """Return a value with lists for tuples, and every scalar as text."""
    if isinstance(value, dict):
        return {key: as_lists(each) for key, each in value.items()}
    return [as_lists(each) for each in value] if isinstance(value, (tuple, list)) else str(value)


@given(st.dictionaries(st.sampled_from(("title", "text", "passes")), VALUE, min_size=1))
def test_a_foreign_reader_reads_the_same(entry: dict[str, object]) -> None:
    # PyYAML's own loader; BaseLoader takes every scalar for a text.
    import yaml

    text = "\n".join(("trials:", *yaml_lines(entry, 2), ""))
    assert yaml.load(text, Loader=yaml.BaseLoader) == {"trials": [as_lists(entry)]}


def test_words_stand_as_a_person_would_write_them() -> None:
    entry = {
        **{"date": "2026-11-30", "title": "Rail: first", "passes": ("8 mm", "3/8 in")},
        **{"outcome": {"top": "clean"}, "public": "true", "batch": "yes", "text": "One.\nTwo."},
    }
    assert yaml_lines(entry, 0) == (
        "- date: 2026-11-30",
        '  title: "Rail: first"',
        "  passes: [8 mm, 3/8 in]",
        "  outcome: {top: clean}",
        "  public: true",
        '  batch: "yes"',
        "  text: |-",
        "    One.",
        "    Two.",
    )
    assert safe_load("\n".join(yaml_lines(entry, 0)))[0]["public"] is True
