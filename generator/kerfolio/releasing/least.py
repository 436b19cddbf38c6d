"""The fewest pieces to cut anew, so that all others may stay as they are.

Each changed piece is either cut anew or kept in one of the ways to lay it down. Every joint allows
some of these together. What no joint allows is struck out; of what hangs together the best choice
is searched whole: fewest pieces cut anew, then fewest that meet no newer mate, fewest turned over,
least wood.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.releasing.laying import MOST_WAYS, Laying, Way, is_same_way

_TRIES = 20_000
"""So many choices are tried for pieces that hang together; beyond that all of them are cut anew."""

_ROUNDS = 3
"""So often pieces are laid after mates that were themselves laid after theirs."""

Choice = Way | None
"""How an older piece is laid down; None where a newer one takes its place."""

_Cost = tuple[int, int, int, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What is chosen for each changed piece; ``together`` are kept ones that fit no newer mate.

    Those of one set are cut anew together or not at all.
    """

    chosen: Mapping[str, Choice]
    together: tuple[tuple[str, ...], ...]

    @property
    def anew(self) -> tuple[str, ...]:
        """The pieces to be cut anew."""
        return tuple(label for label, way in self.chosen.items() if way is None)


def fewest(laying: Laying, areas: Mapping[str, float], gone: Sequence[int]) -> Kept:
    """Return the fewest pieces to cut anew; ``areas`` are those of pieces, ``gone`` joints."""
    search = _Search(laying, areas, gone)
    chosen: dict[str, Choice] = {}
    for lot in search.lots():
        chosen |= search.best(lot)
    chosen = {label: chosen[label] for label in laying.changed}
    return Kept(chosen=chosen, together=tuple(search.bound(chosen)))


class _Search:
    def __init__(self, laying: Laying, areas: Mapping[str, float], gone: Sequence[int]) -> None:
        self._laying, self._areas, self._gone = laying, areas, gone
        self._changed = set(laying.changed)
        self._options = {label: self._alone(label) for label in laying.changed}
        for _ in range(_ROUNDS):
            if not self._followed():
                break
        self._tries = 0

    def _mate(self, label: str, joint: int) -> str:
        a, b = self._laying.pieces_of(joint)
        return b if label == a else a

    def _alone(self, label: str) -> list[Choice]:
        """Return the choices that the joints with pieces as they were allow."""
        ways = [way for way in self._laying.ways(label) if self._serves(label, way)]
        ways.sort(key=lambda way: not self._is_free(label, way))
        return [*ways, None]

    def _serves(self, label: str, way: Way) -> bool:
        """Tell whether a piece so laid meets those that are as they were."""
        laid = {label: way}
        return all(
            self._laying.meets(joint, laid)
            for joint in self._laying.joints_of(label)
            if self._mate(label, joint) not in self._changed
        ) and not any(
            self._laying.lost(joint, laid)
            for joint in self._gone
            if not self._changed.issuperset(self._laying.pieces_gone(joint))
        )

    def _followed(self) -> bool:
        """Add ways to lay pieces down that only meet a mate as it is laid; tell whether any did."""
        grown = False
        for label, options in self._options.items():
            for joint in self._laying.joints_of(label):
                for mate in self._options.get(self._mate(label, joint), ()):
                    if mate is None or len(options) > MOST_WAYS:
                        continue
                    for way in self._laying.following(label, joint, mate):
                        known = any(each and is_same_way(each, way) for each in options)
                        if not known and self._serves(label, way):
                            options.insert(len(options) - 1, way)
                            grown = True
        return grown

    def lots(self) -> list[list[str]]:
        """Return the changed pieces in lots that no joint between changed ones connects."""
        waiting, found = list(self._laying.changed), []
        while waiting:
            lot, front = [], [waiting[0]]
            while front:
                label = front.pop()
                if label not in waiting:
                    continue
                waiting.remove(label)
                lot.append(label)
                front += self._neighbours(label)
            found.append(sorted(lot, key=self._laying.changed.index))
        return found

    def _neighbours(self, label: str) -> list[str]:
        mates = [self._mate(label, joint) for joint in self._laying.joints_of(label)]
        for joint in self._gone:
            pair = self._laying.pieces_gone(joint)
            mates += [each for each in pair if label in pair and each != label]
        return [each for each in mates if each in self._changed]

    def best(self, lot: Sequence[str]) -> dict[str, Choice]:
        """Return the best choice for pieces that hang together."""
        order = sorted(lot, key=lambda each: len(self._options[each]))
        self._tries = 0
        found = self._grown({}, order, (0, 0, 0, 0.0), None)
        if found is None or self._tries > _TRIES:
            return dict.fromkeys(lot)
        return found[1]

    def _grown(
        self,
        chosen: dict[str, Choice],
        order: Sequence[str],
        cost: _Cost,
        least: tuple[_Cost, dict[str, Choice]] | None,
    ) -> tuple[_Cost, dict[str, Choice]] | None:
        self._tries += 1
        if self._tries > _TRIES or (least is not None and cost >= least[0]):
            return least
        if len(chosen) == len(order):
            return cost, dict(chosen)
        label = order[len(chosen)]
        for choice in self._options[label]:
            grown = {**chosen, label: choice}
            if self._allowed(label, grown):
                least = self._grown(grown, order, self._dearer(cost, label, choice), least)
        return least

    def _dearer(self, cost: _Cost, label: str, choice: Choice) -> _Cost:
        anew, bound, over, wood = cost
        if choice is None:
            return anew + 1, bound, over, wood + self._areas[label]
        return anew, bound + (not self._is_free(label, choice)), over + choice.over, wood

    def _is_free(self, label: str, choice: Choice) -> bool:
        """Tell whether an older piece so laid meets newer mates all round."""
        laid = {label: choice}
        return all(self._laying.meets(joint, laid) for joint in self._laying.joints_of(label))

    def _allowed(self, label: str, chosen: Mapping[str, Choice]) -> bool:
        """Tell whether the joints of a piece with those chosen before it meet."""
        for joint in self._laying.joints_of(label):
            mate = self._mate(label, joint)
            if mate in chosen and not self._laying.meets(joint, chosen):
                return False
        for joint in self._gone:
            pair = self._laying.pieces_gone(joint)
            settled = label in pair and all(each in chosen for each in pair)
            if settled and self._laying.lost(joint, chosen):
                return False
        return True

    def bound(self, chosen: Mapping[str, Choice]) -> list[tuple[str, ...]]:
        """Return sets of kept pieces that only fit one another as they were."""
        sets: list[set[str]] = []
        kept = [label for label, way in chosen.items() if way is not None]
        for label in kept:
            for joint in self._laying.joints_of(label):
                mate = self._mate(label, joint)
                if mate in kept and not self._laying.meets(joint, {label: chosen[label]}):
                    joined = [each for each in sets if each & {label, mate}]
                    sets = [each for each in sets if not each & {label, mate}]
                    sets.append(set().union({label, mate}, *joined))
        return [tuple(each for each in kept if each in found) for found in sets]
