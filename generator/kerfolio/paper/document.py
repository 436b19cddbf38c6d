"""What a document of a release says of itself."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition
from kerfolio.writing.page import About


def about(edition: Edition, what: str, *, full_size: bool = False) -> About:
    """Return title, author, subject, language and date; ``what`` the document is: ``layout``.

    With ``full_size`` it asks to be printed without scaling.
    """
    plan, identity, reader = edition.plan, edition.identity, edition.reader
    told = {"plan": plan.title, "version": plan.version}
    return About(
        title=say(reader, f"printed-title-{what}", plan=plan.title),
        author=identity.maker,
        subject=say(reader, f"printed-subject-{what}", **told),
        language=identity.language,
        date=plan.released,
        full_size=full_size,
    )
