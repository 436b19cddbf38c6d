"""Keys of a workshop's circles: listed, made, withdrawn."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.model.circle import Circle
from kerfolio.publishing.cabinet import Cabinet, cabinet_faults, cabinet_of
from kerfolio.reading.workshop import read_identity, read_shared
from kerfolio.sealing.fault import SealError
from kerfolio.sealing.passphrase import new_key
from kerfolio.sealing.ring import Ring, new_ring, with_key, without_key

_WORKSHOP = Place("workshop.yaml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Keys:
    """The keys of a workshop: its circles that have a name, and their rings by it.

    Rings without a circle are those of circles that have gone. ``cabinet`` is None where the
    workshop cannot be read, which the findings tell.
    """

    findings: tuple[Finding, ...]
    cabinet: Cabinet | None = None
    title: str = ""
    circles: tuple[Circle, ...] = ()
    rings: tuple[Ring, ...] = ()

    def ring(self, circle: str) -> Ring | None:
        """Return the ring of a circle, None where it never had a key."""
        return next((each for each in self.rings if each.circle == circle), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyChange:
    """What came of making or withdrawing a key.

    ``name`` is the key's, empty where nothing was changed; ``words`` are those of a key just made,
    which are kept nowhere; ``left`` how many keys of the circle hold.
    """

    findings: tuple[Finding, ...]
    circle: Circle | None = None
    name: str = ""
    words: str = field(default="", repr=False)
    left: int = 0


def keys_of(workshop: Path, asked: Path | None = None) -> Keys:
    """Return the keys of a workshop; ``asked`` is the folder asked for. Raises OSError."""
    identity = read_identity(workshop)
    if identity is None:
        shared, found = read_shared(workshop, pictures=False)
        return Keys(findings=found if shared is None else shared.findings)
    cabinet = cabinet_of(workshop, identity.title, identity.keys, asked)
    findings = tuple(cabinet_faults(cabinet, workshop, (workshop / "site",)))
    circles = tuple(each for each in identity.circles if each.name)
    try:
        rings = tuple(cabinet.rings().values())
    except SealError as wrong:
        place = Place(str(cabinet.folder))
        findings = (*findings, error("keys-damaged", str(wrong), place, wrong.advice))
        return Keys(findings=findings, title=identity.title, circles=circles)
    return Keys(
        findings=findings,
        cabinet=None if has_errors(findings) else cabinet,
        title=identity.title,
        circles=circles,
        rings=rings,
    )


def make_key(workshop: Path, name: str, month: str, asked: Path | None = None) -> KeyChange:
    """Draw a key for a circle and a month (``2026-12``). Raises OSError."""
    keys = keys_of(workshop, asked)
    if keys.cabinet is None:
        return KeyChange(findings=keys.findings)
    circle = next((each for each in keys.circles if each.name == name), None)
    if circle is None:
        return KeyChange(findings=(*keys.findings, _unknown(name, keys.circles)))
    words = new_key()
    with keys.cabinet.alone():
        ring, made = with_key(keys.cabinet.ring(name) or new_ring(name), month, words)
        keys.cabinet.keep(ring)
    return KeyChange(
        findings=keys.findings,
        circle=circle,
        name=made.name,
        words=words,
        left=len(ring.holding),
    )


def withdraw_key(workshop: Path, name: str, key: str, asked: Path | None = None) -> KeyChange:
    """Withdraw a key of a circle, called by its month or as it is listed. Raises OSError."""
    keys = keys_of(workshop, asked)
    if keys.cabinet is None:
        return KeyChange(findings=keys.findings)
    with keys.cabinet.alone():
        ring = keys.cabinet.ring(name)
        if ring is None:
            known = (*keys.circles, *(Circle(who="", name=each.circle) for each in keys.rings))
            return KeyChange(findings=(*keys.findings, _unknown(name, known)))
        try:
            ring = without_key(ring, key)
        except KeyError:
            holding = ", ".join(each.name for each in ring.holding)
            advice = f"These hold: {holding}." if holding else "None of its keys holds."
            message = f"`{name}` has no key {quoted(key)}"
            return KeyChange(findings=(*keys.findings, error("no-key", message, _WORKSHOP, advice)))
        keys.cabinet.keep(ring)
    circle = next((each for each in keys.circles if each.name == name), None)
    return KeyChange(
        findings=keys.findings,
        circle=circle or Circle(who=name, name=name),
        name=key,
        left=len(ring.holding),
    )


def _unknown(name: str, circles: Iterable[Circle]) -> Finding:
    known = [each.name for each in circles if each.name]
    advice = f"Name it in `workshop.yaml`: `circles: {{{name}: {{who: ...}}}}`."
    if known:
        advice = did_you_mean(name, known)
    return error("unknown-name", f"unknown circle {quoted(name)}", _WORKSHOP, advice)
