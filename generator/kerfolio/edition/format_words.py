"""Words for the formats of cut files, the same on page and paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.basis.words import listed
from kerfolio.writing.formats import CutFormat


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatWords:
    """What readers are told of the formats.

    ``each``: ``one SVG and one DXF``; ``choice``: ``a DXF or an SVG``, what a shop is sent first;
    ``units``: ``in millimetres``, with those that differ in brackets; ``coming``: ``as SVG and as
    DXF, both in millimetres``; ``sent``: what a shop that cuts for others is sent, ``DXF``.
    """

    each: str
    choice: str
    units: str
    coming: str
    sent: str


def format_words(formats: Sequence[CutFormat]) -> FormatWords:
    """Return the words for some formats, at least one."""
    units, together = _units(formats), {1: "", 2: "both "}.get(len(formats), "all ")
    preferred = sorted(formats, key=lambda each: not each.sent)
    return FormatWords(
        each=listed([f"one {each.title}" for each in formats]),
        choice=listed([f"{each.article} {each.title}" for each in preferred], "or"),
        units=units,
        coming=f"{listed([f'as {each.title}' for each in formats])}, {together}{units}",
        sent=listed([each.title for each in formats if each.sent], "or"),
    )


def _units(formats: Sequence[CutFormat]) -> str:
    """The unit of the first is that of all, but for those named in brackets."""
    others: dict[str, list[str]] = {}
    for each in formats:
        others.setdefault(each.unit, []).append(each.title)
    (usual, _), *odd = others.items()
    beside = listed([f"{listed(titles)} in {unit}" for unit, titles in odd])
    return f"in {usual} ({beside})" if odd else f"in {usual}"
