"""What a workshop's plans are made from, as hashes, and what of it is known without reading it."""

from __future__ import annotations

import json
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.keeping.findings import findings_json, findings_of
from kerfolio.keeping.program import key_of
from kerfolio.keeping.sources import digest_of, state_of
from kerfolio.keeping.store import Store
from kerfolio.reading.plan_folders import plan_folders

KEPT = Path(".kerfolio") / "kept"
"""Where a workshop keeps results; safe to delete at any time."""

_SHARED, _PAGES = ("workshop.yaml", "stock", "log"), "pages"
"""What every plan is made from, and what the site has besides."""

LAYOUTS = "layout*.json"
"""Names of frozen layouts beside a plan, which not every result hangs on."""

PRIVATE_LOG = Path(".kerfolio") / "private" / "log" / "index.html"
"""Where the maker's own page of the log lies; nothing of ``private`` goes under OUT."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sources:
    """What the plans of a workshop share, read without an error, as hashes.

    ``shared`` is that of what every plan is made from: ``workshop.yaml`` with its logo, the stock
    and the log; ``pages`` that of the maker's own pages, ``menu`` what of them stands in the menu
    of every page. ``findings`` are those on all of this, ``plans`` the folders of plans, ``logo``
    is where the logo lies, if there is one, ``title`` and ``keys`` are the workshop's. ``states``
    are what the disk said of all of this before it was read.
    """

    folder: Path
    shared: str
    pages: str
    menu: str
    plans: tuple[str, ...]
    findings: tuple[Finding, ...]
    logo: str
    title: str
    keys: str
    states: tuple[str, ...] = field(compare=False)

    def are_still(self, store: Store) -> bool:
        """Tell whether they are as they were; files are read again only where the disk says so."""
        same = plan_folders(self.folder) == self.plans
        if same and (*_states(self.folder), _state(self.folder, self.logo)) == self.states:
            return True
        return sources_of(self.folder, store) == self

    @property
    def whole(self) -> str:
        """The hash of all that is read besides plans."""
        return key_of("read", self.shared, self.pages)

    def of_plan(self, name: str, *, without: str = "") -> str:
        """Return the hash of a plan's folder; names of the pattern ``without`` do not count."""
        return digest_of(self.folder / "plans" / name, self.folder, without=without)

    def of_plans(self, names: Iterable[str]) -> dict[str, str]:
        """Return the hash of each plan's folder by its name."""
        return {name: self.of_plan(name) for name in names}

    def key(self, what: str, name: str, content: str, *more: str) -> str:
        """Return the key of a result from a plan's folder and what all plans share."""
        return key_of(what, self.shared, name, content, *more)


@contextmanager
def store_of(workshop: Path) -> Iterator[Store]:
    """Open the store of a workshop; where nothing can be written there, one for this run alone."""
    home, kept = workshop / KEPT.parent, workshop / KEPT
    within = next((each for each in (kept, home, workshop) if each.is_dir()), workshop)
    if os.access(within, os.W_OK | os.X_OK) and not kept.is_symlink() and not home.is_symlink():
        store = Store(kept)
        yield store
        store.trim()
    else:
        with TemporaryDirectory() as folder:
            yield Store(Path(folder))


def sources_of(folder: Path, store: Store) -> Sources | None:
    """Return what the plans of a workshop are made from; None where that cannot be read.

    What plans share is read only where it changed since it was read last.
    """
    if not (folder / "workshop.yaml").is_file():
        return None
    states = _states(folder)
    digests = {name: digest_of(folder / name, folder) for name in _SHARED}
    pages, plans = digest_of(folder / _PAGES, folder), plan_folders(folder)
    logo_key = key_of("logo", digests["workshop.yaml"])

    def read_key(logo: str) -> str:
        return key_of("shared", *_shared(folder, logo, digests), pages, *plans)

    logo = store.get(logo_key)
    found = None if logo is None else store.get(read_key(logo.decode()))
    if logo is None or found is None:
        read = _read(folder)
        if read is None:
            return None
        logo, found = read
        store.put(logo_key, logo)
        store.put(read_key(logo.decode()), found)
    told, path = json.loads(found), logo.decode()
    states = (*states, _state(folder, path))
    return Sources(
        folder=folder,
        shared=key_of("sources", *_shared(folder, path, digests)),
        pages=pages,
        menu=told["menu"],
        plans=plans,
        findings=findings_of(told["findings"]),
        logo=path,
        title=told["title"],
        keys=told["keys"],
        states=states,
    )


def _states(folder: Path) -> tuple[str, ...]:
    return tuple(_state(folder, name) for name in (*_SHARED, _PAGES))


def _state(folder: Path, name: str) -> str:
    return state_of(folder / name, folder) if name else ""


def _shared(folder: Path, logo: str, digests: dict[str, str]) -> tuple[str, ...]:
    return (*digests.values(), digest_of(folder / logo, folder) if logo else "")


def _read(folder: Path) -> tuple[bytes, bytes] | None:
    """Return the path of the logo, and what is told of all as JSON; None where it is unsound."""
    from kerfolio.reading.workshop import read_shared  # which takes long to load

    shared, _ = read_shared(folder)
    if shared is None or shared.identity is None or has_errors(shared.findings):
        return None
    logo = shared.identity.look.logo
    menu = json.dumps([(each.order, each.title, each.name) for each in shared.pages])
    told = {
        "menu": menu,
        "findings": findings_json(shared.findings),
        "title": shared.identity.title,
        "keys": shared.identity.keys,
    }
    return (logo.file if logo else "").encode(), json.dumps(told).encode()
