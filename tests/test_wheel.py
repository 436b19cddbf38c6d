"""The wheel carries the library and the theme, and publishes outside the checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
import zipfile
from pathlib import Path

import pytest

from kerfolio.basis.shipped import SHIPPED
from tests.conftest import files_of
from tests.plans import BOARD, lay_down

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--outdir", str(folder), str(ROOT)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return next(folder.glob("kerfolio-*.whl"))


def test_the_wheel_carries_what_it_needs(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    shipped = {
        each.relative_to(ROOT).as_posix()
        for folder in SHIPPED
        for each in (ROOT / folder).rglob("*")
        if each.is_file()
    }
    assert {f"kerfolio/_shipped/{each}" for each in shipped} <= set(names)
    assert "kerfolio/py.typed" in names
    assert {name.split("/")[0] for name in names if ".dist-info" not in name} == {"kerfolio"}


def test_the_wheel_publishes_outside_the_checkout(wheel: Path, tmp_path: Path) -> None:
    """A new environment sees the wheel; the libraries it needs are lent by this one."""
    home = tmp_path / "environment"
    venv.create(home, with_pip=False, symlinks=True)
    site = next((home / "lib").glob("python3*")) / "site-packages"
    zipfile.ZipFile(wheel).extractall(site)
    libraries = [each for each in sys.path if each.endswith("site-packages")]
    (site / "libraries.pth").write_text("\n".join(libraries) + "\n")
    shop = lay_down(tmp_path / "shop", BOARD)
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    done = subprocess.run(
        [str(home / "bin" / "python"), "-m", "kerfolio", "publish", str(shop)],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env=environment,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "plans/rack/index.html" in files_of(shop / "site")
    where = subprocess.run(
        [str(home / "bin" / "python"), "-c", "import kerfolio; print(kerfolio.__file__)"],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env=environment,
        check=True,
    )
    assert where.stdout.startswith(str(site))
