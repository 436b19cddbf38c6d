"""What a supporters' plan shows to everybody: words for ``show:``, and what is never kept back."""

from __future__ import annotations

from dataclasses import dataclass

ALWAYS = (
    "title",
    "summary",
    "cover",
    "size of the whole",
    "what the bundle holds",
    "licence",
    "cautions",
    "releases and corrections",
)
"""Public of every plan: what one gets, what may hurt, and what was wrong."""

SHOWABLE = {
    "story": "The maker's own words.",
    "photos": "All photos, not only the cover.",
    "sizes": "Parts, sheets and boards with their sizes, counts and weights.",
    "hardware": "The hardware list, and what is used up.",
    "costs": "Prices and costs.",
    "settings": "Cutters, cut settings and times; `sizes` must be shown too.",
    "loads": "What it carries.",
    "steps": "The steps with their texts.",
    "questions": "Questions and answers.",
    "video": "The film and its chapters.",
    "sums": "The bundle's check sum.",
}
"""Words for ``show:``, and what each of them makes public. Exact shapes never are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Public:
    """What of a plan is public: always, because ``show:`` says so, and what is kept back."""

    title: str
    always: tuple[str, ...]
    shown: tuple[str, ...]
    kept: tuple[str, ...]
