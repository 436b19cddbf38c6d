"""A workshop's look: what may be stated, and that nobody gets colours that cannot be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.model.look import Look, TypePair
from kerfolio.reading.workshop import read_workshop
from tests.pages.test_contrast import contrast


def read(folder: Path, look: str) -> tuple[Look, tuple[Finding, ...]]:
    (folder / "workshop.yaml").write_text(f"workshop: Bare\nmaker: Ada Fern\nlook: {look}\n")
    workshop, findings = read_workshop(folder)
    assert workshop is not None
    return workshop.identity.look, findings


def said(folder: Path, look: str) -> list[tuple[str, str, str]]:
    return [(each.message, each.advice, str(each.place)) for each in read(folder, look)[1]]


def test_a_workshop_may_set_its_colours_and_its_type(tmp_path: Path) -> None:
    look, findings = read(tmp_path, '{accent: "#1D4F91", ground: fff, type: all serif}')
    assert (look.accent, look.ground, look.type) == ("#1d4f91", "#ffffff", TypePair.ALL_SERIF)
    assert findings == ()


@pytest.mark.parametrize(
    ("look", "message", "advice", "place"),
    [
        (
            '{accent: "#8fd0b0"}',
            "accent `#8fd0b0` on `#f6f8f8` is 1.6:1, text needs 4.5:1",
            'Write `"#3f7e62"`, the nearest that can be read (WCAG 2.2, 1.4.3).',
            "workshop.yaml:3:8",
        ),
        (
            '{ground: "#c0c0c0"}',
            "the ground `#c0c0c0` is too dark to draw on",
            'Write `"#e1e1e1"`, the nearest that is light enough; dark screens get their own.',
            "workshop.yaml:3:8",
        ),
        (
            '{accent: "forest"}',
            "`forest` is no colour",
            'Write six digits of red, green and blue in quotes: `"#1c5c46"`.',
            "workshop.yaml:3:16",
        ),
        (
            "{type: all capitals}",
            "`all capitals` is not a pair of types",
            "Known here: `all sans`, `all serif`, `sans over serif`, `serif over sans`.",
            "workshop.yaml:3:14",
        ),
    ],
)
def test_what_cannot_be_read(
    tmp_path: Path, look: str, message: str, advice: str, place: str
) -> None:
    assert said(tmp_path, look) == [(message, advice, place)]


def test_a_colour_whose_quotes_were_forgotten_is_a_remark_of_yaml(tmp_path: Path) -> None:
    (found,) = said(tmp_path, "\n  accent: #1c5c46")
    assert found[0].startswith("expected a colour, found nothing")
    assert '"#1c5c46"' in found[1]


@pytest.mark.parametrize("accent", ["#8fd0b0", "#ffe100", "#ff8a00", "#cccccc", "#9fb8ff"])
def test_the_suggestion_passes_and_is_the_nearest(tmp_path: Path, accent: str) -> None:
    """Judged by the tests' own formula: it passes, and hardly more than that."""
    ((_, advice, _),) = said(tmp_path, f'{{accent: "{accent}"}}')
    assert 4.5 <= contrast(advice[8:15], "#f6f8f8") < 4.65
    assert read(tmp_path, f'{{accent: "{advice[8:15]}"}}')[1] == ()


def test_the_usual_look_stands_where_none_is_stated_or_it_cannot_be_read(tmp_path: Path) -> None:
    assert read(tmp_path, '{accent: "#8fd0b0"}')[0] == Look()
