"""Files that pages of a site share, called by what they hold."""

from __future__ import annotations

from hashlib import sha256

_SIGNS = 10


def asset(path: str, content: str) -> str:
    """Return the address of a shared file; it changes with what the file holds.

    So a browser that kept an older one asks anew, though the file keeps its name: pages that stand
    from an earlier publish still find it.
    """
    return f"{path}?{sha256(content.encode()).hexdigest()[:_SIGNS]}"
