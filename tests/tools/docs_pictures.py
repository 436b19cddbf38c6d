"""Draws the pictures of ``docs`` as the program does: ``python -m tests.tools.docs_pictures``.

They show the plan that lies beside them, once as it stands and once with another size, and how one
of its wedges is turned.
"""

from __future__ import annotations

import shutil
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.assembly.poses import put_together
from kerfolio.assembly.wedged import wedges_of
from kerfolio.publishing.look import LookRequest, look
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.settle import settle
from kerfolio.settling.variant import drawn_variant
from tests.tools.wedge_picture import wedge_picture

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
        longer = {"longer-rail.svg": _drawn(shop, "rail")}
    return {**found, **longer, "turned.svg": _turned()}


def _turned() -> bytes:
    """Return the trestle's left wedge in its slot, and turned the wrong way round."""
    workshop, _ = read_workshop(DOCS / "example")
    assert workshop is not None
    plan, stock = workshop.plans[0], workshop.stock
    variant = drawn_variant(plan, stock)
    assert variant is not None
    settled, _ = settle(plan, stock, variant)
    assert settled is not None
    together = put_together(settled)
    assert together is not None
    return wedge_picture(wedges_of(settled, together.assembled)[0])


def _drawn(shop: Path, part: str) -> bytes:
    out = shop.parent / "picture.svg"
    looked = look(LookRequest(folder=shop, plan="trestle", part=part, out=out))
    assert looked.written, "\n".join(map(str, looked.findings))
    return out.read_bytes()


if __name__ == "__main__":
    for name, content in pictures().items():
        (PICTURES / name).write_bytes(content)
        print(f"wrote {PICTURES / name}")
