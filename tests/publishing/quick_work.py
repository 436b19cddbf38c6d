"""Stands in for the long work of a publish: it writes down all that the work could have read.

What is kept under a key must hang on nothing that is not in the key: a result that tells everything
shows whatever was left out.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from kerfolio.basis.finding import has_errors, note
from kerfolio.bundles.manifest import PlanEntry, rows_of
from kerfolio.keeping import program
from kerfolio.keeping.kept import Kept
from kerfolio.keeping.pack import packed
from kerfolio.keeping.store import Store
from kerfolio.model.showing import Public
from kerfolio.publishing import plan_work, site
from kerfolio.publishing.bare import bare, of_bare
from kerfolio.publishing.freeze import Fresh
from kerfolio.publishing.plan_record import HANDED, Proved, Written
from kerfolio.publishing.plan_work import PlanMade, PlanOrder
from kerfolio.publishing.shared_once import shared_once
from kerfolio.publishing.way_out import Access, Way, access_of
from kerfolio.reading.workshop import read_shared, with_plans


@dataclass
class Worked:
    """What was worked on, in turn: plans that were drawn, ``PLAN?`` those only proved, ``site``."""

    on: list[str] = field(default_factory=list)

    def since(self) -> list[str]:
        """Return what was worked on since this was asked last."""
        found, self.on = self.on, []
        return sorted(found)


def worked(monkeypatch: pytest.MonkeyPatch) -> Worked:
    """Let publishes do quick work, and note what they work on."""
    noted = Worked()

    def make_plan(order: PlanOrder, say: object = None) -> PlanMade:
        noted.on.append(order.name if order.draws else f"{order.name}?")
        return quick_plan(order)

    def log_and_files(
        folder: Path, plans: Sequence[Mapping[str, Any]], titles: Mapping[str, str]
    ) -> tuple[bytes, dict[str, bytes]]:
        noted.on.append("site")
        shared, _ = read_shared(folder)
        assert shared is not None
        told = repr((replace(shared, folder=Path(), plans=()), plans, titles)).encode()
        return told, {"index.html": told}

    monkeypatch.setattr(plan_work, "make_plan", make_plan)
    monkeypatch.setattr(site, "log_and_files", log_and_files)
    return noted


def quick_plan(order: PlanOrder) -> PlanMade:
    """Read a plan, and write down all of it and of what it shares with others."""
    shared = shared_once(order.folder, order.shared)
    workshop, found = with_plans(shared, (order.name,))
    assert workshop is not None
    plan = next(iter(workshop.plans), None)
    proved = Proved(
        name=order.name,
        title=plan.title if plan else "",
        place=plan.place if plan else found[0].place,
        findings=found,
        layouts=() if plan is None or plan.layout_text else (_layout(order.name),),
        access=access_of(plan) if plan else Access(),
    )
    if plan is None or has_errors(found) or not order.draws:
        return PlanMade(proved.text(), "", b"")
    unfrozen = replace(plan, layout_text="")  # frozen, it is as it was computed
    told = repr(replace(workshop, plans=(unfrozen,), pages=()))
    kept = Kept(Store(order.store))
    shapes = kept.of(_told, bare((unfrozen, workshop.stock.sheets)))
    drawings = of_bare(kept, _drawn, unfrozen, workshop.identity.reader_of(plan))
    menu = [(each.order, each.title) for each in shared.pages]
    way = order.handing.way_of(proved.access)
    page = f"{way} {program.program()} {menu} {told} {shapes.decode()} {drawings}"
    files = {f"plans/{order.name}/index.html": page.encode()}
    bundle = told.encode()
    handed = {} if way is Way.TO_ALL else {HANDED: bundle}
    pack = packed({**files, **handed})
    written = Written(
        findings=(note("drawn", f"{plan.title} was drawn", plan.place),),
        entry=_entry(order.name, plan.title, len(bundle), sealed=way is Way.SEALED),
        files=rows_of(files),
        pack=sha256(pack).hexdigest(),
        public=Public(title=plan.title, always=(), shown=(), kept=()) if handed else None,
        lacking=False,
        handed=sha256(bundle).hexdigest() if handed else "",
    )
    return PlanMade(proved.text(), written.text(), pack)


def _told(whole: object) -> bytes:
    """Stands in for the files that hang on shapes alone: tells all that they could hang on."""
    return f"{program.program()} {whole!r}".encode()


def _drawn(*shown: object) -> tuple[str, ...]:
    """Stands in for drawings, which tell whom they are for in his words."""
    return tuple(map(repr, shown))


def _layout(name: str) -> Fresh:
    file = f"plans/{name}/layout.json"
    return Fresh(file=file, text="{}\n", why="there was none", lying="", sheets=1, engine="own")


def _entry(name: str, title: str, size: int, *, sealed: bool) -> PlanEntry:
    return PlanEntry(
        name=name,
        title=title,
        version="1.0.0",
        access="open",
        bundle=f"{name}.zip",
        bundle_bytes=size,
        bundle_sha256="",
        listed={"title": title},
        sealed=f"plans/{name}/downloads/{name}.zip.sealed" if sealed else "",
    )
