"""Parts of which some things cannot be read: the rest of them, for a look."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.budgets import PARTS as PARTS_TAKEN
from kerfolio.basis.names import NAME
from kerfolio.model.feature_kind import FEATURE_KINDS
from kerfolio.model.part import LeftOut, Part
from kerfolio.model.statement import Spot
from kerfolio.reading.amounts import SPOTS
from kerfolio.reading.desk import Desk
from kerfolio.reading.edges import SIDES
from kerfolio.reading.feature import FEATURES
from kerfolio.reading.feature_kinds import EDGE_KEY
from kerfolio.reading.nodes import Entry, Mapping, Node, Scalar
from kerfolio.reading.part import PART, piece_labels
from kerfolio.reading.record import Entries
from kerfolio.reading.values import name_fault

_FEATURES = "features"
_KINDS = {word for each in FEATURE_KINDS for word in (each.key, each.by_mate)}


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsForm(Entries[Part]):
    """Parts by name; of those that cannot be read whole the rest is kept at the desk."""

    def _entry(self, entry: Entry, desk: Desk) -> Part | None:
        aside = desk.aside()
        part = Entries._entry(self, entry, desk)
        if part is None:
            rest = _rest(entry, aside)
            desk.incomplete += [rest] if rest is not None else []
        return part


def _rest(entry: Entry, desk: Desk) -> Part | None:
    """Return what of a part can be read; None where its sheet or its outline cannot.

    What is found here was told at another desk.
    """
    if not isinstance(entry.value, Mapping):
        return None
    forms = {key.name: key.form for key in PART.keys}
    kept, lost = list[Entry](), list[LeftOut]()
    for each in entry.value.entries:
        if each.key.text == _FEATURES and isinstance(each.value, Mapping):
            sound = [one for one in each.value.entries if _reads(one, desk)]
            lost += [_left_out(one, desk) for one in each.value.entries if one not in sound]
            kept.append(replace(each, value=replace(each.value, entries=tuple(sound))))
        elif each.key.text in forms and forms[each.key.text].read(each.value, desk) is not None:
            kept.append(each)
    read = PART.read_named(
        entry.key.text, entry.key.place, replace(entry.value, entries=tuple(kept)), desk
    )
    return None if read is None else replace(read, left_out=tuple(lost))


def _reads(entry: Entry, desk: Desk) -> bool:
    alone = Mapping(entries=(entry,), place=entry.key.place)
    return FEATURES.read(alone, desk) is not None


def _left_out(entry: Entry, desk: Desk) -> LeftOut:
    """Return a feature that cannot be read with what is known of where it is."""
    stated = next(_cuttings(entry.value), None)
    at, edge = (stated.get("at"), stated.get(EDGE_KEY.name)) if stated else (None, None)
    side = edge.text if isinstance(edge, Scalar) and edge.text in SIDES else ""
    spots: tuple[Spot, ...] = ()
    if at is not None and not side:
        spots = SPOTS.read(at, desk) or ()
    return LeftOut(name=entry.key.text, spots=spots, side=side)


def _cuttings(node: Node) -> Iterator[Mapping]:
    for each in node.entries if isinstance(node, Mapping) else ():
        if isinstance(each.value, Mapping) and each.key.text in _KINDS:
            yield each.value


PARTS = PartsForm(
    record=PART,
    budget=PARTS_TAKEN,
    noun="parts by name",
    advice="Write `side: {sheet: ply, outline: {...}}`, a part each.",
    fault=name_fault,
    pattern=NAME.pattern,
    spoils=piece_labels,
)
