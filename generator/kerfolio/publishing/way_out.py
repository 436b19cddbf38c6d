"""How a plan's bundle reaches its readers: to all, sealed for a circle, or by the maker's hand."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from kerfolio.model.access import OPEN
from kerfolio.model.plan import Plan


class Way(StrEnum):
    """The three ways. What is sealed is handed to the maker as well."""

    TO_ALL = "to all"
    SEALED = "sealed"
    BY_HAND = "by hand"


@dataclass(frozen=True, slots=True, kw_only=True)
class Access:
    """What a plan states of who may load it; days in ISO 8601, empty where unsaid."""

    access: str = OPEN
    circle: str = ""
    opens: str = ""

    @property
    def is_for_supporters(self) -> bool:
        """Whether it is not stated to be open."""
        return self.access != OPEN


def access_of(plan: Plan) -> Access:
    """Return what a plan states."""
    return Access(
        access=plan.access,
        circle=plan.circle.name if plan.circle else "",
        opens=plan.opens_to_all.isoformat() if plan.opens_to_all else "",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HandingOut:
    """What decides on the way: the ``day`` that is published for, the ``circles`` with a key."""

    day: str = ""
    circles: tuple[str, ...] = ()

    def way_of(self, access: Access) -> Way:
        """Return the way of a plan's bundle."""
        if not access.is_for_supporters or (access.opens and access.opens <= self.day):
            return Way.TO_ALL
        return Way.SEALED if access.circle in self.circles else Way.BY_HAND
