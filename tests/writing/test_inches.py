"""Twins of cut files in inches: the same shapes, in the unit that the file itself states."""

from __future__ import annotations

import io
import re
from math import isclose

import ezdxf
import pytest
from ezdxf import bbox

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.publishing.cut_files import part_files
from kerfolio.writing.formats import CUT_FORMATS, EVERY_FORMAT, INCH_FORMATS, formats_in
from tests.plans import small_settled

NEAR = 0.0005
"""mm: half a step of both files together, far below the agreement check's 0.002."""


def test_inches_come_only_where_asked_for_and_mm_always() -> None:
    assert formats_in(()) == formats_in(("mm",)) == CUT_FORMATS
    assert formats_in(("in",)) == formats_in(("mm", "in")) == EVERY_FORMAT
    names = [name for name, _ in part_files(small_settled(), EVERY_FORMAT, METRIC)]
    assert [name for name in names if "side" in name] == [
        f"cut/17.6mm/parts/side-17.6mm.{each}" for each in ("svg", "dxf", "in.svg", "in.dxf")
    ]


@pytest.mark.parametrize("number", [0, 1])
def test_a_twin_read_back_is_the_file_in_mm(number: int) -> None:
    drawing = cut_part(small_settled(), small_settled().parts[0], METRIC)
    usual, twin = CUT_FORMATS[number], INCH_FORMATS[number]
    one = usual.read(usual.write(drawing, own_origin=False))
    other = twin.read(twin.write(drawing, own_origin=False))
    assert one.layers.keys() == other.layers.keys()
    words = {
        layer: tuple(line.replace("Units: mm.", "Units: in.") for line in lines)
        for layer, lines in one.words.items()
    }
    assert words == other.words != one.words
    assert one.thickness == other.thickness == 17.6
    for name, contours in one.layers.items():
        for a, b in zip(contours, other.layers[name], strict=True):
            for p, q in zip(a.vertices, b.vertices, strict=True):
                assert all(isclose(u, v, abs_tol=NEAR) for u, v in zip(p, q, strict=True))


def test_the_files_say_that_they_are_in_inches() -> None:
    settled = small_settled()
    part = settled.parts[0]
    drawing = cut_part(settled, part, METRIC)
    svg = INCH_FORMATS[0].write(drawing, own_origin=False).decode()
    width, box = re.search(r'width="([0-9.]+)in" height="[0-9.]+in" viewBox="(.*?)"', svg).groups()  # type: ignore[union-attr]
    assert float(width) == float(box.split()[2])
    assert isclose(float(width) * 25.4, drawing.width, abs_tol=NEAR)
    dxf = ezdxf.read(io.StringIO(INCH_FORMATS[1].write(drawing, own_origin=False).decode()))
    # DXF reference: $INSUNITS 1 is inches, $MEASUREMENT 0 is English; boxes are ezdxf's own.
    assert (dxf.header["$INSUNITS"], dxf.header["$MEASUREMENT"]) == (1, 0)
    outline = [each for each in dxf.modelspace() if each.dxf.layer.startswith("outline")]
    size = bbox.extents(outline, fast=False).size
    assert isclose(size.x * 25.4, part.size[0], abs_tol=0.01)
    assert isclose(size.y * 25.4, part.size[1], abs_tol=0.01)
