"""An entry of the log that does not come from a file of it: checked by the very same forms."""

from __future__ import annotations

from collections.abc import Mapping as MappingOf

from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.model.stated import Stated, Value
from kerfolio.model.trial import Sent, Trial
from kerfolio.reading.desk import Desk
from kerfolio.reading.log_names import LogNames
from kerfolio.reading.nodes import Entry, Mapping, Node, Scalar, Sequence
from kerfolio.reading.trial import ENTRIES


def read_entry(
    section: str, stated: Stated, names: LogNames, place: Place
) -> tuple[Trial | Sent | None, tuple[Finding, ...]]:
    """Return what a log would read of an entry of one of its sections, with all it would remark on.

    ``section`` is ``trials``, ``jobs`` or ``sent``. Findings stand at ``place``; pictures are not
    looked for.
    """
    desk = Desk(nominals=names.nominals)
    entry = ENTRIES[section].read(node_of(stated, place), desk)
    if entry is not None:
        names.check(entry, desk)
    return entry, tuple(desk.findings)


def node_of(value: Value, place: Place) -> Node:
    """Return a value as a file's reader would see it, all of it at one place."""
    if isinstance(value, str):
        return Scalar(text=value, style='"', place=place)
    if isinstance(value, MappingOf):
        entries = (
            Entry(key=Scalar(text=key, place=place), value=node_of(each, place))
            for key, each in value.items()
        )
        return Mapping(entries=tuple(entries), flow=True, place=place)
    return Sequence(items=tuple(node_of(each, place) for each in value), flow=True, place=place)


def value_of(node: Node) -> Value:
    """Return what a node says as plain values; what was refused is an empty text."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Mapping):
        return {each.key.text: value_of(each.value) for each in node.entries}
    if isinstance(node, Sequence):
        return tuple(map(value_of, node.items))
    return ""
