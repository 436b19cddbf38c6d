"""Every file of OUT as named bytes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from kerfolio.basis.finding import Finding, note
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import Place
from kerfolio.bundles.archive import sha256, unzipped
from kerfolio.bundles.manifest import PlanEntry, manifest_text
from kerfolio.drawing.house_mark import house_mark
from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import lone_files, lone_name
from kerfolio.edition.public import shown_to_all
from kerfolio.fitted.writing import fitted_json
from kerfolio.model.workshop import Identity, Workshop
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.badge import TOUCH_ICON, logo_bytes, logo_file
from kerfolio.pages.fitting import FITTED_FILES
from kerfolio.pages.rescue import RESCUE_FILES
from kerfolio.pages.site import Download, PhotoFile, PlanFiles, Site
from kerfolio.pages.typefaces import FONT_FOLDER, files_of
from kerfolio.publishing.bundle import Bundle
from kerfolio.publishing.pictures import photo_files, photo_index, pictures_of, preview
from kerfolio.trials.log import public
from kerfolio.writing.square_icon import square_icon
from kerfolio.writing.svg import svg_bytes
from kerfolio.writing.webfont import web_fonts

Files = dict[str, bytes]

_NO_CAIRO = note(
    "no-cairo",
    "no PNG previews: the cairo library is missing",
    Place("workshop.yaml"),
    "Install it (Debian: libcairo2) for previews; all else is complete.",
)


def site_files(workshop: Workshop, bundles: Sequence[Bundle]) -> tuple[Files, tuple[Finding, ...]]:
    """Return all files of the site by name, and notes on what this machine could not make."""
    look = workshop.identity.look
    files: Files = {f"{FONT_FOLDER}{name}": web_fonts()[name] for name in files_of(look.type)}
    previews = _previews(bundles)
    files |= previews
    plan_files = {each.edition.name: _plan_files(each, workshop, files) for each in bundles}
    log_photos = _log_photos(workshop, files)
    lacking = any(each.edition.plan.is_open for each in bundles) and not previews
    site = Site(
        identity=workshop.identity,
        editions=tuple(shown_to_all(each.edition) for each in bundles),
        files=plan_files,
        pages=workshop.pages,
        trials=public(workshop.trials),
        stock=workshop.stock,
        log_photos=log_photos,
    )
    files |= _badge_files(workshop.identity)
    site = replace(site, touch_icon=TOUCH_ICON if TOUCH_ICON in files else "")
    files |= {name: text.encode() for name, text in site_texts(site).items()}
    files["manifest.json"] = manifest_text([_entry(each) for each in bundles], files).encode()
    return files, (_NO_CAIRO,) if lacking else ()


def _badge_files(identity: Identity) -> Files:
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


def _plan_files(bundle: Bundle, workshop: Workshop, files: Files) -> PlanFiles:
    """Put a plan's photos, and its bundle where it is open, among the site's files."""
    edition, plan = shown_to_all(bundle.edition), bundle.edition.plan
    href = f"downloads/{bundle.name}" if plan.is_open else ""
    if href:
        files[f"plans/{edition.name}/{href}"] = bundle.content
        if bundle.fitted_text:
            files[f"plans/{edition.name}/{FITTED_FILES}"] = bundle.fitted_text.encode()
        if bundle.rescue:
            text = fitted_json(bundle.rescue)
            files[f"plans/{edition.name}/{RESCUE_FILES}"] = text.encode()
    total = sha256(bundle.content) if plan.shows("sums") else ""
    download = Download(name=bundle.name, size=len(bundle.content), sha256=total, href=href)
    folder = f"plans/{edition.name}"
    photos = _photos(folder, pictures_of(workshop, folder, edition.plan.pictured), files)
    preview_name = _preview_name(edition) if _preview_name(edition) in files else ""
    return PlanFiles(
        download=download,
        pictures=bundle.pictures if plan.is_open else _cover(bundle, edition),
        photos=photos,
        preview=preview_name,
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
    folder: str, pictures: Mapping[str, Pixels], files: Files
) -> dict[str, tuple[PhotoFile, ...]]:
    found: dict[str, list[tuple[str, bytes]]] = {}
    for name, path, data in photo_files(folder, pictures):
        files[path] = data
        found.setdefault(name, []).append((path, data))
    return photo_index(found)


def _log_photos(workshop: Workshop, files: Files) -> dict[str, tuple[PhotoFile, ...]]:
    shown = [trial.photo for trial in public(workshop.trials) if trial.photo]
    return _photos("log", pictures_of(workshop, "log", shown), files)


def _preview_name(edition: Edition) -> str:
    return f"plans/{edition.name}/preview.png"


def _previews(bundles: Sequence[Bundle]) -> Files:
    """Return a preview of every open plan; none where the machine cannot draw them.

    A layout shows shapes, so the plans for supporters have none.
    """
    drawn = {
        _preview_name(each.edition): preview(each.edition)
        for each in bundles
        if each.edition.plan.is_open
    }
    return {name: content for name, content in drawn.items() if content is not None}


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
