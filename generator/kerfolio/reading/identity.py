"""The form of ``workshop.yaml``."""

from __future__ import annotations

import re
from typing import Any

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.model.workshop import Identity
from kerfolio.reading.amounts import EXTRA_MM
from kerfolio.reading.carrying import CARRIES
from kerfolio.reading.circle import CIRCLES
from kerfolio.reading.consumable import CONSUMABLES
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.hand_bore import HAND_BORE
from kerfolio.reading.licences import LICENCE
from kerfolio.reading.look import LOOK
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.play import PLAY
from kerfolio.reading.prose import PROSE
from kerfolio.reading.record import Key, Record
from kerfolio.reading.router import ROUTER
from kerfolio.reading.sending import SENDING
from kerfolio.reading.values import (
    ADDRESS,
    CUT_FILES,
    MONEY,
    SHEET_SIZE,
    SUMMARY_TEXT,
    TEXT,
    TITLE_TEXT,
    choice,
)


def _currency(node: Scalar) -> str | Complaint:
    text = node.text.strip()
    if re.fullmatch("[A-Z]{3}", text):
        return text
    return Complaint(f"{quoted(text)} is no currency code")


def _language(node: Scalar) -> str | Complaint:
    text = node.text.strip()
    if re.fullmatch("[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*", text):
        return text
    return Complaint(f"{quoted(text)} is no language code")


_CURRENCY: ScalarForm[str] = ScalarForm(
    noun="a currency",
    advice="Write its three letters (ISO 4217): `EUR`, `USD`, `GBP`.",
    convert=_currency,
    json={"type": "string", "pattern": "^[A-Z]{3}$"},
)
_LANGUAGE: ScalarForm[str] = ScalarForm(
    noun="a language",
    advice="Write its code (BCP 47): `en`, `en-GB`.",
    convert=_language,
    json={"type": "string", "pattern": "^[a-z]{2,3}"},
)


def _make_identity(title: str = "", maker: str = "", **values: Any) -> Identity:
    return Identity(title=title, maker=maker, **values)


IDENTITY: Record[Identity] = Record(
    name="workshop",
    noun="a workshop",
    keys=(
        Key(name="workshop", form=TITLE_TEXT, says="Its title.", required=True, field="title"),
        Key(name="maker", form=TITLE_TEXT, says="Who publishes.", required=True),
        Key(name="tagline", form=SUMMARY_TEXT, says="A few words under the title."),
        Key(name="base-url", form=ADDRESS, says="Where the site will stand."),
        Key(name="contact", form=TEXT, says="How readers reach the maker."),
        Key(name="units-first", form=choice("a unit", "mm", "in"), says="The unit shown first."),
        Key(name="cut-files", form=CUT_FILES, says="The units of cut files: mm always, or both."),
        Key(name="licence", form=LICENCE, says="Licence of plans that state none."),
        Key(name="currency", form=_CURRENCY, says="Currency of all prices (ISO 4217)."),
        Key(name="paper", form=choice("a paper", "a4", "letter"), says="The paper shown first."),
        Key(name="language", form=_LANGUAGE, says="Language of the texts (BCP 47)."),
        Key(name="circles", form=CIRCLES, says="Who gets plans that are for supporters, and how."),
        Key(name="keys", form=TEXT, says="The folder for circles' keys, not in the workshop."),
        Key(name="send", form=SENDING, says="Where the site goes live."),
        Key(name="machine-hour", form=MONEY, says="What an hour of the router costs."),
        Key(
            name="relief-extra",
            form=EXTRA_MM,
            says="By how much arcs of reliefs are larger across than the cutter, mm (0.1).",
        ),
        Key(name="hand-bore", form=HAND_BORE, says="How far a bore by hand may be off."),
        Key(name="play", form=PLAY, says="Up to how much play joints are tight, easy or loose."),
        Key(name="bed", form=SHEET_SIZE, says="What its machine's bed takes: 1300 x 900 mm."),
        Key(name="machine", form=ROUTER, says="What its router is and can do."),
        Key(name="carries", form=CARRIES, says="What can be carried home from a yard."),
        Key(name="consumables", form=CONSUMABLES, says="What every plan uses up, with prices."),
        Key(name="look", form=LOOK, says="Colours and type of pages, booklets and drawings."),
        Key(name="welcome", form=PROSE, says="Text of the first page, in Markdown."),
    ),
    make=_make_identity,
    advice="Begin with `workshop: Title` and `maker: Name`.",
    lenient=True,
)
