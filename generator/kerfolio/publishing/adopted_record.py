"""What was adopted, kept beside a plan: the drawing's answers, and the text that was written.

By it a newer drawing of the same thing changes what nobody changed since, and nothing else.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from kerfolio.basis.digits import digits
from kerfolio.basis.json_text import json_text

FILE = "adopted.json"
"""Beside ``plan.yaml``; written by the program, committed by the maker."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedRecord:
    """The drawing's name, answers, parts' sizes (mm) and counts, and files as they were written."""

    drawing: str
    answers: Mapping[str, str] = field(default_factory=dict)
    parts: Mapping[str, tuple[float, float, int]] = field(default_factory=dict)
    files: Mapping[str, str] = field(default_factory=dict)

    def text(self) -> str:
        """Return it as it is kept."""
        return json_text(
            {
                "drawing": self.drawing,
                "answers": dict(self.answers),
                "parts": {
                    name: [digits(w, 2), digits(h, 2), str(count)]
                    for name, (w, h, count) in self.parts.items()
                },
                "files": dict(self.files),
            }
        )


def record_in(folder: Path) -> AdoptedRecord | None:
    """Return what is kept in a plan's folder; None where nothing sound is."""
    try:
        data = json.loads((folder / FILE).read_text("utf-8"))
        return AdoptedRecord(
            drawing=str(data["drawing"]),
            answers={str(k): str(v) for k, v in data["answers"].items()},
            parts={
                str(name): (float(w), float(h), int(count))
                for name, (w, h, count) in data["parts"].items()
            },
            files={str(k): str(v) for k, v in data["files"].items()},
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
