"""The lines over which the cutter lifts, read back from the files like everything that is cut."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.drawing.cut_sheet import cut_part, cut_sheet
from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.edition.names import cut_part_name, cut_sheet_name
from tests.agreement.spoilings import BOX, box_layout, edition, files, moved, told

CUTS = (
    "cuts: {profile: {sheet: ply, cutter: compression-1-4in, passes: [rest], bridges: 2}}\nparts:"
)
TEXT = BOX.replace("parts:", CUTS, 1)


def spoiled(drawing: Drawing, *, by: float | None) -> Drawing:
    """Leave the first bridge of a drawing out, or move it ``by`` mm."""
    at = next(n for n, each in enumerate(drawing.items) if each.layer.startswith("bridge"))
    item = drawing.items[at]
    assert isinstance(item, Stroke)
    new = [] if by is None else [replace(item, contour=moved(item.contour, by, 0.0))]
    return replace(drawing, items=(*drawing.items[:at], *new, *drawing.items[at + 1 :]))


def test_bridges_agree_as_they_are_written() -> None:
    made = edition(TEXT, box_layout)
    assert [len(part.bridges) for part in made.settled.parts] == [2, 2]
    assert told(made, files(TEXT, box_layout)) == []


@pytest.mark.parametrize(("by", "words"), [(None, "missing"), (0.02, "0.02 mm")])
def test_a_bridge_left_out_or_moved_is_told(by: float | None, words: str) -> None:
    made, good = edition(TEXT, box_layout), files(TEXT, box_layout)
    settled, (sheet,) = made.settled, made.layout.sheets
    fit, part = settled.variant.label, settled.parts[0]
    for form in made.formats:
        for name, drawing in (
            (cut_part_name(fit, part.name, form.ending), cut_part(settled, part, made.reader)),
            (cut_sheet_name(fit, 1, form.ending), cut_sheet(settled, sheet, made.reader)),
        ):
            content = form.write(spoiled(drawing, by=by), own_origin=False)
            (message,) = told(made, {**good, name: content})
            assert f"`{name}`" in message
            assert words in message
