"""What is printed for readers of German: in their words, with their decimal mark."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.edition.edition import Edition
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.saw import saw_plan
from kerfolio.paper.coupon_sheet import coupon_pdf
from kerfolio.paper.saw_sheets import saw_pdf
from kerfolio.paper.template import template_pdf
from tests.paper.editions import A4, stool
from tests.paper.printed import layout_pdf
from tests.paper.reading import texts


def german() -> Edition:
    made = stool()
    return replace(made, identity=replace(made.identity, language="de"))


def test_sheets_are_told_in_german() -> None:
    (page,) = texts(layout_pdf(german(), A4))
    assert "Platte 1 von 1 Birch plywood 18 mm, gezeichnet für gemessene 17,80 mm." in page
    assert "ZEICHEN STÜCK GRÖSSE ÜBER ALLES GEDREHT" in page
    assert "Harbour stool · Ausgabe 1.2.0 · Legeplan, 17,80 mm dick Seite 1 von 1" in page
    (page,) = texts(coupon_pdf(german(), A4))
    assert "SCHRITTE" in page
    saw = texts(saw_pdf(german(), saw_plan(german().settled), (), A4))[0]
    assert "1–2 Platte Kante besäumen: unten und links" in saw


def test_templates_are_told_in_german() -> None:
    made = german()
    square = Stroke(contour=rectangle(0.0, 0.0, 50.0, 50.0))
    drawn = Drawing(box=(0.0, 0.0, 50.0, 50.0), items=(square,))
    drawings = {part.name: drawn for part in made.settled.parts}
    pages = texts(template_pdf(made.settled, drawings, None, made.identity))
    assert "360,0 mm (14,17 in) breit, 450,0 mm (17,72 in) hoch" in pages[0]
    assert "A Side · ganz · Seite 1 von 4 · mit 100 % drucken" in pages[0]
