"""A site or a bundle looked over: is all there that it says, as it says, and nothing else?

Files are read in pieces, so that none has to be held. Nothing in them is trusted: names that lead
elsewhere are told, not followed.
"""

from __future__ import annotations

import hashlib
import re
import zipfile
import zlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, note
from kerfolio.basis.place import Place
from kerfolio.disk.out_folder import MANIFEST, entries_of, manifest_in
from kerfolio.edition.names import SUMS
from kerfolio.publishing.plan_site import SEALED
from kerfolio.publishing.standing import file_rows
from kerfolio.sealing.fault import SealError
from kerfolio.sealing.form import TAG, head_bytes, read_head

_PIECE = 1024 * 1024
_MOST_BYTES = 2 * 1024**3
"""What a bundle may unpack to: far beyond what a plan makes, and no bomb."""

_SHOWN = 8
_LINE = re.compile("([0-9a-f]{64})  (.+)")
_ANEW = "Publish again; of a bundle, fetch it again or ask the maker for it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Verified:
    """How many files were looked at, and what is not as it should be."""

    files: int
    findings: tuple[Finding, ...]


def verify_site(out: Path) -> Verified:
    """Compare a published folder with its manifest, and its bundles with their own sums.

    Raises OSError.
    """
    manifest = manifest_in(out)
    if manifest is None:
        message = f"no `{MANIFEST}` of a publish stands in this folder"
        return _refused(out, "no-manifest", message, "Name a folder that `kerfolio publish` wrote.")
    stated = {row.name: row.sha256 for row in file_rows(manifest)}
    there = set(entries_of(out)) - {MANIFEST}
    found = {name: sum_of_file(out / name) for name in stated if name in there}
    findings = [*_compared(Place(str(out)), stated, found)]
    findings += _strays(Place(str(out)), there - set(stated))
    count = len(stated)
    for name in sorted(found):
        if name.endswith(".zip") and found[name] == stated[name]:
            inner = verify_bundle(out / name)
            findings += inner.findings
            count += inner.files
        elif name.endswith(SEALED):
            findings += _sealed_faults(out / name)
    return Verified(files=count, findings=tuple(findings))


def verify_bundle(file: Path) -> Verified:
    """Compare what a bundle holds with the sums that stand in it. Raises OSError."""
    if file.name.endswith(SEALED):
        faults = tuple(_sealed_faults(file))
        advice = "Open it with `kerfolio unseal`, and verify what comes of that."
        sealed = note("sealed", "only its length was looked at: it is sealed", _at(file), advice)
        return Verified(files=1, findings=faults or (sealed,))
    try:
        with zipfile.ZipFile(file) as archive:
            return _packed(file, archive)
    except (zipfile.BadZipFile, zlib.error, NotImplementedError, RuntimeError, EOFError):
        return _refused(file, "damaged", "it is no bundle, or it is damaged", _ANEW)


def _packed(file: Path, archive: zipfile.ZipFile) -> Verified:
    entries = {each.filename: each for each in archive.infolist() if not each.is_dir()}
    if sum(each.file_size for each in entries.values()) > _MOST_BYTES:
        return _refused(file, "too-large", "it unpacks to more than any bundle", _ANEW)
    lists = [name for name in entries if name == SUMS or name.endswith(f"/{SUMS}")]
    top = min(lists, key=len, default="")
    if not top:
        message = f"no `{SUMS}` stands in it"
        return _refused(file, "no-sums", message, "Is it a bundle that Kerfolio made?")
    folder = top.removesuffix(SUMS)
    stated: dict[str, str] = {}
    for line in archive.read(entries[top]).decode("utf-8", "replace").splitlines():
        told = _LINE.fullmatch(line)
        if told is None:
            return _refused(file, "damaged", f"a line of `{SUMS}` cannot be read", _ANEW)
        stated[f"{folder}{told[2]}"] = told[1]
    found = {}
    for name in stated.keys() & entries.keys():
        with archive.open(entries[name]) as content:
            found[name] = _sum(content)
    strays = entries.keys() - stated.keys() - {top}
    wrong = [*_compared(_at(file), stated, found), *_strays(_at(file), strays, error)]
    return Verified(files=len(stated), findings=tuple(wrong))


def _compared(
    place: Place, stated: Mapping[str, str], found: Mapping[str, str]
) -> Iterator[Finding]:
    missing = sorted(stated.keys() - found.keys())
    changed = sorted(name for name, each in found.items() if each != stated[name])
    if missing:
        yield error("missing", f"missing: {listed(missing)}", place, _ANEW)
    if changed:
        yield error("changed", f"changed since it was made: {listed(changed)}", place, _ANEW)


def _strays(
    place: Place, names: Iterable[str], make: Callable[..., Finding] = note
) -> Iterator[Finding]:
    strays = sorted(names)
    if strays:
        advice = "Nothing is said of it: see that you know it."
        yield make("stray", f"not written by a publish: {listed(strays)}", place, advice)


def _sealed_faults(file: Path) -> Iterator[Finding]:
    """Yield what is wrong with the form of a sealed file; what is in it nobody sees."""
    try:
        with file.open("rb") as source:
            head = read_head(source)
    except SealError as wrong:
        yield error("damaged", str(wrong), _at(file), wrong.advice)
        return
    length = len(head_bytes(head)) + head.size + TAG * head.chunks
    if file.stat().st_size != length:
        message = "the sealed file is not as long as it says"
        yield error("damaged", message, _at(file), _ANEW)


def listed(names: Iterable[str]) -> str:
    """Return some names of files, the first of them, with how many more there are."""
    every = list(names)
    more = f" and {len(every) - _SHOWN} more" if len(every) > _SHOWN else ""
    return ", ".join(quoted(each, 80) for each in every[:_SHOWN]) + more


def sum_of_file(file: Path) -> str:
    """Return the SHA-256 of a file in hexadecimal, empty for what is none. Raises OSError."""
    if not file.is_file():
        return ""
    with file.open("rb") as source:
        return _sum(source)


def _sum(source: IO[bytes]) -> str:
    found = hashlib.sha256()
    while piece := source.read(_PIECE):
        found.update(piece)
    return found.hexdigest()


def _refused(file: Path, rule: str, message: str, advice: str) -> Verified:
    return Verified(files=0, findings=(error(rule, message, _at(file), advice),))


def _at(file: Path) -> Place:
    return Place(str(file))
