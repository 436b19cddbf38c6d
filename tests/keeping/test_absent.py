"""What is left out of a value cannot be learnt from what is left of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import pytest

from kerfolio.keeping.absent import ABSENT, AbsentError, Without
from kerfolio.keeping.content import Contents


@dataclass(frozen=True, slots=True)
class Item:
    name: str
    price: int = 0


@dataclass(frozen=True, slots=True)
class Bolt(Item):
    thread: float = 6.0


@dataclass(frozen=True, slots=True)
class Shelf:
    items: tuple[Item, ...]
    by_name: dict[str, Item] = field(default_factory=dict)
    made: int = field(init=False, default=0)

    def __post_init__(self) -> None:
        object.__setattr__(self, "made", len(self.items))


def without(value: Shelf) -> Shelf:
    return Without({Item: ("price",)}, {}).of(value)


def test_fields_are_left_out_wherever_they_stand() -> None:
    bolt = Bolt("bolt", 3)
    left = without(Shelf((Item("nail", 2), bolt), {"bolt": bolt}))
    assert [each.name for each in left.items] == ["nail", "bolt"]
    assert all(each.price is ABSENT for each in (*left.items, left.by_name["bolt"]))
    assert left.items[1] is left.by_name["bolt"]
    assert left.made == 2
    assert bolt.price == 3


def test_what_holds_nothing_of_it_stays_the_object_it_was() -> None:
    shelf = ((1.0, 2.0), ("a",), {"a": (3,)})
    assert Without({Item: ("price",)}, {}).of(shelf) is shelf


def test_others_stand_in_for_all_of_a_class() -> None:
    left = Without({}, {Bolt: Bolt("any")}).of(Shelf((Item("nail"), Bolt("bolt"))))
    assert left.items == (Item("nail"), Bolt("any"))


def test_only_what_is_there_can_be_left_out() -> None:
    with pytest.raises(ValueError, match="Item has no cost"):
        Without({Item: ("price", "cost")}, {})


@pytest.mark.parametrize(
    "asked",
    [
        bool, len, list, str, int, float, lambda it: it + 1, lambda it: it.name, lambda it: it[0],
        lambda it: it == 3, lambda it: 3 in it, lambda it: f"{it}", lambda it: it < 3,
        lambda it: it(), lambda it: sum([it]), lambda it: it or 3, lambda it: 3 * it,
        lambda it: -it, lambda it: round(it), lambda it: it != (), lambda it: (*it,),
    ],
)  # fmt: skip
def test_nothing_can_be_asked_of_it(asked: Callable[[object], object]) -> None:
    with pytest.raises((AbsentError, TypeError)):
        asked(ABSENT)


def test_a_key_hangs_on_what_is_left_alone() -> None:
    def key(price: int, thread: float = 6.0) -> str:
        return Contents().hash_of(without(Shelf((Bolt("bolt", price, thread),))))

    assert key(1) == key(2)
    assert key(1) != key(1, 8.0)
