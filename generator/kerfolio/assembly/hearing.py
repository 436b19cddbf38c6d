"""How explanations of joints that do not agree are judged: ranked, tried, proved on the pieces."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import chain

from kerfolio.assembly.blame import Blame
from kerfolio.assembly.closure import Hearing
from kerfolio.assembly.far_ends import from_far_ends
from kerfolio.assembly.hypotheses import hypotheses
from kerfolio.assembly.links import Link
from kerfolio.assembly.other_edges import from_other_edges
from kerfolio.assembly.other_ends import to_other_ends
from kerfolio.assembly.proved import proved
from kerfolio.assembly.ranking import ranked
from kerfolio.assembly.regular import regularity_of
from kerfolio.assembly.trying import Trial, tried
from kerfolio.settling.settled import SettledPlan


def hearing_of(
    settled: SettledPlan, links: Sequence[Link], root: str, *, explained: bool
) -> Hearing:
    """Return how explanations for a plan are judged; nothing is worked out before it is asked."""

    def in_order(blames: Sequence[Blame]) -> tuple[Blame, ...]:
        if not blames:
            return ()
        return proved(settled, root, len(links), ranked(blames, regularity_of(settled)))

    def slips(accused: Collection[int]) -> tuple[Trial, ...]:
        near = {end.piece for i in accused for end in (links[i].a, links[i].b)}
        close = [each for each in links if not near.isdisjoint((each.a.piece, each.b.piece))]
        proposed = (
            to_other_ends(settled, links),
            from_far_ends(close),
            hypotheses(settled, links, accused),
            from_other_edges(settled, close),
        )
        return tried(settled, root, chain.from_iterable(proposed))

    return Hearing(ranked=in_order, tried=slips, explains=not explained)
