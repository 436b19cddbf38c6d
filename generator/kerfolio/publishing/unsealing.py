"""A sealed file opened: whole at its place, or not at all."""

from __future__ import annotations

from pathlib import Path

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.disk.put import putting
from kerfolio.publishing.plan_site import SEALED
from kerfolio.sealing.chunks import opened
from kerfolio.sealing.fault import SealError
from kerfolio.sealing.passphrase import plain


def place_for(file: Path, out: Path | None) -> tuple[Path, tuple[Finding, ...]]:
    """Return where the content of a sealed file goes, with what speaks against it."""
    bare = file.name.removesuffix(SEALED)
    if out is None and bare in ("", file.name):
        message = f"the name of the file does not end in `{SEALED}`"
        advice = "Say where to write what it holds: `--out FILE`."
        return file, (error("out-unsaid", message, Place(str(file)), advice),)
    target = out or file.with_name(bare)
    if target.exists():
        message, advice = "this file is there already", "Name another: `--out FILE`."
        return target, (error("out-there", message, Place(str(target)), advice),)
    return target, ()


def unseal(file: Path, target: Path, typed: str) -> tuple[Finding, ...]:
    """Open a sealed file with a key as a person types it; return why it does not open.

    Nothing is written then. Raises OSError, DiskError.
    """
    try:
        with file.open("rb") as source, putting(target) as content:
            for part in opened(source, plain(typed)):
                content.write(part)
    except SealError as wrong:
        return (error("not-unsealed", str(wrong), Place(str(file)), wrong.advice),)
    return ()
