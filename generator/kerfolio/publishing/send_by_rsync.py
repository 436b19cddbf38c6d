"""Brings files of a site to a host, by rsync over SSH, as the maker's SSH knows the host.

rsync compares by sums, sends of a changed file what changed, keeps what was begun of a file for the
next run, and moves each file to its place when it is whole.
"""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterable, Sequence
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import Any

from kerfolio.disk.out_folder import MANIFEST, manifest_in

_PARTLY_SENT = 23
"""How rsync ends where a file was not there."""

_ALWAYS = ("--secluded-args", "--checksum", "--out-format=%n", "--chmod=D755,F644")
_BEGUN = "--partial-dir=.kerfolio-partial"


class SendError(OSError):
    """rsync or SSH refused; the text is what they said."""


def rsync_is_there() -> bool:
    """Tell whether rsync is installed."""
    return shutil.which("rsync") is not None


class RsyncCarrier:
    """Files are sent to a host's folder, ``[USER@]HOST:FOLDER``."""

    def __init__(self, site: Path, target: str, port: int = 0) -> None:
        """``port`` is that of the host's SSH, 0 for the usual one."""
        self._site, self._target = site, target.rstrip("/") + "/"
        self._shell = ("-e", f"ssh -p {port}") if port else ()

    def manifest(self) -> dict[str, Any]:
        """Return the manifest of what was sent before, empty where there is none.

        Raises SendError where the host cannot be reached.
        """
        with TemporaryDirectory() as folder:
            try:
                self._run((), f"{self._target}{MANIFEST}", f"{folder}/")
            except SendError as trouble:
                if trouble.errno != _PARTLY_SENT:
                    raise
            return manifest_in(Path(folder)) or {}

    def bring(self, names: Sequence[str], *, dry: bool) -> tuple[str, ...]:
        """Send files; return those that were not there like that. Raises SendError."""
        if not names:
            return ()
        with TemporaryDirectory() as folder:
            listed = Path(folder) / "names"
            listed.write_bytes("\0".join(names).encode())
            how = (_BEGUN, "--from0", f"--files-from={listed}", *_dry(dry))
            told = self._run(how, f"{self._site}/", self._target)
        return tuple(each for each in told if each in set(names))

    def take_away(self, names: Iterable[str], *, dry: bool) -> tuple[str, ...]:
        """Remove files, and folders that are empty then; all else there is protected.

        Raises SendError.
        """
        gone = tuple(names)
        if not gone:
            return ()
        folders = {str(up) for name in gone for up in PurePosixPath(name).parents} - {"."}
        rules = [f"risk /{_literal(each)}" for each in (*sorted(folders), *gone)]
        with TemporaryDirectory() as folder:
            filters = Path(folder) / "rules"
            filters.write_text("\n".join((*rules, "protect *", "")), "utf-8")
            only = ("--recursive", "--delete", "--existing", "--ignore-existing")
            how = (*only, f"--filter=merge {filters}", *_dry(dry))
            told = self._run(how, f"{self._site}/", self._target)
        removed = {each.removeprefix("deleting ") for each in told if each.startswith("deleting ")}
        return tuple(each for each in gone if each in removed)

    def _run(self, how: Sequence[str], source: str, target: str) -> list[str]:
        command = ("rsync", *_ALWAYS, *self._shell, *how, "--", source, target)
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        if done.returncode:
            lines = done.stderr.splitlines()
            said = "; ".join(each for each in lines if not each.startswith("rsync error"))
            raise SendError(done.returncode, said or f"rsync ended with {done.returncode}")
        return done.stdout.splitlines()


def _dry(dry: bool) -> tuple[str, ...]:
    return ("--dry-run",) if dry else ()


def _literal(name: str) -> str:
    """Return a name as a pattern of rsync that means just it."""
    return "".join(f"\\{each}" if each in "*?[\\" else each for each in name)
