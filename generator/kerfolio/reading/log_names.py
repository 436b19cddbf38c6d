"""The names that an entry of the log may use."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.names import did_you_mean
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Sent, Trial
from kerfolio.reading.desk import Desk
from kerfolio.reading.trial import names_in


@dataclass(frozen=True, slots=True, kw_only=True)
class LogNames:
    """Plans, sheets and cutters by name; ``nominals`` are what sheets are sold as, mm."""

    plans: tuple[str, ...] = ()
    sheets: tuple[str, ...] = ()
    cutters: tuple[str, ...] = ()
    nominals: dict[str, float] = field(default_factory=dict)

    def check(self, entry: Trial | Sent, desk: Desk) -> None:
        """Complain of a name that is not known, with the nearest that is."""
        known = {"plan": self.plans, "stock": self.sheets, "cutter": self.cutters}
        for kind, named in names_in(entry).items():
            if named is not None and named.name not in known[kind]:
                message = f"unknown {kind} {quoted(named.name)}"
                complaint = Complaint(message, did_you_mean(named.name, known[kind]))
                desk.complain("unknown-name", complaint, named.place)


def log_names(stock: Stock, unread: Iterable[str], plans: Iterable[str]) -> LogNames:
    """Return the names of a stock and of plan folders; ``unread`` are items that are there too."""
    more = tuple(unread)
    return LogNames(
        plans=tuple(plans),
        sheets=(*(each.name for each in stock.sheets), *more),
        cutters=(*(each.name for each in stock.cutters), *more),
        nominals={each.name: each.nominal for each in stock.sheets},
    )
