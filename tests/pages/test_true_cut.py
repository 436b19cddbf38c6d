"""The true cut: a machine of known faults cuts the coupon, what it reads mends its pieces."""

from __future__ import annotations

import json
import subprocess
from functools import cache
from typing import Any

import pytest

from kerfolio.basis.digits import rounded
from kerfolio.basis.reader import METRIC
from kerfolio.basis.shipped import shipped
from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Region
from kerfolio.geometry.transform import turned, turned_point
from kerfolio.pages.script_words import script_words
from kerfolio.pages.theme import THEME
from kerfolio.settling.point import point
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import Coupon, SettledFeature, SettledPlan
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_dxf import read_dxf
from tests.outside import node
from tests.pages.machine import Machine, across, gap
from tests.plans import RACK, proved, workshop

PLAN = RACK.replace("length: 60, angle: 90", "length: 30, angle: 90").replace(
    "at: 30, width: 60", "at: 45, width: 30"
)
"""A rack with the tabs of a stool's rails, 30 mm wide."""

FAULTY = Machine(told=6.0, cuts=6.2, long=(0.001, 0.0), play=0.05)
THICK = 17.8
NEAR = 0.03
"""How near to the fit that was asked for the fit of simulated pieces is, mm a side."""

SCRIPTS = script_words(METRIC, ("fitscript", "truecut", "rescuescript")) + "\n".join(
    (shipped("themes") / THEME / each).read_text("utf-8")
    for each in ("fitted.js", "fitting.js", "true-cut.js")
)


def reckoned(expression: str, given: Any) -> Any:
    """Return what an expression over the page's functions gives; ``given`` is its argument."""
    script = f"{SCRIPTS}\nconst given = {json.dumps(given)};"
    script += f"process.stdout.write(JSON.stringify({expression}));"
    found = subprocess.run([node(), "-e", script], capture_output=True, check=True)
    return json.loads(found.stdout)


@cache
def drawn() -> SettledPlan:
    found = proved(PLAN).drawn
    assert found is not None
    return found


def coupon() -> Coupon:
    return drawn().coupons[0]


def sheet() -> dict[str, Any]:
    """Return the page's data on the coupon."""
    made = coupon()
    sizes = {
        "slots": [each.width for each in made.slots],
        "steps": [each.width for each in made.steps],
    }
    opening = {"x": made.opening, "y": made.slots[-1].width}
    return {"coupon": {**sizes, "opening": opening, "step": 0.2}}


def by_calliper(machine: Machine) -> dict[str, str]:
    """Return what a calliper reads of the coupon that a machine cuts, to 0.01 mm."""
    made = coupon()
    plate, tab = machine.cut(made.plate.routed), machine.cut(made.tab.routed)
    long_slot = next(each for each in made.plate.features if each.name == "long-slot")
    read = {"way": "caliper"}
    for axis, letter in enumerate("XY"):
        slot = gap(plate, long_slot.at, axis)
        arm = across(tab, made.steps[-1].spots[axis], axis)
        read |= {f"slot{letter}": f"{slot:.2f}", f"tab{letter}": f"{arm:.2f}"}
    return read


def by_hand(machine: Machine, push: float) -> dict[str, str]:
    """Return the steps that go with a push, which takes so much play, mm."""
    made = coupon()
    plate, tab = machine.cut(made.plate.routed), machine.cut(made.tab.routed)
    long_slot = next(each for each in made.plate.features if each.name == "long-slot")
    opening = gap(plate, long_slot.at, 0)
    read = {"way": "hand"}
    for axis, letter in enumerate("XY"):
        slots = [s.number for s in made.slots if gap(plate, s.spots[axis], axis) >= THICK + push]
        arms = [s.number for s in made.steps if across(tab, s.spots[axis], axis) <= opening - push]
        read |= {f"slot{letter}": str(min(slots)), f"tab{letter}": str(max(arms))}
    return read


def cut_of(read: dict[str, str]) -> float:
    given = {"sheet": sheet(), "read": read, "thick": THICK}
    found = reckoned("cutOf(cutsRead(given.sheet, given.read, given.thick, 'mm'))", given)
    assert isinstance(found, float | int)
    return float(found)


def settled(cutter: float, cut: float = 0.0) -> SettledPlan:
    """Return the rack for the sheet and a cutter, and what is built in of its true cut."""
    there = point(drawn(), {"ply": THICK}, None, {"ply": cutter}, {"ply": cut})
    found = workshop(PLAN)
    made, _ = settle(found.plans[0], found.stock, there)
    assert made is not None
    return made


def misfits(made: SettledPlan, machine: Machine) -> list[float]:
    """Return by how much the fit a side of each joint is off, pieces cut along x and along y."""
    slot, foot = (_feature(made, "side", name) for name in ("rail-slot", "foot"))
    tab = _feature(made, "rail", "left-tab")
    into, beside = (foot.at[0], foot.at[1] - 8.0), (tab.at[0] - 8.0, tab.at[1])
    ends, tabs, off = [], [], []
    for turn, axis in ((0.0, 0), (90.0, 1)):
        side, rail = (machine.cut(turned(in_file(made, name), turn)) for name in ("side", "rail"))
        for spot in (slot.at, into):
            off.append(gap(side, turned_point(spot, turn), axis) - THICK - 0.2)
        ends.append(gap(side, turned_point(slot.at, turn), 1 - axis))
        tabs.append(across(rail, turned_point(beside, turn), 1 - axis))
    off += [long - wide - 0.2 for long in ends for wide in tabs]
    return [each / 2 for each in off]


def in_file(made: SettledPlan, name: str) -> Region:
    """Return a part as its DXF file has it: what is cut through."""
    layers = read_dxf(dxf_bytes(cut_part(made, made.part(name)))).layers
    (outline,) = layers["outline_through"]
    holes = [each for key in layers if key.startswith("hole") for each in layers[key]]
    return region(outline, [*layers.get("opening_through", ()), *holes])


def _feature(made: SettledPlan, part: str, name: str) -> SettledFeature:
    return next(each for each in made.part(part).features if each.name == name)


@pytest.mark.node
def test_what_the_coupon_told_mends_the_pieces_and_without_it_they_do_not_fit() -> None:
    """Told to the program or built into the files, the fit is within 0.03 mm a side; not so where
    nothing is corrected, or both are.
    """
    cut = cut_of(by_calliper(FAULTY))
    assert cut == pytest.approx(0.2, abs=0.05)
    told = rounded(6.0 + cut, 3)
    mended = misfits(settled(told), FAULTY.believing(told))
    spoilt = misfits(settled(6.0), FAULTY)
    assert max(map(abs, mended)) <= NEAR
    assert min(map(abs, spoilt)) > 2 * NEAR
    files = misfits(settled(6.0, cut), FAULTY)
    assert max(map(abs, files)) <= NEAR
    assert min(map(abs, misfits(settled(6.0, cut), FAULTY.believing(told)))) > 2 * NEAR


@pytest.mark.node
@pytest.mark.parametrize("push", [0.16, 0.2, 0.3])
def test_by_hand_it_is_found_to_a_tenth(push: float) -> None:
    assert cut_of(by_hand(FAULTY, push)) == pytest.approx(0.18, abs=0.1)


@pytest.mark.node
def test_a_sound_machine_has_nothing_to_correct() -> None:
    assert cut_of(by_calliper(Machine(told=6.0, cuts=6.0))) == pytest.approx(0.0, abs=0.011)


NOTHING = {"way": "caliper", "slotX": "", "slotY": "", "tabX": "", "tabY": ""}


def told_of(unit: str = "mm", **read: str) -> list[str]:
    given = {"sheet": sheet(), "read": {**NOTHING, **read}, "thick": THICK, "unit": unit}
    words = "machineWords(cutsRead(given.sheet, given.read, given.thick, given.unit), "
    found = reckoned(f"{words}given.read.way, given.unit)", given)
    assert isinstance(found, list)
    return found


@pytest.mark.node
def test_what_x_and_y_differ_by_is_told_as_the_machines() -> None:
    """The long slot is 30.2 mm by 18.4 mm, the arms are 31.2 mm at their roots."""
    even = told_of(slotX="30.4", slotY="18.55", tabX="31", tabY="30.98")
    assert even == []
    (scale,) = told_of(slotX="30.45", slotY="18.55", tabX="31.1", tabY="30.98")
    assert scale == (
        "What it cuts differs by 0.12 mm (0.005 in) between x and y. No cutter does that, so it is "
        "the machine’s, and no file mends it. Lengths come out longer in x: draw a line of 500 mm "
        "or more along each axis, measure both, and set the steps per millimetre of the one that "
        "is off to what they are times told over measured; look for a belt that slips."
    )
    (loose,) = told_of(slotX="30.4", slotY="18.5")
    assert loose.endswith("Look for play in one of the axes: a loose belt, nut, pinion or rail.")
    (play,) = told_of(slotX="30.3", slotY="18.5", tabX="31", tabY="31")
    assert play == (
        "Inside and outside differ by 0.1 mm (0.004 in): a drive has play, the cutter bends, or "
        "pieces move. Look at belts and nuts, hold the sheet down, and leave a few tenths for a "
        "last pass all round."
    )


FAULTS = {
    ("caliper", "slotX", "20"): "“20” cannot be the long slot, drawn 30.2 mm (1.189 in).",
    ("caliper", "tabY", "wide"): "“wide” is no number: write 31.2, 1.228 in or 1 7/32 in.",
    ("hand", "slotX", "0"): "Write the number of a step, 1 to 7.",
    ("hand", "tabX", "6"): "Write the number of a step, 1 to 5.",
    ("hand", "tabX", "2.5"): "Write the number of a step, 1 to 5.",
}


@pytest.mark.node
def test_what_no_coupon_reads_is_refused_in_words() -> None:
    reads = [{**NOTHING, "way": way, field: text} for way, field, text in FAULTS]
    found = reckoned(
        "given.reads.map((read) => Object.values(cutsRead(given.sheet, read, 17.8, 'mm').faults))",
        {"sheet": sheet(), "reads": reads},
    )
    assert found == [[words] for words in FAULTS.values()]


@pytest.mark.node
def test_what_is_known_of_a_cutter_is_taken_and_what_cannot_be_is_told() -> None:
    asked = [["", 6], ["6.2", 6], ["0.258 in", 6.35], ["0.15", None], ["5.9 mm", 6], ["6.5", 6]]
    found = reckoned("given.map(([text, name]) => cutKnown(text, name, 'mm'))", asked)
    assert [each.get("cut") for each in found] == [0, 0.2, 0.203, 0.15, -0.1, None]
    assert found[-1]["fault"] == (
        "“6.5” cannot be what a cutter of 6 mm (0.2362 in) really cuts. Look at the collet, at the "
        "cutter itself and at the unit, and cut the coupon anew."
    )


@pytest.mark.node
def test_a_correction_belongs_to_one_place() -> None:
    asked = [[6, 0.2, False], [6, 0.2, True], [None, 0.15, False], [6, 0.01, False]]
    words = "given.map(([name, cut, built]) => cutWords(name, cut, { built, unit: 'mm' }))"
    program, files, kerf, nothing = reckoned(words, asked)
    assert program == [
        "The cutter of 6 mm (0.2362 in) cuts 6.2 mm (0.2441 in). Tell your toolpath program a "
        "cutter of 6.2 mm (0.2441 in), and correct nothing else: these files have nothing built in."
    ]
    assert files == [
        "The cutter of 6 mm (0.2362 in) cuts 6.2 mm (0.2441 in). That is built into these files: "
        "tell your toolpath program a cutter of 6 mm (0.2362 in), and correct nothing else."
    ]
    assert "a kerf of 0.15 mm" in kerf[0]
    assert nothing == []
