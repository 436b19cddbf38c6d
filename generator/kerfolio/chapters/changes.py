"""What changed between two releases: which pieces to cut anew, and what became of the rest."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence

from kerfolio.basis.names import headed
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import day_text, listed, say
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Figure, Figures, Folded, Listing, Paragraph, Size
from kerfolio.document.picture import Art, Room
from kerfolio.drawing.change_view import change_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Plan, Release
from kerfolio.releasing.change import PartChange, ReleaseChange, State, StepsChange, Weight
from kerfolio.settling.titles import feature_title, part_title, piece_title, within

_MOST_MOVED = 6
"""So many features are named that moved; more are drawn, and counted."""


def serving(change: ReleaseChange, plan: Plan, reader: Reader) -> str:
    """Return which older pieces still serve, and which are to be cut anew, in a few sentences."""
    return " ".join(_serving(change, plan, reader))


def _serving(change: ReleaseChange, plan: Plan, reader: Reader) -> Iterator[str]:
    def of(labels: Sequence[str]) -> str:
        return pieces_told(labels, change, plan, reader)

    if change.apart:
        yield say(reader, "changes-apart", old=change.old)
    if change.all_anew:
        yield say(reader, "changes-all-anew")
    elif change.anew:
        yield say(reader, "changes-anew", pieces=of(change.anew))
        yield say(reader, "changes-fit", pieces=of(change.kept))
    else:
        yield say(reader, "changes-all-fit")
    if change.added:
        yield say(reader, "changes-added", pieces=of(change.added))
    if change.over:
        yield say(reader, "changes-over", pieces=of(change.over))
    for each in change.together:
        yield say(reader, "changes-together", pieces=of(each))


def pieces_told(labels: Collection[str], change: ReleaseChange, plan: Plan, reader: Reader) -> str:
    """Return pieces in words; a part of which all pieces are among them is named once."""
    names = []
    for part in dict.fromkeys(each.partition(".")[0] for each in labels):
        own = [each for each in labels if each.partition(".")[0] == part]
        every = _count_of(part, change)
        if len(own) == every:
            names.append(within(part_title(plan, part, reader), reader))
        else:
            names += [within(piece_title(plan, each, reader), reader) for each in own]
    return listed(reader, names)


def _count_of(part: str, change: ReleaseChange) -> int:
    known = (*change.anew, *change.kept, *change.added)
    return sum(each.partition(".")[0] == part for each in known)


def blocks_of(change: ReleaseChange, edition: Edition) -> Iterator[Block]:
    """Yield what changed between two releases: what it is worth, a list, the parts drawn."""
    reader, plan = edition.reader, edition.plan
    entries = tuple(told(each) for each in _changes(change, edition))
    blocks: list[Block] = [Paragraph(words=serving(change, plan, reader))]
    if entries:
        blocks.append(Listing(entries=entries))
    figures = tuple(_figures(change, edition)) if edition.exact else ()
    if figures:
        blocks.append(Figures(figures=figures))
    yield Folded(summary=say(reader, "changes-title", old=change.old), blocks=tuple(blocks))


def holding(change: ReleaseChange, edition: Edition) -> Paragraph:
    """Return what who has an older release is told."""
    words = serving(change, edition.plan, edition.reader)
    told_so = say(edition.reader, "changes-you-have", old=change.old, told=words)
    return Paragraph(words=told_so, loud=change.class_ is Weight.CORRECTION)


def class_told(change: ReleaseChange, reader: Reader) -> str:
    """Return what a release is to those who have the older one, in a sentence."""
    return say(reader, f"changes-class-{change.class_}", old=change.old)


def draft_of(change: ReleaseChange, plan: Plan, reader: Reader) -> str:
    """Return a first draft of what a maker says of a release."""
    parts = [each.title for each in change.parts if each.state is not State.SAME]
    if not parts:
        return class_told(change, reader)
    changed = say(reader, "changes-draft", parts=listed(reader, parts))
    return f"{changed} {serving(change, plan, reader)}"


def letter(change: ReleaseChange, plan: Plan, release: Release, reader: Reader) -> str:
    """Return the text for those who hold the bundle of the older release."""
    paragraphs = (
        say(
            reader,
            "changes-letter-head",
            plan=plan.title,
            new=release.version,
            day=day_text(reader, release.date),
            old=change.old,
        ),
        release.changed,
        serving(change, plan, reader),
        class_told(change, reader),
    )
    return "\n\n".join(each for each in paragraphs if each)


def _changes(change: ReleaseChange, edition: Edition) -> Iterator[str]:
    reader = edition.reader
    for part in change.parts:
        yield from _part(part, reader)
    for sheet in change.sheets:
        yield say(reader, "changes-sheet", sheet=headed(sheet.name))
    titles = {row.item: row.title for row in edition.hardware}
    for item in change.hardware:
        name = titles.get(item.name) or headed(item.name)
        yield say(reader, "changes-count", what=name, was=item.was, now=item.now)
    for board in change.boards:
        yield say(reader, "changes-count", what=headed(board.name), was=board.was, now=board.now)
    yield from _steps(change.steps, reader)
    was, now = change.sheet_count
    if was and now and was != now:
        yield say(reader, "changes-sheets", was=was, now=now)
    if change.words and change.class_ is Weight.WORDS:
        yield say(reader, "changes-words")


def _steps(steps: StepsChange, reader: Reader) -> Iterator[str]:
    def of(titles: Sequence[str]) -> str:
        return listed(reader, [f"“{each}”" for each in titles])

    if steps.new:
        yield say(reader, "changes-steps-new", steps=of(steps.new))
    if steps.gone:
        yield say(reader, "changes-steps-gone", steps=of(steps.gone))
    if steps.told:
        yield say(reader, "changes-steps-told", steps=of(steps.told))
    if steps.order:
        yield say(reader, "changes-steps-order")


def _part(part: PartChange, reader: Reader) -> Iterator[str]:
    title = part.title
    if part.state is State.NEW:
        yield say(reader, "changes-part-new", part=title)
        return
    if part.state is State.GONE:
        yield say(reader, "changes-part-gone", part=title)
        return
    if part.renamed:
        yield say(reader, "changes-part-renamed", part=title, was=headed(part.was))
    if part.state is State.MIRRORED:
        yield say(reader, "changes-part-mirrored", part=title)
    elif part.moved:
        titles = (within(feature_title(each.name), reader) for each in part.moved)
        names = list(dict.fromkeys(titles))
        features = listed(reader, names[:_MOST_MOVED])
        yield say(reader, "changes-part-moved", part=title, features=features)
    elif part.state is State.CHANGED:
        seen = part.after is not None  # who may not see shapes is not told what moved in them
        yield say(reader, "changes-part-changed" if seen else "changes-part-reshaped", part=title)
    elif part.cut:
        yield say(reader, "changes-part-cut", part=title)
    if part.more:
        yield say(reader, "changes-part-more", part=title, count=len(part.more))
    if part.fewer > 0:
        yield say(reader, "changes-part-fewer", part=title, count=part.fewer)


def _figures(change: ReleaseChange, edition: Edition) -> Iterator[Figure]:
    for part in change.parts:
        if part.state in (State.CHANGED, State.MIRRORED) and part.before and part.after:
            pair = {"part": part.title, "old": change.old}
            yield Figure(
                picture=Art(
                    name=f"changed-{change.old}-{change.new}-{part.name}".replace(".", "-"),
                    draw=_drawing(part, edition.reader),
                ),
                caption=say(edition.reader, "changes-figure-moved", **pair)
                if part.moved
                else say(edition.reader, "changes-figure", **pair),
                size=Size.HALF,
            )


def _drawing(part: PartChange, reader: Reader) -> Callable[[Room], Drawing]:
    return lambda room: change_view(part, room, reader)
