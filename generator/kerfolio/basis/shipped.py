"""Finds the data shipped with the program: the stock library, the theme, the words for readers."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def shipped(folder: str) -> Path:
    """Return the folder ``content``, ``themes`` or ``words`` of an installed wheel or a checkout.

    Raises FileNotFoundError when the installation carries neither.
    """
    for root in (_PACKAGE / "_shipped", _PACKAGE.parent.parent):
        if (root / folder).is_dir():
            return root / folder
    raise FileNotFoundError(f"shipped folder {folder!r} is missing from this installation")
