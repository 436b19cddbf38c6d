"""The usual cautions, one place for page, booklet and bundle: no training and no advice."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.figures import figure
from kerfolio.shop.noise import NIOSH, bearable_minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """A caution: what it is about, and its sentences."""

    head: str
    text: str


OPENING = (
    "Machines that cut wood can hurt you and those near you. What follows are the usual cautions, "
    "not training. The law and the codes of the place you live in, the manuals of your machines "
    "and licensed practice come first, always."
)

CAUTIONS: tuple[Caution, ...] = (
    Caution(
        head="Eyes and ears",
        text="Wear eye and hearing protection whenever a machine runs. Hearing is harmed by loud "
        f"hours added up: {NIOSH.body} recommends no more than {figure(NIOSH.level)} dB(A) over "
        f"eight hours, and half the time for every {figure(NIOSH.exchange)} dB more, which leaves "
        f"{figure(bearable_minutes(100, NIOSH))} minutes a day at 100 dB(A).",
    ),
    Caution(
        head="Dust",
        text="Wood dust can cause asthma, and hardwood dust can cause cancer, of the nose above "
        "all (HSE). Plywood and fibreboard often hold hardwood. Draw dust off where it is made; a "
        "mask adds to that and does not replace it. Do not sweep settled dust or blow it away. "
        "Fine dust can burn and explode.",
    ),
    Caution(
        head="Workholding",
        text="Hold the sheet, and every piece that comes free of it, so that nothing can move: "
        "small pieces need bridges to the sheet or a layer that holds them. Guide a hand-held "
        "router so that the cutter pulls against you. Let the cutter stop before you reach in. No "
        "loose sleeves.",
    ),
    Caution(
        head="Fire",
        text="Never leave a running machine alone: packed chips and a stalled cutter can start a "
        "fire.",
    ),
    Caution(
        head="Tipping over",
        text="Whatever is tall or shallow can tip, above all on carpet or when a child climbs it. "
        "Fix it to the wall with a fixing that suits the wall. Do not climb on what you build.",
    ),
    Caution(
        head="Loads",
        text="Any load named in this plan is an estimate with its assumptions beside it, never a "
        "rating. Nothing here was tested to a furniture standard. Toys and children's furniture "
        "have standards of their own; this plan claims none.",
    ),
)
