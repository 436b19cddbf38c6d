"""Bundles made once more from their plans, and compared byte by byte with those at hand.

The workshop is copied first, so that making them changes nothing in it.
"""

from __future__ import annotations

import io
import shutil
import zipfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.place import Place
from kerfolio.bundles.archive import sha256, unzipped
from kerfolio.disk.out_folder import is_site
from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.keys import keys_of
from kerfolio.publishing.plan_site import SEALED
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.verifying import listed
from kerfolio.reading.plan_folders import plan_folders
from kerfolio.sealing.chunks import sealed
from kerfolio.sealing.ring import Ring, head_of

_MADE_ELSE = (
    "The plan, Kerfolio or one of its libraries is another than when it was made: publish it again."
)


def compare_with_plans(
    target: Path, workshop: Path, keys: Path | None = None, say: Say = silent
) -> tuple[Finding, ...]:
    """Make the bundles of a site, or a bundle, anew from their plans; tell what differs.

    Sealed ones are sealed anew as the ``keys`` say they were. Raises OSError.
    """
    at_hand = tuple(_bundles_in(target)) if target.is_dir() else (target,)
    plans = {each: _plan_of(each, workshop) for each in at_hand}
    strange = tuple(_strange(each) for each, plan in plans.items() if not plan)
    wanted = sorted({plan for plan in plans.values() if plan})
    if not wanted:
        return strange
    found = keys_of(workshop, keys)
    with TemporaryDirectory(prefix="kerfolio-verify-") as folder:
        copy = _copied(workshop, Path(folder) / "workshop")
        made, findings = _made(copy, wanted[0] if len(wanted) == 1 else "", say)
    if has_errors(findings):
        return (*strange, *findings)
    told = (_differs(file, made, found.rings) for file, plan in plans.items() if plan)
    return (*strange, *(each for each in told if each is not None))


def _bundles_in(out: Path) -> Iterator[Path]:
    for ending in (".zip", f".zip{SEALED}"):
        yield from sorted(out.glob(f"plans/*/downloads/*{ending}"))


def _plan_of(file: Path, workshop: Path) -> str:
    """Return the plan whose bundle a file is by its name; empty where the workshop has none."""
    fitting = [each for each in plan_folders(workshop) if file.name.startswith(f"{each}-")]
    return max(fitting, key=len, default="")


def _strange(file: Path) -> Finding:
    message = "no plan of the workshop makes a bundle of this name"
    return error("no-plan", message, Place(str(file)), "Name the workshop that made it.")


def _copied(workshop: Path, copy: Path) -> Path:
    """Copy what a workshop is made of: nothing hidden, no site, no bundles."""

    def aside(folder: str, names: list[str]) -> Iterable[str]:
        here = Path(folder)
        top = here.resolve() == workshop.resolve()
        return [
            each
            for each in names
            if each.startswith(".")
            or (top and (each == "supporters" or ((here / each).is_dir() and is_site(here / each))))
        ]

    shutil.copytree(workshop, copy, ignore=aside)
    return copy


def _made(workshop: Path, only: str, say: Say) -> tuple[dict[str, bytes], tuple[Finding, ...]]:
    """Publish a workshop; return its bundles by their names, with the errors of that."""
    out, handed = workshop.parent / "site", workshop.parent / "handed"
    request = Request(folder=workshop, out=out, supporters_out=handed, only=only)
    outcome = publish(request, say)
    if not outcome.published:
        return {}, outcome.findings
    files = (*_bundles_in(out), *handed.glob("*.zip"))
    return {each.name: each.read_bytes() for each in files}, ()


def _differs(file: Path, made: dict[str, bytes], rings: tuple[Ring, ...]) -> Finding | None:
    """Return the finding on a bundle that is not what its plan makes, or None."""
    plain_name = file.name.removesuffix(SEALED)
    found, place = made.get(plain_name), Place(str(file))
    if found is None:
        stem = plain_name.rpartition("-")[0]
        now = next((each for each in made if each.startswith(f"{stem}-")), "none of it")
        message = f"the workshop makes `{now}` now, and no `{plain_name}`"
        advice = "Verify it with the workshop as it was at that release."
        return error("another-release", message, place, advice)
    at_hand = file.read_bytes()
    if file.name.endswith(SEALED):
        if any(again == at_hand for again in _sealed_again(found, rings)):
            return None
        message = "it is not what its plan makes, sealed as the keys say"
        return error("not-its-plan", message, place, f"{_MADE_ELSE} Or keys lie elsewhere.")
    if at_hand == found:
        return None
    message = f"it is not what its plan makes; it differs in {_inner(at_hand, found)}"
    return error("not-its-plan", message, place, _MADE_ELSE)


def _sealed_again(plain: bytes, rings: tuple[Ring, ...]) -> Iterator[bytes]:
    """Yield a content sealed in each way that it was sealed before."""
    of = (sha256(plain), len(plain))
    for ring in rings:
        for each in ring.sealed:
            if (each.sha256, each.size) == of:
                head = head_of(ring, each)
                yield b"".join(sealed(head, each.content_key, io.BytesIO(plain)))


def _inner(one: bytes, other: bytes) -> str:
    """Return which files two bundles differ in."""
    try:
        a, b = unzipped(one), unzipped(other)
    except zipfile.BadZipFile:
        return "all: it is damaged"
    names = sorted(each for each in {*a, *b} if a.get(each) != b.get(each))
    return listed(names) or "how it is packed"
