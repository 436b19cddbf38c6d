"""Everything that a folder of files says, unpacked and decoded, to search it for marks."""

from __future__ import annotations

import io
import re
import struct
import zlib
from base64 import b64decode
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from urllib.parse import unquote
from zipfile import ZipFile, is_zipfile

import pikepdf
from PIL import Image
from pypdfium2 import PdfDocument

_ESCAPE = re.compile(r"\\u([0-9a-fA-F]{4})")


def texts_of(name: str, content: bytes) -> Iterator[str]:
    """Yield all texts of a file: its name, its bytes, what is packed in it, and that decoded."""
    yield name
    for part in _parts(content):
        text = part.decode("utf-8", "replace")
        yield text
        yield _ESCAPE.sub(lambda found: chr(int(found[1], 16)), text)
        yield unescape(text)
        yield unquote(text)


def _parts(content: bytes, depth: int = 0) -> Iterator[bytes]:
    """Yield bytes, and whatever is packed in them."""
    yield content
    if depth > 4:
        return
    if is_zipfile(io.BytesIO(content)):
        with ZipFile(io.BytesIO(content)) as packed:
            yield packed.comment
            for each in packed.infolist():
                yield f"{each.filename} {each.comment!r} {each.extra!r}".encode()
                yield from _parts(packed.read(each), depth + 1)
    elif content.startswith(b"%PDF"):
        yield from _of_pdf(content, depth)
    elif content.startswith((b"\x89PNG", b"\xff\xd8", b"RIFF")):
        yield from _of_picture(content)
    elif content.startswith(b"glTF"):
        yield from _of_model(content)
    else:
        yield from _base64(content, depth)


def _of_pdf(content: bytes, depth: int) -> Iterator[bytes]:
    """Yield the objects of a PDF, its streams unpacked, and the texts that are to be read in it."""
    with pikepdf.open(io.BytesIO(content)) as opened:
        for each in opened.objects:
            yield repr(each).encode()
            if isinstance(each, pikepdf.Stream):
                try:
                    yield from _parts(each.read_bytes(), depth + 1)
                except pikepdf.PdfError:  # a picture
                    yield from _parts(each.read_raw_bytes(), depth + 1)
    read = PdfDocument(content)
    try:
        for page in read:
            yield page.get_textpage().get_text_bounded().encode()
    finally:
        read.close()


def _of_picture(content: bytes) -> Iterator[bytes]:
    picture = Image.open(io.BytesIO(content))
    picture.load()
    yield repr(picture.info).encode()
    yield repr(dict(picture.getexif())).encode()


def _of_model(content: bytes) -> Iterator[bytes]:
    at = 12
    while at + 8 <= len(content):
        (length,) = struct.unpack_from("<I", content, at)
        yield content[at + 8 : at + 8 + length]
        at += 8 + length


_BASE64 = re.compile(rb"[A-Za-z0-9+/]{60,}={0,2}")


def _base64(content: bytes, depth: int) -> Iterator[bytes]:
    for found in _BASE64.finditer(content):
        try:
            plain = b64decode(found[0], validate=True)
        except ValueError:
            continue
        for wbits in (-15, 15, 31):
            try:
                yield from _parts(zlib.decompress(plain, wbits), depth + 1)
            except zlib.error:
                continue
        yield from _parts(plain, depth + 1) if plain[:4] in _PACKED else ()


_PACKED = (b"\x89PNG", b"PK\x03\x04", b"%PDF", b"glTF", b"\xff\xd8\xff\xe0", b"\xff\xd8\xff\xe1")


def marks_in(folder: Path, marks: frozenset[str]) -> frozenset[str]:
    """Return the marks that any file of a folder says."""
    found: set[str] = set()
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            name = path.relative_to(folder).as_posix()
            for text in texts_of(name, path.read_bytes()):
                found |= {mark for mark in marks if mark in text}
    return frozenset(found)


def pictures_in(folder: Path) -> Iterator[Image.Image]:
    """Yield every picture of a folder, those in archives and pages too."""
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            for part in _parts(path.read_bytes()):
                if part.startswith((b"\x89PNG", b"\xff\xd8\xff", b"RIFF")):
                    yield Image.open(io.BytesIO(part)).convert("RGB")
