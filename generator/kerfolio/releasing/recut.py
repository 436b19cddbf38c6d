"""What the newest release cuts as an older one did: whether what was cut then still tells of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.model.release_record import ReleaseRecord
from kerfolio.releasing.between import at, common_points
from kerfolio.releasing.matching import Matched, matched
from kerfolio.shop.outdated import CutSince


def cut_since(records: Sequence[ReleaseRecord]) -> tuple[CutSince, ...]:
    """Return of each record, the newest with them, what the newest cuts as it did."""
    return tuple(_since(each, records[-1]) for each in records)


def _since(old: ReleaseRecord, new: ReleaseRecord) -> CutSince:
    points = tuple((at(old, each), at(new, each)) for each in common_points(old, new))
    known = matched(old, new, points)
    now = {was: name for name, was in known.parts.items()}
    same = {was for was, name in now.items() if points and _as_it_was(old, new, known, name)}
    return CutSince(
        version=old.version,
        by=new.version,
        parts=tuple(each.name for each in old.parts if each.name in same),
        sheets=tuple(_sheets(old, new, now, same)),
    )


def _as_it_was(old: ReleaseRecord, new: ReleaseRecord, known: Matched, name: str) -> bool:
    """Tell whether a part has its shape, its reliefs and engravings and its sheet still."""
    stocks = {each.name: each.stock for each in new.sheets}
    before = {each.name: each.stock for each in old.sheets}
    was = old.part(known.parts[name])
    return (
        known.is_same(name)
        and not known.cut_otherwise(old, new, name)
        and stocks[new.part(name).sheet] == before[was.sheet]
    )


def _sheets(
    old: ReleaseRecord, new: ReleaseRecord, now: dict[str, str], same: set[str]
) -> Iterator[str]:
    """Yield the names in the stock of sheets of which the same pieces are cut as before."""
    for stock in dict.fromkeys(each.stock for each in old.sheets):
        before, after = _parts_of(old, stock), _parts_of(new, stock)
        kept = before.keys() <= same and {now[each] for each in before} == after.keys()
        if kept and all(after[now[each]] == count for each, count in before.items()):
            yield stock


def _parts_of(record: ReleaseRecord, stock: str) -> dict[str, int]:
    """Return the parts that are cut from sheets of a stock, with how many pieces."""
    sheets = {each.name for each in record.sheets if each.stock == stock}
    return {each.name: len(each.pieces) for each in record.parts if each.sheet in sheets}
