"""What there is to look at, drawn: a plan, or a part of it, as the bytes of a picture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from kerfolio.basis.finding import Finding, error, in_order
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.drawing.named_part import named_part
from kerfolio.drawing.named_whole import named_whole
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.plan import Plan
from kerfolio.publishing.look import LookPicture
from kerfolio.publishing.sight import Sight, sight_of
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import svg_bytes

_PIXELS_PER_MM = 8


def look_drawn(folder: Path, name: str, asked: str, ending: str) -> LookPicture:
    """Return the picture of a plan of a workshop, or of the part ``asked``, as far as it goes.

    ``ending`` is ``.svg`` or ``.png``.
    """
    shared, refused = read_shared(folder, pictures=False)
    if shared is None:
        return LookPicture(content=None, part="", findings=in_order(refused))
    workshop, more = with_plans(shared, [name])
    findings = (*shared.findings, *more)
    plan = workshop.plans[0] if workshop and workshop.plans else None
    if plan is None:
        return LookPicture(content=None, part="", findings=in_order(findings))
    part = _part_of(plan, asked)
    if part is None:
        unknown = _unknown_part(plan, asked)
        return LookPicture(content=None, part="", findings=in_order((*findings, *unknown)))
    sight = sight_of(plan, shared.stock, part)
    findings = (*findings, *sight.findings)
    drawing = _picture_of(sight, part)
    content = picture_bytes(drawing, ending) if drawing else None
    if drawing is not None and content is None:
        findings = (*findings, no_png(Path(f"picture{ending}")))
    return LookPicture(content=content, part=part, findings=in_order(findings))


def _picture_of(sight: Sight, part: str = "") -> Drawing | None:
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
    parts = (plan.as_far or plan).parts
    return next((each.name for each in parts if asked in (each.name, *each.labels)), None)


def _unknown_part(plan: Plan, asked: str) -> Iterator[Finding]:
    """Yield the finding about a part that the plan has not; why one cannot be read is told."""
    if asked.partition(".")[0] in plan.unread:
        return
    advice = did_you_mean(asked, (each.name for each in plan.parts))
    yield error("unknown-part", f"no part `{asked}`", plan.place, advice)


def picture_bytes(drawing: Drawing, ending: str) -> bytes | None:
    """Return the bytes of a picture on paper, lettering as outlines; None without cairo."""
    ground = Stroke(contour=rectangle(*drawing.box), width=None, fill=Ink.PAPER)
    svg = svg_bytes(replace(drawing, items=(ground, *drawing.items)), decimals=2, outlined=True)
    return png_bytes(svg, int(drawing.width * _PIXELS_PER_MM)) if ending == ".png" else svg


def no_png(target: Path) -> Finding:
    """Return the error that tells of a PNG that cannot be written."""
    advice = "Install the cairo library (Debian: `libcairo2`), or let `--out` end in `.svg`."
    return error("no-png", "no PNG can be written here", Place(target.name), advice)
