"""Reads printed pages back with programs that did not write them."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import pikepdf
import pypdfium2

MM = 25.4 / 72

Point = tuple[float, float]


def texts(content: bytes) -> list[str]:
    """Return every page's text with its white space made single."""
    document = pypdfium2.PdfDocument(content)
    found = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return found


def sizes(content: bytes) -> list[tuple[float, float]]:
    """Return every page's width and height in mm, rounded to 0.01."""
    with pikepdf.open(io.BytesIO(content)) as document:
        boxes = [[float(each) * MM for each in page.mediabox] for page in document.pages]
    return [(round(x1 - x0, 2), round(y1 - y0, 2)) for x0, y0, x1, y1 in boxes]


def fonts(content: bytes) -> list[Any]:
    """Return the subtype of every font and whether its program is in the file."""
    found = []
    with pikepdf.open(io.BytesIO(content)) as document:
        for each in document.objects:
            if isinstance(each, pikepdf.Dictionary) and each.get("/Type") == "/Font":
                descriptor = each.get("/FontDescriptor", {})
                found.append((str(each["/Subtype"]), "/FontFile2" in descriptor))
    return found


def chains(content: bytes, page: int) -> Iterator[list[Point]]:
    """Yield the corner points in mm of every subpath of a page, curves as 33 points each.

    Drawings that the file holds apart are followed to where the page shows them.
    """
    with pikepdf.open(io.BytesIO(content)) as document:
        yield from _chains(document.pages[page].obj, (1.0, 0.0, 0.0))


def _chains(stream: Any, seat: tuple[float, float, float]) -> Iterator[list[Point]]:
    """Yield the subpaths of a stream that is shown at a scale and a place, mm."""
    scale, dx, dy = seat
    chain: list[Point] = []
    inner = seat
    for operands, operator in pikepdf.parse_content_stream(stream):
        name = str(operator)
        values = [float(each) * MM for each in operands] if name in "mlc" else []
        values = [scale * each + (dx, dy)[n % 2] for n, each in enumerate(values)]
        match name:
            case "cm":
                a, _, _, d, x, y = (float(each) for each in operands)
                assert a == d
                inner = (scale * a, dx + scale * x * MM, dy + scale * y * MM)
            case "Q":
                inner = seat
            case "Do":
                yield from _chains(stream.Resources.XObject[str(operands[0])], inner)
            case "m":
                chain = [(values[0], values[1])]
            case "l":
                chain.append((values[0], values[1]))
            case "c":
                chain += _curve(chain[-1], values)
            case "h":
                chain.append(chain[0])
                yield chain
                chain = []
            case "S":
                if chain:
                    yield chain
                chain = []


def _curve(start: Point, handles: list[float]) -> list[Point]:
    a, b, c = (tuple(handles[i : i + 2]) for i in (0, 2, 4))
    points = []
    for step in range(1, 33):
        t = step / 32
        weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        points.append(
            tuple(
                sum(w * p[axis] for w, p in zip(weights, (start, a, b, c), strict=True))
                for axis in (0, 1)
            )
        )
    return points  # type: ignore[return-value]


def segments(content: bytes, page: int) -> list[tuple[Point, Point]]:
    """Return all two-point lines of a page in mm."""
    return [(each[0], each[1]) for each in chains(content, page) if len(each) == 2]


def outside(content: bytes, margin: float, most_points: float = 1e9) -> list[str]:
    """Return the letters, of those up to a size in points, nearer than ``margin`` mm to an edge."""
    document = pypdfium2.PdfDocument(content)
    found = []
    for number, page in enumerate(document, start=1):
        wide, high = page.get_size()
        text = page.get_textpage()
        for index in range(text.count_chars()):
            letter = text.get_text_range(index, 1)
            if not letter.strip():
                continue
            left, bottom, right, top = text.get_charbox(index)
            if pypdfium2.raw.FPDFText_GetFontSize(text, index) > most_points:
                continue
            near = min(left, bottom, wide - right, high - top) * MM
            if near < margin - 0.01:
                found.append(f"page {number}: {letter!r} {near:.1f} mm")
    document.close()
    return found
