"""Hardware in words: what it is called, and what one has to know to buy the right one."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import drill_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.thickness import precise_in
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import HardwareStock


def hardware_title(edition: Edition, item: str) -> str:
    """Return what a piece of hardware is called, else its name as written."""
    titles = {row.item: row.title for row in edition.hardware}
    stocked = edition.settled.stock.item(item)
    return titles.get(item) or (stocked.title if stocked else item)


def hardware_details(edition: Edition, item: str) -> str:
    """Return what tells it from others, in the plan's unit: ``hexagon socket, ø 6 mm, 50 mm long``.

    Empty for what the stock knows nothing of.
    """
    stocked = edition.settled.stock.item(item)
    return "" if stocked is None else ", ".join(_details(stocked, edition.reader))


def _details(item: HardwareStock, reader: Reader) -> Iterator[str]:
    if item.head:
        yield item.head
    if item.thread is not None and item.kind in ("bolt", "screw", "dowel", "connector"):
        yield f"ø {precise_in(item.thread, reader)}"
    if item.length is not None:
        yield say(reader, "hardwarewords-long", length=precise_in(item.length, reader))
    if item.kind in ("barrel-nut", "tee-nut", "shelf-pin") and item.clearance is not None:
        yield say(reader, "hardwarewords-outside", wide=precise_in(item.clearance, reader))
    if item.kind == "insert" and item.pilot is not None:
        yield say(reader, "hardwarewords-pilot", hole=drill_in(item.pilot, reader))
