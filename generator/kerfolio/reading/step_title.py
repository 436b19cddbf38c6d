"""The form of a step that is named by its title."""

from __future__ import annotations

from kerfolio.model.statement import Named
from kerfolio.reading.forms import ScalarForm

STEP_TITLE: ScalarForm[Named] = ScalarForm(
    noun="the title of a step",
    advice="Write the title of the step as it stands there.",
    convert=lambda node: Named(node.text.strip(), node.place),
    json={"type": "string"},
    rule="name",
)
