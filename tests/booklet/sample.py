"""A small invented document that uses every kind of block, for booklets."""

from __future__ import annotations

import io

from PIL import Image

from kerfolio.document.blocks import (
    Asked,
    Block,
    Caution,
    Cell,
    Column,
    Dated,
    Fact,
    Facts,
    Figure,
    Figures,
    Folded,
    Heading,
    Kind,
    Listing,
    Live,
    Manner,
    Paragraph,
    Row,
    Size,
    Step,
    Table,
    Told,
)
from kerfolio.document.chapter import Chapter, Document, Opening, Soon
from kerfolio.document.picture import Art, Room, Shot
from kerfolio.document.words import Both, File, Mark, Reference, address, typed
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.model import prose
from kerfolio.model.plan import Photo
from kerfolio.model.stock import PaperStock

A4 = PaperStock(name="a4", title="A4", width=210.0, height=297.0)
LETTER = PaperStock(name="letter", title="Letter", width=215.9, height=279.4)

BIRD = Photo(file="bird.png", alt="A wooden bird on a shelf")


def pictures() -> dict[str, bytes]:
    """Return the one photo."""
    out = io.BytesIO()
    Image.new("RGB", (60, 40), "#c9a36a").save(out, format="PNG")
    return {BIRD.file: out.getvalue()}


def drawing(room: Room, name: str, width: float = 400.0, height: float = 200.0) -> Drawing:
    """Return a board filling the room as far as its proportions allow, its name on it."""
    scale = min(room[0] / width, room[1] / height)
    box = (0.0, 0.0, width * scale, height * scale)
    board = Stroke(contour=rectangle(*box), fill=Ink.WOOD)
    label = Label(text=f"{name} board", at=(3.0, 3.0), height=3.0)
    return Drawing(box=box, items=(board, label), title=name, description=f"The board {name}")


def art(name: str, width: float = 400.0, height: float = 200.0) -> Art:
    """Return a picture of a board of those proportions."""
    return Art(name=name, draw=lambda room: drawing(room, name, width, height))


def told(*blocks: prose.Block) -> prose.Prose:
    """Return a maker's text."""
    return prose.Prose(blocks=blocks)


def spans(*texts: str | prose.Span) -> prose.Spans:
    """Return a line of a maker's text."""
    return tuple(prose.Span(text=each) if isinstance(each, str) else each for each in texts)


LONG = (
    "Lay the board on the bench with its good face down and let it rest there until it has "
    "taken on the damp of the room, which takes a day in summer and two days in winter. "
)

_CHOOSING: tuple[Block, ...] = (
    Paragraph(words="Measure before you choose.", manner=Manner.LEAD),
    Paragraph(
        words=(
            "Where it stands: ",
            Reference(text="the boards", chapter="boards"),
            "; elsewhere: ",
            Reference(text="nothing of it", chapter="absent"),
            ".",
        )
    ),
    Paragraph(words="Loud and small.", manner=Manner.SMALL, loud=True),
    Paragraph(words="Nobody should pass over this.", loud=True),
    Caution(head="For this bird", lines=("Keep the beak away.", "Wear shoes.")),
    Facts(
        facts=(
            Fact(head="Eyes", lines=(("Wear glasses.",), ("Also with a saw.",))),
            Fact(head="Ears", lines=((LONG,),)),
        ),
        rows=True,
    ),
    Heading(words="What to have at hand", id="at-hand"),
    Listing(entries=("a square", "a knife"), ticked=True),
    Listing(entries=("first this", "then that"), numbered=True),
    Listing(entries=("glue", ("a clamp of ", Both(first="600 mm", other='23 5/8"')))),
    Table(
        title="What the boards weigh",
        titled=True,
        columns=(
            Column(head="Mark", kind=Kind.MARK),
            Column(head="Board"),
            Column(head="Pieces", kind=Kind.COUNT),
            Column(head="kg", kind=Kind.NUMBER),
        ),
        rows=(
            Row(cells=("A1", Cell(words="wing", below=("of birch",)), "2", "0.5")),
            Row(cells=("B", "body", "1", "12.25"), chief=True),
        ),
        foot=Row(cells=("", "Together", "3", "12.75")),
    ),
    Table(title="Nothing in it", columns=(Column(head="Unseen"),), rows=()),
    Facts(
        facts=tuple(
            Fact(head=f"Head {at}", lines=((f"value {at}", f"small {at}"),)) for at in range(3)
        )
    ),
)

_BOARDS: tuple[Block, ...] = (
    Figure(picture=art("whole"), caption="The whole, put together."),
    Figure(picture=Shot(photo=BIRD), caption="A photo.", size=Size.SMALL, alt="The bird at home"),
    Paragraph(words="Words beside a small picture."),
    Figures(
        figures=(
            Figure(picture=art("left"), caption=("Left, ", Mark(text="A1")), size=Size.HALF),
            Figure(picture=art("right", 300, 280), caption="Right.", size=Size.HALF),
            Figure(picture=art("long", 900, 60), caption="A long one."),
        )
    ),
    Live(name="model", blocks=(Paragraph(words="Instead of a model."),)),
    Figure(picture=Shot(photo=Photo(file="gone.png", alt="Never shown"))),
)

_STEPS: tuple[Block, ...] = tuple(
    Step(
        number=number,
        title=f"Join board {number}",
        begins="The bird" if number == 1 else "",
        need=(
            Fact(head="Add", lines=(((Mark(text=f"A{number}"), " wing"),), (("B body"),))),
            Fact(head="Time", lines=((f"{number} min",),)),
        ),
        figures=(Figure(picture=art(f"step-{number}"), caption=f"Join {number}."),),
        text=told(prose.Paragraph(spans=spans(LONG))),
        by_hand="Chisel the corners square." if number == 2 else "",
        caution="Mind your fingers." if number == 2 else "",
    )
    for number in range(1, 5)
)

_MAKER = told(
    prose.Heading(spans=spans("A heading of the maker's")),
    prose.Paragraph(
        spans=spans(
            'She said "it fits", ',
            prose.Span(text="really", emphasis=True),
            ", with ",
            prose.Span(text="8x4 code", code=True),
            " and 800 x 600 mm of ",
            prose.Span(text='3/4" ply', strong=True),
            ", see ",
            prose.Span(text="the newest", link="https://bird.example/newest"),
            ".\nA new line.",
        )
    ),
    prose.Heading(spans=spans("Smaller"), level=2),
    prose.Listing(
        entries=(
            (prose.Paragraph(spans=spans("seven")),),
            (
                prose.Paragraph(spans=spans("eight")),
                prose.Listing(entries=((prose.Paragraph(spans=spans("inner")),),)),
            ),
        ),
        first=7,
    ),
    prose.Listing(entries=((prose.Paragraph(spans=spans("☐ to tick")),),)),
    prose.Quotation(blocks=(prose.Paragraph(spans=spans("Measure twice.")),)),
    prose.Code(lines=("if dry:", "    glue()")),
    prose.Table(
        alignments=(prose.Alignment.START, prose.Alignment.END),
        head=(spans("Glue"), spans("Minutes")),
        rows=((spans("white"), spans("30")), (spans("brown"), spans("45"))),
    ),
)

_BACKGROUND: tuple[Block, ...] = (
    Asked(question="Can it fly?", answer=told(prose.Paragraph(spans=spans("No.")))),
    Dated(
        day="3 May 2031",
        iso="2031-05-03",
        head="1.1.0",
        flag="A correction",
        words="The beak was too long.",
        id="release-1-1-0",
    ),
    Folded(
        summary="How it was reckoned",
        blocks=(Paragraph(words=("In ", File(name="lists/parts.csv"), " 日本 stands all.")),),
    ),
    Paragraph(
        words=(
            *(prose.Span(text="Strong", strong=True), ", ", typed("typed"), ", "),
            *(address("https://bird.example/", "led"), "."),
        )
    ),
)

DOCUMENT = Document(
    title="Shelf bird: booklet",
    opening=Opening(
        title="Shelf bird",
        summary="A bird that sits on a shelf and does nothing else, cut from a single board.",
        kicker="Booklet",
        picture=art("cover", 400, 300),
        facts=(
            Fact(head="Release", lines=(("1.1.0", "3 May 2031"),)),
            Fact(head="Sheet", lines=(("9.2 mm",),)),
        ),
        notices=("Release 1.0.0 had too long a beak.",),
        small=("Drawn by nobody in particular.",),
    ),
    chapters=(
        Chapter(id="choosing", title="Choose your wood", blocks=_CHOOSING),
        Chapter(id="boards", title="The boards", blocks=_BOARDS),
        Chapter(id="steps", title="Putting it together", blocks=_STEPS),
        Chapter(id="maker", title="The maker's words", blocks=(Told(prose=_MAKER),)),
        Chapter(id="ground", title="Background", blocks=_BACKGROUND, soon=Soon.BACKGROUND),
    ),
    author="The Aviary",
    subject="Booklet for Shelf bird, release 1.1.0",
    language="en-GB",
    foot="Shelf bird, release 1.1.0",
    address="https://bird.example/plans/shelf-bird/",
    day="2031-05-03",
)
