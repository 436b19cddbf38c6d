"""Drawn parts read from SVG: true sizes, names, and what is wrong told by name and line."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import Severity, in_unit
from kerfolio.basis.place import Place
from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.measure import area, bounds, centroid
from kerfolio.geometry.shapes import circle, ellipse, rectangle, rounded_slot
from kerfolio.model.statement import Named
from kerfolio.reading.drawn_said import SaidOfDrawing
from kerfolio.reading.drawn_svg import read_svg
from tests.reading.drawings import Svg, contour, rules


@pytest.fixture
def svg(tmp_path: Path) -> Svg:
    return Svg(tmp_path)


@pytest.mark.parametrize(
    "root",
    [
        'width="200mm" height="100mm" viewBox="0 0 200 100"',
        'width="20cm" height="10cm" viewBox="0 0 200 100"',
        'width="200mm" height="100mm" viewBox="0 0 200 100" preserveAspectRatio="none"',
        'width="200mm" viewBox="0 0 200 100"',
        'height="100mm" viewBox="0 0 200 100"',
        f'width="{200 / 25.4}in" height="{100 / 25.4}in" viewBox="0 0 200 100"',
        f'width="{200 / 25.4 * 72}pt" height="{100 / 25.4 * 72}pt" viewBox="0 0 200 100"',
        f'width="{200 / 25.4 * 96}px" height="{100 / 25.4 * 96}" viewBox="0 0 200 100"',
        'width="300mm" height="100mm" viewBox="0 0 200 100" preserveAspectRatio="xMinYMin"',
    ],
)
def test_a_rectangle_has_its_true_size_in_every_unit(svg: Svg, root: str) -> None:
    found = tidy(svg.one('<rect x="10" y="10" width="60" height="20"/>', root))
    expected = rectangle(10, 70, 70, 90)
    for ours, theirs in zip(found.vertices, expected.vertices, strict=True):
        assert ours == pytest.approx(theirs, abs=1e-6)


def test_user_units_are_px_where_the_drawing_has_no_view_box(svg: Svg) -> None:
    """96 px are one inch (CSS Values and Units)."""
    disc = svg.one('<circle cx="96" cy="96" r="48"/>', 'width="4in" height="3in"')
    assert tidy(disc) == circle((25.4, 50.8), 25.4)


def test_a_drawing_without_size_is_read_as_px_and_says_so(svg: Svg) -> None:
    drawing, findings = svg.read('<rect width="96" height="192"/>', 'viewBox="0 0 960 960"')
    assert drawing is not None
    assert bounds(contour(drawing.elements[0])).height == pytest.approx(50.8)
    (finding,) = findings
    assert finding.rule == "missing-size"
    assert finding.message == "no size stated: 1 unit is read as 1/96 in"
    assert finding.severity is Severity.WARNING
    assert svg.told('<rect width="96" height="192"/>', 'width="100%"') == ["missing-size"]


def test_a_size_in_px_is_noted(svg: Svg) -> None:
    _, (finding,) = svg.read('<rect width="9" height="9"/>', 'width="96px" height="96px"')
    assert str(finding).splitlines()[0] == (
        "drawings/part.svg:1:1: note: width `96px` is in px: read at 96 to the inch, 25.4 mm "
        "[size-in-px]"
    )


def test_a_size_without_a_unit_tells_what_it_comes_to(svg: Svg) -> None:
    """A number alone counts px, 96 to the inch (SVG 2, section 8.9; CSS Values and Units)."""
    root = 'width="9216" height="4608" viewBox="0 0 96 48"'
    drawing, (finding,) = svg.read('<rect width="96" height="48"/>', root)
    assert drawing is not None
    assert bounds(contour(drawing.elements[0])).width == pytest.approx(96 * 25.4)
    (told,) = in_unit([finding], "in")
    assert told.message == "width `9216` is without a unit: read at 96 to the inch, 96 in"
    assert told.advice == (
        "Set the drawing's width and height in inches, or write `unit: in` in the part's `drawing`."
    )


@pytest.mark.parametrize(
    ("root", "overruled"),
    [
        ('width="96" height="48"', False),
        ('width="96" height="48" viewBox="0 0 96 48"', False),
        ('width="96px" height="48px"', False),
        ('viewBox="0 0 96 48"', False),
        ('width="96in" height="48in" viewBox="0 0 96 48"', False),
        ('width="96mm" height="48mm" viewBox="0 0 96 48"', True),
    ],
)
def test_the_plan_says_what_the_numbers_of_the_size_are_in(
    svg: Svg, root: str, overruled: bool
) -> None:
    svg.read('<rect x="12" width="84" height="48"/>', root)
    asked = SaidOfDrawing(unit=Named("in"))
    drawing, findings = read_svg(svg.folder / "part.svg", "drawings/part.svg", asked=asked)
    assert drawing is not None
    box = bounds(contour(drawing.elements[0]))
    assert (box.x0, box.x1, box.y0, box.y1) == pytest.approx(
        (12 * 25.4, 96 * 25.4, 0, 48 * 25.4), abs=1e-9
    )
    assert rules(findings) == (["unit-overruled"] if overruled else [])


def test_guides_are_left_out_by_group_and_by_id(svg: Svg) -> None:
    body = '<g id="guides"><path d="M0 0H9"/></g><path id="rule" d="M0 5H9"/><rect id="a" {}/>'
    svg.read(body.format('width="9" height="9"'))
    asked = SaidOfDrawing(guides=(Named("guides"), Named("rule")))
    drawing, findings = read_svg(svg.folder / "part.svg", "drawings/part.svg", asked=asked)
    assert drawing is not None
    assert ([each.name for each in drawing.elements], findings) == (["a"], ())


@pytest.mark.parametrize(
    "root", ['width="3em" height="5em"', 'width="0" height="5"', 'width="9" viewBox="0 0 9"']
)
def test_a_size_that_cannot_be_read_is_an_error(svg: Svg, root: str) -> None:
    drawing, findings = svg.read('<rect width="9" height="9"/>', root)
    assert drawing is None
    assert rules(findings) == ["unreadable-size"]


def test_every_basic_shape_is_read(svg: Svg) -> None:
    shapes = svg.elements(
        '<rect x="10" y="10" width="60" height="20" rx="4"/>'
        '<circle cx="30" cy="60" r="5"/>'
        '<ellipse cx="60" cy="60" rx="9" ry="5"/>'
        '<polygon points="80,80 90,80 90,90"/>'
        '<polyline points="100,10 110,10 110,20 100,10"/>'
        '<path d="M120 10 h10 v10 z"/>'
        '<line x1="150" y1="10" x2="160" y2="10"/>'
    )
    assert [tidy(contour(each)) for each in shapes[:2]] == [
        rectangle(10, 70, 70, 90, round=4),
        circle((30, 40), 10),
    ]
    assert area(contour(shapes[2])) == pytest.approx(area(ellipse((0, 0), 18, 10)), rel=1e-3)
    assert [each.closed for each in shapes[3:]] == [True, True, True, False]
    assert [area(contour(each)) for each in shapes[3:6]] == pytest.approx([50, 50, 50])


def test_rect_radii_follow_the_rules_of_svg(svg: Svg) -> None:
    """SVG 2 section 10.2: a radius given alone counts for both axes; half the side is the most."""
    pill = svg.one('<rect width="40" height="10" ry="99"/>')
    assert area(pill) == pytest.approx(400 - 10 * 40 + math.pi * 20 * 5, rel=2e-3)
    assert tidy(svg.one('<rect width="40" height="10" rx="5" ry="auto"/>')) == rounded_slot(
        (20, 95), 40, 10
    )
    plain = svg.one('<rect width="40" height="10" rx="0" ry="3"/>')
    assert tidy(plain) == rectangle(0, 90, 40, 100)


def test_percentages_refer_to_the_view_box(svg: Svg) -> None:
    plate = svg.one('<rect x="5%" y="10%" width="50%" height="50%"/>')
    assert tidy(plate) == rectangle(10, 40, 110, 90)


def test_nested_transforms_and_groups_add_up(svg: Svg) -> None:
    hole = svg.one(
        '<g transform="translate(50 50)"><g transform="rotate(90) scale(2)">'
        '<circle cx="10" r="3" transform="translate(1)"/></g></g>'
    )
    assert tidy(hole) == circle((50, 28), 12)


def test_a_style_transform_wins_over_the_attribute(svg: Svg) -> None:
    hole = svg.one('<circle r="3" transform="scale(9)" style="transform: translate(5px, 7px)"/>')
    assert tidy(hole) == circle((5, 93), 6)


def test_circles_stay_arcs_unless_they_are_squeezed(svg: Svg) -> None:
    turned = svg.one('<circle cx="9" r="3" transform="rotate(30) scale(-2 2)"/>')
    assert {round(edge.arc.radius, 9) for edge in edges(turned) if edge.arc} == {6}
    squeezed = svg.one('<circle r="30" transform="translate(50 50) skewX(30)"/>')
    assert all(edge.arc is None for edge in edges(squeezed))
    assert area(squeezed) == pytest.approx(math.pi * 900, rel=1e-3)


def test_uses_place_shapes_groups_and_symbols(svg: Svg) -> None:
    found = svg.elements(
        '<defs><circle id="hole" r="4"/><g id="pair"><use href="#hole" x="5"/>'
        '<use xlink:href="#hole" x="-5"/></g>'
        '<symbol id="sign" viewBox="0 0 10 10"><rect width="10" height="10"/></symbol></defs>'
        '<use href="#pair" transform="translate(50 50)" id="bolts"/>'
        '<use href="#sign" x="100" y="20" width="40" height="30"/>'
    )
    assert [tidy(contour(each)) for each in found] == [
        circle((55, 50), 8),
        circle((45, 50), 8),
        rectangle(105, 50, 135, 80),
    ]
    assert found[0].names == ("hole", "pair", "bolts")
    assert [each.name for each in found[:2]] == ["hole", "hole.2"]


def test_an_inner_drawing_has_its_own_view_box(svg: Svg) -> None:
    found = svg.one(
        '<svg x="20" y="30" width="50%" height="50" viewBox="0 0 10 10" '
        'preserveAspectRatio="xMinYMin"><rect width="10" height="5"/></svg>'
    )
    assert tidy(found) == rectangle(20, 45, 70, 70)


def test_ids_labels_titles_and_groups_are_names(svg: Svg) -> None:
    (hole,) = svg.elements(
        '<g id="layer1" xmlns:e="http://example.org/editor" e:label="bolt holes">'
        '<g data-name="left"><circle r="3" id="h1"><title>first  hole</title></circle></g></g>'
    )
    assert hole.name == "h1"
    assert hole.names == ("h1", "first hole", "left", "layer1", "bolt holes")
    assert hole.place.line == 1
    (plain,) = svg.elements('<circle r="3"/>')
    assert plain.name == "circle on line 1"


def test_the_parts_of_a_path_are_numbered(svg: Svg) -> None:
    found = svg.elements('<path id="slots" d="M0 0h9v9h-9z M20 0h9v9h-9z"/>')
    assert [each.name for each in found] == ["slots.1", "slots.2"]
    assert all(each.names == ("slots",) for each in found)


def test_loose_lines_of_a_group_are_joined(svg: Svg) -> None:
    found = svg.elements(
        '<g id="outline"><line x1="0" y1="0" x2="90" y2="0"/>'
        '<path d="M90 0 A 20 20 0 0 1 90 40"/><polyline points="0,0 0,40 90,40"/></g>'
    )
    (outline,) = found
    assert outline.closed
    assert outline.names == ("outline",)
    assert area(contour(outline)) == pytest.approx(90 * 40 + math.pi * 400 / 2)


def test_a_path_drawn_twice_counts_once_and_is_noted(svg: Svg) -> None:
    drawing, findings = svg.read('<rect id="a" width="9" height="9"/><rect width="9" height="9"/>')
    assert drawing is not None
    assert [each.name for each in drawing.elements] == ["a"]
    assert [finding.message for finding in findings] == [
        "`rect on line 1` is drawn twice: one is left out"
    ]


def test_faults_are_told_by_name_with_their_line(svg: Svg) -> None:
    _, findings = svg.read(
        '\n<path id="gap" d="M0 0h50v20h-50"/>\n<path id="bow" d="M0 50l10 10h-10l10 -10z"/>'
        '\n<path id="flat" d="M0 90h50z"/>\n<rect id="none" width="0" height="9"/>'
    )
    assert [(f.rule, f.place.line, f.message) for f in findings] == [
        ("open-path", 2, "`gap` is open: its ends are 20 mm apart"),
        ("self-crossing", 3, "`bow` crosses itself at 5, 45 mm"),
        ("zero-area", 4, "`flat` encloses no area"),
        ("zero-area", 5, "`none` encloses no area"),
    ]
    assert {finding.severity for finding in findings} == {Severity.WARNING}


def test_open_and_crossing_paths_are_fine_in_art(svg: Svg) -> None:
    text = '<svg width="9mm" height="9mm"><path d="M0 0 L9 9 L9 0 L0 9"/></svg>'
    assert rules(svg.whole(text)[1]) == ["open-path", "self-crossing"]
    assert svg.whole(text, art=True)[1] == ()


@pytest.mark.parametrize(
    ("body", "rule", "message"),
    [
        (
            '<path id="a" d="M0 0 L 10"/>',
            "broken-path",
            "`a`: path breaks off at `the end` (character 10): L takes 2 numbers",
        ),
        (
            '<polygon id="a" points="0,0 5,5 9"/>',
            "broken-path",
            "`a`: points break off: 5 numbers, pairs are needed",
        ),
        ('<circle id="a" r="3em"/>', "broken-path", "`a`: `3em`: unit `em` is not read here"),
        ('<rect id="a" width="-3" height="3"/>', "broken-path", "`a`: a rect with a side below 0"),
        ('<circle id="a" r="-3"/>', "broken-path", "`a`: a radius below 0"),
        (
            '<circle r="3" transform="turn(3)"/>',
            "broken-transform",
            "transform `turn(3)` is not known",
        ),
        (
            '<circle r="3" transform="scale(2)" style="transform-origin: 5px"/>',
            "broken-transform",
            "transform-origin `5px` is not read",
        ),
        ('<use href="#none"/>', "unknown-reference", "`#none` is not in the drawing"),
        (
            '<use href="other.svg#hole"/>',
            "outside-reference",
            "`other.svg#hole` lies outside the drawing",
        ),
        (
            '<g id="loop"><use href="#loop"/></g>',
            "unknown-reference",
            "`#loop` is used within itself",
        ),
        ("<script>alert(1)</script>", "unsafe-drawing", "script in a drawing"),
        ('<circle r="3" onclick="x()"/>', "unsafe-drawing", "script in a drawing"),
        ("<style>@import 'x.css'</style>", "outside-reference", "style sheet from another file"),
    ],
)
def test_what_cannot_be_read_is_an_error_and_the_rest_is_read(
    svg: Svg, body: str, rule: str, message: str
) -> None:
    drawing, findings = svg.read(f'<rect id="ok" width="9" height="9"/>{body}')
    assert drawing is not None
    assert drawing.elements[0].name == "ok"
    errors = [finding for finding in findings if finding.severity is Severity.ERROR]
    assert [(finding.rule, finding.message) for finding in errors] == [(rule, message)]
    assert errors[0].place.line == 1


def test_text_pictures_and_hidden_things_are_noted(svg: Svg) -> None:
    _, findings = svg.read(
        '<rect width="9" height="9"/><text>a</text><text>b</text><image href="x.png"/>'
        '<g style="display: none"><circle r="3"/></g><clipPath><circle r="99"/></clipPath>'
    )
    assert [finding.message for finding in findings] == [
        "text is ignored (2 times)",
        "picture is ignored",
        "hidden element is ignored",
    ]
    assert [finding.advice for finding in findings] == [
        "Turn the text into paths to have it cut.",
        "Draw its lines as paths to have them cut.",
        "Show it in the drawing to have it cut.",
    ]
    assert {finding.severity for finding in findings} == {Severity.NOTE}


def test_a_plain_document_type_is_harmless_but_declarations_are_refused(svg: Svg) -> None:
    body = '<svg width="9mm" height="9mm" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'
    kind = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "svg11.dtd">'
    assert svg.whole(kind + body)[1] == ()
    drawing, findings = svg.whole('<!DOCTYPE svg [<!ENTITY a "b">]>' + body)
    assert drawing is None
    assert rules(findings) == ["unsafe-drawing"]
    bomb = '<!DOCTYPE s [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>' + body
    assert rules(svg.whole(bomb)[1]) == ["unsafe-drawing"]


@pytest.mark.parametrize(
    ("text", "rule", "line"),
    [
        (b"", "unreadable-drawing", 1),
        (b"\x00\x01\x02", "unreadable-drawing", 1),
        (b"<svg>\n<g>\n</svg>", "unreadable-drawing", 3),
        (b"<html><body/></html>", "unreadable-drawing", 1),
        (b'<?xml version="1.0" encoding="no-such"?><svg/>', "unreadable-drawing", 0),
        (b'<svg width="9mm" height="9mm"/>', "empty-drawing", 0),
        (b'<svg width="9mm" height="9mm"><text>x</text></svg>', "ignored-element", 1),
        (b"<svg>" + b"<g>" * 300, "drawing-too-large", 1),
    ],
)
def test_files_that_are_no_drawing_are_told(svg: Svg, text: bytes, rule: str, line: int) -> None:
    drawing, findings = svg.whole(text)
    assert drawing is None
    told = {finding.rule: finding.place for finding in findings}
    assert told[rule].line == line or told[rule].line in (0, 1)


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    drawing, (finding,) = read_svg(tmp_path / "no.svg", "drawings/no.svg")
    assert drawing is None
    assert finding.rule == "missing-file"
    assert finding.message == "no drawing `drawings/no.svg`"
    assert finding.place == Place("drawings/no.svg")
    assert read_svg(tmp_path, "drawings")[0] is None


def test_other_encodings_are_read(svg: Svg) -> None:
    text = (
        '<?xml version="1.0" encoding="UTF-16"?><svg width="9mm" height="9mm" '
        'viewBox="0 0 9 9"><rect id="Füße" width="9" height="9"/></svg>'
    )
    drawing, findings = svg.whole(text.encode("utf-16"))
    assert drawing is not None
    assert drawing.elements[0].name == "Füße"
    assert findings == ()


def test_uses_that_multiply_are_bounded(svg: Svg) -> None:
    doubling = "".join(
        f'<g id="g{n}"><use href="#g{n - 1}"/><use href="#g{n - 1}"/></g>' for n in range(1, 30)
    )
    _, findings = svg.read(f'<defs><circle id="g0" r="1"/>{doubling}</defs><use href="#g29"/>')
    assert rules(findings) == ["drawing-too-large"]
    assert len(findings) < 40


def test_the_order_of_the_file_is_kept(svg: Svg) -> None:
    found = svg.elements("".join(f'<circle id="c{n}" cx="{9 * n}" r="3"/>' for n in range(5)))
    assert [each.name for each in found] == [f"c{n}" for n in range(5)]
    assert [centroid(contour(each))[0] for each in found] == pytest.approx([0, 9, 18, 27, 36])


TAGS = st.sampled_from(("g", "rect", "circle", "path", "use", "svg", "text", "symbol", "line"))
NAMES = st.sampled_from(
    ("id", "d", "width", "height", "x", "r", "cx", "points", "transform", "href", "viewBox", "x1")
)
VALUES = st.text(alphabet='MLAZ0123456789.,-# ab%()emtrnslo"<&', max_size=20)


@st.composite
def markup(draw: st.DrawFn, depth: int = 3) -> str:
    tag = draw(TAGS)
    pairs = draw(st.dictionaries(NAMES, VALUES, max_size=4))
    attributes = "".join(
        f' {name}="{value.replace("&", "&amp;").replace("<", "&lt;").replace(chr(34), "")}"'
        for name, value in pairs.items()
    )
    inner = "".join(draw(st.lists(markup(depth - 1), max_size=2))) if depth else ""
    return f"<{tag}{attributes}>{inner}</{tag}>"


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(markup())
def test_any_markup_gives_findings_and_never_an_exception(svg: Svg, body: str) -> None:
    drawing, findings = svg.read(body)
    assert drawing is not None or findings
    for element in drawing.elements if drawing else ():
        assert all(math.isfinite(number) for vertex in element.vertices for number in vertex)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_give_findings_and_never_an_exception(svg: Svg, data: bytes) -> None:
    drawing, findings = svg.whole(data)
    assert drawing is None
    assert findings
