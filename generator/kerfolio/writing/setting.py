"""Setting running text into lines."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from kerfolio.basis.figured import Figured, parts_of, together, words_of
from kerfolio.writing.page import Run
from kerfolio.writing.typeface import Style, width_of

_ATOM = re.compile(r"[ \n\t]+|[^ \n\t]+")


_UNIT = re.compile(r"(?<=\d) (?=(?:mm|in|kg|min|%|\d+/\d+)(?!\w))")
_GLUED = "\N{NO-BREAK SPACE}"
"""A number is not parted from its unit."""

_LAST_LINE = 0.25
"""Share of the measure that a last line should fill at least."""


@dataclass(frozen=True, slots=True)
class _Word:
    """What may not be broken: runs without a blank, and whether a blank follows."""

    runs: tuple[Run, ...]
    width: float
    blank: Run | None


def width(runs: Iterable[Run]) -> float:
    """Return the width of the runs set on one line, in mm."""
    return math.fsum(width_of(run.text, run.style) for run in runs)


def lines(runs: Sequence[Run], measure: float) -> tuple[tuple[Run, ...], ...]:
    """Break runs into lines of at most ``measure`` mm, ragged, as even as the words allow.

    A word longer than the measure (an address) is broken between letters. Figures stay figures.
    """
    return _lines(tuple(runs), measure, tuple(parts_of(run.text) for run in runs))


@lru_cache(maxsize=1024)
def _lines(runs: tuple[Run, ...], measure: float, _: object) -> tuple[tuple[Run, ...], ...]:
    """Break lines once for the same words and figures; texts of other figures are as equal."""
    words = [part for word in _words(runs) for part in _fitting(word, measure)]
    return tuple(_joined(words[a:b]) for a, b in _even(words, measure))


def shortened(text: str, style: Style, measure: float) -> str:
    """Return the text, or as much of it as fits the measure with an ellipsis after it."""
    if width_of(text, style) <= measure:
        return text
    while text and width_of(f"{text.rstrip()}…", style) > measure:
        text = text[:-1]
    return f"{text.rstrip()}…"


def on_one_line(title: str, rest: str, style: Style, measure: float) -> str:
    """Return a title and what follows it on one line; the title is shortened first, if it must be.

    It keeps a quarter of the measure.
    """
    room = max(measure - width_of(rest, style), measure / 4)
    return shortened(together(shortened(title, style, room), rest), style, measure)


def _words(runs: Sequence[Run]) -> list[_Word]:
    words: list[_Word] = []
    open_runs: list[Run] = []
    for run in runs:
        for atom in _atoms(run.text):
            if not atom.isspace():
                open_runs.append(replace(run, text=atom))
            elif open_runs:
                words.append(_word(open_runs, replace(run, text=" ")))
                open_runs = []
    return [*words, _word(open_runs, None)] if open_runs else words


def _atoms(text: str) -> Iterator[str]:
    """Yield words, and the blanks between them."""
    if not isinstance(text, Figured):
        yield from _ATOM.findall(_UNIT.sub(_GLUED, text))
        return
    parts = (_UNIT.sub(_GLUED, each) if isinstance(each, str) else each for each in text.parts)
    for index, word in enumerate(words_of(Figured(*parts))):
        yield from (" ", word) if index else (word,)


def _word(runs: Sequence[Run], blank: Run | None) -> _Word:
    return _Word(tuple(runs), width(runs), blank)


def _fitting(word: _Word, measure: float) -> list[_Word]:
    if word.width <= measure:
        return [word]
    parts: list[_Word] = []
    open_runs: list[Run] = []
    for run in word.runs:
        for letter in run.text:
            if open_runs and width([*open_runs, replace(run, text=letter)]) > measure:
                parts.append(_word(open_runs, None))
                open_runs = []
            if open_runs and open_runs[-1].style == run.style:
                open_runs[-1] = replace(run, text=open_runs[-1].text + letter)
            else:
                open_runs.append(replace(run, text=letter))
    return [*parts, _word(open_runs, word.blank)]


def _even(words: Sequence[_Word], measure: float) -> list[tuple[int, int]]:
    """Return the lines as ranges of words, in the fewest lines and with the least raggedness.

    Least sum of squares over whole paragraphs (after Knuth and Plass, Breaking Paragraphs into
    Lines, 1981, without hyphens or stretching); a last line of a word or two costs too.
    """
    count = len(words)
    best: list[tuple[int, float, int]] = [(0, 0.0, count)] * (count + 1)  # lines, cost, end
    for start in range(count - 1, -1, -1):
        options = []
        for end, used in _line_ends(words, start, measure):
            lines_after, cost_after, _ = best[end]
            cost = _raggedness(used / measure, last=end == count, alone=start == 0)
            options.append((lines_after + 1, cost_after + cost, end))
        best[start] = min(options)
    ranges, start = [], 0
    while start < count:
        ranges.append((start, best[start][2]))
        start = best[start][2]
    return ranges


def _line_ends(words: Sequence[_Word], start: int, measure: float) -> Iterator[tuple[int, float]]:
    """Yield where a line from ``start`` may end and how wide it is then; one word always fits."""
    used = 0.0
    for end in range(start + 1, len(words) + 1):
        used += words[end - 1].width
        if end > start + 1 and used > measure + 1e-6:
            return
        yield end, used
        blank = words[end - 1].blank
        used += width((blank,)) if blank else 0.0


def _raggedness(filled: float, *, last: bool, alone: bool) -> float:
    if last:
        return 0.0 if alone else max(0.0, _LAST_LINE - filled) * 4
    return (1 - filled) ** 2


def _joined(words: Sequence[_Word]) -> tuple[Run, ...]:
    """Join a line's words into as few runs as its styles and links allow."""
    atoms = [run for word in words[:-1] for run in (*word.runs, *filter(None, (word.blank,)))]
    joined: list[Run] = []
    for run in (*atoms, *words[-1].runs):
        if joined and (joined[-1].style, joined[-1].link) == (run.style, run.link):
            joined[-1] = replace(run, text=together(joined[-1].text, run.text))
        else:
            joined.append(run)
    return tuple(joined)
