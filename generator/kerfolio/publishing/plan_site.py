"""What a site has of one plan: its pages, pictures and downloads as named bytes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from kerfolio.basis.pixels import Pixels
from kerfolio.bundles.archive import sha256, unzipped
from kerfolio.bundles.manifest import PlanEntry
from kerfolio.drawing.house_mark import house_mark
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.edition.cover import cover_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import lone_files, lone_name
from kerfolio.edition.public import shown_to_all
from kerfolio.fitted.writing import fitted_json
from kerfolio.model.plan import Photo
from kerfolio.model.workshop import Identity, Workshop
from kerfolio.pages.all_pages import plan_texts
from kerfolio.pages.badge import TOUCH_ICON, logo_bytes, logo_file
from kerfolio.pages.fitting import FITTED_FILES
from kerfolio.pages.listed import listed_json, listed_of
from kerfolio.pages.rescue import RESCUE_FILES
from kerfolio.pages.site import Download, PhotoFile, PlanFiles, Site
from kerfolio.publishing.bundle import Bundle
from kerfolio.publishing.pictures import photo_files, photo_index, pictures_of, preview
from kerfolio.trials.log import public
from kerfolio.writing.square_icon import square_icon
from kerfolio.writing.svg import svg_bytes

Files = dict[str, bytes]
SEALED = ".sealed"
"""What is put after the name of a bundle that is sealed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSite:
    """The files of a plan in the site by name, and its entry in the manifest.

    ``lacking`` tells that this machine could not draw its preview.
    """

    files: Files
    entry: PlanEntry
    lacking: bool


def plan_site(workshop: Workshop, bundle: Bundle, *, sealed: bool = False) -> PlanSite:
    """Return what the site has of a plan; of others nothing is asked but the menu.

    A bundle that is ``sealed`` will stand where its entry says; it is none of these files.
    """
    edition = shown_to_all(bundle.edition)
    files: Files = {}
    bare = edition.plan.is_open and cover_of(edition.plan.photos) is None
    drawn = preview(bundle.edition) if bare else None
    if drawn is not None:
        files[_preview_name(edition)] = drawn
    written = _plan_files(bundle, edition, workshop, files, sealed=sealed)
    shown = [each.photo for each in edition.trials if each.photo]
    site = replace(
        site_of(workshop, log_photos(workshop, {}, only=shown)),
        editions=(edition,),
        files={edition.name: written},
    )
    files |= {name: text.encode() for name, text in plan_texts(site, edition).items()}
    entry = replace(
        _entry(bundle),
        listed=listed_json(listed_of(site, edition)),
        sealed=f"plans/{edition.name}/{_sealed_href(bundle)}" if sealed else "",
    )
    return PlanSite(files=files, entry=entry, lacking=bare and drawn is None)


def site_of(workshop: Workshop, photos: Mapping[str, tuple[PhotoFile, ...]]) -> Site:
    """Return a site without plans, with what all of its pages share; ``photos`` are the log's."""
    return Site(
        identity=workshop.identity,
        editions=(),
        files={},
        pages=workshop.pages,
        trials=public(workshop.trials),
        stock=workshop.stock,
        log_photos=photos,
        touch_icon=TOUCH_ICON if TOUCH_ICON in badge_files(workshop.identity) else "",
    )


def badge_files(identity: Identity) -> Files:
    """Return what stands for the workshop: its logo, and the picture for a phone's first screen.

    Where the machine cannot draw a logo the mark stands in; where it cannot draw at all, nothing.
    """
    logo, look = identity.look.logo, identity.look
    files = {logo_file(logo): logo_bytes(logo)} if logo else {}
    palette = palettes_of(look).light
    own = square_icon(logo.pixels or logo.svg, palette[Ink.PAPER]) if logo else None
    drawn = svg_bytes(house_mark(identity.title), palette)
    icon = own or square_icon(drawn, palette[Ink.PAPER])
    return files | ({TOUCH_ICON: icon} if icon else {})


def log_photos(
    workshop: Workshop, files: Files, only: Iterable[Photo] | None = None
) -> dict[str, tuple[PhotoFile, ...]]:
    """Put the photos of public trials, or ``only`` some of them, among the site's files."""
    shown = [trial.photo for trial in public(workshop.trials) if trial.photo]
    wanted = {each.file for each in (shown if only is None else only)}
    return _photos("log", pictures_of(workshop, "log", shown), files, wanted)


def _sealed_href(bundle: Bundle) -> str:
    return f"downloads/{bundle.name}{SEALED}"


def _plan_files(
    bundle: Bundle, edition: Edition, workshop: Workshop, files: Files, *, sealed: bool
) -> PlanFiles:
    """Put a plan's photos, and its bundle where it is open, among the site's files."""
    plan, folder = bundle.edition.plan, f"plans/{edition.name}"
    href = f"downloads/{bundle.name}" if plan.is_open else ""
    if sealed:
        href = _sealed_href(bundle)
    elif href:
        files[f"{folder}/{href}"] = bundle.content
        if bundle.fitted_text:
            files[f"{folder}/{FITTED_FILES}"] = bundle.fitted_text.encode()
        if bundle.rescue:
            files[f"{folder}/{RESCUE_FILES}"] = fitted_json(bundle.rescue).encode()
    total = sha256(bundle.content) if plan.shows("sums") else ""
    download = Download(name=bundle.name, size=len(bundle.content), sha256=total, href=href)
    pictures = pictures_of(workshop, folder, edition.plan.pictured)
    photos = _photos(folder, pictures, files, set(pictures))
    preview_name = _preview_name(edition)
    return PlanFiles(
        download=download,
        pictures=bundle.pictures if plan.is_open else _cover(bundle, edition),
        photos=photos,
        preview=preview_name if preview_name in files else "",
        model=bundle.model if plan.is_open else "",
        fitted=bundle.fitted if plan.is_open else None,
        rescue=bundle.rescue if plan.is_open else None,
        lone=_lone(bundle, files) if plan.is_open else {},
    )


def _lone(bundle: Bundle, files: Files) -> dict[str, Download]:
    """Put what can be had without the bundle among the site's files."""
    edition, found = bundle.edition, {}
    packed = unzipped(bundle.content)
    inside = {name.partition("/")[2]: content for name, content in packed.items()}
    for name in lone_files(edition):
        content, called = inside[name], lone_name(edition.plan, name)
        href = f"downloads/{called}"
        files[f"plans/{edition.name}/{href}"] = content
        found[name] = Download(name=called, size=len(content), sha256=sha256(content), href=href)
    return found


def _cover(bundle: Bundle, edition: Edition) -> Mapping[str, str]:
    """Return the one drawing that stands for a supporters' plan without photos."""
    whole = bundle.pictures.get("assembled", "")
    return {} if edition.plan.photos or not whole else {"cover": whole}


def _photos(
    folder: str, pictures: Mapping[str, Pixels], files: Files, wanted: Iterable[str]
) -> dict[str, tuple[PhotoFile, ...]]:
    found: dict[str, list[tuple[str, bytes]]] = {}
    for name, path, data in photo_files(folder, pictures, wanted):
        files[path] = data
        found.setdefault(name, []).append((path, data))
    return photo_index(found)


def _preview_name(edition: Edition) -> str:
    return f"plans/{edition.name}/preview.png"


def _entry(bundle: Bundle) -> PlanEntry:
    plan = bundle.edition.plan
    return PlanEntry(
        name=plan.name,
        title=plan.title,
        version=plan.version,
        access=plan.access,
        bundle=bundle.name,
        bundle_bytes=len(bundle.content),
        bundle_sha256=sha256(bundle.content) if plan.shows("sums") else "",
    )
