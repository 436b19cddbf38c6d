"""Plans whose parts say what is done to their edges."""

from __future__ import annotations

from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan
from tests.plans import RACK, workshop
from tests.settling.panels import panel_text, variant

BARE = "f: {hole: {at: [200, 150], diameter: 8}}"


def with_edges(plan: str, part: str, edges: str) -> str:
    """Return a plan one of whose parts says what is done to its edges."""
    head, rest = plan.split(f"  {part}:\n", 1)
    return f"{head}  {part}:\n    edges: {edges}\n{rest}"


def edged_panel(edges: str, features: str = BARE, **asked: object) -> str:
    """Return the plan of a panel, 400 x 300 mm and 17.8 mm thick, with such edges."""
    return with_edges(panel_text(features, **asked), "panel", edges)  # type: ignore[arg-type]


def settled_panel(plan: str, thickness: float = 17.8) -> SettledPlan:
    """Return such a plan settled."""
    found = workshop(plan)
    settled, findings = settle(found.plans[0], found.stock, variant(thickness))
    assert settled is not None, findings
    return settled


EDGED = with_edges(
    with_edges(
        RACK,
        "rail",
        "{all: ease, left: mask, right: mask, top: {band: Beech veneer, thickness: 0.6}}",
    ),
    "side",
    "{all: {round-over: 3}, bottom: square, left: {round-over: 2, faces: show}, "
    "also: [{opening: bolt, treatment: ease}]}",
)
"""The rack with every treatment, two roundings in one part."""
