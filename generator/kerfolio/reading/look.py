"""The form of a workshop's look: its colours are checked for contrast when they are read."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from kerfolio.basis.colour import TEXT, contrast, nearest_apart, read_colour
from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.digits import digits
from kerfolio.basis.finding import Finding, error
from kerfolio.model.look import LEAST_GROUND, Look, TypePair
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.logo import LogoForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.record import Fields, Key, Record
from kerfolio.reading.values import choice


def _colour(node: Scalar) -> str | Complaint:
    return read_colour(node.text) or Complaint(f"{quoted(node.text.strip())} is no colour")


_COLOUR: ScalarForm[str] = ScalarForm(
    noun="a colour",
    advice='Write six digits of red, green and blue in quotes: `"#1c5c46"`.',
    convert=_colour,
    json={"type": "string", "pattern": "^#?([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$"},
)


def _contrasts(found: Fields) -> Iterator[Finding]:
    """Yield a finding for a ground too dark to read on, and an accent too faint upon it."""
    usual = Look()
    ground = found.values.get("ground", usual.ground)
    accent = found.values.get("accent", usual.accent)
    if contrast(ground, "#000000") < LEAST_GROUND:
        near = nearest_apart(ground, ["#000000"], LEAST_GROUND)
        message = f"the ground `{ground}` is too dark to draw on"
        advice = f'Write `"{near}"`, the nearest that is light enough; dark screens get their own.'
        yield error("low-contrast", message, found.places["ground"], advice)
        return
    if contrast(accent, ground) < TEXT:
        near = nearest_apart(accent, [ground], TEXT)
        ratio = digits(int(contrast(accent, ground) * 10) / 10, 1)
        message = f"accent `{accent}` on `{ground}` is {ratio}:1, text needs 4.5:1"
        at = found.places["accent" if "accent" in found.places else "ground"]
        advice = f'Write `"{near}"`, the nearest that can be read (WCAG 2.2, 1.4.3).'
        yield error("low-contrast", message, at, advice)


def _make_look(type: str = "", **values: Any) -> Look:
    return Look(type=TypePair(type) if type else Look().type, **values)


LOOK: Record[Look] = Record(
    name="look",
    noun="a look",
    keys=(
        Key(name="accent", form=_COLOUR, says='Colour of links and marks ("#1c5c46").'),
        Key(name="ground", form=_COLOUR, says='Colour of the page on a light screen ("#f6f8f8").'),
        Key(
            name="type",
            form=choice("a pair of types", *(str(each) for each in TypePair)),
            says="Type of headings over that of running text (sans over serif).",
        ),
        Key(name="logo", form=LogoForm(), says="A mark of the workshop's own, SVG or PNG."),
    ),
    make=_make_look,
    check=_contrasts,
    advice='Write `look: {accent: "#1c5c46", type: all sans}`.',
)
