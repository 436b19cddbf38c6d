"""What a finding rests on: the reason of its rule and the source of that reason."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.proving.rule import OUR_FORM
from kerfolio.proving.rules import RULES


@dataclass(frozen=True, slots=True, kw_only=True)
class Grounds:
    """Why a rule is looked at, and where that is written."""

    reason: str
    source: str


_OF_FORM = Grounds(
    reason="A file says what it means in a form that leaves nothing to guess.", source=OUR_FORM
)
_KNOWN = {id: Grounds(reason=rule.reason, source=rule.source) for rule in RULES for id in rule.ids}


def grounds_of(rule: str) -> Grounds:
    """Return what a finding of that id rests on; what reading and settling find, on the form."""
    return _KNOWN.get(rule, _OF_FORM)
