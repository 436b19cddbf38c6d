"""The lines of a plan that something stands in."""

from __future__ import annotations

from kerfolio.watching.excerpt import excerpt

PLAN = """\
parts:
  side:
    sheet: ply

    features:
      slot: {at: [1, 2]}
  rail:
    sheet: ply
"""


def test_a_part_is_shown_with_all_that_is_indented_below_it() -> None:
    lines = excerpt(PLAN, 2)
    assert [each.number for each in lines] == [1, 2, 3, 4, 5, 6]
    assert [each.meant for each in lines] == [False, True, True, True, True, True]
    assert lines[-1].text == "      slot: {at: [1, 2]}"


def test_one_line_is_shown_after_the_two_before_it() -> None:
    assert [(each.number, each.meant) for each in excerpt(PLAN, 6)] == [
        (4, False),
        (5, False),
        (6, True),
    ]


def test_long_blocks_and_lines_are_cut_and_no_such_line_shows_nothing() -> None:
    long = "a:\n" + "".join(f"  b{number}: 1\n" for number in range(100))
    assert len(excerpt(long, 1)) == 24
    assert len(excerpt("x" * 5000, 1)[0].text) == 300
    assert excerpt(PLAN, 0) == excerpt(PLAN, 99) == excerpt("", 1) == ()
