"""The form of a logo: an SVG or PNG file of the workshop, judged before any page shows it.

Pages show it as a picture, in which nothing runs. What could run or fetch where somebody opens the
file by itself is refused, with its place (W3C, SVG Integration: secure static mode allows neither).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.model.look import Logo
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.picture import read_picture, what_it_is
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.svg_tree import SvgNode, read_tree
from kerfolio.reading.svg_viewport import SvgError, length, view_box

_MOST_READ, MOST_BYTES = 25_000_000, 300_000
"""A logo stands in every page of one file: it must stay small."""

_WIDEST, _TALLEST = 10.0, 1.5
"""Times as wide as high, and as high as wide: what the head of a page has room for."""

_RUNS = frozenset({"script", "foreignObject", "iframe", "handler", "listener", "animate", "set"})
_FETCHES = re.compile(r"@import|url\(\s*['\"]?\s*(?!#)", re.IGNORECASE)
_HELD = ("#", "data:image/png", "data:image/jpeg")
"""What a drawing may refer to: its own elements, and pictures that stand in it."""

_PLAIN = "Save it as plain SVG: shapes alone."


@dataclass(frozen=True, slots=True, kw_only=True)
class LogoForm(Form[Logo]):
    """The path of a logo, which is read and judged at once."""

    noun: str = "a logo file"
    advice: str = "Write a path such as `logo.svg`; SVG and PNG are shown."

    def read(self, node: Node, desk: Desk) -> Logo | None:
        """Return the logo, or None with what is wrong with it."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        file = node.text.strip()
        if desk.shelf is None:
            return None
        logo = _logo(file, desk.shelf, desk)
        if isinstance(logo, Complaint):
            desk.complain("logo", logo, node.place)
            return None
        return logo

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a path."""
        return {"type": "string", "pattern": r"\.(svg|png|SVG|PNG)$"}


def _logo(file: str, shelf: Shelf, desk: Desk) -> Logo | Complaint | None:
    """Return a logo, a Complaint, or None where findings at the desk say what is wrong."""
    path, content = shelf.path_of(file), shelf.content(file, _MOST_READ)
    if isinstance(path, Complaint):
        return path
    if isinstance(content, Complaint):
        return content
    if len(content) > MOST_BYTES:
        message = f"{quoted(file)} has more than {MOST_BYTES // 1000} kB"
        return Complaint(message, "Draw it in fewer points, or save it smaller.")
    if path.suffix.lower() == ".png" and what_it_is(content) == "a PNG picture":
        pixels = read_picture(content, file)
        if isinstance(pixels, Complaint):
            return pixels
        return _sized(Logo(file=file, width=pixels.width, height=pixels.height, pixels=pixels))
    if path.suffix.lower() != ".svg":
        advice = "Save it as plain SVG or as PNG, with that ending."
        return Complaint(f"{quoted(file)} is no SVG and no PNG picture", advice)
    root, findings = read_tree(path, shelf.shown(file))
    if root is not None:
        findings = (*findings, *_unsafe(root, file))
    desk.findings += findings
    if root is None or findings:
        return None
    return _drawn(root, content, file)


def _drawn(root: SvgNode, content: bytes, file: str) -> Logo | Complaint:
    """Return a drawn logo with its size: of its view box, or else its width and height."""
    try:
        box = view_box(root.get("viewBox"))
        width = box.width if box else length(root.get("width") or "", None)
        height = box.height if box else length(root.get("height") or "", None)
    except SvgError:
        width = height = 0.0
    if not (width > 0 and height > 0):
        return Complaint(f"{quoted(file)} states no size", "Give its `svg` a `viewBox`.")
    return _sized(Logo(file=file, width=width, height=height, svg=content))


def _sized(logo: Logo) -> Logo | Complaint:
    if 1 / _TALLEST <= logo.width / logo.height <= _WIDEST:
        return logo
    message = f"{quoted(logo.file)} is too {'wide' if logo.width > logo.height else 'tall'}"
    return Complaint(message, "Take one from 2/3 to 10 times as wide as it is high.")


def _unsafe(root: SvgNode, file: str) -> Iterator[Finding]:
    """Yield a finding for each element that runs, or fetches from elsewhere."""
    waiting = [root]
    while waiting:
        node = waiting.pop()
        waiting += reversed(node.children)
        for what in _faults_of(node):
            yield error("logo", f"{quoted(file)} holds {what}", node.place, _PLAIN)


def _faults_of(node: SvgNode) -> Iterator[str]:
    if node.tag in _RUNS or node.tag.startswith("animate"):
        yield f"`{node.tag}`"
    handlers = sorted(name for name in node.attributes if name.lower().startswith("on"))
    yield from (f"the handler `{name}`" for name in handlers)
    if node.reference and not node.reference.startswith(_HELD):
        yield "what lies elsewhere"
    styles = [node.text, *(value for name, value in node.attributes.items() if " " not in name)]
    if any(_FETCHES.search(each) for each in styles):
        yield "a style that fetches"
