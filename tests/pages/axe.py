"""What axe-core finds on a page, with the rules of WCAG 2.0, 2.1 and 2.2, levels A and AA, and its
best practices."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tests.outside import node_file

TAGS = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice")

RUN = """
([scope, tags]) => axe.run(
  scope, {runOnly: {type: "tag", values: tags}, resultTypes: ["violations", "incomplete"]})
"""
"""All rules; only the nodes of what is found or undecided are described, which takes a third."""

Node = dict[str, Any]


def lettering_of_a_drawing(rule: Node, node: Node) -> bool:
    """Axe cannot see what lies behind SVG text; ``test_contrast.py`` checks those pairs itself."""
    return rule["id"] == "color-contrast" and node["html"].startswith("<text")


def axe_finds(
    page: Any, scope: str = "html", but: Callable[[Node, Node], bool] = lambda _, __: False
) -> list[str]:
    """Return what it finds within a selector, or cannot decide, ``but`` what is known."""
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(node_file("axe-core", "axe.min.js").read_text("utf-8"))
    result = page.evaluate(RUN, [scope, list(TAGS)])
    assert len(result["passes"]) > 10
    return [
        f"{rule['id']}: {node['html'][:160]}: {node.get('failureSummary', '')}"
        for rule in (*result["violations"], *result["incomplete"])
        for node in rule["nodes"]
        if not but(rule, node)
    ]
