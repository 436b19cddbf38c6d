"""The sample's plans, proved as they are published, give no alarm."""

from __future__ import annotations

from kerfolio.basis.finding import Severity
from tests.conftest import Published


def test_what_is_put_together_goes_together(published: Published) -> None:
    assert len(published.made) == len(published.outcome.plans)
    for made in published.made:
        assert made
        for build in (each.build for each in made):
            assert build is not None
            assert [each.clashes for each in build.fitted] == [()] * len(build.fitted)
            assert build.blocked == ()
            told = [each for each in build.drawn.findings if each.severity is not Severity.NOTE]
            assert told == []


def test_a_back_between_the_uprights_braces_them(published: Published) -> None:
    """The sample's stool has two rails, its bench a splashback and rails besides."""
    assert "unbraced" not in {each.rule for each in published.outcome.findings}
