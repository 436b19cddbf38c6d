"""Twelve ways of spoiling a file, done to every kind: each is caught, and told for what it is."""

from __future__ import annotations

import pytest

from tests.agreement.spoilings import (
    DRAWN,
    PROBES,
    SPOILINGS,
    STALE,
    UNIT,
    Probe,
    edition,
    files,
    spoiled,
    told,
)

KINDS = 11
"""Sheet, part, coupon and engraving as SVG and as DXF, a template on two papers and on a roll."""

WORDS = {UNIT: ("25.4 times as large", "it is of another size"), STALE: ("say",)}


@pytest.mark.parametrize("probe", PROBES.values(), ids=PROBES.keys())
def test_what_was_written_agrees(probe: Probe) -> None:
    assert told(edition(probe.text, probe.layout), files(probe.text, probe.layout)) == []


@pytest.mark.parametrize("how", SPOILINGS)
@pytest.mark.parametrize("probe", PROBES.values(), ids=PROBES.keys())
def test_each_spoiling_is_caught_in_every_kind_of_file(probe: Probe, how: str) -> None:
    made = list(spoiled(probe, how))
    # engraved letters have no arcs; a swap, a unit or an older release is there for every kind
    assert len(made) == (KINDS - 2 if how == "an arc reversed" else KINDS)
    good = files(probe.text, probe.layout)
    messages = told(
        edition(probe.text, probe.layout), {**good, **{name: data for _, name, data in made}}
    )
    words = WORDS.get(how) or (DRAWN[how][1],)
    for what, name, _ in made:
        own = [each for each in messages if f"`{name}`" in each]
        assert any(word in each for word in words for each in own), (what, own)


@pytest.mark.parametrize("left", [0, 1, 300])
def test_what_cannot_be_read_is_a_finding(left: int) -> None:
    """Whatever is left of a file that broke off, or other bytes in its place."""
    probe = PROBES["inches"]
    made, good = edition(probe.text, probe.layout), files(probe.text, probe.layout)
    messages = told(made, {name: data[:left] or b"\xff\xfe" for name, data in good.items()})
    assert len(messages) == len(good)
    for name, message in zip(sorted(good), sorted(messages), strict=True):
        assert message.startswith(f"`{name}` and its ending disagree: it is no "), message
