"""Where z is zero, and what keeps depths true: worded once, for setup sheets and pages alike.

That cuts through a sheet are zeroed on the bed, that a bed is skimmed flat and a bowed sheet held
in its middle is common practice, no single source.
"""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import depth_text
from kerfolio.basis.exact_figures import exact_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.settling.settled import Operation


def zero_z(reader: Reader) -> str:
    """Return where z is zero."""
    return say(reader, "depthwords-zero")


def depth_lines(found: Ranged, sheet: str, reader: Reader) -> tuple[str, ...]:
    """Return the lines on depth for a sheet, those that bear on what is done to it.

    Floors left are the sheet's thickness less each depth that does not go through.
    """
    operations = {work.operation for run in found.here.runs for work in run.works}

    def floors(facts: SheetFacts) -> tuple[float, ...]:
        thick = facts.settled.sheet(sheet).thickness
        return tuple(thick - each for each in _depths(facts))

    told = ""
    if _depths(found.here):
        told = found.told(
            floors,
            lambda each: listed(reader, [depth_text(one, reader) for one in each]),
            lambda each: listed(reader, [exact_text(one, reader) for one in each]),
        )
    return depth_advice(reader, floors=told, engraves=Operation.ENGRAVE in operations)


def depth_advice(reader: Reader, *, floors: str = "", engraves: bool = False) -> tuple[str, ...]:
    """Return what keeps depths true, a line each; ``floors`` are those that recesses leave."""
    return (
        say(reader, "depthwords-why", unit=reader.unit),
        say(reader, "depthwords-thickest"),
        *([say(reader, "depthwords-left", floors=floors)] if floors else []),
        *([say(reader, "depthwords-engraved")] if engraves else []),
        say(reader, "depthwords-bed"),
    )


def _depths(facts: SheetFacts) -> tuple[float, ...]:
    """Return the depths, mm, of what is neither engraved nor cut through, each once."""
    works = (work for run in facts.runs for work in run.works)
    deep = (d for work in works if work.operation is not Operation.ENGRAVE for d in work.depths)
    return tuple(sorted({each for each in deep if each is not None}))
