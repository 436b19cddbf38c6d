"""What is wrong with a DXF file that the library cannot read: where it is, and what it is.

A DXF file in text is pairs of lines, a group code and its value; a group of code 0 begins an entity
or a section, and the last one is ``EOF`` (DXF reference, "ASCII DXF files"). A slip in one line
makes the file unreadable for a program, while its maker sees an editor's "cannot be opened".
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.complaint import quoted
from kerfolio.basis.place import Place

BINARY = b"AutoCAD Binary DXF"
_ANEW = "Save it anew from the drawing program, as DXF 2010."
_ALIENS: tuple[tuple[bytes, str], ...] = (
    (b"AC10", "a DWG drawing"),
    (b"%PDF", "a PDF file"),
    (b"PK\x03\x04", "a zip file"),
    (b"<", "an SVG or XML file"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
)
_NUMBERS = (
    *((10, 99), (110, 179), (210, 239), (270, 299), (370, 389), (400, 409), (420, 429), (440, 469)),
    (1010, 1071),
)
"""Ranges of group codes whose values are numbers (DXF reference, "group code value types")."""

_CODE_DIGITS = 4
_MOST = 40
"""Letters of a section or an entity that are told: a damaged file calls them anything."""

_GEOMETRY = ("ENTITIES", "BLOCKS")


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """What is wrong and where; ``grave`` when what is to be cut may be missing or other."""

    message: str
    place: Place
    advice: str = _ANEW
    grave: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class _Group:
    """A pair of lines with the section and the entity it stands in; ``line`` is its code's."""

    line: int
    code: str
    value: str
    section: str
    entity: str

    @property
    def within(self) -> str:
        """Where it stands, in words: ``CIRCLE of ENTITIES``."""
        if not self.section:
            return "before the first section"
        section, entity = self.section[:_MOST], self.entity[:_MOST]
        return f"in {entity} of {section}" if entity else f"in {section}"


def damage_of(content: bytes, file: str) -> Damage | None:
    """Return the first damage of a DXF file, None where none is found."""
    whole = Place(file)
    if not content.strip():
        return Damage(message="the file is empty", place=whole)
    alien = next((name for sign, name in _ALIENS if content.lstrip().startswith(sign)), "")
    if alien:
        advice = "Export it as DXF 2010; another name does not change what it is."
        return Damage(message=f"{alien}, no DXF", place=whole, advice=advice)
    if content.startswith(BINARY):
        return Damage(message="a binary DXF file that is cut short or damaged", place=whole)
    text = content.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n")
    return _damage_of_text(text.removesuffix("\n").split("\n"), file)


def _damage_of_text(lines: list[str], file: str) -> Damage | None:
    last = _Group(line=1, code="", value="", section="", entity="")
    for group in _groups(lines):
        place = Place(file, group.line, 1)
        if not _is_code(group.code):
            message = f"{quoted(group.code, 20)} is no group code ({group.within})"
            advice = f"A line is missing or too many above it. {_ANEW}"
            return Damage(message=message, place=place, advice=advice, grave=_is_grave(group))
        if not _fits(int(group.code), group.value):
            message = f"{quoted(group.value, 20)} is no number ({group.within})"
            place = replace(place, line=group.line + 1)
            return Damage(message=message, place=place, grave=_is_grave(group))
        last = group
    if (last.code, last.value) == ("0", "EOF"):
        return None
    message = f"the file is cut short ({last.within})"
    ended = (last.code, last.value) == ("0", "ENDSEC") and last.section == "OBJECTS"
    return Damage(message=message, place=Place(file, max(len(lines), 1), 1), grave=not ended)


def _groups(lines: list[str]) -> Iterator[_Group]:
    section = entity = ""
    for index in range(0, len(lines) - 1, 2):
        code, value = lines[index].strip(), lines[index + 1].strip()
        if code == "0":
            entity = "" if value in ("SECTION", "ENDSEC", "EOF") else value
        elif code == "2" and index and lines[index - 1].strip() == "SECTION":
            section = value
        yield _Group(line=index + 1, code=code, value=value, section=section, entity=entity)
        if (code, value) == ("0", "EOF"):
            return


def _is_grave(group: _Group) -> bool:
    return group.section in _GEOMETRY or not group.section


def _is_code(text: str) -> bool:
    digits = text.removeprefix("-")
    return digits.isdecimal() and digits.isascii() and len(digits) <= _CODE_DIGITS


def _fits(code: int, value: str) -> bool:
    if not any(low <= code <= high for low, high in _NUMBERS):
        return True
    try:
        float(value)
    except ValueError:
        return False
    return "_" not in value
