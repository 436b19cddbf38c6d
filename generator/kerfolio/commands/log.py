"""Commands that ask the log: which trials there are, which settings came out best."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path
from typing import TypeVar

import click

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.basis.words import counted
from kerfolio.commands.group import WORKSHOP, WORKSHOP_OF_PLAN, kerfolio
from kerfolio.commands.telling import print_findings
from kerfolio.trials.asking import OPERATIONS, VERDICTS, Asked, unknown_in

T = TypeVar("T")

_OPERATION = click.option(
    "--operation",
    default="",
    metavar="WORD",
    help=f"Only what was cut so: {', '.join(OPERATIONS)}.",
)
_FORMAT = click.option(
    "--format", "shape", type=click.Choice(["text", "json"]), default="text", help="[text]"
)


@kerfolio.command("trials")
@WORKSHOP
@click.option("--sheet", default="", metavar="NAME", help="Only on this sheet material.")
@click.option("--cutter", default="", metavar="NAME", help="Only with this cutter.")
@_OPERATION
@click.option("--plan", default="", metavar="NAME", help="Only of this plan.")
@click.option(
    "--verdict",
    default="",
    metavar="WORD",
    help=f"Only those that came out so: {', '.join(VERDICTS)}.",
)
@click.option(
    "--since",
    type=click.DateTime(["%Y-%m-%d"]),
    default=None,
    metavar="DAY",
    help="Only from this day on: 2026-05-03.",
)
@_FORMAT
def trials_command(
    workshop: Path,
    sheet: str,
    cutter: str,
    operation: str,
    plan: str,
    verdict: str,
    since: datetime | None,
    shape: str,
) -> None:
    """Read the log: what was tried on which sheet with which cutter, the newest first.

    Also writes the whole log with its answers as one private page,
    WORKSHOP/.kerfolio/private/log/index.html.

    Example: kerfolio trials my-workshop --cutter compression-6 --verdict clean
    """
    from kerfolio.publishing.log_text import trials_json, trials_text
    from kerfolio.publishing.private_log import read_log, write_private_log

    asked = Asked(
        sheet=sheet,
        cutter=cutter,
        operation=operation,
        plan=plan,
        verdict=verdict,
        since=since.date() if since else None,
    )
    found, wrong = _sound(read_log(workshop))
    _refuse(unknown_in(asked, found))
    if shape == "json":
        click.echo(trials_json(found, asked))
    else:
        for line in trials_text(found, asked):
            click.echo(line)
        click.echo(f"wrote {write_private_log(workshop, found)}")
    sys.exit(1 if wrong else 0)


@kerfolio.command("best")
@click.argument("sheet")
@click.argument("cutter", default="", metavar="[CUTTER]")
@WORKSHOP_OF_PLAN
@_OPERATION
@_FORMAT
@click.option(
    "--card",
    type=click.Path(path_type=Path, dir_okay=False),
    default=None,
    metavar="FILE",
    help="Also write it as a settings card to print, a page for each cutter: FILE.pdf.",
)
def best_command(
    sheet: str, cutter: str, workshop: Path, operation: str, shape: str, card: Path | None
) -> None:
    """Show the best known settings for a sheet, what failed near them and what to try next.

    It says how many trials stand behind them and how they came out, and that it does not know yet
    where they are too few. Settings alike count together: chip loads within a quarter, speeds
    within half, first passes within a quarter of the cutter's diameter, later ones within half of
    it, whatever the plunge. Without a CUTTER, for each that was tried.

    Example: kerfolio best birch-plywood-18 compression-6 --card card.pdf
    """
    from kerfolio.publishing.log_text import answers, best_json, best_text, english, nothing_on
    from kerfolio.publishing.private_log import read_log

    asked = Asked(sheet=sheet, cutter=cutter, operation=operation)
    found, wrong = _sound(read_log(workshop))
    _refuse(unknown_in(asked, found))
    told = answers(found, asked)
    if shape == "json":
        click.echo(best_json(told))
    else:
        texts = ("\n".join(best_text(each, english(found))) for each in told)
        click.echo("\n\n".join(texts) if told else nothing_on(found, asked))
    if card is not None:
        from kerfolio.publishing.card import write_card

        pages = write_card(card, told, found)
        words = (
            f"wrote {counted(pages, 'page')} to {card}" if pages else "No card: nothing to tell."
        )
        click.echo(words, err=shape == "json")
    sys.exit(1 if wrong else 0)


def _sound(read: tuple[T | None, tuple[Finding, ...]]) -> tuple[T, bool]:
    """Return what was read, and whether its log has errors; ends where nothing could be read."""
    found, findings = read
    print_findings(findings)
    if found is None:
        sys.exit(1)
    return found, has_errors(findings)


def _refuse(unknown: Iterable[str]) -> None:
    """End where a word means nothing."""
    sentences = list(unknown)
    if sentences:
        raise click.UsageError("\n".join(sentences))
