"""A safe reading of SVG markup into plain nodes with their places; nothing is ever fetched."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from xml.parsers import expat

from kerfolio.basis.budgets import DRAWING_BYTES, NESTING, NODES
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text

SVG_SPACE = "http://www.w3.org/2000/svg"


_WORDY = {"title", "style", "text", "tspan", "textPath"}


@dataclass(slots=True)
class SvgNode:
    """An element: local name (empty in a foreign namespace), attributes, children, place.

    Attributes of other namespaces keep theirs before a blank: ``http://... label``.
    """

    tag: str
    attributes: dict[str, str]
    place: Place
    children: list[SvgNode] = field(default_factory=list)
    text: str = ""

    def get(self, name: str) -> str | None:
        """Return an attribute's value, blanks trimmed; None when it is missing."""
        value = self.attributes.get(name)
        return None if value is None else value.strip()

    @property
    def style(self) -> dict[str, str]:
        """The declarations of the ``style`` attribute."""
        pairs = (part.partition(":") for part in (self.get("style") or "").split(";"))
        return {name.strip().lower(): value.strip() for name, _, value in pairs if value}

    @property
    def reference(self) -> str:
        """The value of ``href``, in SVG 2 or in the older form; empty when there is none."""
        old = self.attributes.get("http://www.w3.org/1999/xlink href", "")
        return (self.get("href") or old).strip()

    @property
    def title(self) -> str:
        """The text of the element's own ``title``."""
        found = (" ".join(c.text.split()) for c in self.children if c.tag == "title")
        return next(found, "")


class _RefusedError(Exception):
    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def read_tree(path: Path, file: str) -> tuple[SvgNode | None, tuple[Finding, ...]]:
    """Return the root node of an SVG file, or None with the finding that says why not."""
    whole = Place(file)
    try:
        large = DRAWING_BYTES.fault(path.stat().st_size)
        if large is not None:
            return None, (error("drawing-too-large", str(large), whole, large.advice),)
        data = path.read_bytes()
    except FileNotFoundError:
        return None, (error("missing-file", f"no drawing `{file}`", whole, "Check its name."),)
    except OSError as problem:
        message, advice = f"cannot be read: {problem.strerror}", "See that you may open the file."
        return None, (error("unreadable-drawing", message, whole, advice),)
    builder = _Builder(file)
    try:
        return builder.built(data), ()
    except _RefusedError as refused:
        return None, (refused.finding,)


class _Builder:
    """Builds nodes from the parser's events, within bounds."""

    def __init__(self, file: str) -> None:
        self._file = file
        self._stack: list[SvgNode] = []
        self._count = 0
        self._root: SvgNode | None = None
        self._parser = expat.ParserCreate(namespace_separator=" ")
        self._parser.buffer_text = True
        self._parser.StartElementHandler = self._start
        self._parser.EndElementHandler = self._end
        self._parser.CharacterDataHandler = self._characters
        self._parser.StartDoctypeDeclHandler = self._doctype
        self._parser.EntityDeclHandler = self._entity

    def built(self, data: bytes) -> SvgNode:
        try:
            self._parser.Parse(data, True)
        except expat.ExpatError as problem:
            place = Place(self._file, problem.lineno, problem.offset + 1)
            why = expat.errors.messages[problem.code]
            advice = "Save it anew from the drawing program, as plain SVG."
            finding = error("unreadable-drawing", f"not sound XML: {why}", place, advice)
            raise _RefusedError(finding) from None
        except (LookupError, ValueError):
            place = Place(self._file)
            message = "unknown text encoding"
            finding = error("unreadable-drawing", message, place, "Save it as UTF-8.")
            raise _RefusedError(finding) from None
        if self._root is None or self._root.tag != "svg":
            advice = "Save it as plain SVG; its first element is `svg`."
            place = self._root.place if self._root else Place(self._file)
            raise _RefusedError(error("unreadable-drawing", "not an SVG drawing", place, advice))
        return self._root

    def _place(self) -> Place:
        line, column = self._parser.CurrentLineNumber, self._parser.CurrentColumnNumber
        return Place(self._file, line, column + 1)

    def _refuse(self, rule: str, message: str, advice: Text) -> None:
        raise _RefusedError(error(rule, message, self._place(), advice))

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        self._count += 1
        for fault in (NODES.beyond(self._count), NESTING.beyond(len(self._stack))):
            if fault is not None:
                self._refuse("drawing-too-large", str(fault), fault.advice)
        space, _, local = name.rpartition(" ")
        node = SvgNode(local if space in (SVG_SPACE, "") else "", attributes, self._place())
        if self._stack:
            self._stack[-1].children.append(node)
        else:
            self._root = node
        self._stack.append(node)

    def _end(self, _name: str) -> None:
        self._stack.pop()

    def _characters(self, text: str) -> None:
        if self._stack and self._stack[-1].tag in _WORDY:
            self._stack[-1].text += text

    def _doctype(self, _name: str, _system: str | None, _public: str | None, subset: bool) -> None:
        # A plain document type names a file that is never fetched; only declarations are unsafe.
        if subset:
            advice = "Save it as plain SVG, without declarations in its head."
            self._refuse("unsafe-drawing", "document type with declarations", advice)

    def _entity(self, name: str, *_rest: object) -> None:
        advice = "Save it as plain SVG, without declarations in its head."
        self._refuse("unsafe-drawing", f"entity `{name}` is declared", advice)
