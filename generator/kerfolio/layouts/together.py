"""Several copies laid out together, the pieces of one copy side by side where it costs nothing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from kerfolio.layouts.copies import groups_of
from kerfolio.layouts.engine import Blank, Engine, Job, Packed, Spot
from kerfolio.layouts.kept_layout import packed_of
from kerfolio.layouts.layout import Layout


@dataclass(frozen=True, slots=True)
class KeptTogether:
    """An engine for the blanks of several copies; ``engine`` packs as many as it is given.

    Copies are laid out in the groups of ``groups_of``, every group on sheets of its own. In a
    group, blanks alike are dealt to the copies in the order in which they lie. ``one`` is the
    layout of a single copy, where there is one.
    """

    engine: Engine
    one: Layout | None = None

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``."""
        copies = sorted({blank.copy for blank in job.blanks})
        if len(copies) < 2:
            return self.engine.pack(job)
        one = packed_of(self.one, job) if self.one else None
        groups = groups_of(job, self.engine, one)[-1]
        if groups is None:
            return self.engine.pack(job)
        taken = iter(copies)
        spots: list[Spot] = []
        sheets: list[int] = []
        for group in groups:
            blanks = _of(job, [next(taken) for _ in range(group.size)])
            dealt = _dealt(group.packed.spots, job.blanks, blanks)
            spots += [replace(spot, sheet=spot.sheet + len(sheets)) for spot in dealt]
            sheets += group.packed.sheets
        engine = ", ".join(dict.fromkeys(group.packed.engine for group in groups))
        return Packed(spots=tuple(spots), sheets=tuple(sheets), engine=engine)


def _of(job: Job, copies: Iterable[int]) -> tuple[Blank, ...]:
    wanted = set(copies)
    return tuple(blank for blank in job.blanks if blank.copy in wanted)


def _dealt(spots: Sequence[Spot], known: Sequence[Blank], blanks: Sequence[Blank]) -> list[Spot]:
    """Return the spots of one group, given to its blanks: twins in the order in which they lie."""
    twin = {blank.label: blank.twin for blank in known}
    dealt: list[Spot] = []
    for name in dict.fromkeys(blank.twin for blank in blanks):
        lying = [spot for spot in spots if twin[spot.label] == name]
        lying.sort(key=lambda spot: (spot.sheet, spot.x, spot.y))
        labels = [blank.label for blank in blanks if blank.twin == name]
        dealt += [replace(s, label=label) for s, label in zip(lying, labels, strict=True)]
    return dealt
