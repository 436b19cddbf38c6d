"""What a page needs to show a plan in 3-D: its model as data, and the script that draws it.

A page of the site takes the script from a file, a page of one file has it in its frame.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.basis.reader import Reader
from kerfolio.pages.script_data import script_data
from kerfolio.pages.script_words import told_script

VIEWER_SCRIPT = "assets/viewer.js"
"""Where the site keeps the script."""


def viewer_script(reader: Reader) -> Markup:
    """Return the script that draws the view."""
    return told_script(reader, ("viewer.js",), ("viewscript",))


@dataclass(frozen=True, slots=True, kw_only=True)
class Viewer:
    """The variable ``viewer`` of the template ``viewer.html``: it stands once on a page."""

    title: str
    data: Markup
    file: str = VIEWER_SCRIPT
    script: Markup


def viewer_of(title: str, data: str, reader: Reader) -> Viewer:
    """Return the viewer of a plan; ``data`` is the JSON text that ``viewer_data`` gives."""
    return Viewer(title=title, data=script_data(data), script=viewer_script(reader))
