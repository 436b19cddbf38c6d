"""``kerfolio look``: a picture at once, whatever else is wrong with the plan."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from PIL import Image

from tests.command import run
from tests.plans import RACK, lay_down
from tests.test_command import loaded


def test_a_part_and_the_whole_are_drawn(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    done = run("look", "rack", "side", cwd=shop)
    assert done.stdout.splitlines() == ["wrote .kerfolio/look/rack-side.svg"]
    assert done.returncode == 0
    written = (shop / ".kerfolio/look/rack-side.svg").read_text("utf-8")
    assert "Features: rail-slot, bolt, foot, mark." in written
    png, svg = tmp_path / "a.png", tmp_path / "b.svg"
    assert run("look", str(shop / "plans" / "rack"), "--out", str(png)).returncode == 0
    with Image.open(png) as picture:
        assert picture.width > 1200
    done = run("look", "rack", "side.left", "--workshop", str(shop), "--out", str(svg))
    assert done.returncode == 0
    assert svg.read_text("utf-8") == written, "a piece is looked at as its part"


@pytest.mark.parametrize(
    ("old", "new", "rule", "part", "kept"),
    [
        ("rectangle: [w, h]", "rectangle: [w, -3]", "not-positive", "", "yet: side"),
        (
            "at: 30, width: 60, depth",
            "at: 30, width: -6, depth",
            "not-positive",
            "rail",
            "right-tab",
        ),
        ("at: [100, 60], length", "at: [100, nope], length", "unknown-name", "side", "rail-slot"),
        ("at: [100, 60], length", "at: [100, nope], length", "unknown-name", "", "rail"),
        ("stock: birch-plywood-18", "stock: birch-plywood-81", "unknown-stock", "", ""),
    ],
)
def test_what_is_wrong_is_told_and_the_rest_shown(
    tmp_path: Path, old: str, new: str, rule: str, part: str, kept: str
) -> None:
    assert old in RACK
    shop = lay_down(tmp_path / "shop", RACK.replace(old, new))
    out = tmp_path / "seen.svg"
    done = run("look", "rack", part, "--workshop", str(shop), "--out", str(out))
    assert done.returncode == 1
    assert re.findall(r"error: .*\[(.+)\]", done.stdout) == [rule], "the cause alone"
    assert out.exists() is bool(kept)
    assert kept in (out.read_text("utf-8") if kept else "")


def test_what_is_not_there_is_asked_back(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    assert "did you mean `rack`" in run("look", "rakc", cwd=shop).stdout.lower()
    assert "did you mean `side`" in run("look", "rack", "sid", cwd=shop).stdout.lower()
    assert run("look", "rack", cwd=tmp_path).returncode == 1, "no workshop"
    assert run("look", "rack", "--out", "a.pdf", cwd=shop).returncode == 2


def test_what_has_not_changed_is_neither_read_nor_drawn_again(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", RACK.replace("width: 60, depth", "width: -6, depth"))
    out = tmp_path / "a.svg"
    words = ("look", "rack", "rail", "--workshop", str(shop), "--out", str(out))
    first = run(*words)
    drawn = out.read_bytes()
    out.unlink()
    assert not loaded(*words) & {"shapely", "numpy", "yaml", "fontTools"}
    assert out.read_bytes() == drawn
    assert "not-positive" in first.stdout
    assert run(*words) == first
    plan = shop / "plans" / "rack" / "plan.yaml"
    plan.write_text(plan.read_text("utf-8").replace("width: -6", "width: 50"), "utf-8")
    assert run(*words).returncode == 0
    assert out.read_bytes() != drawn
