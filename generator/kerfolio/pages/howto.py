"""The plan as structured data: schema.org's HowTo in JSON-LD."""

from __future__ import annotations

import json
from decimal import Decimal
from typing import Any

from markupsafe import Markup

from kerfolio.basis.digits import steps
from kerfolio.basis.figures import money_number
from kerfolio.basis.lengths import size_text
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import licence_address, licence_of
from kerfolio.model.plan import NO_DAY, Step
from kerfolio.pages.photos import largest
from kerfolio.pages.script_data import script_data
from kerfolio.pages.site import Site, last_day


def howto_script(site: Site, edition: Edition, image: str) -> Markup:
    """Return the JSON text of a script element; ``image`` is an absolute address or empty."""
    found = _howto(site, edition, image)
    return script_data(json.dumps(found, ensure_ascii=False, sort_keys=True))


def _howto(site: Site, edition: Edition, image: str) -> dict[str, Any]:
    plan = edition.plan
    minutes = plan.minutes
    data = {
        "@context": "https://schema.org",
        "@type": "HowTo" if plan.steps else "CreativeWork",
        "name": plan.title,
        "description": plan.summary,
        "inLanguage": edition.identity.language,
        "version": plan.version,
        "author": {"@type": "Person", "name": edition.identity.maker},
        "isAccessibleForFree": plan.is_open,
        "license": licence_address(licence_of(edition)),
        "url": site.address(f"plans/{plan.name}/"),
        "image": image,
        "datePublished": _day(edition, first=True),
        "dateModified": _day(edition, first=False),
        "totalTime": f"PT{max(1, steps(minutes, 0))}M" if minutes else "",
        "estimatedCost": _cost(edition),
        "supply": _supplies(edition),
        "tool": [{"@type": "HowToTool", "name": tool} for tool in tools(edition)],
        "step": [_step(site, edition, n, step) for n, step in enumerate(plan.steps, start=1)],
    }
    return {key: value for key, value in data.items() if value not in ("", None, [])}


def tools(edition: Edition) -> tuple[str, ...]:
    """Return every tool named in the steps once, in the order of the steps."""
    return tuple(dict.fromkeys(tool for step in edition.plan.steps for tool in step.tools))


def _day(edition: Edition, *, first: bool) -> str:
    days = sorted(each.date for each in edition.plan.releases)
    day = days[0] if first and days else last_day(edition)
    return "" if day == NO_DAY else day.isoformat()


def _cost(edition: Edition) -> dict[str, str] | None:
    totals = [row.total for row in edition.costs]
    if not totals or any(total is None for total in totals):
        return None
    whole = sum((total for total in totals if total is not None), Decimal(0))
    currency = edition.identity.currency
    return {"@type": "MonetaryAmount", "currency": currency, "value": money_number(whole)}


def _supplies(edition: Edition) -> list[dict[str, Any]]:
    reader = edition.reader
    sheets = [
        (f"{row.title}, {sheet_text((row.width, row.height), reader)}", row.count)
        for row in edition.sheets
    ]
    boards = [
        (f"{row.title}, {size_text((row.thickness, row.width, row.length), reader)}", row.count)
        for row in edition.boards
    ]
    hardware = [(row.title, row.count) for row in edition.hardware]
    return [
        {"@type": "HowToSupply", "name": name, "requiredQuantity": count}
        for name, count in (*sheets, *boards, *hardware)
    ]


def _step(site: Site, edition: Edition, number: int, step: Step) -> dict[str, Any]:
    text = step.text.plain() or step.title
    found = {"@type": "HowToStep", "position": number, "name": step.title, "text": text}
    address = site.address(f"plans/{edition.name}/steps/#step-{number}")
    files = site.files[edition.name].photos.get(step.photo.file, ()) if step.photo else ()
    image = site.address(largest(files)) if files else ""
    return {**found, **({"url": address} if address else {}), **({"image": image} if image else {})}
