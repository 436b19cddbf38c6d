"""Which file a figure of the stock came from, for remarks that rest on it."""

from __future__ import annotations

from kerfolio.model.stock import StockItem


def named_with_file(item: StockItem, field: str) -> str:
    """Return `` `birch-plywood-18` (content/sheets.yaml)``: the file that gives the field's value.

    A maker's stock outranks the library field by field, so that the file may differ by field.
    """
    file = item.came_from(field).file
    return f"`{item.name}` ({file})" if file else f"`{item.name}`"


def is_library(item: StockItem, field: str) -> bool:
    """Tell whether the shipped library gives a field's value, and no maker's stock."""
    return item.came_from(field).file.startswith("content/")
