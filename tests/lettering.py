"""Reads the lettering of cut files back, as people see it."""

from __future__ import annotations

import io
from xml.etree import ElementTree

from ezdxf import filemanagement


def svg_notes(content: bytes) -> tuple[str, ...]:
    """Return the lines of lettering of an SVG file."""
    root = ElementTree.fromstring(content)
    return tuple(each.text or "" for each in root.iter("{http://www.w3.org/2000/svg}text"))


def dxf_notes(content: bytes) -> tuple[str, ...]:
    """Return the lines of lettering of a DXF file."""
    space = filemanagement.read(io.StringIO(content.decode("utf-8"))).modelspace()
    return tuple(str(each.dxf.text) for each in space if each.dxftype() == "TEXT")
