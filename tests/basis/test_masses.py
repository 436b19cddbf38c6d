"""Masses and forces in words; a pound is 0.45359237 kg, a pound-force 4.4482216 N (NIST SP 811)."""

from __future__ import annotations

from kerfolio.basis.masses import force_text, load_pair, mass_text
from kerfolio.basis.reader import INCHES, METRIC


def test_masses_in_both_systems() -> None:
    assert mass_text(8.2, METRIC) == "8.2 kg (18.1 lb)"
    assert mass_text(8.2, INCHES) == "18.1 lb (8.2 kg)"
    assert mass_text(0.25, METRIC) == "0.25 kg (0.55 lb)"


def test_forces_in_both_systems() -> None:
    assert force_text(44.482216, METRIC) == "44 N (10.0 lbf)"
    assert force_text(16.344, INCHES) == "3.7 lbf (16 N)"


def test_a_pound_is_a_pound() -> None:
    """1 lb = 0.453 592 37 kg exactly (international yard and pound agreement, 1959)."""
    assert mass_text(4.5359237, METRIC) == "4.5 kg (10.0 lb)"
    assert mass_text(0.45359237, INCHES) == "1.00 lb (0.45 kg)"


def test_loads_are_rounded_down_and_whole_from_ten_up() -> None:
    assert load_pair(60, METRIC) == ("60 kg", "132 lb")
    assert load_pair(282.99, INCHES) == ("623 lb", "282 kg")
    assert load_pair(5.39, METRIC) == ("5.3 kg", "11 lb")
    assert load_pair(0.0, METRIC) == ("0 kg", "0 lb")
    assert load_pair(4.5359237, INCHES) == ("10 lb", "4.5 kg")
