"""What is wrong with a sealed file, with a key or with what keys are kept in, in words."""

from __future__ import annotations


class SealError(ValueError):
    """A sealed file or a key is refused; ``advice`` says what to do, if there is anything."""

    def __init__(self, words: str, advice: str = "") -> None:
        super().__init__(words)
        self.advice = advice
