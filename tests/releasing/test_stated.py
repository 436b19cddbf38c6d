"""A release put into the text of a plan: everything else stays."""

from __future__ import annotations

from datetime import date

import pytest
import yaml

from kerfolio.model.plan import Release
from kerfolio.releasing.stated import next_version, with_release

DAY = date(2026, 11, 30)
WORDS = 'The slots sat 12 mm too high: "knees" met them.'
HEAD = "plan: A stool  # ours\nversion: 1.0.0   # the newest\n"
FIRST = "{date: 2026-10-02, changed: First.}"

PLANS = {
    "flow": f"{HEAD}releases: {{1.0.0: {FIRST}}}  # all of them\n",
    "newest first": f"{HEAD}releases:\n  # the newest first\n  1.0.0: {FIRST}\n  0.9.0: {FIRST}\n",
    "newest last": f"{HEAD}releases:\n  0.9.0: {FIRST}\n  1.0.0: {FIRST}\n\n# the end\n",
    "long": f"{HEAD}releases:\n    1.0.0:\n        date: 2026-10-02\n        changed: >-\n"
    "          First.\nsteps: []\n",
    "none": f"{HEAD}steps: []\n",
    "no line end": f"{HEAD}releases:\n  0.9.0: {FIRST}\n  1.0.0: {FIRST}",
}


@pytest.mark.parametrize("name", PLANS)
@pytest.mark.parametrize("words", [WORDS, f"{WORDS} " * 6])
def test_a_release_more_and_nothing_else(name: str, words: str) -> None:
    before = PLANS[name]
    after = with_release(before, "1.0.1", DAY, words, errata=True)
    told = yaml.safe_load(after)
    stated = told["releases"].pop("1.0.1")
    assert stated == {"date": DAY, "changed": " ".join(words.split()), "errata": True}
    assert told.pop("version") == "1.0.1"
    was = yaml.safe_load(before)
    del was["version"]
    assert {"releases": {}, **told} == {"releases": {}, **was}
    kept = [line for line in before.splitlines() if line.strip() and "version" not in line]
    if name != "flow":
        assert [line for line in after.splitlines() if line in kept] == kept
    assert "version: 1.0.1   # the newest" in after
    assert max(map(len, after.splitlines())) < 100 or name == "flow"


def test_it_comes_where_its_like_stand() -> None:
    keys = {
        name: list(
            yaml.safe_load(with_release(PLANS[name], "1.0.1", DAY, "Words.", errata=False))[
                "releases"
            ]
        )
        for name in ("newest first", "newest last")
    }
    assert keys == {
        "newest first": ["1.0.1", "1.0.0", "0.9.0"],
        "newest last": ["0.9.0", "1.0.0", "1.0.1"],
    }


@pytest.mark.parametrize(
    ("step", "version"), [("fix", "1.10.3"), ("change", "1.11.0"), ("redesign", "2.0.0")]
)
def test_the_next_version_is_after_the_highest(step: str, version: str) -> None:
    """Semantic Versioning 2.0.0, items 6 to 8: each number starts the lower ones anew."""
    releases = [
        Release(version=each, date=DAY, changed="") for each in ("1.9.0", "1.10.2", "1.10.0")
    ]
    assert next_version(releases, step) == version
    assert next_version((), step) == "1.0.0"
