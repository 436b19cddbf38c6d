"""Tabs and notches of an outline, told from what only stands between them."""

from __future__ import annotations

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.stretch import Stretch, stretches


def prongs(outline: Contour) -> list[Stretch]:
    """Return the notches and tabs of an outline, without what stands between two tabs.

    Between tabs at both ends of a board all that lies above them looks like a wide tab whose walls
    are the shoulders of those: where each has the other's shoulders, the narrower are tabs.
    """
    found = stretches(outline)
    tabs = [each for each in found if each.tab]

    def stands_between(tab: Stretch) -> bool:
        narrower = [each for each in tabs if each.width < tab.width]
        return all(
            any(
                wall in other.shoulders and not {*other.walls}.isdisjoint(tab.shoulders)
                for other in narrower
            )
            for wall in tab.walls
        )

    return [each for each in found if not (each.tab and stands_between(each))]
