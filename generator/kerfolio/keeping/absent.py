"""What is left out of a value, so that nothing made from the rest can hang on it.

Where a field is left out ``ABSENT`` stands in its place. Whoever asks anything of that is told so
at once: a result is never made from what its key does not hold.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any, NoReturn, TypeVar

Value = TypeVar("Value")


class AbsentError(RuntimeError):
    """Says that something was asked of what had been left out."""


class Absent:
    """Stands for what was left out; nothing can be learnt from it."""

    __slots__ = ()

    def _refuse(self, *_: object) -> NoReturn:
        raise AbsentError("something was asked of what had been left out")

    __getattr__ = __bool__ = __iter__ = __len__ = __contains__ = __getitem__ = _refuse
    __str__ = __format__ = __lt__ = __le__ = __gt__ = __ge__ = __call__ = _refuse

    def __eq__(self, other: object) -> bool:
        """Tell that it is itself, so that records without the same can be compared."""
        return other is self or self._refuse()

    def __hash__(self) -> int:
        return 0

    def __repr__(self) -> str:
        return "ABSENT"


ABSENT: Any = Absent()


class Without:
    """Returns values without some of their fields, whatever they stand in; each object once.

    ``left_out`` names fields by class, ``instead`` are objects that stand in for all of a class.
    What holds nothing of either stays the very object that it was.
    """

    def __init__(
        self, left_out: Mapping[type, Collection[str]], instead: Mapping[type, object]
    ) -> None:
        """Leave out ``left_out``, and put ``instead`` in place of all objects of its classes.

        Raises ValueError where a class has no such field.
        """
        for kind, names in left_out.items():
            strange = set(names).difference(each.name for each in fields(kind))
            if strange:
                raise ValueError(f"{kind.__name__} has no {', '.join(sorted(strange))}")
        self._left_out, self._instead = left_out, instead
        self._known: dict[int, tuple[object, object]] = {}

    def of(self, value: Value) -> Value:
        """Return a value without what is left out."""
        kind = type(value)
        if kind in _BARE:
            return value
        known = self._known.get(id(value))
        if known is None:
            known = self._known[id(value)] = (value, self._made(value, kind))
        return known[1]  # type: ignore[return-value]

    def _made(self, value: Any, kind: type) -> object:
        if kind in self._instead:
            return self._instead[kind]
        if isinstance(value, tuple):
            return self._tuple(value, kind)
        if isinstance(value, Mapping):
            return self._mapping(value)
        if is_dataclass(kind):
            return self._record(value, kind)
        return value

    def _tuple(self, value: tuple[Any, ...], kind: type) -> object:
        made = [self.of(each) for each in value]
        if all(new is old for new, old in zip(made, value, strict=True)):
            return value
        return tuple(made) if kind is tuple else kind(*made)

    def _mapping(self, value: Mapping[Any, Any]) -> object:
        pairs = [(self.of(key), self.of(each)) for key, each in value.items()]
        same = all(
            new is old
            for pair in zip(pairs, value.items(), strict=True)
            for new, old in zip(*pair, strict=True)
        )
        return value if same else dict(pairs)

    def _record(self, value: Any, kind: type) -> object:
        """Return a record of the same class, its fields set as they are and not made anew."""
        out = self._out_of(kind)
        stated = {each.name: getattr(value, each.name) for each in fields(kind)}
        made = {name: ABSENT if name in out else self.of(each) for name, each in stated.items()}
        if all(made[name] is each for name, each in stated.items()):
            return value
        bare: object = object.__new__(kind)
        for name, each in made.items():
            object.__setattr__(bare, name, each)
        return bare

    def _out_of(self, kind: type) -> frozenset[str]:
        return frozenset(_named(kind, self._left_out))


_BARE = frozenset((float, int, str, bool, bytes, type(None)))


def _named(kind: type, left_out: Mapping[type, Collection[str]]) -> Iterator[str]:
    for each in kind.__mro__:
        yield from left_out.get(each, ())
