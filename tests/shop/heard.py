"""What a figure rests on as an English reader hears it."""

from __future__ import annotations

from typing import Any

from kerfolio.basis.reader import METRIC
from kerfolio.shop.assumption import Assumption


def heard(result: Any) -> list[Assumption]:
    """Return the assumptions of a result in words."""
    return [each.told(METRIC) for each in result.assumptions]
