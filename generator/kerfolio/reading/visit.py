"""A way through a workshop's folder: it opens files inside, and gathers what is found."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import Place
from kerfolio.model.workshop import Picture
from kerfolio.reading.yaml_text import MOST_BYTES

MOST_FILE = MOST_BYTES + 1
"""A file is taken whole up to the size the readers refuse, so that the refusal is theirs."""


@dataclass(slots=True)
class Visit:
    """What was gathered on the way through a workshop's folder."""

    folder: Path
    findings: list[Finding] = field(default_factory=list)
    decodes: bool = True
    pictures: dict[str, Pixels] = field(default_factory=dict)
    unread_stock: frozenset[str] = frozenset()
    licence_wanting: bool = False

    def holds(self, path: Path) -> bool:
        """Tell whether a path stays inside the workshop; one that leads out gets a finding.

        A workshop may come from somebody else: what lies outside is neither read nor quoted.
        """
        try:
            inside = path.resolve().is_relative_to(self.folder.resolve())
        except (OSError, RuntimeError):  # links that go round in a circle
            inside = False
        if not inside:
            place = Place(self.shown(path))
            message, advice = "a link leads out of the workshop", "Copy what it leads to in here."
            self.findings.append(error("link-out", message, place, advice))
        return inside

    def content(self, path: Path) -> bytes | None:
        """Return a file's bytes, or None with a finding."""
        if not self.holds(path):
            return None
        try:
            with path.open("rb") as opened:
                return opened.read(MOST_FILE)
        except OSError as trouble:
            message = f"the file cannot be read: {trouble.strerror}"
            place, advice = Place(self.shown(path)), "See that you may open the file."
            self.findings.append(error("unreadable-file", message, place, advice))
            return None

    def shown(self, path: Path) -> str:
        """Return a path relative to the workshop, with forward slashes."""
        return path.relative_to(self.folder).as_posix()

    def keep_pictures(self, prefix: str, pictures: dict[str, Pixels]) -> None:
        """Keep pictures under their paths in the workshop."""
        self.pictures.update({f"{prefix}/{file}": taken for file, taken in pictures.items()})

    @property
    def taken(self) -> tuple[Picture, ...]:
        """The pictures that were kept."""
        return tuple(
            Picture(path=path, pixels=self.pictures[path]) for path in sorted(self.pictures)
        )
