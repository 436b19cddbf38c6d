"""What the pages of a site are made from: editions, and what was written beside them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date

from kerfolio.edition.edition import Edition
from kerfolio.fitted.form import Fitted
from kerfolio.model.plan import NO_DAY, Photo, Release
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Identity, Page

STYLESHEET = "assets/style.css"


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    """A bundle, or a file of it by itself, as written.

    ``href`` is relative to the plan's folder; empty when handed over. A supporters' bundle that has
    one lies there sealed; size and sum are those of what it opens to.
    """

    name: str
    size: int
    sha256: str
    href: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoFile:
    """A photo at one width, in pixels; ``href`` is relative to the site's root."""

    href: str
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFiles:
    """What was written for a plan.

    ``pictures`` maps a name to inline SVG markup: ``sheet-N`` (layout of sheet N), ``part-NAME``,
    ``coupon-SHEET``, ``setup-N`` (sheet N on the machine), ``art-PART-NAME``, ``step-N``,
    ``assembled``, ``exploded``, ``cover``; a name that is missing is not shown.
    ``photos`` maps a path of the plan folder to its files. ``preview`` is the path of a
    PNG that stands for the plan where it has no photo; empty when there is none. ``model`` is the
    data of its 3-D view, empty where it has none on the site. ``fitted`` are its files for any
    sheet, which the site keeps beside its page. ``lone`` are files of the bundle that the site has
    by themselves, by their names in the bundle.
    """

    download: Download
    pictures: Mapping[str, str] = field(default_factory=dict)
    photos: Mapping[str, tuple[PhotoFile, ...]] = field(default_factory=dict)
    preview: str = ""
    model: str = ""
    fitted: Fitted | None = None
    rescue: Fitted | None = None
    lone: Mapping[str, Download] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """What lists, feed and map tell of a plan: all that a site needs of one whose pages stand.

    ``released`` is the day of its release, ``day`` that of its newest one; ``line`` says in short
    what it takes. ``cover`` is its photo in lists with its ``cover_files``, ``picture`` the inline
    SVG that stands there where it has none; ``image`` is the path of the picture that stands for
    it elsewhere, or empty. ``category``, ``tags`` and ``level``, how hard it is in a word, are what
    it is found by, empty where not told. ``releases`` come newest first; ``serving`` says of those
    where that is known which pieces of the one before still serve. ``pages`` are its own, by their
    paths below the first, which is empty.
    """

    name: str
    title: str
    summary: str
    version: str
    released: date
    day: date
    is_open: bool
    line: str
    category: str
    tags: tuple[str, ...]
    level: str
    cover: Photo | None
    cover_files: tuple[PhotoFile, ...]
    picture: str
    image: str
    releases: tuple[Release, ...]
    pages: tuple[str, ...]
    serving: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """A whole site. ``files`` is by plan name; ``trials`` are those marked public.

    ``editions`` are the plans whose pages are to be made, ``others`` those whose pages stand
    already. ``stock`` is what the page of the library shows; an empty one has no page.
    ``touch_icon`` is the path of a PNG that stands for the workshop, empty where the machine could
    not draw it. ``menu`` are the pages that the menu leads to, in its order.
    """

    identity: Identity
    editions: tuple[Edition, ...]
    files: Mapping[str, PlanFiles]
    others: tuple[Listed, ...] = ()
    pages: tuple[Page, ...] = ()
    trials: tuple[Trial, ...] = ()
    stock: Stock = field(default_factory=Stock)
    log_photos: Mapping[str, tuple[PhotoFile, ...]] = field(default_factory=dict)
    touch_icon: str = ""
    menu: tuple[SitePage, ...] = ()

    @property
    def base_url(self) -> str:
        """The site's own address with a slash at its end, or empty where none is stated."""
        stated = self.identity.base_url.strip()
        return f"{stated.rstrip('/')}/" if stated else ""

    @property
    def has_stock(self) -> bool:
        """Whether there is a library to show."""
        return self.stock != Stock()

    def address(self, path: str) -> str:
        """Return the absolute address of a path of the site, or empty without a base address."""
        return f"{self.base_url}{path}" if self.base_url else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SitePage:
    """A page of a site: a folder of the site and how its ``index.html`` is made.

    ``make`` is None where it stands already. ``path`` is ``plans/x/``, or empty for home; ``day``
    the day that the content last changed, ``NO_DAY`` where none is known; ``label`` what the menu
    calls it, empty where the menu leaves it out, and ``rank`` its place there, lowest first.
    """

    path: str
    make: Callable[[Site], str] | None
    day: date = NO_DAY
    label: str = ""
    rank: tuple[int | str, ...] = ()


def last_day(edition: Edition) -> date:
    """Return the day of the plan's newest release."""
    return max((each.date for each in edition.plan.releases), default=NO_DAY)
