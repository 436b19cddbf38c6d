"""Fitted files of six plans at two hundred points each, every end of their ranges among them.

    .venv/bin/pytest -m bench -n 0 -s tests/bench/test_fitted.py

Two sheets, inches, drawn parts, oblique panels, pockets and fingers are among the plans. Typed into
the first page of a bundle, as mm, cm, inch decimals and fractions, a point gives a zip that is, to
the byte, what the program fills in, and whose files are those that ``kerfolio files`` writes in a
fresh process. Settled and drawn afresh at the point, a file has the same text between its numbers,
and no number is off by more than one step of its last decimal.

The clearance of joints is measured in the DXF, as ezdxf reads it. It prints seconds and sizes.
"""

from __future__ import annotations

import subprocess
import sys
import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from time import perf_counter, process_time
from typing import Any

import pytest

from kerfolio.bundles.archive import unzipped, zip_bytes
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import START, bundle_stem
from kerfolio.fitted.fill import fill
from kerfolio.fitted.form import Fitted
from kerfolio.fitted.reading import read_fitted
from kerfolio.pages.fitting import fitting_of
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.asked import Asked, point_asked
from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.examine import examine
from kerfolio.publishing.fitted_files import Printed, Settling, filled_at, variant_at
from tests.bench.typed import Typed, typed_points
from tests.conftest import SAMPLE, files_of
from tests.pages.conftest import browser as browser
from tests.pages.test_fitting import download, opened
from tests.plans import lay_down
from tests.publishing.clearances import plays
from tests.publishing.fitted_plans import INCHES, Fitting, compared

POINTS = 200
PROCESSES = 3
PLANS = ("desk-rack", "harbour-stool", "potting-bench", "tool-tote", "window-shelf", "inch-box")


@dataclass(frozen=True, kw_only=True)
class Case:
    """A plan of a workshop with its bundle, and the points that are looked at."""

    folder: Path
    name: str
    bundle: Bundle
    fitted: Fitted
    points: Sequence[Typed]
    printed: tuple[Printed, ...]

    @property
    def fresh(self) -> tuple[Typed, ...]:
        """Points for which a fresh process writes the files: two ends, then one by chance."""
        return (self.points[0], self.points[-1], *self.points[4 : 1 + PROCESSES])


@pytest.fixture(scope="module")
def inch_box(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay_down(tmp_path_factory.mktemp("inches") / "shop", INCHES, "inch-box")


@pytest.fixture(scope="module", params=PLANS)
def case(request: pytest.FixtureRequest, inch_box: Path) -> Case:
    return case_of(inch_box if request.param == "inch-box" else SAMPLE, request.param)


@cache
def case_of(folder: Path, name: str) -> Case:
    examined = examine(folder, name)
    assert examined.workshop is not None
    start = process_time()
    bundle = bundle_of(edition_of(examined.workshop, examined.laid_out[0]))
    took, files = process_time() - start, unzipped(bundle.content)
    data = bundle.fitted_text.encode()
    print(
        f"\n{name}: bundle in {took:.1f} s, {len(files)} files, "
        f"{sum(map(len, files.values())) / 1e6:.2f} MB, {len(bundle.content) / 1e6:.2f} MB packed; "
        f"fitted files {len(data) // 1000} kB, {len(zlib.compress(data)) // 1000} kB deflated"
    )
    fitted = read_fitted(bundle.fitted_text)
    page = fitting_of(bundle.edition, fitted)
    assert page is not None
    fits = {each.name: [step.value for step in each.fits] for each in page.sheets if each.fits}
    points = tuple(typed_points(fitted, fits, POINTS))
    assert len({str(each) for each in points}) > 0.9 * POINTS
    return Case(
        folder=folder,
        name=name,
        bundle=bundle,
        fitted=fitted,
        points=points,
        printed=printed_of(bundle.edition),
    )


def printed_of(edition: Edition) -> tuple[Printed, ...]:
    """Return what prints the files of an edition at any point."""
    settling = Settling(edition.settled, edition.corners)
    return (Templates.of(edition).at, SheetPapers(edition, settling.at).at)


@pytest.mark.bench
@pytest.mark.browser
def test_the_page_saves_what_the_program_fills_in(case: Case, browser: Any, tmp_path: Path) -> None:
    start_here = unzipped(case.bundle.content)[f"{bundle_stem(case.bundle.edition.plan)}/{START}"]
    (tmp_path / START).write_bytes(start_here)
    page, day = opened(browser, tmp_path / START, width=1280), case.bundle.edition.plan.released
    page.set_default_timeout(180_000)
    start = perf_counter()
    for typed in case.points:
        type_in(page, typed)
        refused = [each.inner_text() for each in page.get_by_role("alert").all()]
        assert page.locator("[data-fit=save]").is_visible(), (typed, refused)
        wanted = {name: text.encode() for name, text in fill(case.fitted, typed.point(case.fitted))}
        label = next(iter(wanted)).split("/")[1]
        stem = f"{bundle_stem(case.bundle.edition.plan)}-{label}"
        name, content = download(page, "Save all files as one zip")
        assert name == f"{stem}.zip"
        assert content == zip_bytes(wanted, day, stem, deflated=False), typed
    print(f"\n{case.name}: {len(case.points)} zips saved in {perf_counter() - start:.0f} s")
    page.get_by_text("One by one", exact=True).click()
    buttons = page.locator("[data-fit=files] button")
    buttons.last.wait_for()
    single = [saved(page, buttons.nth(place)) for place in range(buttons.count())]
    assert sorted(single) == sorted((n.split("/")[-1], content) for n, content in wanted.items())
    assert page.faults == []
    page.context.close()


def type_in(page: Any, typed: Typed) -> None:
    """Type a point as a reader would, beginning with what the plan has."""
    page.evaluate(
        "for (const each of document.querySelectorAll('[data-fit=reading]')) each.value = ''"
    )
    for name, readings in typed.readings.items():
        sheet = page.locator(f"[data-sheet={name}]")
        for place, each in enumerate(readings, start=1):
            sheet.get_by_label(f"Reading {place}").fill(each.page)
        fits = sheet.locator("[data-fit=fit]")
        if fits.count():
            own = fits.locator("xpath=self::*[@checked]")
            wanted = typed.fits.get(name)
            (sheet.locator(f"[data-fit=fit][value='{wanted}']") if wanted else own).check()
    if typed.cutter:
        page.get_by_label("Diameter of the cutter").fill(typed.cutter.page)
    else:
        value = "none" if typed.no_cutter else "planned"
        page.locator(f"[data-fit=cutter][value={value}]").check()
    page.keyboard.press("Tab")


def saved(page: Any, button: Any) -> tuple[str, bytes]:
    page.wait_for_timeout(150)  # Chromium drops what is more than ten downloads in a second
    with page.expect_download() as waiting:
        button.click()
    return str(waiting.value.suggested_filename), Path(waiting.value.path()).read_bytes()


@pytest.mark.bench
def test_the_files_of_the_bundle_are_those_filled_in(case: Case) -> None:
    edition, files = case.bundle.edition, unzipped(case.bundle.content)
    for settled in edition.variants:
        for name, content in filled_at(case.fitted, settled.variant).items():
            assert files[f"{bundle_stem(edition.plan)}/{name}"] == content
    assert len(edition.variants) == (2 if case.name == "inch-box" else 1)


@pytest.mark.bench
def test_the_words_of_a_command_line_give_the_same_files(case: Case) -> None:
    plan, stock = case.bundle.edition.plan, case.bundle.edition.settled.stock
    for typed in case.points:
        sheets, fits, cutters = typed.options
        there, findings = point_asked(Asked(sheets=sheets, fits=fits, cutters=cutters), plan, stock)
        assert there is not None, findings
        typed_in = {n: text.encode() for n, text in fill(case.fitted, typed.point(case.fitted))}
        assert filled_at(case.fitted, there) == typed_in, typed


@pytest.mark.bench
def test_a_fresh_process_writes_the_same_files(case: Case, tmp_path: Path) -> None:
    start = perf_counter()
    for place, typed in enumerate(case.fresh):
        out = tmp_path / str(place)
        command = [sys.executable, "-m", "kerfolio", "files", str(case.folder), "--plan", case.name]
        for option, texts in zip(("--sheet", "--fit", "--cutter"), typed.options, strict=True):
            command += [word for text in texts for word in (option, text)]
        done = subprocess.run([*command, "--out", str(out)], capture_output=True, text=True)
        assert done.returncode == 0, done.stdout + done.stderr
        written = {
            name: content
            for name, content in files_of(out).items()
            if name.startswith(("cut/", "templates/", "layout/", "setup/"))
            and not name.startswith(("cut/engravings/", "layout/saw-", "setup/engravings-"))
        }
        wanted = {n: text.encode() for n, text in fill(case.fitted, typed.point(case.fitted))}
        assert written.keys() == wanted.keys()
        assert [name for name in wanted if written[name] != wanted[name]] == []
    took = (perf_counter() - start) / len(case.fresh)
    print(f"\n{case.name}: `kerfolio files` took {took:.0f} s a point")


@pytest.mark.bench
def test_settled_afresh_a_file_is_the_same_but_for_a_last_decimal(case: Case) -> None:
    edition, start = case.bundle.edition, process_time()
    afresh = Fitting(
        drawn=edition.settled,
        layout=edition.layout,
        formats=edition.formats,
        reader=edition.reader,
        fitted=case.fitted,
        printed=case.printed,
    )
    found = [compared(afresh, typed.point(case.fitted)) for typed in case.points]
    off, numbers = sum(each.off for each in found), sum(each.numbers for each in found)
    print(
        f"\n{case.name}: {len(found)} points settled and drawn in {process_time() - start:.0f} s; "
        f"{off} of {numbers} numbers a step off"
    )
    wrong = [(t, each.wrong[:3]) for t, each in zip(case.points, found, strict=True) if each.wrong]
    assert wrong == []


@pytest.mark.bench
def test_the_clearance_in_the_dxf_is_the_stated_one(case: Case) -> None:
    drawn = case.bundle.edition.settled
    numbers = [n for n in case.fitted.numbers if not n.name.startswith(("cutter.", "cut."))]
    points = [
        {n.name: n.exact(n.least + share * (n.most - n.least)) for n in numbers}
        for share in (0.0, 0.37, 0.5, 0.81, 1.0)
    ]
    worst, count = 0.0, 0
    for at in (*points, *(typed.point(case.fitted) for typed in case.points[-20:])):
        exact = {n.name: at.get(n.name, n.drawn) for n in case.fitted.numbers}
        settled = Settling(drawn).at(variant_at(drawn, exact))
        assert settled is not None
        found = list(plays(settled, dict(fill(case.fitted, at))))
        assert [each for each in found if not abs(each.mm - each.meant) < 0.0005] == [], at
        worst = max((worst, *(abs(each.mm - each.meant) for each in found)))
        count += len(found)
    print(f"\n{case.name}: {count} clearances measured, none off by more than {worst:.5f} mm")
