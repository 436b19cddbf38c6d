"""What is stated of an entry of the log before it is written: texts, lists and keys with values."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

ENTRIES_FORMAT = "kerfolio-entries/1"
"""What a file of entries says that comes from a page; docs/the-log.md tells what stands in it."""

Value: TypeAlias = "str | tuple[Value, ...] | Mapping[str, Value]"
"""A text as a maker writes it, a list of values, or values by key."""

Stated: TypeAlias = Mapping[str, Value]
"""An entry of the log as it is to be written: its keys, in their order, with their values."""
