"""JSON as the content of a script element."""

from __future__ import annotations

from markupsafe import Markup

from kerfolio.pages.theme import cleaned


def script_data(text: str) -> Markup:
    """Return JSON text that no word in it can end: ``<``, ``>`` and ``&`` become escapes."""
    for sign in "<>&\u2028\u2029":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(cleaned(text))
