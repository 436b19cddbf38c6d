"""``prove --report``: every finding on a page of the maker's own disk, with its picture."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from kerfolio.basis.finding import Finding
from kerfolio.disk.put import put
from kerfolio.drawing.finding_view import finding_view
from kerfolio.model.workshop import Identity
from kerfolio.pages.report import PlanRemarks, Remark, report_page
from kerfolio.proving.grounds import grounds_of
from kerfolio.proving.prove import Proof
from kerfolio.publishing.examine import Examined
from kerfolio.writing.svg import svg_bytes

FILE = "index.html"


def write_report(folder: Path, examined: Examined) -> Path:
    """Write the report into a folder and return its path. Raises OSError.

    It is one file: style and pictures lie in it. Other files of the folder are left alone.
    """
    target = folder / FILE
    put(target, report_of(examined).encode())
    return target


def report_of(examined: Examined) -> str:
    """Return the report as a page: what concerns the workshop first, then plan by plan."""
    workshop = examined.workshop
    identity = workshop.identity if workshop else Identity(title="A workshop", maker="its maker")
    return report_page(identity, tuple(_sections(examined)))


def _sections(examined: Examined) -> Iterator[PlanRemarks]:
    loose = [each for each in examined.findings if not each.place.file.startswith("plans/")]
    if loose:
        yield PlanRemarks(title="The workshop", name="", remarks=tuple(_remarks(loose, None)))
    proofs = {proof.plan.name: proof for proof in examined.proofs}
    folders = {
        each.place.file.split("/")[1]: None
        for each in examined.findings
        if each.place.file.startswith("plans/")
    }
    for name in sorted({*proofs, *folders}):
        found = [each for each in examined.findings if each.place.file.startswith(f"plans/{name}/")]
        proof = proofs.get(name)
        title = proof.plan.title if proof else name
        remarks = tuple(_remarks(found, proof))
        yield PlanRemarks(title=title, name=name, remarks=remarks)


def _remarks(findings: Iterable[Finding], proof: Proof | None) -> Iterator[Remark]:
    for number, finding in enumerate(findings, start=1):
        grounds = grounds_of(finding.rule)
        yield Remark(
            finding=finding,
            reason=grounds.reason,
            source=grounds.source,
            picture=finding_picture(finding, proof, number),
            part=finding.mark.part if finding.mark else "",
        )


def finding_picture(finding: Finding, proof: Proof | None, number: int) -> str:
    """Return inline SVG of the finding's place; empty where it has none, or nothing settled."""
    mark = finding.mark
    if mark is None or proof is None:
        return ""
    for settled in proof.points:
        for part in settled.parts:
            if settled.variant.label == mark.variant and part.name == mark.part:
                drawing = finding_view(settled, part, mark)
                prefix = f"{proof.plan.name}-{number}-"
                svg = svg_bytes(
                    drawing, decimals=2, real_size=False, class_prefix="k-", id_prefix=prefix
                )
                return svg.decode()
    return ""
