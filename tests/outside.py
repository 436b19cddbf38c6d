"""Tools from outside that some tests need: Chromium, Node packages, Java.

Where one is missing its tests skip and say why; with ``KERFOLIO_COMPULSORY=1`` they fail instead.
"""

from __future__ import annotations

import os
import shutil
from pathlib import Path
from typing import NoReturn

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
