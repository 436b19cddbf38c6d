"""The browser that pages are looked at in."""

from tests.pages.conftest import browser

__all__ = ["browser"]
