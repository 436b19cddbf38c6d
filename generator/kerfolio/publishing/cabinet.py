"""The cabinet: the folder in which a workshop's keys are kept, a file for each circle.

It lies outside the workshop, so that no key gets into its repository, its copies or its site.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from kerfolio.basis.finding import Finding, error, warning
from kerfolio.basis.names import name_of
from kerfolio.basis.place import Place
from kerfolio.disk.alone import alone_in
from kerfolio.disk.out_folder import is_site
from kerfolio.disk.put import put
from kerfolio.disk.trouble import told
from kerfolio.sealing.fault import SealError
from kerfolio.sealing.ring import Ring
from kerfolio.sealing.ring_text import ring_from, ring_text

KEYS = "KERFOLIO_KEYS"
"""The variable of the environment that names the folder of keys."""

_ENDING = ".keys.json"


@dataclass(frozen=True, slots=True)
class Cabinet:
    """A folder of keys; it is made when the first key is."""

    folder: Path

    def ring(self, circle: str) -> Ring | None:
        """Return the keys of a circle, or None where it never had one.

        Raises SealError where their file is damaged, OSError.
        """
        file = self._file(circle)
        if not file.is_file():
            return None
        try:
            found = ring_from(file.read_bytes())
        except SealError as wrong:
            raise SealError(f"{file}: {wrong}", wrong.advice) from None
        if found.circle != circle:
            raise SealError(f"{file}: it holds keys of another circle", "Give it back its name.")
        return found

    def rings(self) -> dict[str, Ring]:
        """Return the keys of every circle by its name. Raises SealError, OSError."""
        if not self.folder.is_dir():
            return {}
        files = sorted(self.folder.glob(f"*{_ENDING}"))
        names = (each.name.removesuffix(_ENDING) for each in files)
        return {name: ring for name in names if (ring := self.ring(name)) is not None}

    def keep(self, ring: Ring) -> None:
        """Write the keys of a circle, for their owner alone. Raises DiskError."""
        put(self._file(ring.circle), ring_text(ring).encode("ascii"), private=True)

    @contextmanager
    def alone(self) -> Iterator[None]:
        """Keep other runs from changing keys meanwhile. Raises DiskError."""
        with told(self.folder, "No key was changed."):
            self.folder.mkdir(parents=True, exist_ok=True, mode=0o700)
            with alone_in(self.folder.parent):
                yield

    def _file(self, circle: str) -> Path:
        return self.folder / f"{circle}{_ENDING}"


def cabinet_of(
    workshop: Path,
    title: str,
    stated: str = "",
    asked: Path | None = None,
    environment: Mapping[str, str] = os.environ,
) -> Cabinet:
    """Return the cabinet of a workshop: the one ``asked`` for, else that of the environment, else
    the one ``workshop.yaml`` states, else one among the user's data, named after its ``title``.
    """
    named = environment.get(KEYS, "")
    if asked is not None or named:
        return Cabinet((asked or Path(named)).expanduser().absolute())
    if stated:
        return Cabinet((workshop.absolute() / Path(stated).expanduser()).resolve())
    return Cabinet(_user_data(environment) / "kerfolio" / "keys" / (name_of(title) or "workshop"))


def _user_data(environment: Mapping[str, str]) -> Path:
    """Return where programs keep a user's data, by the customs of the system."""
    if sys.platform == "win32":
        return Path(environment.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support"
    stated = environment.get("XDG_DATA_HOME", "")  # XDG Base Directory Specification: absolute
    return Path(stated) if stated.startswith("/") else Path.home() / ".local" / "share"


def cabinet_faults(cabinet: Cabinet, workshop: Path, outs: tuple[Path, ...]) -> Iterator[Finding]:
    """Refuse a cabinet in a site or where things are safe to delete; warn of one in the workshop.

    ``outs`` are the folders that site and bundles go to.
    """
    folder, shop = cabinet.folder.resolve(), workshop.resolve()
    above = (folder, *folder.parents)
    place = Place(str(cabinet.folder))
    elsewhere = f"Name another folder: `keys:` in workshop.yaml, --keys or {KEYS}."
    if any(each.resolve() in above for each in outs) or any(map(is_site, above)):
        yield error("keys-in-site", "keys would lie where the site goes", place, elsewhere)
    elif shop / ".kerfolio" in above:
        message = "keys would lie in `.kerfolio`, which may be deleted at any time"
        yield error("keys-in-store", message, place, elsewhere)
    elif shop in above:
        message = "keys lie in the workshop: whoever gets a copy of it has them"
        yield warning("keys-in-workshop", message, place, elsewhere)
