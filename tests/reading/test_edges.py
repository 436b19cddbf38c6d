"""What is done to edges, as a maker writes it, and the words it is refused in."""

from __future__ import annotations

import pytest

from kerfolio.model.edge_treatment import BAND, EASE, MASK, ROUND_OVER, SQUARE
from kerfolio.reading.edges import EDGES
from tests.reading.desks import read

TREATMENTS = (
    "Write `square`, `ease`, `mask`, `{round-over: 3}` or `{band: Beech veneer, thickness: 0.6}`."
)
MORE = (
    "Write `- {from: [0, 0], to: [60, 0], treatment: ease}` or "
    "`- {opening: grip, treatment: ease}`, a line each."
)


def test_what_is_stated_most_closely_comes_first() -> None:
    text = (
        "{all: ease, top: {round-over: 3, faces: show}, left: {band: Beech, thickness: 0.6}, "
        "right: square, also: [{opening: grip, treatment: mask}, "
        "{from: [0, 0], to: [60, 0], treatment: ease}]}"
    )
    edges, findings = read(EDGES, text)
    assert findings == []
    kinds = [each.treatment.kind for each in edges]
    assert kinds == [MASK, EASE, ROUND_OVER, BAND, SQUARE, EASE]
    assert [each.line.side for each in edges[2:5]] == ["top", "left", "right"]
    assert edges[0].opening.name == "grip"
    assert edges[1].line.end.x.text == "60"
    assert (edges[2].treatment.radius.text, edges[2].treatment.faces) == ("3", "show")
    assert (edges[3].treatment.of, edges[3].treatment.thickness.text) == ("Beech", "0.6")
    assert (edges[5].line, edges[5].opening) == (None, None), "the last are all others"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("{top: round-over}", f"`round-over` has no radius / {TREATMENTS}"),
        ("{top: band}", f"`band` does not say what of / {TREATMENTS}"),
        ("{top: eased}", "`eased` is no treatment of edges / Did you mean `ease`?"),
        (
            "{top: {round-over: 3, band: Oak}}",
            "`round-over` and `band` exclude each other / Keep one of them.",
        ),
        ("{top: {band: Oak, faces: show}}", "`faces` belongs to `round-over` / Take it out."),
        ("{top: {round-over: 3, thickness: 1}}", "`thickness` belongs to `band` / Take it out."),
        (
            "{top: {round-over: 3, faces: front}}",
            "`front` is not a face / Known here: `back`, `both`, `show`.",
        ),
        (
            "{front: ease}",
            "unknown key `front` / Known here: `all`, `also`, `bottom`, `left`, `right`, `top`.",
        ),
        (
            "{also: [{from: [0, 0], treatment: ease}]}",
            "an edge goes `from` one point `to` another / "
            "Write `{from: [0, 0], to: [60, 0], treatment: ease}`.",
        ),
        ("{also: [{treatment: ease}]}", f"an edge needs `from` or `opening` / {MORE}"),
        (
            "ease",
            "expected edges with what is done to them, found `ease` / "
            "Write `edges: {all: ease, top: square}`.",
        ),
    ],
)
def test_what_cannot_be_meant_is_refused(text: str, expected: str) -> None:
    assert read(EDGES, text)[1] == [expected]
