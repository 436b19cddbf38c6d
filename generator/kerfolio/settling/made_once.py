"""Notes what something is made from while it is made, so that it need not be made again."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from dataclasses import dataclass
from typing import Generic, TypeVar

Value = TypeVar("Value")
Made = TypeVar("Made")


class Noting(Mapping[str, Value]):
    """A mapping that notes what is read from it: each name, with the value it had or None."""

    def __init__(self, found: Mapping[str, Value]) -> None:
        """Note what is read from ``found``."""
        self._found = found
        self.noted: dict[str, Value | None] = {}

    def __getitem__(self, name: str) -> Value:
        """Return a value, noted. Raises KeyError."""
        self.noted[name] = self._found.get(name)
        return self._found[name]

    def __iter__(self) -> Iterator[str]:
        """Iterate over all names, and note all values: who looks around may use any of them."""
        self.noted.update(self._found)
        return iter(self._found)

    def __len__(self) -> int:
        """Return how many there are; which they are is known to who asks again."""
        return len(self._found)


Sources = tuple[Mapping[str, object], ...]
"""What things are made from. The mappings keep their places, and should keep their names."""


@dataclass(frozen=True, slots=True)
class _Kept(Generic[Made]):
    """Something made, and what was read for it from each source."""

    noted: tuple[Mapping[str, object], ...]
    made: Made

    def holds(self, sources: Sources) -> bool:
        """Tell whether it would be made just the same from these sources."""
        pairs = zip(self.noted, sources, strict=True)
        return all(
            found.get(name) == value for noted, found in pairs for name, value in noted.items()
        )


class MadeOnce(Generic[Made]):
    """Keeps what was made of each thing, and gives it again where all that it read is the same.

    Making must be a function of the thing and of what it reads from its sources, nothing else.
    """

    def __init__(self) -> None:
        """Keep nothing yet."""
        self._kept: dict[Hashable, list[_Kept[Made]]] = {}

    def of(self, thing: Hashable, sources: Sources, make: Callable[..., Made]) -> Made:
        """Return what ``make`` makes of a thing from its sources, which it is given in order."""
        names = tuple(tuple(each) for each in sources)
        kept = self._kept.setdefault((thing, names), [])
        for each in kept:
            if each.holds(sources):
                return each.made
        noting = tuple(Noting(each) for each in sources)
        made = make(*noting)
        kept.append(_Kept(tuple(each.noted for each in noting), made))
        return made
