"""Writing a whole folder at once: built beside its place, then swapped in."""

from __future__ import annotations

import json
import os
import shutil
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.bundles.manifest import FORMAT


def other_plans(out: Path, only: str) -> tuple[str, ...]:
    """Return the names of the plans that a site published earlier holds besides ``only``."""
    plans = _manifest(out).get("plans", [])
    return tuple(sorted(each["name"] for each in plans if each["name"] != only))


def is_site(out: Path) -> bool:
    """Tell whether a folder holds a site that the program wrote."""
    return _manifest(out).get("format") == FORMAT


def _manifest(out: Path) -> dict[str, Any]:
    try:
        found = json.loads((out / "manifest.json").read_text("utf-8"))
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}


def out_faults(
    out: Path, ours: Callable[[Path], bool] = is_site, writer: str = "publish"
) -> tuple[Finding, ...]:
    """Refuse an OUT that holds something the program did not write, so that nothing is lost.

    ``ours`` tells whether an earlier ``writer`` wrote all that a folder holds.
    """
    place = Place(str(out))
    if out.is_symlink() or (out.exists() and not out.is_dir()):
        return (error("out-not-folder", "the output is not a folder", place, "Name a folder."),)
    if not out.exists() or not any(out.iterdir()) or ours(out):
        return ()
    advice = f"Choose a new or empty folder, or one that an earlier {writer} wrote."
    return (error("out-not-ours", "the output folder holds other files", place, advice),)


def swap_in(out: Path, files: Mapping[str, bytes]) -> None:
    """Write ``files`` beside ``out`` and swap the two; a failure leaves ``out`` as it was.

    Raises OSError when the disk refuses.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    work = Path(tempfile.mkdtemp(prefix=f".{out.name}.", dir=out.parent))
    try:
        fresh, last = work / "fresh", work / "last"
        _write(fresh, files)
        if out.exists():
            out.rename(last)
        try:
            fresh.rename(out)
        except OSError:
            if last.exists():
                last.rename(out)
            raise
    finally:
        shutil.rmtree(work, ignore_errors=True)


def _write(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir()
    for name in sorted(files):
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(files[name])


def put(target: Path, content: bytes) -> None:
    """Write one file whole or not at all. Raises OSError when the disk refuses."""
    target.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{target.name}.", dir=target.parent)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
        Path(name).chmod(0o644)
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
