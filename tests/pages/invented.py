"""A small invented site: an open plan, one for supporters, trials, pages. And how to write it."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import date
from pathlib import Path

from PIL import Image

from kerfolio.basis.pixels import Pixels
from kerfolio.drawing.coupon_view import coupon_view
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.edition.public import shown_to_all
from kerfolio.model.circle import Circle
from kerfolio.model.outcome import Grade, Mark, Outcome
from kerfolio.model.plan import Photo, Question, Release, Video
from kerfolio.model.prose import (
    Alignment,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Span,
    Table,
)
from kerfolio.model.showing import SHOWABLE
from kerfolio.model.statement import Named
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Page, Workshop
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.log import private_log_page
from kerfolio.pages.site import Download, PhotoFile, PlanFiles, Site
from kerfolio.publishing.plans_now import now_in
from kerfolio.reading.picture import read_picture
from kerfolio.settling.settled import FitVariant
from kerfolio.writing.photo import sized
from kerfolio.writing.svg import inline_svg
from kerfolio.writing.webfont import web_fonts
from tests.paper.editions import picture, stool

WIDTHS = (480, 960)


def prose(*paragraphs: str) -> Prose:
    return Prose(blocks=tuple(paragraph(Span(text=each)) for each in paragraphs))


def heading(text: str, level: int = 1) -> Heading:
    return Heading(spans=(Span(text=text),), level=level)


def paragraph(*spans: Span) -> Paragraph:
    return Paragraph(spans=spans)


STORY = Prose(
    blocks=(
        paragraph(
            Span(text="The first one was made of what lay about after a "),
            Span(text="regatta", emphasis=True),
            Span(text=", and stood on the quay for two summers. Its legs were "),
            Span(text="too close", strong=True),
            Span(text=". This one stands wider; see "),
            Span(text="how it was measured", link="https://example.org/measure"),
            Span(text="."),
        ),
        Listing(
            entries=(
                (paragraph(Span(text="No glue, no screws.")),),
                (paragraph(Span(text="Stores flat, 60 mm thick.")),),
            ),
        ),
    )
)

TRIALS = (
    Trial(
        id="2026-09-30-slots-in-the-new-birch",
        date=date(2026, 9, 30),
        title="Slots in the new birch",
        plan=Named("harbour-stool"),
        stock=Named("birch-plywood-18"),
        thickness=17.8,
        cutter=Named("compression-6"),
        speed_rpm=18000,
        feed_mm_per_min=4500,
        plunge_mm_per_min=1200,
        passes=(8.0, 10.1),
        fit=0.1,
        outcome=Outcome(whole=Grade.CLEAN),
        public=True,
        photo=Photo(file="edge.jpg", alt="A clean edge"),
        text=prose("First pass deep enough for the up-cut tip; both faces crisp."),
    ),
    Trial(
        id="2026-09-28-same-one-shallow-pass-more",
        date=date(2026, 9, 28),
        title="Same, one shallow pass more",
        plan=Named("harbour-stool"),
        stock=Named("birch-plywood-18"),
        cutter=Named("compression-6"),
        passes=(3.0, 7.0, 8.1),
        outcome=Outcome(whole=Grade.TO_MEND, marks=(Mark.TEAR_OUT,)),
        public=True,
    ),
)
SECRET = Trial(
    id="2026-09-01-not-for-all",
    date=date(2026, 9, 1),
    title="Not for all",
    outcome=Outcome(whole=Grade.TO_MEND, marks=(Mark.BURN,)),
    text=prose("Oops."),
)

PAGE = Page(
    name="about",
    title="About the bench",
    order=10,
    text=Prose(
        blocks=(
            paragraph(Span(text="A bench by a harbour that does not exist.")),
            heading("Who"),
            paragraph(Span(text="Ida Fernhill is invented, and so is everything here.")),
            heading("Tools", 2),
            paragraph(Span(text="One router, one saw, "), Span(text="many clamps", code=True)),
            heading("Licence"),
            Quotation(blocks=(paragraph(Span(text="Make it, mend it, pass it on.")),)),
            Listing(
                entries=((paragraph(Span(text="Read.")),), (paragraph(Span(text="Ask.")),)),
                first=1,
            ),
            Table(
                alignments=(Alignment.START, *(Alignment.END,) * 5),
                head=((Span(text="Measured, mm"),), *((Span(text="unreasonable"),),) * 5),
                rows=(
                    (paragraph(Span(text="18.2")).spans, *((Span(text="16.9 to 17.1"),),) * 4, ()),
                ),
            ),
            Listing(
                entries=(
                    (paragraph(Span(text="a")), Listing(entries=((Code(lines=("G0 " * 60,)),),))),
                )
            ),
        )
    ),
)


def edition(units_first: str = "mm") -> Edition:
    """Return the stool with a story, questions, a film and its public trials."""
    found = stool(units_first)
    identity = replace(
        found.identity,
        tagline="Furniture from one sheet, cut by router or by hand.",
        contact="ida@example.org",
        circles=(
            Circle(
                who="Sawdust",
                gives="3 EUR a month",
                gets="Every bundle.",
                join="Put a coin in the jar.",
                link="https://example.org/jar",
            ),
            Circle(who="Shavings", gives="9 EUR a month"),
        ),
        welcome=prose("Plans that go together, for the sheet you can buy."),
    )
    plan = replace(
        found.plan,
        story=STORY,
        video=Video(
            url="https://example.org/v/1", chapters=(("0:00", "The idea"), ("2:10", "Cutting"))
        ),
    )
    return replace(found, identity=identity, plan=plan, trials=TRIALS)


def locked(found: Edition) -> Edition:
    """Return a plan like the one given, for supporters, of another name and an earlier day."""
    plan = replace(
        found.plan,
        name="potting-bench",
        title="Potting bench",
        access="supporters",
        show=tuple(SHOWABLE),
        version="0.9.0",
        summary="Twelve parts of two sheets, for a back yard that gets rain.",
        story=Prose(),
        video=None,
        photos=(),
        licence="CC-BY-NC-SA-4.0",
        questions=(Question(question="Does it stand rain?", answer=prose("With oil, yes.")),),
        releases=(Release(version="0.9.0", date=date(2026, 4, 3), changed="First."),),
    )
    settled = replace(found.settled, plan=plan)
    return replace(found, plan=plan, settled=settled, trials=())


def of_two_sheets() -> Edition:
    """The stool as if its seat were of a thinner sheet, published for two thicknesses of each."""
    found = edition()
    ply = found.settled.sheets[0]
    stock = replace(ply.stock, title="Birch plywood 12 mm")
    thin = replace(ply, name="thin", stock=stock, published=(11.6, 12.0))
    pairs = [(a, b) for a in (17.6, 18.0) for b in (11.6, 12.0)]
    variants = tuple(
        replace(
            found.settled,
            sheets=(ply, thin),
            variant=FitVariant(label=f"ply-{a}mm_thin-{b}mm", thickness=(("ply", a), ("thin", b))),
        )
        for a, b in pairs
    )
    return replace(found, settled=variants[0], variants=variants)


def inline(name: str, drawing: Drawing) -> str:
    return inline_svg(drawing, id_prefix=f"{name}-")


def pictures(found: Edition) -> dict[str, str]:
    """Return every inline picture that a plan page may show."""
    reader = found.reader
    drawn = {
        f"sheet-{each.number}": layout_view(found.settled, each, reader=reader)
        for each in found.layout.sheets
    }
    drawn |= {
        f"part-{p.name}": part_view(found.settled, p, reader=reader) for p in found.settled.parts
    }
    drawn |= {
        f"coupon-{each.sheet}": coupon_view(found.settled, each, (150.0, 70.0), reader)
        for each in found.settled.coupons
    }
    return {name: inline(f"{found.name}-{name}", each) for name, each in drawn.items()}


def photo_files(found: Edition) -> dict[str, tuple[PhotoFile, ...]]:
    files = {}
    for name, content in found.pictures.items():
        width, height = Image.open(io.BytesIO(content)).size
        stem = f"plans/{found.name}/{name.removesuffix('.jpg')}"
        files[name] = tuple(
            PhotoFile(href=f"{stem}-{w}.jpg", width=w, height=round(height * w / width))
            for w in WIDTHS
            if w <= width
        )
    return files


def plan_files(found: Edition) -> PlanFiles:
    name = f"{found.name}-{found.plan.version}.zip"
    is_open = found.plan.access == "open"
    return PlanFiles(
        download=Download(
            name=name,
            size=2_345_678,
            sha256="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
            href=f"downloads/{name}" if is_open else "",
        ),
        pictures=pictures(found) if is_open else {},
        photos=photo_files(found),
    )


def site(units_first: str = "mm") -> Site:
    """Return the whole invented site."""
    found = edition(units_first)
    both = (found, shown_to_all(locked(found)))
    edge = (PhotoFile(href="log/edge-480.jpg", width=480, height=320),)
    return Site(
        identity=found.identity,
        editions=both,
        files={each.name: plan_files(each) for each in both},
        pages=(PAGE,),
        trials=TRIALS,
        stock=found.settled.stock,
        log_photos={"edge.jpg": edge},
    )


def workshop() -> Workshop:
    """Return the invented workshop, as far as the private log looks at it."""
    found = edition()
    return Workshop(
        identity=found.identity,
        stock=found.settled.stock,
        plans=(found.plan,),
        trials=(*TRIALS, SECRET),
        pages=(PAGE,),
    )


def whole_log(found: Workshop, log_folder: str = "../../../log/") -> str:
    """Return the private page of a workshop's log."""
    return private_log_page(found, now_in(found), log_folder)


CONTENTS = (
    *("start-here.html", "plan.json", "LICENCE.txt", "SHA256SUMS"),
    *("booklet-a4.pdf", "booklet-letter.pdf", "layout/saw-a4.pdf"),
    *(f"{k}/{k}-17.8mm-{paper}.pdf" for k in ("layout", "setup") for paper in ("a4", "letter")),
    *("lists/parts.csv", "lists/hardware.csv", "lists/sheets.csv"),
    *("cut/fit-coupon/fit-coupon-ply.svg", "cut/fit-coupon/fit-coupon-ply.dxf"),
    *(f"cut/{t}mm/sheet-1-{t}mm.{k}" for t in (17.6, 17.8, 18.0) for k in ("svg", "dxf")),
    *(f"cut/{t}mm/parts/side-{t}mm.{k}" for t in (17.6, 17.8, 18.0) for k in ("svg", "dxf")),
    *(f"templates/{t}mm-{p}.pdf" for t in (17.6, 17.8, 18.0) for p in ("a4", "roll")),
)


def write(found: Site, folder: Path) -> None:
    """Write the site with its fonts and photos, as a publish would."""
    for name, text in site_texts(found).items():
        put(folder / name, text.encode())
    for name, content in web_fonts().items():
        put(folder / "assets" / "fonts" / name, content)
    for each in found.editions:
        for photo, files in found.files[each.name].photos.items():
            for file in files:
                put(folder / file.href, small(each.pictures[photo], file.width))
        download = found.files[each.name].download
        if download.href:
            put(folder / "plans" / each.name / download.href, b"PK")
    put(folder / "log" / "edge-480.jpg", picture(480, 320))


def small(content: bytes, width: int) -> bytes:
    """Return a picture at a width of pixels."""
    pixels = read_picture(content, "photo.jpg")
    assert isinstance(pixels, Pixels)
    return sized(pixels, width)


def put(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
