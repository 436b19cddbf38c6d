"""Zip archives and check sums that are the same bytes for the same content."""

from __future__ import annotations

import hashlib
import io
import zipfile
from collections.abc import Mapping
from datetime import date

_REGULAR_FILE_644 = 0o100644 << 16
_UNIX = 3
_EARLIEST, _LATEST = date(1980, 1, 1), date(2107, 12, 31)
"""ZIP can state no other days (APPNOTE 4.4.6: an MS-DOS date counts 128 years from 1980)."""


def sha256(content: bytes) -> str:
    """Return the SHA-256 of some bytes in hexadecimal (FIPS 180-4)."""
    return hashlib.sha256(content).hexdigest()


def sums_text(files: Mapping[str, bytes]) -> str:
    """Return a list of check sums, a line a file: hash, two blanks, name; sorted by name."""
    return "".join(f"{sha256(files[name])}  {name}\n" for name in sorted(files))


def zip_bytes(
    files: Mapping[str, bytes],
    day: date,
    folder: str = "",
    *,
    first: str = "",
    deflated: bool = True,
) -> bytes:
    """Pack named bytes into a zip whose entries all carry midnight of ``day``, sorted by name.

    Only the file called ``first`` stands before all others, where programs list it.

    A day that ZIP cannot state becomes the nearest it can. What is not ``deflated`` is stored, so
    that another program, as the script ``fitted.js``, gives the same bytes.

    ``folder`` is put before every name, so that unpacking makes one folder. Raises ValueError for
    a name that would leave it.
    """
    method = zipfile.ZIP_DEFLATED if deflated else zipfile.ZIP_STORED
    stamp = min(max(day, _EARLIEST), _LATEST)
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", method, compresslevel=6) as archive:
        for name in sorted(files, key=lambda each: (each != first, each)):
            if name.startswith("/") or "\\" in name or ".." in name.split("/"):
                raise ValueError(f"unsafe name in a bundle: {name!r}")
            entry = zipfile.ZipInfo(f"{folder}/{name}" if folder else name)
            entry.date_time = (stamp.year, stamp.month, stamp.day, 0, 0, 0)
            entry.create_system = _UNIX
            entry.external_attr = _REGULAR_FILE_644
            entry.compress_type = method
            archive.writestr(entry, files[name])
    return buffer.getvalue()


def unzipped(content: bytes) -> dict[str, bytes]:
    """Return the files of a zip by name. Raises zipfile.BadZipFile when it is damaged."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        return {entry.filename: archive.read(entry) for entry in archive.infolist()}
