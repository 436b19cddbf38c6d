"""What many tests share: the sample workshop published once."""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest
from hypothesis import settings
from xdist.scheduler import LoadFileScheduling

from kerfolio.assembly.made import Made
from kerfolio.basis.collector import collect_seldom
from kerfolio.publishing import bare, plan_work, shape_files, side_by_side
from kerfolio.publishing.build import Outcome, Request, publish
from kerfolio.publishing.examine import Examined, examine_read

# The same cases on every run, so that a change is judged by what it changed. New ones are looked
# for by hand: HYPOTHESIS_PROFILE=search .venv/bin/python -m pytest
settings.register_profile("steady", derandomize=True, database=None, deadline=None)
settings.register_profile("search", derandomize=False, deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "steady"))

collect_seldom()  # as the command does


@pytest.fixture(autouse=True)
def one_core(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let commands that state no workers work alone: the tests themselves take every core."""
    monkeypatch.setattr(side_by_side, "cores", lambda: 1)


@pytest.fixture(autouse=True, scope="session")
def hangs_on_what_is_thought() -> Iterator[None]:
    """Let nothing be made from what the key of its kept bytes does not hold."""

    def refused(make: object, *_: object) -> bytes:
        raise AssertionError(f"{make} asks for what `publishing/bare.py` leaves out")

    with patch.object(bare, "of_all", refused), patch.object(shape_files, "of_all", refused):
        yield


SAMPLE = Path(__file__).resolve().parent.parent / "sample-site"
BUILT = ("site", "supporters", ".kerfolio")
_NAMES_A_PLAN = re.compile(r" +(?:- \{.*)?plan: ([a-z-]+)(?:,.*\})?\n")
"""A line of the log that names a plan: alone, or with the whole of an entry."""
_EMPTY = re.compile(r"^[a-z]+:\n(?! )", re.MULTILINE)


def files_of(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its relative name."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def copy_of_sample(target: Path, plans: Iterable[str] | None = None) -> Path:
    """Copy the sample workshop's source, without anything an earlier publish left in it.

    Where ``plans`` are given, only those are copied, and trials of others are of no plan.
    """
    shutil.copytree(SAMPLE, target, ignore=shutil.ignore_patterns(*BUILT))
    if plans is not None:
        kept = set(plans)
        for each in (target / "plans").iterdir():
            if each.name not in kept:
                shutil.rmtree(each)
        for each in (target / "log").glob("*.yaml"):
            lines = each.read_text("utf-8").splitlines(keepends=True)
            others = (_NAMES_A_PLAN.fullmatch(line) for line in lines)
            pairs = zip(lines, others, strict=True)
            own = (line for line, other in pairs if not other or other[1] in kept)
            each.write_text(_EMPTY.sub("", "".join(own)), "utf-8")
    return target


@dataclass(frozen=True)
class Published:
    """The sample workshop as published: where it went and what came of it.

    ``made`` is what its plans make, put together and proved, plan by plan.
    """

    folder: Path
    out: Path
    supporters: Path
    outcome: Outcome
    made: tuple[tuple[Made, ...], ...]


SHARING = (
    *("publishing/test_publish.py", "publishing/test_whole.py", "pages/test_sample.py"),
    "booklet/test_sample.py",
    "proving/test_sample.py",
)
"""Files whose tests look at the published sample: one worker takes them all."""


LONG = (
    *SHARING,
    "tests/test_command.py",
    "pages/test_browser.py",
    "pages/test_fitting.py",
    "pages/test_viewer.py",
    "agreement/test_check.py",
    "layouts/test_boards.py",
    "publishing/test_what_proves_publishes.py",
    "layouts/test_outside.py",
    "tests/test_wheel.py",
    "tests/test_foreign_settings.py",
)
"""Files that take longest are begun first, so that no worker is left with one at the end."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    ranks = {name: rank for rank, name in enumerate(LONG)}

    def rank(item: pytest.Item) -> int:
        path = item.path.as_posix()
        return min((ranks[each] for each in LONG if path.endswith(each)), default=len(LONG))

    items.sort(key=rank)


class _WholeFiles(LoadFileScheduling):
    """Gives each worker whole files."""

    def _split_scope(self, nodeid: str) -> str:
        file: str = super()._split_scope(nodeid)
        return "published" if file.endswith(SHARING) else file


def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> LoadFileScheduling:
    """Give one worker all tests of the published sample, so that it is published once."""
    return _WholeFiles(config, log)


@pytest.fixture(scope="session")
def published(tmp_path_factory: pytest.TempPathFactory) -> Published:
    root = tmp_path_factory.mktemp("published")
    folder = copy_of_sample(root / "workshop")
    out, supporters = root / "site", root / "supporters"
    made: list[tuple[Made, ...]] = []

    def noted(*asked: Any, **more: Any) -> Examined:
        found = examine_read(*asked, **more)
        made.extend(each.made for each in found.proofs)
        return found

    with patch.object(plan_work, "examine_read", noted):
        outcome = publish(Request(folder=folder, out=out, supporters_out=supporters))
    assert outcome.published, "\n".join(str(finding) for finding in outcome.findings)
    return Published(
        folder=folder, out=out, supporters=supporters, outcome=outcome, made=tuple(made)
    )
