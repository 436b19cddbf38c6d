"""What readers know parts, pieces, sheets and boards by: a stated title, else what a name says.

Names are for plan files; no page, booklet or file that people read shows one.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from kerfolio.basis.names import headed, spoken
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.model.plan import Assembly, Plan
from kerfolio.settling.sawn_joint import TEST_JOINT
from kerfolio.settling.settled import SettledPlan


def part_title(plan: Plan, name: str, reader: Reader = METRIC) -> str:
    """Return what a part is called: its title, else what its name says (``Back rest``).

    What we call ourselves, a test joint, is called so in the reader's language.
    """
    stated = {each.name: each.title for each in plan.parts}
    if name not in stated and name.startswith(TEST_JOINT):
        return reader.says("titles-test-joint")  # its mark tells it from those of other sheets
    return stated.get(name) or headed(name)


def feature_title(name: str) -> str:
    """Return what a feature is called: ``Rear tabs``, of a row of them ``Rear tabs 2``."""
    return headed(name).replace(".", " ")


def piece_title(plan: Plan, label: str, reader: Reader = METRIC) -> str:
    """Return what a piece is called, by its label.

    A word goes before its part and a number or a letter after it: ``side.left`` is a ``Left side``,
    ``divider.2`` is ``Divider 2``. A part of one piece has the part's title. Of a thing made
    several times the number stands last: ``2/side.left`` is the ``Left side of stand 2``.
    """
    copy, _, own = label.rpartition("/")
    if copy:
        piece = piece_title(plan, own, reader)
        thing = next((called(each) for each in plan.assemblies if each.owns(own)), None)
        if thing is None:
            return reader.says("titles-of-number", piece=piece, copy=copy)
        return reader.says("titles-of-copy", piece=piece, thing=within(thing, reader), copy=copy)
    part, _, piece = label.partition(".")
    title = part_title(plan, part, reader)
    if not piece:
        return title
    if piece.isdigit() or len(piece) == 1:
        return f"{title} {piece.upper()}"
    return headed(reader.says("titles-piece", piece=piece, part=within(title, reader)))


def pieces_called(plan: Plan, reader: Reader = METRIC) -> Callable[[str], str]:
    """Return what tells a plan's pieces within a sentence, by their labels."""
    return lambda label: within(piece_title(plan, label, reader), reader)


def sheet_title(settled: SettledPlan, name: str) -> str:
    """Return what a sheet is called: its own title, else its stock's.

    The name's word stands behind that where two sheets of a plan would be called the same:
    ``Birch plywood 18 mm, sides``. What the plan has no sheet for is called by its name.
    """
    titles = {each.name: _stocked(settled, each.name) for each in settled.sheets}
    if name not in titles:
        return headed(name)
    alike = sum(title == titles[name] for title in titles.values())
    return titles[name] if alike == 1 else f"{titles[name]}, {spoken(name)}"


def _stocked(settled: SettledPlan, name: str) -> str:
    stated = next((each.title for each in settled.plan.sheets if each.name == name), "")
    return stated or settled.sheet(name).stock.title


def board_title(label: str) -> str:
    """Return what a board that is cut to length is called: ``Batten``, ``Foot 2``."""
    name, _, number = label.partition(".")
    return " ".join(filter(None, (headed(name), number)))


def called(assembly: Assembly) -> str:
    """Return what readers know a thing of a set by."""
    return assembly.title or headed(assembly.name)


def plainly(text: str, plan: Plan, reader: Reader = METRIC) -> str:
    """Return a message for readers, who have no names to look up in a plan's file.

    Names stand in it in back quotes: of parts and pieces, and of features (``rail.left-tabs``).
    """
    return _QUOTED.sub(lambda match: _said(match[1], plan, reader), text)


_QUOTED = re.compile(r"`([^`]*)`")


def _said(name: str, plan: Plan, reader: Reader) -> str:
    part, _, rest = name.partition(".")
    stated = next((each for each in plan.parts if each.name == part), None)
    if stated is None:
        return name
    piece, _, feature = rest.partition(".")
    known = name in stated.labels or f"{part}.{piece}" in stated.labels
    whose = piece_title(plan, f"{part}.{piece}" if known and rest else part, reader)
    whose = within(whose, reader)
    what = spoken(feature if known else rest).replace(".", " ")
    return reader.says("titles-feature-of", feature=what, part=whose) if what else whose


_CAPITALS = ("de",)
"""Languages whose nouns begin with a capital wherever they stand."""


def within(title: str, reader: Reader = METRIC) -> str:
    """Return a title as it stands within a sentence: ``rail``; ``MDF`` and ``T-nut`` stay."""
    if reader.locale.language in _CAPITALS:
        return title
    lower = len(title) > 1 and title[1].islower()
    return f"{title[0].lower()}{title[1:]}" if lower else title
