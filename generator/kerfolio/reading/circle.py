"""The form of the circles of supporters."""

from __future__ import annotations

from kerfolio.model.circle import Circle
from kerfolio.reading.forms import ListOf
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import ADDRESS, SUMMARY_TEXT, TITLE_TEXT

_ADVICE = "Write `- {who: Friends of the bench, gives: 4 EUR a month}`, a line each."
_CIRCLE: Record[Circle] = Record(
    name="circle",
    noun="a circle of supporters",
    keys=(
        Key(name="who", form=TITLE_TEXT, says="What its people are called.", required=True),
        Key(name="gives", form=TITLE_TEXT, says="What each gives, and how often."),
        Key(name="gets", form=SUMMARY_TEXT, says="What each gets."),
        Key(name="join", form=SUMMARY_TEXT, says="How one becomes one of them."),
        Key(name="link", form=ADDRESS, says="The page where one does."),
    ),
    make=Circle,
    advice=_ADVICE,
)
CIRCLES: ListOf[Circle] = ListOf(
    item=_CIRCLE, noun="a list of circles", advice=_ADVICE, lenient=True
)
