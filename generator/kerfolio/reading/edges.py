"""The form of what is done to the edges of a part."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import ByUnit, Text, said
from kerfolio.model.edge_treatment import (
    BAND,
    BOTH_FACES,
    EASE,
    EDGE_KINDS,
    FACES,
    MASK,
    ROUND_OVER,
    SQUARE,
    EdgeKind,
    EdgeTreatment,
    TreatedEdge,
)
from kerfolio.model.feature import EdgeLine
from kerfolio.model.statement import Amount, Named, Spot
from kerfolio.reading.amounts import LENGTH, SPOT
from kerfolio.reading.forms import Either, ListOf, ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import NAMED, TITLE_TEXT, choice

SIDES = ("top", "bottom", "left", "right")
_WORDS: Mapping[str, EdgeKind] = {each.name: each for each in (SQUARE, EASE, MASK)}
_ROUNDED = ByUnit("`{round-over: 3}`", "`{round-over: 1/8}`")
_BANDED = ByUnit(
    "`{band: Beech veneer, thickness: 0.6}`", "`{band: Beech veneer, thickness: 0.024}`"
)
_TREATMENTS: Text = said("Write `square`, `ease`, `mask`, {} or {}.", _ROUNDED, _BANDED)


def _word(node: Scalar) -> EdgeTreatment | Complaint:
    word = " ".join(node.text.split())
    if word in _WORDS:
        return EdgeTreatment(kind=_WORDS[word], place=node.place)
    if word == ROUND_OVER.name:
        return Complaint("`round-over` has no radius")
    if word == BAND.name:
        return Complaint("`band` does not say what of")
    names = [each.name for each in EDGE_KINDS]
    return Complaint(f"{quoted(word)} is no treatment of edges", did_you_mean(word, names))


def _make(
    round_over: Amount | None = None,
    band: str = "",
    thickness: Amount | None = None,
    faces: str = BOTH_FACES,
    place: Place = NOWHERE,
) -> EdgeTreatment:
    if round_over is not None:
        return EdgeTreatment(kind=ROUND_OVER, radius=round_over, faces=faces, place=place)
    return EdgeTreatment(kind=BAND, of=band, thickness=thickness, place=place)


def _faults(fields: Fields) -> tuple[Finding, ...]:
    """Find what does not belong to the treatment stated."""
    needs = {"faces": "round_over", "thickness": "band"}
    return tuple(
        error(
            "one-too-many",
            f"`{key}` belongs to `{other.replace('_', '-')}`",
            fields.places[key],
            "Take it out.",
        )
        for key, other in needs.items()
        if key in fields.values and other not in fields.values
    )


TREATMENT = Either(
    scalar=ScalarForm(
        noun="a treatment",
        advice=_TREATMENTS,
        convert=_word,
        json={"enum": list(_WORDS)},
        rule="not-a-choice",
    ),
    other=Record(
        name="edge-treatment",
        noun="a treatment",
        keys=(
            Key(name="round-over", form=LENGTH, says="Radius of the rounding."),
            Key(
                name="faces",
                form=choice("a face", *FACES),
                says="Where it is rounded over: at `both` faces (if not stated), `show` or `back`.",
            ),
            Key(name="band", form=TITLE_TEXT, says="What the banding is."),
            Key(name="thickness", form=LENGTH, says="The banding's thickness."),
        ),
        make=_make,
        advice=_TREATMENTS,
        one_of=(("round-over", "band"),),
        check=_faults,
    ),
    noun="a treatment",
    advice=_TREATMENTS,
)

_ONE = "{from: [0, 0], to: [60, 0], treatment: ease}"
_ONE_MORE = f"Write `- {_ONE}` or `- {{opening: grip, treatment: ease}}`, a line each."


def _make_more(
    treatment: EdgeTreatment,
    start: Spot | None = None,
    end: Spot | None = None,
    opening: Named | None = None,
    place: Place = NOWHERE,
) -> TreatedEdge:
    line = EdgeLine(start=start, end=end, place=place) if start is not None else None
    return TreatedEdge(treatment=treatment, line=line, opening=opening, place=place)


def _half_faults(fields: Fields) -> tuple[Finding, ...]:
    """Find an edge that begins and does not end, or an opening with an end."""
    if ("start" in fields.values) == ("end" in fields.values):
        return ()
    advice = f"Write `{_ONE}`."
    return (
        error("missing-key", "an edge goes `from` one point `to` another", fields.place, advice),
    )


_MORE: Record[TreatedEdge] = Record(
    name="treated-edge",
    noun="an edge",
    keys=(
        Key(name="from", form=SPOT, says="Where the edge begins.", field="start"),
        Key(name="to", form=SPOT, says="Where the edge ends.", field="end"),
        Key(name="opening", form=NAMED, says="A window or a hole whose rim is meant."),
        Key(name="treatment", form=TREATMENT, says="What is done to it.", required=True),
    ),
    make=_make_more,
    advice=_ONE_MORE,
    one_of=(("from", "opening"),),
    check=_half_faults,
)


def _make_edges(
    also: tuple[TreatedEdge, ...] = (), place: Place = NOWHERE, **stated: Any
) -> tuple[TreatedEdge, ...]:
    """Return the edges, those stated most closely first."""
    sides = tuple(
        TreatedEdge(
            treatment=stated[side],
            line=EdgeLine(side=side, place=stated[side].place),
            place=stated[side].place,
        )
        for side in SIDES
        if side in stated
    )
    rest = (TreatedEdge(treatment=stated["all"], place=place),) if "all" in stated else ()
    return (*also, *sides, *rest)


EDGES: Record[tuple[TreatedEdge, ...]] = Record(
    name="edges",
    noun="edges with what is done to them",
    keys=(
        *(
            Key(name=side, form=TREATMENT, says=f"What is done to the {side} edge.")
            for side in SIDES
        ),
        Key(
            name="also",
            form=ListOf(item=_MORE, noun="a list of edges", advice=_ONE_MORE),
            says="Edges from a point to another, and rims of openings.",
        ),
        Key(name="all", form=TREATMENT, says="What is done to every other edge of the outline."),
    ),
    make=_make_edges,
    advice="Write `edges: {all: ease, top: square}`.",
)
