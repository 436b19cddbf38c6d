"""What a publish wrote, read back: files by name beside the edition they came from."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said
from kerfolio.edition.edition import Edition
from kerfolio.paper.template_choices import Templates

SETTLED = "the settled plan"


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """Files by their names in the bundle, ``plan.json`` and the edition they came from.

    ``fitted`` are the plan's fitted files as JSON, empty where it has none. ``templates`` are what
    was chosen for its templates, None where that is to be chosen anew.
    """

    edition: Edition
    files: Mapping[str, bytes]
    facts: Mapping[str, Any]
    place: Place
    fitted: str = ""
    templates: Templates | None = None

    def differ(self, one: str, other: str, how: Text) -> Finding:
        """Return the finding that two things disagree."""
        return error(
            "files-disagree",
            said("{} and {} disagree: {}", one, other, how),
            self.place,
            "Nothing was published. This is a fault of the program: please report it.",
        )


def list_rows(files: Mapping[str, bytes], name: str) -> list[dict[str, str]]:
    """Return the rows of a list, each by its heads; a list without a row is not written."""
    return list(csv.DictReader(io.StringIO(files.get(name, b"").decode("utf-8"))))
