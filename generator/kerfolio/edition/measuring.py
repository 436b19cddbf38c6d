"""How a sheet is measured and its files are chosen: worded once, for pages and paper alike."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.said import ByUnit, said
from kerfolio.basis.thickness import reading_in, sold_in
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.settling.settled import Coupon

_IN = ByUnit("50 mm (2 in)", "2 in (50 mm)")
_MEASURE = said(
    "A sheet is seldom as thick as its name. Measure yours with a caliper that shows {}, at "
    "eight points {} in from the edges: near the four corners and at the middle of each side, as "
    "EN 324-1 does. A burr or a raised corner counts as sheet: brush the edge clean first.",
    ByUnit("0.05 mm", "0.001 in"),
    _IN,
)
_POINTS = said("Eight points, {} in from the edges.", ByUnit("50 mm", "2 in"))
AT_THE_YARD = (
    "Take a caliper: ask what a sheet measures, not what it is called. The thickest reading counts."
)
_COUNTS = (
    "The thickest reading counts, since that place has to go in, too; where the sheet is thinner, "
    "its joints have so much more play."
)
_TYPE = said(
    "One reading will do, eight are better. Type them as the caliper shows them, {}:",
    ByUnit("with a point or a comma, in mm or in inches", "in inches or in millimetres"),
)
_MAKES = (
    ", on a computer or a phone, without any network, and type your readings: it makes the files "
    "for just your sheet."
)
_SETS = said(
    "Every slot follows the thickness of your sheet. Ready-made is one whole set of cut files for "
    "each thickness in the table; the name of a folder, and of every file in it, is the thickness "
    "it is for. Rounded to {}, the thickest reading names the set to take; where there is none of "
    "just that thickness, ",
    ByUnit("0.1 mm", "0.005 in"),
)
_READY = (
    "Every slot follows the thickness of your sheet. Ready-made is one set of cut files, for {}: "
    "on a thicker sheet its joints will not go in, on a thinner one they will be loose."
)
_NEXT, _MADE = "take the next thicker.", "files are made for what you measured."
_EACH = " Look up each of the sheets by itself."
_ONE = (
    "Every slot of this plan is drawn for one thickness: {}. On a thicker sheet the joints will "
    "not go in, on a thinner one they will be loose."
)
_COUPON = said(
    "The caliper tells how thick the sheet is, and with that which files to take. The coupon tells "
    "the true cut: a cutter of {} may cut {}, and then every slot is wider and every tab narrower "
    "than its line. Cut it from a corner of the very sheet, with the cutter and the settings you "
    "will cut the plan with, and with nothing corrected.",
    ByUnit("6 mm", "1/4 in"),
    ByUnit("6.2 mm", "0.258 in"),
)
_READ = (
    "Each slot grows in steps, and so does each arm of the tab from its tip on. Count the slots’ "
    "steps by the notches in the edge beside them, from the corner that is cut off; every fifth is "
    "deeper. With a caliper measure the long slot, its length in x and its width in y, and the "
    "last step of either arm, beside its root. By hand find the first step of each slot that takes "
    "the tab’s tongue with a push, and the last step of each arm that goes into the long slot so."
)
_TYPED = (
    " Type what you read into start-here.html, beside what the sheet measures: it reckons the true "
    "cut, and says what is the machine’s."
)
_RULE = said(
    "By how much the slots are wider than drawn and the arms narrower, on the average, the cutter "
    "cuts too wide. Correct it once: tell your toolpath program that diameter, {} for {}, and cut "
    "the files as they are.",
    ByUnit("6.2 mm", "0.258 in"),
    ByUnit("6 mm", "1/4 in"),
)
_BUILT = (
    " Where nobody can tell it that, start-here.html makes files that have the true cut built in, "
    "and say so in name and note. Never do both."
)
_WITHOUT = (
    "Without a caliper, the step that takes the tongue with a push names a thickness in the table, "
    "and that what to take. It holds sheet and cutter together: slots will be right, but tabs come "
    "out narrower by what the cutter cuts too wide, and those that reach through too long or short."
)
_CROSSING = (
    " The notch in the tab is as deep as the plan’s deepest: push it over the plate’s edge to feel "
    "how a long joint goes. It goes as planned only where the sheet is as thick as drawn."
)
_LIES = "0,0 of its file is the plate’s lower left corner; tape plate and tab down."
_PLAY = (
    "Tight in every step: measure the sheet again, or look for chips and a worn cutter. Loose in "
    "every step: the sheet is thinner than the coupon tries, or the cutter runs out of true."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measuring:
    """What a reader is told: where to measure and how often, which reading counts, what to take.

    ``points`` stands under the picture of the sheet, ``type`` where readings are typed, before
    examples for the very sheet, which the page's script gives. With the fit coupon stand
    ``coupon``, what it is for, ``read``, how it is read, ``rule``, where the correction belongs,
    and ``without``, what to do without a calliper; ``lies`` by its picture, ``play`` beside its
    table.
    ``makes`` goes on after the page that makes files, for paper alone, and is empty where none are
    made.
    """

    measure: str
    points: str
    type: str
    counts: str
    makes: str
    take: str
    coupon: str
    read: str
    rule: str
    without: str
    lies: str
    play: str


def measuring_of(edition: Edition) -> Measuring:
    """Return the words for an edition, in its unit, for as many sets of files as it has."""
    reader = edition.reader
    many = len(edition.variants) > 1
    ranged = any(least < most for least, most in (s.published for s in edition.settled.sheets))
    made = ranged and edition.fitted
    return Measuring(
        measure=_MEASURE.told(reader),
        points=_POINTS.told(reader),
        type=_TYPE.told(reader),
        counts=_COUNTS,
        makes=_MAKES if made else "",
        take=_sets(edition) if many else (_READY if ranged else _ONE).format(_only(edition)),
        coupon=_COUPON.told(reader),
        read=f"{_READ}{_TYPED if made else ''}{_crossing(edition)}",
        rule=f"{_RULE.told(reader)}{_BUILT if made else ''}",
        without=_WITHOUT,
        lies=_LIES,
        play=_PLAY,
    )


def _sets(edition: Edition) -> str:
    other = _MADE if edition.fitted else _NEXT
    each = _EACH if len(edition.settled.sheets) > 1 else ""
    return f"{_SETS.told(edition.reader)}{other}{each}"


def _crossing(edition: Edition) -> str:
    return _CROSSING if any(each.halving for each in edition.settled.coupons) else ""


def arms_words(coupon: Coupon, reader: Reader) -> str:
    """Return how wide the steps of a coupon's arms are drawn, and how long its long slot is."""
    steps = listed([reading_in(each.width, reader) for each in coupon.steps])
    return (
        f"The arms’ steps are drawn {steps} wide from the tip on, the long slot "
        f"{reading_in(coupon.opening, reader)} long."
    )


def _only(edition: Edition) -> str:
    return listed(
        [sold_in(thick, edition.reader) for _, thick in edition.settled.variant.thickness]
    )
