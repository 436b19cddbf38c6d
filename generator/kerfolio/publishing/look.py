"""``kerfolio look``: one picture of a plan, or of one of its parts, for the maker."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.basis.finding import Finding, error, in_order
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.disk.put import put
from kerfolio.drawing.named_part import named_part
from kerfolio.drawing.named_whole import named_whole
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.publishing.sight import Sight, sight_of
from kerfolio.reading.plan_folders import unknown_plan
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import svg_bytes

ENDINGS = (".svg", ".png")
_PIXELS_PER_MM = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class LookRequest:
    """What to look at: a plan of a workshop, or a ``part`` of it; ``out`` is None for the usual."""

    folder: Path
    plan: str
    part: str = ""
    out: Path | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """The picture that was written, None where there was nothing to show, and what was found."""

    written: Path | None
    findings: tuple[Finding, ...]


def look(request: LookRequest) -> Looked:
    """Draw a plan as far as it can be drawn and write the picture. Raises OSError."""
    plan, stock, findings = _read(request)
    if plan is None:
        return Looked(written=None, findings=in_order(findings))
    part = _part_of(plan, request.part)
    if part is None:
        unknown = _unknown_part(plan, request.part)
        return Looked(written=None, findings=in_order((*findings, *unknown)))
    sight = sight_of(plan, stock, part)
    told = in_order((*findings, *sight.findings))
    drawing = picture_of(sight, part)
    if drawing is None:
        return Looked(written=None, findings=told)
    target = request.out or _usual(request, part)
    content = picture_bytes(drawing, target.suffix)
    if content is None:
        return Looked(written=None, findings=in_order((*told, no_png(target))))
    target.parent.mkdir(parents=True, exist_ok=True)
    put(target, content)
    return Looked(written=target, findings=told)


def _read(request: LookRequest) -> tuple[Plan | None, Stock, tuple[Finding, ...]]:
    """Return the plan with the stock, None where it cannot be read, and what was found on both."""
    shared, refused = read_shared(request.folder, pictures=False)
    if shared is None:
        return None, Stock(), refused
    if request.plan not in shared.plans:
        return None, shared.stock, (*shared.findings, unknown_plan(request.plan, shared.plans))
    workshop, findings = with_plans(shared, [request.plan])
    plan = workshop.plans[0] if workshop and workshop.plans else None
    return plan, shared.stock, (*shared.findings, *findings)


def picture_of(sight: Sight, part: str = "") -> Drawing | None:
    """Return the picture of a plan, or of a part of it; None where nothing of it can be shown."""
    if sight.settled is None:
        return None
    if not part:
        return named_whole(sight.settled, sight.wholes)
    made = next((each for each in sight.settled.parts if each.name == part), None)
    return named_part(sight.settled, made) if made else None


def _part_of(plan: Plan, asked: str) -> str | None:
    """Return the part meant by its name or that of a piece; empty for all, None for none."""
    if not asked:
        return ""
    return next((each.name for each in plan.parts if asked in (each.name, *each.labels)), None)


def _unknown_part(plan: Plan, asked: str) -> Iterator[Finding]:
    """Yield the finding about a part that the plan has not; why one cannot be read is told."""
    if asked.partition(".")[0] in plan.unread:
        return
    advice = did_you_mean(asked, (each.name for each in plan.parts))
    yield error("unknown-part", f"no part `{asked}`", plan.place, advice)


def _usual(request: LookRequest, part: str) -> Path:
    name = "-".join(filter(None, (request.plan, part)))
    return request.folder / ".kerfolio" / "look" / f"{name}.svg"


def picture_bytes(drawing: Drawing, ending: str) -> bytes | None:
    """Return the bytes of a picture on paper, lettering as outlines; None without cairo."""
    ground = Stroke(contour=rectangle(*drawing.box), width=None, fill=Ink.PAPER)
    svg = svg_bytes(replace(drawing, items=(ground, *drawing.items)), decimals=2, outlined=True)
    return png_bytes(svg, int(drawing.width * _PIXELS_PER_MM)) if ending == ".png" else svg


def no_png(target: Path) -> Finding:
    """Return the error that tells of a PNG that cannot be written."""
    advice = "Install the cairo library (Debian: `libcairo2`), or let `--out` end in `.svg`."
    return error("no-png", "no PNG can be written here", Place(target.name), advice)
