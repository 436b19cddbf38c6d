"""Where a page stands in its site, as structured data: schema.org's BreadcrumbList in JSON-LD."""

from __future__ import annotations

import json
from collections.abc import Iterable

from markupsafe import Markup

from kerfolio.pages.script_data import script_data
from kerfolio.pages.site import Site


def crumbs(site: Site, way: Iterable[tuple[str, str]]) -> Markup:
    """Return the JSON text of a script element, empty without a base address.

    ``way`` are titles and paths of the pages from below home to the page itself; an empty one has
    none.
    """
    items = [
        {"@type": "ListItem", "position": number, "name": name, "item": site.address(path)}
        for number, (name, path) in enumerate(((site.identity.title, ""), *way), start=1)
    ]
    if not site.base_url or len(items) == 1:
        return Markup()
    data = {"@context": "https://schema.org", "@type": "BreadcrumbList", "itemListElement": items}
    return script_data(json.dumps(data, ensure_ascii=False, sort_keys=True))
