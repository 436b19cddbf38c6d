"""The desk a file is read at: it knows the file's names and gathers the findings."""

from __future__ import annotations

from collections.abc import Mapping
from copy import copy

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text
from kerfolio.model.outline import Drawing
from kerfolio.model.part import Part
from kerfolio.reading.drawn_said import NOTHING_SAID, SaidOfDrawing
from kerfolio.reading.shelf import Shelf

Taken = Pixels | Complaint | None
"""What came of a picture; None where nobody asked what it shows."""


class Desk:
    """Gathers what is found while one file is read.

    ``unit`` is the plan's unit; ``sizes`` and ``sheets`` are the names stated anywhere in the
    file, known before their values are read (None when that section cannot be taken apart, so
    that no name is blamed); ``unread`` are those that could not be read, ``incomplete`` what could
    be of such parts.
    ``shelf`` gives the files that the text refers to; ``pictures`` and ``drawings`` are what came
    of those taken from it, by the name written in the file. A picture that several files show is
    decoded once where their desks share ``pictures``. ``nominals`` are what the sheets of the stock
    are sold as, in mm by name. ``said`` is what the plan says of drawing files, by name: those that
    parts are taken from.
    """

    def __init__(
        self,
        *,
        unit: str = "mm",
        sizes: frozenset[str] | None = frozenset(),
        sheets: frozenset[str] | None = frozenset(),
        shelf: Shelf | None = None,
        pictures: dict[str, Taken] | None = None,
        nominals: Mapping[str, float] | None = None,
        said: Mapping[str, SaidOfDrawing] | None = None,
    ) -> None:
        self.unit = unit
        self.sizes = sizes
        self.sheets = sheets
        self.unread: set[str] = set()
        self.incomplete: list[Part] = []
        self.findings: list[Finding] = []
        self.shelf = shelf
        self.nominals = nominals or {}
        self.pictures = {} if pictures is None else pictures
        self.drawings: dict[str, Drawing] = {}
        self._said = said or {}

    def aside(self) -> Desk:
        """Return a desk where things are only tried: what is found there is told nowhere."""
        made = copy(self)
        made.findings, made.unread, made.incomplete = [], set(self.unread), []
        return made

    @property
    def decoded(self) -> dict[str, Pixels]:
        """The pictures that could be read, by the name written in the file."""
        return {file: each for file, each in self.pictures.items() if isinstance(each, Pixels)}

    def said_of(self, file: str) -> SaidOfDrawing:
        """Return what the plan says of a drawing file."""
        return self._said.get(file, NOTHING_SAID)

    def is_cut_from(self, file: str) -> bool:
        """Tell whether a part is taken from a drawing file."""
        return file in self._said

    def refuse(self, rule: str, words: Text, place: Place, advice: Text = "") -> None:
        """Keep an error."""
        self.findings.append(error(rule, words, place, advice))

    def complain(self, rule: str, complaint: Complaint, place: Place) -> None:
        """Keep a complaint about a text as an error."""
        self.refuse(rule, str(complaint), place, complaint.advice)
