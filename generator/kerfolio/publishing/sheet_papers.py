"""What is printed for the machine and the saw: layouts, setup sheets, saw diagrams, by name."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping

from kerfolio.basis.style import told_as
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import engravings_name, has_saw, saw_name, setup_coupon_name
from kerfolio.model.stock import PaperStock
from kerfolio.paper.art_sheet import art_pdf
from kerfolio.paper.coupon_sheet import coupon_pdf
from kerfolio.paper.saw_sheets import saw_pdf
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.publishing.cut_files import Named
from kerfolio.shop.art import arts_of


def sheet_papers(
    edition: Edition, papers: SheetPapers, known: Container[str] = ()
) -> Iterator[Named]:
    """Yield layouts and setup sheets of every variant, but for ``known`` ones."""
    for settled in edition.variants:
        for each in papers.at(settled):
            if each.name not in known:
                yield each.name, each.write(told_as)


def drawn_papers(edition: Edition, papers: Mapping[str, PaperStock]) -> Iterator[Named]:
    """Yield what is printed for the thickness drawn alone: saw diagrams, pages of engravings."""
    for name, paper in papers.items():
        if has_saw(edition):
            yield saw_name(name), saw_pdf(edition, edition.saw, edition.board_plans, paper)
        if arts_of(edition.settled):
            yield engravings_name(name), art_pdf(edition, paper)


def coupon_papers(edition: Edition, papers: Mapping[str, PaperStock]) -> Iterator[Named]:
    """Yield the setup of fit coupons, which goes with the coupons' cut files."""
    if edition.settled.coupons:
        for name, paper in papers.items():
            yield setup_coupon_name(name), coupon_pdf(edition, paper)
