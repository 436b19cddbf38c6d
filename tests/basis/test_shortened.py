"""Of one kind the first few findings are shown, then a count; none is lost from the counting."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.finding import Finding, Severity, error, has_errors, warning
from kerfolio.basis.place import Place
from kerfolio.basis.shortened import shortened


def holes(count: int, part: str = "board") -> list[Finding]:
    """Return a warning for each of so many holes, a line each."""
    return [
        warning(
            "features-overlap",
            f"hole {number}",
            Place("plans/a/plan.yaml", number, 7),
            "Move it.",
            subject=f"{part}.hole-{number}",
        )
        for number in range(1, count + 1)
    ]


def told(findings: tuple[Finding, ...]) -> list[str]:
    return [f"{each.place.line}: {each.severity}: {each.message}" for each in findings]


def test_eight_are_shown_and_the_rest_counted() -> None:
    assert shortened(holes(8)) == tuple(holes(8))
    found = shortened(holes(400))
    assert found[:8] == tuple(holes(8))
    assert told(found[8:]) == ["9: warning: and 392 more of this kind"]
    assert str(found[8]) == (
        "plans/a/plan.yaml:9:7: warning: and 392 more of this kind [features-overlap]"
    )
    assert (found[8].subject, found[8].count) == ("board", 392)
    assert [(each.name, each.value) for each in found[8].facts] == [("more", 392)]
    assert sum(each.count for each in found) == 400


def test_shortening_again_counts_no_line_twice() -> None:
    once = shortened(holes(400))
    assert sum(each.count for each in shortened((*once, *holes(450)[400:]))) == 450


def test_an_error_is_never_lost_behind_warnings() -> None:
    wrong = [replace(each, severity=Severity.ERROR) for each in holes(30)[20:]]
    found = shortened((*holes(20), *wrong))
    assert has_errors(found)
    assert told(found)[-3:] == [
        "27: error: hole 27",
        "28: error: hole 28",
        "29: error: and 2 more of this kind",
    ]
    assert "9: warning: and 12 more of this kind" in told(found)


def test_parts_rules_and_files_are_counted_apart() -> None:
    many = holes(10, "left") + holes(10, "right")
    assert [each for each in told(shortened(many)) if "more" in each] == [
        "9: warning: and 2 more of this kind",
        "9: warning: and 2 more of this kind",
    ]
    keys = [
        error("unknown-key", "unknown key", Place(f"log/{file}.yaml", line, 1))
        for file in ("a", "b")
        for line in range(1, 7)
    ]
    assert shortened(keys) == tuple(keys)
