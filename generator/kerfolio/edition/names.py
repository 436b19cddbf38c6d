"""The names of a bundle's files: one place, so that writing, checking and recognising agree."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from string import Formatter

from kerfolio.basis.figured import Figure, figured
from kerfolio.basis.style import Rule, Style
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Plan
from kerfolio.model.stock import PaperStock
from kerfolio.shop.art import arts_of
from kerfolio.writing.formats import CutFormat

PAPERS = {"a4": "A4", "letter": "US Letter"}
"""The papers that are printed on, with what readers call them."""
ROLL = "roll"
LISTS = tuple(
    f"lists/{each}.csv"
    for each in (
        *("parts", "hardware", "sheets", "boards", "board-cuts", "costs", "cutting", "edges"),
    )
)
"""Every list that a bundle may hold; one without a row is not written."""

_SHEET = "cut/{fit}/sheet-{number:d}-{fit}.{ending}"
_OTHER = "cut/{fit}/on-{laid}/sheet-{number:d}-on-{laid}-{fit}.{ending}"
_PART = "cut/{fit}/parts/{part}-{fit}.{ending}"
_RESCUE = "cut/{fit}/rescue/{rescue}-{fit}.{ending}"
_COUPON = "cut/fit-coupon/fit-coupon-{sheet}.{ending}"
_ART = "cut/engravings/{part}.{art}.{ending}"
_LAYOUT = "layout/layout-{fit}-{paper}.pdf"
_SAW = "layout/saw-{paper}.pdf"
_SETUP = "setup/setup-{fit}-{paper}.pdf"
_SETUP_COUPON = "setup/fit-coupon-{paper}.pdf"
_ENGRAVINGS = "setup/engravings-{paper}.pdf"
_TEMPLATES = "templates/{fit}-{paper}.pdf"
_OF_A_BATCH = (_SHEET, _ART, _LAYOUT, _SAW, _SETUP, _ENGRAVINGS)
_OF_A_POINT = (*_OF_A_BATCH, _PART, _TEMPLATES, _RESCUE)
_WIDER = {
    "mm": Style(decimals=3, after="mm"),
    "in": Style(rule=Rule.CHOSEN_NAME, decimals=3, after="in"),
}
FILES = "files.json"
PLAN = "plan.json"
LICENCE = "LICENCE.txt"
START = "start-here.html"
SUMS = "SHA256SUMS"


def papers_of(edition: Edition) -> Mapping[str, PaperStock]:
    """Return the papers that everything is printed on, by name."""
    stock = edition.settled.stock
    found = {name: stock.paper(name) for name in PAPERS}
    return {name: paper for name, paper in found.items() if paper is not None}


def bundle_stem(plan: Plan) -> str:
    """Return ``NAME-VERSION``: the bundle's name and the folder it unpacks to."""
    return f"{plan.name}-{plan.version}"


def bundle_name(plan: Plan) -> str:
    """Return ``NAME-VERSION.zip``."""
    return f"{bundle_stem(plan)}.zip"


def cut_sheet_name(fit: str, number: int, ending: str) -> str:
    """Return the name of a sheet's cut file; the thickness stands in folder and file alike."""
    return figured(_SHEET, fit=fit, number=number, ending=ending)


def other_sheet_name(laid: str, fit: str, number: int, ending: str) -> str:
    """Return the name of a sheet's cut file for another sheet or bed, called ``laid``."""
    return figured(_OTHER, laid=laid, fit=fit, number=number, ending=ending)


def cut_part_name(fit: str, part: str, ending: str) -> str:
    """Return the name of a part's cut file."""
    return figured(_PART, fit=fit, part=part, ending=ending)


def rescue_name(fit: str, rescue: str, ending: str) -> str:
    """Return the name of a cut file that saves a piece; ``rescue`` says which and how."""
    return figured(_RESCUE, fit=fit, rescue=rescue, ending=ending)


def wider_stem(name: str, by: float, unit: str) -> str:
    """Return what is reopened and by how much, mm, in a plan's unit: ``side-wider-0.15mm``."""
    return figured("{}-wider-{}", name, Figure(by, _WIDER[unit]))


def coupon_name(sheet: str, ending: str) -> str:
    """Return the name of a fit coupon's cut file; it is the same for every thickness."""
    return _COUPON.format(sheet=sheet, ending=ending)


def art_name(file: str, ending: str) -> str:
    """Return the name of an engraving's own cut file, as the drawn thickness settles it.

    ``file`` is ``PART.NAME``, as ``shop.art`` calls it.
    """
    part, art = file.split(".", 1)
    return _ART.format(part=part, art=art, ending=ending)


def template_name(fit: str, paper: str) -> str:
    """Return the name of the full-size templates; ``paper`` is ``a4``, ``letter`` or ``roll``."""
    return figured(_TEMPLATES, fit=fit, paper=paper)


def lone_name(plan: Plan, name: str) -> str:
    """Return what a file of the bundle is called where it stands alone, without its folders."""
    return f"{bundle_stem(plan)}-{name.removeprefix('cut/').replace('/', '-')}"


def lone_files(edition: Edition) -> tuple[str, ...]:
    """Return the files of a bundle that can be had one by one: the booklet, and what is cut first.

    Those are the cut files of whole sheets and the templates for the thickness that is drawn.
    """
    settled, papers = edition.settled, papers_of(edition)
    fit = settled.variant.label
    numbers = [sheet.number for sheet in edition.layout.sheets]
    endings = [each.ending for each in edition.formats]
    return (
        *(booklet_name(paper) for paper in papers),
        *(cut_sheet_name(fit, number, ending) for number in numbers for ending in endings),
        *(template_name(fit, paper) for paper in papers),
    )


def booklet_name(paper: str) -> str:
    """Return the name of the booklet on a paper."""
    return f"booklet-{paper}.pdf"


def layout_name(fit: str, paper: str) -> str:
    """Return the name of the layout pictures on a paper."""
    return figured(_LAYOUT, fit=fit, paper=paper)


def model_name(plan: Plan) -> str:
    """Return the name of the 3-D model."""
    return f"model/{plan.name}.glb"


def saw_name(paper: str) -> str:
    """Return the name of the saw diagrams on a paper."""
    return _SAW.format(paper=paper)


def setup_name(fit: str, paper: str) -> str:
    """Return the name of the setup sheets on a paper."""
    return figured(_SETUP, fit=fit, paper=paper)


def engravings_name(paper: str) -> str:
    """Return the name of the pages of engravings on a paper, which are for what is drawn."""
    return _ENGRAVINGS.format(paper=paper)


def setup_coupon_name(paper: str) -> str:
    """Return the name of the pages of fit coupons on the machine, on a paper."""
    return _SETUP_COUPON.format(paper=paper)


def has_saw(edition: Edition) -> bool:
    """Tell whether there is anything for a saw to cut."""
    return bool(edition.saw or edition.board_plans)


def expected_names(edition: Edition) -> frozenset[str]:
    """Return the names of every file that a bundle must hold, worked out from the plan alone."""
    names = {PLAN, LICENCE, START, SUMS, *_lists(edition)}
    names |= {booklet_name(paper) for paper in PAPERS}
    names |= {engravings_name(paper) for paper in PAPERS} if arts_of(edition.settled) else set()
    names |= {setup_coupon_name(paper) for paper in PAPERS} if edition.settled.coupons else set()
    names |= {model_name(edition.plan)} if edition.assembled else set()
    names |= {saw_name(paper) for paper in PAPERS} if has_saw(edition) else set()
    for settled in edition.variants:
        fit = settled.variant.label
        names |= {template_name(fit, paper) for paper in (*PAPERS, ROLL)}
        names |= {name(fit, paper) for name in (layout_name, setup_name) for paper in PAPERS}
    for each in edition.formats:
        names |= _cut_names(edition, each.ending)
    return frozenset(names)


def _lists(edition: Edition) -> Iterator[str]:
    """Yield the lists that have something to tell."""
    told = (
        edition.parts,
        edition.hardware,
        edition.sheets,
        edition.boards,
        [board for plan in edition.board_plans for board in plan.boards],
        [line for each in edition.copies for line in each.lines],
        [time for time in edition.times if time.known],
        edition.edges,
    )
    yield from (name for name, rows in zip(LISTS, told, strict=True) if rows)


def _cut_names(edition: Edition, ending: str) -> set[str]:
    names = {coupon_name(each.sheet, ending) for each in edition.settled.coupons}
    names |= {art_name(each.file, ending) for each in arts_of(edition.settled)}
    for settled in edition.variants:
        fit = settled.variant.label
        names |= {cut_sheet_name(fit, each.number, ending) for each in edition.layout.sheets}
        names |= {
            other_sheet_name(other.sheet.label, fit, each.number, ending)
            for other in edition.others
            for each in other.layout.sheets
        }
        names |= {cut_part_name(fit, part.name, ending) for part in settled.parts}
    return names


def is_of_batch(name: str, formats: Iterable[CutFormat]) -> bool:
    """Tell whether a batch, of whatever plan, writes a file of this name."""
    return name in LISTS or _is_one_of(_OF_A_BATCH, name, formats)


def is_of_point(name: str, formats: Iterable[CutFormat]) -> bool:
    """Tell whether files for one point, of whatever plan, have one of this name."""
    return name == FILES or _is_one_of(_OF_A_POINT, name, formats)


def _is_one_of(forms: Iterable[str], name: str, formats: Iterable[CutFormat]) -> bool:
    endings = [each.ending for each in formats]
    return any(_fits(name, form, endings) for form in forms)


def _fits(name: str, form: str, endings: Iterable[str]) -> bool:
    """Tell whether a name is of a form; a field that stands twice says the same both times."""
    pattern = ""
    for literal, field, number, _ in Formatter().parse(form):
        pattern += re.escape(literal)
        if field:
            words = "|".join(map(re.escape, endings)) if field == "ending" else r"[^/]+"
            seen = f"(?P<{field}>" in pattern
            pattern += f"(?P={field})" if seen else f"(?P<{field}>{r'[0-9]+' if number else words})"
    return re.fullmatch(pattern, name) is not None
