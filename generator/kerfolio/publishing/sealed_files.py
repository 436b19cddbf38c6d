"""Supporters' bundles sealed for the keys of their circles, as files of the site."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kerfolio.bundles.archive import sha256
from kerfolio.bundles.manifest import FileRow
from kerfolio.keeping.pack import unpacked
from kerfolio.keeping.program import key_of
from kerfolio.publishing.cabinet import Cabinet
from kerfolio.publishing.plan_record import HANDED, Proved, Written
from kerfolio.publishing.renewing import Renewing, pack_of
from kerfolio.sealing.chunks import sealed
from kerfolio.sealing.form import Head, head_bytes
from kerfolio.sealing.ring import Ring, head_of, sealing_of


@dataclass(frozen=True, slots=True, kw_only=True)
class SealedFile:
    """A sealed bundle: its row in the manifest, the key it is kept under, whom it is for."""

    row: FileRow
    key: str
    title: str
    circle: str
    keys: tuple[str, ...]


def seal_bundles(
    how: Renewing, cabinet: Cabinet, proved: Mapping[str, Proved], written: Mapping[str, Written]
) -> tuple[SealedFile, ...]:
    """Seal the bundles that go out sealed, as far as that was not done before.

    What was drawn by chance for them is in the cabinet before a byte of them leaves the store.
    Raises SealError where keys are damaged, OSError.
    """
    wanted = [name for name, each in sorted(written.items()) if each.entry.sealed]
    if not wanted:
        return ()
    with cabinet.alone():
        before = cabinet.rings()
        rings, heads = dict(before), {}
        for name in wanted:
            circle, each = proved[name].access.circle, written[name]
            rings[circle], found = sealing_of(rings[circle], each.handed, each.entry.bundle_bytes)
            heads[name] = (head_of(rings[circle], found), found.content_key)
        for circle, ring in rings.items():
            if ring != before[circle]:
                cabinet.keep(ring)
    return tuple(
        _sealed_file(how, rings[proved[name].access.circle], name, written[name], *heads[name])
        for name in wanted
    )


def _sealed_file(
    how: Renewing, ring: Ring, name: str, written: Written, head: Head, content_key: bytes
) -> SealedFile:
    key = key_of("sealed", written.handed, head_bytes(head).hex())
    found = how.store.get(key)
    if found is None:
        plain = dict(unpacked(pack_of(how, name, written)))[HANDED]
        found = b"".join(sealed(head, content_key, io.BytesIO(plain)))
        how.store.put(key, found)
    return SealedFile(
        row=FileRow(written.entry.sealed, len(found), sha256(found)),
        key=key,
        title=written.entry.title,
        circle=ring.circle,
        keys=tuple(each.name for each in ring.holding),
    )


class WithSealed(Mapping[str, bytes]):
    """All files of a site by name, sealed bundles among them; these are held one at a time."""

    def __init__(
        self, how: Renewing, files: Mapping[str, bytes], bundles: tuple[SealedFile, ...]
    ) -> None:
        """``files`` are all others."""
        self._store, self._files = how.store, files
        self._keys = {each.row.name: each.key for each in bundles}

    def __getitem__(self, name: str) -> bytes:
        if name not in self._keys:
            return self._files[name]
        found = self._store.get(self._keys[name])
        if found is None:
            raise RuntimeError(f"`{name}` went from the store while it was published")
        return found

    def __iter__(self) -> Iterator[str]:
        yield from self._files
        yield from self._keys

    def __len__(self) -> int:
        return len(self._files) + len(self._keys)
