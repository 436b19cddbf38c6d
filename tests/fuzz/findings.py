"""What every finding of a reader owes its maker."""

from __future__ import annotations

import math
from collections.abc import Iterable

from kerfolio.basis.finding import Finding
from kerfolio.model.outline import Drawing


def check_findings(findings: Iterable[Finding], files: str = "") -> None:
    """Findings name a file and a place in it, say what to do, and can be printed on one line.

    ``files`` is what the names of all files begin with.
    """
    for each in findings:
        assert each.place.file.startswith(files), f"{each.rule}: no file"
        assert each.place.file, f"{each.rule}: no file"
        assert (each.place.line > 0) == (each.place.column > 0), f"{each.rule}: half a place"
        assert each.message, f"{each.rule}: no words"
        counted = each.message.startswith("and ") and each.message.endswith(" more of this kind")
        assert each.advice or counted, f"{each.rule}: no advice"
        for text in (each.message, each.advice):
            assert len(text) < 300, f"{each.rule}: long words"
            assert "\n" not in text, f"{each.rule}: words on several lines"
            text.encode()
            assert "\x1b" not in text, f"{each.rule}: words that steer a terminal"


def check_drawing(drawing: Drawing | None, findings: Iterable[Finding], file: str) -> None:
    """A drawing has only finite points, and is told of where there is none."""
    told = tuple(findings)
    check_findings(told, file)
    assert drawing is not None or told, "neither read nor told"
    for element in drawing.elements if drawing else ():
        for vertex in element.vertices:
            assert all(map(math.isfinite, vertex)), "no finite point"
