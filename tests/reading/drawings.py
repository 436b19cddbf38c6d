"""Small drawings written on the spot, and what reading them gives."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.geometry.contour import Contour
from kerfolio.model.outline import Drawing, DrawnElement
from kerfolio.reading.drawn_svg import read_svg

SPACES = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'


class Svg:
    """Reads SVG text put in a folder; 200 x 100 mm, one unit a millimetre, unless told."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def read(
        self, body: str, root: str = 'width="200mm" height="100mm" viewBox="0 0 200 100"'
    ) -> tuple[Drawing | None, tuple[Finding, ...]]:
        return self.whole(f"<svg {SPACES} {root}>{body}</svg>")

    def whole(
        self, text: str | bytes, *, art: bool = False
    ) -> tuple[Drawing | None, tuple[Finding, ...]]:
        path = self.folder / "part.svg"
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return read_svg(path, "drawings/part.svg", art=art)

    def elements(self, body: str, root: str | None = None) -> tuple[DrawnElement, ...]:
        drawing, _ = self.read(body, root) if root else self.read(body)
        assert drawing is not None
        return drawing.elements

    def one(self, body: str, root: str | None = None) -> Contour:
        (element,) = self.elements(body, root)
        return contour(element)

    def told(self, body: str, root: str | None = None) -> list[str]:
        _, findings = self.read(body, root) if root else self.read(body)
        return rules(findings)


def contour(element: DrawnElement) -> Contour:
    return Contour(element.vertices, element.closed)


def rules(findings: tuple[Finding, ...]) -> list[str]:
    return [finding.rule for finding in findings]
