"""What parts and pieces are called: by the words on them or beside them, else by layer or block."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import hypot

from kerfolio.adopting.alike import Draft
from kerfolio.adopting.sets import PartPlan
from kerfolio.basis.names import NAME, name_of
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import Box, bounds
from kerfolio.model.outline import DrawnText

_BESIDE = 30.0
"""A word belongs to the nearest piece within so many mm."""

_LONGEST = 28
"""Letters of a name at most; what is longer is a note."""

_PLAIN = re.compile(
    r"(path|rect|rectangle|polygon|polyline|lwpolyline|line|spline|arc|circle|ellipse|use|svg|g|group"
    r"|layer|ebene|block|insert|svgid|shape|curve|element|object|compound|defpoints"
    r"|cut|cuts|cutting|outside|inside|outer|inner|outline|outlines|profile|contour|kontur|through"
    r"|slots?|holes?|pockets?|tabs?|parts?|teile?|engrav\w*|drill\w*)?(?:[-_ .]?\d[-_.0-9a-f]*)?",
    re.IGNORECASE,
)
"""Names that drawing programs give by themselves, or that say how something is cut."""

_OFF = r"(?:x|×|off|pcs|pieces|stk|stück)"
_COUNT = re.compile(
    rf"^\s*\d{{1,3}}\s*{_OFF}\s+|[\s(,;-]*(?:{_OFF}|qty\.?)?\s*\d{{1,3}}\s*{_OFF}?[\s).,;]*$",
    re.IGNORECASE,
)
"""How many are cut, or which of them it is: before a name, or after it."""

_TIMES = re.compile(
    rf"(?:^|[\s(])(?:(\d{{1,3}})\s*{_OFF}|(?:x|×|qty\.?)\s*(\d{{1,3}}))(?:[\s).,;]|$)",
    re.IGNORECASE,
)
"""How many are cut of what is drawn once: ``x4``, ``4 off``, ``qty 2``."""

_ON_LINE = re.compile(r" on (?:line|layer) .*$")
_COUNTED = re.compile(r"part-\d+")
"""What parts are called that nothing names."""

_LIKE, _PIECE = 0.2, 20.0
"""A part is the same in a newer drawing whose sides differ by so large a share of them; a piece
more or less counts as so many mm."""

_COPY = re.compile(r"\.\d+$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Called:
    """What a part is called, and its pieces (empty where they are only counted)."""

    name: str
    pieces: tuple[str, ...] = ()


def called(parts: Sequence[Draft], loose: Sequence[DrawnText]) -> tuple[Called, ...]:
    """Return the name of each part and of its pieces, each part's its own.

    ``loose`` are words that lie in no piece.
    """
    beside = _beside(parts, loose)
    shared = Counter(name for part in parts for name in {*_own_names(part)})
    found: list[Called] = []
    for number, part in enumerate(parts):
        words = [
            [*_words(cutting.texts), *_words(beside.get((number, index), ()))]
            for index, cutting in enumerate(part.cuttings)
        ]
        made = _by_words(words)
        if made is None:
            own = [name for name in _own_names(part) if shared[name] == 1]
            made = Called(name=own[0]) if own else Called(name=f"part-{number + 1}")
        found.append(made)
    return tuple(_all_different(found))


def with_counts(parts: Sequence[Draft], loose: Sequence[DrawnText]) -> tuple[Draft, ...]:
    """Return parts with as many pieces as words at them say, where they are drawn once."""
    beside = _beside(parts, loose)
    made = []
    for number, part in enumerate(parts):
        texts = (*part.cuttings[0].texts, *beside.get((number, 0), ()))
        count = next((each for each in map(_times, texts) if each), 1)
        if len(part.cuttings) == 1 and count > 1:
            cuttings, placings = part.cuttings * count, part.placings * count
            part = replace(part, cuttings=cuttings, placings=placings)
        made.append(part)
    return tuple(made)


def _times(text: DrawnText) -> int:
    found = _TIMES.search(text.text)
    return int(found[1] or found[2]) if found else 0


def _all_different(found: Iterable[Called]) -> Iterator[Called]:
    taken: set[str] = set()
    for each in found:
        name, number = each.name, 1
        while name in taken:
            number += 1
            name = f"{each.name}-{number}"
        taken.add(name)
        yield Called(name=name, pieces=each.pieces)


def _by_words(words: Sequence[Sequence[str]]) -> Called | None:
    """Return a part's name by what stands on its pieces: what they share, and what differs."""
    firsts = [each[0] for each in words if each]
    if not firsts:
        return None
    if len(firsts) < len(words) or len(set(firsts)) < len(firsts):
        return Called(name=Counter(firsts).most_common(1)[0][0])
    if len(firsts) == 1:
        return Called(name=firsts[0])
    split = [each.split("-") for each in firsts]
    common = 0
    while all(len(each) > common + 1 for each in split) and len({e[common] for e in split}) == 1:
        common += 1
    if common:
        rest = ["-".join(each[common:]) for each in split]
        pieces = () if all(each.isdigit() for each in rest) else tuple(rest)
        return Called(name="-".join(split[0][:common]), pieces=pieces if _named(pieces) else ())
    if len({each[-1] for each in split}) == 1 and all(len(each) == 2 for each in split):
        return Called(name=split[0][-1], pieces=tuple(each[0] for each in split))
    return Called(name=firsts[0])


def _named(names: Sequence[str]) -> bool:
    return all(NAME.fullmatch(each) for each in names)


def _words(texts: Iterable[DrawnText]) -> list[str]:
    """Return the names that texts give, without the counts beside them."""
    found = []
    for each in texts:
        text = _COUNT.sub("", each.text).strip(" ,;:()") or each.text
        name = name_of(text)
        if NAME.fullmatch(name) and len(name) <= _LONGEST and not _PLAIN.fullmatch(name):
            found.append(name)
    return found


def _own_names(part: Draft) -> list[str]:
    """Return what ids, groups, layers and blocks call a part, the nearest to it first."""
    found = []
    for cutting in part.cuttings:
        for raw in cutting.outline.names:
            plain = _COPY.sub("", _ON_LINE.sub("", raw))
            name = name_of(plain)
            if NAME.fullmatch(name) and len(name) <= _LONGEST and not _PLAIN.fullmatch(name):
                found.append(name)
    return list(dict.fromkeys(found))


def _beside(
    parts: Sequence[Draft], loose: Sequence[DrawnText]
) -> dict[tuple[int, int], list[DrawnText]]:
    """Return which words stand beside which piece: each by the nearest."""
    boxes = {
        (number, index): bounds(cutting.outline.contour)
        for number, part in enumerate(parts)
        for index, cutting in enumerate(part.cuttings)
    }
    found: dict[tuple[int, int], list[DrawnText]] = {}
    for text in loose:
        away = {key: _distance(text.at, box) for key, box in boxes.items()}
        key = min(away, key=lambda each: (away[each], each), default=None)
        if key is not None and away[key] <= _BESIDE:
            found.setdefault(key, []).append(text)
    return found


def _distance(spot: Point, box: Box) -> float:
    dx = max(box.x0 - spot[0], 0.0, spot[0] - box.x1)
    dy = max(box.y0 - spot[1], 0.0, spot[1] - box.y1)
    return hypot(dx, dy)


def steady(
    parts: Sequence[PartPlan], known: Mapping[str, tuple[float, float, int]]
) -> tuple[PartPlan, ...]:
    """Return parts under the names they had: those that nothing names by their sizes and counts.

    ``known`` tells width, height (mm) and the number of pieces of each part by its name.
    """
    taken = {part.name for part in parts if not _COUNTED.fullmatch(part.name)}
    free = {name: size for name, size in known.items() if name not in taken}
    made = []
    for part in parts:
        if _COUNTED.fullmatch(part.name) and known:
            width, height = part.made.draft.size
            off = {
                name: abs(w - width) + abs(h - height) + _PIECE * abs(count - len(part.numbers))
                for name, (w, h, count) in free.items()
            }
            name = min(off, key=lambda each: (off[each], each), default="")
            if name and off[name] <= _LIKE * (width + height):
                del free[name]
                part = _called(part, name)
        made.append(part)
    return tuple(made)


def _called(part: PartPlan, name: str) -> PartPlan:
    labels = tuple(f"{name}{label[len(part.name) :]}" for label in part.labels)
    return replace(part, name=name, labels=labels)
