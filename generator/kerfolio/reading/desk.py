"""The desk a file is read at: it knows the file's names and gathers the findings."""

from __future__ import annotations

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text
from kerfolio.model.outline import Drawing
from kerfolio.reading.shelf import Shelf


class Desk:
    """Gathers what is found while one file is read.

    ``unit`` is the plan's unit; ``sizes`` and ``sheets`` are the names stated anywhere in the
    file, known before their values are read (None when that section cannot be taken apart, so
    that no name is blamed); ``unread`` are those that could not be read.
    ``shelf`` gives the files that the text refers to; ``pictures`` and ``drawings`` are those
    taken from it, by the name written in the file.
    """

    def __init__(
        self,
        *,
        unit: str = "mm",
        sizes: frozenset[str] | None = frozenset(),
        sheets: frozenset[str] | None = frozenset(),
        shelf: Shelf | None = None,
    ) -> None:
        self.unit = unit
        self.sizes = sizes
        self.sheets = sheets
        self.unread: set[str] = set()
        self.findings: list[Finding] = []
        self.shelf = shelf
        self.pictures: dict[str, bytes] = {}
        self.drawings: dict[str, Drawing] = {}

    def refuse(self, rule: str, words: Text, place: Place, advice: Text = "") -> None:
        """Keep an error."""
        self.findings.append(error(rule, words, place, advice))

    def complain(self, rule: str, complaint: Complaint, place: Place) -> None:
        """Keep a complaint about a text as an error."""
        self.refuse(rule, str(complaint), place, complaint.advice)
