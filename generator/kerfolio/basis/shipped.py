"""Finds the data shipped with the program: the stock library, the theme, the words for readers."""

from __future__ import annotations

from pathlib import Path

SHIPPED = ("content", "themes", "words")
"""The folders of data that belong to the program."""

_PACKAGE = Path(__file__).resolve().parent.parent


def shipped(folder: str) -> Path:
    """Return one of these folders, of an installed wheel or a checkout.

    Raises FileNotFoundError when the installation carries neither.
    """
    for root in (_PACKAGE / "_shipped", _PACKAGE.parent.parent):
        if (root / folder).is_dir():
            return root / folder
    raise FileNotFoundError(f"shipped folder {folder!r} is missing from this installation")
