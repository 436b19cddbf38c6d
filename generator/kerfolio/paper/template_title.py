"""What names a template: plan, release, thickness and part."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.lengths import both_text, mm_text
from kerfolio.settling.settled import SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Titled:
    """The words on every page of a template; ``fit`` is the name of the thickness's folder."""

    title: str
    release: str
    fit: str
    part: str
    sheet: str
    size: tuple[float, float]

    @classmethod
    def of(cls, settled: SettledPlan, part: SettledPart) -> Titled:
        """Return the words for a part."""
        plan = settled.plan
        return cls(
            title=plan.title,
            release=f" · release {plan.version}",
            fit=settled.variant.label,
            part=f"{part.mark} {part.name}",
            sheet=f"{part.sheet}, {mm_text(part.thickness, 2)}",
            size=part.size,
        )

    def overall(self, first: str) -> str:
        """Return the part's overall size in both units."""
        return f"{both_text(self.size[0], first)} wide, {both_text(self.size[1], first)} high"
