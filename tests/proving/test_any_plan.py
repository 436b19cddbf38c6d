"""Whatever a maker states, proving ends in shapes or in findings that say why there are none."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import has_errors
from kerfolio.model.feature import (
    Cutting,
    EdgeLine,
    Feature,
    Fingers,
    Groove,
    Hole,
    Notch,
    Slot,
    Tabs,
    Window,
)
from kerfolio.model.outline import Corner, Polygon, RoundedSlot
from kerfolio.model.statement import Amount, Named, Spot
from kerfolio.proving.prove import prove_plan
from tests.settling.panels import flat, stated

amounts = st.sampled_from(
    ["0", "-12", "6", "17.8", "60", "120.5", "299", "300", "400", "1e-7", "9999"]
).map(Amount)
widths = st.sampled_from(["3", "6", "18", "40", "120", "0"]).map(Amount)
spots = st.builds(lambda x, y: Spot(x=x, y=y), amounts, amounts)
edges = st.one_of(
    st.sampled_from(["top", "bottom", "left", "right"]).map(lambda side: EdgeLine(side=side)),
    st.builds(lambda a, b: EdgeLine(start=a, end=b), spots, spots),
)
angles = st.sampled_from([None, Amount("90"), Amount("33.3"), Amount("-45")])
along = st.lists(amounts, min_size=1, max_size=2).map(tuple)
outlines = st.one_of(
    st.builds(lambda a, b: RoundedSlot(length=a, width=b), widths, widths),
    st.lists(spots.map(lambda at: Corner(at=at)), min_size=3, max_size=5).map(
        lambda corners: Polygon(corners=tuple(corners))
    ),
)
PLY = Named("ply")


def cuttings() -> st.SearchStrategy[Cutting]:
    return st.one_of(
        st.builds(
            lambda at, long, turn: Slot(at=(at,), length=long, angle=turn, takes=PLY),
            *(spots, widths, angles),
        ),
        st.builds(
            lambda edge, at, deep: Notch(edge=edge, at=at, depth=deep, takes=PLY),
            *(edges, along, widths),
        ),
        st.builds(lambda at, wide: Hole(at=(at,), diameter=wide), spots, widths),
        st.builds(
            lambda at, shape, turn: Window(at=at, outline=shape, angle=turn),
            *(spots, outlines, angles),
        ),
        st.builds(
            lambda a, b, wide, deep: Groove(start=a, end=b, width=wide, depth=deep),
            *(spots, spots, widths, widths),
        ),
        st.builds(
            lambda edge, at, wide: Tabs(edge=edge, at=at, width=wide, takes=PLY),
            *(edges, along, widths),
        ),
        st.builds(
            lambda edge, n: Fingers(edge=edge, count=Amount(str(n)), takes=PLY),
            *(edges, st.integers(0, 9)),
        ),
    )


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.lists(cuttings(), min_size=1, max_size=4), st.sampled_from(["dog-bone", "sideways"]))
def test_any_features_settle_or_are_told(cuttings: list[Cutting], style: str) -> None:
    plan, stock = stated("h: {hole: {at: [9, 9], diameter: 8}}", relief=style)
    features = tuple(
        Feature(name=f"f{number}", cutting=each) for number, each in enumerate(cuttings)
    )
    part = replace(plan.parts[0], features=features)
    proof = prove_plan(replace(plan, parts=(part,)), stock)
    if proof.drawn is None:
        assert has_errors(proof.findings)
        return
    (made,) = proof.drawn.parts
    assert flat(made.routed, 1e-3).is_valid
    assert flat(made.routed, 1e-3).difference(flat(made.plain, 1e-3).buffer(0.01)).area < 1e-3
    assert made.mass >= 0
