"""Only this machine's browser, on the server's own pages, is answered."""

from __future__ import annotations

import pytest

from kerfolio.watching.guard import is_ours

OURS = "http://127.0.0.1:8000"


@pytest.mark.parametrize("host", ["127.0.0.1:8000", "localhost:8000"])
def test_our_own_pages_are_answered(host: str) -> None:
    assert is_ours({"Host": host}, 8000)
    assert is_ours({"Host": host, "Origin": f"http://{host}"}, 8000, writes=True)
    assert is_ours({"Host": host, "Sec-Fetch-Site": "none"}, 8000)


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"Host": "plans.example"},
        {"Host": "plans.example:8000"},  # a name that was made to point here
        {"Host": "127.0.0.1"},
        {"Host": "127.0.0.1:8001"},
        {"Host": "127.0.0.1:8000.plans.example"},
        {"Host": "127.0.0.1:8000", "Origin": "http://plans.example"},
        {"Host": "127.0.0.1:8000", "Origin": "null"},
        {"Host": "127.0.0.1:8000", "Origin": "https://127.0.0.1:8000"},
        {"Host": "127.0.0.1:8000", "Origin": "http://127.0.0.1:9000"},
        {"Host": "127.0.0.1:8000", "Sec-Fetch-Site": "cross-site"},
        {"Host": "127.0.0.1:8000", "Sec-Fetch-Site": "same-site"},
    ],
)
def test_all_others_are_refused(headers: dict[str, str]) -> None:
    assert not is_ours(headers, 8000)


def test_what_writes_says_where_it_comes_from() -> None:
    assert not is_ours({"Host": "127.0.0.1:8000"}, 8000, writes=True)
    assert is_ours({"Host": "127.0.0.1:8000", "Origin": OURS}, 8000, writes=True)
