"""What the sheets that files are for measure, as readers are told it: as a calliper shows it.

Of one sheet its thickness is enough; of several each is told with what it is called.
"""

from __future__ import annotations

from kerfolio.basis.exact_figures import measured_in
from kerfolio.basis.figured import joined
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import sheet_title

_NAMED = 2


def sheet_measured(settled: SettledPlan, name: str, reader: Reader) -> str:
    """Return one sheet in the reader's unit: ``17.80 mm thick``, ``Birch plywood at 17.80 mm``."""
    measured = measured_in(dict(settled.variant.thickness)[name], reader)
    if len(settled.variant.thickness) == 1:
        return say(reader, "measured-thick", figure=measured)
    return say(reader, "measured-at", sheet=sheet_title(settled, name), figure=measured)


def measured_for(settled: SettledPlan, reader: Reader) -> str:
    """Return all sheets so, as the foot of a page tells them, with commas between.

    A foot has room for the names of two; of more sheets their thicknesses stand alone, in the
    plan's order: ``17.80 mm, 12.00 mm, 6.50 mm thick``.
    """
    sheets = settled.variant.thickness
    if len(sheets) > _NAMED:
        figures = joined(", ", (measured_in(mm, reader) for _, mm in sheets))
        return say(reader, "measured-thick", figure=figures)
    return joined(", ", (sheet_measured(settled, name, reader) for name, _ in sheets))


def sheets_measured(settled: SettledPlan, reader: Reader) -> str:
    """Return all sheets as a sentence tells them: ``sheets 17.80 mm thick``."""
    sheets = settled.variant.thickness
    if len(sheets) > 1:
        return listed(reader, [sheet_measured(settled, name, reader) for name, _ in sheets])
    return say(reader, "measured-sheets", figure=measured_in(sheets[0][1], reader))
