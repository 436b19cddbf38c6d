"""DXF files read back by ezdxf, which stands for any other program that opens them.

Reference: the DXF reference's header variables ($INSUNITS 4 = millimetres, $MEASUREMENT 1 =
metric) and the bulge of LWPOLYLINE (group code 42: tangent of a quarter of the included angle).
"""

from __future__ import annotations

import io
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import ezdxf
import pytest

from kerfolio.basis.colour import rgb
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.writing.dxf import dxf_bytes

POCKET = Layer(name="pocket_6.0mm", purpose="Clear it.", depth=6.0, cuts=True)
OUTLINE = Layer(name="outline_through", purpose="Cut it.", cuts=True)
NOTE = Layer(name="note", purpose="Words.")

ROUNDED = Contour(((0.0, 0.0, 0.0), (60.0, 0.0, 1.0), (60.0, 30.0, 0.0), (0.0, 30.0, 0.0)))
SAMPLE = Drawing(
    box=(-5.0, 0.0, 100.0, 50.0),
    items=(
        Stroke(contour=ROUNDED, layer="outline_through", ink=Ink.OUTLINE),
        Stroke(contour=circle((15.125, 15), 8), layer="pocket_6.0mm", ink=Ink.POCKET),
        Label(text="Cut for 17.8 mm, größer", at=(0, 40), height=5, layer="note"),
    ),
    layers=(POCKET, OUTLINE, NOTE),
)


def opened(content: bytes) -> Any:
    return ezdxf.read(io.StringIO(content.decode("utf-8")))


def test_the_header_says_millimetres_and_metric() -> None:
    document = opened(dxf_bytes(SAMPLE))
    assert document.dxfversion == "AC1024", "release R2010"
    assert document.header["$INSUNITS"] == 4
    assert document.header["$MEASUREMENT"] == 1
    assert tuple(document.header["$EXTMIN"]) == (-5, 0, 0)
    assert tuple(document.header["$EXTMAX"]) == (100, 50, 0)


def test_the_audit_finds_nothing() -> None:
    auditor = opened(dxf_bytes(SAMPLE)).audit()
    assert (auditor.errors, auditor.fixes) == ([], [])


def test_contours_are_closed_polylines_with_their_arcs() -> None:
    (line,) = opened(dxf_bytes(SAMPLE)).modelspace().query("LWPOLYLINE")
    assert line.closed
    assert line.dxf.layer == "outline_through"
    assert tuple(line.get_points("xyb")) == ROUNDED.vertices


def test_a_full_circle_is_a_circle() -> None:
    (found,) = opened(dxf_bytes(SAMPLE)).modelspace().query("CIRCLE")
    assert tuple(found.dxf.center) == (15.125, 15, 0)
    assert found.dxf.radius == 4
    assert found.dxf.layer == "pocket_6.0mm"


def test_an_open_engraving_stays_open() -> None:
    path = Contour(((0.0, 0.0, 0.0), (10.0, 0.0, 0.5), (10.0, 5.0, 0.0)), closed=False)
    drawing = Drawing(box=(0, 0, 9, 9), items=(Stroke(contour=path, layer="a"),))
    (line,) = opened(dxf_bytes(drawing)).modelspace().query("LWPOLYLINE")
    assert not line.closed
    assert tuple(line.get_points("xyb")) == path.vertices


def test_coordinates_have_four_decimals() -> None:
    path = rectangle(0, 0, 1 / 3, 17.123456789012)
    drawing = Drawing(box=(0, 0, 9, 9), items=(Stroke(contour=path),))
    (line,) = opened(dxf_bytes(drawing)).modelspace().query("LWPOLYLINE")
    assert max(line.get_points("xy")) == (0.3333, 17.1235)


def test_every_layer_has_its_colour_and_purpose() -> None:
    layers = opened(dxf_bytes(SAMPLE)).layers
    assert layers.get("pocket_6.0mm").rgb == rgb(PALETTE[Ink.POCKET])
    assert layers.get("pocket_6.0mm").description == "Clear it."
    assert layers.get("outline_through").rgb == rgb(PALETTE[Ink.OUTLINE])


def test_lettering_is_text_off_the_cut_layers() -> None:
    (text,) = opened(dxf_bytes(SAMPLE)).modelspace().query("TEXT")
    assert text.dxf.text == "Cut for 17.8 mm, größer"
    assert text.dxf.layer == "note"
    assert text.dxf.height == pytest.approx(3.3), "DXF counts the height of the capitals"


@pytest.mark.parametrize("anchor", list(Anchor))
def test_lettering_keeps_its_anchor(anchor: Anchor) -> None:
    label = Label(text="x", at=(3, 4), height=5, anchor=anchor, angle=30)
    (text,) = opened(dxf_bytes(Drawing(box=(0, 0, 9, 9), items=(label,)))).modelspace()
    alignment, point, _ = text.get_placement()
    assert alignment.name == {"start": "LEFT", "middle": "CENTER", "end": "RIGHT"}[anchor]
    assert tuple(point) == (3, 4, 0)
    assert text.dxf.rotation == 30


@pytest.mark.parametrize(
    "item",
    [
        Label(text="x", at=(0, 0), height=5, layer="outline_through"),
        Dimension(a=(0, 0), b=(9, 0), text="9", offset=3, layer="outline_through"),
    ],
)
def test_lettering_on_a_cut_layer_is_a_fault_of_the_program(item: Label | Dimension) -> None:
    drawing = Drawing(box=(0, 0, 9, 9), items=(item,), layers=(OUTLINE,))
    with pytest.raises(ValueError, match="lettering on the cut layer outline_through"):
        dxf_bytes(drawing)


def test_nothing_of_the_clock_goes_in_and_no_switch_of_the_library_is_turned(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refuse(*words: object) -> None:
        raise AssertionError(words)

    monkeypatch.setattr(type(ezdxf.options), "set", refuse)
    text = dxf_bytes(SAMPLE).decode("utf-8")
    assert ezdxf.__version__ not in text
    for name in ("$TDCREATE", "$TDUCREATE", "$TDUPDATE", "$TDUUPDATE"):
        # 2451545 is the Julian day of 1 January 2000 (Astronomical Almanac, epoch J2000.0).
        assert f"\n{name}\n 40\n2451545.0\n" in text
    for name in ("$FINGERPRINTGUID", "$VERSIONGUID"):
        assert f"\n{name}\n  2\n{{00000000-0000-0000-0000-000000000000}}\n" in text


PRINT_HASHES = """
import hashlib
from tests.drawing.bench import bench, bench_layout
from tests.drawing.templates import template_of
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.drawing.layout_view import layout_view
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.svg import svg_bytes
plan, layout = bench(), bench_layout()
shown = template_of(plan, plan.parts[0])
for drawing in (cut_sheet(plan, layout), layout_view(plan, layout), shown):
    for content in (dxf_bytes(drawing), svg_bytes(drawing), svg_bytes(drawing, outlined=True)):
        print(hashlib.sha256(content).hexdigest())
"""


def test_bytes_are_the_same_in_any_process_and_time_zone() -> None:
    runs = []
    for zone, seed in (("UTC", "0"), ("Pacific/Auckland", "4242")):
        run = subprocess.run(
            [sys.executable, "-c", PRINT_HASHES],
            env={**os.environ, "TZ": zone, "PYTHONHASHSEED": seed},
            cwd=Path(__file__).resolve().parent.parent.parent,
            capture_output=True,
            text=True,
            check=True,
        )
        runs.append(run.stdout.split())
    assert len(set(runs[0])) == 9
    assert runs[0] == runs[1]
