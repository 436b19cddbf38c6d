"""Saving a piece on the fitting page: the words and the answers are those of the program."""

from __future__ import annotations

import json
import subprocess
from dataclasses import replace
from typing import Any

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.shipped import shipped
from kerfolio.edition.rescue_words import slip_words
from kerfolio.layouts.alone import laid_alone
from kerfolio.pages.rescue import rescue_of
from kerfolio.pages.script_words import script_words
from kerfolio.pages.theme import THEME
from kerfolio.shop.shims import shims
from tests.outside import node
from tests.pages.invented import edition
from tests.pieces import settled

SCRIPTS = script_words(METRIC, ("fitscript", "truecut", "rescuescript")) + "\n".join(
    (shipped("themes") / THEME / each).read_text("utf-8")
    for each in ("fitted.js", "fitting.js", "rescue.js")
)
PLAN = replace(edition(), settled=settled(), corners=(settled(),))
DATA: dict[str, Any] = json.loads(str(rescue_of(PLAN, None, inline=True).data))
LOOSE = (0.1, 0.15, 0.3, 0.45, 0.7, 1.35)


def reckoned(expression: str, given: Any) -> Any:
    """Return what an expression over the page's functions gives; ``given`` is its argument."""
    script = f"{SCRIPTS}\nconst given = {json.dumps(given)};"
    script += f"process.stdout.write(JSON.stringify({expression}));"
    found = subprocess.run([node(), "-e", script], capture_output=True, check=True)
    return json.loads(found.stdout)


@pytest.mark.node
def test_the_page_lines_joints_in_the_words_of_the_program() -> None:
    drawn = settled()
    thickness = {each.name: each.thickness for each in drawn.sheets}
    words = "slipWords(part, each, given.thickness, given.data, 'mm')"
    told = f"given.data.parts.map((part) => given.loose.map((each) => {words}))"
    found = reckoned(told, {"data": DATA, "loose": LOOSE, "thickness": thickness})
    for part, lines in zip(drawn.parts, found, strict=True):
        slips = shims(drawn, part, part.features)
        assert lines == [list(slip_words(slips, each, METRIC)) for each in LOOSE]


@pytest.mark.node
def test_the_page_knows_what_fits_an_offcut_as_the_program_does() -> None:
    drawn = settled()
    sizes = [(x, y) for x in (150, 400, 420, 500, 700) for y in (150, 400, 420, 500, 700)]
    told = "given.data.parts.map((part) => given.sizes.map((each) => lyingOn(part, each, 'mm')))"
    found = reckoned(told, {"data": DATA, "sizes": sizes})
    seen = set()
    for part, answers in zip(drawn.parts, found, strict=True):
        for size, answer in zip(sizes, answers, strict=True):
            laid = laid_alone(part, drawn.sheet(part.sheet), size)
            assert answer["fits"] == (laid is not None)
            turned = laid is not None and laid.placements[0].turn
            assert ("turned by" in answer["words"]) == bool(turned)
            seen.add((answer["fits"], bool(turned)))
    assert len(seen) == 3


TYPED = {
    "0.15": ("tight", 0.15, ""),
    "0,15 mm": ("tight", 0.15, ""),
    "0.006 in": ("tight", 0.152, ""),
    "15": ("tight", None, "“15” cannot be what a joint is too tight by. Is it 0.15 mm?"),
    "x": ("loose", None, "“x” is no number: write 0.15 mm or 0.006 in."),
}


@pytest.mark.node
def test_what_is_typed_is_asked_back_where_it_cannot_be() -> None:
    ways = [[text, way] for text, (way, *_) in TYPED.items()]
    told = "given.ways.map(([text, way]) => wrongBy(text, way, given.data, 'mm'))"
    found = reckoned(told, {"data": DATA, "ways": ways})
    assert [(each.get("mm"), each.get("fault", "")) for each in found] == [
        (mm, fault) for _, mm, fault in TYPED.values()
    ]
    sizes = reckoned("given.map((each) => offcutOf(each, 'mm'))", ["300x400", "12 x 16 in", "300"])
    assert sizes[0] == {"sides": [300, 400]}
    assert "write the side along the grain first, 300 x 400" in sizes[2]["fault"]
