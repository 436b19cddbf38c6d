"""Clearances by purpose, length of contact and number, reckoned by hand and measured in files.

The values are common practice, no single source; they stand in ``settling/clearance.py``.
"""

from __future__ import annotations

import io

import ezdxf
import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.settling.clearance import for_length, for_number
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledFeature, SettledPlan
from kerfolio.writing.dxf import dxf_bytes
from tests.plans import workshop
from tests.proving.two_panels import plan_text

SLOT = "{{slot: {{at: [{x}, 150], length: {long}, angle: 90, takes: ply}}{more}}}"
PURPOSES = ("knock-down", "glued", "press", "drop-in")


def slotted(fits: dict[str, str], more: str = "", long: int = 60, head: str = "") -> str:
    """Return a plan of a side with a slot for each fit, called by its number: ``slot-1`` ..."""
    names = [f"-{n}" for n, _ in enumerate(fits, start=1)]
    slots = [
        f"slot{name}: {SLOT.format(x=60 * n, long=long, more=more)}"
        for n, name in enumerate(names, start=1)
    ]
    tabs = [
        f"tab{name}: {{tabs: {{edge: bottom, at: {50 * n + 5}, width: 40, takes: ply}}}}"
        for n, name in enumerate(names)
    ]
    joints = [
        f"tab: rail.tab{name}, into: side.slot{name}{fit}"
        for name, fit in zip(names, fits.values(), strict=True)
    ]
    text = plan_text("\n".join(slots), "\n".join(tabs), "\n".join(joints), head)
    return text.replace("published-for: 17.8", "published-for: 17.2 to 18.6, drawn-for: 17.8")


def at(text: str, thickness: float = 17.8, fit: float | None = None) -> SettledPlan:
    """Settle a plan at a thickness, and at another fit of its sheet where one is given; mm."""
    found = workshop(text)
    chosen = () if fit is None else (("ply", fit),)
    there = FitVariant(label="", thickness=(("ply", thickness),), fit=chosen)
    settled, findings = settle(found.plans[0], found.stock, there)
    assert settled is not None, findings
    return settled


def feature(settled: SettledPlan, name: str, part: str = "side") -> SettledFeature:
    return next(each for each in settled.part(part).features if each.name == name)


def sides(settled: SettledPlan, name: str, part: str = "side") -> tuple[float, float]:
    """Return the room of a feature on each side and at each end, from its sizes; mm."""
    found = feature(settled, name, part)
    tab = 60.0
    return (found.width.value - 17.8) / 2, (found.length.value - tab) / 2


def openings(settled: SettledPlan) -> list[tuple[float, float]]:
    """Return width and length of the openings in the side's DXF, from the left, by ezdxf; mm."""
    text = dxf_bytes(cut_part(settled, settled.part("side"))).decode()
    boxes = []
    for line in ezdxf.read(io.StringIO(text)).modelspace().query("LWPOLYLINE"):
        if line.dxf.layer.startswith("opening"):
            xs, ys = zip(*line.get_points("xy"), strict=True)
            boxes.append((min(xs), max(xs) - min(xs), max(ys) - min(ys)))
    return [(wide, high) for _, wide, high in sorted(boxes)]


FITS = {"": "", **{each: f", fit: {each}" for each in PURPOSES}}


@pytest.mark.parametrize(
    ("thickness", "fit", "measured"),
    [
        # 17.8 + 2 x 0.1; + 2 x 0.15; + 2 x 0.02; + 2 x 0.25. Ends: 60 + 2 x 0.1, 0.2, 0.1, 0.5.
        (17.8, None, [(18.0, 60.2), (18.0, 60.2), (18.1, 60.4), (17.84, 60.2), (18.3, 61.0)]),
        # 18.4 + 2 x 0.2; + 2 x 0.25; + 2 x 0.04; + 2 x 0.35. Ends: 60 + 2 x 0.2, 0.3, 0.2, 0.6.
        (18.4, 0.2, [(18.8, 60.4), (18.8, 60.4), (18.9, 60.6), (18.48, 60.4), (19.1, 61.2)]),
    ],
)
def test_slots_of_each_purpose_measure_so_in_the_dxf(
    thickness: float, fit: float | None, measured: list[tuple[float, float]]
) -> None:
    settled = at(slotted(FITS, head="relief: {style: none}"), thickness, fit)
    assert openings(settled) == [pytest.approx(each, abs=1e-4) for each in measured]


def test_a_plan_that_states_no_fit_of_joints_is_as_before() -> None:
    """Long and many count only where a purpose asks for it."""
    settled = at(slotted({"": ""}, ", repeat: {count: 5, step: [40, 0]}", long=260))
    assert sides(settled, "slot-1.1") == (pytest.approx(0.1), pytest.approx(100.1))
    assert feature(settled, "slot-1.1").room is not None
    (*_, room) = [each.room for each in settled.part("side").features]
    assert (room and (room.asked, room.contact, room.together)) == (False, 260.0, 5)


def test_long_walls_and_many_features_get_more_room_up_to_a_most() -> None:
    assert [for_length(mm) for mm in (0, 100, 150, 320, 400, 5000)] == pytest.approx(
        [0.0, 0.0, 0.01, 0.044, 0.06, 0.06]
    )
    assert [for_number(count) for count in (1, 2, 3, 8, 100)] == pytest.approx(
        [0.0, 0.0, 0.01, 0.06, 0.06]
    )


def test_between_faces_length_and_number_count_at_the_ends_the_number_alone() -> None:
    long = at(slotted({"": ", fit: knock-down"}, long=260))
    assert (feature(long, "slot-1").width.value - 17.8) / 2 == pytest.approx(0.132)
    assert (feature(long, "slot-1").length.value - 260) / 2 == pytest.approx(0.1)
    many = at(slotted({"": ", fit: knock-down"}, ", repeat: {count: 5, step: [40, 0]}"))
    assert sides(many, "slot-1.3") == (pytest.approx(0.13), pytest.approx(0.13))


@pytest.mark.parametrize(
    ("fit", "room"),
    [
        ("0.15", (0.15, 0.15)),
        ("{width: 0.15}", (0.15, 0.2)),
        ("{purpose: glued, ends: 0.4}", (0.25, 0.4)),
        ("{purpose: glued, width: 0.2}", (0.2, 0.3)),
    ],
)
def test_a_length_of_its_own_is_just_that_at_any_fit(fit: str, room: tuple[float, float]) -> None:
    settled = at(slotted({"": f", fit: {fit}"}), fit=0.2)
    assert sides(settled, "slot-1") == (pytest.approx(room[0]), pytest.approx(room[1]))


def test_every_kind_that_takes_a_sheet_follows_its_joint() -> None:
    """Glued at a fit of 0.1: 0.15 between faces, 0.2 at the ends; the notch is 30 deep."""
    side = """\
notch: {notch: {edge: top, at: 60, depth: 30, takes: ply}}
pocket: {pocket: {at: [150, 150], length: 60, angle: 90, takes: ply, depth: 6}}
groove: {groove: {from: [250, 120], to: [250, 180], takes: ply, depth: 6}}
fingers: {fingers: {edge: right, count: 2, takes: ply}}"""
    rail = """\
notch: {notch: {edge: top, at: 60, depth: 30, takes: ply}}
tab: {tabs: {edge: bottom, at: [30, 120], width: 60, takes: ply}}
fingers: {fingers: {edge: left, count: 2, takes: ply, first: gap}}"""
    joints = """\
notch: rail.notch, with: side.notch
tab: rail.tab.1, into: side.pocket
tab: rail.tab.2, into: side.groove
fingers: rail.fingers, with: side.fingers"""
    settled = at(plan_text(side, rail, joints, "joint-fit: glued"))
    for part in ("side", "rail"):
        notch = feature(settled, "notch", part)
        assert (notch.width.value, notch.length.value) == pytest.approx((18.1, 30.2))
    assert sides(settled, "pocket") == (pytest.approx(0.15), pytest.approx(0.2))
    assert sides(settled, "groove") == (pytest.approx(0.15), pytest.approx(0.2))
    assert "60 mm finger + 0.15 mm glued fit" in str(
        told(feature(settled, "fingers", "rail").width.reason, METRIC)
    )


def test_a_feature_of_several_joints_is_cut_for_the_loosest_of_them() -> None:
    text = slotted({"1": ", fit: press", "2": ", fit: {width: 0.12, ends: 0.05}"})
    shared = text.replace("into: side.slot-2", "into: side.slot-1")
    assert sides(at(shared), "slot-1") == (pytest.approx(0.12), pytest.approx(0.1))
    # Where one of them states nothing the sheet's own fit counts with the others.
    unsaid = shared.replace("{width: 0.12, ends: 0.05}", "press").replace(", fit: press", "", 1)
    assert sides(at(unsaid), "slot-1") == (pytest.approx(0.1), pytest.approx(0.1))


def test_the_nearest_fit_counts_a_joints_its_assemblys_the_plans() -> None:
    text = slotted({"1": "", "2": ", fit: press"}, head="joint-fit: drop-in")
    settled = at(text)
    assert sides(settled, "slot-1")[0] == pytest.approx(0.25)
    assert sides(settled, "slot-2")[0] == pytest.approx(0.02)
    joints = text[text.index("joints:") : text.index("releases:")]
    made = "assemblies:\n  frame:\n    pieces: [side, rail]\n    joint-fit: glued\n" + "".join(
        f"    {line}\n" for line in joints.splitlines()
    )
    assembly = at(text.replace(joints, made))
    assert sides(assembly, "slot-1")[0] == pytest.approx(0.15)
    assert sides(assembly, "slot-2")[0] == pytest.approx(0.02)


def test_the_reason_of_a_width_names_the_purpose() -> None:
    settled = at(slotted({"1": ", fit: glued", "2": ""}))
    reasons = [str(told(feature(settled, f"slot-{n}").width.reason, METRIC)) for n in (1, 2)]
    assert reasons == [
        "17.8 mm sheet + 2 x 0.15 mm glued fit",
        "17.8 mm sheet + 2 x 0.1 mm fit",
    ]
