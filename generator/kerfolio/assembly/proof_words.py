"""What a reader is told of the proof that a plan goes together, and of what it leaves out."""

from __future__ import annotations

from kerfolio.assembly.building import Build

_PROVED = (
    "The pieces fit at the thinnest, the drawn and the thickest sheet, and in this order each "
    "comes home along a straight line without touching what stands. Tilting in, bending, glue and "
    "the weight in your hands were not looked at."
)
_BLOCKED = (
    "The pieces fit at the thinnest, the drawn and the thickest sheet. For some steps no straight "
    "way home was found: see what the maker says there about tilting or bending. Glue and the "
    "weight in your hands were not looked at either."
)
_TAKES_APART = "It comes apart again in the reverse order, where nothing is glued."


def proof_words(build: Build) -> tuple[str, ...]:
    """Return the sentences on how the order was proved; the plan has no errors."""
    if build.blocked or build.deadlock is not None:
        return (_BLOCKED,)
    apart = build.apart is not None and not build.apart.captive
    return (_PROVED, _TAKES_APART) if apart else (_PROVED,)
