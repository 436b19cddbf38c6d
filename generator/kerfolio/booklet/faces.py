"""The cuts that booklets are set in, alone in a folder: typst takes folders, and mixes formats."""

from __future__ import annotations

import atexit
import shutil
import tempfile
from functools import cache
from importlib import resources
from pathlib import Path

import typst

_PACKAGES = {"SourceSansPro": "font_source_sans_pro", "SourceSerifPro": "font_source_serif_pro"}
_CUTS = ("Regular", "It", "Semibold", "SemiboldIt", "Bold")


@cache
def faces() -> typst.Fonts:
    """Return the faces, TrueType only; their folder lives as long as the process.

    Nothing of the machine's own fonts is looked at: the same booklet everywhere.
    """
    folder = tempfile.mkdtemp(prefix="kerfolio-faces-")
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    for family, package in _PACKAGES.items():
        for cut in _CUTS:
            name = f"{family}-{cut}.ttf"
            content = resources.files(package).joinpath("files", name).read_bytes()
            Path(folder, name).write_bytes(content)
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[folder]
    )
