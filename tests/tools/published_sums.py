"""Publishes a small workshop and lays out a sample plan; prints the SHA-256 of all that is written.

    python -m tests.tools.published_sums > sums

Under every supported Python, with the same libraries, the lines are the same.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.publishing.afresh import LayoutRequest, lay_out_afresh
from kerfolio.publishing.build import Request, publish
from tests.conftest import copy_of_sample, files_of
from tests.plans import BOARD, lay_down


def published(shop: Path) -> dict[str, bytes]:
    """Return every file of a publish, of supporters' bundles too, and the layouts it froze."""
    out, given = shop / "site", shop / "given"
    outcome = publish(Request(folder=shop, out=out, supporters_out=given))
    assert outcome.published, "\n".join(map(str, outcome.findings))
    return {**files_of(out), **files_of(given), **layouts(shop)}


def laid_out(shop: Path, plan: str) -> dict[str, bytes]:
    """Return the layouts of a plan, computed afresh."""
    made = lay_out_afresh(LayoutRequest(folder=shop, only=plan))
    assert made.frozen, "\n".join(map(str, made.findings))
    return layouts(shop / "plans" / plan)


def layouts(folder: Path) -> dict[str, bytes]:
    return {name: data for name, data in files_of(folder).items() if "layout" in Path(name).name}


def lines() -> Iterator[str]:
    """Yield a line for each file, its sum before its name."""
    with TemporaryDirectory() as folder:
        small = lay_down(Path(folder) / "small")
        handed = BOARD + "access: supporters\n"
        (small / "plans" / "handed").mkdir()
        (small / "plans" / "handed" / "plan.yaml").write_text(handed, "utf-8")
        sample = copy_of_sample(Path(folder) / "sample")
        for shop, files in (("small", published(small)), ("sample", laid_out(sample, "desk-rack"))):
            for name, content in sorted(files.items()):
                yield f"{sha256(content).hexdigest()}  {shop}/{name}\n"


if __name__ == "__main__":
    sys.stdout.writelines(lines())
