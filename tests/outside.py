"""Tools from outside that some tests need: Chromium, Node packages, Java.

Where one is missing its tests skip and say why; with ``KERFOLIO_COMPULSORY=1`` they fail instead.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any, NoReturn

import pytest

CHROMIUM_FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)

SOFTWARE_GL = ("--use-angle=swiftshader", "--enable-unsafe-swiftshader")
"""Draws in 3-D without a graphics card."""


def missing(what: str) -> NoReturn:
    """Skip the test for want of a tool, or fail it where tools are compulsory."""
    if os.environ.get("KERFOLIO_COMPULSORY") == "1":
        pytest.fail(f"{what}, and KERFOLIO_COMPULSORY=1 makes this test compulsory")
    pytest.skip(what)


def chromium() -> str:
    """Return the path of Chromium."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    return found or missing("Chromium is not installed")


def java() -> str:
    """Return the path of Java."""
    return shutil.which("java") or missing("Java is not installed")


def node() -> str:
    """Return the path of Node."""
    return shutil.which("node") or missing("Node is not installed")


def node_file(*parts: str) -> Path:
    """Return a file of a Node package below the folder that KERFOLIO_NODE_MODULES names."""
    folder = os.environ.get("KERFOLIO_NODE_MODULES", "")
    if not folder:
        missing("KERFOLIO_NODE_MODULES names no folder of Node packages")
    path = Path(folder).joinpath(*parts)
    return path if path.is_file() else missing(f"{path} is not there")


_BRIEF = ("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xss4m")
"""For a program of seconds: compiling itself thoroughly takes Java longer than all its work."""


def nu_messages(*files: Path) -> list[dict[str, Any]]:
    """Return what the Nu HTML checker says of pages and style sheets.

    What it says of the pages' policy is left out: it knows no origin of a file, no hashes and no
    blocks of data. ``tests/pages/test_policy.py`` has a browser judge that.
    """
    jar = node_file("vnu-jar", "build", "dist", "vnu.jar")
    done = subprocess.run(
        [
            java(),
            *_BRIEF,
            "-jar",
            str(jar),
            "--format",
            "json",
            "--also-check-css",
            *map(str, files),
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    messages: list[dict[str, Any]] = json.loads(done.stderr)["messages"]
    return [each for each in messages if "Content Security Policy" not in each["message"]]
