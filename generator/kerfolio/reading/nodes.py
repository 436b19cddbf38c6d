"""What a YAML file says, as plain records with places; no value is interpreted yet."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.complaint import quoted
from kerfolio.basis.place import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """A line that YAML has joined to the one above it; ``what`` was to begin there: ``a list``."""

    what: str
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Scalar:
    """A text as it stands in the file; ``style`` is ``"``, ``'``, ``|``, ``>`` or empty.

    ``indent`` is how many blanks the lines of a ``|`` have in the file besides. ``folded`` is the
    first line of any other text that was to begin a list or the like, where YAML has joined it to
    the line above.
    """

    text: str
    style: str = ""
    indent: int = 0
    folded: Folded | None = None
    place: Place

    @property
    def empty(self) -> bool:
        """True where a key stands without a value."""
        return not self.text and not self.style


@dataclass(frozen=True, slots=True, kw_only=True)
class Sequence:
    """A list; ``flow`` when written in brackets."""

    items: tuple[Node, ...]
    flow: bool = False
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A key with its value."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True, kw_only=True)
class Mapping:
    """Keys with values, each key once; ``flow`` when written in braces."""

    entries: tuple[Entry, ...]
    flow: bool = False
    place: Place

    def get(self, key: str) -> Node | None:
        """Return the value of a key, or None."""
        return next((each.value for each in self.entries if each.key.text == key), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Broken:
    """Something refused while the file was taken apart; a finding tells of it already."""

    place: Place


Node = Scalar | Sequence | Mapping | Broken


def found(node: Node) -> str:
    """Return what a node is, in words for a message."""
    if isinstance(node, Sequence):
        return "a list"
    if isinstance(node, Mapping):
        return "keys and values"
    if isinstance(node, Broken) or not node.text.strip():
        return "nothing"
    return quoted(node.text)
