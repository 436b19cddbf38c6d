"""Who may load a plan's bundle."""

from __future__ import annotations

OPEN, SUPPORTERS = "open", "supporters"
"""Everybody, or those whom the maker hands it to."""
