"""Words with figures in them: a text as any other, which still knows its numbers.

A ``Figured`` reads as its words; who writes a file asks for its parts and tells each figure anew
(``resolved``), so that the same words can be written for other numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from string import Formatter

from kerfolio.basis.style import Numbers, Style, told_as, widest_of


@dataclass(frozen=True, slots=True)
class Figure:
    """A number before it is rounded, and how it is told; None where there is none of it."""

    value: float | None
    style: Style


Part = str | Figure


class Figured(str):
    """A text in parts."""

    parts: tuple[Part, ...]

    def __new__(cls, *parts: Part) -> Figured:
        """Return the text of words and figures one after the other."""
        made = super().__new__(cls, "".join(map(_told, parts)))
        made.parts = parts
        return made


def figured(template: str, *fields: str | Figure, **named: str | Figure | int) -> Figured:
    """Return a template's words, each ``{}`` a field in turn and each ``{name}`` a named one."""
    waiting, made = iter(fields), list[Part]()
    for literal, name, form, _ in Formatter().parse(template):
        made += [literal] if literal else []
        if name is not None:
            made += _field(named[name] if name else next(waiting), form or "")
    return Figured(*made)


def _field(field: str | Figure | int, form: str) -> tuple[Part, ...]:
    if isinstance(field, Figure):
        return (field,)
    return parts_of(field) if isinstance(field, str) else (format(field, form),)


def joined(between: str, texts: Iterable[str]) -> Figured:
    """Return texts one after the other with something between."""
    made = list[Part]()
    for index, text in enumerate(texts):
        made += [*([between] if index else ()), *parts_of(text)]
    return Figured(*made)


def together(*texts: str, between: str = "") -> str:
    """Return texts as one, in which their figures, if there are any, are still known."""
    if any(isinstance(each, Figured) for each in texts):
        return joined(between, texts)
    return between.join(texts)


def replaced(text: str, old: str, new: str) -> str:
    """Return a text with words in it replaced, its figures left."""
    if not isinstance(text, Figured):
        return text.replace(old, new)
    return Figured(
        *(each.replace(old, new) if isinstance(each, str) else each for each in text.parts)
    )


def resolved(text: str, numbers: Numbers, cleaned: Callable[[str], str] = str) -> str:
    """Return a text whose figures are told by ``numbers``, its words ``cleaned``."""
    parts = parts_of(text)
    return "".join(
        cleaned(each) if isinstance(each, str) else numbers(each.value, each.style)
        for each in parts
    )


def widest(text: str) -> str:
    """Return a text with every figure as wide as it gets, to keep room for it."""
    parts = parts_of(text)
    return "".join(each if isinstance(each, str) else widest_of(each.style) for each in parts)


def words_of(text: str) -> tuple[str, ...]:
    """Return the words of a text, parted at blanks; a figure with its unit is not parted."""
    if not isinstance(text, Figured):
        return tuple(text.split())
    words: list[list[Part]] = [[]]
    for part in text.parts:
        if isinstance(part, Figure):
            words[-1].append(part)
            continue
        first, *others = part.replace("\n", " ").split(" ")
        words[-1] += [first] if first else []
        words += [[each] if each else [] for each in others]
    return tuple(Figured(*word) for word in words if word)


def parts_of(text: str) -> tuple[Part, ...]:
    """Return the parts of a text; of a plain one itself."""
    return text.parts if isinstance(text, Figured) else (text,)


def _told(part: Part) -> str:
    return part if isinstance(part, str) else told_as(part.value, part.style)
