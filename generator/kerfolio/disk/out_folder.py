"""What stands in an output folder: what an earlier publish wrote there, and what others laid in."""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.bundles.manifest import FORMAT

MANIFEST = "manifest.json"
_MAY_WAIT = ("CNAME",)
"""What may lie in a folder before its first publish, besides what is hidden: a host's settings."""


def manifest_in(out: Path) -> dict[str, Any] | None:
    """Return the manifest that an earlier publish wrote as found there, None where there is none.

    Only its format is known: somebody may have changed it.
    """
    manifest = out / MANIFEST
    try:  # reading something else than a file might never end
        found = json.loads(manifest.read_text("utf-8")) if manifest.is_file() else None
    except (OSError, ValueError, RecursionError):
        return None
    return found if isinstance(found, dict) and found.get("format") == FORMAT else None


def written_in(out: Path) -> frozenset[str] | None:
    """Return the files that an earlier publish wrote, or None where there is no manifest."""
    found = manifest_in(out)
    if found is None:
        return None
    rows = found.get("files")
    rows = rows if isinstance(rows, list) else []
    names = [row.get("name") for row in rows if isinstance(row, dict)]
    return frozenset((*(name for name in names if isinstance(name, str)), MANIFEST))


def is_site(out: Path) -> bool:
    """Tell whether a folder holds a site that the program wrote."""
    return written_in(out) is not None


def foreign_in(out: Path) -> tuple[str, ...]:
    """Return what a publish did not write: files, links and empty folders, by relative path."""
    ours = written_in(out) or frozenset()
    return tuple(sorted(name for name in entries_of(out) if name not in ours))


def entries_of(folder: Path) -> Iterator[str]:
    """Yield what a folder holds by relative path: files, links and empty folders."""
    for root, folders, files in os.walk(folder):
        here = Path(root)
        links = [name for name in folders if (here / name).is_symlink()]
        for name in (*files, *links):
            yield (here / name).relative_to(folder).as_posix()
        if not files and not folders and here != folder:
            yield here.relative_to(folder).as_posix()


def stranger_in(out: Path) -> str:
    """Return the first file of a folder that is no site of ours; empty where it is one.

    What may not be looked into counts as a file.
    """
    if is_site(out):
        return ""
    return min(entries_of(out), default="") or min(
        (each.name for each in out.iterdir()), default=""
    )


def out_faults(
    out: Path, stranger: Callable[[Path], str] = stranger_in, writer: str = "publish"
) -> tuple[Finding, ...]:
    """Refuse an OUT that cannot be exchanged or may be something else, so that nothing is lost.

    ``stranger`` names something in a folder that no earlier ``writer`` wrote; empty for nothing.
    """
    return tuple(_out_faults(out, stranger, writer))


def _out_faults(out: Path, stranger: Callable[[Path], str], writer: str) -> Iterator[Finding]:
    place = Place(str(out))
    if out.is_symlink() or (out.exists() and not out.is_dir()):
        yield error("out-not-folder", "the output is not a folder", place, "Name a folder.")
        return
    if os.path.ismount(out):
        advice = f"Name a folder inside it: `--out {out / 'site'}`."
        yield error("out-mounted", "the output is a mount point", place, advice)
        return
    mounted = next((each for each in _folders(out) if os.path.ismount(each)), None)
    if mounted is not None:
        message = f"a disk is mounted inside the output, at `{mounted.relative_to(out)}`"
        yield error("out-mounted", message, place, "Unmount it, or name another folder.")
        return
    barred = _barred(out)
    if barred is not None:
        advice = "It is built beside its place. See that you may write there, or name another one."
        message = f"nothing can be written in `{barred}`"
        yield error("out-barred", message, place, advice)
        return
    stage = stage_of(out)
    if stage.is_symlink() or (stage.exists() and not stage.is_dir()):
        message = f"`{stage.name}` stands where the output is built"
        yield error("out-barred", message, place, "Remove it, or name another folder.")
        return
    strange = stranger(out) if out.exists() and not _is_waiting(out) else ""
    if strange:
        advice = f"Choose a new or empty folder, or one that an earlier {writer} wrote."
        message = f"the output folder holds other files: {quoted(strange, 60)}"
        yield error("out-not-ours", message, place, advice)


def stage_of(out: Path) -> Path:
    """Return the hidden folder beside OUT that everything is built in first."""
    return out.with_name(f".{out.name}.kerfolio")


def _folders(out: Path) -> Iterator[Path]:
    return (Path(root) / name for root, folders, _ in os.walk(out) for name in folders)


def _barred(out: Path) -> Path | None:
    """Return the folder that OUT would be built in, where it cannot be written to."""
    beside = nearest(out.absolute().parent)
    return None if beside.is_dir() and os.access(beside, os.W_OK | os.X_OK) else beside


def nearest(folder: Path) -> Path:
    """Return the folder, or the first one above it that stands there, were it a broken link."""
    return next(each for each in (folder, *folder.parents) if os.path.lexists(each))


def _is_waiting(out: Path) -> bool:
    return all(each.name.startswith(".") or each.name in _MAY_WAIT for each in out.iterdir())
