"""Words with quantities in them: told in a unit only when shown, compared without their numbers.

A text without quantities is a plain ``str``; ``said`` makes the others. What a finding is about is
never read out of its words: its quantities are facts, and its skeleton is what stays the same
where only numbers differ.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from unicodedata import bidirectional, category

from kerfolio.basis.reader import METRIC, Reader


@dataclass(frozen=True, slots=True)
class Quantity:
    """A named value in its base unit: ``mm``, ``kg``, ``deg``, ``mm/min``, empty for a count."""

    name: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Measure:
    """Quantities told together; ``tell`` takes their values and a plan's unit, ``mm`` or ``in``."""

    facts: tuple[Quantity, ...]
    tell: Callable[..., str]

    def told(self, reader: Reader) -> str:
        """Return the quantities in a plan's unit: ``2.3 mm``, ``360 x 450 mm``."""
        return self.tell(*(each.value for each in self.facts), reader)

    @property
    def skeleton(self) -> str:
        """The names of the quantities alone."""
        return "".join(f"<{each.name}>" for each in self.facts)


@dataclass(frozen=True, slots=True)
class ByUnit:
    """A text for plans in mm and another for those in inches: an example as a maker writes it."""

    mm: str
    inch: str

    def told(self, reader: Reader) -> str:
        """Return the one for a plan's unit."""
        return self.inch if reader.unit == "in" else self.mm

    @property
    def skeleton(self) -> str:
        """The text for plans in mm."""
        return self.mm


@dataclass(frozen=True, slots=True)
class Copy:
    """The number of a copy, with its point: the ``.3`` of ``rail.slots.3``."""

    number: str

    def told(self, _: Reader) -> str:
        """Return the number as it stands after the name."""
        return self.number

    @property
    def skeleton(self) -> str:
        """Nothing: copies count as one."""
        return "<copy>"


@dataclass(frozen=True, slots=True)
class Message:
    """A message of the catalogue, for words that readers see too, each in their language."""

    name: str
    values: tuple[tuple[str, Text | int], ...] = ()

    def told(self, reader: Reader) -> str:
        """Return the message in the reader's language and unit. Raises as ``Reader.says``."""
        return reader.says(
            self.name,
            **{
                key: value.told(reader) if isinstance(value, Words) else value
                for key, value in self.values
            },
        )

    @property
    def skeleton(self) -> str:
        """The message without the values of its quantities."""
        bare = {key: v.skeleton if isinstance(v, Words) else v for key, v in self.values}
        return METRIC.says(self.name, **bare)

    @property
    def facts(self) -> tuple[Quantity, ...]:
        """The quantities of its values."""
        return tuple(facts(*(each for _, each in self.values if isinstance(each, Words))))


Part = str | Measure | ByUnit | Copy | Message


@dataclass(frozen=True, slots=True)
class Words:
    """A text in parts."""

    parts: tuple[Part, ...]

    def __add__(self, other: Text) -> Words:
        return Words((*self.parts, *_parts(other)))

    def __radd__(self, other: str) -> Words:
        return Words((*_parts(other), *self.parts))

    def told(self, reader: Reader) -> str:
        """Return the text in a plan's unit, ``mm`` or ``in``."""
        return "".join(each if isinstance(each, str) else each.told(reader) for each in self.parts)

    @property
    def skeleton(self) -> str:
        """The text without the values of its quantities and the numbers of copies."""
        return "".join(each if isinstance(each, str) else each.skeleton for each in self.parts)

    @property
    def facts(self) -> tuple[Quantity, ...]:
        """The quantities, in the order told."""
        return tuple(
            fact
            for each in self.parts
            if isinstance(each, Measure | Message)
            for fact in each.facts
        )


Text = str | Words


def said(template: str, *fields: Part | Words | int) -> Words:
    """Return a template's words, each ``{}`` a field in turn.

    Raises ValueError where there are not as many fields as ``{}``.
    """
    texts = template.split("{}")
    if len(texts) != len(fields) + 1:
        raise ValueError(f"{len(fields)} fields for `{template}`")
    made: list[Part] = [texts[0]]
    for field, text in zip(fields, texts[1:], strict=True):
        made += [*_parts(str(field) if isinstance(field, int) else field), text]
    return Words(tuple(each for each in made if each != ""))


def phrase(name: str, /, **values: Text | Measure | int) -> Words:
    """Return a message of the catalogue as words, for a reason that readers see too."""
    given = ((key, Words((v,)) if isinstance(v, Measure) else v) for key, v in values.items())
    return Words((Message(name, tuple(given)),))


def written(mm: str, inch: str, template: str = "Write `{}`.") -> Words:
    """Return the advice to write one example in a plan in mm, the other in one in inches."""
    return said(template, ByUnit(mm, inch))


def named(name: str) -> Words:
    """Return a feature's name in back quotes, the number of a copy apart: `` `rail.slots.3` ``."""
    base = stated_name(name)
    return said("`{}{}`", base, Copy(name[len(base) :]) if base != name else "")


def stated_name(name: str) -> str:
    """Return a feature's name as the plan states it, without the number of a copy."""
    base, _, number = name.rpartition(".")
    return stated_name(base) if number.isdigit() else name


def strung(items: Sequence[Text], between: Part) -> Words:
    """Return texts one after the other with something between."""
    made: list[Part] = []
    for index, each in enumerate(items):
        made += [*([between] if index else []), *_parts(each)]
    return Words(tuple(made))


def enumerated(items: Sequence[Text]) -> Words:
    """Return ``a``, ``a and b`` or ``a, b and c``; nothing for no items."""
    if len(items) < 2:
        return strung(items, "")
    return said("{} and {}", strung(items[:-1], ", "), strung(items[-1:], ""))


def told(text: Text, reader: Reader) -> str:
    """Return a text in a plan's unit, ``mm`` or ``in``, on one line and without steering signs.

    What it quotes of foreign files may be of any length and hold anything, up to commands to a
    terminal.
    """
    words = text if isinstance(text, str) else text.told(reader)
    words = words if len(words) <= _LONGEST else _QUOTE.sub(_cut, words)
    return words if words.isprintable() else "".join(map(_visible, words))


_LONGEST = 100
"""Letters of one quote that are shown."""

_QUOTE = re.compile("`[^`]*`")  # short ones too: words between two are not quoted


def _cut(quote: re.Match[str]) -> str:
    text = quote[0]
    return text if len(text) < _LONGEST + 2 else f"{text[: _LONGEST - 3]}...`"


def _visible(sign: str) -> str:
    """Return a sign, or its escape where it is none to be seen: ``\\x1b``."""
    steers = category(sign) in _STEERING or bidirectional(sign) in _TURNING
    return sign.encode("unicode_escape").decode("ascii") if steers else sign


_STEERING = ("Cc", "Cs", "Zl", "Zp")
_TURNING = ("LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI")


def skeleton(text: Text) -> str:
    """Return a text without the values of its quantities and the numbers of copies."""
    return text if isinstance(text, str) else text.skeleton


def facts(*texts: Text) -> Iterator[Quantity]:
    """Yield the quantities of texts."""
    for each in texts:
        if isinstance(each, Words):
            yield from each.facts


def _parts(text: Part | Words) -> tuple[Part, ...]:
    return text.parts if isinstance(text, Words) else (text,)
