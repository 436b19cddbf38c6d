"""Draws the pictures of ``docs`` as the program does: ``python -m tests.tools.docs_pictures``.

They show the plan that lies beside them, once as it stands and once with another size.
"""

from __future__ import annotations

import shutil
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.publishing.look import LookRequest, look

DOCS = Path(__file__).resolve().parent.parent.parent / "docs"
PICTURES = DOCS / "pictures"
SHOWN = {"rail": "rail", "wedge": "wedge", "whole": ""}
STATED, LONGER = "long: 420", "long: 560"


def pictures() -> dict[str, bytes]:
    """Return every picture by the name of its file."""
    with TemporaryDirectory() as folder:
        shop = Path(folder) / "example"
        shutil.copytree(DOCS / "example", shop, ignore=shutil.ignore_patterns(".kerfolio"))
        found = {f"{name}.svg": _drawn(shop, part) for name, part in SHOWN.items()}
        plan = shop / "plans" / "trestle" / "plan.yaml"
        text = plan.read_text("utf-8")
        assert text.count(STATED) == 1, "the size that is changed"
        plan.write_text(text.replace(STATED, LONGER), "utf-8")
        return {**found, "longer-rail.svg": _drawn(shop, "rail")}


def _drawn(shop: Path, part: str) -> bytes:
    out = shop.parent / "picture.svg"
    looked = look(LookRequest(folder=shop, plan="trestle", part=part, out=out))
    assert looked.written, "\n".join(map(str, looked.findings))
    return out.read_bytes()


if __name__ == "__main__":
    for name, content in pictures().items():
        (PICTURES / name).write_bytes(content)
        print(f"wrote {PICTURES / name}")
