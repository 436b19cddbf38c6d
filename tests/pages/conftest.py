"""The browser that tests of pages share, one for each module."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import sync_playwright

from tests.outside import CHROMIUM_FLAGS, SOFTWARE_GL, chromium


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    path = chromium()
    with sync_playwright() as playwright:
        arguments = [*CHROMIUM_FLAGS, *SOFTWARE_GL]
        opened = playwright.chromium.launch(executable_path=path, args=arguments)
        yield opened
        opened.close()
