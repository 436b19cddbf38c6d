"""Publishes a small workshop and a plan of the sample; prints the SHA-256 of every file written.

    python -m tests.tools.published_sums > sums

Under every supported Python, with the same libraries, the lines are the same.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.publishing.build import Request, publish
from tests.conftest import copy_of_sample, files_of
from tests.plans import lay_down


def published(shop: Path, plan: str) -> dict[str, bytes]:
    """Return every file of a publish of one plan, and the layout computed afresh for it."""
    layout = shop / "plans" / plan / "layout.json"
    layout.unlink(missing_ok=True)
    request = Request(folder=shop, out=shop / "site", supporters_out=shop / "given", only=plan)
    outcome = publish(request)
    assert outcome.published, "\n".join(map(str, outcome.findings))
    return {**files_of(shop / "site"), f"{plan}/layout.json": layout.read_bytes()}


def lines() -> Iterator[str]:
    """Yield a line for each file, its sum before its name."""
    with TemporaryDirectory() as folder:
        small = lay_down(Path(folder) / "small")
        sample = copy_of_sample(Path(folder) / "sample")
        for shop, plan in ((small, "rack"), (sample, "desk-rack")):
            for name, content in sorted(published(shop, plan).items()):
                yield f"{sha256(content).hexdigest()}  {shop.name}/{name}\n"


if __name__ == "__main__":
    sys.stdout.writelines(lines())
