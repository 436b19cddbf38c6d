"""The script of pages of documents: units, paths, drawings that open large."""

from __future__ import annotations

from markupsafe import Markup

from kerfolio.basis.reader import Reader
from kerfolio.pages.script_words import told_script

PAGE_SCRIPT = "assets/document.js"
"""Where the site keeps the script."""


def page_script(reader: Reader) -> Markup:
    """Return the script; a page is complete without it."""
    return told_script(reader, ("document.js",), ("drawscript",))
