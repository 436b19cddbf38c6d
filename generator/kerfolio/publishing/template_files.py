"""The full-size templates of an edition, on every paper, as named bytes."""

from __future__ import annotations

from collections.abc import Container, Iterator

from kerfolio.basis.style import told_as
from kerfolio.edition.edition import Edition
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.cut_files import Named


def template_files(
    edition: Edition, templates: Templates | None = None, known: Container[str] = ()
) -> Iterator[Named]:
    """Yield the templates of every variant, on each paper and on a roll, but for ``known`` ones."""
    templates = templates or Templates.of(edition)
    for settled in edition.variants:
        for each in templates.at(settled):
            if each.name not in known:
                yield each.name, each.write(told_as)
