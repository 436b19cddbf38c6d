"""Writes frozen layouts beside their plans; nothing that a person made is lost on the way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import chain, count
from pathlib import Path

from kerfolio.basis.finding import Finding, in_order, note
from kerfolio.basis.place import Place
from kerfolio.disk.put import put
from kerfolio.layouts.check import layout_place
from kerfolio.layouts.frozen import CHANGED, freeze, lost_with
from kerfolio.layouts.layout import Layout
from kerfolio.publishing.examine import Examined
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.settling.also_for import on_sheet


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
    standing = (each for laid_out in found for each in _standing(laid_out))
    return tuple(_frozen(folder, each) for each in standing if each.fresh)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Standing:
    """One layout of a plan: its place, and the text that was read there."""

    place: Place
    layout: Layout
    fresh: str
    text: str


def _standing(found: LaidOut) -> Iterator[_Standing]:
    """Yield the layouts of a plan: its own, then those for other sheets and beds."""
    plan, settled = found.proof.plan, found.proof.points[0]
    yield _Standing(
        place=layout_place(settled),
        layout=found.layout,
        fresh=found.fresh,
        text=plan.layout_text,
    )
    texts = dict(plan.other_layouts)
    for each in found.others:
        yield _Standing(
            place=layout_place(on_sheet(settled, each.sheet)),
            layout=each.layout,
            fresh=each.fresh,
            text=texts.get(each.sheet.label, ""),
        )


def _frozen(folder: Path, laid_out: _Standing) -> Frozen:
    file = folder / laid_out.place.file
    # The file may have been edited since the plan was read.
    old = file.read_bytes() if file.is_file() else b""
    reason = _reason(laid_out, old.decode("utf-8", "replace"))
    spare = _spare(file, old) if reason else None
    if spare:
        put(spare, old)
    put(file, freeze(laid_out.layout).encode())
    return Frozen(file=file, layout=laid_out.layout, why=laid_out.fresh, spare=spare, reason=reason)


def _reason(laid_out: _Standing, old: str) -> str:
    return lost_with(old, laid_out.place, laid_out.layout)


def _spare(file: Path, content: bytes) -> Path:
    """Return the first name beside a file that is free, or holds the same already."""
    ends = chain(("",), (f"-{number}" for number in count(2)))
    spares = (file.with_name(f"{file.stem}.previous{end}.json") for end in ends)
    return next(each for each in spares if not each.exists() or each.read_bytes() == content)


def foretold(examined: Examined) -> Examined:
    """Add a note for each frozen layout that the next publish will compute anew."""
    standing = (each for laid_out in examined.laid_out for each in _standing(laid_out))
    notes = (_stale(each) for each in standing if each.fresh == CHANGED)
    return replace(examined, findings=in_order((*examined.findings, *notes)))


def _stale(laid_out: _Standing) -> Finding:
    reason = _reason(laid_out, laid_out.text)
    spare = Path(laid_out.place.file).stem
    kept = f" This one is then kept as `{spare}.previous.json`: {reason}." if reason else ""
    advice = f"`kerfolio publish` and `kerfolio layout` compute the layout anew.{kept}"
    return note("layout-stale", CHANGED, laid_out.place, advice)
