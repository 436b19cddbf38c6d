"""The command line: it runs a command and sets the exit code, whatever stops it.

The commands stand in ``commands``. Each loads the stages it needs when it runs: the whole way takes
a second to load, which ``--help`` and a mistyped word need not wait for.
"""

from __future__ import annotations

import io
import os
import signal
import sys
import traceback

import click

from kerfolio.basis.collector import collect_seldom
from kerfolio.basis.source_date import NAME as SOURCE_DATE
from kerfolio.basis.source_date import source_date_fault
from kerfolio.commands import (  # noqa: F401 - loading adds their commands
    begin,
    check,
    cut,
    hand_on,
    log,
    log_entry,
    make,
    seal,
)
from kerfolio.commands.group import kerfolio
from kerfolio.commands.telling import RUN
from kerfolio.disk.trouble import DiskError


def main() -> None:
    """Run the command line; whatever stops it is told in words, never as a traceback."""
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    collect_seldom()
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
    if RUN.trace:
        click.echo("".join(traceback.format_exception(fault)), err=True)
    doing = f" while {RUN.doing}" if RUN.doing else ""
    whole = "".join(f"{each} " for each in getattr(fault, "__notes__", ())[:1])
    words = " ".join(("kerfolio --trace", *sys.argv[1:]))
    click.echo(f"error: a fault of the program itself{doing} ({type(fault).__name__})", err=True)
    if not RUN.trace:
        click.echo(f"    {whole}`{words}` shows where; please report it.", err=True)
