"""The command that looks over what was made: verify."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from kerfolio.basis.finding import has_errors
from kerfolio.basis.words import counted
from kerfolio.commands.group import KEYS, kerfolio
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
