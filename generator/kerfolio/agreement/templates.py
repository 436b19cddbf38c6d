"""Every template against the settled plan: tiles laid by their names, then line by line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import cos, dist, radians, sin

from kerfolio.agreement.differences import differences
from kerfolio.agreement.meant import Meant, placed
from kerfolio.agreement.same_contour import NEAR, same
from kerfolio.agreement.template_meant import layer_of, template_meant
from kerfolio.agreement.template_places import Box, Tiles, place_told
from kerfolio.agreement.written import SETTLED, Written
from kerfolio.basis.finding import Finding
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Text
from kerfolio.basis.saying import say
from kerfolio.basis.words import counted
from kerfolio.drawing.cut_note import CHECK_SQUARES
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.vocabulary import Anchor, Drawing, Label
from kerfolio.drawing.window import meets, passes
from kerfolio.edition.names import template_name
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.model.stock import PaperStock
from kerfolio.paper.phrases import release_told
from kerfolio.paper.seams import TiledOn
from kerfolio.paper.template_choices import Templates
from kerfolio.paper.tiling import MARGIN, Tiling
from kerfolio.settling.measured import measured_for
from kerfolio.settling.sawn_joint import with_test_joints
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title
from kerfolio.writing.page import Run
from kerfolio.writing.read_back import Layers, UnreadableError
from kerfolio.writing.read_pdf import Lettering, ReadPage, read_pdf
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style, in_faces

_WORDS_NEAR = 0.05
"""How far, mm, lettering may begin from where it is meant."""
_SMALLEST_ROLL = (200.0, 130.0)
_ANCHORS = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Template:
    """What a part's template must show in the part's frame; ``named`` is how its pages call it."""

    part: str
    drawing: Drawing
    meant: tuple[Meant, ...]
    labels: tuple[Lettering, ...]
    named: str
    release: str
    reader: Reader

    @property
    def box(self) -> Box:
        """What it takes on paper."""
        return self.drawing.box


def templates(written: Written) -> Iterator[Finding]:
    """Yield where a template is not what the settled plan makes it."""
    chosen = written.templates or Templates.of(written.edition)
    for settled in written.edition.variants:
        drawn = chosen.drawn(settled)  # where words have room only the choice can tell
        parts = with_test_joints(settled).parts
        made = [_template(settled, each, drawn[each.name], chosen.reader) for each in parts]
        for name, way in chosen.ways.items():
            file = template_name(settled.variant.label, name)
            for part, other, how in _faults(made, written.files[file], way):
                yield written.differ(f"`{file}`{part}", other, how)


def _template(
    settled: SettledPlan, part: SettledPart, drawing: Drawing, reader: Reader
) -> _Template:
    drill = settled.sheet(part.sheet).cutter.diameter
    return _Template(
        part=part.name,
        drawing=drawing,
        meant=template_meant(part, drill, drawing),
        labels=tuple(_labels(drawing)),
        named=f"{part.mark} {part_title(settled.plan, part.name, reader)}",
        release=f"{release_told(settled.plan.version, reader)} · {measured_for(settled, reader)}",
        reader=reader,
    )


def _labels(drawing: Drawing) -> Iterator[Lettering]:
    for item in drawing.items:
        for each in expanded(item):
            if isinstance(each, Label) and each.text.strip():
                face = Face.SANS_STRONG if each.strong else Face.SANS
                style = Style(face=face, points=each.height / MM_PER_POINT)
                back = _ANCHORS[each.anchor] * width((Run(each.text, style),))
                x = each.at[0] - back * cos(radians(each.angle))
                y = each.at[1] - back * sin(radians(each.angle))
                shown = "".join(part for _, part in in_faces(face, each.text))
                yield Lettering(shown, (x, y), inset=True)


_Fault = tuple[str, Text]
"""What does not agree with a part's pages, and how."""


def _faults(
    made: Sequence[_Template], content: bytes, on: TiledOn | None
) -> Iterator[tuple[str, str, Text]]:
    """Yield each fault with the part it is found on, none for the whole file."""
    try:
        pages = read_pdf(content)
    except UnreadableError as fault:
        yield "", "its ending", str(fault)
        return
    if on is None and len(pages) != len(made):
        yield "", "its pages", f"there are {len(pages)} for {counted(len(made), 'part')}"
        return
    if on is not None and any(_is_other(page, on.paper) for page in pages):
        yield "", "its paper", "it is of another size"
        return
    for number, each in enumerate(made):
        name = each.part
        found = (
            _rolled(each, pages, number) if on is None else _tiled(each, pages, on.tilings[name])
        )
        yield from ((f", {each.named},", *fault) for fault in found)


def _is_other(page: ReadPage, paper: PaperStock) -> bool:
    sides = (paper.width, paper.height)
    return min(dist(page.size, sides), dist(page.size, sides[::-1])) > NEAR


def _rolled(made: _Template, pages: Sequence[ReadPage], number: int) -> Iterator[_Fault]:
    left, bottom, right, top = made.box
    least = zip((right - left, top - bottom), _SMALLEST_ROLL, strict=True)
    size = tuple(max(each + 2 * MARGIN, room) for each, room in least)
    page = pages[number]
    if dist(page.size, size) > NEAR:
        yield "its paper", "it is of another size"
        return
    at = ((size[0] - right - left) / 2, (size[1] - top - bottom) / 2)
    for how in differences(made.meant, _layers(page, at)):
        yield SETTLED, how
    yield from _page_faults(
        made, page, _placed(made, say(made.reader, "tiles-whole"), number, pages)
    )
    yield from _unsaid(made, (page,), [at])


def _tiled(made: _Template, pages: Sequence[ReadPage], tiling: Tiling) -> Iterator[_Fault]:
    told: dict[tuple[int, int], int] = {}
    for number, page in enumerate(pages):
        places = (place_told(each.text, f" · {made.named}", made.reader) for each in page.words)
        place = next(filter(None, places), None)
        if place in told:
            yield "its tiles", "two pages are the same one"
            return
        if place is not None:
            told[place] = number
    at = {place: pages[number] for place, number in told.items()}
    tiles = Tiles(
        box=made.box, page=tiling.page, across=tiling.across, up=tiling.up, reader=made.reader
    )
    yield from (("its tiles", how) for how in tiles.faults())
    yield from _drawn_faults(made, tiles, at)
    for place, page in at.items():
        where = tiles.words(*place)
        yield from _page_faults(made, page, _placed(made, where, told[place], pages))
        window = tiles.window(*place)
        if page.clip is None or _off(page.clip, window, tiles.origin(*place)) > NEAR:
            yield "its tiles", f"{where} shows another part of it"
    for place in ((c, r) for c in range(tiles.columns) for r in range(tiles.rows)):
        if place not in at and any(passes(e.contour, tiles.window(*place)) for e in made.meant):
            yield "its tiles", f"{tiles.words(*place)} is missing"
    yield from _unsaid(made, tuple(at.values()), [tiles.origin(*each) for each in at])


def _placed(made: _Template, where: str, number: int, pages: Sequence[ReadPage]) -> str:
    """Return how a page tells what of the part it shows, and which of the pages it is."""
    page = say(made.reader, "tiles-page", page=number + 1, pages=len(pages))
    return f"{where} · {page}"


def _drawn_faults(
    made: _Template, tiles: Tiles, at: Mapping[tuple[int, int], ReadPage]
) -> Iterator[_Fault]:
    """Yield what differs on any tile: of the whole, if the tiles laid together tell it too."""
    laid = {place: _layers(page, tiles.origin(*place)) for place, page in at.items()}
    found = [
        how
        for place, layers in laid.items()
        for how in differences(_shown(made, layers, tiles.window(*place)), layers)
    ]
    if found:
        for how in differences(made.meant, _together(laid.values())) or dict.fromkeys(found):
            yield SETTLED, how


def _together(tiles: Iterable[Layers]) -> Layers:
    """Return the contours of all tiles, each once."""
    found: dict[str, list[Contour]] = {}
    for layers in tiles:
        for name, contours in layers.items():
            known = found.setdefault(name, [])
            for each in contours:
                if not any(same(one, each) for one in known):
                    known.append(each)
    return {name: tuple(contours) for name, contours in found.items()}


def _page_faults(made: _Template, page: ReadPage, where: str) -> Iterator[_Fault]:
    meant = {each.text: each for each in made.labels}
    for each in page.words:
        if each.inset and each.text not in meant:
            yield "what it is for", f"it says “{each.text}”"
    told = [each.text for each in page.words if not each.inset]
    print_at = say(made.reader, "tiles-print-at")
    line = f"{made.release} · {made.named} · {where} · {print_at}"
    if not any(each.endswith(line) for each in told):
        yield "what it is for", f"it does not say “{line.strip(' ·')}”"
    for length, words in CHECK_SQUARES:
        if sum(abs(each - length) <= NEAR for each in _lengths(page)) < 2:
            yield "its own words", f"a length of {words} is of another length"


def _off(clip: Box, window: Box, at: Point) -> float:
    moved = (window[0] + at[0], window[1] + at[1], window[2] + at[0], window[3] + at[1])
    return max(abs(a - b) for a, b in zip(clip, moved, strict=True))


def _layers(page: ReadPage, at: Point) -> Layers:
    """Return what is drawn on a page in the part's frame, by what its pens stand for."""
    found: dict[str, list[Contour]] = {}
    for line in page.lines:
        if line.inset:
            contour = placed(line.contour, (-at[0], -at[1]))
            found.setdefault(layer_of(line.pen), []).append(contour)
    return {name: tuple(contours) for name, contours in found.items()}


def _shown(made: _Template, layers: Layers, window: Box) -> tuple[Meant, ...]:
    """Return what a page must show: what is on it, and what passes its window besides.

    What lies outside may be on it; nobody sees it.
    """
    left = {name: list(contours) for name, contours in layers.items()}
    shown = []
    for each in made.meant:
        waiting = left.get(each.layer, [])
        match = next((one for one in waiting if same(each.contour, one)), None)
        if match is not None:
            waiting.remove(match)
        if match is not None or _passes(each.contour, window):
            shown.append(each)
    return tuple(shown)


def _passes(contour: Contour, window: Box) -> bool:
    box = bounds(contour)
    return meets((box.x0, box.y0, box.x1, box.y1), window) and passes(contour, window)


def _unsaid(
    made: _Template, pages: Sequence[ReadPage], origins: Sequence[Point]
) -> Iterator[_Fault]:
    """Yield the words that stand nowhere on the pages, or elsewhere than at what they tell of."""
    found: dict[str, list[Point]] = {}
    for page, (x, y) in zip(pages, origins, strict=True):
        for each in page.words:
            if each.inset:
                found.setdefault(each.text, []).append((each.at[0] - x, each.at[1] - y))
    for label in made.labels:
        spots = found.get(label.text)
        if not spots:
            yield "what it is for", f"it does not say “{label.text}”"
        elif min(dist(label.at, spot) for spot in spots) > _WORDS_NEAR:
            yield "what it is for", f"“{label.text}” stands elsewhere"


def _lengths(page: ReadPage) -> Iterator[float]:
    """Yield the lengths of the straight lines that stand beside the drawing, mm."""
    for line in page.lines:
        if not line.inset and len(line.contour.vertices) == 2:
            (x, y, _), (u, v, _) = line.contour.vertices
            yield dist((x, y), (u, v))
