"""The forms of ``stock/*.yaml``, and the shipped library overlaid by the maker's own entries."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, TypeVar

from kerfolio.basis.complaint import Complaint
from kerfolio.model.stock import Origin, Stock
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema
from kerfolio.reading.nodes import Mapping, Node
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.stock_section import SECTIONS
from kerfolio.reading.values import name_fault

T = TypeVar("T")
Kept = dict[str, dict[str, Fields]]
"""Read values by section and name, before records are made of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionForm(Form[dict[str, Fields]]):
    """Entries of one kind by name, each perhaps only in part: it may overlay another."""

    record: Record[Any]
    noun: str
    advice: str = "Write `name: {...}`, an entry each."

    def read(self, node: Node, desk: Desk) -> dict[str, Fields] | None:
        """Return the values of each entry."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        kept = {}
        for entry in node.entries:
            name, place = entry.key.text, entry.key.place
            fault = name_fault(name)
            if fault is not None:
                desk.complain("name", fault, place)
            fields = self.record.fields(name, place, entry.value, desk, partial=True)
            if fields is not None and fault is None:
                kept[name] = _with_origins(fields, self.record, desk)
        return kept

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping from name to a partial entry."""
        entry = self.record.open_schema(book, partial=True)
        return {"type": "object", "additionalProperties": entry}


def _with_origins(fields: Fields, record: Record[Any], desk: Desk) -> Fields:
    """Return the fields with the origin of each, in place of the sources stated key by key."""
    values = dict(fields.values)
    sources: dict[str, str] = dict(values.pop("sources", ()))
    known = {word for key in record.keys for word in _source_words(key)}
    for word in sorted(sources.keys() - known):
        message = f"no key that begins with `{word}`"
        advice = "Write the key that the source is of, or its first word."
        desk.refuse("unknown-key", message, fields.places["sources"], advice)
    origins = {}
    for key in record.keys:
        if key.fills in values and key.name != "source":
            source = next((sources[w] for w in _source_words(key) if w in sources), None)
            source = values.get("source", "") if source is None else source
            place = fields.places[key.name]
            origins[key.fills] = Origin(field=key.fills, place=place, source=source)
    return replace(fields, values={**values, "origins": origins})


def _source_words(key: Key) -> tuple[str, ...]:
    """Return the words under which a key's source may be stated: the key, or its first word."""
    return key.name, key.name.split("-")[0]


def _make_sections(**sections: dict[str, Fields]) -> Kept:
    return sections


def _words(section: str) -> str:
    return section.replace("-", " ")


STOCK: Record[Kept] = Record(
    name="stock",
    noun="a stock file",
    keys=tuple(
        Key(
            name=section,
            field=section,
            form=SectionForm(record=record, noun=f"{_words(section)} by name"),
            says=f"The workshop's {_words(section)}, by name.",
        )
        for section, record in SECTIONS.items()
    ),
    make=_make_sections,
    advice="Begin with `sheets:`, `boards:`, `cutters:`, `hardware:` or `papers:`.",
    placed=False,
    lenient=True,
)


def overlay(lower: Kept, upper: Kept) -> Kept:
    """Return the lower entries with the upper ones laid over them, field by field."""
    merged: Kept = {section: dict(lower.get(section, {})) for section in SECTIONS}
    for section, entries in upper.items():
        for name, fields in entries.items():
            below = merged[section].get(name)
            merged[section][name] = fields if below is None else _laid_over(below, fields)
    return merged


def _laid_over(below: Fields, above: Fields) -> Fields:
    origins = {**below.values["origins"], **above.values["origins"]}
    return Fields(
        values={**below.values, **above.values, "origins": origins},
        places={**below.places, **above.places},
        place=above.place,
        name=above.name,
        sound=below.sound and above.sound,
    )


def make_stock(library: Kept, own: Kept, desk: Desk) -> Stock:
    """Return records of the library with the maker's own entries laid over it.

    An entry that cannot be read falls back to the library's; the names of those the library does
    not have are kept at the desk.
    """
    merged = overlay(library, own)
    made: dict[str, tuple[Any, ...]] = {}
    for section, record in SECTIONS.items():
        records = []
        for name in sorted(merged[section]):
            below = library.get(section, {}).get(name)
            made_record = _made(record, merged[section][name], desk)
            if made_record is None and below is not None:
                made_record = _made(record, below, Desk())
            if made_record is None:
                desk.unread.add(name)
            else:
                records.append(made_record)
        made[section.replace("-", "_")] = tuple(records)
    return Stock(**made)


def _made(record: Record[T], fields: Fields, desk: Desk) -> T | None:
    missing = [k for k in record.keys if k.required and k.fills not in fields.values]
    for key in missing if fields.sound else ():
        message = f"`{key.name}` is missing"
        desk.refuse("missing-key", message, fields.place, key.missing_advice)
    if missing:
        return None
    origins = tuple(sorted(fields.values["origins"].values(), key=lambda each: each.field))
    return record.finish(replace(fields, values={**fields.values, "origins": origins}), desk)


def doubled(kept: Kept, other: Kept) -> list[tuple[Fields, Complaint]]:
    """Return the entries of ``other`` whose names the maker's files before it state already."""
    found = []
    for section, entries in other.items():
        for name, fields in entries.items():
            first = kept.get(section, {}).get(name)
            if first is not None:
                advice = f"It stands in {first.place.file} already; keep one of the two."
                found.append((fields, Complaint(f"`{name}` is stated twice", advice)))
    return found
