"""Takes files from one folder of the workshop, and never from outside it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.names import did_you_mean, nearest


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """A folder; ``prefix`` is its path in the workshop with forward slashes, or empty.

    Where it ``decodes``, what a picture shows is wanted; else only that there is one.
    """

    folder: Path
    prefix: str
    decodes: bool = True

    def shown(self, file: str) -> str:
        """Return the file's path in the workshop, for places."""
        return f"{self.prefix}/{file}" if self.prefix else file

    def path_of(self, file: str) -> Path | Complaint:
        """Return where a file lies; a Complaint when it is missing or outside the folder."""
        fault = path_fault(file)
        if fault is not None:
            return fault
        path = self.folder / file
        try:
            inside = path.resolve().is_relative_to(self.folder.resolve())
            present = path.is_file()
        except UnicodeEncodeError:
            advice = "Set `PYTHONUTF8=1`, or name the file in plain letters."
            return Complaint(f"{quoted(file)} cannot be spelt in this machine's locale", advice)
        except (OSError, RuntimeError, ValueError):
            return Complaint(f"{quoted(file)} cannot be read", "Check the file's name.")
        if not inside:
            return Complaint(f"{quoted(file)} leads out of the folder", "Copy the file into it.")
        if not present:
            return Complaint(f"no file {quoted(file)}", self._near(file))
        return path

    def content(self, file: str, most: int) -> bytes | Complaint:
        """Return a file's bytes, at most ``most`` of them; a Complaint when that cannot be."""
        path = self.path_of(file)
        if isinstance(path, Complaint):
            return path
        try:
            size = path.stat().st_size
            if size > most:
                message = f"{quoted(file)} has more than {most // 1_000_000} MB"
                return Complaint(message, "Make it smaller.")
            return path.read_bytes()
        except OSError as trouble:
            return Complaint(
                f"{quoted(file)} cannot be read", f"The disk says: {trouble.strerror}."
            )

    def _near(self, file: str) -> str:
        wanted = PurePosixPath(file)
        try:
            names = sorted(each.name for each in (self.folder / wanted.parent).iterdir())
        except OSError:
            return f"Put it under {self.prefix or 'the workshop'}."
        same = next((name for name in names if name.lower() == wanted.name.lower()), None)
        if same or nearest(wanted.name, names):
            return did_you_mean(same or wanted.name, [same] if same else names)
        return f"Put it under {self.prefix or 'the workshop'}."


def path_fault(file: str) -> Complaint | None:
    """Return what is wrong with a path as written, or None."""
    advice = "Write it from this folder with forward slashes: `photos/rail.jpg`."
    if "\\" in file:
        return Complaint(f"{quoted(file)} has a backslash", advice)
    parts = file.split("/")
    if not parts[0] or ":" in parts[0] or parts[0].startswith("~"):
        return Complaint(f"{quoted(file)} is not inside the folder", advice)
    if any(part in ("", ".", "..") for part in parts):
        return Complaint(f"{quoted(file)} is not a plain path", advice)
    if any(ord(sign) < 32 for sign in file) or len(file) > 200:
        return Complaint(f"{quoted(file)} is no file name", advice)
    return None
