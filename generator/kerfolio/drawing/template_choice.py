"""What is chosen once for a part's template: it is drawn alike at every thickness of the range."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.basis.cutting_lengths import drill_in
from kerfolio.basis.figured import joined
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.extent import extent, padded, union
from kerfolio.drawing.feature_kinds import FEATURE_WORDS
from kerfolio.drawing.feature_note import Notes, listed_words, place_notes
from kerfolio.drawing.ground import Ground
from kerfolio.drawing.lettering import Box, in_rows, rows_of
from kerfolio.drawing.part_badge import badge
from kerfolio.drawing.template_shape import BAND, WORDS, around, bored, centres, template_shape
from kerfolio.drawing.vocabulary import Item, Label
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title, sheet_title

_LIST = 3.5
_LEAST_LIST_WIDTH = 120.0


@dataclass(frozen=True, slots=True, kw_only=True)
class TemplateChoice:
    """Where words stand on a part's template, how lines are broken, and the paper it takes, mm.

    ``badge`` says what never changes. The list below the shape begins at ``corner``; its lines
    have so many words on each of their ``rows``.
    """

    badge: tuple[Item, ...]
    notes: Notes
    corner: Point
    rows: tuple[tuple[int, ...], ...]
    box: Box

    def words(self, part: SettledPart, drill: float, reader: Reader) -> tuple[Item, ...]:
        """Return all words for the part as it is at one thickness."""
        pairs = zip(self.notes.each, part.features, strict=True)
        beside = (label for note, each in pairs for label in note.at(each, reader))
        lines = _lines(self.notes, part, drill, reader)
        return (*self.badge, *beside, *_listed(lines, self.rows, self.corner))


def template_choices(
    corners: Sequence[SettledPlan], reader: Reader, seams: Mapping[str, Sequence[Box]] | None = None
) -> dict[str, TemplateChoice]:
    """Return the choices for every part by its name; ``corners`` are a plan at the ends of its
    range, the one it is drawn for in front. Words keep clear of ``seams``, boxes in the part's
    frame.
    """
    clear = seams or {}
    return {
        part.name: _choice(corners, part, reader, clear.get(part.name, ()))
        for part in corners[0].parts
    }


def _choice(
    corners: Sequence[SettledPlan], drawn: SettledPart, reader: Reader, seams: Sequence[Box]
) -> TemplateChoice:
    plans = [each for each in corners if _alike(each.part(drawn.name), drawn)]
    parts = [each.part(drawn.name) for each in plans]
    drill = max(each.sheet(drawn.sheet).cutter.diameter for each in plans)
    crosses = dict.fromkeys(around(at) for each in parts for at in centres(each))
    bores = dict.fromkeys(box for each in parts for box in bored(each))
    ground = Ground.of(parts, (*crosses, *bores), seams)
    told = _told(corners[0], drawn, reader)
    words = badge(drawn, told, ground, WORDS.name, reader)
    notes = place_notes([each.features for each in parts], ground, drill, WORDS.name, reader)
    boxes = [bounds(each.plain.outer) for each in parts]
    reach = [extent((*template_shape(each, drill), *words, *_placed(notes))) for each in parts]
    reach += ground.taken
    around_all = union(reach)
    room = max(*(box.width for box in boxes), _LEAST_LIST_WIDTH)
    corner = (min(box.x0 for box in boxes), around_all[1] - 2.0)
    lines = _lines(notes, drawn, drill, reader)
    rows = tuple(rows_of(line, _LIST, room) for line in lines)
    listed = _listed(lines, rows, corner)
    whole = union((around_all, extent(listed))) if listed else around_all
    return TemplateChoice(
        badge=words, notes=notes, corner=corner, rows=rows, box=padded(whole, BAND)
    )


def _told(settled: SettledPlan, part: SettledPart, reader: Reader) -> tuple[str, ...]:
    """Return what a part is called and how often it is cut; of several sheets from which, too."""
    sheet = (sheet_title(settled, part.sheet),) if len(settled.sheets) > 1 else ()
    cut = say(reader, "tiles-cut", count=len(part.pieces))
    return (f"{part_title(settled.plan, part.name, reader)}, {cut}", *sheet)


def _alike(part: SettledPart, drawn: SettledPart) -> bool:
    """Tell whether a part has the same features there, so that their notes can be told apart."""
    names = ([each.name for each in one.features] for one in (part, drawn))
    return next(names) == next(names)


def _placed(notes: Notes) -> Iterable[Label]:
    return (label for note in notes.each if not note.rows for label in note.labels)


def _lines(notes: Notes, part: SettledPart, drill: float, reader: Reader) -> list[str]:
    """Return the lines below the shape: how it is cut, and notes that found no room."""
    drilled = say(reader, "template-drill", drill=drill_in(drill, reader))
    lines = [drilled if part.drill_centres else say(reader, "template-saw")]
    for key, index in notes.listed:
        feature = part.features[index]
        said = listed_words(feature, FEATURE_WORDS[feature.kind](feature, reader))
        lines.append(joined(": ", (key, said)) if key else said)
    return lines


def _listed(
    lines: Sequence[str], rows: Sequence[Sequence[int]], corner: Point
) -> tuple[Label, ...]:
    x, y = corner
    return tuple(
        Label(text=row, at=(x, y - 1.35 * _LIST * number), height=_LIST, layer=WORDS.name)
        for number, row in enumerate(in_rows(lines, rows), 1)
    )
