"""The formats of cut files: one table, which bundles, batches, checks and words all go through."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from kerfolio.drawing.vocabulary import Drawing
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_back import ReadBack
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes


class Write(Protocol):
    """How a drawing becomes a file; lengths of the drawing are mm, y up."""

    def __call__(self, drawing: Drawing, *, own_origin: bool) -> bytes:
        """Return the file. With ``own_origin`` the drawing's 0,0 must be the file's too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFormat:
    """A format of cut files: what it is called, how it is written and how it is read back.

    ``ending`` is what stands behind the dot of a file's name, ``title`` what readers know the
    format as, ``article`` what goes before the title (``a`` or ``an``), ``unit`` what its files are
    in. ``sent`` marks what is sent to a shop that cuts for others. ``read`` reads a file of this
    program back; it raises UnreadableError for what is none.
    """

    ending: str
    title: str
    article: str
    unit: str = "millimetres"
    sent: bool = False
    write: Write
    read: Callable[[bytes], ReadBack]


def _svg(drawing: Drawing, *, own_origin: bool) -> bytes:
    return svg_bytes(drawing, decimals=4, own_origin=own_origin)


def _dxf(drawing: Drawing, *, own_origin: bool) -> bytes:  # noqa: ARG001
    """A DXF always has the drawing's 0,0."""
    return dxf_bytes(drawing)


CUT_FORMATS = (
    CutFormat(
        ending="svg",
        title="SVG",
        article="an",
        write=_svg,
        read=read_svg,
    ),
    CutFormat(
        ending="dxf",
        title="DXF",
        article="a",
        sent=True,
        write=_dxf,
        read=read_dxf,
    ),
)
"""Every format that cut files are published in, in the order in which readers are told of them."""
