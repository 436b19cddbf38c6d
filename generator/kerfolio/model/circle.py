"""Those who get what is not for everybody, as the maker tells of them."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """Supporters, all in the maker's words: ``who`` they are, what each ``gives`` and how often,
    what each ``gets``, how one comes to ``join`` and the address where, each empty where unsaid.

    Plans and keys go by its ``name``, which readers never see; one in a list has none.
    """

    who: str
    name: str = ""
    gives: str = ""
    gets: str = ""
    join: str = ""
    link: str = ""
    place: Place = NOWHERE
