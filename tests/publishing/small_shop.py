"""A workshop as small as can be, with something of everything, for tests that publish often."""

from __future__ import annotations

from pathlib import Path

from PIL import Image

from tests.plans import lay_down

WORKSHOP = """\
workshop: Small Shop
maker: Ada Example
licence: CC0-1.0
look: {accent: "#224466", logo: mark.svg}
"""

BOARD = """\
plan: Plain board
version: 1.0.0
summary: A board.
licence: CC0-1.0
sizes: {w: 200}
sheets: {ply: {stock: birch-plywood-18, size: 600 x 300, published-for: 18, fit: 0.1}}
parts:
  board: {sheet: ply, outline: {rectangle: [w, 100]}}
steps: [{title: Wipe it, add: [board], text: Done.}]
photos: [{file: whole.png, alt: The board}]
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""

STOCK = """\
sheets:
  birch-plywood-18: {prices: {1220 x 2440: 90.50}}
"""

TRIAL = "trials: [{date: 2026-10-01, title: A cut, plan: board, public: yes}]\n"

ABOUT = "# About\n\nHello.\n"

LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M0 0h9v9z"/></svg>'


def small_shop(folder: Path) -> Path:
    """Write the workshop, with one plan, ``board``."""
    shop = lay_down(folder, BOARD, "board", WORKSHOP)
    for name, text in (
        ("stock/own.yaml", STOCK),
        ("log/day.yaml", TRIAL),
        ("pages/about.md", ABOUT),
        ("mark.svg", LOGO),
    ):
        (shop / name).parent.mkdir(exist_ok=True)
        (shop / name).write_text(text, "utf-8")
    photograph(shop / "plans" / "board" / "whole.png", 90)
    return shop


def photograph(file: Path, grey: int) -> None:
    """Write a picture of one grey."""
    Image.new("RGB", (30, 20), (grey, grey, grey)).save(file)


def another(shop: Path, name: str) -> Path:
    """Copy the plan under another name and title; return its file."""
    folder = shop / "plans" / name
    folder.mkdir()
    photograph(folder / "whole.png", 40)
    text = BOARD.replace("Plain board", f"The {name}")
    (folder / "plan.yaml").write_text(text, "utf-8")
    return folder / "plan.yaml"
