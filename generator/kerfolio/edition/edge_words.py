"""What is done to the edges of a plan's parts, in words: page and booklet say the same."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.figures import run_text
from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.edge_map import treatment_words
from kerfolio.edition.edition import Edition
from kerfolio.settling.titles import sheet_title
from kerfolio.shop.edging import TRIMMED


def edges_title(reader: Reader) -> str:
    """Return what the list of edges is called."""
    return say(reader, "edgewords-title")


def edge_map_words(reader: Reader) -> str:
    """Return how edges are shown on the map of parts."""
    return say(reader, "edgewords-map")


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeTold:
    """A treatment of edges of one sheet: how many stretches, how long together, how much to buy."""

    what: str
    sheet: str
    count: str
    length: str
    to_buy: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgesTold:
    """All of them; ``banded`` where there is banding to buy, with the remark that belongs to it."""

    rows: tuple[EdgeTold, ...]
    banded: bool
    remark: str


def edges_told(edition: Edition) -> EdgesTold | None:
    """Return what is done to edges, all pieces of one copy counted; None where nothing is."""
    reader = edition.reader
    rows = tuple(
        EdgeTold(
            what=treatment_words(row.edge, reader),
            sheet=sheet_title(edition.settled, row.sheet),
            count=str(row.count),
            length=run_text(row.length, reader),
            to_buy=run_text(row.to_buy, reader) if row.to_buy else "–",
        )
        for row in edition.edges
    )
    banded = any(row.to_buy for row in edition.edges)
    remark = _remark(reader) if banded else ""
    return EdgesTold(rows=rows, banded=banded, remark=remark) if rows else None


def _remark(reader: Reader) -> str:
    return say(reader, "edgewords-buy", more=both_text(TRIMMED, reader))
