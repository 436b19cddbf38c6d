"""Putting it together: step by step, each with what it needs, drawn, photographed and told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.wedged import Wedged, wedges_of
from kerfolio.basis.figures import minutes_text
from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.chapters.shots import shot, shown
from kerfolio.document.blocks import Block, Column, Fact, Figure, Heading, Paragraph, Row, Table
from kerfolio.document.blocks import Step as StepBlock
from kerfolio.document.chapter import Chapter
from kerfolio.document.picture import still
from kerfolio.document.words import Mark, Words, address, worded
from kerfolio.drawing.work_views import step_names
from kerfolio.edition.edition import Edition
from kerfolio.edition.hardware_words import hardware_title
from kerfolio.edition.making import numbered_steps
from kerfolio.edition.tools import step_tools
from kerfolio.model.plan import Step, Video
from kerfolio.settling.titles import piece_title, within


def steps(edition: Edition) -> Chapter | None:
    """Return every step, and the film of the build; None of a plan without either."""
    plan = edition.plan
    blocks: list[Block] = []
    numbered = tuple(numbered_steps(plan, edition.reader))
    if numbered:
        blocks.append(Paragraph(words=_ahead(edition, len(numbered))))
    wedges = tuple(_wedges(edition)) if numbered else ()
    blocks += (_step(edition, *each, wedges) for each in numbered)
    if plan.video:
        blocks += _film(plan.video, edition.reader)
    if not blocks:
        return None
    return Chapter(id="steps", title=say(edition.reader, "steps-title"), blocks=tuple(blocks))


def _ahead(edition: Edition, count: int) -> str:
    """Return how many steps there are, how long they take and what to have at hand."""
    reader, minutes = edition.reader, edition.plan.minutes
    if minutes:
        time = minutes_text(minutes, reader)
        ahead = say(reader, "steps-taking", count=count, time=time)
    else:
        ahead = say(reader, "steps-ahead", count=count)
    tools = [within(each, reader) for each in step_tools(edition)]
    if not tools:
        return ahead
    return f"{ahead} {say(reader, 'steps-have', tools=listed(reader, tools))}"


def _step(
    edition: Edition, number: int, begins: str, step: Step, wedges: Sequence[Wedged]
) -> StepBlock:
    return StepBlock(
        number=number,
        title=step.title,
        begins=begins,
        need=tuple(_need(edition, step, wedges)),
        figures=tuple(_figures(edition, number, step)),
        text=step.text,
        by_hand=step.by_hand,
        caution=step.caution,
    )


def _need(edition: Edition, step: Step, wedges: Sequence[Wedged]) -> Iterator[Fact]:
    """Yield what joins, with what, by what, in how long; what is not stated is left out."""
    reader = edition.reader
    marks = edition.piece_marks if edition.parts else {}
    pieces = [_piece(edition, each.name, marks.get(each.name, "")) for each in step.add]
    added = {each.name for each in step.add}
    driven = [_driven(edition, each) for each in wedges if each.wedge in added]
    hardware = [f"{use.count} × {hardware_title(edition, use.item.name)}" for use in step.uses]
    time = minutes_text(step.minutes, reader) if step.minutes else ""
    for name, lines in (
        ("pieces", pieces),
        ("hardware", hardware),
        ("tools", step.tools),
        ("wedges", driven),
        ("people", [str(step.people)] if step.people > 1 else []),
        ("holds", [_piece(edition, each.name, marks.get(each.name, "")) for each in step.holds]),
        ("order", [_piece(edition, each.name, marks.get(each.name, "")) for each in step.order]),
        ("time", [say(reader, "figures-about", figure=time)] if time else []),
    ):
        if lines:
            yield Fact(
                head=say(reader, f"steps-need-{name}"), lines=tuple((each,) for each in lines)
            )


def _wedges(edition: Edition) -> Iterator[Wedged]:
    for made in edition.made:
        if made.build:
            yield from wedges_of(made.settled, made.build.drawn.assembled)


def _driven(edition: Edition, each: Wedged) -> str:
    """Return how far a wedge is driven, what stands out then, and the wood that it presses on."""
    reader, behind = edition.reader, each.behind
    return say(
        reader,
        "steps-wedge" if behind is None else "steps-wedge-behind",
        piece=piece_title(edition.plan, each.wedge, reader),
        left=both_text(max(0.0, each.left), reader),
        drive=both_text(max(0.0, each.to_drive), reader),
        **({} if behind is None else {"behind": both_text(max(0.0, behind), reader)}),
    )


def _piece(edition: Edition, label: str, mark: str) -> Words:
    title = piece_title(edition.plan, label, edition.reader)
    return (Mark(text=mark), f" {title}") if mark else title


def _figures(edition: Edition, number: int, step: Step) -> Iterator[Figure]:
    """Yield the drawings of a step in the order of the work, and its photo."""
    for name in step_names(number):
        if name in edition.drawings:
            yield Figure(picture=still(name, edition.drawings[name]))
    yield from (shot(each, edition.reader) for each in shown((step.photo,), edition))


def _film(video: Video, reader: Reader) -> Iterator[Block]:
    """Yield where the film of the build is, and what is in it when."""
    yield Heading(words=say(reader, "steps-film"), id="video")
    where = video.url.partition("://")[2] or video.url
    yield Paragraph(words=worded(reader, "steps-watch", address=address(video.url, where)))
    yield Table(
        title=say(reader, "steps-film-parts"),
        columns=(
            Column(head=say(reader, "steps-film-at")),
            Column(head=say(reader, "steps-film-what")),
        ),
        rows=tuple(Row(cells=(time, title)) for time, title in video.chapters),
    )
