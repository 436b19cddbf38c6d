"""The JSON Schema of every kind of file, written from the forms that read it."""

from __future__ import annotations

from typing import Any

from kerfolio.reading.forms import Book, Schema
from kerfolio.reading.identity import IDENTITY
from kerfolio.reading.plan import PLAN
from kerfolio.reading.record import Record
from kerfolio.reading.release_record import record_schema
from kerfolio.reading.stock import STOCK
from kerfolio.reading.trial import LOG

_FILES: dict[str, tuple[str, Record[Any]]] = {
    "workshop.schema.json": ("workshop.yaml: who publishes", IDENTITY),
    "plan.schema.json": ("plans/NAME/plan.yaml: a plan", PLAN),
    "stock.schema.json": ("stock/*.yaml: what can be bought", STOCK),
    "log.schema.json": ("log/*.yaml: trials and jobs", LOG),
}


_DRAFT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> dict[str, Schema]:
    """Return the schemas by file name (JSON Schema draft 2020-12)."""
    found = {name: _schema(title, record) for name, (title, record) in _FILES.items()}
    title = "plans/NAME/releases/VERSION.json: the record of a release"
    return {**found, "release.schema.json": {"$schema": _DRAFT, "title": title, **record_schema()}}


def _schema(title: str, record: Record[Any]) -> Schema:
    book: Book = {}
    root = record.open_schema(book)
    return {
        "$schema": _DRAFT,
        "title": title,
        **root,
        "$defs": {name: book[name] for name in sorted(book)},
    }
