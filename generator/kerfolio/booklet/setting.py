"""Sets files with typst: what was measured, and the PDF. The only user of typst."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import typst

from kerfolio.basis.keeper import kept
from kerfolio.booklet.faces import faces

# The stub knows no dict of files, which the library takes (its first file is ``main.typ``).


BLANK = "blank.svg"
"""The name of a picture of nothing, for drafts."""
_NOTHING = b'<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>'


def measured(files: Mapping[str, bytes]) -> dict[str, Any]:
    """Return what the template tells under ``measured`` once it is set.

    It is at hand in the same process when it is printed after that, and is not set again.
    """
    found: dict[str, Any] = json.loads(kept(_measured, files))[0]
    return found


def printed(files: Mapping[str, bytes]) -> bytes:
    """Return the PDF after PDF/UA-1."""
    return kept(_printed, files)


def _measured(files: Mapping[str, bytes]) -> str:
    return typst.query({**files, BLANK: _NOTHING}, "<measured>", field="value", font_paths=faces())  # type: ignore[type-var]


def _printed(files: Mapping[str, bytes]) -> bytes:
    pdf: bytes = typst.compile(  # type: ignore[call-overload]
        {**files, BLANK: _NOTHING}, font_paths=faces(), format="pdf", pdf_standards="ua-1"
    )
    return pdf


def forget() -> None:
    """Let go of what was set so far, a few hundred megabytes for a booklet.

    The library holds what it worked out until so many further documents have not asked for it.
    """
    for _ in range(_HELD):
        typst.compile({"main.typ": b""}, font_paths=faces(), format="pdf")  # type: ignore[call-overload]


_HELD = 11  # typst 0.15 holds it for ten documents
