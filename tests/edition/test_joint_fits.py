"""What readers are told of joints that have room of their own."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache

from kerfolio.chapters.document_of import booklet_document
from kerfolio.edition.edition import Edition
from kerfolio.edition.joint_fits import joint_fits
from kerfolio.layouts.layout import Layout
from kerfolio.pages.fitting import fitting_of
from kerfolio.pages.start import start_here
from kerfolio.publishing.plan_json import plan_json
from tests.chapters.told import words_of
from tests.pages.invented import CONTENTS
from tests.pages.markup import Tree
from tests.paper.sample_editions import edition
from tests.plans import RACK, settled_at, workshop


@cache
def rack(joint_fit: str = "", units_first: str = "mm") -> Edition:
    """Return the probe rack settled as drawn, all of its joints of one fit."""
    text = RACK.replace("joints:", f"joint-fit: {joint_fit}\njoints:") if joint_fit else RACK
    settled = settled_at(17.6, text)
    none = Layout(sheets=(), engine="by hand", computed_from="")
    identity = replace(workshop(text).identity, units_first=units_first)
    return replace(edition(settled, none), identity=identity)


def test_joints_of_the_same_room_share_a_row() -> None:
    """0.1 mm is the sheet's fit; + 0.05 for the film of glue, + 0.1 at the ends."""
    found = joint_fits(rack("glued"))
    assert found is not None
    assert [each.cells for each in found.rows] == [("rail into side", "glued", "0.15 mm", "0.2 mm")]
    inch = joint_fits(replace(rack("glued"), identity=replace(rack().identity, units_first="in")))
    assert inch is not None
    assert [each.width for each in inch.rows] == ["0.0059 in"]


def test_a_length_of_its_own_has_no_purpose() -> None:
    found = joint_fits(rack("{width: 0.12, ends: 0.3}"))
    assert found is not None
    assert [each.cells for each in found.rows] == [("rail into side", "–", "0.12 mm", "0.3 mm")]


def test_a_plan_that_states_none_tells_nothing() -> None:
    assert joint_fits(rack()) is None
    assert '"clearance"' not in plan_json(rack()).decode()


def test_the_plan_as_data_has_what_was_asked_for() -> None:
    told = json.loads(plan_json(rack("glued")))
    asked = {
        (part["part"], feature["name"]): feature["clearance"]
        for part in told["variants"][0]["parts"]
        for feature in part["features"]
        if "clearance" in feature
    }
    room = {"width": 0.15, "ends": 0.2, "purpose": "glued"}
    assert asked == {("side", "rail-slot"): room}


def test_the_fitting_page_knows_that_its_slots_are_not_all_there_are() -> None:
    for joint_fit in ("", "glued"):
        found = rack(joint_fit)
        other = replace(found.settled, variant=settled_at(18.0).variant)
        page = fitting_of(replace(found, variants=(found.settled, other)))
        assert page is not None
        assert json.loads(page.data).get("jointFits", False) == bool(joint_fit)


def test_page_and_paper_tell_the_same() -> None:
    glued = rack("glued")
    found = joint_fits(glued)
    assert found is not None
    page = Tree(start_here(glued, CONTENTS, {})).text_of("main")
    paper = words_of(booklet_document(glued))
    assert found.words in page
    for each in (*found.words.split(), *found.rows[0].cells):
        assert each in page
        assert each in paper
