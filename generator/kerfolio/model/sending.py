"""Where a site goes live, as the maker states it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Sending:
    """The folder to send ``to``, or a host's as ``[USER@]HOST:FOLDER``; empty where unsaid.

    ``port`` is that of the host's SSH, 0 for the usual one.
    """

    to: str = ""
    port: int = 0
