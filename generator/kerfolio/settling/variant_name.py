"""What a point is called: its label in names of files and its words in remarks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.basis.cutting_lengths import chosen_label
from kerfolio.basis.measures import chosen
from kerfolio.basis.said import ByUnit, Measure, Quantity, Text, Words, enumerated, said, strung
from kerfolio.basis.thickness import sold_in, thickness_label
from kerfolio.settling.settled import FitVariant


def labelled(variant: FitVariant, unit: str) -> FitVariant:
    """Return a point with its label in a plan's unit."""
    return replace(variant, label=label_of(variant, unit))


def label_of(variant: FitVariant, unit: str) -> str:
    """Return what files of a point are called: ``17.6mm``, ``ply-17.8mm_thin-6.4mm``.

    A fit or a cutter that is not the plan's own follows the thickness of its sheet:
    ``17.63mm-fit-0.08mm-cutter-3.175mm``, ``17.63mm-no-cutter``.
    """
    several = len(variant.thickness) > 1
    return "_".join(
        "-".join(
            (
                *((sheet,) if several else ()),
                thickness_label(mm, unit),
                *_others_label(sheet, variant, unit),
            )
        )
        for sheet, mm in variant.thickness
    )


def _others_label(sheet: str, variant: FitVariant, unit: str) -> Iterator[str]:
    fit, cutter = dict(variant.fit), dict(variant.cutter)
    if sheet in fit:
        yield f"fit-{chosen_label(fit[sheet], unit)}"
    if sheet in cutter:
        diameter = cutter[sheet]
        yield "no-cutter" if diameter is None else f"cutter-{chosen_label(diameter, unit)}"


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


def _rung_in(mm: float, unit: str) -> str:
    return sold_in(mm, unit) if unit == "in" else thickness_label(mm, unit)


def _others(sheet: str, variant: FitVariant) -> Text:
    fit, cutter = dict(variant.fit), dict(variant.cutter)
    told: list[Text] = []
    if sheet in fit:
        told.append(said("a fit of {}", chosen("fit", fit[sheet])))
    if sheet in cutter:
        diameter = cutter[sheet]
        wide = None if diameter is None else chosen("cutter", diameter)
        told.append("no cutter" if wide is None else said("a cutter of {}", wide))
    return said(" with {}", enumerated(told)) if told else ""
