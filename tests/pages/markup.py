"""Reads a page as a browser's tree would show it, strictly: what is open must be closed."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = frozenset({"meta", "link", "img", "br", "hr", "input", "source", "wbr"})
"""Elements without an end tag (HTML standard, section "Elements")."""

BLOCKS = frozenset(
    (
        *("address", "blockquote", "br", "caption", "dd", "div", "dl", "dt", "figcaption"),
        *("figure", "h1", "h2", "h3", "h4", "li", "ol", "p", "section", "small", "table"),
        *("td", "th", "tr", "ul"),
    )
)
"""Elements that the theme sets on lines or in cells of their own."""


@dataclass
class Element:
    """An element with its attributes, its text and what is inside it."""

    tag: str
    attributes: dict[str, str]
    text: str = ""
    children: list[Element] = field(default_factory=list)


class Tree(HTMLParser):
    """Parses a page; ``faults`` lists end tags that do not match and doubled attributes."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[Element] = []
        self.faults: list[str] = []
        self._open: list[Element] = []
        self.feed(page)
        self.close()
        self.faults += [f"<{each.tag}> is never closed" for each in self._open]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._part(tag)
        names = [name for name, _ in attrs]
        if len(set(names)) != len(names):
            self.faults.append(f"<{tag}> states an attribute twice")
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.elements.append(element)
        if self._open:
            self._open[-1].children.append(element)
        if tag not in VOID:
            self._open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self._open.pop()

    def handle_endtag(self, tag: str) -> None:
        self._part(tag)
        if not self._open or self._open[-1].tag != tag:
            self.faults.append(f"</{tag}> closes {self._open[-1].tag if self._open else 'nothing'}")
            return
        self._open.pop()

    def _part(self, tag: str) -> None:
        """Part the words of one block from those of the next, as a reader sees them."""
        if tag in BLOCKS:
            self.handle_data(" ")

    def handle_data(self, data: str) -> None:
        for element in self._open:
            element.text += data

    def all(self, *tags: str) -> list[Element]:
        """Return the elements of these tags, in order."""
        return [element for element in self.elements if element.tag in tags]

    def values(self, attribute: str) -> list[str]:
        """Return every value of an attribute, in order."""
        return [e.attributes[attribute] for e in self.elements if attribute in e.attributes]

    def text_of(self, tag: str) -> str:
        """Return all text inside the first element of a tag."""
        return self.all(tag)[0].text
