"""What stands around every page: its head, the menu, the way back to the site's root."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text
from kerfolio.model.plan import Plan
from kerfolio.model.workshop import Identity
from kerfolio.pages.asset import asset
from kerfolio.pages.badge import Badge, held_badge, site_badge
from kerfolio.pages.crumbs import crumbs
from kerfolio.pages.links import contact_href
from kerfolio.pages.look import theme_colours
from kerfolio.pages.policy import SITE_POLICY, lone_policy
from kerfolio.pages.site import STYLESHEET, Site
from kerfolio.pages.theme import inline_style, stylesheet, theme_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A line of the menu."""

    label: str
    href: str
    here: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The frame of one page.

    ``root`` leads from the page to the site's root (``../../``); ``canonical`` and ``image`` are
    absolute or empty; ``style`` is set for a page that must stand alone, else ``stylesheet``;
    ``policy`` says what the page may load, ``crumbs`` where it stands in the site.
    ``grounds`` are those of light and dark screens, ``badge`` what stands for the workshop and
    ``touch_icon`` the picture of it on a phone's first screen, or empty.
    ``script_file`` leads to the page's own script, ``script`` is that of a page that must stand
    alone; either is empty where it has none.
    ``release`` names the plan's release, so that it stands on every print of its pages; ``stock``
    leads to the page of the library, or is empty.
    """

    reader: Reader
    title: str
    description: str
    grounds: tuple[str, str]
    badge: Badge
    root: str
    house: str
    home: str
    menu: tuple[Entry, ...] = ()
    canonical: str = ""
    touch_icon: str = ""
    crumbs: str = ""
    image: str = ""
    kind: str = "website"
    stylesheet: str = ""
    feed: str = ""
    stock: str = ""
    style: str = ""
    policy: str = SITE_POLICY
    maker: str = ""
    contact: str = ""
    private: bool = False
    release: str = ""
    script_file: str = ""
    script: str = ""


def site_frame(
    site: Site,
    path: str,
    title: str,
    description: str,
    image: str = "",
    kind: str = "website",
    above: Sequence[tuple[str, str]] = (),
) -> Frame:
    """Return the frame of the page at ``path``, a folder (``plans/x/``) or empty for home.

    ``above`` are titles and paths of the pages between home and this one.
    """
    root = "../" * path.count("/")
    house = site.identity.title
    return Frame(
        reader=site.identity.reader,
        title=title if title == house else f"{title} · {house}",
        description=description,
        grounds=theme_colours(site.identity.look),
        badge=site_badge(site.identity, root),
        touch_icon=f"{root}{site.touch_icon}" if site.touch_icon else "",
        root=root,
        house=house,
        home=f"{root}index.html",
        menu=_menu(site, path, root),
        canonical=site.address(path),
        image=site.address(image) if image else "",
        kind=kind,
        crumbs=crumbs(site, (*above, (title, path)) if path else ()),
        stylesheet=f"{root}{asset(STYLESHEET, stylesheet(site.identity.look))}",
        feed=f"{root}feed.xml",
        stock=f"{root}stock/index.html" if site.has_stock else "",
        maker=site.identity.maker,
        contact=contact_href(site.identity.contact),
    )


def with_script(frame: Frame, file: str, script: str) -> Frame:
    """Return the frame of a page of a site with its own script, kept as ``file``."""
    return replace(frame, script_file=f"{frame.root}{asset(file, script)}")


def lone_frame(
    identity: Identity,
    title: str,
    description: str,
    *,
    private: bool = False,
    scripts: Sequence[str] = (),
    styles: Sequence[str] = (),
) -> Frame:
    """Return the frame of a page of one file, which opens from a disk and links to no site.

    It may run just the ``scripts``, which must stand in it to the letter; ``styles`` are sheets of
    the theme that it has besides those of all pages.
    """
    style = inline_style(identity.look) + Markup("".join(map(theme_text, styles)))
    return Frame(
        reader=identity.reader,
        title=title,
        description=description,
        grounds=theme_colours(identity.look),
        badge=held_badge(identity),
        root="",
        house=identity.title,
        home="",
        style=style,
        policy=lone_policy(style, *scripts),
        maker=identity.maker,
        contact=contact_href(identity.contact),
        private=private,
    )


def release_line(plan: Plan, reader: Reader) -> str:
    """Return ``Harbour stool 1.2.0, 2 October 2026``."""
    return f"{plan.title} {plan.version}, {day_text(reader, plan.released)}"


def _menu(site: Site, path: str, root: str) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            label=each.label,
            href=f"{root}{each.path}index.html",
            here=path.startswith(each.path),
        )
        for each in site.menu
    )
