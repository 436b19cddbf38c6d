"""Drafts: answers that are no entry of the log yet, kept from the first one on."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from kerfolio.disk.put import put
from kerfolio.trials.answers import KEYS, Answers

DRAFTS = Path(".kerfolio") / "drafts"
"""Where a workshop keeps them; nothing of it is ever published."""

_FORMAT = "kerfolio-draft/1"
_MOST_BYTES = 1_000_000
_BESIDE = ("more", "done")


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """Answers so far about a trial of a day, or a job; ``id`` once the entry is about to be
    written.
    """

    file: Path
    day: date
    job: bool = False
    id: str = ""
    answers: Answers

    def keep(self) -> None:
        """Write it to the disk, whole or not at all. Raises OSError."""
        told = {
            "format": _FORMAT,
            "day": self.day.isoformat(),
            "job": self.job,
            "id": self.id,
            "answers": dict(self.answers),
        }
        self.file.parent.mkdir(parents=True, exist_ok=True)
        self.file.parent.chmod(0o700)  # for no other eyes
        put(self.file, (json.dumps(told, indent=1, ensure_ascii=False) + "\n").encode())

    def drop(self) -> None:
        """Remove it from the disk. Raises OSError."""
        self.file.unlink(missing_ok=True)


def new_draft(workshop: Path, day: date, *, job: bool, answers: Answers) -> Draft:
    """Return a draft in a file that no other one has; nothing is written yet."""
    numbers = range(1, 10_000)
    files = (workshop / DRAFTS / f"{day.isoformat()}-{number}.json" for number in numbers)
    free = next(each for each in files if not each.exists())
    return Draft(file=free, day=day, job=job, answers=answers)


def drafts_of(workshop: Path) -> tuple[Draft, ...]:
    """Return the drafts of a workshop, the newest first; what is none is left alone."""
    folder = workshop / DRAFTS
    files = folder.glob("*.json") if folder.is_dir() else ()
    kept = (_draft(each) for each in sorted(files, key=_age, reverse=True))
    return tuple(each for each in kept if each is not None)


def _age(file: Path) -> tuple[int, str]:
    return file.stat().st_mtime_ns, file.name


def _draft(file: Path) -> Draft | None:
    try:
        told = json.loads(file.read_bytes()[:_MOST_BYTES])
        if told["format"] != _FORMAT:
            return None
        answers = {key: str(text) for key, text in told["answers"].items()}
        return Draft(
            file=file,
            day=date.fromisoformat(told["day"]),
            job=told["job"] is True,
            id=str(told["id"]),
            answers={key: answers[key] for key in answers if key in (*KEYS, *_BESIDE)},
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
