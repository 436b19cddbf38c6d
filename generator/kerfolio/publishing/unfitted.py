"""What a plan's fitted files leave out, told to its maker: readers are then helped less far."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, note, warning
from kerfolio.edition.names import ROLL, template_name
from kerfolio.fitted.form import Fitted, Number
from kerfolio.publishing.fitted_files import filled_at
from kerfolio.settling.settled import SettledPlan

_LIST = "List thicknesses as `ready-made`, or let lengths depend on `t` in plain sums."


def unfitted(drawn: SettledPlan, fitted: Fitted | None) -> Iterator[Finding]:
    """Yield what readers cannot have made for their own sheet, fit or cutter.

    A plan for one thickness alone is not remarked on for its sheets.
    """
    place = drawn.plan.place
    ranged = any(least < most for least, most in (each.published for each in drawn.sheets))
    if fitted is None:
        if ranged:
            words = "readers get ready-made files alone: no others follow their sheet"
            yield warning("files-not-fitted", words, place, _LIST)
        return
    known = {each.name: each for each in fitted.numbers}
    for each in drawn.sheets:
        if each.fits is not None and f"fit.{each.name}" not in known:
            words = f"no fit can be chosen for `{each.name}`: files do not follow it"
            yield warning("fit-not-fitted", words, place, "Leave `reader` out.")
    if ranged and not _holds_templates(drawn, fitted):
        words = "templates are ready-made alone: no others follow the sheet"
        yield warning("templates-not-fitted", words, place, _LIST)
    for each in drawn.sheets:
        if _is_fixed(known[f"cutter.{each.name}"]):
            words = f"files cut from `{each.name}` are for the plan's own cutter alone"
            advice = "With others the reliefs of its corners change their form: leave more room."
            yield note("cutter-not-fitted", words, place, advice)


def _holds_templates(drawn: SettledPlan, fitted: Fitted) -> bool:
    return template_name(drawn.variant.label, ROLL) in filled_at(fitted, drawn.variant)


def _is_fixed(cutter: Number) -> bool:
    return cutter.least == cutter.most and not cutter.none
