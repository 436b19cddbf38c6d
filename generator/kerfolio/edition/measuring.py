"""How a sheet is measured and its files are chosen: worded once, for pages and paper alike."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.said import ByUnit, said
from kerfolio.basis.thickness import sold_in
from kerfolio.basis.tolerance import NOISE
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition

_IN = ByUnit("50 mm (2 in)", "2 in (50 mm)")
_MEASURE = said(
    "A sheet is seldom as thick as its name. Measure yours with a caliper that shows {}, at "
    "eight points {} in from the edges: near the four corners and at the middle of each side, as "
    "EN 324-1 does. A burr or a raised corner counts as sheet: brush the edge clean first.",
    ByUnit("0.05 mm", "0.001 in"),
    _IN,
)
_POINTS = said("Eight points, {} in from the edges.", ByUnit("50 mm", "2 in"))
_COUNTS = (
    "The thickest reading counts, since that place has to go in, too; where the sheet is thinner, "
    "its joints have so much more play."
)
_TYPE = said(
    "One reading will do, eight are better. Type them as the caliper shows them, {}:",
    ByUnit("with a point or a comma, in mm or in inches", "in inches or in millimetres"),
)
_MAKES = (
    "Open start-here.html, on a computer or a phone, without any network, and type your readings: "
    "it makes the files for just your sheet."
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
_COUPON = (
    "Cut the coupon from a corner of the very sheet you will build from, with the cutter and the "
    "settings you will use, and try its tab in the slots. The right slot is the first that takes "
    "the tab with the push of a hand, without a hammer and without play."
)
_DECIDES = (
    " It decides, whatever the caliper said: the table tells the thickness it stands for, and the "
)
_SET = "set to take."
_FILES = "files to take. Those that are made for a thickness you get by typing it, and no other."
_LIES = "0,0 of its file is the plate’s lower left corner; tape plate and tab down."
_PLAY = (
    "Tight in every slot: measure again, or look for chips and a worn cutter. Loose in every slot: "
    "the sheet is thinner than the plan is published for."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measuring:
    """What a reader is told: where to measure and how often, which reading counts, what to take.

    ``points`` stands under the picture of the sheet, ``type`` where readings are typed, before
    examples for the very sheet, which the page's script gives; ``coupon``
    with the fit coupon, ``lies`` by its picture, ``play`` beside its table; ``makes`` is for paper
    alone, and empty where no files are made.
    """

    measure: str
    points: str
    type: str
    counts: str
    makes: str
    take: str
    coupon: str
    lies: str
    play: str


def measuring_of(edition: Edition) -> Measuring:
    """Return the words for an edition, in its unit, for as many sets of files as it has."""
    first = edition.first
    many = len(edition.variants) > 1
    ranged = any(least < most for least, most in (s.published for s in edition.settled.sheets))
    made = ranged and edition.fitted
    return Measuring(
        measure=_MEASURE.told(first),
        points=_POINTS.told(first),
        type=_TYPE.told(first),
        counts=_COUNTS,
        makes=_MAKES if made else "",
        take=_sets(edition) if many else (_READY if ranged else _ONE).format(_only(edition)),
        coupon=f"{_COUPON}{_decides(made=made) if many or ranged else ''}",
        lies=_LIES,
        play=_PLAY,
    )


def _sets(edition: Edition) -> str:
    other = _MADE if edition.fitted else _NEXT
    each = _EACH if len(edition.settled.sheets) > 1 else ""
    return f"{_SETS.told(edition.first)}{other}{each}"


def _decides(*, made: bool) -> str:
    return f"{_DECIDES}{_FILES if made else _SET}"


def _only(edition: Edition) -> str:
    return listed([sold_in(thick, edition.first) for _, thick in edition.settled.variant.thickness])


FIT_WORDS: tuple[tuple[float, str], ...] = (
    (0.025, "tight: driven in with a mallet"),
    (0.075, "tight by hand"),
    (0.125, "a push of the hand"),
    (0.2, "slides in"),
    (99.0, "loose"),
)
"""What a clearance on one side of a joint is like, up to so many mm; common practice, no single
source."""


def fit_words(mm: float) -> str:
    """Return words for a fit: ``a push of the hand``."""
    return next(words for most, words in FIT_WORDS if mm <= most + NOISE)
