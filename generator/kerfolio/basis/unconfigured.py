"""Loading a library without what a user may have set for it in other programs.

Some libraries read files of the user's while they load: from the home folder, from the folder the
command is run in, from a cache. What stands there would change our files, and one that cannot be
read would stop every command.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Iterator
from contextlib import chdir, contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

_FOLDERS = ("HOME", "USERPROFILE", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME")
_VARIABLES = ("EZDXF_", "RL_", "EVAL_DEBUG")
"""What the names of the variables begin with that ezdxf and reportlab take settings from."""
_MODULES = (
    "reportlab_settings",
    "reportlab_mods",
    "reportlab.local_rl_settings",
    "reportlab.local_rl_mods",
)
"""Modules that reportlab looks for on the whole path, to run what is in them."""


@contextmanager
def unconfigured() -> Iterator[None]:
    """Give the imports inside an empty home, an empty working folder and none of the settings.

    Everything is as before afterwards. Wrap every import of ezdxf and of reportlab in it.
    """
    before = dict(os.environ)
    with TemporaryDirectory() as name, chdir(name):
        _lay_font_cache(Path(name))
        try:
            for variable in [each for each in before if each.startswith(_VARIABLES)]:
                del os.environ[variable]
            os.environ.update(dict.fromkeys(_FOLDERS, name))
            with _refused(_MODULES):
                yield
        finally:
            for variable in (*_FOLDERS, *os.environ):
                if variable not in before:
                    os.environ.pop(variable, None)
            os.environ.update(before)


def _lay_font_cache(home: Path) -> None:
    """Tell ezdxf that there are no fonts: else it opens every font of the machine to list them."""
    cache = home / "ezdxf" / "font_manager_cache.json"
    cache.parent.mkdir()
    cache.write_text(json.dumps({"version": 2, "font-faces": []}), "utf-8")


@contextmanager
def _refused(modules: tuple[str, ...]) -> Iterator[None]:
    """Make these modules ones that cannot be found."""
    added = [name for name in modules if name not in sys.modules]
    sys.modules.update(dict.fromkeys(added))  # type: ignore[arg-type] # None: import fails
    try:
        yield
    finally:
        for name in added:
            del sys.modules[name]
