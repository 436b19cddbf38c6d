"""Signs that a keyboard lacks; what is right is common practice in setting English."""

from __future__ import annotations

import pytest

from kerfolio.document.signs import with_signs


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ('She said "no".', "She said “no”."),
        ("'No', she said.", "‘No’, she said."),
        ("It's the maker's, the makers' too", "It’s the maker’s, the makers’ too"),
        ("the '90s", "the ’90s"),
        ('("so")', "(“so”)"),
        ('a "3" is a number', "a “3” is a number"),
        ("3/4\" ply, 8' long", "3/4″ ply, 8′ long"),
        ("800x600, 800 x 600, 80 mm x 60 mm", "800×600, 800 × 600, 80\xa0mm × 60\xa0mm"),
        ("2x2x4 and 4x screws", "2×2×4 and 4× screws"),
        ("0x1F, box 2, x 3, ER11x, a0x 5, 1.5x2", "0x1F, box 2, x 3, ER11x, a0x 5, 1.5×2"),
        ("18 mm, 5 kg, 3 in all, 2 more", "18\xa0mm, 5\xa0kg, 3\xa0in all, 2 more"),
    ],
)
def test_signs_are_what_they_mean(typed: str, meant: str) -> None:
    assert with_signs((typed,), "en") == (meant,)


def test_pieces_of_a_line_know_each_other_and_keep_their_lengths() -> None:
    pieces = ('say "', "so", '", 8', " x 4 mm ", 'x = "1x2"')
    made = with_signs(pieces, "en", (False, False, False, False, True))
    assert made == ("say “", "so", "”, 8", " × 4\xa0mm ", 'x = "1x2"')


def test_marks_are_those_of_the_language() -> None:
    assert with_signs(('Er sagt "ja".',), "de-DE") == ("Er sagt „ja“.",)
    assert with_signs(('Il dit "oui".',), "fr") == ("Il dit «oui».",)
