"""Layouts computed afresh because a person asks for it, by whom and for how long they say."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.layouts.best import ENGINES, BestPlacer
from kerfolio.layouts.effort import EFFORT
from kerfolio.layouts.engine import Engine
from kerfolio.publishing.examine import Say, examine, silent
from kerfolio.publishing.freeze import Frozen, freeze_layouts


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutRequest:
    """Which plans to lay out: all, or the one named ``only``.

    ``engine`` names an engine of another library to ask besides, ``seconds`` is how long it may
    take. With seconds and no name all that are installed are asked; without either, none.
    """

    folder: Path
    only: str = ""
    engine: str = ""
    seconds: float | None = None
    seed: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidAfresh:
    """The layouts written, and all findings."""

    frozen: tuple[Frozen, ...]
    findings: tuple[Finding, ...]


def engine_fault(request: LayoutRequest) -> str:
    """Return what is wrong with the engine asked for, in words; empty where it is there."""
    name = request.engine
    there = [each.library for each in ENGINES if each.present]
    if name in there or (not name and (there or request.seconds is None)):
        return ""
    shown = "installed: " + (", ".join(there) or "none")
    if not name:
        return f"--seconds is for engines of other libraries; {shown}"
    known = any(name == each.library for each in ENGINES)
    return f"`{name}` is {'not installed' if known else 'no engine'}; {shown}"


def lay_out_afresh(request: LayoutRequest, say: Say = silent) -> LaidAfresh:
    """Lay out and freeze, whatever was frozen before. Raises OSError when the disk refuses."""
    seconds = EFFORT.seconds if request.seconds is None else request.seconds
    effort = replace(EFFORT, seed=request.seed, seconds=seconds)
    engine = _engine(request)
    examined = examine(
        *(request.folder, request.only, say),
        pictures=False,
        afresh=True,
        effort=effort,
        engine=engine,
    )
    frozen = freeze_layouts(request.folder, examined.laid_out)
    return LaidAfresh(frozen=frozen, findings=examined.findings)


def _engine(request: LayoutRequest) -> Engine | None:
    if not request.engine and request.seconds is None:
        return None
    wanted = (request.engine,) if request.engine else [each.library for each in ENGINES]
    return BestPlacer([each for each in ENGINES if each.library in wanted and each.present])
