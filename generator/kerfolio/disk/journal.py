"""What a hand-over is about to do, written down before it does it.

The journal lies in the stage, a hidden folder beside OUT. Whoever finds it after a kill reads how
far it had come: what was only *staging* is undone, what was *exchanging* is finished. A stage
without a journal holds nothing that anybody needs. A journal counts only in the very folder it was
written in: a copy of it, or one that came with a workshop of somebody else's, moves nothing.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from enum import StrEnum
from operator import index
from pathlib import Path

_NAME = "journal.json"


class State(StrEnum):
    """How far a hand-over has come."""

    STAGING = "staging"
    EXCHANGING = "exchanging"


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """An entry staged at ``fresh`` that is to stand at ``target``; ``inode`` tells it again.

    What stood there before goes to ``fresh`` in exchange, or to ``last``.
    """

    fresh: Path
    target: Path
    inode: int = 0

    @property
    def last(self) -> Path:
        """Where what stood at the target goes, where the two cannot change places at once."""
        return self.fresh.with_name(f"{self.fresh.name}.last")


@dataclass(frozen=True, slots=True, kw_only=True)
class Journal:
    """What is to be moved, the site first; ``stages`` are the folders that it is staged in.

    With ``carries`` what others laid in the old folder is brought over into the new one.
    """

    state: State
    moves: tuple[Move, ...]
    stages: tuple[Path, ...]
    carries: bool


def note_down(stage: Path, journal: Journal) -> None:
    """Write the journal into its stage, whole or not at all. Raises OSError."""
    content = {
        "folder": stage.stat().st_ino,
        "state": journal.state,
        "carries": journal.carries,
        "stages": [str(each) for each in journal.stages],
        "moves": [
            {"fresh": str(each.fresh), "target": str(each.target), "inode": each.inode}
            for each in journal.moves
        ],
    }
    fresh = stage / f"{_NAME}.fresh"
    fresh.write_text(json.dumps(content, indent=1), "utf-8")
    fresh.replace(stage / _NAME)


def journal_in(stage: Path) -> Journal | None:
    """Return the journal of a stage, or None where there is none that can be read and counts."""
    journal = stage / _NAME
    if not journal.is_file():
        return None
    try:
        found = json.loads(journal.read_text("utf-8"))
        if found["folder"] != stage.stat().st_ino:
            return None
        site, *others = found["moves"]
        return Journal(
            state=State(found["state"]),
            carries=bool(found["carries"]),
            stages=tuple(Path(each) for each in found["stages"]),
            moves=tuple(
                Move(
                    fresh=Path(each["fresh"]),
                    target=Path(each["target"]),
                    inode=index(each["inode"]),
                )
                for each in (site, *others)
            ),
        )
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None


def forget(stage: Path) -> None:
    """Take the journal away: nothing in the stage is needed any more. Raises OSError."""
    (stage / _NAME).unlink(missing_ok=True)
