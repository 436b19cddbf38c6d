"""Supporters' bundles sealed for the keys of their circles, as files of the site."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

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
    """A sealed bundle: its row in the manifest, whom it is for, and by which keys."""

    row: FileRow
    title: str
    circle: str
    keys: tuple[str, ...]
    order: SealOrder


@dataclass(frozen=True, slots=True, kw_only=True)
class SealOrder:
    """What is sealed, and how."""

    plan: str
    written: Written
    head: Head
    content_key: bytes = field(repr=False)


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
        rings, orders = dict(before), []
        for name in wanted:
            circle, each = proved[name].access.circle, written[name]
            ring, found = sealing_of(rings[circle], each.handed, each.entry.bundle_bytes)
            rings[circle] = ring
            head = head_of(ring, found)
            orders.append(
                SealOrder(plan=name, written=each, head=head, content_key=found.content_key)
            )
        for circle, ring in rings.items():
            if ring != before[circle]:
                cabinet.keep(ring)
    return tuple(_sealed_file(how, rings[proved[each.plan].access.circle], each) for each in orders)


def _sealed_file(how: Renewing, ring: Ring, order: SealOrder) -> SealedFile:
    content = _sealed(how, order)
    return SealedFile(
        row=FileRow(order.written.entry.sealed, len(content), sha256(content)),
        title=order.written.entry.title,
        circle=ring.circle,
        keys=tuple(each.name for each in ring.holding),
        order=order,
    )


def _sealed(how: Renewing, order: SealOrder) -> bytes:
    """Return a sealed file: the one that is kept, or sealed to the same bytes."""
    key = key_of("sealed", order.written.handed, head_bytes(order.head).hex())
    found = how.store.get(key)
    if found is None:
        plain = dict(unpacked(pack_of(how, order.plan, order.written)))[HANDED]
        found = b"".join(sealed(order.head, order.content_key, io.BytesIO(plain)))
        how.store.put(key, found)
    return found


class WithSealed(Mapping[str, bytes]):
    """All files of a site by name, sealed bundles among them; these are held one at a time."""

    def __init__(
        self, how: Renewing, files: Mapping[str, bytes], bundles: tuple[SealedFile, ...]
    ) -> None:
        """``files`` are all others."""
        self._how, self._files = how, files
        self._orders = {each.row.name: each.order for each in bundles}

    def __getitem__(self, name: str) -> bytes:
        order = self._orders.get(name)
        return self._files[name] if order is None else _sealed(self._how, order)

    def __iter__(self) -> Iterator[str]:
        yield from self._files
        yield from self._orders

    def __len__(self) -> int:
        return len(self._files) + len(self._orders)
