"""What readers measured and sent home."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.model.trial import Sent


def sent_for(sent: Iterable[Sent], plan: str) -> tuple[Sent, ...]:
    """Return what readers of a plan measured, in the order it came."""
    return tuple(each for each in sent if each.plan.name == plan)
