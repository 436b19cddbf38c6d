"""Editions without what cut files, templates and sheets for the machine have nothing to do with.

A key over such an edition stays the same when a text changes, a photo is taken or a price paid;
and as the rest is not there (``keeping/absent.py``), nothing made from it can hang on the rest.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.edition.edition import Edition
from kerfolio.keeping.absent import AbsentError, Without
from kerfolio.keeping.kept import Kept
from kerfolio.model.plan import Plan, Release, Step
from kerfolio.model.stock import BoardStock, CutterStock, HardwareStock, SheetStock, StockItem
from kerfolio.model.workshop import Identity

Whole = TypeVar("Whole")
Made = TypeVar("Made")

_PLACES: dict[type, object] = {Place: NOWHERE}

_LEFT_OUT: dict[type, tuple[str, ...]] = {
    Plan: (
        *(
            "summary",
            "category",
            "tags",
            "licence",
            "access",
            "circle",
            "opens_to_all",
            "show",
            "story",
            "uses",
            "person",
            "friction",
        ),
        *("spans", "swaps", "consumables", "cautions", "photos", "video", "questions"),
        *(
            "for_children",
            "readers_measured",
            "silences",
            "layout_text",
            "other_layouts",
            *("machine", "records"),
        ),
    ),
    Step: ("tools", "minutes", "photo", "text", "by_hand", "caution"),
    Release: ("changed",),
    StockItem: ("source", "origins"),
    SheetStock: ("prices",),
    BoardStock: ("price_per_metre",),
    CutterStock: ("in_use_since", "sharpened", "true_cut", "metres_before"),
    HardwareStock: ("price",),
    Identity: (
        *(
            "tagline",
            "base_url",
            "contact",
            "licence",
            "currency",
            "circles",
            "machine_hour",
            "keys",
            "send",
        ),
        *("relief_extra", "play", "bed", "machine", "carries", "consumables", "welcome", "look"),
    ),
    Edition: (
        *("parts", "hardware", "sheets", "boards", "trials", "pictures", "made", "together"),
        *("drawings", "in_use", "on_top", "times", "copies", "spans", "saw", "board_plans"),
        *("proved", "fitted", "swaps", "sent", "exact", "changes"),
    ),
}

_BESIDES_CUTS: dict[type, tuple[str, ...]] = {
    Identity: ("title", "maker", "paper"),
    Edition: ("variants",),
}


def bare(whole: Whole) -> Whole:
    """Return an edition, or what it is made from, without prices, places and words on use."""
    return Without(_LEFT_OUT, _PLACES).of(whole)


def without_names(bare_one: Edition) -> Edition:
    """Return a bare edition as cut files need it: without the workshop's name, too.

    All else of it are the very objects of the bare one, so that these are hashed once for both.
    """
    return Without(_BESIDES_CUTS, {}).of(bare_one)


def of_bare(kept: Kept, make: Callable[..., Made], *inputs: object) -> Made:
    """Return what a function makes of inputs without prices, places and words on use, as kept.

    What asks for any of these is made of all, and not kept.
    """
    try:
        return kept.value(make, *bare(inputs))
    except AbsentError:
        return of_all(make, *inputs)


def of_all(make: Callable[..., Made], *inputs: object) -> Made:
    """Make what hangs on more than was thought; nothing of it is kept."""
    return make(*inputs)
