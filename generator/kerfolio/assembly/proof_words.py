"""What a reader is told of the proof that a plan goes together, and of what it leaves out."""

from __future__ import annotations

from kerfolio.assembly.building import Build
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say


def proof_words(build: Build, reader: Reader) -> tuple[str, ...]:
    """Return the sentences on how the order was proved; the plan has no errors."""
    if build.blocked or build.deadlock is not None:
        return (say(reader, "proof-blocked"),)
    apart = build.apart is not None and not build.apart.captive
    proved = say(reader, "proof-proved")
    return (proved, say(reader, "proof-apart")) if apart else (proved,)
