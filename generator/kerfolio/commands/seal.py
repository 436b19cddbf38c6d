"""Commands on keys and sealed files: seal, unseal."""

from __future__ import annotations

import re
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

import click

from kerfolio.basis.finding import has_errors
from kerfolio.basis.words import counted
from kerfolio.commands.group import KEYS, WORKSHOP_OF_CIRCLE, kerfolio
from kerfolio.commands.telling import print_findings

if TYPE_CHECKING:
    from kerfolio.publishing.keys import KeyChange

_MONTH = click.DateTime(["%Y-%m"])
_MOST_TYPED = 10_000


def _key_name(_: click.Context, __: click.Parameter, value: str) -> str:
    """Take a key as it is listed; what else is typed here is not repeated."""
    if re.fullmatch(r"[0-9]{4}-[0-9]{2}(\.[0-9]+)?", value) is None:
        raise click.BadParameter("write its month as `kerfolio seal list` shows it: 2026-12")
    return value


@kerfolio.group("seal")
def seal_group() -> None:
    """Make, list and withdraw the keys that supporters' bundles are sealed for.

    A bundle of a plan whose `circle:` has a key goes to the site sealed; whoever has one of the
    circle's keys opens it on the plan's page or with `kerfolio unseal`. Keys are kept outside the
    workshop, among your own data; `keys:` in workshop.yaml, --keys or KERFOLIO_KEYS name another
    folder.

    Example: kerfolio seal make friends --month 2026-12
    """


@seal_group.command("list")
@WORKSHOP_OF_CIRCLE
@KEYS
def list_command(workshop: Path, keys: Path | None) -> None:
    """List the keys of all circles, and where they are kept. No key can be shown again.

    Example: kerfolio seal list --workshop my-workshop
    """
    from kerfolio.publishing.keys import keys_of

    found = keys_of(workshop, keys)
    print_findings(found.findings)
    if found.cabinet is None:
        sys.exit(1)
    click.echo(f"Keys of {found.title}: {found.cabinet.folder}")
    if not found.circles and not found.rings:
        click.echo("No circle has a name: `circles: {friends: {who: ...}}` in workshop.yaml.")
    for circle in found.circles:
        _tell_ring(circle.name, circle.who, found.ring(circle.name))
    named = {each.name for each in found.circles}
    for ring in found.rings:
        if ring.circle not in named:
            _tell_ring(ring.circle, "no circle of the workshop any more", ring)


def _tell_ring(name: str, who: str, ring: object) -> None:
    click.echo(f"{name} ({who})")
    for each in getattr(ring, "keys", ()):
        click.echo(f"  {each.name:<10}  {'holds' if each.holds else 'withdrawn'}")
    if not getattr(ring, "keys", ()):
        click.echo(f"  no key yet: `kerfolio seal make {name}`")


@seal_group.command("make")
@click.argument("circle")
@click.option(
    "--month", type=_MONTH, metavar="YYYY-MM", help="The month it is made for [this month]."
)
@WORKSHOP_OF_CIRCLE
@KEYS
def make_command(circle: str, month: date | None, workshop: Path, keys: Path | None) -> None:
    """Make a key for a circle and show it, this once.

    It is drawn by chance: seven words of 1024, 70 bits. Write it down or send it on at once: only
    what opens with it is kept, not the words.

    Example: kerfolio seal make friends --month 2026-12 --workshop my-workshop
    """
    from kerfolio.publishing.keys import make_key

    made = make_key(workshop, circle, f"{month or date.today():%Y-%m}", keys)
    found = _told(made)
    click.echo(f"The key {made.name} of {circle}, for {found}. It is shown this once:")
    click.echo(f"\n    {made.words}\n")
    click.echo(f"What is published next opens with {counted(made.left, 'key')} of {circle}.")


@seal_group.command("withdraw")
@click.argument("circle")
@click.argument("key", metavar="YYYY-MM", callback=_key_name)
@WORKSHOP_OF_CIRCLE
@KEYS
def withdraw_command(circle: str, key: str, workshop: Path, keys: Path | None) -> None:
    """Withdraw a key: what is published from now on does not open with it.

    Whoever has the key still opens what was fetched before, and what other hosts keep of the old
    file. The next publish seals every bundle of the circle anew for the keys that are left.

    Example: kerfolio seal withdraw friends 2026-11
    """
    from kerfolio.publishing.keys import withdraw_key

    gone = withdraw_key(workshop, circle, key, keys)
    _told(gone)
    click.echo(f"Withdrawn: {gone.name} of {circle}. What was fetched before stays open to it.")
    if gone.left:
        left = counted(gone.left, "key")
        click.echo(f"Publish now: bundles are then sealed anew, for {left}.")
    else:
        click.echo("No key is left: bundles go by your own hand again, and none to the site.")


def _told(change: KeyChange) -> str:
    """Print what was found and end where nothing was changed; return who the circle is."""
    print_findings(change.findings)
    if change.circle is None or has_errors(change.findings):
        sys.exit(1)
    return change.circle.who


@kerfolio.command("unseal")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False, exists=True))
@click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="What to write [its name without .sealed].",
)
@click.option(
    "--key-file",
    type=click.File("r", encoding="utf-8", errors="replace"),
    help="Read the key from this file, or from - [asked at the terminal].",
)
def unseal_command(file: Path, out: Path | None, key_file: TextIO | None) -> None:
    """Open a sealed bundle with a key.

    The key is asked for and not shown; capitals, blanks and hyphens are no matter. Where nobody
    sits at a terminal it is read from what is piped in. What does not open is not written.

    Example: kerfolio unseal harbour-stool-1.2.0.zip.sealed
    """
    from kerfolio.publishing.unsealing import place_for, unseal

    target, refused = place_for(file, out)
    if not refused:
        refused = unseal(file, target, _typed(key_file))
    print_findings(refused)
    if refused:
        sys.exit(1)
    click.echo(f"wrote {target}")


def _typed(key_file: TextIO | None) -> str:
    if key_file is None and sys.stdin.isatty():
        typed: str = click.prompt("Key", hide_input=True)
        return typed
    return str((key_file or sys.stdin).read(_MOST_TYPED))
