"""What a folder of source files holds, as one hash."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fnmatch import fnmatchcase
from hashlib import sha256
from pathlib import Path


def digest_of(path: Path, root: Path, *, without: str = "") -> str:
    """Return a hash over all files at or below a path, by name and content; links are followed.

    What leads out of ``root`` is told by that alone, as nothing out there is read; what cannot be
    read, by why. Names of the pattern ``without`` do not count, nor files that are being written.
    """
    return _digest(path, root, without, _content)


def state_of(path: Path, root: Path) -> str:
    """Return a hash over what the disk says of the same files without reading them.

    As long as it is the same so is what they hold: whatever changes a file changes its time there.
    """
    return _digest(path, root, "", _state)


def _digest(path: Path, root: Path, without: str, told: Callable[[Path], str]) -> str:
    made = sha256()
    for name, file in _files(path, "", root.resolve(), frozenset(), without):
        made.update(f"{name!r} {file if isinstance(file, str) else told(file)}\n".encode())
    return made.hexdigest()


def _files(
    path: Path, name: str, root: Path, above: frozenset[Path], without: str
) -> Iterator[tuple[str, Path | str]]:
    """Yield (name, file), or (name, what is odd about it), in the order of names."""
    try:
        there = path.resolve()
        if not there.is_relative_to(root) or there in above:
            yield name, "out" if there not in above else "round"
        elif path.is_dir():
            yield name, "folder"
            for each in sorted(path.iterdir()):
                written = each.name.endswith(".kerfolio")
                if not written and not fnmatchcase(each.name, without):
                    inner = f"{name}/{each.name}"
                    yield from _files(each, inner, root, above | {there}, without)
        else:
            yield name, path if path.is_file() else "none"
    except (OSError, RuntimeError) as trouble:
        yield name, f"{type(trouble).__name__} {trouble}"


def _state(file: Path) -> str:
    try:
        found = file.stat()
    except OSError as trouble:
        return f"{type(trouble).__name__} {trouble.errno}"
    return f"{found.st_ino} {found.st_size} {found.st_mtime_ns} {found.st_ctime_ns}"


def _content(file: Path) -> str:
    try:
        with file.open("rb") as opened:
            made = sha256()
            while piece := opened.read(1 << 20):
                made.update(piece)
            return made.hexdigest()
    except OSError as trouble:
        return f"{type(trouble).__name__} {trouble.errno}"
