"""Which letters the fonts can print, and what stands in for others."""

from __future__ import annotations

import pytest

from kerfolio.geometry.letters import as_printed, letter_fault, unprintable
from kerfolio.writing.typeface import Face, in_faces


@pytest.mark.parametrize(
    ("letter", "printed"),
    # Decompositions: UnicodeData.txt of the Unicode Character Database.
    [
        ("é", "é"),
        ("ж", "ж"),
        ("Ω", "Ω"),
        ("\N{DEGREE CELSIUS}", "°C"),
        ("\N{SQUARE MM}", "mm"),
        ("\N{FULLWIDTH DIGIT ONE}", "1"),
        ("\N{NON-BREAKING HYPHEN}", "-"),
        ("\N{THIN SPACE}", " "),
        ("\t", " "),
        ("\N{SOFT HYPHEN}", ""),
        ("\N{VARIATION SELECTOR-16}", ""),
        ("\N{CIRCLED DIGIT ONE}", None),
        ("木", None),
        ("🪵", None),
    ],
)
def test_a_letter_is_printed_as_it_is_or_by_one_that_means_the_same(
    letter: str, printed: str | None
) -> None:
    assert as_printed(letter) == printed


@pytest.mark.parametrize("face", Face)
def test_what_proving_passes_is_set_without_question_marks(face: Face) -> None:
    every = "".join(map(chr, (*range(0x20, 0x7F), *range(0xA0, 0x3000), *range(0xFB00, 0x10000))))
    printed = {each: as_printed(each) for each in every}
    fit = "".join(each for each, shown in printed.items() if shown is not None and "?" not in shown)
    assert not any("?" in part for _, part in in_faces(face, fit))
    assert all("?" in in_faces(Face.SANS, each)[0][1] for each in unprintable(every))


def test_a_face_sets_what_it_has_itself() -> None:
    assert in_faces(Face.SERIF, "ſ‐\N{SOFT HYPHEN}x") == ((Face.SERIF, "ſ‐x"),)
    assert in_faces(Face.SANS, "ſ‐x") == ((Face.SANS, "s-x"),)


def test_a_fault_names_the_first_letters_and_counts_the_rest() -> None:
    assert letter_fault("x", "plain Ø ☐") is None
    assert letter_fault("the title", "日") == "`日` in the title prints as `?`"
    assert letter_fault("the title", "日本語日") == "`日`, `本` and `語` in the title print as `?`"
    assert letter_fault("a tool", "一二三四五六七") == (
        "`一`, `二`, `三`, `四`, `五` and 2 more in a tool print as `?`"
    )
