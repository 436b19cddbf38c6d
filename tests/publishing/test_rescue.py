"""Saving a piece: what a second cut makes of it, what lines it, and what it is cut from again.

Files are read back by ezdxf, and areas are made by shapely: neither knows how they were drawn.
"""

from __future__ import annotations

import io
from dataclasses import replace
from functools import cache
from itertools import chain
from pathlib import Path

import ezdxf
import pytest
import shapely
from ezdxf.path import make_path
from shapely import affinity

from kerfolio.basis.reader import METRIC
from kerfolio.edition.names import is_of_point
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Number
from kerfolio.publishing import examine_at
from kerfolio.publishing.asked import Asked
from kerfolio.publishing.cut_files import part_files, written
from kerfolio.publishing.fitted_files import Settling, variant_at
from kerfolio.publishing.point_files import FilesMade
from kerfolio.publishing.rescue import RescueAsked, rescue_asked
from kerfolio.publishing.rescue_files import RescueRequest, make_rescue, rescue_files
from kerfolio.publishing.rescue_fitted import rescue_fitted
from kerfolio.writing.formats import EVERY_FORMAT
from tests.command import run
from tests.pieces import settled
from tests.plans import lay_down

BY = 0.15
WITHIN = 0.02
"""mm by which a piece may be off that was cut twice."""


def layers(content: bytes) -> dict[str, list[shapely.Polygon]]:
    """Return the closed lines of a DXF as areas, by layer."""
    found: dict[str, list[shapely.Polygon]] = {}
    for each in ezdxf.read(io.StringIO(content.decode())).modelspace():
        if each.dxftype() in ("LWPOLYLINE", "CIRCLE"):
            spots = [(v.x, v.y) for v in make_path(each).flattening(0.001)]
            found.setdefault(each.dxf.layer, []).append(shapely.Polygon(spots))
    return found


@cache
def part_of(
    name: str, fit: float = 0.1, **more: float | None
) -> tuple[shapely.Polygon, shapely.Geometry]:
    """Return a part's wood and what is cleared of it to a depth, from its written file."""
    plan = settled(fit, **more)
    files = part_files(replace(plan, parts=(plan.part(name),)), EVERY_FORMAT[:2], METRIC)
    found = layers(next(content for file, content in files if file.endswith(".dxf")))
    (outline,) = found["outline_through"]
    through = chain.from_iterable(found.get(f"{each}_through", ()) for each in ("opening", "hole"))
    cleared = [each for layer, areas in found.items() if "pocket" in layer for each in areas]
    return outline.difference(shapely.union_all(list(through))), shapely.union_all(cleared)


@cache
def second_cut(name: str, **more: float | None) -> dict[str, list[shapely.Polygon]]:
    plan = settled(**more)
    rescue, findings = rescue_asked(RescueAsked(only=name, reopen=str(BY)), plan)
    assert rescue is not None, findings
    files = dict(written(rescue_files(rescue, plan, METRIC), EVERY_FORMAT[:2]))
    return layers(next(content for file, content in files.items() if file.endswith(".dxf")))


def laid(shape: shapely.Geometry, wood: shapely.Geometry, turn: float) -> shapely.Geometry:
    """Return a shape as it lies with the wood turned and pushed into the corner at 0,0."""
    x0, y0, _, _ = affinity.rotate(wood, turn, origin=(0, 0)).bounds
    return affinity.translate(affinity.rotate(shape, turn, origin=(0, 0)), -x0, -y0)


def off(one: shapely.Geometry, other: shapely.Geometry) -> float:
    """Return how far the edges of two areas are apart, mm."""
    return float(shapely.hausdorff_distance(one.boundary, other.boundary))


def off_after(
    name: str, turn: float, looser: float, *, aside: float = 0.0, **more: float | None
) -> float:
    """Return how far a piece that is cut twice is off the one of the looser fit, mm.

    ``aside`` is by how much it lies beside its stop the second time.
    """
    finished, _ = part_of(name, **{**more, "cut": 0.0})
    wood, _ = part_of(name, **more)
    right, _ = part_of(name, round(0.1 + looser, 3), **more)
    cut = second_cut(name, **more)
    shown = max(cut["piece-edge"], key=lambda each: each.area)
    assert off(shown, laid(shapely.Polygon(finished.exterior), finished, turn)) < 0.001
    gone = affinity.translate(shapely.union_all(cut["opening_through"]), aside, 0.0)
    return off(laid(wood, finished, turn).difference(gone), laid(right, finished, turn))


@pytest.mark.parametrize(
    ("name", "turn", "looser", "more"),
    [
        ("back", 0.0, BY / 2, {}),
        ("runner", 90.0, BY / 2, {}),
        ("runner", 90.0, BY / 2, {"cut": 0.2}),
        # Fingers have half of the clearance in each of both parts: alone this one needs all of it.
        ("corner", 0.0, BY, {"cutter": None}),
    ],
)
def test_both_cuts_make_the_piece_of_the_looser_fit(
    name: str, turn: float, looser: float, more: dict[str, float | None]
) -> None:
    assert off_after(name, turn, looser, **more) < WITHIN
    spoilt = off_after(name, turn, looser, aside=0.03, **more)
    assert spoilt > WITHIN


def test_a_relief_of_the_first_cut_stays_where_its_wall_does() -> None:
    """The seat of fingers is not deepened: what was opened in it begins half of it further in."""
    wood, _ = part_of("corner")
    right, _ = part_of("corner", 0.1 + BY)
    gone = shapely.union_all(second_cut("corner")["opening_through"])
    both = laid(wood, wood, 0.0).difference(gone)
    assert shapely.area(both.difference(laid(right, wood, 0.0)).buffer(-0.002)) == 0.0
    assert off(both, laid(right, wood, 0.0)) < BY / 2


def test_the_bed_of_a_housing_is_cleared_to_the_looser_fit() -> None:
    """A housing has its own depth, and a wall on every side."""
    (first,), (right,) = (shapely.get_parts(part_of("corner", each)[1]) for each in (0.1, 0.175))
    wood, _ = part_of("corner")
    (second,) = second_cut("corner")["pocket_6.0mm"]
    assert off(laid(first, wood, 0.0).union(second), laid(right, wood, 0.0)) < WITHIN
    assert off(laid(first, wood, 0.0), laid(right, wood, 0.0)) > WITHIN


def test_a_cut_runs_past_an_open_edge_by_the_cutter_so_that_no_fillet_stays() -> None:
    cut = second_cut("runner")
    wood, _ = part_of("runner")
    edge = laid(wood, wood, 90.0).bounds[2]
    assert {round(each.bounds[2] - edge, 3) for each in cut["opening_through"]} == {3.5}


@pytest.mark.parametrize(
    ("only", "name"),
    [
        ("A", "back"),
        ("back", "back"),
        ("B", "runner"),
        ("back.slots", "back.slots"),
        ("A.slots.2", "back.slots.2"),
    ],
)
def test_a_piece_is_called_by_its_mark_or_name_an_opening_behind_it(only: str, name: str) -> None:
    rescue, _ = rescue_asked(RescueAsked(only=only, reopen="0.1"), settled())
    assert rescue is not None
    assert rescue.name == name
    count = {"back": 4, "runner": 3, "back.slots": 2, "back.slots.2": 1}
    assert len(rescue.features) == count[name]


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({"only": "Z"}, "no piece `Z` / Known here: `back`, `corner`, `disc`, `runner`."),
        ({"only": "back.slits"}, "`back` has no `slits` / Did you mean `slots`?"),
        (
            {"only": "runner.feet", "reopen": "0.1"},
            "`runner.feet` has no opening that a sheet goes into / "
            "It goes into `back.slots`: name that with `--only`.",
        ),
        (
            {"only": "back.bolt", "loose": "0.3"},
            "`back.bolt` has no opening that a sheet goes into / "
            "Only what takes a sheet is made wider, or lined.",
        ),
        (
            {"only": "disc", "reopen": "0.1"},
            "`disc` bears on none of its edges: a second cut would not find it / "
            "Cut it again, with more play: `--only disc --fit` and the fit.",
        ),
        (
            {"only": "A", "reopen": "1.5"},
            "a reopening of 1.5 mm / 0.02 mm to 1 mm is usual: is the unit the one you mean?",
        ),
        (
            {"only": "A", "offcut": "300"},
            "`300` is no size / Write the side along the grain first: `300 x 400`.",
        ),
        (
            {"only": "runner", "offcut": "300x120"},
            "`runner` finds no room on an offcut of 300 x 120 mm / It takes 100 x 337.8 mm at "
            "least, along the grain and across it, a margin of 10 mm all round in it.",
        ),
    ],
)
def test_what_cannot_be_saved_is_told(asked: dict[str, str], words: str) -> None:
    rescue, (only,) = rescue_asked(RescueAsked(**asked), settled())
    assert rescue is None
    assert f"{only.message} / {only.advice}" == words


def test_an_offcut_holds_the_piece_along_its_grain_and_has_its_own_thickness() -> None:
    asked = RescueAsked(only="runner", offcut="110 x 340 x 17.5")
    rescue, (remark,) = rescue_asked(asked, settled())
    assert rescue is not None
    assert remark.message == (
        "the offcut is 0.3 mm thinner than the 17.8 mm that the other pieces are cut for"
    )
    assert remark.advice == (
        "Its joints are so much looser; `--loose` says what to line: `--only back.slots`."
    )
    files = dict(written(rescue_files(rescue, settled(), METRIC), EVERY_FORMAT[:2]))
    name = "cut/17.8mm/rescue/runner-offcut-110x340mm-17.8mm.dxf"
    found, text = layers(files[name]), files[name].decode()
    (edge,), (piece,) = found["sheet-edge"], found["outline_through"]
    assert edge.bounds == (0, 0, 110, 340)
    assert edge.buffer(-9.999).contains(piece)
    assert "Cut for Birch plywood 18 mm at 17.50 mm (0.689 in)" in text
    assert "Three pieces 1.0.0, offcut for B, Runner: 1 piece" in text


@pytest.mark.parametrize(
    ("thick", "words"),
    [
        (
            "18.2",
            "Its joints are so much tighter; `--reopen` makes them wider: `--only back.slots`.",
        ),
        ("21", "It goes into nothing that is cut: take an offcut about as thick as that."),
    ],
)
def test_what_a_thicker_offcut_does_to_its_joints_is_told(thick: str, words: str) -> None:
    asked = RescueAsked(only="runner", offcut=f"400 x 400 x {thick}")
    _, (remark,) = rescue_asked(asked, settled())
    assert remark.advice == words


def made(folder: Path, **asked: str) -> FilesMade:
    request = RescueRequest(folder=folder, plan="rack", asked=Asked(), rescue=RescueAsked(**asked))
    return make_rescue(request)


def test_files_that_save_a_piece_have_a_folder_of_their_own(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    found = made(shop, only="A1", reopen="0.15")
    assert found.out == shop / "files" / "rack-17.6mm-side-wider-0.15mm"
    assert found.written == (
        "cut/17.6mm/rescue/side-wider-0.15mm-17.6mm.svg",
        "cut/17.6mm/rescue/side-wider-0.15mm-17.6mm.dxf",
        "files.json",
    )
    assert all(is_of_point(name, EVERY_FORMAT) for name in found.written)
    assert '"only": "side",\n "wider": 0.15' in (found.out / "files.json").read_text("utf-8")
    assert found.told[0].startswith("Lay the piece as the file shows it, show face up")


def test_a_joint_too_loose_is_told_what_to_line_it_with(tmp_path: Path) -> None:
    found = made(lay_down(tmp_path / "shop"), only="side", loose="0.45")
    assert found.written == ()
    assert found.told == (
        "Slips of about 0.45 mm: 1 layer of card (0.3 mm) and 1 layer of paper (0.1 mm), "
        "as each usually is thick.",
        "rail-slot: 1 of 60 x 17.6 mm",
        "foot: 1 of 20 x 17.6 mm",
        "Glue each to one wall of its opening, or to what goes in there, let it dry and trim it "
        "flush.",
    )


def test_what_cannot_be_saved_is_told_before_anything_is_proved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(examine_at, "examine_read", None)
    (only,) = made(lay_down(tmp_path / "shop"), only="rail.left-tab", reopen="0.1").findings
    assert only.advice == "It goes into `side.rail-slot`: name that with `--only`."


def test_the_page_fills_in_what_the_command_writes() -> None:
    """To the byte, between the points that its files were found from."""
    numbers = (
        Number(name="thickness.ply", least=17.4, most=18.4, drawn=17.8, decimals=2),
        Number(name="fit.ply", least=0.05, most=0.2, drawn=0.1, decimals=3),
        Number(name="cutter.ply", least=4.0, most=6.0, drawn=6.0, decimals=3, none=True),
    )
    settling = Settling(settled())
    fitted = rescue_fitted(settling, numbers, EVERY_FORMAT[:2], METRIC)
    assert fitted is not None
    at = {"thickness.ply": 17.63, "fit.ply": 0.08, "cutter.ply": 4.762}
    there = settling.at(variant_at(settling.drawn, at))
    assert there is not None
    filled = {name: text.encode() for name, text in fill(fitted, at | {"reopen": 0.155})}
    drawn: dict[str, bytes] = {}
    for name in ("back", "runner", "corner"):  # the disc lies by no edge
        rescue, _ = rescue_asked(RescueAsked(only=name, reopen="0.155"), there)
        assert rescue is not None
        drawn |= written(rescue_files(rescue, there, METRIC), EVERY_FORMAT[:2])
    assert "cut/17.63mm-fit-0.08mm-cutter-4.762mm/rescue/" in next(iter(drawn))
    assert filled == drawn


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        (["--reopen", "0.1"], "Name the piece, too: --only B."),
        (
            ["--only", "A", "--reopen", "0.1", "--loose", "0.2"],
            "Take one of --reopen, --loose and --offcut at a time.",
        ),
    ],
)
def test_what_does_not_go_together_is_wrong_usage(words: list[str], fault: str) -> None:
    found = run("files", "--plan", "rack", *words)
    assert found.returncode == 2
    assert fault in found.stderr
