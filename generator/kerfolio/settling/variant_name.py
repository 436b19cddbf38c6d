"""What a point is called: its label in names of files and its words in remarks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from kerfolio.basis.figured import Figure, Figured, joined
from kerfolio.basis.measures import chosen
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import ByUnit, Measure, Quantity, Text, Words, enumerated, said, strung
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import sold_in, thickness_label
from kerfolio.settling.settled import FitVariant, SettledSheet

_THICKNESS = {
    "mm": Style(rule=Rule.POINTED, decimals=2, after="mm"),
    "in": Style(rule=Rule.SOLD_NAME, after="in"),
}
_CHOSEN = {
    "mm": Style(decimals=3, after="mm"),
    "in": Style(rule=Rule.CHOSEN_NAME, decimals=3, after="in"),
}
"""How a fit or a cutter is told; to so many decimals of a mm it is the plan's own or not."""


def labelled(variant: FitVariant, unit: str, own: Iterable[SettledSheet] = ()) -> FitVariant:
    """Return a point with its label in a plan's unit; ``own`` are the plan's sheets as drawn."""
    return replace(variant, label=label_of(variant, unit, own))


def label_of(variant: FitVariant, unit: str, own: Iterable[SettledSheet] = ()) -> Figured:
    """Return what files of a point are called: ``17.6mm``, ``ply-17.8mm_thin-6.4mm``.

    A fit or a cutter that is not the plan's own follows the thickness of its sheet:
    ``17.63mm-fit-0.08mm-cutter-3.175mm``, ``17.63mm-no-cutter``; what is built in of a true cut
    comes last, ``17.63mm-cut+0.2mm``.
    """
    known = {sheet.name: sheet for sheet in own}
    several = len(variant.thickness) > 1
    return joined(
        "_",
        (
            Figured(
                *((f"{sheet}-",) if several else ()),
                Figure(mm, _THICKNESS[unit]),
                *(_others_label(known[sheet], variant, unit) if sheet in known else ()),
            )
            for sheet, mm in variant.thickness
        ),
    )


def _others_label(own: SettledSheet, variant: FitVariant, unit: str) -> Iterator[Figure]:
    """Yield fit and cutter, which say nothing where they are the plan's own."""
    style, diameter = _CHOSEN[unit], own.cutter.diameter
    fit = dict(variant.fit).get(own.name, own.fit)
    cutter = dict(variant.cutter).get(own.name, diameter)
    yield Figure(fit, replace(style, unless=own.fit, before="-fit-"))
    told = replace(style, unless=diameter, before="-cutter-", none="-no-cutter")
    yield Figure(cutter, told)
    cut = dict(variant.cut).get(own.name, 0.0)
    yield Figure(cut, replace(style, unless=0.0, before="-cut", signed=True))


def words_of(variant: FitVariant) -> Words:
    """Return what a point is called in a remark: its label, in an inch plan its thicknesses.

    A fit or a cutter that is not the plan's own is told in words: ``17.6mm with no cutter``.
    """
    several = len(variant.thickness) > 1
    told = [
        said(
            "{}{}{}",
            said("{}{}", sheet, ByUnit("-", " ")) if several else "",
            Measure((Quantity("thickness", mm, "mm"),), _rung_in),
            _others(sheet, variant),
        )
        for sheet, mm in variant.thickness
    ]
    return strung(told, ByUnit("_", ", "))


def _rung_in(mm: float, reader: Reader) -> str:
    return sold_in(mm, reader) if reader.unit == "in" else thickness_label(mm, reader.unit)


def _others(sheet: str, variant: FitVariant) -> Text:
    fit, cutter, cut = dict(variant.fit), dict(variant.cutter), dict(variant.cut)
    told: list[Text] = []
    if sheet in fit:
        told.append(said("a fit of {}", chosen("fit", fit[sheet])))
    if sheet in cutter:
        diameter = cutter[sheet]
        wide = None if diameter is None else chosen("cutter", diameter)
        told.append("no cutter" if wide is None else said("a cutter of {}", wide))
    if sheet in cut:
        told.append(said("a true cut of {} built in", chosen("cut", cut[sheet])))
    return said(" with {}", enumerated(told)) if told else ""
