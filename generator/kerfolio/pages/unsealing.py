"""Opening a sealed bundle on its plan's page."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from kerfolio.basis.reader import Reader
from kerfolio.edition.edition import Edition
from kerfolio.pages.script_words import told_script
from kerfolio.pages.site import Download

UNSEAL_SCRIPT = "assets/unseal.js"
"""Where the site keeps the script."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsealing:
    """The script that opens the bundle, and where the site has it."""

    script: Markup
    file: str = UNSEAL_SCRIPT


def unsealing_of(edition: Edition, download: Download) -> Unsealing | None:
    """Return what opens a plan's bundle on its page, None where it is not sealed there."""
    if edition.plan.is_open or not download.href:
        return None
    return Unsealing(script=unseal_script(edition.reader))


def unseal_script(reader: Reader) -> Markup:
    """Return the script; without it a reader opens the bundle with the program."""
    return told_script(reader, ("unseal.js", "unseal-page.js"), ("unsealscript",))
