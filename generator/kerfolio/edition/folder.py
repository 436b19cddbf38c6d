"""Which cut files suit a sheet of some thickness, and which sheet a file suits."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import reading_in, sold_in
from kerfolio.basis.tolerance import NOISE
from kerfolio.edition.edition import Edition
from kerfolio.settling.coupon import step_of
from kerfolio.settling.measured import sheets_measured
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import sheet_title


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """The ready-made set to take for a sheet measured or tried at some mm, by its own thickness.

    ``exact`` when it is that thickness, to half a step of the fit coupon; else it is the next
    thicker one, in which every tab still enters. ``thickness`` is None where no set is to be taken:
    ``instead`` says that files are made for the sheet, or why there are none.
    """

    thickness: float | None
    exact: bool = False
    instead: str = ""


def folder_choice(edition: Edition, sheet: str, wanted: float) -> Choice:
    """Return what to take for a sheet ``wanted`` mm thick.

    Raises KeyError for a sheet that the plan has not.
    """
    settled, reader = edition.settled.sheet(sheet), edition.reader
    known = sorted({dict(each.variant.thickness)[sheet] for each in edition.variants})
    within = step_of(settled, edition.plan.units) / 2
    near = [each for each in known if abs(each - wanted) <= within + NOISE]
    if near:
        return Choice(thickness=min(near, key=lambda each: (abs(each - wanted), each)), exact=True)
    least, most = settled.published
    if not least - NOISE <= wanted <= most + NOISE:
        side = "thinner" if wanted < least else "thicker"
        return Choice(thickness=None, instead=say(reader, f"folder-{side}"))
    if edition.fitted:
        made = say(reader, "folder-made", thickness=reading_in(wanted, reader))
        return Choice(thickness=None, instead=made)
    if not known[0] < wanted < known[-1]:
        return Choice(thickness=None, instead=say(reader, "folder-none-ready"))
    return Choice(thickness=next(each for each in known if each > wanted))


def folders_of(edition: Edition, sheet: str, thickness: float) -> tuple[str, ...]:
    """Return the labels of the folders whose ``sheet`` has that thickness, thinnest first."""
    return tuple(
        each.variant.label
        for each in edition.variants
        if dict(each.variant.thickness)[sheet] == thickness
    )


def choice_words(edition: Edition, sheet: str, wanted: float) -> tuple[str, str]:
    """Return the folder to take for a sheet ``wanted`` mm thick, and what there is to say of it.

    The first is empty where there is no folder. Where a plan has more sheets than one, a folder
    stands for all their thicknesses together.
    """
    choice, reader = folder_choice(edition, sheet, wanted), edition.reader
    if choice.thickness is None:
        return "", choice.instead
    if len(edition.settled.sheets) == 1:
        folder = f"cut/{folders_of(edition, sheet, choice.thickness)[0]}"
    else:
        measured = _measuring(edition.settled, sheet, choice.thickness, reader)
        folder = say(reader, "folder-a-folder", sheet=measured)
    return folder, "" if choice.exact else say(reader, "folder-next-thicker")


def _measuring(settled: SettledPlan, sheet: str, thickness: float, reader: Reader) -> str:
    """Return a sheet with what it measures: ``Birch plywood measuring 17.8 mm``."""
    title = sheet_title(settled, sheet)
    return say(reader, "folder-measuring", sheet=title, thickness=sold_in(thickness, reader))


def drawn_for(settled: SettledPlan, reader: Reader) -> str:
    """Return the sheets and thicknesses of a variant: ``Birch plywood measuring 17.8 mm``."""
    return listed(
        reader,
        [_measuring(settled, sheet.name, sheet.thickness, reader) for sheet in settled.sheets],
    )


def goes_with(settled: SettledPlan, number: int, reader: Reader) -> str:
    """Return which cut file a sheet's layout or setup goes with, told as figures."""
    chosen = any(least < most for least, most in (each.published for each in settled.sheets))
    measured = sheets_measured(settled, reader)
    return say(
        reader,
        "folder-goes-with-chosen" if chosen else "folder-goes-with",
        number=number,
        sheets=measured,
    )


def drawn_file(edition: Edition, number: int) -> str:
    """Return the name of a sheet's cut file at the thickness drawn, without its format."""
    return f"cut/{edition.settled.variant.label}/sheet-{number}"


def file_words(edition: Edition, number: int) -> str:
    """Return which sheet the cut file of the thickness drawn is for, and what to cut from others.

    Setup sheet and layout show the thickness drawn alone; who cuts another must not take its file.
    """
    return say(
        edition.reader,
        "folder-file-of-several" if _has_others(edition) else "folder-file",
        file=drawn_file(edition, number),
        sheets=drawn_for(edition.settled, edition.reader),
        number=number,
    )


def sizes_words(edition: Edition) -> str:
    """Return which sheet the sizes that a saw is set to are for, and what to do with others."""
    return say(
        edition.reader,
        "folder-sizes-of-several" if _has_others(edition) else "folder-sizes",
        sheets=drawn_for(edition.settled, edition.reader),
    )


def _has_others(edition: Edition) -> bool:
    """Tell whether there are files for another thickness than that drawn, ready-made or made."""
    ranged = any(least < most for least, most in (s.published for s in edition.settled.sheets))
    return len(edition.variants) > 1 or (edition.fitted and ranged)
