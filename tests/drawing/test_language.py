"""What is drawn for readers of German: cut files, templates, pictures, in words and figures."""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import Reader
from kerfolio.drawing.cut_note import part_note
from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.drawing.layer import layer_for
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.template_choice import template_choices
from kerfolio.drawing.template_view import template
from kerfolio.drawing.vocabulary import Label
from kerfolio.settling.settled import Cut, Operation
from kerfolio.writing.formats import EVERY_FORMAT, CutFormat
from tests.plans import RACK, settled_at

GERMAN = Reader(language="de")
SETTLED = settled_at(17.6, RACK)
SIDE = SETTLED.part("side")


def test_a_note_is_told_in_german_with_a_comma() -> None:
    lines = part_note(SETTLED, SIDE, GERMAN)
    assert lines[1] == "Teil A, Side: 2-mal"
    assert lines[2].startswith("Geschnitten für Birch plywood 18 mm mit 17,60 mm (0,693 in)")
    assert lines[3] == "Passung 0,1 mm, Fräser 6 mm"
    assert lines[4] == "Dateien für Platten von 17,60 mm Dicke. Einheit: mm."


@pytest.mark.parametrize("form", EVERY_FORMAT, ids=lambda each: each.ending)
def test_its_words_are_read_back_from_every_format(form: CutFormat) -> None:
    drawing = cut_part(SETTLED, SIDE, GERMAN)
    found = form.read(form.write(drawing, own_origin=False))
    noted = [form.says(line) for line in part_note(SETTLED, SIDE, GERMAN)]
    assert set(noted) <= set(found.words["note"])
    assert "Beide Wege nachmessen" in found.words["note"]
    assert any("Einheit: in." in line for line in noted) == (form.unit == "in")


def test_layers_keep_their_names_and_say_what_they_are_for_in_german() -> None:
    layer = layer_for(Cut(operation=Operation.POCKET, depth=6.5, contours=()), GERMAN)
    assert layer.name == "pocket_6.5mm"
    assert layer.purpose == (
        "Die ganze Fläche innerhalb der Linie ausräumen, "
        "6,5 mm tief von der Fläche, die oben liegt."
    )


def test_a_template_gives_its_reasons_in_german() -> None:
    choice = template_choices((SETTLED,), GERMAN)["side"]
    drawing = template(SETTLED, SIDE, choice, GERMAN)
    words = " ".join(each.text for each in drawing.items if isinstance(each, Label))
    assert "SICHTSEITE Side, 2-mal" in words
    assert "17,60 mm Platte + 2 x 0,100 mm Passung" in words
    assert "dann im Schatten sägen" in words
    assert not {"sheet", "fit", "wide", "up", "SHOW"} & set(words.split())


def test_a_picture_says_what_it_shows_in_german() -> None:
    drawing = part_view(SETTLED, SIDE, reader=GERMAN)
    assert drawing.title.endswith(": Teil A, Side")
    assert "hoch, von der Sichtseite gesehen." in drawing.description
