"""What a document of a release says of itself."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.writing.page import About


def about(edition: Edition, what: str, *, full_size: bool = False) -> About:
    """Return title, author, subject, language and date; ``what`` the document is: ``Booklet``.

    With ``full_size`` it asks to be printed without scaling.
    """
    plan, identity = edition.plan, edition.identity
    return About(
        title=f"{plan.title}: {what[0].lower()}{what[1:]}",
        author=identity.maker,
        subject=f"{what} for {plan.title}, release {plan.version}",
        language=identity.language,
        date=plan.released,
        full_size=full_size,
    )
