"""What names a template: plan, release, thickness and part."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.lengths import both_text
from kerfolio.basis.thickness import sold_in
from kerfolio.settling.settled import SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Titled:
    """The words on every page of a template; ``fit`` is the name of the thickness's folder.

    ``first`` is the unit named first.
    """

    title: str
    release: str
    fit: str
    part: str
    sheet: str
    size: tuple[float, float]
    first: str

    @classmethod
    def of(cls, settled: SettledPlan, part: SettledPart, first: str = "mm") -> Titled:
        """Return the words for a part, its sheet in the unit ``first``."""
        plan = settled.plan
        return cls(
            title=plan.title,
            release=f" · release {plan.version}",
            fit=settled.variant.label,
            part=f"{part.mark} {part.name}",
            sheet=f"{part.sheet}, {sold_in(part.thickness, first)}",
            size=part.size,
            first=first,
        )

    @property
    def overall(self) -> str:
        """The part's overall size in both units."""
        wide, high = (both_text(each, self.first) for each in self.size)
        return f"{wide} wide, {high} high"
