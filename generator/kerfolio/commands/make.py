"""Commands for who makes a plan: prove it, find an order of assembly."""

from __future__ import annotations

import json
import sys
from contextlib import suppress
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from kerfolio.basis.finding import Severity, has_errors
from kerfolio.commands.group import PLAN, WORKERS, WORKSHOP, WORKSHOP_OF_PLAN, kerfolio
from kerfolio.commands.telling import Progress, as_json, print_findings, summary
from kerfolio.publishing.side_by_side import Workers

if TYPE_CHECKING:
    from kerfolio.publishing.swapping import Tried


@kerfolio.command("look")
@click.argument("plan", metavar="PLAN")
@click.argument("part", default="", metavar="[PART]")
@WORKSHOP_OF_PLAN
@click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Where the picture goes, .svg or .png [WORKSHOP/.kerfolio/look/PLAN-PART.svg].",
)
def look_command(plan: str, part: str, workshop: Path, out: Path | None) -> None:
    """Draw a part large, with its sizes and the names of its features, or the whole.

    PLAN is a plan's name, or its folder. What has errors is left out, and told; `prove` looks at
    the rest.

    Example: kerfolio look stool side --workshop my-workshop

    Example: kerfolio look my-workshop/plans/stool --out stool.png
    """
    from kerfolio.publishing.look import ENDINGS, LookRequest, look

    if out is not None and out.suffix not in ENDINGS:
        raise click.UsageError("Let --out end in .svg or .png.")
    folder = Path(plan)
    if folder.parent.name == "plans":
        workshop, plan = folder.parent.parent, folder.name
    looked = look(LookRequest(folder=workshop, plan=plan, part=part, out=out))
    print_findings(looked.findings)
    click.echo(f"wrote {looked.written}" if looked.written else "Nothing to show.")
    sys.exit(1 if has_errors(looked.findings) else 0)


@kerfolio.command("watch")
@WORKSHOP
@PLAN
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=0,
    metavar="N",
    help="The port of this machine's own address [one that is free].",
)
@click.option(
    "--editor",
    default="",
    metavar='"CMD {file}:{line}"',
    help="What opens a place in your editor; {column} may stand in it, too.",
)
@click.option("--no-readers", is_flag=True, help="Make no pages for readers meanwhile.")
def watch_command(workshop: Path, plan: str, port: int, editor: str, no_readers: bool) -> None:
    """Show a workshop in the browser while it is written; every save shows at once.

    The first page is yours: what was found, every part with its names and sizes, the whole as far
    as its joints go, what the last save changed in another tint. The second is the readers', as a
    publish would make it. Nothing leaves this machine, and nothing is published. Ctrl-C ends it.

    Example: kerfolio watch my-workshop --editor "gedit +{line} {file}"
    """
    from kerfolio.watching.editor import EditorError, editor_words
    from kerfolio.watching.ending import asked_to_end
    from kerfolio.watching.run import WatchRequest, watch

    try:
        words = editor_words(editor) if editor else ()
    except EditorError as fault:
        raise click.UsageError(str(fault)) from fault
    request = WatchRequest(
        folder=workshop, plan=plan, port=port, editor=words, readers=not no_readers
    )
    with asked_to_end() as is_over, suppress(KeyboardInterrupt):
        refused = watch(request, click.echo, is_over)
    if is_over():
        click.echo("Ended.", err=True)
        return
    print_findings(refused)
    sys.exit(1)


@kerfolio.command("prove")
@WORKSHOP
@PLAN
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
@WORKERS
def prove_command(
    workshop: Path,
    plan: str,
    form: str,
    report: Path | None,
    swapped: tuple[str, ...],
    workers: Workers,
) -> None:
    """Check everything in a workshop and print the findings.

    With `--with`, once for each sheet to swap, plans that have those sheets are proved for all
    that the other stock is sold at, and compared: weight, sheets, price, sag, screws, edges, damp.

    Example: kerfolio prove my-workshop --plan stool --report report

    Example: kerfolio prove my-workshop --plan stool --with ply=mdf-18
    """
    if swapped:
        if report:
            raise click.UsageError("--report and --with do not go together")
        _prove_swapped(workshop, plan, form, swapped)
    from kerfolio.publishing.proof import proved_findings
    from kerfolio.publishing.reported import write_report

    progress = Progress()
    if report:
        findings, written = write_report(report, workshop, plan, progress)
    else:
        tell = (workers, progress, progress.tally)
        findings, written = proved_findings(workshop, plan, *tell, today=date.today()), None
    progress.close()
    if form == "json":
        click.echo(as_json(findings))
    else:
        print_findings(findings)
        click.echo(summary(findings))
        if written:
            click.echo(f"wrote {written}")
    sys.exit(1 if has_errors(findings) else 0)


def _prove_swapped(workshop: Path, plan: str, form: str, asked: tuple[str, ...]) -> NoReturn:
    from kerfolio.publishing.swapping import examine_swapped

    progress = Progress()
    found = examine_swapped(workshop, plan, asked, progress)
    progress.close()
    if form == "json":
        swaps = [_swap_json(each) for each in found.tried]
        rows = json.loads(as_json(found.findings))
        click.echo(json.dumps({"findings": rows, "swaps": swaps}, indent=1))
    else:
        print_findings(found.findings)
        for each in found.tried:
            _print_swap(each)
        click.echo(summary(found.findings))
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


@kerfolio.command("sequence")
@WORKSHOP
@PLAN
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
    print_findings([each for each in examined.findings if each.severity is Severity.ERROR])
    for name, steps in found_orders(examined):
        click.echo(f"# {name}\n{steps}")
    sys.exit(1 if has_errors(examined.findings) else 0)


@kerfolio.command("draw")
@click.argument("plan", metavar="PLAN")
@WORKSHOP_OF_PLAN
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="Where the drawings go [WORKSHOP/.kerfolio/draw].",
)
def draw_command(plan: str, workshop: Path, out: Path | None) -> None:
    """Write one clean SVG and DXF of all parts, to go on in a drawing program.

    Parts lie side by side at full size, as drawn, without fit or relief; layers are called as the
    plan calls parts and features. Changed there, `kerfolio adopt FILE --into PLAN` reads it back
    into the plan's drawn parts.

    Example: kerfolio draw stool --workshop my-workshop
    """
    from kerfolio.publishing.drawing_out import draw_out

    drawn = draw_out(workshop, plan, out)
    print_findings([each for each in drawn.findings if each.severity is Severity.ERROR])
    for file in drawn.files:
        click.echo(f"wrote {file}")
    sys.exit(0 if drawn.files else 1)
