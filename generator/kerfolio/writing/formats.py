"""The formats of cut files: one table, which bundles, batches, checks and words all go through."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Protocol

from kerfolio.basis.style import Numbers, told_as
from kerfolio.drawing.cut_note import said_in_inches
from kerfolio.drawing.inches import in_inches
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_back import ReadBack
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes


class Write(Protocol):
    """How a drawing becomes a file; lengths of the drawing are mm, y up."""

    def __call__(self, drawing: Drawing, *, own_origin: bool, numbers: Numbers = told_as) -> bytes:
        """Return the file, in UTF-8. With ``own_origin`` the drawing's 0,0 must be the file's too.

        ``numbers`` tells every number that is written, those in words too.
        """


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFormat:
    """A format of cut files: what it is called, how it is written and how it is read back.

    ``ending`` is what stands behind the dot of a file's name, ``title`` what readers know the
    format as, ``unit`` what its files are in, ``mm`` or ``in``; ``says`` turns a line on the
    drawing into that on the file.
    ``sent`` marks what is sent to a shop that cuts for others. ``read`` reads a file of this
    program back; it raises UnreadableError for what is none.
    """

    ending: str
    title: str
    unit: str = "mm"
    says: Callable[[str], str] = str
    sent: bool = False
    write: Write
    read: Callable[[bytes], ReadBack]


_DECIMALS = {"mm": 4, "in": 6}
"""Of lengths in files of a unit: a step of an inch file is 0.00003 mm, below that of one in mm."""


def _svg(
    drawing: Drawing, *, own_origin: bool, numbers: Numbers = told_as, unit: str = "mm"
) -> bytes:
    return svg_bytes(
        drawing, decimals=_DECIMALS[unit], unit=unit, own_origin=own_origin, numbers=numbers
    )


def _dxf(
    drawing: Drawing,
    *,
    own_origin: bool,  # noqa: ARG001
    numbers: Numbers = told_as,
    unit: str = "mm",
) -> bytes:
    """A DXF always has the drawing's 0,0."""
    return dxf_bytes(drawing, unit, _DECIMALS[unit], numbers=numbers)


def _twin(usual: CutFormat, written: Callable[..., bytes]) -> CutFormat:
    """Return a format in inches that is in all else as the one in mm, which ``written`` writes."""

    def write(drawing: Drawing, *, own_origin: bool, numbers: Numbers = told_as) -> bytes:
        return written(in_inches(drawing), own_origin=own_origin, numbers=numbers, unit="in")

    return replace(
        usual,
        ending=f"in.{usual.ending}",
        unit="in",
        says=said_in_inches,
        sent=False,
        write=write,
    )


SVG = CutFormat(ending="svg", title="SVG", write=_svg, read=read_svg)
DXF = CutFormat(ending="dxf", title="DXF", sent=True, write=_dxf, read=read_dxf)

CUT_FORMATS = (SVG, DXF)
"""The formats that every plan's cut files are published in, in the order readers are told of."""

INCH_FORMATS = (_twin(SVG, _svg), _twin(DXF, _dxf))
"""Their twins in inches, where the maker asks for them."""

EVERY_FORMAT = (*CUT_FORMATS, *INCH_FORMATS)


def formats_in(units: Iterable[str]) -> tuple[CutFormat, ...]:
    """Return the formats of files in some units: mm always, inches where asked for."""
    return EVERY_FORMAT if "in" in units else CUT_FORMATS
