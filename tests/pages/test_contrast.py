"""The colours of looks by WCAG 2.2: success criteria 1.4.3 (text) and 1.4.11 (other marks)."""

from __future__ import annotations

import re
from itertools import pairwise, product

import pytest

from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Look
from kerfolio.pages.theme import stylesheet

LOOKS = {
    "usual": Look(),
    "faintest": Look(accent="#767676", ground="#ffffff"),
    "darkest ground": Look(accent="#1d3fb0", ground="#e2e2e2"),
    "wood's own hue": Look(accent="#8a5a00", ground="#fbf8f2"),
    "black": Look(accent="#000000", ground="#ffffff"),
    "loud": Look(accent="#b0005c", ground="#f2fff2"),
}
TEXT, MARK, TINT = 4.5, 3.0, 1.3
TONES = ("light", "mid", "dark")
"""How dark the faces of solids are drawn, by the way they look."""


def schemes(look: Look) -> list[dict[str, str]]:
    """The colours of a light screen, a dark one and paper, as the style sheet has them."""
    blocks = re.findall(r":root \{([^}]*--paper[^}]*)\}", stylesheet(look))
    return [dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", block)) for block in blocks]


SCHEMES = [
    pytest.param(scheme, id=f"{name}, {where}")
    for name, look in LOOKS.items()
    for where, scheme in zip(("light", "dark", "paper"), schemes(look), strict=True)
]
each_scheme = pytest.mark.parametrize("scheme", SCHEMES)


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_formula_itself() -> None:
    """Black on white is 21:1 by definition; #777 on white is the well-known 4.48:1."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


NEEDED = [
    ("ink", "paper", TEXT),
    ("soft", "paper", TEXT),
    ("soft", "waste", TEXT),
    ("accent", "paper", TEXT),
    ("paper", "ink", TEXT),
    ("soft", "wood", MARK),
    *(("ink", back, TEXT) for back in ("wood", "wood-dark", "waste")),
    *(
        (ink, back, MARK)
        for ink in ("engrave", "pocket", "hole", "opening", "outline", "bridge")
        for back in ("paper", "wood")
    ),
    *(("ink", f"{whose}-{tone}", TEXT) for whose in ("face", "new") for tone in TONES),
    *(("new-line", f"new-{tone}", MARK) for tone in TONES),
]


@each_scheme
def test_contrast(scheme: dict[str, str]) -> None:
    found = {each: contrast(scheme[each[0]], scheme[each[1]]) for each in NEEDED}
    assert {each: ratio for each, ratio in found.items() if ratio < each[2]} == {}


@each_scheme
def test_tints_are_told_apart_by_lightness_alone(scheme: dict[str, str]) -> None:
    """As those need who see few hues: face from face, new from standing, all from the stage."""
    faces, new = ([scheme[f"{whose}-{tone}"] for tone in TONES] for whose in ("face", "new"))
    pairs = [*pairwise(faces), *pairwise(new), *zip(faces, new, strict=True)]
    dark_ground = luminance(scheme["paper"]) < 0.5
    nearest = faces[-1] if dark_ground else faces[1]
    pairs += [(nearest, scheme["paper"]), (faces[-1], scheme["waste"])]
    pairs += [(scheme["wood"], scheme["wood-dark"])]
    assert min(contrast(*pair) for pair in pairs) >= TINT


def test_every_role_of_ink_has_a_colour_in_the_theme() -> None:
    css = stylesheet(Look())
    for ink, scheme in product(Ink, schemes(Look())):
        assert f".k-line-{ink} {{ stroke:" in css
        assert f".k-fill-{ink} {{ fill:" in css
        assert str(ink) in scheme


def test_the_style_sheet_itself_names_no_colour() -> None:
    """All come from the look: what the theme's files say of colours are properties."""
    own = stylesheet(Look()).partition("/* Workbench.")[2]
    assert re.findall(r"#[0-9a-f]{6}\b|rgba?\(", own) == []
