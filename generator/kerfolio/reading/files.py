"""Forms of files that a text refers to: pictures, drawings and prose; each is taken at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, note
from kerfolio.basis.pixels import Pixels
from kerfolio.model.outline import Drawing
from kerfolio.model.plan import Photo
from kerfolio.model.prose import Prose, sentences
from kerfolio.reading.desk import Desk
from kerfolio.reading.drawn_svg import read_svg
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Node, Scalar
from kerfolio.reading.picture import MOST_PICTURE_BYTES, kind_fault, read_picture
from kerfolio.reading.prose import read_prose
from kerfolio.reading.record import Key, Record
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.values import FLAG, TEXT
from kerfolio.reading.yaml_text import MOST_BYTES, decode


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureFile(Form[str]):
    """The path of a picture, which is decoded at once; what it shows is kept at the desk.

    A picture that is missing is a finding, but the path is kept: what shows it stays readable.
    """

    noun: str = "a picture file"
    advice: str = "Write a path such as `photos/rail.jpg`."

    def read(self, node: Node, desk: Desk) -> str | None:
        """Return the path as written."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        file = node.text.strip()
        if desk.shelf is None:
            return file
        if file not in desk.pictures:
            desk.pictures[file] = _picture(file, desk.shelf)
        taken = desk.pictures[file]
        if isinstance(taken, Complaint):
            desk.complain("picture", taken, node.place)
        elif taken is not None and taken.frames > 1:
            message = f"{quoted(file)} moves: the first of its {taken.frames} pictures is shown"
            advice = "Save the one you mean by itself; a film goes under `video`."
            desk.findings.append(note("moving-picture", message, node.place, advice))
        return file

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a path."""
        return {"type": "string", "pattern": r"\.(jpe?g|png|webp|JPE?G|PNG|WEBP)$"}


def _picture(file: str, shelf: Shelf) -> Pixels | Complaint | None:
    """Return what a picture shows; None where it may well do so and nobody asks."""
    content = shelf.content(file, MOST_PICTURE_BYTES)
    if isinstance(content, Complaint):
        return content
    return read_picture(content, file) if shelf.decodes else kind_fault(content, file)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingFile(Form[str]):
    """The path of an SVG or DXF drawing; what it holds is kept at the desk.

    ``art`` is for engravings, which may have open and crossing paths.
    """

    art: bool = False
    noun: str = "a drawing file"
    advice: str = "Write a path such as `drawings/shelf.svg`."

    def read(self, node: Node, desk: Desk) -> str | None:
        """Return the path as written, or None when the drawing cannot be read."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        file = node.text.strip()
        if desk.shelf is None or file in desk.drawings:
            return file
        path = desk.shelf.path_of(file)
        if isinstance(path, Complaint):
            desk.complain("drawing", path, node.place)
            return None
        return self._taken(file, path, node, desk)

    def _taken(self, file: str, path: Path, node: Scalar, desk: Desk) -> str | None:
        read = _reader(path.suffix.lower())
        if read is None:
            advice = "Save the drawing as plain SVG or as DXF."
            desk.refuse("drawing", f"{quoted(file)} is no SVG or DXF", node.place, advice)
            return None
        shown = desk.shelf.shown(file) if desk.shelf else file
        art = self.art and not desk.is_cut_from(file)
        drawing, findings = read(path, shown, art=art, asked=desk.said_of(file))
        desk.findings += findings
        if drawing is None:
            return None
        desk.drawings[file] = replace(drawing, file=file)
        return file

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a path."""
        return {"type": "string", "pattern": r"\.(svg|dxf|SVG|DXF)$"}


def _reader(ending: str) -> Callable[..., tuple[Drawing | None, tuple[Finding, ...]]] | None:
    if ending == ".svg":
        return read_svg
    if ending == ".dxf":
        from kerfolio.reading.drawn_dxf import read_dxf  # its library takes long to load

        return read_dxf
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProseFile(Form[Prose]):
    """The path of a Markdown file, read in its place."""

    noun: str = "a text file"
    advice: str = "Write a path such as `steps/01.md`."

    def read(self, node: Node, desk: Desk) -> Prose | None:
        """Return the file's prose."""
        if not isinstance(node, Scalar) or not node.text.strip():
            self.refuse(node, desk)
            return None
        file = node.text.strip()
        if desk.shelf is None:
            return Prose(place=node.place)
        content = desk.shelf.content(file, MOST_BYTES)
        if isinstance(content, Complaint):
            desk.complain("text-file", content, node.place)
            return _unread_text(node)
        shown = desk.shelf.shown(file)
        text, faults = decode(content, shown)
        prose, findings = read_prose(text, shown)
        desk.findings += (*faults, *findings)
        return prose if prose or not faults else _unread_text(node)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a path."""
        return {"type": "string", "pattern": r"\.md$"}


def _unread_text(node: Scalar) -> Prose:
    """Stand in for a text that is stated but cannot be read, so that it is not told as missing."""
    return sentences(node.text, node.place)


_ALT = "Add `alt:` with a sentence that says what the picture shows."
PHOTO: Record[Photo] = Record(
    name="photo",
    noun="a photo",
    keys=(
        Key(name="file", form=PictureFile(), says="JPEG, PNG or WebP file.", required=True),
        Key(
            name="alt",
            form=TEXT,
            says="What the picture shows, for people who cannot see it.",
            required=True,
            missing=_ALT,
        ),
        Key(name="cover", form=FLAG, says="Show it first."),
        Key(name="made", form=TEXT, says="How it came about when it is no photograph: `drawing`."),
    ),
    make=Photo,
    advice="Write `{file: photos/rail.jpg, alt: The rail half way into its slot}`.",
)
