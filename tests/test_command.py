"""The command line as a maker uses it: words, exit codes, never a traceback."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import click
import pytest
from jsonschema import Draft202012Validator

from kerfolio.bundles.archive import sha256
from tests.command import run
from tests.conftest import files_of
from tests.plans import BOARD, RACK, lay_down


def test_help_shows_an_example() -> None:
    from kerfolio.cli import kerfolio

    listed = run("--help").stdout
    for command in kerfolio.commands:
        assert f"\n  {command} " in listed, "each stands in its group"
        if isinstance(kerfolio.commands[command], click.Group):
            continue
        done = run(command, "--help")
        assert done.returncode == 0
        assert f"Example: kerfolio {command}" in done.stdout


LOADED = """
import sys
from kerfolio.cli import main
sys.argv = ["kerfolio", *sys.argv[1:]]
try:
    main()
except SystemExit:
    pass
print(*sorted({name.split(".")[0] for name in sys.modules}))
"""


def loaded(*words: str) -> set[str]:
    """Return the packages that a command loads."""
    command = [sys.executable, "-c", LOADED, *words]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return set(done.stdout.splitlines()[-1].split())


def test_a_command_loads_no_library_that_it_does_not_need(tmp_path: Path) -> None:
    heavy = {"PIL", "cairosvg", "ezdxf", "jinja2", "reportlab", "scipy", "spyrrow"}
    assert not loaded("--help") & {*heavy, "manifold3d", "numpy", "shapely", "yaml"}
    shop = lay_down(tmp_path / "shop")
    assert run("layout", str(shop)).returncode == 0
    assert not loaded("prove", str(shop)) & heavy
    assert "jinja2" in loaded("prove", str(shop), "--report", str(tmp_path / "report"))


def test_a_new_workshop_proves_and_publishes_at_once(tmp_path: Path) -> None:
    shop = tmp_path / "my-shed"
    assert run("start", str(shop)).returncode == 0
    assert run("add", "plan", "garden-bench", str(shop)).returncode == 0
    assert run("add", "trial", str(shop)).returncode == 0
    done = run("prove", str(shop))
    assert (done.returncode, done.stdout) == (0, "Nothing to remark.\n")
    # Both plans begin with the same words but their titles.
    assert run("publish", str(shop), "--plan", "garden-bench").returncode == 0
    assert "plans/garden-bench/index.html" in files_of(shop / "site")


def test_a_workshop_of_inches_begins_and_goes_on_in_inches(tmp_path: Path) -> None:
    shop = tmp_path / "my-shed"
    assert run("start", str(shop), "--units", "in").returncode == 0
    assert run("add", "plan", "garden-bench", str(shop)).returncode == 0
    assert run("add", "trial", str(shop)).returncode == 0
    assert "units-first: in\n" in (shop / "workshop.yaml").read_text("utf-8")
    for name in ("standing-cross", "garden-bench"):
        text = (shop / "plans" / name / "plan.yaml").read_text("utf-8")
        assert "units: in\n" in text
        assert "published-for: 11/16 to 3/4" in text
    (trial,) = (shop / "log").iterdir()
    assert "# feed: 180 in/min\n" in trial.read_text("utf-8")
    done = run("prove", str(shop))
    assert (done.returncode, done.stdout) == (0, "Nothing to remark.\n")
    sold = run("stock", str(shop), "plywood-3-4").stdout
    assert "Sold as          96 × 48, 120 × 48 in " in sold
    assert "0.734 in (18.64 mm)" in sold


def test_a_batch_leaves_the_workshop_as_it_was(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD)
    before = files_of(shop)
    done = run("batch", str(shop), "--plan", "rack", "--copies", "3")
    assert done.returncode == 0
    assert "3 copies on 1 sheet" in done.stdout
    after = files_of(shop)
    batch = {name for name in after if name.startswith("batches/rack-3/")}
    assert set(after) - batch == set(before)
    assert {name: after[name] for name in before} == before
    assert "batches/rack-3/cut/17.6mm/sheet-1-17.6mm.dxf" in batch
    # Once more to the same folder, and then to one that holds other things.
    assert run("batch", str(shop), "--plan", "rack", "--copies", "3").returncode == 0
    assert files_of(shop) == after
    refused = run("batch", str(shop), "--plan", "rack", "--copies", "3", "--out", str(shop))
    assert refused.returncode == 1
    assert "holds other files" in refused.stdout
    (shop / "batches/rack-3/cut/mine.nc").write_text("G0 X0", "utf-8")
    lost = run("batch", str(shop), "--plan", "rack", "--copies", "3")
    assert "holds other files" in lost.stdout
    assert (shop / "batches/rack-3/cut/mine.nc").exists()
    assert run("batch", str(shop), "--plan", "", "--copies", "3").returncode == 1
    (shop / "site").mkdir()
    (shop / "site/manifest.json").write_text('{"format": "kerfolio-manifest/1"}', "utf-8")
    public = run(
        "batch", str(shop), "--plan", "rack", "--copies", "3", "--out", str(shop / "site/x")
    )
    assert "inside a site" in public.stdout
    missing = run("batch", str(shop), "--plan", "rake", "--copies", "3")
    assert missing.returncode == 1
    assert "Did you mean `rack`?" in missing.stdout


def test_nothing_of_a_makers_is_written_over(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    before = files_of(shop)
    for words in (("start", str(shop)), ("add", "plan", "rack", str(shop))):
        done = run(*words)
        assert done.returncode == 1
        assert "already" in done.stdout
    assert run("add", "plan", "Garden Bench", str(shop)).returncode == 1
    assert files_of(shop) == before


def test_the_module_runs_as_a_program_of_its_own(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "kerfolio", "prove", str(lay_down(tmp_path / "shop"))]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, run(*command[3:]).stdout)
    assert done.stderr.splitlines() == ["proving Probe rack"]


def test_wrong_usage_ends_with_two() -> None:
    assert run("prove", "--nonsense").returncode == 2
    assert run("frobnicate").returncode == 2


def test_a_good_workshop_is_proved(tmp_path: Path) -> None:
    done = run("prove", str(lay_down(tmp_path / "shop")))
    assert done.returncode == 0
    assert "[joint-unchecked]" in done.stdout
    assert done.stdout.endswith("1 note.\n")


def test_all_mistakes_of_a_file_come_in_one_run(tmp_path: Path) -> None:
    text = (
        RACK.replace("summary:", "sumary:")
        .replace("w: 300", "w: 300 +")
        .replace("add: [side.left, rail, side.right]", "add: [side.left, rial, side.right]")
    )
    done = run("prove", str(lay_down(tmp_path / "shop", text)), "--format", "json")
    assert done.returncode == 1
    rows = json.loads(done.stdout)
    assert {row["line"] for row in rows if row["severity"] == "error"} >= {3, 4, 32}
    assert all(row["file"] == "plans/rack/plan.yaml" for row in rows)


def test_findings_as_json_carry_their_subject_and_facts(tmp_path: Path) -> None:
    text = RACK.replace("at: 30, width: 60, depth: t", "at: 30, width: 64.3, depth: t")
    done = run("prove", str(lay_down(tmp_path / "shop", text)), "--format", "json")
    (row,) = [each for each in json.loads(done.stdout) if each["rule"] == "tab-wider-than-slot"]
    assert row["message"] == "`side.left.rail-slot` is 4.1 mm too short for its tab"
    assert row["subject"] == "side.rail-slot"
    assert row["facts"] == [
        {"name": "short", "value": 4.1, "unit": "mm"},
        {"name": "width", "value": 64.3, "unit": "mm"},
    ]


def test_an_order_of_assembly_is_found_and_proves_where_it_is_written_down(tmp_path: Path) -> None:
    plan = RACK.replace("hardware: [{item: bolt-m6x40, count: 2, for: sides}]\n", "")
    head, tail = plan.partition("steps:")[0], plan.partition("releases:")[2]
    done = run("sequence", str(lay_down(tmp_path / "shop", f"{head}releases:{tail}")))
    assert done.returncode == 0
    name, steps = done.stdout.split("\n", 1)
    assert name == "# rack"
    assert steps.startswith("steps:\n  - title: Set down ")
    again = run("prove", str(lay_down(tmp_path / "again", f"{head}{steps}releases:{tail}")))
    assert again.returncode == 0


def test_a_folder_that_is_no_workshop_is_told_in_words(tmp_path: Path) -> None:
    done = run("publish", str(tmp_path / "nowhere"))
    assert done.returncode == 1
    assert "error" in done.stdout
    assert not (tmp_path / "nowhere").exists()


def test_a_layout_is_frozen_and_then_reused(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD)
    frozen = shop / "plans" / "rack" / "layout.json"
    assert run("layout", str(shop)).returncode == 0
    first = frozen.read_bytes()
    assert run("publish", str(shop)).returncode == 0
    assert frozen.read_bytes() == first


def test_a_title_may_change_but_a_part_that_changes_is_laid_out_again(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD)
    run("layout", str(shop))
    frozen, plan = (shop / "plans" / "rack" / each for each in ("layout.json", "plan.yaml"))
    first = frozen.read_bytes()
    plan.write_text(plan.read_text().replace("Plain board", "Another board"))
    run("publish", str(shop))
    assert frozen.read_bytes() == first
    plan.write_text(plan.read_text().replace("w: 300", "w: 320"))
    run("publish", str(shop))
    assert frozen.read_bytes() != first


def test_a_publish_says_what_it_did_and_advises_nothing(tmp_path: Path) -> None:
    lay_down(tmp_path / "shop", BOARD)
    shop = tmp_path / "shop"
    frozen, plan = (shop / "plans" / "rack" / each for each in ("layout.json", "plan.yaml"))
    wrote = f"wrote {frozen.relative_to(shop)}: "
    first = run("publish", cwd=shop).stdout
    assert f"{wrote}there was none\n" in first
    assert "wrote" not in run("publish", cwd=shop).stdout
    frozen.write_text(re.sub(r'"x": [0-9.]+', '"x": 1500', frozen.read_text("utf-8"), count=1))
    plan.write_text(plan.read_text("utf-8").replace("w: 300", "w: 320"))
    told = run("prove", cwd=shop).stdout
    assert "note: the parts or sheets have changed [layout-stale]" in told
    changed = run("publish", cwd=shop).stdout
    kept = frozen.with_name("layout.previous.json").relative_to(shop)
    assert (
        f"{wrote}the parts or sheets have changed\n"
        f"kept the one before as {kept}: it was moved by hand\n"
    ) in changed
    assert "kerfolio layout" not in first + changed
    afresh = run("layout", cwd=shop).stdout
    assert afresh == "wrote plans/rack/layout.json: 1 sheet, laid out by own-2\n"


def test_an_engine_that_is_not_there_is_wrong_usage(tmp_path: Path) -> None:
    done = run("layout", str(tmp_path / "nowhere"), "--engine", "nope")
    assert done.returncode == 2
    assert "Error: `nope` is no engine; installed: " in done.stderr


@pytest.mark.skipif(not find_spec("spyrrow"), reason="spyrrow is not installed")
def test_an_engine_asked_for_freezes_its_layout_and_publish_keeps_it(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD)
    done = run("layout", str(shop), "--engine", "spyrrow", "--seconds", "1")
    assert done.returncode == 0
    frozen = shop / "plans" / "rack" / "layout.json"
    engine = json.loads(frozen.read_text("utf-8"))["engine"]
    assert done.stdout.endswith(f": 1 sheet, laid out by {engine}\n")
    before = frozen.read_bytes()
    assert run("publish", str(shop)).returncode == 0
    assert frozen.read_bytes() == before


def test_publishing_one_plan_does_not_lose_the_others(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop", BOARD)
    rack, other = shop / "plans" / "rack" / "plan.yaml", shop / "plans" / "other"
    other.mkdir()
    (other / "plan.yaml").write_text(BOARD.replace("Plain board", "Other board"))
    assert run("publish", str(shop)).returncode == 0
    before = files_of(shop / "site")
    for each in (rack, other / "plan.yaml"):
        each.write_text(each.read_text("utf-8").replace(" board\n", " shelf\n", 1), "utf-8")
    assert run("publish", str(shop), "--plan", "rack").returncode == 0
    after = files_of(shop / "site")
    assert b"Plain shelf" in after["plans/rack/index.html"]
    assert not [n for n in before if "/other/" in n and after.get(n) != before[n]]
    for name in ("index.html", "plans/index.html", "feed.xml"):
        assert b"Plain shelf" in after[name]
        assert b"Other board" in after[name]
    listed = json.loads(after.pop("manifest.json"))["files"]
    assert {each["name"]: each["sha256"] for each in listed} == {
        name: sha256(content) for name, content in after.items()
    }


def test_schemas_are_written_and_are_schemas(tmp_path: Path) -> None:
    assert run("schema", str(tmp_path)).returncode == 0
    written = sorted(path.name for path in tmp_path.iterdir())
    kinds = ("log", "plan", "release", "stock", "workshop")
    assert written == [f"{kind}.schema.json" for kind in kinds]
    for path in tmp_path.iterdir():
        Draft202012Validator.check_schema(json.loads(path.read_text("utf-8")))


def test_the_log_is_read_and_kept_private(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    (shop / "log").mkdir()
    (shop / "log" / "day.yaml").write_text(
        "trials: [{date: 2026-09-12, title: Too slow, cutter: compression-6, outcome: burned}]\n"
    )
    done = run("trials", str(shop), "--verdict", "to mend")
    assert done.returncode == 0
    assert "2026-09-12  to mend         Too slow (burn)" in done.stdout
    assert "Too slow" in (shop / ".kerfolio" / "private" / "log" / "index.html").read_text("utf-8")
    assert run("trials", str(shop), "--verdict", "clean").stdout.count("Too slow") == 0


def test_the_stock_is_shown_with_files_and_sources(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "shop")
    (shop / "stock").mkdir()
    (shop / "stock" / "own.yaml").write_text(
        "sheets: {birch-plywood-18: {actual: 17.8 mm, source: My caliper}}\n"
    )
    done = run("stock", str(shop), "birch-plywood-18")
    assert done.returncode == 0
    lines = {line.split("  ")[1].strip(): line for line in done.stdout.splitlines() if "  " in line}
    assert "17.8 mm (0.701 in)" in lines["Measures"]
    assert lines["Measures"].endswith("My caliper")
    assert " stock/own.yaml:1:" in lines["Measures"]
    assert "content/sheets.yaml:" in lines["At least"]
    assert "10048 N/mm² (mean)" in lines["Stiffness along"]
    assert "from memory: Handbook of Finnish Plywood" in lines["Stiffness along"]
    inside = run("stock", "birch-plywood-18", cwd=shop)
    assert (inside.returncode, inside.stdout) == (0, done.stdout)


def test_files_for_a_measured_sheet_go_to_a_folder_of_their_own(tmp_path: Path) -> None:
    ranged = BOARD.replace("for: 17.6", "for: 17.6 to 18.2 by 0.2, drawn-for: 17.6")
    shop = lay_down(tmp_path / "shop", ranged)
    asked = ("--plan", "rack", "--sheet", "ply=17.634", "--fit", "0.08", "--cutter", "3.175")
    done = run("files", str(shop), *asked)
    label = "17.63mm-fit-0.08mm-cutter-3.175mm"
    out = shop / "files" / f"rack-{label}"
    assert (done.returncode, done.stdout.splitlines()[-1]) == (
        0,
        f"For {label}: wrote {len(files_of(out))} files to {out}",
    )
    again = run("files", str(shop), *asked)
    assert again.returncode == 0
    wrong = run("files", str(shop), "--plan", "rack", "--sheet", "mdf=17.6")
    assert wrong.returncode == 1
    assert "Not written. 1 error." in wrong.stdout
    batch = run("batch", str(shop), "--plan", "rack", "--copies", "2", "--sheet", "17.63")
    assert batch.returncode == 0
    assert (shop / "batches/rack-2/cut/17.63mm/sheet-1-17.63mm.dxf").is_file()


def test_the_stock_is_narrowed_down_and_mistakes_are_told(tmp_path: Path) -> None:
    shop = str(lay_down(tmp_path / "shop"))
    chips = run("stock", shop, "--kind", "chip-loads").stdout
    assert chips.startswith("Chip loads\n==========\n")
    assert "Wood screw" not in chips
    for words, said in (
        (("birch-plywod-18",), "no stock `birch-plywod-18`"),
        (("--kind", "sheet"), "no kind of stock `sheet`"),
    ):
        done = run("stock", shop, *words)
        assert done.returncode == 1
        assert said in done.stdout
        assert "Did you mean" in done.stdout


def test_without_the_cairo_library_all_but_previews_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from kerfolio.publishing import pictures
    from kerfolio.publishing.build import Request, publish

    monkeypatch.setattr(pictures, "png_bytes", lambda *_: None)
    shop = lay_down(tmp_path / "shop", BOARD)
    out = tmp_path / "site"
    outcome = publish(Request(folder=shop, out=out, supporters_out=tmp_path / "handed"))
    assert outcome.published
    assert [finding.rule for finding in outcome.findings] == ["no-record", "no-cairo"]
    assert "plans/rack/index.html" in files_of(out)
    assert not list(out.rglob("preview.png"))
