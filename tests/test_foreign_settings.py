"""What a user has set for the libraries in other programs neither stops a command nor changes it.

The places are those the libraries' own manuals name: ezdxf ("Global Options Object": the home's
configuration folder, the working folder, EZDXF_CONFIG_FILE; its cache of fonts), ReportLab ("User
Guide", site configuration: ``reportlab_settings`` and ``reportlab_mods`` on the path or hidden in
the home, RL_ variables).
"""

from __future__ import annotations

import importlib
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from kerfolio.basis.unconfigured import unconfigured
from tests.conftest import files_of
from tests.plans import ONE, lay_down

GENERATOR = Path(__file__).resolve().parent.parent / "generator"

BROKEN: dict[str, bytes] = {
    "home/.config/ezdxf/ezdxf.ini": b"\xff\xfe[\x00c\x00",
    "home/.cache/ezdxf/font_manager_cache.json": b"\xff\xfe",
    "home/.reportlab_settings": b"pageCompression = 'much'\n",
    "home/.reportlab_mods": b"raise SystemExit('mods of the home')\n",
    "here/ezdxf.ini": b"no section\n",
    "here/reportlab_settings.py": b"raise SystemExit('settings of the folder')\n",
    "here/reportlab_mods.py": b"raise SystemExit('mods of the folder')\n",
}
ODD: dict[str, bytes] = {
    "home/.config/ezdxf/ezdxf.ini": b"[core]\ndisable_c_ext = true\nload_proxy_graphics = false\n",
    "home/.cache/ezdxf/font_manager_cache.json": b'{"version": 2, "font-faces": []}',
    "home/.reportlab_settings": b"pdfComments = 1\nwrapA85 = 1\nttfAsciiReadable = 0\n",
    "here/ezdxf.ini": b"[core]\nwrite_fixed_meta_data_for_testing = true\nsupport_dirs = /usr\n",
}
VARIABLES = {"EZDXF_CONFIG_FILE": "ezdxf.ini", "EZDXF_DISABLE_C_EXT": "1", "RL_pdfComments": "1"}
ODD_VARIABLES = {**VARIABLES, "RL_useA85": "0", "RL_allowTTFSubsetting": "0"}
BROKEN_VARIABLES = {**VARIABLES, "RL_pageCompression": "much", "EVAL_DEBUG": "much"}


def batch(
    root: Path, settings: Mapping[str, bytes], variables: Mapping[str, str]
) -> dict[str, bytes]:
    """Lay out a batch with these files about and return what was written."""
    for name, content in settings.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_bytes(content)
    for folder in ("home", "here"):
        (root / folder).mkdir(parents=True, exist_ok=True)
    shop = lay_down(root / "shop", ONE)
    before = files_of(root / "home")
    folders = {"XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME"}
    kept = {key: value for key, value in os.environ.items() if key not in folders}
    done = subprocess.run(
        [sys.executable, "-m", "kerfolio", "batch", str(shop), "--plan", "rack", "--copies", "2"],
        capture_output=True,
        text=True,
        cwd=root / "here",
        env={**kept, "HOME": str(root / "home"), "PYTHONPATH": str(GENERATOR), **variables},
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert files_of(root / "home") == before, "nothing is left in the user's home"
    return files_of(shop / "batches")


def test_a_users_settings_for_the_libraries_change_no_byte(tmp_path: Path) -> None:
    plain = batch(tmp_path / "plain", {}, {})
    assert {Path(name).suffix for name in plain} >= {".pdf", ".dxf", ".svg"}
    assert batch(tmp_path / "odd", ODD, ODD_VARIABLES) == plain
    assert batch(tmp_path / "broken", BROKEN, BROKEN_VARIABLES) == plain


def test_the_libraries_know_no_fonts_of_the_machine() -> None:
    """Else the first command would open every font file there is, to list them."""
    asked = (
        "import kerfolio.writing.dxf\n"
        "from ezdxf.fonts.fonts import font_manager\n"
        "font_manager.print_available_fonts()\n"
    )
    command = [sys.executable, "-c", asked]
    assert (
        subprocess.run(command, capture_output=True, check=True).stdout.strip() == b"found 0 fonts"
    )


def test_all_is_as_before_afterwards(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("RL_invariant", "0")
    monkeypatch.delenv("XDG_DATA_HOME", raising=False)
    before = dict(os.environ)
    (tmp_path / "reportlab_settings.py").write_text("")
    monkeypatch.syspath_prepend(tmp_path)
    with unconfigured():
        assert "RL_invariant" not in os.environ
        assert Path("~").expanduser() == Path.cwd()
        with pytest.raises(ModuleNotFoundError):
            importlib.import_module("reportlab_settings")
    assert dict(os.environ) == before
    assert Path.cwd() == tmp_path
    assert importlib.import_module("reportlab_settings")
