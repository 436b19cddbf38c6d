"""What stands for a workshop at the head of its pages and in a browser's tab: logo or mark."""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass, replace
from functools import cache

from markupsafe import Markup

from kerfolio.drawing.house_mark import house_mark
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Logo, Look
from kerfolio.model.workshop import Identity
from kerfolio.writing.photo import sized
from kerfolio.writing.svg import inline_svg

MARK_FILE = "assets/mark.svg"
"""Where a site keeps the drawn mark; a logo lies beside it, with the ending of its kind."""

TOUCH_ICON = "assets/touch-icon.png"

_LOGO_HEIGHT, _LOGO_PIXELS = 40, 800
"""CSS pixels at which a logo is shown, and how wide one of pixels is kept at most."""

_INKS = (Ink.ACCENT, Ink.INK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Badge:
    """``head`` is markup for the head of a page, ``icon`` the address of the tab's picture.

    ``named`` tells that the head says the workshop's name itself, as a logo does.
    """

    head: Markup
    icon: str
    named: bool = False


def site_badge(identity: Identity, root: str) -> Badge:
    """Return the badge of a page of the site, whose files lie below ``root``."""
    logo = identity.look.logo
    if logo is None:
        return Badge(head=_drawn(identity.title), icon=f"{root}{MARK_FILE}")
    address = f"{root}{logo_file(logo)}"
    return Badge(head=_shown(logo, address, identity.title), icon=address, named=True)


def held_badge(identity: Identity) -> Badge:
    """Return the badge of a page of one file, which holds it."""
    logo = identity.look.logo
    if logo is None:
        icon = _held(mark_svg(identity.title, identity.look).encode(), "svg+xml")
        return Badge(head=_drawn(identity.title), icon=icon)
    address = _held(logo_bytes(logo), "png" if logo.pixels else "svg+xml")
    return Badge(head=_shown(logo, address, identity.title), icon=address, named=True)


def mark_svg(name: str, look: Look) -> str:
    """Return the drawn mark as a file by itself, which follows the scheme of the screen."""
    found = palettes_of(look)
    svg = inline_svg(house_mark(name), found.light)
    rules = "".join(f".k-fill-{ink}{{fill:{found.dark[ink]}}}" for ink in _INKS)
    style = f"<style>@media (prefers-color-scheme:dark){{{rules}}}</style>"
    return svg.replace(">\n", f">\n{style}\n", 1)


def logo_file(logo: Logo) -> str:
    """Return where a site keeps a logo."""
    return f"assets/logo.{'png' if logo.pixels else 'svg'}"


@cache
def logo_bytes(logo: Logo) -> bytes:
    """Return a logo's file: as drawn, or its pixels without what was noted beside them."""
    return sized(logo.pixels, _LOGO_PIXELS, "png") if logo.pixels else logo.svg


@cache
def _drawn(name: str) -> Markup:
    """Return the mark as inline SVG in the page's own colours; the name stands beside it."""
    silent = replace(house_mark(name), title="")
    # The markup comes from our own SVG writer.
    return Markup(
        inline_svg(silent).replace("<svg ", '<svg class="house-mark" aria-hidden="true" ', 1)
    )


def _shown(logo: Logo, address: str, name: str) -> Markup:
    width = round(_LOGO_HEIGHT * logo.width / logo.height)
    return Markup('<img class="house-logo" src="{}" alt="{}" width="{}" height="{}">').format(
        address, name, width, _LOGO_HEIGHT
    )


def _held(content: bytes, kind: str) -> str:
    return f"data:image/{kind};base64,{b64encode(content).decode()}"
