from __future__ import annotations

import signal
from contextlib import suppress

import pytest

from kerfolio.watching.ending import asked_to_end


@pytest.mark.parametrize("ask", [signal.SIGINT, signal.SIGTERM])
def test_an_end_that_was_asked_for_is_known_though_its_exception_was_lost(ask: int) -> None:
    before = signal.getsignal(ask)
    with asked_to_end() as is_over:
        assert not is_over()
        with suppress(KeyboardInterrupt):
            signal.raise_signal(ask)
        assert is_over()
    assert signal.getsignal(ask) == before
