"""Every file of OUT as named bytes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.basis.finding import Finding, note
from generator.basis.place import Place
from generator.bundles.archive import sha256
from generator.bundles.manifest import PlanEntry, manifest_text
from generator.edition.edition import Edition
from generator.model.workshop import Workshop
from generator.pages.all_pages import site_texts
from generator.pages.site import Download, PhotoFile, PlanFiles, Site
from generator.publishing.bundle import Bundle
from generator.publishing.pictures import inline_pictures, photo_files, photo_index, preview
from generator.trials.log import public
from generator.writing.webfont import web_fonts

Files = dict[str, bytes]
SUPPORTERS = "supporters"


def site_files(workshop: Workshop, bundles: Sequence[Bundle]) -> tuple[Files, tuple[Finding, ...]]:
    """Return all files of the site by name, and notes on what this machine could not make."""
    files: Files = {f"assets/fonts/{name}": data for name, data in web_fonts().items()}
    plan_files = {each.edition.name: _plan_files(each, files) for each in bundles}
    log_photos = _log_photos(workshop, files)
    notes = tuple(_previews(bundles, files))
    site = Site(
        identity=workshop.identity,
        editions=tuple(each.edition for each in bundles),
        files=plan_files,
        pages=workshop.pages,
        trials=public(workshop.trials),
        log_photos=log_photos,
    )
    files |= {name: text.encode() for name, text in site_texts(site).items()}
    files["manifest.json"] = manifest_text([_entry(each) for each in bundles], files).encode()
    return files, notes


def _handed_over(edition: Edition) -> bool:
    return edition.plan.access == SUPPORTERS


def _plan_files(bundle: Bundle, files: Files) -> PlanFiles:
    """Put a plan's photos, and its bundle where it is open, among the site's files."""
    edition = bundle.edition
    href = "" if _handed_over(edition) else f"downloads/{bundle.name}"
    if href:
        files[f"plans/{edition.name}/{href}"] = bundle.content
    download = Download(
        name=bundle.name, size=len(bundle.content), sha256=sha256(bundle.content), href=href
    )
    photos = _photos(f"plans/{edition.name}", edition.pictures, files)
    pictures = {} if _handed_over(edition) else inline_pictures(edition)
    return PlanFiles(download=download, pictures=pictures, photos=photos)


def _photos(
    folder: str, content: Mapping[str, bytes], files: Files
) -> dict[str, tuple[PhotoFile, ...]]:
    found: dict[str, list[tuple[str, bytes]]] = {}
    for name, path, data in photo_files(folder, content):
        files[path] = data
        found.setdefault(name, []).append((path, data))
    return photo_index(found)


def _log_photos(workshop: Workshop, files: Files) -> dict[str, tuple[PhotoFile, ...]]:
    wanted = {trial.photo.file for trial in public(workshop.trials) if trial.photo}
    content = {
        picture.path.removeprefix("log/"): picture.content
        for picture in workshop.pictures
        if picture.path.startswith("log/") and picture.path.removeprefix("log/") in wanted
    }
    return _photos("log", content, files)


def _previews(bundles: Sequence[Bundle], files: Files) -> Iterator[Finding]:
    """Put a preview of every plan among the files; say once if this machine cannot draw one."""
    for bundle in bundles:
        drawn = preview(bundle.edition)
        if drawn is None:
            message = "no PNG previews: the cairo library is missing"
            advice = "Install it (Debian: libcairo2) for previews; all else is complete."
            yield note("no-cairo", message, Place("workshop.yaml"), advice)
            return
        files[f"plans/{bundle.edition.name}/preview.png"] = drawn


def _entry(bundle: Bundle) -> PlanEntry:
    plan = bundle.edition.plan
    return PlanEntry(
        name=plan.name,
        title=plan.title,
        version=plan.version,
        access=plan.access,
        bundle=bundle.name,
        bundle_bytes=len(bundle.content),
        bundle_sha256=sha256(bundle.content),
    )
