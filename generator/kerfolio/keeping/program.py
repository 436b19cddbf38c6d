"""What the program itself is: whatever of it may change a result, as one hash.

Its version number tells little: these are its own files with stock library, theme and words, the
releases of all that is installed beside it, the fonts, the interpreter and the system's drawing
library.
"""

from __future__ import annotations

import ctypes
import json
import platform
import sys
from collections.abc import Iterator
from functools import cache
from hashlib import sha256
from importlib.util import find_spec
from pathlib import Path

from kerfolio.basis.shipped import SHIPPED, shipped

_PACKAGE = Path(__file__).resolve().parent.parent
_FONTS = ("font_source_sans_pro", "font_source_serif_pro")
_CAIRO = ("libcairo.so.2", "libcairo.2.dylib", "libcairo-2.dll")


def key_of(what: str, *parts: str) -> str:
    """Return the key of a result: which it is, what it is made from, and by which program."""
    return sha256(json.dumps([program(), what, parts]).encode()).hexdigest()


@cache
def program() -> str:
    """Return the hash of the program; it cannot change while it runs."""
    made = sha256("\n".join((platform.python_version(), sys.platform, _cairo())).encode())
    made.update("\n".join(sorted(_releases())).encode())
    for folder in (_PACKAGE, *map(shipped, SHIPPED), *_font_folders()):
        for path in sorted(folder.rglob("*")):
            if path.suffix not in (".pyc", "") and path.is_file():
                content = path.read_bytes()
                made.update(f"\n{path.relative_to(folder).as_posix()} {len(content)}\n".encode())
                made.update(content)
    return made.hexdigest()


def _releases() -> Iterator[str]:
    """Yield every installed distribution with its version, as its folder is called."""
    for each in map(Path, sys.path):
        if each.is_dir():
            for ending in ("dist-info", "egg-info"):
                yield from (found.name for found in each.glob(f"*.{ending}"))


def _font_folders() -> Iterator[Path]:
    """Yield the folders of the packages that hold the fonts, without loading them."""
    for name in _FONTS:
        found = find_spec(name)
        for place in (found.submodule_search_locations or ()) if found else ():
            yield Path(place)


def _cairo() -> str:
    """Return the version of the system's drawing library; empty where there is none."""
    for name in _CAIRO:
        try:
            library = ctypes.CDLL(name)
            library.cairo_version_string.restype = ctypes.c_char_p
            return str(library.cairo_version_string())
        except (OSError, AttributeError):
            continue
    return ""
