"""Settings cards: a page for each cutter on a sheet, to hang beside the machine."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.saying import say
from kerfolio.model.stock import PaperStock
from kerfolio.model.workshop import Identity
from kerfolio.paper.band import Bands, kept, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.one_page import heading, height_of, one_page, setup_grid
from kerfolio.paper.section import foot
from kerfolio.paper.setup_blocks import SPACE, cautions, facts, hung, lines
from kerfolio.paper.setup_type import SCALES, STOCK, STOCK_SOFT, SetupType
from kerfolio.trials.best import Answer
from kerfolio.trials.told import (
    Pairs,
    elsewhere_told,
    failure_told,
    first_pass_told,
    head_told,
    in_one_line,
    left_out_told,
    newest_told,
    next_told,
    operation_told,
    settings_told,
    standing_told,
    tally_told,
)
from kerfolio.writing.page import About
from kerfolio.writing.pdf import pdf_bytes

_BESIDE = 3
"""Facts in a row."""
_WORDS = 0.8
"""How large words are beside facts, which are read from where the machine is run."""


def settings_card(answers: Sequence[Answer], identity: Identity, paper: PaperStock) -> bytes:
    """Return the cards of a sheet as a PDF; each answer has cuts behind it.

    Raises ValueError for none.
    """
    reader, grid = identity.reader, setup_grid(paper)
    sheet = answers[0].subject.sheet.title
    title = say(reader, "logbest-card-title", sheet=sheet)
    at = foot(identity.title, f" · {title}", grid, reader)
    pages = [
        one_page(*_bands(each, identity, grid), grid, at(number, len(answers)))
        for number, each in enumerate(answers, 1)
    ]
    newest = max(cut.trial.date for each in answers for cut in each.cuts)
    about = About(
        title=title,
        author=identity.maker,
        subject=title,
        language=identity.language,
        date=newest,
    )
    return pdf_bytes(about, pages)


def _bands(found: Answer, identity: Identity, grid: Grid) -> tuple[Bands, Bands]:
    """Return what stands on a card, in the largest type that it has room for, and its foot."""
    reader = identity.reader
    kicker = (identity.title, f": {say(reader, 'logbest-card')}")
    operation = operation_told(found.subject, reader)
    head = (
        *heading(kicker, operation, found.subject.cutter.title, "", grid),
        *spaced(lines((found.subject.sheet.title,), STOCK, grid.width), 1.0),
        *lines((head_told(found.best, reader),), STOCK_SOFT, grid.width),
    )
    tail = cautions(grid, reader)
    room = grid.height - height_of(head) - height_of(tail) - SPACE
    made = (_told(found, identity, SetupType(scale), grid) for scale in SCALES)
    body: Bands = ()
    for body in made:
        if height_of(body) <= room:
            break
    return (*head, *body), tail


def _told(found: Answer, identity: Identity, style: SetupType, grid: Grid) -> Bands:
    reader, best, after = identity.reader, found.best, found.next
    settings = best.settings if best else after.settings
    rows = _in_rows(settings_told(settings, reader, twice=True)) if settings else ()
    behind = [standing_told(best, reader), left_out_told(found, reader)]
    if best:
        newest = f"{say(reader, 'logbest-newest')}: {newest_told(best, reader)}."
        behind[1:1] = [f"{tally_told(best.tally, reader)}. {newest}"]
    failed = [failure_told(each, reader) for each in found.failures]
    changed = after.settings if after.settings and after.settings != settings else None
    line = in_one_line(changed, reader).replace(" ·", "\N{NO-BREAK SPACE}·") if changed else ""
    blocks = (
        ("behind", behind),
        ("failed", failed or [say(reader, "logbest-none-failed")]),
        ("tip", first_pass_told(found, reader)),
        ("next", [next_told(after, reader), line]),
        ("elsewhere", [elsewhere_told(each, reader) for each in found.elsewhere]),
    )
    bands: Bands = tuple(band for row in rows for band in facts(row, style, grid))
    words = SetupType(style.scale * _WORDS).words
    for name, texts in blocks:
        told = lines(filter(None, texts), words, grid.main)
        bands += hung(say(reader, f"logbest-head-{name}"), kept(told), grid, words)
    return bands


def _in_rows(pairs: Pairs) -> tuple[Pairs, ...]:
    """Return facts in rows, the last one filled up so that columns stand below each other."""
    starts = range(0, len(pairs), _BESIDE)
    rows = [pairs[start : start + _BESIDE] for start in starts]
    return tuple((*row, *[("", "")] * (_BESIDE - len(row))) for row in rows)
