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
@click.option(
    "--draft", is_flag=True, help="For your own eyes: a release that changed is not refused."
)
@WORKERS
def publish_command(
    workshop: Path,
    plan: str,
    out: Path | None,
    supporters_out: Path | None,
    day: date | None,
    keys: Path | None,
    draft: bool,
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
        today=None if draft else date.today(),
        draft=draft,
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


@kerfolio.command("release")
@click.argument("plan", metavar="NAME")
@click.argument("given", nargs=-1, metavar="[WORKSHOP] [WORDS]")
@click.option("--fix", "step", flag_value="fix", help="Something put right: 1.2.0 to 1.2.1.")
@click.option("--change", "step", flag_value="change", help="Something changed: 1.2.0 to 1.3.0.")
@click.option("--redesign", "step", flag_value="redesign", help="Made anew: 1.2.0 to 2.0.0.")
def release_command(plan: str, given: tuple[str, ...], step: str | None) -> None:
    """Prove a plan, write its next release into it, and record what that is.

    The version, today's date and WORDS go into `plan.yaml`; shapes, joints, lists and steps into
    `plans/NAME/releases/VERSION.json`. Keep both. From then on it is told which pieces of older
    releases still fit, and `publish` refuses a release that changed. Without an option that is
    chosen by what changed. Without WORDS and options the release that the plan states is recorded.

    Example: kerfolio release stool

    Example: kerfolio release stool --fix "The stretcher's slots sat 12 mm too high."
    """
    from kerfolio.publishing.release import ReleaseRequest, release

    workshop, words = _workshop_and_words(given)
    progress = Progress()
    request = ReleaseRequest(
        folder=workshop, name=plan, today=date.today(), step=step or "", words=words
    )
    done = release(request, progress)
    progress.close()
    print_findings(done.findings)
    if not done.version:
        click.echo(f"Not released. {summary(done.findings)}")
        sys.exit(1)
    for file in done.files:
        click.echo(f"wrote {file}")
    click.echo(f"{plan} {done.version} is recorded. `kerfolio publish` hands it on.")
    if done.letter:
        click.echo(f"\nTo those who have {done.change.old if done.change else ''}:\n")
        click.echo(done.letter)


def _workshop_and_words(given: tuple[str, ...]) -> tuple[Path, str]:
    """Return the folder and the words of a command that may be given either, or both in turn."""
    if len(given) > 2:
        raise click.UsageError('put what changed in quotes: "The slots moved 12 mm inward."')
    folders = [each for each in given[:1] if (Path(each) / "workshop.yaml").is_file()]
    if len(given) == 2 and not folders:
        raise click.UsageError(f"`{given[0]}` is no workshop: it has no workshop.yaml")
    words = given[len(folders) :]
    return Path(folders[0] if folders else "."), words[0] if words else ""
