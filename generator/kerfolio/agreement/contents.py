"""Whether a bundle holds the files it is meant to hold, whole."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.bundles.archive import sums_text
from kerfolio.edition.names import SUMS, expected_names

_CONTENTS = "the bundle's contents"


def contents(written: Written) -> Iterator[Finding]:
    """Yield the files that are missing, not meant or empty."""
    for name in sorted(expected_names(written.edition) ^ set(written.files)):
        how = "it is missing" if name not in written.files else "it was not meant to be there"
        yield written.differ(f"`{name}`", _CONTENTS, how)
    for name, content in sorted(written.files.items()):
        if not content:
            yield written.differ(f"`{name}`", _CONTENTS, "it is empty")


def sums(written: Written) -> Iterator[Finding]:
    """Yield where a check sum does not hold."""
    rest = {name: data for name, data in written.files.items() if name != SUMS}
    if written.files[SUMS].decode() != sums_text(rest):
        yield written.differ(f"`{SUMS}`", "the files", "a check sum does not hold")
