"""The command line's own word, and what several commands ask for."""

from __future__ import annotations

from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path
from typing import Any, TypeVar

import click
from click import Group

from kerfolio.commands.telling import RUN
from kerfolio.publishing.side_by_side import Workers, workers_from

Command = TypeVar("Command", bound=Callable[..., Any])

WORKSHOP = click.argument(
    "workshop", type=click.Path(path_type=Path), default=".", metavar="[WORKSHOP]"
)


def _workshop_of(what: str) -> Callable[[Command], Command]:
    return click.option(
        "--workshop",
        type=click.Path(path_type=Path),
        default=".",
        metavar="DIR",
        help=f"The workshop of the {what} [the current folder].",
    )


WORKSHOP_OF_PLAN = _workshop_of("plan")
WORKSHOP_OF_CIRCLE = _workshop_of("circle")
KEYS = click.option(
    "--keys",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="The folder that keys are kept in [among your own data].",
)
PLAN = click.option("--plan", "plan", default="", metavar="NAME", help="Only this plan.")


def _workers(_: click.Context, __: click.Parameter, value: str) -> Workers:
    try:
        found = workers_from(value)
    except ValueError:
        raise click.BadParameter(f"`{value}` is neither a count nor an address") from None
    if found.address and find_spec("distributed") is None:
        raise click.BadParameter("an address wants Dask: `pip install 'kerfolio[cluster]'`")
    return found


WORKERS = click.option(
    "--workers",
    callback=_workers,
    default="",
    metavar="N|ADDRESS",
    help="How many plans are worked on side by side [one for each core], or the address of a "
    "scheduler of Dask, HOST:PORT, whose workers see this folder.",
)

_GROUPS = {
    "Begin": ("start", "add", "adopt", "schema"),
    "Make": ("look", "watch", "prove", "sequence", "draw"),
    "Cut": ("layout", "files", "batch", "trials", "best", "receive", "stock"),
    "Hand on": ("publish", "release", "seal", "unseal", "verify", "send"),
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
    RUN.doing, RUN.trace = "", trace
