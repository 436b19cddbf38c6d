"""JSON as the content of a script element, as it is or packed."""

from __future__ import annotations

from base64 import b64encode
from zlib import compress

from markupsafe import Markup

from kerfolio.pages.signs import cleaned


def script_data(text: str) -> Markup:
    """Return JSON text that no word in it can end: ``<``, ``>`` and ``&`` become escapes."""
    for sign in "<>&\u2028\u2029":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(cleaned(text))


def packed_data(text: str) -> Markup:
    """Return a long text deflated (ZLIB, RFC 1950), in base64 (RFC 4648): so pages stay light.

    A page's script unpacks it through the browser's own ``DecompressionStream``.
    """
    return Markup(b64encode(compress(text.encode(), 6)).decode()) if text else Markup()
