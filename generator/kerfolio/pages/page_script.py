"""The script of pages of documents: units, paths, drawings that open large."""

from __future__ import annotations

from markupsafe import Markup

from kerfolio.pages.theme import theme_text

PAGE_SCRIPT = "assets/document.js"
"""Where the site keeps the script."""


def page_script() -> Markup:
    """Return the script; a page is complete without it."""
    return Markup(theme_text("document.js"))
