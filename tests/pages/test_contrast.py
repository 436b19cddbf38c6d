"""The theme's colours by WCAG 2.2: success criteria 1.4.3 (text) and 1.4.11 (other marks)."""

from __future__ import annotations

import re

import pytest

from kerfolio.drawing.vocabulary import Ink
from kerfolio.pages.theme import stylesheet

CSS = stylesheet()
LIGHT, DARK = (
    dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", block))
    for block in re.findall(r":root \{([^}]*--paper[^}]*)\}", CSS)[:2]
)
TEXT, MARK = 4.5, 3.0
TONES = ("light", "mid", "dark")
"""How dark the faces of solids are drawn, by the way they look."""


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


@pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(
    ("front", "back", "least"),
    [
        ("ink", "paper", TEXT),
        ("soft", "paper", TEXT),
        ("link", "paper", TEXT),
        ("on-accent", "accent", TEXT),
        ("on-accent", "link", TEXT),
        ("accent", "paper", MARK),
        ("paper", "ink", TEXT),
        ("soft", "wood", MARK),
        *(("ink", back, TEXT) for back in ("wood", "wood-dark", "waste")),
        *((ink, "paper", MARK) for ink in ("engrave", "pocket", "hole", "opening", "outline")),
        *(("ink", f"{whose}-{tone}", TEXT) for whose in ("face", "new") for tone in TONES),
        *(("new-line", f"new-{tone}", MARK) for tone in TONES),
    ],
)
def test_contrast(scheme: dict[str, str], front: str, back: str, least: float) -> None:
    assert contrast(scheme[front], scheme[back]) >= least


def test_every_role_of_ink_has_a_colour_in_the_theme() -> None:
    for ink in Ink:
        assert f".k-line-{ink} {{ stroke:" in CSS
        assert f".k-fill-{ink} {{ fill:" in CSS
