"""Lists, layout, steps and ``plan.json``: whether they tell the same pieces and figures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from kerfolio.agreement.figure_faults import figure_faults
from kerfolio.agreement.written import Written, list_rows
from kerfolio.basis.finding import Finding

_PARTS = "lists/parts.csv"


def pieces(written: Written) -> Iterator[Finding]:
    """Parts list = plan = layout = steps, piece by piece."""
    facts = written.facts
    rows = list_rows(written.files, _PARTS)
    listed = Counter(label for row in rows for label in row["pieces"].split())
    for variant in facts["variants"]:
        stated = Counter(piece["label"] for part in variant["parts"] for piece in part["pieces"])
        if stated != listed:
            fit = variant["fit"]
            yield written.differ(f"`{_PARTS}`", f"the parts for {fit}", _odd(listed, stated))
    laid = Counter(each["piece"] for sheet in facts["layout"] for each in sheet["pieces"])
    if laid != listed:
        yield written.differ(f"`{_PARTS}`", "the sheet layouts", _odd(listed, laid))
    added = Counter(label for step in facts["steps"] for label in step["add"])
    if facts["steps"] and added != listed:
        yield written.differ(f"`{_PARTS}`", "the steps", _odd(listed, added))


def _odd(one: Counter[str], other: Counter[str]) -> str:
    labels = sorted(label for label in one | other if one[label] != other[label])
    return "piece " + ", ".join(f"`{label}`" for label in labels)


def hardware(written: Written) -> Iterator[Finding]:
    """The hardware list is the sum over the steps."""
    rows = list_rows(written.files, "lists/hardware.csv")
    listed = {row["item"]: int(row["count"]) for row in rows}
    summed: Counter[str] = Counter()
    for step in written.facts["steps"]:
        summed.update(step["hardware"])
    if written.facts["steps"] and listed != dict(summed):
        yield written.differ("`lists/hardware.csv`", "the steps", "the counts differ")


def figures(written: Written) -> Iterator[Finding]:
    """Masses, times and costs of the lists are those of ``plan.json``."""
    for one, other, how in figure_faults(written.files, written.facts):
        yield written.differ(one, other, how)
