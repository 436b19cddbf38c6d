"""``kerfolio look``: one picture of a plan, or of one of its parts, for the maker.

A picture of what has not changed is taken from the workshop's store: nothing is read or drawn.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.disk.put import put
from kerfolio.keeping.findings import findings_json, findings_of
from kerfolio.keeping.pack import packed, unpacked
from kerfolio.keeping.store import Store
from kerfolio.publishing.sources import LAYOUTS, sources_of, store_of
from kerfolio.reading.plan_folders import unknown_plan

ENDINGS = (".svg", ".png")


@dataclass(frozen=True, slots=True, kw_only=True)
class LookRequest:
    """What to look at: a plan of a workshop, or a ``part`` of it; ``out`` is None for the usual."""

    folder: Path
    plan: str
    part: str = ""
    out: Path | None = None

    @property
    def ending(self) -> str:
        """What the picture's name ends in, which says its format."""
        return self.out.suffix if self.out else ENDINGS[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """The picture that was written, None where there was nothing to show, and what was found."""

    written: Path | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookPicture:
    """A picture, or None, of the part meant; and what was found."""

    content: bytes | None
    part: str
    findings: tuple[Finding, ...]


def look(request: LookRequest) -> Looked:
    """Draw a plan as far as it can be drawn and write the picture. Raises OSError."""
    with store_of(request.folder) as store:
        sources = sources_of(request.folder, store)
        if sources is None:
            made = _drawn(request)
        elif request.plan not in sources.plans:
            findings = (*sources.findings, unknown_plan(request.plan, sources.plans))
            return Looked(written=None, findings=findings)
        else:
            content = sources.of_plan(request.plan, without=LAYOUTS)
            asked = (sources.pages, request.part, request.ending)
            made = _kept(request, store, sources.key("look", request.plan, content, *asked))
    if made.content is None:
        return Looked(written=None, findings=made.findings)
    target = request.out or _usual(request, made.part)
    put(target, made.content)
    return Looked(written=target, findings=made.findings)


def _kept(request: LookRequest, store: Store, key: str) -> LookPicture:
    """Return the picture that is kept under a key, else draw it and keep it."""
    content = store.get(key)
    if content is not None:
        files = dict(unpacked(content))
        told = json.loads(files["told"])
        findings = findings_of(told["findings"])
        return LookPicture(content=files.get("picture"), part=told["part"], findings=findings)
    made = _drawn(request)
    told = {"part": made.part, "findings": findings_json(made.findings)}
    picture = {} if made.content is None else {"picture": made.content}
    store.put(key, packed({"told": json.dumps(told).encode(), **picture}))
    return made


def _drawn(request: LookRequest) -> LookPicture:
    from kerfolio.publishing.look_drawn import look_drawn  # which takes long to load

    return look_drawn(request.folder, request.plan, request.part, request.ending)


def _usual(request: LookRequest, part: str) -> Path:
    name = "-".join(filter(None, (request.plan, part)))
    return request.folder / ".kerfolio" / "look" / f"{name}.svg"
