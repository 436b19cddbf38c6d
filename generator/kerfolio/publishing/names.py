"""The names of a bundle's files: one place, so that writing and checking agree."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Plan
from kerfolio.shop.art import arts_of

PAPERS = ("a4", "letter")
ROLL = "roll"
FORMATS = ("svg", "dxf")
LISTS = tuple(
    f"lists/{each}.csv"
    for each in ("parts", "hardware", "sheets", "boards", "board-cuts", "costs", "cutting")
)


def bundle_stem(plan: Plan) -> str:
    """Return ``NAME-VERSION``: the bundle's name and the folder it unpacks to."""
    return f"{plan.name}-{plan.version}"


def bundle_name(plan: Plan) -> str:
    """Return ``NAME-VERSION.zip``."""
    return f"{bundle_stem(plan)}.zip"


def cut_sheet_name(fit: str, number: int, kind: str) -> str:
    """Return the name of a sheet's cut file; the thickness stands in folder and file alike."""
    return f"cut/{fit}/sheet-{number}-{fit}.{kind}"


def cut_part_name(fit: str, part: str, kind: str) -> str:
    """Return the name of a part's cut file."""
    return f"cut/{fit}/parts/{part}-{fit}.{kind}"


def coupon_name(sheet: str, kind: str) -> str:
    """Return the name of a fit coupon's cut file; it is the same for every thickness."""
    return f"cut/fit-coupon/fit-coupon-{sheet}.{kind}"


def art_name(part: str, art: str, kind: str) -> str:
    """Return the name of an engraving's own cut file, as the drawn thickness settles it."""
    return f"cut/engravings/{part}-{art}.{kind}"


def template_name(fit: str, part: str, paper: str) -> str:
    """Return the name of a part's full-size template; ``paper`` is ``a4``, ``letter``, ``roll``."""
    return f"templates/{fit}/{part}-{fit}-{paper}.pdf"


def booklet_name(paper: str) -> str:
    """Return the name of the booklet on a paper."""
    return f"booklet-{paper}.pdf"


def layout_name(paper: str) -> str:
    """Return the name of the layout pictures on a paper."""
    return f"layout/layout-{paper}.pdf"


def model_name(plan: Plan) -> str:
    """Return the name of the 3-D model."""
    return f"model/{plan.name}.glb"


def saw_name(paper: str) -> str:
    """Return the name of the saw diagrams on a paper."""
    return f"layout/saw-{paper}.pdf"


SETUP = "setup/setup-sheets.pdf"
PLAN = "plan.json"
LICENCE = "LICENCE.txt"
START = "start-here.html"
SUMS = "SHA256SUMS"


def has_saw(edition: Edition) -> bool:
    """Tell whether there is anything for a saw to cut."""
    return bool(edition.saw or edition.board_plans)


def expected_names(edition: Edition) -> frozenset[str]:
    """Return the names of every file that a bundle must hold, worked out from the plan alone."""
    names = {PLAN, LICENCE, START, SUMS, SETUP, *LISTS}
    names |= {name(paper) for name in (booklet_name, layout_name) for paper in PAPERS}
    names |= {model_name(edition.plan)} if edition.build else set()
    names |= {saw_name(paper) for paper in PAPERS} if has_saw(edition) else set()
    names |= {coupon_name(each.sheet, kind) for each in edition.settled.coupons for kind in FORMATS}
    arts = arts_of(edition.settled)
    names |= {art_name(each.part.name, each.name, kind) for each in arts for kind in FORMATS}
    for settled in edition.variants:
        fit = settled.variant.label
        for kind in FORMATS:
            names |= {cut_sheet_name(fit, each.number, kind) for each in edition.layout.sheets}
            names |= {cut_part_name(fit, part.name, kind) for part in settled.parts}
        for paper in (*PAPERS, ROLL):
            names |= {template_name(fit, part.name, paper) for part in settled.parts}
    return frozenset(names)
