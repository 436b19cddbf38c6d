"""Commands that look over what was made and bring it to its host: verify, send."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from kerfolio.basis.finding import has_errors
from kerfolio.basis.words import counted
from kerfolio.commands.group import KEYS, WORKSHOP, kerfolio
from kerfolio.commands.telling import Progress, print_findings


@kerfolio.command("verify")
@click.argument("target", type=click.Path(path_type=Path, exists=True), metavar="SITE|BUNDLE")
@click.option(
    "--workshop",
    type=click.Path(path_type=Path, file_okay=False, exists=True),
    metavar="DIR",
    help="Make the bundles once more from this workshop, and compare.",
)
@KEYS
def verify_command(target: Path, workshop: Path | None, keys: Path | None) -> None:
    """Check that a site or a bundle is whole: nothing missing, nothing changed.

    A site is compared with its manifest.json, a bundle with its SHA256SUMS; what neither names is
    told. With --workshop each bundle is made anew from its plan and compared byte by byte; the
    workshop stays as it is.

    Example: kerfolio verify site --workshop my-workshop
    """
    from kerfolio.publishing.rebuilt import compare_with_plans
    from kerfolio.publishing.verifying import verify_bundle, verify_site

    progress = Progress()
    progress(f"checking {target}")
    found = verify_site(target) if target.is_dir() else verify_bundle(target)
    findings = found.findings
    if workshop is not None and not has_errors(findings):
        findings = (*findings, *compare_with_plans(target, workshop, keys, progress))
    progress.close()
    print_findings(findings)
    if has_errors(findings):
        sys.exit(1)
    also = ", and bundles are what their plans make" if workshop is not None else ""
    click.echo(f"Whole: {counted(found.files, 'file')} as stated{also}.")


@kerfolio.command("send")
@WORKSHOP
@click.option(
    "--site",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="The published site [WORKSHOP/site].",
)
@click.option(
    "--to",
    default="",
    metavar="PLACE",
    help="A folder, or a host's over SSH: [USER@]HOST:FOLDER [`send:` in workshop.yaml].",
)
@click.option("--dry-run", is_flag=True, help="Say what would be sent, and send nothing.")
@click.option(
    "--delete", is_flag=True, help="Remove what an earlier send brought and this site lacks."
)
def send_command(workshop: Path, site: Path | None, to: str, dry_run: bool, delete: bool) -> None:
    """Bring a published site to its host: only what changed, content first, pages last.

    A site that is not whole, and a workshop that does not prove, stay here. A host is reached by
    rsync over SSH, as your own SSH knows it. A run that was stopped is finished by the next one.
    Nothing is removed there unless you say so, and never what a send did not bring.

    Example: kerfolio send my-workshop --to ada@bench.example:www --dry-run
    """
    from kerfolio.publishing.sending import SendRequest, send

    request = SendRequest(
        workshop=workshop, site=site or workshop / "site", to=to, dry=dry_run, deletes=delete
    )
    progress = Progress()
    sent = send(request, progress)
    progress.close()
    print_findings(sent.findings)
    if has_errors(sent.findings):
        click.echo("Not sent.")
        sys.exit(1)
    would = "would be " if dry_run else ""
    for name in (*sent.brought, *(f"{each} (removed)" for each in sent.removed)):
        click.echo(f"  {name}")
    brought = counted(len(sent.brought), "file")
    click.echo(f"{brought} of {sent.files} {would}sent to {sent.to}, the others are there.")
    if sent.removed:
        click.echo(f"{counted(len(sent.removed), 'file')} {would}removed there.")
    if sent.left:
        left = counted(len(sent.left), "file")
        click.echo(f"{left} of an earlier site stayed there; --delete removes them.")
