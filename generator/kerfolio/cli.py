"""The commands: they print findings and progress and set the exit code.

A command loads the stages it needs when it runs: the whole way takes a second to load, which
``--help`` and a mistyped word need not wait for.
"""

from __future__ import annotations

import io
import json
import os
import signal
import sys
import traceback
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click
from click import Group

from kerfolio.basis.digits import rounded
from kerfolio.basis.finding import Finding, Severity, has_errors
from kerfolio.basis.source_date import NAME as SOURCE_DATE
from kerfolio.basis.source_date import source_date_fault
from kerfolio.basis.words import counted
from kerfolio.disk.trouble import DiskError
from kerfolio.publishing.begin import Begun, begin_plan, begin_trial, begin_workshop
from kerfolio.trials.log import matching, settings_text

if TYPE_CHECKING:
    from kerfolio.publishing.examine import Examined
    from kerfolio.publishing.freeze import Frozen
    from kerfolio.publishing.swapping import Tried

_WORKSHOP = click.argument(
    "workshop", type=click.Path(path_type=Path), default=".", metavar="[WORKSHOP]"
)
_PLAN = click.option("--plan", "plan", default="", metavar="NAME", help="Only this plan.")


@dataclass(slots=True)
class _Run:
    """What is being done at this moment, and whether a fault of ours is shown with its trace."""

    doing: str = ""
    trace: bool = False


_RUN = _Run()


class Progress:
    """Says what is being done: one rewritten line on a terminal, plain lines when piped."""

    def __init__(self) -> None:
        self._live = sys.stderr.isatty()

    def __call__(self, text: str) -> None:
        """Show what is being done now."""
        _RUN.doing = text
        if self._live:
            click.echo(f"\r\x1b[2K{text} ...", err=True, nl=False)
        else:
            click.echo(text, err=True)

    def close(self) -> None:
        """Clear the line that is being rewritten."""
        if self._live:
            click.echo("\r\x1b[2K", err=True, nl=False)


def _print_findings(findings: Iterable[Finding]) -> None:
    for finding in findings:
        if not finding.silenced:
            click.echo(str(finding))


def _print_frozen(each: Frozen, words: str) -> None:
    click.echo(f"wrote {each.file}: {words}")
    if each.spare:
        click.echo(f"kept the one before as {each.spare}: {each.reason}")


def _summary(findings: Iterable[Finding]) -> str:
    found = tuple(findings)
    heard = [each for each in found if not each.silenced]
    counts = [(each, sum(f.count for f in heard if f.severity is each)) for each in Severity]
    words = [counted(count, str(each)) for each, count in counts if count]
    silenced = sum(each.count for each in found if each.silenced)
    if silenced:
        words.append(f"{silenced} silenced")
    return ", ".join(words) + "." if words else "Nothing to remark."


def _as_json(findings: Iterable[Finding]) -> str:
    rows = [
        {
            "rule": finding.rule,
            "severity": str(finding.severity),
            "message": finding.message,
            "advice": finding.advice,
            "file": finding.place.file,
            "line": finding.place.line,
            "column": finding.place.column,
            "silenced": finding.silenced,
            "subject": finding.subject,
            "count": finding.count,
            "facts": [
                {"name": fact.name, "value": rounded(fact.value), "unit": fact.unit}
                for fact in finding.facts
            ],
        }
        for finding in findings
    ]
    return json.dumps(rows, indent=1)  # in ASCII: it is the same in every locale


_GROUPS = {
    "Begin": ("start", "add", "schema"),
    "Make": ("prove", "sequence"),
    "Cut": ("layout", "files", "batch", "trials", "stock"),
    "Hand on": ("publish",),
}
"""What a person wants to do, and the commands for it."""


class _Grouped(Group):
    """Lists the commands by what a person wants to do."""

    def format_commands(
        self,
        ctx: click.Context,  # noqa: ARG002 - which commands there are hangs on nothing
        formatter: click.HelpFormatter,
    ) -> None:
        """Write each group with a line for each of its commands."""
        for title, names in _GROUPS.items():
            known = [(name, self.commands[name]) for name in names if name in self.commands]
            with formatter.section(title):
                formatter.write_dl([(name, each.get_short_help_str(200)) for name, each in known])


@click.group(cls=_Grouped, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="kerfolio")
@click.option("--trace", is_flag=True, help="Show where the program failed, should it fail.")
def kerfolio(trace: bool) -> None:
    """Prove, compute, draw and publish plans for knock-down, sheet-goods projects.

    Example: kerfolio publish my-workshop
    """
    _RUN.doing, _RUN.trace = "", trace


def _told(begun: Begun) -> None:
    files, findings = begun
    _print_findings(findings)
    for file in files:
        click.echo(f"wrote {file}")
    sys.exit(1 if has_errors(findings) else 0)


@kerfolio.command("start")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--units",
    type=click.Choice(["mm", "in"]),
    default="mm",
    help="The unit you work in [mm]; with in, on Letter paper and in dollars.",
)
def start_command(folder: Path, units: str) -> None:
    """Write a new workshop with one small plan that proves and publishes at once.

    Example: kerfolio start my-workshop --units in
    """
    _told(begin_workshop(folder, date.today(), units))


@kerfolio.group("add")
def add_group() -> None:
    """Write a new plan folder or log entry.

    Example: kerfolio add plan garden-bench my-workshop
    """


@add_group.command("plan")
@click.argument("name")
@_WORKSHOP
def add_plan_command(name: str, workshop: Path) -> None:
    """Write a new plan folder to change into your own.

    Example: kerfolio add plan garden-bench my-workshop
    """
    _told(begin_plan(workshop, name, date.today()))


@add_group.command("trial")
@_WORKSHOP
def add_trial_command(workshop: Path) -> None:
    """Write today's entry of the log, to fill in what is known.

    Example: kerfolio add trial my-workshop
    """
    _told(begin_trial(workshop, date.today()))


@kerfolio.command("prove")
@_WORKSHOP
@_PLAN
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text")
@click.option(
    "--report",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="Also write a page with pictures, DIR/index.html.",
)
@click.option(
    "--with",
    "swapped",
    multiple=True,
    metavar="[SHEET=]STOCK",
    help="Prove it cut from another sheet stock instead, and tell what changes.",
)
def prove_command(
    workshop: Path, plan: str, form: str, report: Path | None, swapped: tuple[str, ...]
) -> None:
    """Check everything in a workshop and print the findings.

    With `--with`, once for each sheet to swap, plans that have those sheets are proved for all
    that the other stock is sold at, and compared: weight, sheets, price, sag, screws, edges, damp.

    Example: kerfolio prove my-workshop --plan stool --report report

    Example: kerfolio prove my-workshop --plan stool --with ply=mdf-18
    """
    from kerfolio.publishing.examine import examine
    from kerfolio.publishing.freeze import foretold
    from kerfolio.publishing.swapping import with_swaps

    if swapped:
        if report:
            raise click.UsageError("--report and --with do not go together")
        _prove_swapped(workshop, plan, form, swapped)
    progress = Progress()
    examined = foretold(with_swaps(examine(workshop, plan, progress), progress))
    written = _reported(report, examined) if report else None
    progress.close()
    if form == "json":
        click.echo(_as_json(examined.findings))
    else:
        _print_findings(examined.findings)
        click.echo(_summary(examined.findings))
        if written:
            click.echo(f"wrote {written}")
    sys.exit(1 if has_errors(examined.findings) else 0)


def _prove_swapped(workshop: Path, plan: str, form: str, asked: tuple[str, ...]) -> NoReturn:
    from kerfolio.publishing.swapping import examine_swapped

    progress = Progress()
    found = examine_swapped(workshop, plan, asked, progress)
    progress.close()
    if form == "json":
        swaps = [_swap_json(each) for each in found.tried]
        rows = json.loads(_as_json(found.findings))
        click.echo(json.dumps({"findings": rows, "swaps": swaps}, indent=1))
    else:
        _print_findings(found.findings)
        for each in found.tried:
            _print_swap(each)
        click.echo(_summary(found.findings))
    refused = any(each.table.refused for each in found.tried)
    sys.exit(1 if refused or has_errors(found.findings) else 0)


def _swap_json(tried: Tried) -> dict[str, object]:
    table = tried.table
    rows = [{"what": row.what, "before": row.before, "after": row.after} for row in table.rows]
    names = {"plan": tried.plan.name, "before": table.before, "after": table.after}
    return {**names, "holds": not table.refused, "rows": rows}


def _print_swap(tried: Tried) -> None:
    table = tried.table
    click.echo(f"\n{tried.plan.title}: {table.after} in place of {table.before}")
    for row in table.rows:
        same = row.before == row.after
        words = f"{row.before}, as before" if same else f"{row.before} -> {row.after}"
        click.echo(f"  {row.what}: {words}")
    for text in table.refused:
        click.echo(f"  no longer: {text}")
    click.echo(f"{table.verdict}\n")


def _reported(folder: Path, examined: Examined) -> Path:
    from kerfolio.publishing.report import write_report

    return write_report(folder, examined)


@kerfolio.command("sequence")
@_WORKSHOP
@_PLAN
def sequence_command(workshop: Path, plan: str) -> None:
    """Find an order of assembly along straight lines and print it as steps to write out.

    A plan's own steps win; this is for a plan that has none yet, or to compare.

    Example: kerfolio sequence my-workshop --plan stool
    """
    from kerfolio.publishing.examine import examine
    from kerfolio.publishing.sequence import found_orders

    progress = Progress()
    examined = examine(workshop, plan, progress, pictures=False)
    progress.close()
    _print_findings([each for each in examined.findings if each.severity is Severity.ERROR])
    for name, steps in found_orders(examined):
        click.echo(f"# {name}\n{steps}")
    sys.exit(1 if has_errors(examined.findings) else 0)


@kerfolio.command("layout")
@_WORKSHOP
@_PLAN
@click.option(
    "--engine",
    default="",
    metavar="NAME",
    help="Also ask an engine of another library: packingsolver or spyrrow.",
)
@click.option(
    "--seconds",
    type=click.FloatRange(1, 3600),
    default=None,
    metavar="S",
    help="How long an engine may take for each sheet material [8]; alone, it asks all there are.",
)
@click.option(
    "--seed", type=click.IntRange(0, 1_000_000), default=0, metavar="N", help="Another try [0]."
)
def layout_command(
    workshop: Path, plan: str, engine: str, seconds: float | None, seed: int
) -> None:
    """Lay the pieces out on sheets afresh and freeze the result beside each plan.

    Our own search counts its moves: without --engine and --seconds, the same plan gives the same
    layout on every machine. What an engine answers is proved, and taken where it costs less sheet
    than our own layout. spyrrow looks for a larger offcut on the last sheet.

    A layout before it that was moved by hand, or laid out by an engine, is kept beside it as
    layout.previous.json.

    Example: kerfolio layout my-workshop --plan stool --engine spyrrow --seconds 60
    """
    from kerfolio.publishing.afresh import LayoutRequest, engine_fault, lay_out_afresh

    request = LayoutRequest(folder=workshop, only=plan, engine=engine, seconds=seconds, seed=seed)
    fault = engine_fault(request)
    if fault:
        raise click.UsageError(fault)
    progress = Progress()
    made = lay_out_afresh(request, progress)
    progress.close()
    _print_findings(made.findings)
    for each in made.frozen:
        sheets = counted(len(each.layout.sheets), "sheet")
        _print_frozen(each, f"{sheets}, laid out by {each.layout.engine}")
    sys.exit(1 if has_errors(made.findings) else 0)


_SHEETS = click.option(
    "--sheet",
    "sheets",
    multiple=True,
    metavar="[NAME=]THICKNESS",
    help="What a sheet measures; one that is not named is as the plan is drawn for.",
)
_FITS = click.option(
    "--fit", "fits", multiple=True, metavar="[NAME=]FIT", help="Clearance on each side of a joint."
)
_CUTTERS = click.option(
    "--cutter",
    "cutters",
    multiple=True,
    metavar="[NAME=]DIAMETER",
    help="The cutter, or `none` for a laser or a hand's tools: no relief.",
)


_CUTS = click.option(
    "--cut",
    "cuts",
    multiple=True,
    metavar="[NAME=]LENGTH",
    help="By how much the cutter cuts wider than its name, to be built into the cut files.",
)


@kerfolio.command("files")
@_WORKSHOP
@click.option("--plan", "plan", required=True, metavar="NAME", help="The plan to make.")
@_SHEETS
@_FITS
@_CUTTERS
@_CUTS
@click.option(
    "--lay-for",
    default="",
    metavar="SHEET",
    help="On another sheet or bed that the plan is laid out for: 1220x1220, '600x900 bed'.",
)
@click.option(
    "--only",
    default="",
    metavar="PIECE",
    help="Just this piece, by its mark or its name; PIECE.OPENING for one opening of it.",
)
@click.option(
    "--reopen",
    default="",
    metavar="LENGTH",
    help="With --only: its openings are too tight by this; cut them wider in the finished piece.",
)
@click.option(
    "--loose",
    default="",
    metavar="LENGTH",
    help="With --only: its openings are too loose by this; say what to line them with.",
)
@click.option(
    "--offcut",
    default="",
    metavar="SIZE",
    help="With --only: cut it again, on an offcut of this size, the side along the grain first; "
    "a third side is its thickness.",
)
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Where the files go [WORKSHOP/files/NAME-THICKNESS].",
)
def files_command(
    workshop: Path,
    plan: str,
    sheets: tuple[str, ...],
    fits: tuple[str, ...],
    cutters: tuple[str, ...],
    cuts: tuple[str, ...],
    lay_for: str,
    only: str,
    reopen: str,
    loose: str,
    offcut: str,
    out: Path | None,
) -> None:
    """Write cut files, templates and setup sheets for a measured sheet, a fit and a cutter.

    The plan is settled and proved there, whatever it is published for. Lengths are in the plan's
    unit, or say theirs. A fit, a cutter or a cut without a name is for all sheets. With `--cut`
    tell the toolpath program the cutter's name, not what it really cuts.

    A piece that came out wrong is saved with `--only`, for what the others were cut for: reopened
    where it is too tight, lined where it is too loose, or cut again on an offcut.

    Example: kerfolio files my-workshop --plan stool --sheet ply=17.63 --cutter 3.175

    Example: kerfolio files my-workshop --plan stool --lay-for 1220x1220

    Example: kerfolio files my-workshop --plan stool --only B --reopen 0.15
    """
    from kerfolio.publishing.asked import Asked
    from kerfolio.publishing.point_files import FilesRequest, make_files
    from kerfolio.publishing.rescue import RescueAsked
    from kerfolio.publishing.rescue_files import RescueRequest, make_rescue

    ways = [each for each in (reopen, loose, offcut) if each]
    if len(ways) > 1:
        raise click.UsageError("Take one of --reopen, --loose and --offcut at a time.")
    if ways and not only:
        raise click.UsageError("Name the piece, too: --only B.")
    if only and lay_for:
        raise click.UsageError("--only and --lay-for do not go together.")
    progress = Progress()
    asked = Asked(sheets=sheets, fits=fits, cutters=cutters, cuts=cuts)
    if only:
        wrong = RescueAsked(only=only, reopen=reopen, loose=loose, offcut=offcut)
        request = RescueRequest(folder=workshop, plan=plan, asked=asked, rescue=wrong, out=out)
        made = make_rescue(request, progress)
    else:
        files = FilesRequest(folder=workshop, plan=plan, asked=asked, lay_for=lay_for, out=out)
        made = make_files(files, progress)
    progress.close()
    _print_findings(made.findings)
    if has_errors(made.findings):
        click.echo(f"Not written. {_summary(made.findings)}")
        sys.exit(1)
    for line in made.told:
        click.echo(line)
    if made.written:
        click.echo(f"For {made.label}: wrote {counted(len(made.written), 'file')} to {made.out}")


@kerfolio.command("batch")
@_WORKSHOP
@click.option("--plan", "plan", required=True, metavar="NAME", help="The plan to make.")
@click.option(
    "--copies", type=click.IntRange(2, 100), required=True, metavar="N", help="How many to make."
)
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Where the files go [WORKSHOP/batches/NAME-N].",
)
@_SHEETS
@_FITS
@_CUTTERS
@_CUTS
def batch_command(
    workshop: Path,
    plan: str,
    copies: int,
    out: Path | None,
    sheets: tuple[str, ...],
    fits: tuple[str, ...],
    cutters: tuple[str, ...],
    cuts: tuple[str, ...],
) -> None:
    """Lay out several copies of a plan together and write what it takes to cut them.

    The pieces of one copy are kept together where that costs no sheet; with offcuts, all copies are
    laid out as one. The plan's own layout and the site stay as they are. Files are for every
    published thickness, or as `files` makes them for what is named of sheet, fit, cutter and cut.

    Example: kerfolio batch my-workshop --plan stool --copies 4
    """
    from kerfolio.publishing.asked import Asked
    from kerfolio.publishing.batch import BatchRequest, make_batch

    progress = Progress()
    request = BatchRequest(
        folder=workshop,
        plan=plan,
        copies=copies,
        out=out or workshop / "batches" / f"{plan}-{copies}",
        asked=Asked(sheets=sheets, fits=fits, cutters=cutters, cuts=cuts)
        if sheets or fits or cutters or cuts
        else None,
    )
    made = make_batch(request, progress)
    progress.close()
    _print_findings(made.findings)
    if has_errors(made.findings):
        click.echo(f"Not written. {_summary(made.findings)}")
        sys.exit(1)
    laid = counted(made.sheets, "sheet")
    click.echo(f"{copies} copies on {laid}: wrote {len(made.written)} files to {request.out}")


@kerfolio.command("publish")
@_WORKSHOP
@_PLAN
@click.option("--out", type=click.Path(path_type=Path), help="Where the site goes [WORKSHOP/site].")
@click.option(
    "--supporters-out",
    type=click.Path(path_type=Path),
    help="Where supporters' bundles go, never inside the site [WORKSHOP/supporters].",
)
def publish_command(
    workshop: Path, plan: str, out: Path | None, supporters_out: Path | None
) -> None:
    """Prove and compute everything, then write the site and the bundles at once.

    Example: kerfolio publish my-workshop --out site
    """
    from kerfolio.publishing.build import Request, publish

    progress = Progress()
    request = Request(
        folder=workshop,
        out=out or workshop / "site",
        supporters_out=supporters_out or workshop / "supporters",
        only=plan,
    )
    outcome = publish(request, progress)
    progress.close()
    _print_findings(outcome.findings)
    if not outcome.published:
        click.echo(f"Not published. {_summary(outcome.findings)}")
        sys.exit(1)
    for layout in outcome.frozen:
        _print_frozen(layout, layout.why)
    click.echo(f"Published {counted(len(outcome.plans), 'plan')} to {request.out}")
    for file in outcome.handed_over:
        click.echo(f"For supporters, to hand over yourself: {file}")
    for each in outcome.public:
        click.echo(f"Everybody sees of {each.title}: {', '.join((*each.always, *each.shown))}.")
        kept = f"    Kept back, unless its `show:` names it: {', '.join(each.kept)}."
        click.echo(kept if each.kept else "    Nothing but exact shapes is kept back.")


@kerfolio.command("trials")
@_WORKSHOP
@click.option("--stock", default="", metavar="NAME", help="Only on this sheet material.")
@click.option("--cutter", default="", metavar="NAME", help="Only with this cutter.")
@click.option("--outcome", default="", metavar="GRADE", help="Only of this outcome.")
def trials_command(workshop: Path, stock: str, cutter: str, outcome: str) -> None:
    """Read the log: what worked on which sheet with which cutter.

    Also writes the whole log as one private page, WORKSHOP/.kerfolio/log.html.

    Example: kerfolio trials my-workshop --cutter compression-6 --outcome clean
    """
    from kerfolio.publishing.private_log import read_log, write_private_log

    found, findings = read_log(workshop)
    _print_findings(findings)
    if found is None:
        sys.exit(1)
    for trial in matching(found.trials, stock=stock, cutter=cutter, outcome=outcome):
        grade = trial.outcome or "no outcome yet"
        click.echo(f"{trial.date}  {grade:<14} {trial.title}")
        click.echo(f"            {settings_text(trial, found.identity.units_first)}")
    click.echo(f"wrote {write_private_log(workshop, found)}")
    sys.exit(1 if has_errors(findings) else 0)


@kerfolio.command("stock")
@_WORKSHOP
@click.argument("name", default="", metavar="[NAME]")
@click.option(
    "--kind",
    default="",
    metavar="KIND",
    help="Only sheets, boards, cutters, hardware, papers, chip-loads, depth-rules, movements or "
    "finishes.",
)
def stock_command(workshop: Path, name: str, kind: str) -> None:
    """Show what can be bought: each figure with the file it was written in and its source.

    What stands in the workshop's stock/ lies over the library that comes with the program. A
    single word that is no folder is a NAME.

    Example: kerfolio stock my-workshop birch-plywood-18
    """
    from kerfolio.publishing.stock_text import stock_text

    if not name and not workshop.exists():
        workshop, name = Path(), str(workshop)
    text, findings = stock_text(workshop, kind, name)
    _print_findings(findings)
    click.echo(text, nl=bool(text))
    sys.exit(1 if has_errors(findings) else 0)


@kerfolio.command("schema")
@click.argument("folder", type=click.Path(path_type=Path))
def schema_command(folder: Path) -> None:
    """Write the JSON Schema of every file kind, for editors that check while you type.

    Example: kerfolio schema schemas
    """
    from kerfolio.publishing.schemas import write_schemas

    for file in write_schemas(folder):
        click.echo(f"wrote {file}")


def main() -> None:
    """Run the command line; whatever stops it is told in words, never as a traceback."""
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    _bear_any_letter()
    wrong_date = source_date_fault(os.environ.get(SOURCE_DATE))
    if wrong_date:
        click.echo(f"error: {wrong_date}", err=True)
        sys.exit(2)
    try:
        sys.exit(kerfolio.main(standalone_mode=False))
    except click.ClickException as wrong:
        wrong.show()
        sys.exit(wrong.exit_code)
    except click.Abort as stop:
        click.echo(f"Stopped. {getattr(stop.__cause__, 'whole', '')}".rstrip(), err=True)
        sys.exit(1)
    except OSError as trouble:
        name = f"{trouble.filename}: " if trouble.filename else ""
        click.echo(f"error: {name}{trouble.strerror or trouble}", err=True)
        if isinstance(trouble, DiskError):
            click.echo(f"    {trouble.whole} {trouble.advice}", err=True)
        sys.exit(1)
    except Exception as fault:  # a fault of ours, whatever it is
        _tell_fault(fault)
        sys.exit(1)


def _bear_any_letter() -> None:
    """Let no letter stop a command that the encoding of a terminal or a pipe has not got."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _tell_fault(fault: Exception) -> None:
    if _RUN.trace:
        click.echo("".join(traceback.format_exception(fault)), err=True)
    doing = f" while {_RUN.doing}" if _RUN.doing else ""
    whole = "".join(f"{each} " for each in getattr(fault, "__notes__", ())[:1])
    words = " ".join(("kerfolio --trace", *sys.argv[1:]))
    click.echo(f"error: a fault of the program itself{doing} ({type(fault).__name__})", err=True)
    if not _RUN.trace:
        click.echo(f"    {whole}`{words}` shows where; please report it.", err=True)
