"""A published site brought to where it goes live: content first, pages after it, its manifest last.

So no page that is there leads to a file that is not yet; and a run that was stopped is finished by
the next one, since what is there already is not brought again.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.place import Place
from kerfolio.disk.out_folder import MANIFEST, manifest_in
from kerfolio.model.sending import Sending
from kerfolio.publishing.proof import proved_findings
from kerfolio.publishing.refusals import among_sources
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.send_by_rsync import RsyncCarrier, SendError, rsync_is_there
from kerfolio.publishing.send_to_folder import FolderCarrier
from kerfolio.publishing.standing import file_rows
from kerfolio.publishing.verifying import verify_site
from kerfolio.reading.workshop import read_identity

_HOST = re.compile(r"(?:[A-Za-z0-9_][\w.-]*@)?([A-Za-z0-9][A-Za-z0-9.-]*|\[[0-9A-Fa-f:]+\]):(.*)")
"""A host's folder; one letter before a colon is a disk of Windows."""

_PAGE = re.compile(r".*\.html|feed\.xml|sitemap\.xml|robots\.txt")
"""What leads to other files, and so comes after them."""


class Carrier(Protocol):
    """Brings files of a site to one place."""

    def manifest(self) -> dict[str, Any]:
        """Return the manifest that stands there, empty where none does."""

    def bring(self, names: Sequence[str], *, dry: bool) -> tuple[str, ...]:
        """Bring files; return those that were not there like that."""

    def take_away(self, names: Iterable[str], *, dry: bool) -> tuple[str, ...]:
        """Remove files; return those that were there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SendRequest:
    """What to send and where: ``to`` outranks what ``workshop.yaml`` states.

    With ``dry`` nothing is changed there. With ``deletes`` goes what an earlier send brought and
    the site no longer has.
    """

    workshop: Path
    site: Path
    to: str = ""
    dry: bool = False
    deletes: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """What came of it: files brought, removed, or ``left`` there though the site lacks them.

    Of a dry run, those that would be. ``files`` is how many the site has.
    """

    findings: tuple[Finding, ...]
    to: str = ""
    brought: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    files: int = 0


def send(request: SendRequest, say: Say = silent) -> Sent:
    """Send a site; whatever does not prove or is not whole stays here. Raises OSError."""
    identity = read_identity(request.workshop)
    stated = identity.send if identity else Sending()
    to = request.to or stated.to
    faults = tuple(_faults(request, to))
    if not faults:
        say(f"checking {request.site}")
        faults = verify_site(request.site).findings
    if not has_errors(faults):
        say("proving the workshop")
        faults = (*faults, *(f for f in proved_findings(request.workshop) if has_errors((f,))))
    if has_errors(faults):
        return Sent(findings=faults, to=to)
    carrier = _carrier(request, to, stated.port if to == stated.to else 0)
    try:
        return _sent(request, to, carrier, faults, say)
    except SendError as trouble:
        return Sent(findings=(*faults, _stopped(to, trouble)), to=to)


def _sent(
    request: SendRequest, to: str, carrier: Carrier, faults: tuple[Finding, ...], say: Say
) -> Sent:
    names = sorted(row.name for row in file_rows(manifest_in(request.site) or {}))
    say(f"looking at what stands in {to}")
    before = {row.name for row in file_rows(carrier.manifest()) if _is_inside(row.name)}
    old = sorted(before - {*names, MANIFEST})
    brought: list[str] = []
    for words, some in _stages(names):
        say(f"sending {words}")
        brought += carrier.bring(some, dry=request.dry)
    removed = carrier.take_away(old, dry=request.dry) if request.deletes else ()
    return Sent(
        findings=faults,
        to=to,
        brought=tuple(brought),
        removed=tuple(removed),
        left=() if request.deletes else tuple(old),
        files=len(names) + 1,
    )


def _stages(names: Sequence[str]) -> Iterator[tuple[str, tuple[str, ...]]]:
    yield "content", tuple(each for each in names if not _PAGE.fullmatch(each))
    yield "pages", tuple(each for each in names if _PAGE.fullmatch(each))
    yield "the manifest", (MANIFEST,)


def _is_inside(name: str) -> bool:
    """Tell whether a name of a manifest, which somebody may have changed, leads nowhere else."""
    parts = name.split("/")
    return not {"", ".", ".."} & set(parts) and name.isprintable()


def _carrier(request: SendRequest, to: str, port: int) -> Carrier:
    if is_host(to):
        return RsyncCarrier(request.site, to, port)
    return FolderCarrier(request.site, _folder(request, to))


def is_host(to: str) -> bool:
    """Tell whether a place is a host's folder, and none of this machine."""
    found = _HOST.fullmatch(to)
    return found is not None and len(found[1]) > 1


def _folder(request: SendRequest, to: str) -> Path:
    """Return a folder that was named: in ``workshop.yaml``, from the workshop on."""
    return Path(to).expanduser() if request.to else request.workshop / Path(to).expanduser()


def _faults(request: SendRequest, to: str) -> Iterator[Finding]:
    """Yield what speaks against a place before anything is looked at."""
    place = Place("workshop.yaml")
    if not to:
        advice = "Write `send: {to: ada@bench.example:www}` in workshop.yaml, or use --to."
        yield error("send-unsaid", "nothing says where to send", place, advice)
        return
    if to.startswith("-") or not to.isprintable() or (":" in to and "//" in to):
        advice = "Write a folder, or a host's as `ada@bench.example:www`."
        yield error("send-odd", f"{quoted(to)} is no place to send to", place, advice)
        return
    if is_host(to):
        if not rsync_is_there():
            advice = "Install rsync and SSH, or send to a folder and bring that to your host."
            yield error("no-rsync", "rsync is not installed", place, advice)
        return
    target, site = _folder(request, to).resolve(), request.site.resolve()
    if target == site or site in target.parents or target in site.parents:
        advice = "Name a folder apart from it."
        yield error("send-onto-site", "it would be sent onto itself", Place(str(target)), advice)
        return
    if (target / "workshop.yaml").exists():
        advice = "Name another folder."
        yield error("send-odd", "a workshop stands there", Place(str(target)), advice)
        return
    yield from among_sources(request.workshop, target, "--to")


def _stopped(to: str, trouble: SendError) -> Finding:
    advice = "What is there stays; run it again, and it goes on where it stopped."
    return error("send-stopped", f"{trouble.strerror}", Place(to), advice)
