"""The command that hands on what was made: publish."""

from __future__ import annotations

import os
import sys
from datetime import date
from pathlib import Path

import click

from kerfolio.basis.source_date import NAME as SOURCE_DATE
from kerfolio.basis.source_date import source_day
from kerfolio.basis.words import counted
from kerfolio.commands.group import KEYS, PLAN, WORKERS, WORKSHOP, kerfolio
from kerfolio.commands.telling import Progress, print_findings, print_frozen, summary
from kerfolio.publishing.side_by_side import Workers


@kerfolio.command("publish")
@WORKSHOP
@PLAN
@click.option("--out", type=click.Path(path_type=Path), help="Where the site goes [WORKSHOP/site].")
@click.option(
    "--supporters-out",
    type=click.Path(path_type=Path),
    help="Where supporters' bundles go, never inside the site [WORKSHOP/supporters].",
)
@click.option(
    "--day",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="YYYY-MM-DD",
    help="The day to publish for, which opens plans to all whose `opens-to-all:` has come.",
)
@KEYS
@WORKERS
def publish_command(
    workshop: Path,
    plan: str,
    out: Path | None,
    supporters_out: Path | None,
    day: date | None,
    keys: Path | None,
    workers: Workers,
) -> None:
    """Prove and compute everything, then write the site and the bundles at once.

    Plans that are as they were when they were published last are taken from WORKSHOP/.kerfolio,
    which is safe to delete. With --plan that one is renewed, with the lists, feed and map of all;
    the others stay as they were published.

    A supporters' bundle lies in the supporters' folder, for you to hand over; where its circle has
    a key (`kerfolio seal`), it lies on the site as well, sealed.

    Example: kerfolio publish my-workshop --out site
    """
    from kerfolio.publishing.build import Request, publish

    progress = Progress()
    request = Request(
        folder=workshop,
        out=out or workshop / "site",
        supporters_out=supporters_out or workshop / "supporters",
        only=plan,
        workers=workers,
        keys=keys,
        seals=True,
        day=f"{day:%Y-%m-%d}" if day else source_day(os.environ.get(SOURCE_DATE)),
        today=date.today().isoformat(),
    )
    outcome = publish(request, progress, progress.tally)
    progress.close()
    print_findings(outcome.findings)
    if not outcome.published:
        click.echo(f"Not published. {summary(outcome.findings)}")
        sys.exit(1)
    for layout in outcome.frozen:
        print_frozen(layout, layout.fresh.why)
    click.echo(f"Published {counted(len(outcome.plans), 'plan')} to {request.out}")
    for sealed in outcome.sealed:
        names = f"{counted(len(sealed.keys), 'key')}: {', '.join(sealed.keys)}"
        click.echo(f"Sealed for {sealed.circle} ({names}): {request.out / sealed.row.name}")
    for file in outcome.handed_over:
        click.echo(f"For supporters, to hand over yourself: {file}")
    for each in outcome.public:
        click.echo(f"Everybody sees of {each.title}: {', '.join((*each.always, *each.shown))}.")
        kept = f"    Kept back, unless its `show:` names it: {', '.join(each.kept)}."
        click.echo(kept if each.kept else "    Nothing but exact shapes is kept back.")
