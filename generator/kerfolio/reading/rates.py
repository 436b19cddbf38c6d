"""Forms of speeds and feeds; what no machine does is refused, with the slip it may come from."""

from __future__ import annotations

from fractions import Fraction

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.digits import digits
from kerfolio.basis.measures import feed as feed_of
from kerfolio.basis.said import said, written
from kerfolio.basis.written_number import number_fault
from kerfolio.model.router import USUAL_SPEED
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.values import PLAIN_NUMBER, SCALAR

RPM = (100.0, 100_000.0)
"""Turns a minute that cutters are run at: from large drills to spindles for engraving. Wide enough
to refuse no real one (common practice, no single source)."""

MM_PER_MIN = (10.0, 100_000.0)
"""Feeds that wood is cut at: from a plunge by hand to more than the fastest nesting machine's
(common practice, no single source)."""

_USUAL_MM_PER_MIN = (200.0, 20_000.0)
"""What routers feed at; a slip is guessed from it (common practice, no single source)."""

_FACTORS = (1000.0, 0.001, 0.1, 10.0, 0.01, 100.0)
"""By how much a number is off when a mark between thousands is read as a point, or a digit
slips, the likelier first."""

_PER_UNIT = {"mm/min": Fraction(1), "m/min": Fraction(1000), "in/min": Fraction(254, 10)}


def _within(value: float, limits: tuple[float, float]) -> bool:
    return limits[0] <= value <= limits[1]


def _meant(value: float, usual: tuple[float, float]) -> float:
    """Return the usual number that a slip of its digits turns into ``value``, 0 for none."""
    found = (value * factor for factor in _FACTORS)
    return next((each for each in found if _within(each, usual)), 0.0)


def _speed(node: Scalar) -> float | Complaint:
    text = node.text.strip()
    number = text.removesuffix("rpm").rstrip()
    if not PLAIN_NUMBER.fullmatch(number):
        fault = number_fault(number, possible=lambda each: _within(float(each), RPM))
        return fault or Complaint(f"{quoted(text)} is no speed")
    speed = float(number)
    if _within(speed, RPM):
        return speed
    meant = _meant(speed, USUAL_SPEED)
    advice = (
        f"Did you mean `{digits(meant, 1)} rpm`?" if meant else "Cutters turn 100 to 100000 rpm."
    )
    return Complaint(f"{quoted(text)} is no speed for a router", advice)


SPEED: ScalarForm[float] = ScalarForm(
    noun="a speed", advice="Write turns a minute: `18000 rpm`.", convert=_speed, json=SCALAR
)


def _feed(node: Scalar) -> float | Complaint:
    text = node.text.strip()
    number, unit = _parted(text)
    if not unit or not PLAIN_NUMBER.fullmatch(number):
        fault = number_fault(number, possible=lambda each: _is_feed(each, unit))
        return fault or Complaint(f"{quoted(text)} is no feed with a unit")
    feed = float(Fraction(number) * _PER_UNIT[unit])
    if _within(feed, MM_PER_MIN):
        return feed
    meant = float(number) if unit != "mm/min" else 0.0  # the number alone, in the usual unit
    if not _within(meant, _USUAL_MM_PER_MIN):
        meant = _meant(feed, _USUAL_MM_PER_MIN)
    limits = feed_of("least", MM_PER_MIN[0]), feed_of("most", MM_PER_MIN[1])
    advice = said("Feeds are {} to {}.", *limits)
    if meant:
        advice = said("Did you mean `{}`?", feed_of("meant", meant))
    return Complaint(f"{quoted(number)} is no feed in {unit} for a router", advice)


def _parted(text: str) -> tuple[str, str]:
    """Return a feed's number and unit; the unit is empty where none is known."""
    unit = max((each for each in _PER_UNIT if text.endswith(each)), key=len, default="")
    return text.removesuffix(unit).rstrip(), unit


def _is_feed(number: str, unit: str) -> bool:
    return not unit or _within(float(Fraction(number) * _PER_UNIT[unit]), MM_PER_MIN)


FEED: ScalarForm[float] = ScalarForm(
    noun="a feed",
    advice=written(
        "4500 mm/min`, `4.5 m/min` or `180 in/min", "180 in/min", "Write it with its unit: `{}`."
    ),
    convert=_feed,
    json={"type": "string", "pattern": r"(mm|m|in)/min$"},
)
