"""The kinds of plan to begin from: told in words, and drawn from the very plans they write."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.basis.finding import Finding
from kerfolio.basis.reader import Reader
from kerfolio.disk.put import put
from kerfolio.drawing.assembled_view import assembled_view
from kerfolio.drawing.gallery import ROOM, Entry, gallery
from kerfolio.publishing.begin import begin_plan, begin_workshop, unit_of
from kerfolio.publishing.look_drawn import no_png, picture_bytes
from kerfolio.publishing.sight import sight_of
from kerfolio.reading.beginnings import beginnings
from kerfolio.reading.workshop import read_workshop

_DAY = date(2026, 1, 1)
"""No day shows in a picture."""


def kinds_in_words() -> tuple[tuple[str, str], ...]:
    """Return the name of each kind, and when to take it."""
    return tuple((each.name, f"{each.title}. {each.when}") for each in beginnings())


def draw_kinds(workshop: Path, out: Path) -> tuple[Finding, ...]:
    """Draw all kinds on one sheet, in a workshop's first unit, as the file's ending says.

    Returns why nothing was written. Raises OSError.
    """
    drawing = gallery(tuple(_entries(unit_of(workshop))), "Kinds of plan to begin from")
    content = picture_bytes(drawing, out.suffix)
    if content is None:
        return (no_png(out),)
    out.parent.mkdir(parents=True, exist_ok=True)
    put(out, content)
    return ()


def _entries(unit: str) -> Iterator[Entry]:
    with TemporaryDirectory() as folder:
        shop = Path(folder) / "shop"
        begin_workshop(shop, _DAY, unit)
        for each in beginnings():
            begin_plan(shop, each.name, _DAY, each.name)
        workshop, _ = read_workshop(shop, pictures=False)
    assert workshop is not None, "it was just written"
    plans = {each.name: each for each in workshop.plans}
    for each in beginnings():
        (whole,) = sight_of(plans[each.name], workshop.stock).wholes
        picture = assembled_view(whole.assembled, reader=Reader(unit=unit), room=ROOM)
        yield Entry(title=each.title, name=f"--like {each.name}", text=each.when, picture=picture)
