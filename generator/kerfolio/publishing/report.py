"""``prove --report``: every finding on a page of the maker's own disk, with its picture."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.basis.finding import Finding
from kerfolio.model.stock import Stock
from kerfolio.model.workshop import Identity
from kerfolio.pages.report import PlanRemarks, Remark, report_page
from kerfolio.proving.grounds import grounds_of
from kerfolio.publishing.examine import Examined
from kerfolio.publishing.finding_pictures import finding_pictures, plan_pictures
from kerfolio.reading.plan_folders import lies_in


def report_of(examined: Examined) -> str:
    """Return the report as a page: what concerns the workshop first, then plan by plan."""
    workshop = examined.workshop
    identity = workshop.identity if workshop else Identity(title="A workshop", maker="its maker")
    return report_page(identity, tuple(_sections(examined)))


def _sections(examined: Examined) -> Iterator[PlanRemarks]:
    stock = examined.workshop.stock if examined.workshop else Stock()
    loose = [each for each in examined.findings if not each.place.file.startswith("plans/")]
    if loose:
        remarks = tuple(_remarks((each, "") for each in loose))
        yield PlanRemarks(title="The workshop", name="", remarks=remarks)
    proofs = {proof.plan.name: proof for proof in examined.proofs}
    folders = {
        each.place.file.split("/")[1]: None
        for each in examined.findings
        if each.place.file.startswith("plans/")
    }
    for name in sorted({*proofs, *folders}):
        found = [each for each in examined.findings if lies_in(each, name)]
        proof = proofs.get(name)
        title = proof.plan.title if proof else name
        shown = finding_pictures(found, proof, stock)
        remarks = tuple(_remarks(zip(found, shown, strict=True)))
        heard = any(not each.silenced for each in found)
        pictures = plan_pictures(proof, stock) if proof and not heard else ()
        yield PlanRemarks(title=title, name=name, remarks=remarks, pictures=pictures)


def _remarks(pictured: Iterable[tuple[Finding, str]]) -> Iterator[Remark]:
    for finding, picture in pictured:
        grounds = grounds_of(finding.rule)
        yield Remark(
            finding=finding,
            reason=grounds.reason,
            source=grounds.source,
            picture=picture,
        )
