"""The map of edges: every treatment told by colour, line and letter, and words that stand clear.

Contrast: WCAG 2.2, 1.4.11, asks for 3:1 for what a picture needs to be understood.
"""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from kerfolio.basis.colour import rgb
from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.basis.shipped import shipped
from kerfolio.drawing.edge_map import LINES, letters
from kerfolio.drawing.extent import extent
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.measure import length, point_in
from kerfolio.model.edge_treatment import EDGE_KINDS
from tests.drawing.overlap import crossed, labels_of, outside, overlapping
from tests.edged import EDGED, edged_panel, settled_panel
from tests.plans import RACK, settled_at

PLAN = settled_at(17.8, EDGED)
MAPPED = {(line.ink, line.width) for line in LINES.values()}
"""The pens of lines along edges; other lines have others."""


def texts(drawing: Drawing) -> list[str]:
    return [each.text for each in labels_of(drawing)]


def test_every_treatment_differs_in_colour_in_line_and_in_letter() -> None:
    assert set(LINES) == set(EDGE_KINDS)
    for one, other in combinations(EDGE_KINDS, 2):
        assert LINES[one].ink != LINES[other].ink
        assert LINES[one].dash != LINES[other].dash
        assert one.letter != other.letter


def luminance(colour: str) -> float:
    """Return the relative luminance of a colour, as WCAG 2.2 defines it."""
    shares = [each / 255 for each in rgb(colour)]
    red, green, blue = (s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def on_page(scheme: str) -> dict[str, str]:
    """Return the colours of the page's style sheet by name: ``light``, or ``dark`` over it."""
    style = (shipped("themes") / "workbench" / "style.css").read_text("utf-8")
    light, dark = re.split(r"prefers-color-scheme: dark", style, maxsplit=1)
    found = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", light))
    dark_too = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", dark.split("}", 1)[0]))
    return {**found, **dark_too} if scheme == "dark" else found


@pytest.mark.parametrize("scheme", ["light", "dark", "print"])
def test_lines_stand_out_from_wood_and_paper(scheme: str) -> None:
    colours = {str(ink): colour for ink, colour in PALETTE.items()}
    if scheme != "print":
        colours |= on_page(scheme)
    for ink, _ in MAPPED:
        for ground in (Ink.WOOD, Ink.PAPER):
            assert contrast(colours[ink], colours[ground]) >= 3, (ink, ground)


@pytest.mark.parametrize("room", [(120.0, 90.0), (70.0, 70.0), (180.0, 80.0)])
@pytest.mark.parametrize("part", PLAN.parts, ids=lambda each: each.name)
def test_letters_and_key_stand_clear(part, room: tuple[float, float]) -> None:  # type: ignore[no-untyped-def]
    drawing = part_view(PLAN, part, room)
    assert drawing.width <= room[0] + 1e-6
    assert drawing.height <= room[1] + 1e-6
    assert overlapping(drawing) == []
    assert crossed(drawing) == []
    assert outside(drawing) == []


def test_the_key_tells_every_line_of_a_part() -> None:
    found = texts(part_view(PLAN, PLAN.part("rail")))
    key = [
        "eased: fine paper takes the sharpness off",
        "banded: Beech veneer, 0.6 mm (0.024 in); sizes are without it",
        "masked: left square, no finish on it",
    ]
    assert [each for each in found if each in key] == key
    assert {each: found.count(each) for each in "ebms"} == {"e": 2, "b": 2, "m": 5, "s": 0}


def test_two_roundings_are_told_apart_by_number() -> None:
    assert [
        (letter, words) for words, (letter, _) in letters(PLAN.part("side"), INCHES).items()
    ] == [
        ("s", "left square, as cut"),
        ("e", "eased: fine paper takes the sharpness off"),
        ("r1", "rounded over 0.079 in (2 mm), show face only"),
        ("r2", "rounded over 0.118 in (3 mm), both faces"),
    ]


def test_lines_are_as_long_as_the_edges_at_their_scale() -> None:
    part = PLAN.part("side")
    drawing = part_view(PLAN, part)
    lines = [
        each
        for each in drawing.items
        if isinstance(each, Stroke) and (each.ink, each.width) in MAPPED
    ]
    face = next(
        each for each in drawing.items if isinstance(each, Stroke) and each.fill is Ink.WOOD
    )
    scale = length(face.contour) / length(part.routed.outer)
    samples = len(letters(part, METRIC))
    drawn = sum(length(each.contour) for each in lines[:-samples])
    assert drawn == pytest.approx(scale * sum(each.length for each in part.edges), rel=1e-4)


def test_letters_of_an_opening_stand_in_the_wood() -> None:
    features = "w: {window: {at: [200, 150], rectangle: [200, 150]}}"
    plan = settled_panel(edged_panel("{also: [{opening: w, treatment: ease}]}", features))
    drawing = part_view(plan, plan.part("panel"))
    hole = max(
        (extent([each]) for each in drawing.items if isinstance(each, Stroke) and each.dash),
        key=lambda box: box[3] - box[1],
    )
    spots = [each.at for each in labels_of(drawing) if each.text == "e" and each.at[1] > 0]
    assert spots
    assert not any(hole[0] < x < hole[2] and hole[1] < y < hole[3] for x, y in spots)


def test_letters_of_an_outline_stand_outside_it() -> None:
    drawing = part_view(PLAN, PLAN.part("rail"))
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    face = next(each.contour for each in strokes if each.fill is Ink.WOOD)
    spots = [each.at for each in labels_of(drawing) if each.text in ("e", "b", "m")]
    assert not any(point_in(face, spot) for spot in spots)


def test_nothing_stated_is_nothing_shown() -> None:
    bare = settled_at(17.8, RACK)
    drawing = part_view(bare, bare.part("rail"))
    assert not any(isinstance(each, Stroke) and each.dash for each in drawing.items)
