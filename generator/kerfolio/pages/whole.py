"""The whole put together, as pages show it: its pictures, its numbers, and the way to turn it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.assembly.proof_words import proof_words
from kerfolio.assembly.stability_words import stability_cautions, stability_rows
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """What is told of the whole: rows (label, value), cautions, and how the order was proved."""

    rows: tuple[tuple[str, str], ...]
    cautions: tuple[str, ...]
    proved: tuple[str, ...]
    left_out: str = ""


def whole_of(edition: Edition) -> Whole | None:
    """Return what is told of the whole, None where nothing tells how the pieces go."""
    build = edition.build
    if build is None:
        return None
    assembled, stability = build.drawn.assembled, edition.stability
    assert stability is not None, "worked out with the build"
    rows = stability_rows(stability, edition.identity.units_first)
    placed = {piece.label for piece in assembled.pieces}
    missing = [label for row in edition.parts for label in row.labels if label not in placed]
    return Whole(
        rows=rows if edition.plan.shows("sizes") else rows[:1],
        cautions=stability_cautions(stability, edition.plan),
        proved=proof_words(build),
        left_out=f"Not shown: {listed(missing)}." if missing else "",
    )
