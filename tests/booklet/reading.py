"""Reads booklets back with programs that did not write them."""

from __future__ import annotations

import ctypes
import io
from collections.abc import Iterator

import numpy as np
import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium


def texts(content: bytes) -> list[str]:
    """Return every page's text, white space made single, firm blanks too."""
    document = pypdfium2.PdfDocument(content)
    found = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return found


def letter_sizes(content: bytes) -> set[float]:
    """Return the sizes of all letters as they stand on paper, in points, to a tenth."""
    document = pypdfium2.PdfDocument(content)
    found = {size for page in document for size in _sizes(page)}
    document.close()
    return found


def _sizes(page: pypdfium2.PdfPage) -> Iterator[float]:
    text = page.get_textpage()
    matrix = pdfium.FS_MATRIX()
    for index in range(text.count_chars()):
        if pdfium.FPDFText_GetUnicode(text, index) <= 0x20:
            continue
        pdfium.FPDFText_GetMatrix(text, index, ctypes.byref(matrix))
        high = (matrix.c**2 + matrix.d**2) ** 0.5
        yield round(pdfium.FPDFText_GetFontSize(text, index) * high, 1)


def font_names(content: bytes) -> dict[str, bool]:
    """Return every face's name, and whether its TrueType program is in the file."""
    found = {}
    with pikepdf.open(io.BytesIO(content)) as document:
        for each in document.objects:
            if isinstance(each, pikepdf.Dictionary) and each.get("/Type") == "/FontDescriptor":
                found[str(each["/FontName"])] = "/FontFile2" in each
    return found


def bookmarks(content: bytes) -> list[tuple[int, str, int]]:
    """Return depth, title and page, from 1, of every bookmark."""
    document = pypdfium2.PdfDocument(content)
    found = [
        (mark.level, mark.get_title(), mark.get_dest().get_index() + 1)
        for mark in document.get_toc()
    ]
    document.close()
    return found


def runs(content: bytes, dots: float = 10.0) -> set[float]:
    """Return how long the longest stretch without white is in each line of all pages, mm."""
    found: set[float] = set()
    for inked in _inked(content, dots, 250):
        for line in inked:
            edges = np.flatnonzero(np.diff(np.concatenate(([0], line, [0]))))
            if len(edges):
                found.add(float((edges[1::2] - edges[::2]).max()) / dots)
    return found


def blank_feet(content: bytes, margins: tuple[float, float], dots: float = 1.5) -> list[float]:
    """Return of every page the share that is blank between its last ink and the lower margin.

    ``margins`` are the upper and the lower one, mm; the foot stands in the lower one. Looked at as
    pictures of ``dots`` a mm.
    """
    found = []
    for inked in _inked(content, dots, 235):
        top, bottom = round(margins[0] * dots), len(inked) - round(margins[1] * dots)
        rows = np.flatnonzero(inked[top:bottom].any(axis=1))
        last = int(rows.max()) + 1 if len(rows) else 0
        found.append(1.0 - last / (bottom - top))
    return found


def _inked(content: bytes, dots: float, white: int) -> Iterator[np.ndarray]:
    """Yield each page in ``dots`` a mm, true where it is darker than a grey counted as white."""
    document = pypdfium2.PdfDocument(content)
    for page in document:
        yield page.render(scale=dots * 25.4 / 72, grayscale=True).to_numpy().squeeze() < white
    document.close()
