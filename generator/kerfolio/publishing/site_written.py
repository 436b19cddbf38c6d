"""The files of a site as they are written, taken from what is kept one plan at a time."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict
from pathlib import Path

from kerfolio.bundles.manifest import PlanEntry
from kerfolio.keeping.pack import packed, unpacked
from kerfolio.keeping.program import key_of
from kerfolio.publishing.plan_record import HANDED, Written
from kerfolio.publishing.plans_now import plans_now
from kerfolio.publishing.renewing import Renewing, pack_of


def shared_files(how: Renewing, entries: Sequence[PlanEntry]) -> tuple[dict[str, bytes], bytes]:
    """Return the files of a site that are no plan's own by name, and the maker's page of the log.

    ``entries`` are all plans of the site. Raises ListingError where an entry does not say what
    lists tell.
    """
    sources, listed = how.sources, [each.listed for each in entries]
    now = plans_now(sources, how.store)
    told = json.dumps([listed, [asdict(each) for each in now]])
    key = key_of("site", sources.shared, sources.pages, told)
    found = how.store.get(key)
    if found is None:
        from kerfolio.publishing.site import log_and_files  # which takes long to load

        log, files = log_and_files(sources.folder, listed, now)
        found = packed({_LOG: log, **files})
        if sources.are_still(how.store):
            how.store.put(key, found)
    files = dict(unpacked(found))
    log = files.pop(_LOG)
    return files, log


_LOG = ""  # no file of a site has no name


class SiteFiles(Mapping[str, bytes]):
    """All files of a site by name. Those of one plan are held at a time: they lie side by side."""

    def __init__(
        self, how: Renewing, shared: Mapping[str, bytes], plans: Mapping[str, Written]
    ) -> None:
        """``shared`` are those that are no plan's own, ``plans`` what was written of each plan."""
        self._shared = shared
        self._owners = {row.name: name for name, each in plans.items() for row in each.files}
        self._plans = _PlanFiles(how, plans)

    def __getitem__(self, name: str) -> bytes:
        owner = self._owners.get(name)
        return self._shared[name] if owner is None else self._plans.of(owner)[name]

    def __iter__(self) -> Iterator[str]:
        yield from self._shared
        yield from self._owners

    def __len__(self) -> int:
        return len(self._shared) + len(self._owners)


class HandedFiles(Mapping[Path, bytes]):
    """The bundles of supporters' plans by the places where they are handed over."""

    def __init__(self, how: Renewing, places: Mapping[Path, str], plans: Mapping[str, Written]):
        """``places`` name the plan of each."""
        self._places = places
        self._plans = _PlanFiles(how, plans)

    def __getitem__(self, place: Path) -> bytes:
        return self._plans.of(self._places[place])[HANDED]

    def __iter__(self) -> Iterator[Path]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


class _PlanFiles:
    """The files that are kept of plans; those asked for last are at hand."""

    def __init__(self, how: Renewing, plans: Mapping[str, Written]) -> None:
        self._how = how
        self._plans = plans
        self._held: tuple[str, dict[str, bytes]] = ("", {})

    def of(self, name: str) -> dict[str, bytes]:
        """Return the files of a plan by name."""
        if self._held[0] != name:
            self._held = ("", {})  # two plans are never held at once
            self._held = (name, dict(unpacked(pack_of(self._how, name, self._plans[name]))))
        return self._held[1]
