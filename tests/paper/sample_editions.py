"""The sample's plans as far as setup sheets need them: settled as drawn, laid out as frozen."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from kerfolio.basis.place import Place
from kerfolio.edition.edition import Edition
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.thawing import thaw
from kerfolio.model.workshop import Workshop
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.variant import drawn_variant

NAMES = ("desk-rack", "harbour-stool", "potting-bench", "tool-tote")
_SAMPLE = Path(__file__).resolve().parents[2] / "sample-site"


@cache
def workshop() -> Workshop:
    found, _ = read_workshop(_SAMPLE)
    assert found is not None
    return found


@cache
def sample(name: str) -> Edition:
    """Return one plan of the sample."""
    found = workshop()
    plan = next(each for each in found.plans if each.name == name)
    variant = drawn_variant(plan, found.stock)
    assert variant is not None
    settled, findings = settle(plan, found.stock, variant)
    assert settled is not None, findings
    layout, _ = thaw(plan.layout_text, Place("layout.json"))
    assert layout is not None
    return edition(settled, layout)


def edition(settled: SettledPlan, layout: Layout) -> Edition:
    """Return the edition of a settled plan, without lists."""
    return Edition(
        identity=workshop().identity,
        plan=settled.plan,
        settled=settled,
        variants=(settled,),
        corners=(settled,),
        layout=layout,
        parts=(),
        hardware=(),
        sheets=(),
        boards=(),
        trials=(),
        pictures={},
    )
