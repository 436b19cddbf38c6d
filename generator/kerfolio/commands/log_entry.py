"""Commands that write the log: an entry asked for at the terminal, or from options."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from kerfolio.basis.finding import has_errors
from kerfolio.commands.begin import add_group
from kerfolio.commands.group import WORKSHOP, kerfolio
from kerfolio.commands.telling import print_findings
from kerfolio.trials.answers import KEYS

if TYPE_CHECKING:
    from kerfolio.publishing.adding import OpenLog
    from kerfolio.publishing.drafts import Draft

F = TypeVar("F", bound=Callable[..., None])


def _answers(command: F) -> F:
    """Give a command an option for each answer."""
    for each in reversed(KEYS.values()):
        more = " Several are parted by semicolons." if each.listed else ""
        name = each.key.replace("-", "_")
        add = click.option(f"--{each.name}", name, default=None, help=f"{each.words}.{more}")
        command = add(command)
    return command


@add_group.command("trial")
@WORKSHOP
@click.option(
    "--phone",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE.html",
    help="Write a page to copy to the phone: it makes entries at the machine, without a network.",
)
@click.option("--job", is_flag=True, help="It was no test: what was cut is used.")
@click.option("--now", is_flag=True, help="Ask nothing: write what the options say.")
@click.option(
    "--day",
    type=click.DateTime(["%Y-%m-%d"]),
    default=None,
    metavar="YYYY-MM-DD",
    help="The day it was cut [today].",
)
@_answers
def add_trial_command(
    workshop: Path,
    phone: Path | None,
    job: bool,
    now: bool,
    day: datetime | None,
    **given: str | None,
) -> None:
    """Write an entry of the log: which settings, on which sheet, with which cutter, and how it
    came out.

    At a terminal you are asked for the least, with what was logged last to take; what options say
    is not asked. Every answer is kept as a draft at once: stopped in between, the next `add trial`
    goes on with it. Any number of entries a day.

    Without a terminal the options are the entry; without options one to fill in is written.

    Example: kerfolio add trial my-workshop

    Example: kerfolio add trial --sheet birch-plywood-18 --cutter compression-6 --feed "4500 mm/min"
    --passes "8 mm; 10 mm" --outcome clean --now

    Example: kerfolio add trial my-workshop --phone at-the-machine.html
    """
    if phone is not None:
        _write_phone(workshop, phone)
        return
    answers = {key.replace("_", "-"): text for key, text in given.items() if text is not None}
    when = day.date() if day else date.today()
    asks = sys.stdin.isatty() and sys.stdout.isatty() and not now
    if not answers and not asks:
        from kerfolio.publishing.begin import begin_trial

        click.echo(f"wrote {begin_trial(workshop, when, job=job)}")
        return
    from kerfolio.publishing.adding import open_log

    log, findings = open_log(workshop)
    print_findings(findings)
    if log is None:
        sys.exit(1)
    begun = log.begun(when, job=job, answers=answers)
    findings = log.faults(begun, answers)
    print_findings(findings)
    if has_errors(findings):
        sys.exit(1)
    _write(log, _asked(log, begun) if asks else begun)


def _write_phone(workshop: Path, phone: Path) -> None:
    from kerfolio.publishing.phone import write_phone_page

    findings = write_phone_page(workshop, phone)
    print_findings(findings)
    if has_errors(findings):
        sys.exit(1)
    click.echo(f"wrote {phone}")


def _write(log: OpenLog, draft: Draft) -> None:
    file, id_ = log.write(draft)
    click.echo(f"wrote {file}: {id_}")


def _asked(log: OpenLog, begun: Draft) -> Draft:
    from kerfolio.commands.trial_asked import asked

    return asked(log, begun)


@kerfolio.command("receive")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@WORKSHOP
def receive_command(file: Path, workshop: Path) -> None:
    """Take into the log what was saved at the machine, or what a reader measured and sent.

    Each entry is checked as the log is; its photo is written anew, without what the camera noted.
    An entry that the log has is not taken again.

    Example: kerfolio receive log-2026-11-30-1412.entries.json my-workshop
    """
    from kerfolio.publishing.receiving import receive, told

    received = receive(workshop, file, date.today())
    print_findings(received.findings)
    for line in told(received):
        click.echo(line)
    sys.exit(1 if has_errors(received.findings) else 0)
