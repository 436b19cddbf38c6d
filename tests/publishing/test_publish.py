"""The whole way on the sample workshop."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from kerfolio.agreement.written import list_rows
from kerfolio.basis.finding import Severity
from kerfolio.bundles.archive import sha256, unzipped
from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.private_log import read_log
from tests.conftest import Published, copy_of_sample, files_of
from tests.plans import BOARD


def bundles_of(published: Published) -> dict[str, dict[str, bytes]]:
    """Return the files of every bundle by the plan's name, the bundle's own folder taken off."""
    found = [*published.out.rglob("*.zip"), *published.supporters.rglob("*.zip")]
    return {
        path.name.rsplit("-", 1)[0]: {
            name.split("/", 1)[1]: content for name, content in unzipped(path.read_bytes()).items()
        }
        for path in found
    }


def test_the_sample_has_no_errors_or_warnings(published: Published) -> None:
    loud = [f for f in published.outcome.findings if f.severity is not Severity.NOTE]
    assert loud == []


def test_the_contract_of_out_is_kept(published: Published) -> None:
    names = set(files_of(published.out))
    wanted = {"index.html", "plans/index.html", "feed.xml", "sitemap.xml", "404.html"}
    for plan in published.outcome.plans:
        wanted |= {f"plans/{plan}/index.html", f"plans/{plan}/steps/index.html"}
    assert wanted | {"manifest.json", "log/index.html"} <= names


def test_the_manifest_lists_every_file_with_its_hash(published: Published) -> None:
    files = files_of(published.out)
    manifest = json.loads(files.pop("manifest.json"))
    listed = {each["name"]: (each["bytes"], each["sha256"]) for each in manifest["files"]}
    assert listed == {name: (len(data), sha256(data)) for name, data in files.items()}
    assert [each["name"] for each in manifest["plans"]] == sorted(published.outcome.plans)


def test_the_contract_of_a_bundle_is_kept(published: Published) -> None:
    for plan, files in bundles_of(published).items():
        facts = json.loads(files["plan.json"])
        wanted = {"start-here.html", "booklet-a4.pdf", "booklet-letter.pdf", "LICENCE.txt"}
        wanted |= {f"lists/{each}.csv" for each in ("parts", "sheets", "costs", "cutting")}
        wanted |= {f"lists/{each}.csv" for each in ("hardware", "boards") if facts[each]}
        edged = [edge for part in facts["variants"][0]["parts"] for edge in part.get("edges", ())]
        wanted |= {"lists/edges.csv"} if edged else set()
        wanted |= {"SHA256SUMS"}
        for variant in facts["variants"]:
            fit = variant["fit"]
            for kind in ("svg", "dxf"):
                wanted |= {
                    f"cut/{fit}/sheet-{sheet['number']}-{fit}.{kind}" for sheet in facts["layout"]
                }
                wanted |= {f"cut/{fit}/parts/{p['part']}-{fit}.{kind}" for p in variant["parts"]}
            wanted |= {f"templates/{fit}-{paper}.pdf" for paper in ("a4", "letter", "roll")}
            for kind in ("layout", "setup"):
                wanted |= {f"{kind}/{kind}-{fit}-{paper}.pdf" for paper in ("a4", "letter")}
        assert sorted(wanted - set(files)) == [], plan
        assert [name for name, content in files.items() if not content] == []


def test_sums_in_a_bundle_hold(published: Published) -> None:
    for files in bundles_of(published).values():
        lines = files["SHA256SUMS"].decode().splitlines()
        listed = {line.split("  ", 1)[1]: line.split("  ", 1)[0] for line in lines}
        assert listed == {n: sha256(c) for n, c in files.items() if n != "SHA256SUMS"}


def test_no_sealed_off_file_reaches_out(published: Published) -> None:
    """Nothing of a supporters' bundle lies under OUT, neither as a file nor inside a zip."""
    site = files_of(published.out)
    open_to_all = {sha256(content) for content in site.values()}
    for name, content in site.items():
        if name.endswith(".zip"):
            open_to_all |= {sha256(inner) for inner in unzipped(content).values()}
    handed = list(published.supporters.rglob("*.zip"))
    assert handed, "the sample has a plan for supporters"
    for path in handed:
        packed = path.read_bytes()
        assert sha256(packed) not in open_to_all
        assert not [name for name in site if path.name in name]
        leaked = {
            name
            for name, content in unzipped(packed).items()
            if sha256(content) in open_to_all
            and not name.endswith("LICENCE.txt")  # may equal an open plan's
        }
        assert leaked == set()


def test_the_page_of_a_supporters_plan_says_so_and_draws_no_exact_part(
    published: Published,
) -> None:
    for path in published.supporters.rglob("*.zip"):
        plan = path.name.rsplit("-", 1)[0]
        page = (published.out / "plans" / plan / "index.html").read_text("utf-8")
        assert "supporters" in page
        assert "downloads/" not in page
        assert not (published.out / "plans" / plan / "downloads").exists()


def test_private_trials_stay_private(published: Published) -> None:
    private = (published.folder / ".kerfolio" / "private" / "log" / "index.html").read_text("utf-8")
    site = b"\n".join(files_of(published.out).values())
    titles = private_titles(published)
    assert titles
    for title in titles:
        assert title in private
        assert title.encode() not in site


def private_titles(published: Published) -> list[str]:
    workshop, _ = read_log(published.folder)
    assert workshop is not None
    return [each.title for each in workshop.trials if each.title and not each.public]


def test_lists_parse_and_agree_with_the_plan(published: Published) -> None:
    for files in bundles_of(published).values():
        facts = json.loads(files["plan.json"])
        rows = list_rows(files, "lists/parts.csv")
        marks = {mark for row in rows for mark in row["marks"].split()}
        first = facts["variants"][0]
        assert marks == {piece["mark"] for p in first["parts"] for piece in p["pieces"]}
        hardware = list_rows(files, "lists/hardware.csv")
        assert {row["item"]: int(row["count"]) for row in hardware} == facts["hardware"]


def test_another_folder_and_time_zone_give_the_same_bytes(
    published: Published, tmp_path: Path
) -> None:
    """A set and a small plan for supporters say as much as all plans."""
    handed = BOARD + "access: supporters\n"
    here = copy_of_sample(tmp_path / "here", ())
    folder = copy_of_sample(tmp_path / "elsewhere" / "deep down", ("window-shelf",))
    for shop in (here, folder):
        (shop / "plans" / "handed").mkdir()
        (shop / "plans" / "handed" / "plan.yaml").write_text(handed, "utf-8")
    supporters = tmp_path / "supporters"
    request = Request(folder=here, out=tmp_path / "site", supporters_out=supporters)
    assert publish(request).published
    environment = {**os.environ, "TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "7", "LC_ALL": "C"}
    done = subprocess.run(
        [sys.executable, "-m", "kerfolio", "publish", str(folder)],
        capture_output=True,
        text=True,
        env=environment,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    whole = ("assets/", "plans/window-shelf/")
    one, other = (
        {name: content for name, content in files_of(site).items() if name.startswith(whole)}
        for site in (published.out, folder / "site")
    )
    assert len(other) > 20
    assert differing(one, other) == []
    given = files_of(supporters)
    assert len(given) == 1
    assert differing(given, files_of(folder / "supporters")) == []


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


def test_a_failed_publish_leaves_the_last_site_untouched(
    published: Published, tmp_path: Path
) -> None:
    folder = copy_of_sample(tmp_path / "workshop", ("desk-rack", "window-shelf"))
    plan = folder / "plans" / "desk-rack" / "plan.yaml"
    plan.write_text(plan.read_text("utf-8").replace("version:", "versoin:", 1), "utf-8")
    before = files_of(published.out)
    request = Request(folder=folder, out=published.out, supporters_out=published.supporters)
    outcome = publish(request)
    assert not outcome.published
    assert any(f.severity is Severity.ERROR for f in outcome.findings)
    assert files_of(published.out) == before
    assert sorted(path.name for path in published.out.parent.iterdir()) == [
        "site",
        "supporters",
        "workshop",
    ]


def test_supporters_bundles_inside_the_site_are_refused(tmp_path: Path) -> None:
    folder = copy_of_sample(tmp_path / "workshop")
    out = tmp_path / "site"
    outcome = publish(Request(folder=folder, out=out, supporters_out=out / "secret"))
    assert not outcome.published
    assert "supporters-inside-out" in [finding.rule for finding in outcome.findings]
    assert not out.exists()
