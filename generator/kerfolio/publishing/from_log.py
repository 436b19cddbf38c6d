"""What a run of ``files`` takes from the log: the newest batch's thickness, the true cut."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from kerfolio.basis.complaint import quoted
from kerfolio.basis.digits import fixed
from kerfolio.basis.finding import Finding, error, in_unit
from kerfolio.basis.measures import chosen, clearance, precise, reading, readings
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import Words, said, strung, told
from kerfolio.basis.saying import day_text
from kerfolio.basis.tolerance import NOISE
from kerfolio.basis.words import counted
from kerfolio.model.plan import Plan
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.asked import Asked, point_asked
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledSheet
from kerfolio.trials.readings import Readings, batch_readings, batches, true_cuts

_OPTION = Place("--from-log")


@dataclass(frozen=True, slots=True, kw_only=True)
class FromLog:
    """What was asked with what the log adds to it, and a line for each thing taken or missing."""

    asked: Asked | None
    told: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


def from_log(asked: Asked, plan: Plan, workshop: Workshop) -> FromLog:
    """Fill in for each sheet what was not typed: its thickness and its cutter's true cut.

    The middle of the readings counts. Readings that lie further apart than the fit takes are an
    error, and so is a log without any reading of the plan's sheets.
    """
    there, faults = point_asked(asked, plan, workshop.stock)
    settled = settle(plan, workshop.stock, there)[0] if there else None
    if there is None or settled is None:
        return FromLog(asked=asked, findings=faults)
    taking = _Taking(asked, workshop, there)
    made = [taking.sheet(each) for each in settled.sheets]
    wrong = [each.wrong for each in made if each.wrong is not None]
    if not wrong and not any(each.text or each.typed for each in made):
        wrong = [taking.nothing([each.stock.name for each in settled.sheets])]
    cuts = [taking.cut(each) for each in settled.sheets]
    wrong += [each.wrong for each in cuts if each.wrong is not None]
    if wrong:
        return FromLog(asked=asked, findings=in_unit(wrong, plan.units))
    sheets = tuple(each.text for each in made if each.text)
    cut = tuple(each.text for each in cuts if each.text)
    reader = workshop.identity.reader_of(plan)
    lines = tuple(told(each.words, reader) for each in (*made, *cuts) if each.words is not None)
    full = replace(asked, sheets=(*asked.sheets, *sheets), cuts=(*asked.cuts, *cut))
    return FromLog(asked=full, told=lines)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Taken:
    """One thing taken: what to ask for (``ply=17.8 mm``), how it is told, or what is wrong.

    What was ``typed`` is left as it is.
    """

    text: str = ""
    typed: bool = False
    words: Words | None = None
    wrong: Finding | None = None


@dataclass(frozen=True, slots=True)
class _Taking:
    """What the log offers for a point, for one sheet after the other."""

    asked: Asked
    workshop: Workshop
    there: FitVariant

    def sheet(self, sheet: SettledSheet) -> _Taken:
        """Return the thickness of a sheet's newest batch."""
        if _typed(self.asked.sheets, sheet.name):
            return _Taken(typed=True)
        stock = sheet.stock.name
        found = batch_readings(self.workshop.trials, stock, self.asked.batch)
        if found is None:
            drawn = precise("drawn", sheet.thickness)
            words = said("`{}`: no reading is logged; {}, as the plan is drawn", sheet.name, drawn)
            return _Taken(words=words)
        wrong = self._apart(found, sheet, said("readings of `{}`", sheet.name))
        name = said(" of batch {}", quoted(found.batch)) if found.batch else said("")
        words = said(
            "`{}`: {}, {}{}", sheet.name, reading("middle", found.middle), _counted(found), name
        )
        return _Taken(
            text=f"{sheet.name}={_mm(found.middle)}",
            words=said("{}; {}", words, _stands(found)),
            wrong=wrong,
        )

    def cut(self, sheet: SettledSheet) -> _Taken:
        """Return by how much a sheet's own cutter cuts wider than its name."""
        cutter = sheet.cutter
        if _typed(self.asked.cuts, sheet.name) or sheet.diameter != cutter.diameter:
            return _Taken()
        found = true_cuts(self.workshop.trials, cutter)
        if found is None and cutter.true_cut is None:
            return _Taken(words=said("`{}`: no true cut is logged; as its name", cutter.name))
        if found is None:
            cuts = cutter.true_cut or cutter.diameter
            where = said("as {} says", str(cutter.came_from("true_cut")))
        else:
            cuts, where = found.middle, said("{}; {}", _counted(found), _stands(found))
        wider = cuts - cutter.diameter
        words = said(
            "`{}` cuts {}, {}: {} is built into the files of `{}`",
            *(cutter.name, chosen("true-cut", cuts), where, chosen("wider", wider), sheet.name),
        )
        wrong = self._apart(found, sheet, said("true cuts of `{}`", cutter.name)) if found else None
        return _Taken(text=f"{sheet.name}={_mm(wider)}", words=words, wrong=wrong)

    def nothing(self, sheets: list[str]) -> Finding:
        """Return that the log has no reading of any sheet of the plan."""
        known = [name for each in sheets for name in batches(self.workshop.trials, each)]
        if self.asked.batch:
            message = f"no batch {quoted(self.asked.batch)} of the plan’s sheets was measured"
            advice = did_you_mean(self.asked.batch, known) if known else _MEASURE
            return error("nothing-logged", message, Place(f"--batch {self.asked.batch}"), advice)
        return error("nothing-logged", "no sheet of the plan was measured", _OPTION, _MEASURE)

    def _apart(self, found: Readings, sheet: SettledSheet, what: Words) -> Finding | None:
        """Refuse readings of which no one file serves all: none may be over what the fit takes.

        A slot for the middle is twice the fit wider than that: a sheet thicker by more does not go
        in, one thinner by more than that has twice its play.
        """
        fit = dict(self.there.fit).get(sheet.name, sheet.fit)
        far = max(found.most - found.middle, found.middle - found.least)
        if far <= 2 * fit + NOISE:
            return None
        ends = readings(("least", found.least), ("most", found.most))
        message = said(
            "{} lie apart, {}: a fit of {} does not take that", what, ends, clearance(fit)
        )
        advice = said(
            "Measure again, part the sheets into two batches, or type one: `--sheet {}={}`. {}.",
            *(sheet.name, precise("middle", found.middle), _stands(found)),
        )
        return error("readings-apart", message, _OPTION, advice, subject=sheet.name)


_MEASURE = "Log what a caliper says: `batch: {name: august, readings: [17.7 mm, 17.9 mm]}`."


def _typed(texts: Iterable[str], sheet: str) -> bool:
    """Tell whether a value was typed for a sheet, by its name or for all of them."""
    return any("=" not in each or each.split("=")[0].strip() == sheet for each in texts)


def _mm(value: float) -> str:
    return f"{fixed(value, 4)} mm"


def _counted(found: Readings) -> Words:
    if len(found.values) == 1:
        return said("one reading only")
    ends = readings(("least", found.least), ("most", found.most))
    return said("the middle of {}, {}", counted(len(found.values), "reading"), ends)


def _stands(found: Readings) -> Words:
    """Return where readings stand, and of which day the newest is."""
    places = strung([str(each.place) for each in found.entries], ", ")
    return said("{}, {}", places, day_text(METRIC, found.day))
