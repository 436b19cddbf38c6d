"""What a thing is for and where it stands: as the plan states it, else as its name tells."""

from __future__ import annotations

import re

from kerfolio.model.plan import Plan

SIT, STAND, STORE, LEAN, PLANE = (
    "sit in the middle",
    "stand things on",
    "store things",
    "lean on",
    "plane along",
)
USES = (SIT, STAND, STORE, LEAN, PLANE)
"""What a plan may say is done with the thing."""

FREE, WALL, TABLE = "free-standing", "wall", "on a table"
PLACED = (FREE, WALL, TABLE)
"""Where it may stand: by itself on the floor, fixed to a wall, or on a table."""

_SEATS = ("stool", "chair", "seat", "sofa", "settle", "footstool")
_STORAGE = (
    *("shelf", "shelves", "shelving", "bookcase", "bookshelf", "cupboard", "cabinet", "wardrobe"),
    *("dresser", "drawers", "sideboard"),
)


def is_seat(plan: Plan) -> bool:
    """Tell whether somebody sits on it: stated, else told by title and summary."""
    return SIT in plan.uses or (not plan.uses and _names(plan, _SEATS))


def is_storage(plan: Plan) -> bool:
    """Tell whether things are kept in it: stated, else told by title and summary."""
    return STORE in plan.uses or (not plan.uses and _names(plan, _STORAGE))


def is_unsaid(plan: Plan) -> bool:
    """Tell whether nothing says what it is for."""
    return not plan.uses and not is_seat(plan) and not is_storage(plan)


def _names(plan: Plan, words: tuple[str, ...]) -> bool:
    found = re.findall(r"[a-z]+", f"{plan.title} {plan.summary}".lower())
    return any(word in (each, each.removesuffix("s")) for each in found for word in words)
