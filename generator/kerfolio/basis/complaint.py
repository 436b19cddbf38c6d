"""What is wrong with a short text a maker wrote, in words for people."""

from __future__ import annotations

from kerfolio.basis.said import Text


class Complaint(str):
    """A message that quotes what was found, with ``advice`` on what to write instead."""

    __slots__ = ("advice",)
    advice: Text

    def __new__(cls, message: str, advice: Text = "") -> Complaint:
        """Make a complaint; it is the message as a string."""
        made = super().__new__(cls, message)
        made.advice = advice
        return made


def quoted(text: str, most: int = 30) -> str:
    """Return a text in back quotes on one line, cut short for a message."""
    line = " ".join(text.split())
    return f"`{line}`" if len(line) <= most else f"`{line[: most - 3]}...`"
