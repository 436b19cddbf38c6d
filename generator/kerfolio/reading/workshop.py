"""Reads a whole workshop folder; the only way from files to the model."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, in_order, warning
from kerfolio.basis.place import Place
from kerfolio.basis.shipped import shipped
from kerfolio.basis.shortened import shortened
from kerfolio.geometry.letters import letter_fault
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Log
from kerfolio.model.workshop import Identity, Page, Picture, Workshop
from kerfolio.reading.circle import circle_fault
from kerfolio.reading.desk import Desk, Taken
from kerfolio.reading.identity import IDENTITY
from kerfolio.reading.log_ids import doubled_ids, with_ids
from kerfolio.reading.log_names import log_names
from kerfolio.reading.nodes import Mapping
from kerfolio.reading.page import read_page
from kerfolio.reading.plan import plan_name_fault, read_plan
from kerfolio.reading.plan_folders import plan_folders, titled_twice
from kerfolio.reading.release_record import read_records
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.stock import STOCK, Kept, doubled, make_stock, overlay
from kerfolio.reading.trial import LOG
from kerfolio.reading.visit import Visit
from kerfolio.reading.yaml_text import read_yaml

_MANIFEST = "workshop.yaml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What all plans of a workshop share, with the findings on it; ``plans`` names their folders.

    ``unread_stock`` are items that could not be read. Where ``licence_wanting``, each plan must
    state its own.
    """

    folder: Path
    identity: Identity | None
    stock: Stock
    log: Log
    pages: tuple[Page, ...]
    plans: tuple[str, ...]
    pictures: tuple[Picture, ...]
    decodes: bool
    findings: tuple[Finding, ...]
    unread_stock: frozenset[str]
    licence_wanting: bool


def read_workshop(
    folder: Path, *, pictures: bool = True
) -> tuple[Workshop | None, tuple[Finding, ...]]:
    """Return a workshop as far as it can be read, with every finding on every file.

    None when the folder is no workshop or its ``workshop.yaml`` cannot be taken apart. Without
    ``pictures`` none is decoded, which takes long, and the workshop holds none.
    """
    shared, refused = read_shared(folder, pictures=pictures)
    if shared is None:
        return None, refused
    workshop, findings = with_plans(shared, shared.plans)
    return workshop, in_order((*shared.findings, *findings))


def read_shared(
    folder: Path, *, pictures: bool = True
) -> tuple[Shared | None, tuple[Finding, ...]]:
    """Return what plans share, or None with why the folder is no workshop. No plan is read."""
    refusal = _refusal(folder)
    if refusal is not None:
        return None, (refusal,)
    visit = Visit(folder, decodes=pictures)
    identity = _identity(visit)
    stock = _stock(visit)
    log = _log(visit, stock)
    pages = tuple(_pages(visit))
    shared = Shared(
        folder=folder,
        identity=identity,
        stock=stock,
        log=log,
        pages=pages,
        plans=plan_folders(folder),
        pictures=visit.taken,
        decodes=pictures,
        findings=shortened(visit.findings),
        unread_stock=visit.unread_stock,
        licence_wanting=visit.licence_wanting,
    )
    return shared, ()


def with_plans(shared: Shared, names: Iterable[str]) -> tuple[Workshop | None, tuple[Finding, ...]]:
    """Return the workshop with some of its plans, and the findings on those alone.

    None where ``workshop.yaml`` cannot be taken apart.
    """
    visit = Visit(
        shared.folder,
        decodes=shared.decodes,
        unread_stock=shared.unread_stock,
        licence_wanting=shared.licence_wanting,
    )
    found = (_plan(visit, shared.folder / "plans" / name, shared.identity) for name in names)
    plans = tuple(each for each in found if each is not None)
    visit.findings += titled_twice((each.name, each.title, each.place) for each in plans)
    findings = shortened(visit.findings)
    if shared.identity is None:
        return None, findings
    workshop = Workshop(
        identity=shared.identity,
        stock=shared.stock,
        plans=plans,
        trials=shared.log.trials,
        sent=shared.log.sent,
        pages=shared.pages,
        pictures=(*shared.pictures, *visit.taken),
    )
    return workshop, findings


def read_identity(folder: Path) -> Identity | None:
    """Return what ``workshop.yaml`` states, None where it cannot be read."""
    if _refusal(folder) is not None:
        return None
    return _identity(Visit(folder, decodes=False))


def _refusal(folder: Path) -> Finding | None:
    shown = Place(folder.name or str(folder))
    begin = "`kerfolio start DIR` writes a new workshop."
    if not folder.exists():
        return error("no-workshop", f"no folder {quoted(str(folder))}", shown, begin)
    if not folder.is_dir():
        advice = "Name the folder that holds `workshop.yaml`."
        return error("no-workshop", f"{quoted(folder.name)} is a file", shown, advice)
    if not (folder / _MANIFEST).is_file():
        other = next((each.name for each in sorted(folder.iterdir()) if _is_misnamed(each)), "")
        if other:
            advice = f"Rename it to `{_MANIFEST}`."
            return error("no-workshop", f"{quoted(other)} is not read", Place(other), advice)
        message = f"no `{_MANIFEST}` in this folder"
        return error("no-workshop", message, Place(_MANIFEST), f"Name a workshop's folder; {begin}")
    return None


def _is_misnamed(path: Path) -> bool:
    """Tell whether a file is the workshop's in all but the last letters of its name."""
    return path.name.lower() in ("workshop.yml", _MANIFEST) and path.is_file()


def _identity(visit: Visit) -> Identity | None:
    content = visit.content(visit.folder / _MANIFEST)
    if content is None:
        return None
    node, faults = read_yaml(content, _MANIFEST)
    visit.findings += faults
    if node is None:
        return None
    visit.licence_wanting = isinstance(node, Mapping) and node.get("licence") is None
    desk = Desk(shelf=Shelf(folder=visit.folder, prefix=""))
    identity = IDENTITY.read_named("", Place(_MANIFEST, 1, 1), node, desk)
    visit.findings += desk.findings
    visit.findings += _letter_faults(identity) if identity else ()
    return identity


def _letter_faults(identity: Identity) -> Iterator[Finding]:
    """Yield a warning for letters on the cover of every booklet that cannot be printed."""
    texts = (("the workshop's title", identity.title), ("the maker's name", identity.maker))
    for what, text in texts:
        fault = letter_fault(what, text)
        if fault is not None:
            yield warning("unprintable-letter", fault, identity.place, fault.advice)


def _files(folder: Path, ending: str) -> list[Path]:
    """Return the files of a folder with an ending, sorted by name; hidden ones are left out."""
    if not folder.is_dir():
        return []
    found = [each for each in folder.iterdir() if each.suffix == ending and each.is_file()]
    return sorted(each for each in found if not each.name.startswith((".", "_")))


def _warn_of_yml(visit: Visit, folder: Path) -> None:
    for path in _files(folder, ".yml"):
        advice = f"Rename it to `{path.stem}.yaml`."
        message = f"{quoted(path.name)} is not read"
        visit.findings.append(warning("not-read", message, Place(visit.shown(path)), advice))


def _stock(visit: Visit) -> Stock:
    desk = Desk()
    library, faults = _library()
    desk.findings += faults
    own: Kept = {}
    _warn_of_yml(visit, visit.folder / "stock")
    for path in _files(visit.folder / "stock", ".yaml"):
        content = visit.content(path)
        if content is None:
            continue
        sections = _sections(content, visit.shown(path), desk)
        for fields, complaint in doubled(own, sections):
            desk.complain("doubled-key", complaint, fields.place)
        own = overlay(own, sections)
    stock = make_stock(library, own, desk)
    visit.findings += desk.findings
    visit.unread_stock = frozenset(desk.unread)
    return stock


@cache
def _library() -> tuple[Kept, tuple[Finding, ...]]:
    """Return the shipped library; it cannot change while the program runs."""
    desk = Desk()
    library: Kept = {}
    for path in _files(shipped("content"), ".yaml"):
        library = overlay(library, _sections(path.read_bytes(), f"content/{path.name}", desk))
    return library, tuple(desk.findings)


def _sections(content: bytes, file: str, desk: Desk) -> Kept:
    node, faults = read_yaml(content, file)
    desk.findings += faults
    if node is None:
        return {}
    return STOCK.read_named("", Place(file, 1, 1), node, desk) or {}


def _plan(visit: Visit, folder: Path, identity: Identity | None) -> Plan | None:
    plan = _stated(visit, folder) if visit.holds(folder) else None
    if plan is None:
        return None
    if identity is not None and plan.circle is not None:
        fault = circle_fault(plan, identity.circles)
        if fault is not None:
            place = plan.circle.place
            visit.findings.append(error("unknown-name", str(fault), place, fault.advice))
    return _as_set(_licensed(plan, identity.licence if identity else "", visit), identity)


def _licensed(plan: Plan, licence: str, visit: Visit) -> Plan:
    """Return a plan with the workshop's licence where it states none."""
    if not plan.licence and not licence and visit.licence_wanting:
        advice = "Write `licence: CC-BY-SA-4.0`, say: readers ask what they may do with a plan."
        visit.findings.append(warning("no-licence", "no licence is stated", plan.place, advice))
    return plan if plan.licence else replace(plan, licence=licence)


def _as_set(plan: Plan, identity: Identity | None) -> Plan:
    """Return a plan with the workshop's settings: its play, what its bores by hand may be off, its
    machine and the extra of reliefs where the plan states none.
    """
    if identity is None:
        return plan
    extra = identity.relief_extra if plan.relief.extra is None else plan.relief.extra
    relief = replace(plan.relief, extra=extra)
    as_far = None if plan.as_far is None else _as_set(plan.as_far, identity)
    return replace(
        plan,
        relief=relief,
        play=identity.play,
        hand=identity.hand_bore,
        bed=identity.bed,
        machine=identity.machine,
        as_far=as_far,
    )


def _stated(visit: Visit, folder: Path) -> Plan | None:
    shown, name = visit.shown(folder), folder.name
    fault = plan_name_fault(name)
    if fault is not None:
        visit.findings.append(error("name", str(fault), Place(shown), fault.advice))
    file = folder / "plan.yaml"
    if not file.is_file():
        advice = "Name it `plan.yaml`." if (folder / "plan.yml").is_file() else _NO_PLAN
        visit.findings.append(
            error("no-plan", "no `plan.yaml` in this folder", Place(shown), advice)
        )
        return None
    content = visit.content(file)
    if content is None:
        return None
    shelf = Shelf(folder=folder, prefix=shown, decodes=visit.decodes)
    read = read_plan(content, name, shelf, visit.unread_stock)
    visit.findings += read.findings
    visit.keep_pictures(shown, dict(read.pictures))
    if read.plan is None:
        return None
    return replace(
        read.plan,
        layout_text=_layout_text(visit, folder / "layout.json"),
        other_layouts=tuple(_other_layouts(visit, folder)),
        records=read_records(visit, folder, read.plan.releases),
    )


_NO_PLAN = "`kerfolio add plan NAME` writes one; a folder that begins with `_` is passed over."


def _layout_text(visit: Visit, path: Path) -> str:
    """Return the frozen layout as text; what no reader could use is as good as none."""
    if not path.is_file():
        return ""
    content = visit.content(path)
    return content.decode("utf-8", "replace") if content is not None else ""


def _other_layouts(visit: Visit, folder: Path) -> Iterator[tuple[str, str]]:
    """Yield the frozen layouts for other sheets and beds, by their labels."""
    for path in sorted(folder.glob("layout-*.json")):
        label = path.name.removeprefix("layout-").removesuffix(".json")
        if ".previous" not in label:
            yield label, _layout_text(visit, path)


def _log(visit: Visit, stock: Stock) -> Log:
    files = tuple(_log_files(visit, stock))
    log = Log(
        trials=tuple(each for file in files for each in file.trials),
        sent=tuple(each for file in files for each in file.sent),
    )
    visit.findings += doubled_ids(log)
    return with_ids(log)


def _log_files(visit: Visit, stock: Stock) -> Iterable[Log]:
    folder = visit.folder / "log"
    _warn_of_yml(visit, folder)
    names = log_names(stock, visit.unread_stock, _plan_folders(visit.folder / "plans"))
    shelf = Shelf(folder=folder, prefix="log", decodes=visit.decodes)
    pictures: dict[str, Taken] = {}
    for path in _files(folder, ".yaml"):
        content = visit.content(path)
        node, faults = read_yaml(content, visit.shown(path)) if content is not None else (None, ())
        visit.findings += faults
        if node is None:
            continue
        desk = Desk(shelf=shelf, pictures=pictures, nominals=names.nominals)
        log = LOG.read_named("", Place(visit.shown(path), 1, 1), node, desk) or Log()
        for each in log.entries:
            names.check(each, desk)
        visit.findings += desk.findings
        visit.keep_pictures("log", desk.decoded)
        yield log


def _plan_folders(root: Path) -> list[str]:
    return [each.name for each in root.iterdir() if each.is_dir()] if root.is_dir() else []


def _pages(visit: Visit) -> Iterable[Page]:
    for path in _files(visit.folder / "pages", ".md"):
        content = visit.content(path)
        if content is None:
            continue
        page, findings = read_page(content, visit.shown(path), path.stem)
        visit.findings += findings
        if page is not None:
            yield page
