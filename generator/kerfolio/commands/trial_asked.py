"""The dialogue of `add trial` at a terminal; what is asked is decided in ``trials.dialogue``."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import click

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.basis.words import counted
from kerfolio.publishing.adding import OpenLog
from kerfolio.publishing.drafts import Draft
from kerfolio.trials.dialogue import ALL, NONE, Choice, Question

_GO_ON, _NEW, _DROP = "go on", "new", "drop"


class _Kept(Exception):  # noqa: N818 - tells who stopped the dialogue what is whole
    def __init__(self, draft: Draft) -> None:
        super().__init__()
        kept = "Your answers are kept; `kerfolio add trial` goes on with them."
        self.whole = kept if draft.file.exists() else "Nothing was answered yet."


def asked(log: OpenLog, begun: Draft) -> Draft:
    """Ask until all is said and return the draft; what options said already is not asked.

    A draft that waits is offered first, where options say nothing. Raises click.Abort when the
    terminal is closed or the run interrupted: all answers are on the disk by then.
    """
    draft = begun
    try:
        if begun.answers:
            begun.keep()
        else:
            draft = _taken_up(log, begun)
        click.echo(
            f"Nothing typed takes what stands in [ ]; `{NONE}` says none, `{ALL}` shows all."
        )
        while True:
            question = log.next(draft)
            if question is not None:
                draft = _answer(log, draft, question)
                continue
            faults = log.faults(draft, ("photo",))
            if not has_errors(faults):
                return draft
            _tell(faults)  # the photo is gone that was there
            left = {key: text for key, text in draft.answers.items() if key != "photo"}
            draft = replace(draft, answers=left)
    except (click.Abort, KeyboardInterrupt):
        click.echo()
        raise click.Abort from _Kept(draft)


def _taken_up(log: OpenLog, begun: Draft) -> Draft:
    """Return the newest draft that waits where the maker wants to go on with it."""
    for each in log.drafts():
        said = [text for text in each.answers.values() if text][:4]
        left = counted(len(each.answers), "answer")
        click.echo(f"A draft of {each.day.isoformat()} waits, {left}: {', '.join(said)}")
        choice = click.Choice((_GO_ON, _NEW, _DROP))
        wish = click.prompt(
            "Go on, begin a new one (it waits on), or drop it?", _GO_ON, type=choice
        )
        if wish == _GO_ON:
            return each
        if wish == _NEW:
            break
        each.drop()
    return begun


def _answer(log: OpenLog, draft: Draft, question: Question) -> Draft:
    """Ask one question until it is answered; return the draft with it."""
    _show(question)
    while True:
        offered = f" [{question.offered}]" if question.offered else ""
        typed: str = click.prompt(
            f"{question.words}{offered}", default="", show_default=False, prompt_suffix=": "
        )
        if typed.strip() == ALL:
            _list(question.all or question.choices)
            continue
        grown, findings = log.answer(draft, question, typed)
        _tell(findings)
        if grown is not draft:
            return grown


def _show(question: Question) -> None:
    if question.told or question.choices:
        click.echo()
    for line in question.told:
        click.echo(click.wrap_text(line, 100, "  ", "    "))
    _list(question.choices, numbered=True)


def _list(choices: Iterable[Choice], *, numbered: bool = False) -> None:
    rows = tuple(choices)
    width = max((len(each.word) for each in rows), default=0)
    for number, each in enumerate(rows, start=1):
        mark = f"{number}  " if numbered else ""
        click.echo(f"  {mark}{each.word:<{width}}  {each.says}".rstrip())


def _tell(findings: Iterable[Finding]) -> None:
    for each in findings:
        click.echo(f"  {each.severity}: {each.message}. {each.advice}".rstrip())
