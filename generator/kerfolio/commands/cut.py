"""Commands for who cuts: layouts, files for a measured sheet, batches, the log, the stock."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from kerfolio.basis.finding import has_errors
from kerfolio.basis.words import counted
from kerfolio.commands.group import PLAN, WORKERS, WORKSHOP, kerfolio
from kerfolio.commands.telling import Progress, print_findings, print_frozen, summary
from kerfolio.publishing.side_by_side import Workers
from kerfolio.trials.log import VERDICTS, matching, settings_text


@kerfolio.command("layout")
@WORKSHOP
@PLAN
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
@WORKERS
def layout_command(
    workshop: Path, plan: str, engine: str, seconds: float | None, seed: int, workers: Workers
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

    request = LayoutRequest(
        folder=workshop, only=plan, engine=engine, seconds=seconds, seed=seed, workers=workers
    )
    fault = engine_fault(request)
    if fault:
        raise click.UsageError(fault)
    progress = Progress()
    made = lay_out_afresh(request, progress, progress.tally)
    progress.close()
    print_findings(made.findings)
    for each in made.frozen:
        sheets = counted(each.fresh.sheets, "sheet")
        print_frozen(each, f"{sheets}, laid out by {each.fresh.engine}")
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
@WORKSHOP
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
    "--from-log",
    is_flag=True,
    help="Take from the log what is not typed: the newest batch's thickness, the true cut.",
)
@click.option(
    "--batch", "sheet_batch", default="", metavar="NAME", help="With --from-log: of this batch."
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
    from_log: bool,
    sheet_batch: str,
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

    With `--from-log` a sheet is as thick as the middle of what was read of its newest batch, and
    cuts are as coupons read since the cutter was sharpened; what is taken from which entry is told.

    A piece that came out wrong is saved with `--only`, for what the others were cut for: reopened
    where it is too tight, lined where it is too loose, or cut again on an offcut.

    Example: kerfolio files my-workshop --plan stool --sheet ply=17.63 --cutter 3.175

    Example: kerfolio files my-workshop --plan stool --from-log

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
    if sheet_batch and not from_log:
        raise click.UsageError("--batch needs --from-log.")
    progress = Progress()
    asked = Asked(
        sheets=sheets,
        fits=fits,
        cutters=cutters,
        cuts=cuts,
        from_log=from_log,
        batch=sheet_batch,
    )
    if only:
        wrong = RescueAsked(only=only, reopen=reopen, loose=loose, offcut=offcut)
        request = RescueRequest(folder=workshop, plan=plan, asked=asked, rescue=wrong, out=out)
        made = make_rescue(request, progress)
    else:
        files = FilesRequest(folder=workshop, plan=plan, asked=asked, lay_for=lay_for, out=out)
        made = make_files(files, progress)
    progress.close()
    print_findings(made.findings)
    if has_errors(made.findings):
        click.echo(f"Not written. {summary(made.findings)}")
        sys.exit(1)
    for line in made.told:
        click.echo(line)
    if made.written:
        click.echo(f"For {made.label}: wrote {counted(len(made.written), 'file')} to {made.out}")


@kerfolio.command("batch")
@WORKSHOP
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
    print_findings(made.findings)
    if has_errors(made.findings):
        click.echo(f"Not written. {summary(made.findings)}")
        sys.exit(1)
    laid = counted(made.sheets, "sheet")
    click.echo(f"{copies} copies on {laid}: wrote {len(made.written)} files to {request.out}")


@kerfolio.command("trials")
@WORKSHOP
@click.option("--stock", default="", metavar="NAME", help="Only on this sheet material.")
@click.option("--cutter", default="", metavar="NAME", help="Only with this cutter.")
@click.option(
    "--verdict",
    type=click.Choice(VERDICTS),
    default="",
    help="Only those that came out so.",
)
def trials_command(workshop: Path, stock: str, cutter: str, verdict: str) -> None:
    """Read the log: what worked on which sheet with which cutter.

    Also writes the whole log as one private page, WORKSHOP/.kerfolio/private/log/index.html.

    Example: kerfolio trials my-workshop --cutter compression-6 --verdict clean
    """
    from kerfolio.publishing.private_log import read_log, write_private_log

    found, findings = read_log(workshop)
    print_findings(findings)
    if found is None:
        sys.exit(1)
    for trial in matching(found.trials, stock=stock, cutter=cutter, verdict=verdict):
        word = trial.grade.word if trial.grade else "no outcome yet"
        click.echo(f"{trial.date}  {word:<14} {trial.title}")
        click.echo(f"            {settings_text(trial, found.identity.reader)}")
    click.echo(f"wrote {write_private_log(workshop, found)}")
    sys.exit(1 if has_errors(findings) else 0)


@kerfolio.command("stock")
@WORKSHOP
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
    print_findings(findings)
    click.echo(text, nl=bool(text))
    sys.exit(1 if has_errors(findings) else 0)
