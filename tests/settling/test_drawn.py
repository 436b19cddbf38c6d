"""Parts taken from drawings: slots re-fitted about their centre line, the rest as drawn."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds
from kerfolio.model.feature_kind import ENGRAVING, HOLE, POCKET, SLOT, WINDOW, FeatureKind
from kerfolio.model.outline import Drawing, Drawn, DrawnElement, DrawnFeatureRule
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import Stock
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import Operation, SettledPart
from tests.settling.panels import stated, variant

Vertices = tuple[tuple[float, float, float], ...]


def element(name: str, vertices: Vertices, *groups: str, closed: bool = True) -> DrawnElement:
    return DrawnElement(name=name, names=(name, *groups), vertices=vertices, closed=closed)


def box(x: float, y: float, width: float, height: float, turn: float = 0.0) -> Vertices:
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    half = [(-width, -height), (width, -height), (width, height), (-width, height)]
    return tuple((x + (u * cos - v * sin) / 2, y + (u * sin + v * cos) / 2, 0.0) for u, v in half)


OUTLINE = element("outline", box(160, 120, 300, 200))
SLOTS = (
    element("a", box(110, 120, 60, 18), "slots"),
    element("b", box(210, 120, 60, 18, 30), "slots"),
)
BORE = element("bore", ((155, 60, 1.0), (165, 60, 1.0)))


def rule(name: str, kind: FeatureKind, takes: str = "", depth: str = "") -> DrawnFeatureRule:
    return DrawnFeatureRule(
        element=Named(name),
        kind=kind,
        takes=Named(takes) if takes else None,
        depth=Amount(depth) if depth else None,
    )


def drawn_plan(
    elements: tuple[DrawnElement, ...], *rules: DrawnFeatureRule, drawn_for: str = "18"
) -> tuple[Plan, Stock]:
    plan, stock = stated("h: {hole: {at: [9, 9], diameter: 8}}", relief="none")
    drawn = Drawn(
        file="p.svg", outline=Named("outline"), features=rules, drawn_for=Amount(drawn_for)
    )
    part = replace(plan.parts[0], shape=drawn, features=())
    drawing = Drawing(file="p.svg", elements=elements)
    return replace(plan, parts=(part, plan.parts[1]), drawings=(drawing,)), stock


def made(*args: object, thickness: float = 17.6, **named: str) -> SettledPart:
    settled, findings = settle(*drawn_plan(*args, **named), variant(thickness))  # type: ignore[arg-type]
    assert settled is not None, findings
    return settled.parts[0]


def refused(*args: object, **named: str) -> Finding:
    settled, findings = settle(*drawn_plan(*args, **named), variant(17.6))  # type: ignore[arg-type]
    assert settled is None
    (finding,) = findings
    return finding


@pytest.mark.parametrize("thickness", [11.6, 17.6, 18.2])
def test_drawn_slots_are_refitted_about_their_centre_lines(thickness: float) -> None:
    part = made((OUTLINE, *SLOTS), rule("slots", SLOT, "ply"), thickness=thickness)
    assert [each.name for each in part.features] == ["slots.1", "slots.2"]
    # The outline's lower left corner, drawn at 10, 20, is the part's 0,0.
    assert [each.at for each in part.features] == [
        pytest.approx((100, 100)),
        pytest.approx((200, 100)),
    ]
    for opening in part.plain.openings:
        assert area(opening) == pytest.approx((thickness + 0.2) * 60.2)
    turned = part.features[1].direction
    assert turned == pytest.approx((math.cos(math.pi / 6), 0.5))
    reason = f"{thickness} mm sheet + 2 x 0.1 mm fit"
    assert told(part.features[0].width.reason, METRIC) == reason
    # A slot is drawn as long as its tab: the fit is added at both ends, as it is to a typed one.
    assert part.features[0].length.value == pytest.approx(60.2)
    assert told(part.features[0].length.reason, METRIC) == "60 mm tab + 2 x 0.1 mm fit"


def test_a_slot_shorter_than_the_sheet_is_thick_is_refitted_across() -> None:
    short = element("a", box(110, 120, 10, 18))
    part = made((OUTLINE, short), rule("a", SLOT, "ply"))
    box_ = bounds(part.plain.openings[0])
    assert (box_.width, box_.height) == (pytest.approx(10.2), pytest.approx(17.8))


def eared(x: float, y: float, width: float, height: float, ear: float, turn: float) -> Vertices:
    """Return a slot with a disc of radius ``ear`` on each corner's bisector, rim on the corner.

    The disc opens each wall for the square root of two radii: a chord that is its diameter, so that
    a half turn of it lies outside the slot.
    """
    reach, rows = math.sqrt(2) * ear, []
    for u, v in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        a, b = u * width / 2, v * height / 2
        ends = ((a, b - v * reach), (a - u * reach, b))
        first, second = ends if u == v else ends[::-1]
        rows += [(*first, 1.0), (*second, 0.0)]
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    return tuple((x + a * cos - b * sin, y + a * sin + b * cos, bulge) for a, b, bulge in rows)


@pytest.mark.parametrize("turn", [0.0, 30.0, 90.0])
@pytest.mark.parametrize("ear", [1.5875, 3.175])
def test_dog_bones_of_the_makers_own_are_taken_as_such(ear: float, turn: float) -> None:
    """The slot between its walls is re-fitted; the least box round it is wider by the discs."""
    slot = element("a", eared(160, 120, 80, 18, ear, turn))
    assert bounds(Contour(eared(160, 120, 80, 18, ear, 0.0))).height > 18 + 0.5 * ear
    part = made((OUTLINE, slot), rule("a", SLOT, "ply"))
    (feature,) = part.features
    assert (feature.width.value, feature.length.value) == pytest.approx((17.8, 80.2))
    assert feature.at == pytest.approx((150, 100))
    assert area(part.plain.openings[0]) == pytest.approx(17.8 * 80.2)


def test_square_ears_are_dog_bones_and_other_bays_are_none() -> None:
    ears = ((0, 0), (6, 0), (6, 1.5), (54, 1.5), (54, 0), (60, 0), (60, 21), (54, 21), (54, 19.5))
    ears += ((6, 19.5), (6, 21), (0, 21))
    slot = element("a", tuple((x + 100, y + 100, 0.0) for x, y in ears))
    part = made((OUTLINE, slot), rule("a", SLOT, "ply"))
    assert part.features[0].width.value == pytest.approx(17.8)
    assert part.features[0].length.value == pytest.approx(60.2)
    bay = ((0, 0), (60, 0), (60, 18), (40, 18), (40, 21), (20, 21), (20, 18), (0, 18))
    finding = refused(
        (OUTLINE, element("a", tuple((x + 100, y + 100, 0.0) for x, y in bay))),
        rule("a", SLOT, "ply"),
    )
    assert finding.message == "slot `a` is 21 mm wide, drawn for 18 mm"


def test_a_drawn_circle_is_a_hole() -> None:
    part = made((OUTLINE, BORE), rule("bore", HOLE))
    (cut,) = [each for each in part.cuts if each.operation is Operation.HOLE]
    assert area(cut.contours[0]) == pytest.approx(math.pi * 25)
    assert part.features[0].at == pytest.approx((150, 40))


def test_open_lines_are_engraved_as_they_are() -> None:
    line = element("wave", ((50, 50, 0.0), (80, 60, 0.5), (110, 50, 0.0)), closed=False)
    part = made((OUTLINE, line), rule("wave", ENGRAVING, depth="0.5"))
    (cut,) = [each for each in part.cuts if each.operation is Operation.ENGRAVE]
    assert cut.depth == 0.5
    assert cut.contours[0].vertices == ((40, 30, 0.0), (70, 40, 0.5), (100, 30, 0.0))


def test_a_window_and_a_pocket_stay_as_drawn() -> None:
    window = element("grip", box(160, 200, 80, 20))
    dish = element("dish", box(60, 60, 40, 40))
    rules = (rule("grip", WINDOW), rule("dish", POCKET, depth="6"))
    part = made((OUTLINE, window, dish), *rules)
    assert area(part.plain) == pytest.approx(300 * 200 - 80 * 20)
    assert part.cuts[0].operation is Operation.POCKET
    assert area(part.cuts[0].contours[0]) == pytest.approx(1600)


@pytest.mark.parametrize(
    ("elements", "rules", "expected"),
    [
        (
            (OUTLINE, element("a", box(110, 120, 60, 21.4))),
            (rule("a", SLOT, "ply"),),
            ("drawn-slot-width", "slot `a` is 21.4 mm wide, drawn for 18 mm"),
        ),
        (
            (OUTLINE, element("a", ((90, 90, 0.0), (150, 90, 0.0), (90, 150, 0.0)))),
            (rule("a", SLOT, "ply"),),
            ("no-slot", "element `a` is no straight slot"),
        ),
        (
            (OUTLINE, element("a", box(110, 120, 20, 20))),
            (rule("a", HOLE),),
            ("not-round", "element `a` is not round"),
        ),
        (
            (OUTLINE, *SLOTS),
            (rule("slot", SLOT, "ply"),),
            ("no-element", "no element `slot` in `p.svg`"),
        ),
        (
            (OUTLINE, *SLOTS),
            (rule("slots", SLOT, "ply"), rule("b", WINDOW)),
            ("drawn-twice", "element `b` is `slots` and `b`"),
        ),
        (
            (OUTLINE, element("c", box(60, 60, 10, 10), "outline")),
            (),
            ("many-outlines", "`outline` names 2 elements of `p.svg`"),
        ),
        (
            (element("outline", box(0, 0, 9, 9), closed=False),),
            (),
            ("open-path", "element `outline` is open at -4.5 mm, 4.5 mm"),
        ),
        (
            (element("outline", ((0, 0, 0.0), (40, 40, 0.0), (40, 0, 0.0), (0, 40, 0.0))),),
            (),
            ("self-crossing", "element `outline` crosses itself at 20 mm, 20 mm"),
        ),
        (
            (element("outline", ((0, 0, 0.0), (40, 0, 0.0), (20, 0, 0.0))),),
            (),
            ("zero-area", "element `outline` encloses no area"),
        ),
        (
            (OUTLINE, element("dish", box(60, 60, 40, 40))),
            (rule("dish", POCKET),),
            ("no-depth", "`dish` states no depth"),
        ),
    ],
)
def test_what_cannot_be_taken_from_a_drawing_names_the_element(
    elements: tuple[DrawnElement, ...],
    rules: tuple[DrawnFeatureRule, ...],
    expected: tuple[str, str],
) -> None:
    finding = refused(elements, *rules)
    assert (finding.rule, finding.message) == expected


def advice_for(elements: tuple[DrawnElement, ...], *rules: DrawnFeatureRule) -> str:
    return refused(elements, *rules).advice


def test_an_open_path_is_joined_in_the_drawing_and_has_no_z() -> None:
    gap = ((0, 0, 0.0), (90, 0, 0.0), (90, 90, 0.0), (0, 0.4, 0.0))
    advice = advice_for((element("outline", gap, closed=False),))
    assert advice == "Join its ends in the drawing: they are 0.4 mm apart."


def test_one_of_several_elements_can_be_named_as_findings_name_it() -> None:
    whole = element("sheet.1", box(160, 120, 300, 200))
    hole = element("sheet.2", box(160, 120, 100, 50))
    elements = tuple(replace(each, names=("outline",)) for each in (whole, hole))
    assert advice_for(elements) == (
        "Name one: `sheet.1`, `sheet.2`; or add a point inside it, such as `at: [160, 120]`; "
        "or give the outline an id of its own."
    )
    plan, stock = drawn_plan(elements)
    shape = plan.parts[0].shape
    assert isinstance(shape, Drawn)
    part = replace(plan.parts[0], shape=replace(shape, outline=Named("sheet.1")))
    settled, findings = settle(replace(plan, parts=(part, plan.parts[1])), stock, variant(17.6))
    assert findings == ()
    assert settled is not None
    assert settled.parts[0].size == (300, 200)


def test_elements_of_which_none_is_closed_are_not_offered() -> None:
    line = element("outline", ((0, 0, 0.0), (90, 0, 0.0)), closed=False)
    assert advice_for((line, replace(line, name="other"))) == (
        "None of them is closed: join their ends, and give the outline an id of its own."
    )


def test_a_drawing_that_is_not_there_is_told() -> None:
    plan, stock = drawn_plan((OUTLINE,))
    settled, findings = settle(replace(plan, drawings=()), stock, variant(17.6))
    assert settled is None
    assert [each.message for each in findings] == ["drawing `p.svg` gave no lines"]


def test_a_drawn_hole_with_a_depth_is_blind() -> None:
    part = made((OUTLINE, BORE), rule("bore", HOLE, depth="6"))
    (bore,) = part.features
    assert bore.depth is not None
    assert (bore.depth.value, told(bore.depth.reason, METRIC)) == (6.0, "stated: 6")
    assert part.plain.openings == ()
    (cut,) = (each for each in part.cuts if each.feature == "bore")
    assert (cut.operation, cut.depth) == (Operation.HOLE, 6.0)
    (contour,) = cut.contours
    assert area(contour) == pytest.approx(math.pi * 25, rel=1e-6)


def test_what_a_drawing_could_not_give_is_not_blamed_again() -> None:
    plan, stock = drawn_plan((OUTLINE,), rule("slots", SLOT, "ply"), rule("bore", HOLE))
    unread = replace(plan.drawings[0], unread=frozenset({"slots", "bore"}))
    settled, findings = settle(replace(plan, drawings=(unread,)), stock, variant(17.6))
    assert (settled, findings) == (None, ())
    assert refused((OUTLINE,), rule("slots", SLOT, "ply")).rule == "no-element"
