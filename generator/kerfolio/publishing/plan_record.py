"""What came of a plan, as plain values: what is kept of it, and handed on between processes.

Nothing here needs the stages that made it, which take long to load.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass, field
from typing import Any

from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.bundles.manifest import FileRow, PlanEntry
from kerfolio.keeping.findings import findings_json, findings_of
from kerfolio.model.showing import Public
from kerfolio.publishing.freeze import Fresh
from kerfolio.publishing.way_out import Access


@dataclass(frozen=True, slots=True, kw_only=True)
class Proved:
    """What came of reading and proving a plan.

    ``title`` and ``place`` are empty where it could not be read. ``stale`` are notes on frozen
    layouts that a publish will compute anew and on a release that it will refuse, ``layouts`` those
    that were computed. ``newest`` is the last release with its day (ISO 8601). ``quiet`` tells that
    computing them was remarked on with no word: frozen, they change nothing else here. ``access``
    is what it states of who may load it.
    """

    name: str
    title: str
    place: Place
    findings: tuple[Finding, ...]
    stale: tuple[Finding, ...] = ()
    newest: tuple[str, str] = ("", "")
    layouts: tuple[Fresh, ...] = ()
    quiet: bool = True
    access: Access = field(default_factory=Access)

    def text(self) -> str:
        """Return it as JSON."""
        return json.dumps(
            {
                "name": self.name,
                "title": self.title,
                "place": [self.place.file, self.place.line, self.place.column],
                "findings": findings_json(self.findings),
                "stale": findings_json(self.stale),
                "newest": self.newest,
                "layouts": [asdict(each) for each in self.layouts],
                "quiet": self.quiet,
                "access": asdict(self.access),
            }
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What came of drawing, binding and checking a plan.

    ``entry`` is what the manifest says of it, ``files`` its files in the site, ``pack`` the key
    under which they are kept. Of a supporters' plan the bundle is kept there as ``HANDED``, with
    the SHA-256 ``handed``, and ``public`` says what everybody sees of it. ``lacking`` tells that
    the machine could draw no preview.
    """

    findings: tuple[Finding, ...]
    entry: PlanEntry
    files: tuple[FileRow, ...]
    pack: str
    public: Public | None
    lacking: bool
    handed: str = ""

    def text(self) -> str:
        """Return it as JSON."""
        return json.dumps(
            {
                "findings": findings_json(self.findings),
                "entry": asdict(self.entry),
                "files": self.files,
                "pack": self.pack,
                "public": None if self.public is None else asdict(self.public),
                "lacking": self.lacking,
                "handed": self.handed,
            }
        )


HANDED = "handed"
"""What a supporters' bundle is called among the files that are kept of its plan."""


def proved_from(text: str | bytes) -> Proved:
    """Return what ``Proved.text`` told."""
    found = json.loads(text)
    return Proved(
        name=found["name"],
        title=found["title"],
        place=Place(*found["place"]),
        findings=findings_of(found["findings"]),
        stale=findings_of(found["stale"]),
        newest=tuple(found["newest"]),
        layouts=layouts_from(found["layouts"]),
        quiet=found["quiet"],
        access=Access(**found["access"]),
    )


def layouts_from(rows: Iterable[dict[str, Any]]) -> tuple[Fresh, ...]:
    """Return layouts that were told as plain values."""
    return tuple(Fresh(**each) for each in rows)


def written_from(text: str | bytes) -> Written:
    """Return what ``Written.text`` told."""
    found = json.loads(text)
    public = found["public"]
    return Written(
        findings=findings_of(found["findings"]),
        entry=PlanEntry(**found["entry"]),
        files=tuple(FileRow(*each) for each in found["files"]),
        pack=found["pack"],
        public=Public(**{name: _frozen(each) for name, each in public.items()}) if public else None,
        lacking=found["lacking"],
        handed=found["handed"],
    )


def _frozen(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value
