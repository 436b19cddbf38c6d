"""Pieces lie as their names say, or a joint or `standing` is asked about."""

from __future__ import annotations

from kerfolio.basis.finding import Finding, Severity
from tests.plans import proved
from tests.proving.test_going_together import GOOD

NAMED = GOOD.replace("steps:", "standing: {piece: shelf.low, looks: up}\nsteps:", 1)


def _told(text: str) -> list[Finding]:
    return [each for each in proved(text).findings if each.rule == "names-disagree"]


def test_names_that_agree_are_passed_over() -> None:
    assert not _told(GOOD)
    assert not _told(NAMED)


def test_names_are_believed_where_nothing_states_how_it_stands() -> None:
    """Exchanged at the joints, the names turn the whole: its drawings would have it otherwise."""
    head, joints = GOOD.split("joints:")
    other = joints.replace("side.left", "side.x").replace("side.right", "side.left")
    assert not _told(f"{head}joints:{other.replace('side.x', 'side.right')}")


def test_standing_that_names_contradict_is_asked_about() -> None:
    """Seen from behind, right and left are exchanged; the tops of the shelves still look up."""
    (found,) = _told(NAMED.replace("looks: up}", "looks: up, top: front}"))
    assert found.severity is Severity.NOTE
    assert "lies to the left of" in found.message
    assert "State another `standing`" in found.advice
