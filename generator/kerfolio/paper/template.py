"""Full-size templates: all parts on tiles of paper, or whole on a roll, for cutting by hand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.style import Numbers, told_as
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.by_hand import ByHand
from kerfolio.model.stock import PaperStock
from kerfolio.model.workshop import Identity
from kerfolio.paper.first_page import opening_pages
from kerfolio.paper.seams import TiledOn
from kerfolio.paper.template_title import Paged, Titled
from kerfolio.paper.tile_map import map_page
from kerfolio.paper.tile_page import roll_page, tile_page
from kerfolio.paper.tiling import Tiling
from kerfolio.settling.settled import SettledPlan
from kerfolio.writing.page import About, Page
from kerfolio.writing.pdf import fitted_pdf


@dataclass(frozen=True, slots=True)
class _Sheaf:
    """The pages of one part: a map where there are several tiles, then the tiles."""

    titled: Titled
    tiling: Tiling

    @property
    def count(self) -> int:
        tiles = len(self.tiling.printed)
        return tiles + (tiles > 1)

    def pages(self, paper: PaperStock, paged: Paged, pages: int) -> Iterator[Page]:
        """Yield the pages, which stand as ``paged`` in a file of ``pages``."""
        tiles = self.tiling.printed
        if len(tiles) > 1:
            yield map_page(self.titled, self.tiling, paper, paged, pages)
        for page, spot in enumerate(tiles, paged.last - len(tiles) + 1):
            where = _where(page, pages, self.titled.reader)
            yield tile_page(self.titled, self.tiling, spot, where)


def template_pdf(
    settled: SettledPlan,
    drawings: Mapping[str, Drawing],
    on: TiledOn | None,
    identity: Identity,
    numbers: Numbers = told_as,
    hand: ByHand | None = None,
) -> bytes:
    """Return the templates of all parts, which ``drawings`` show at full size by name, as a PDF.

    On a paper: a page to print alone first, what to know before sawing (``hand`` says whether the
    plan can be cut by hand), then each part: a map of its tiles, and the tiles with
    10 mm margins that overlap by 10 mm. Without a paper: a page as large as each part, for a roll.
    ``numbers`` tells every number that follows what a reader measures.
    """
    reader = identity.reader_of(settled.plan)
    parts = [Titled.of(settled, part, drawings[part.name], reader) for part in settled.parts]
    pages = _rolled(parts) if on is None else _tiled(parts, on, hand)
    return fitted_pdf(_about(settled, identity, reader), tuple(pages), numbers)


def _where(page: int, pages: int, reader: Reader) -> str:
    return say(reader, "tiles-page", page=page, pages=pages)


def _about(settled: SettledPlan, identity: Identity, reader: Reader) -> About:
    plan = settled.plan
    return About(
        title=say(reader, "printed-title-templates", plan=plan.title),
        author=identity.maker,
        subject=say(reader, "printed-subject-templates", plan=plan.title, version=plan.version),
        language=identity.language,
        date=plan.released,
        full_size=True,
    )


def _rolled(parts: Sequence[Titled]) -> Iterator[Page]:
    for number, titled in enumerate(parts, 1):
        yield roll_page(titled, _where(number, len(parts), titled.reader))


def _tiled(parts: Sequence[Titled], on: TiledOn, hand: ByHand | None) -> Iterator[Page]:
    sheaves = [_Sheaf(each, on.tilings[each.name]) for each in parts]
    counts = [each.count for each in sheaves]

    def opening(before: int) -> tuple[Page, ...]:
        listed = tuple(zip(parts, _paged(counts, before), strict=True))
        return opening_pages(listed, on.paper, before + sum(counts), hand)

    before = len(opening(1))  # a long list of the pages takes another one
    yield from opening(before)
    for sheaf, run in zip(sheaves, _paged(counts, before), strict=True):
        yield from sheaf.pages(on.paper, run, before + sum(counts))


def _paged(counts: Sequence[int], before: int) -> Iterator[Paged]:
    for first, count in zip(accumulate(counts, initial=before + 1), counts, strict=False):
        yield Paged(first=first, count=count)
