"""The next question about a trial, a pure function of the answers so far and of what is known."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.names import did_you_mean, name_of
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.model.outcome import Feel, Grade, Mark, Operation
from kerfolio.model.trial import Trial
from kerfolio.trials.answers import EDGES, KEYS, LEAST, MORE, Answers
from kerfolio.trials.cut_figures import figure_lines, figures_of
from kerfolio.trials.known import (
    Known,
    feed_as_stated,
    length_as_stated,
    passes_as_stated,
    speed_as_stated,
)

NONE = "-"
"""Typed where nothing is to be said though something is offered."""

ALL = "?"
"""Typed to see every name that may stand here."""

ANYTHING_ELSE = "more"
"""The key of the question that ends the dialogue, or goes on with what else is to be said."""

_SHOWN = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """A word that may be answered, and what it says."""

    word: str
    says: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked next: ``offered`` is taken where nothing is typed, empty says none.

    ``told`` stands above it: what is known by now. ``choices`` are words to answer by their number;
    ``all`` are every word that may stand here, where these are only some.
    """

    key: str
    words: str
    offered: str = ""
    choices: tuple[Choice, ...] = ()
    all: tuple[Choice, ...] = ()
    told: tuple[str, ...] = ()


def next_question(answers: Answers, so_far: Trial | None, known: Known) -> Question | None:
    """Return what to ask next, None where all is said. ``so_far`` is what the answers state."""
    for each in LEAST:
        if each.key not in answers and _is_asked(each.key, answers):
            return _question(each.key, answers, so_far, known)
    if "done" in answers:
        return None
    for key in answers.get(ANYTHING_ELSE, "").split():
        if key not in answers:
            return _question(key, answers, so_far, known)
    left = " ".join(each.key for each in MORE if each.key not in answers)
    return Question(
        key=ANYTHING_ELSE,
        words="Anything else",
        told=(*_figures(answers, so_far, known), f"More can be said: {left}."),
    )


def _is_asked(key: str, answers: Answers) -> bool:
    """Tell whether a question of the least makes sense: a thickness where there is a sheet."""
    if key == "thickness":
        return bool(answers.get("plan") and answers.get("stock"))
    return key != "alt" or bool(answers.get("photo"))


def answered(answers: Answers, question: Question, typed: str) -> Answers:
    """Return the answers with what was typed: a word, the number of a choice, or nothing."""
    text = meant(question, typed)
    if question.key != ANYTHING_ELSE:
        return {**answers, question.key: text}
    if not text:
        return {**answers, "done": "yes"}
    before = answers.get(ANYTHING_ELSE, "")
    return {**answers, ANYTHING_ELSE: f"{before} {' '.join(_words(text))}".strip()}


def meant(question: Question, typed: str) -> str:
    """Return the answer that was typed: what is offered for nothing, nothing for ``NONE``."""
    text = typed.strip()
    if not text:
        return question.offered
    if text == NONE:
        return ""
    if text.isdecimal() and 1 <= int(text) <= len(question.choices):
        return question.choices[int(text) - 1].word
    return text


def filled(answers: Answers, known: Known) -> Answers:
    """Return the answers with what the plan knows besides: its release, and its plunge where its
    feed was taken.
    """
    plan = known.plan(answers.get("plan", ""))
    if plan is None:
        return answers
    more = {} if "release" in answers or not plan.release else {"release": plan.release}
    same = answers.get("feed") and answers.get("feed") == _offered("feed", answers, known)
    if same and "plunge" not in answers:
        more["plunge"] = _offered("plunge", answers, known)
    return {**answers, **more}


def more_fault(typed: str, answers: Answers) -> str:
    """Return what is wrong with the words that ask for more, empty where nothing is."""
    left = [each.key for each in MORE if each.key not in answers]
    for word in _words(typed):
        if word not in left:
            said = "is said already" if word in answers else "can be said of nothing"
            return f"`{word}` {said}. {did_you_mean(word, left)}"
    return ""


def _words(text: str) -> list[str]:
    return text.replace(",", " ").split()


def _question(key: str, answers: Answers, so_far: Trial | None, known: Known) -> Question:
    return Question(
        key=key,
        words=KEYS[key].words,
        offered=_offered(key, answers, known),
        choices=tuple(_choices(key, answers, known)),
        all=tuple(_all(key, known)),
        told=tuple(_figures(answers, so_far, known)) if key in ("passes", "outcome") else (),
    )


def _figures(answers: Answers, so_far: Trial | None, known: Known) -> tuple[str, ...]:
    if so_far is None or "feed" not in answers:
        return ()
    found = figures_of(so_far, known.stock, known.machine)
    return tuple(figure_lines(found, known.reader))


def _offered(key: str, answers: Answers, known: Known) -> str:
    plan = known.plan(answers.get("plan", ""))
    stock, cutter = answers.get("stock", ""), answers.get("cutter", "")
    if key == "stock":
        return next(iter((*(plan.sheets if plan else ()), *known.sheets_tried())), "")
    if key == "cutter":
        return next(iter(_cutters(answers, known)), "")
    if key == "thickness":
        drawn = plan.sheets.get(stock) if plan else None
        return "" if drawn is None else length_as_stated(drawn, known.reader.unit)
    if key == "release":
        return plan.release if plan else ""
    if key == "alt":
        return " on ".join(filter(None, (f"Cut of {cutter}" if cutter else "A cut", stock)))
    return _last(key, answers, known)


def _cutters(answers: Answers, known: Known) -> tuple[str, ...]:
    stock = answers.get("stock", "")
    return (*known.cutters_of(answers.get("plan", ""), stock), *known.cutters_tried(stock))


def _last(key: str, answers: Answers, known: Known) -> str:
    """Return a setting as the plan states it, or as it was logged last with this cutter here."""
    found = known.setting(
        answers.get("plan", ""), answers.get("stock", ""), answers.get("cutter", "")
    )
    if found is None:
        return ""
    unit = known.reader.unit
    if key == "speed" and found.speed is not None:
        return speed_as_stated(found.speed)
    if key == "feed" and found.feed is not None:
        return feed_as_stated(found.feed, unit)
    if key == "plunge" and found.plunge is not None:
        return feed_as_stated(found.plunge, unit)
    return passes_as_stated(found.passes, unit) if key == "passes" else ""


def _choices(key: str, answers: Answers, known: Known) -> Iterator[Choice]:
    plan = known.plan(answers.get("plan", ""))
    if key == "plan":
        yield from _some(known.plans_tried(), _all(key, known))
    elif key == "stock":
        yield from _some((*(plan.sheets if plan else ()), *known.sheets_tried()), _all(key, known))
    elif key == "cutter":
        yield from _some(_cutters(answers, known), _all(key, known))
    elif key == "part":
        yield from (Choice(word=each) for each in (plan.parts if plan else ()))
    elif key in ("outcome", *EDGES):
        yield from grades(known.reader)
    elif key == "went":
        yield from feels(known.reader)
    else:
        yield from (Choice(word=word) for word in _WORDS.get(key, ()))


_WORDS = {
    "operation": tuple(each.value for each in Operation),
    "direction": ("climb", "conventional"),
    "marks": tuple(each.value for each in Mark),
    "public": ("yes", "no"),
}


def grades(reader: Reader) -> tuple[Choice, ...]:
    """Return the grades, the best first, each with the sentence that says what it means."""
    return tuple(
        Choice(word=each.word, says=say(reader, "trials-grade-says", grade=name_of(each.word)))
        for each in reversed(Grade)
    )


def feels(reader: Reader) -> tuple[Choice, ...]:
    """Return how joints go together, the loosest first, each with its sentence."""
    return tuple(
        Choice(word=each.word, says=say(reader, "trials-feel-says", feel=name_of(each.word)))
        for each in Feel
    )


def _some(names: tuple[str, ...], every: Iterator[Choice]) -> Iterator[Choice]:
    known = {each.word: each for each in every}
    wanted = [each for each in dict.fromkeys(names) if each in known]
    yield from (known[each] for each in wanted[:_SHOWN])


def _all(key: str, known: Known) -> Iterator[Choice]:
    if key == "plan":
        yield from (Choice(word=each.name, says=each.title) for each in known.plans)
    elif key == "stock":
        yield from (Choice(word=each.name, says=each.title) for each in known.stock.sheets)
    elif key == "cutter":
        yield from (Choice(word=each.name, says=each.title) for each in known.stock.cutters)
