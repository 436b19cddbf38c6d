"""Writes frozen layouts beside their plans; nothing that a person made is lost on the way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import chain, count
from pathlib import Path

from kerfolio.basis.finding import Finding, in_order, note
from kerfolio.disk.put import put
from kerfolio.layouts.check import layout_place
from kerfolio.layouts.frozen import CHANGED, freeze, lost_with
from kerfolio.layouts.layout import Layout
from kerfolio.publishing.examine import Examined, LaidOut


@dataclass(frozen=True, slots=True, kw_only=True)
class Frozen:
    """A layout written to ``file``, and why.

    ``spare`` is where the one it replaced was kept, ``reason`` why it was; None where that one can
    be computed again.
    """

    file: Path
    layout: Layout
    why: str
    spare: Path | None = None
    reason: str = ""


def freeze_layouts(folder: Path, found: Iterable[LaidOut]) -> tuple[Frozen, ...]:
    """Write ``layout.json`` of every plan whose layout was computed anew.

    One that was moved by hand, or laid out by an engine asked for, is kept beside it as
    ``layout.previous.json``. Raises OSError when the disk refuses.
    """
    return tuple(_frozen(folder, each) for each in found if each.fresh)


def _frozen(folder: Path, laid_out: LaidOut) -> Frozen:
    file = folder / "plans" / laid_out.proof.plan.name / "layout.json"
    # The file may have been edited since the plan was read.
    old = file.read_bytes() if file.is_file() else b""
    reason = _reason(laid_out, old.decode("utf-8", "replace"))
    spare = _spare(file, old) if reason else None
    if spare:
        put(spare, old)
    put(file, freeze(laid_out.layout).encode())
    return Frozen(file=file, layout=laid_out.layout, why=laid_out.fresh, spare=spare, reason=reason)


def _reason(laid_out: LaidOut, old: str) -> str:
    return lost_with(old, layout_place(laid_out.proof.points[0]), laid_out.layout)


def _spare(file: Path, content: bytes) -> Path:
    """Return the first name beside a file that is free, or holds the same already."""
    ends = chain(("",), (f"-{number}" for number in count(2)))
    spares = (file.with_name(f"layout.previous{end}.json") for end in ends)
    return next(each for each in spares if not each.exists() or each.read_bytes() == content)


def foretold(examined: Examined) -> Examined:
    """Add a note for each frozen layout that the next publish will compute anew."""
    notes = (_stale(each) for each in examined.laid_out if each.fresh == CHANGED)
    return replace(examined, findings=in_order((*examined.findings, *notes)))


def _stale(laid_out: LaidOut) -> Finding:
    reason = _reason(laid_out, laid_out.proof.plan.layout_text)
    kept = f" This one is then kept as `layout.previous.json`: {reason}." if reason else ""
    advice = f"`kerfolio publish` and `kerfolio layout` compute the layout anew.{kept}"
    place = layout_place(laid_out.proof.points[0])
    return note("layout-stale", CHANGED, place, advice)
