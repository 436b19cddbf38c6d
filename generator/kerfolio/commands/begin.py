"""Commands to begin with: a workshop, a plan, an entry of the log, the schemas."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from kerfolio.adopting.unit_names import UNITS
from kerfolio.basis.finding import has_errors
from kerfolio.commands.group import WORKSHOP, kerfolio
from kerfolio.commands.telling import print_findings
from kerfolio.publishing.begin import FIRST, Begun, begin_plan, begin_workshop

if TYPE_CHECKING:
    from kerfolio.adopting.shape import Question


def _told(begun: Begun) -> None:
    files, findings = begun
    print_findings(findings)
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
@click.argument("name", default="", metavar="NAME")
@WORKSHOP
@click.option("--like", default=FIRST, metavar="KIND", help=f"The kind of plan to write [{FIRST}].")
@click.option("--kinds", is_flag=True, help="Tell which kinds there are, and when to take which.")
@click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="With --kinds: draw them all on one sheet, .svg or .png.",
)
def add_plan_command(name: str, workshop: Path, like: str, kinds: bool, out: Path | None) -> None:
    """Write a new plan folder to change into your own, one that proves as it is.

    What it is like is a kind: a box, a stool, shelves and so on. Its main sizes stand at the top of
    the plan; change them, and all its parts and joints follow.

    Example: kerfolio add plan garden-bench my-workshop --like bench

    Example: kerfolio add plan --kinds --out kinds.svg
    """
    if kinds:
        _tell_kinds(name, out)
        return
    if not name:
        raise click.UsageError("Name the plan, or ask for --kinds.")
    if out is not None:
        raise click.UsageError("--out goes with --kinds.")
    _told(begin_plan(workshop, name, date.today(), like))


def _tell_kinds(workshop: str, out: Path | None) -> None:
    from kerfolio.publishing.kinds import draw_kinds, kinds_in_words
    from kerfolio.publishing.look import ENDINGS

    if out is not None and out.suffix not in ENDINGS:
        raise click.UsageError("Let --out end in .svg or .png.")
    listed = click.HelpFormatter()
    listed.write_dl(kinds_in_words())
    click.echo(listed.getvalue(), nl=False)
    if out is not None:
        findings = draw_kinds(Path(workshop or "."), out)
        _told((() if findings else (out,), findings))


@kerfolio.command("adopt")
@click.argument("drawing", type=click.Path(path_type=Path, dir_okay=False))
@WORKSHOP
@click.option("--into", default="", metavar="PLAN", help="The plan to write [the drawing's name].")
@click.option(
    "--unit",
    type=click.Choice(tuple(UNITS)),
    help="What the drawing's numbers are, where it does not say so [guessed].",
)
@click.option("--ask", is_flag=True, help="Ask what the drawing leaves open.")
def adopt_command(drawing: Path, workshop: Path, into: str, unit: str | None, ask: bool) -> None:
    """Read an SVG or DXF drawing of a whole project and write the plan that it is.

    Pieces, tabs, slots, notches, fingers and holes are recognised, put together and proved; what
    must follow the sheet's thickness does. What is not certain is taken as it is likeliest, and
    told; with --ask you are asked.

    Example: kerfolio adopt bench.dxf my-workshop --into garden-bench --ask
    """
    from kerfolio.commands.adopt_told import told_of
    from kerfolio.publishing.adopting import AdoptRequest, adopt

    request = AdoptRequest(
        drawing=drawing,
        workshop=workshop,
        into=into,
        unit=unit or "",
        day=date.today(),
        ask=_asked if ask else None,
    )
    found = adopt(request)
    for line in told_of(found):
        click.echo(line)
    print_findings(found.findings)
    for file in found.files:
        click.echo(f"wrote {file}")
    sys.exit(0 if found.files and not has_errors(found.findings) else 1)


def _asked(question: Question) -> str:
    """Ask at the terminal; the first answer is taken where nothing is typed."""
    about = f" [{question.place}]" if question.place.file else ""
    click.echo(f"{question.words[:1].upper()}{question.words[1:]}{about}")
    for number, answer in enumerate(question.answers, start=1):
        click.echo(f"  {number}  {answer}")
    most = len(question.answers)
    return question.answers[click.prompt("Answer", type=click.IntRange(1, most), default=1) - 1]


@kerfolio.command("schema")
@click.argument("folder", type=click.Path(path_type=Path))
def schema_command(folder: Path) -> None:
    """Write the JSON Schema of every file kind, for editors that check while you type.

    Example: kerfolio schema schemas
    """
    from kerfolio.publishing.schemas import write_schemas

    for file in write_schemas(folder):
        click.echo(f"wrote {file}")
