"""Trials and jobs written into the log: from answers one by one, or from a draft of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from errno import ENOENT
from pathlib import Path

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.place import Place
from kerfolio.model.trial import Sent, Trial
from kerfolio.publishing.drafts import Draft, drafts_of, new_draft
from kerfolio.publishing.known_plans import known_of
from kerfolio.publishing.log_append import log_entry
from kerfolio.publishing.log_photo import photo_at, put_photo
from kerfolio.reading.entry import read_entry
from kerfolio.reading.log_ids import fresh_id
from kerfolio.reading.log_names import LogNames, log_names
from kerfolio.reading.plan_folders import plan_folders
from kerfolio.reading.workshop import read_shared, read_workshop
from kerfolio.trials.answers import Answers, stated_by
from kerfolio.trials.dialogue import (
    ANYTHING_ELSE,
    Question,
    answered,
    filled,
    meant,
    more_fault,
    next_question,
)
from kerfolio.trials.known import Known


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenLog:
    """A workshop's log, open for new entries: what is known, which names hold, ids in use."""

    workshop: Path
    known: Known
    names: LogNames
    taken: frozenset[str]

    def drafts(self) -> tuple[Draft, ...]:
        """Return the drafts that wait, the newest first; one that was written already goes."""
        kept = []
        for each in drafts_of(self.workshop):
            if each.id in self.taken:
                each.drop()
            else:
                kept.append(each)
        return tuple(kept)

    def begun(self, day: date, *, job: bool, answers: Answers) -> Draft:
        """Return a new draft with answers that were given at once; nothing is written yet."""
        photo = answers.get("photo")
        whole = {**answers, "photo": _from_the_root(photo)} if photo else answers
        return new_draft(self.workshop, day, job=job, answers=whole)

    def next(self, draft: Draft) -> Question | None:
        """Return what to ask next, None where all is said."""
        entry, _ = self._read(draft)
        return next_question(draft.answers, entry if isinstance(entry, Trial) else None, self.known)

    def answer(
        self, draft: Draft, question: Question, typed: str
    ) -> tuple[Draft, tuple[Finding, ...]]:
        """Return the draft with an answer, kept on the disk; as it was where that is refused.

        Raises OSError when the disk refuses.
        """
        text = meant(question, typed)
        if question.key == ANYTHING_ELSE and (fault := more_fault(text, draft.answers)):
            return draft, (error("unknown-key", fault, Place("more")),)
        if question.key == "photo" and text:
            typed = _from_the_root(text)
        grown = replace(draft, answers=answered(draft.answers, question, typed))
        findings = self.faults(grown, (question.key,))
        if has_errors(findings):
            return draft, findings
        grown.keep()
        return grown, findings

    def faults(self, draft: Draft, keys: Iterable[str]) -> tuple[Finding, ...]:
        """Return what is wrong with answers, as a log would be told of them."""
        _, findings = self._read(draft)
        if "photo" in keys and draft.answers.get("photo"):
            shown = photo_at(Path(draft.answers["photo"]))
            if isinstance(shown, Complaint):
                findings = (*findings, error("picture", str(shown), Place("photo"), shown.advice))
        return findings

    def _read(self, draft: Draft) -> tuple[Trial | Sent | None, tuple[Finding, ...]]:
        stated = stated_by(
            {"alt": "A cut", **draft.answers} if draft.answers.get("photo") else draft.answers,
            date=draft.day.isoformat(),
        )
        return read_entry("trials", stated, self.names, Place("answer"))

    def write(self, draft: Draft) -> tuple[Path, str]:
        """Write the entry that a draft has become; return its file and its id. Raises OSError.

        A run that is stopped in between leaves the draft with the entry's id, so that the next one
        knows whether the log has it.
        """
        answers = filled(draft.answers, self.known)
        said = answers.get("title") or " ".join(
            filter(None, (answers.get("stock"), answers.get("cutter")))
        )
        plain = said or ("job" if draft.job else "trial")
        id_ = draft.id or fresh_id(draft.day, plain, ids_in_use(self.workshop))
        kept = replace(draft, id=id_)
        kept.keep()
        if answers.get("photo"):
            shown = photo_at(Path(answers["photo"]))
            if isinstance(shown, Complaint):
                raise OSError(ENOENT, str(shown), answers["photo"])
            answers = {**answers, "photo": put_photo(self.workshop, id_, shown)}
        entry = stated_by(answers, id=id_, date=draft.day.isoformat())
        file = log_entry(self.workshop, draft.day, "jobs" if draft.job else "trials", entry)
        kept.drop()
        return file, id_


def _from_the_root(path: str) -> str:
    """Return a photo's path from the root: the next run may begin in another folder."""
    return str(Path(path).expanduser().absolute())


def ids_in_use(workshop: Path) -> frozenset[str]:
    """Return the ids that the log has now: while one entry is asked for, others may come."""
    shared, _ = read_shared(workshop, pictures=False)
    return frozenset(each.id for each in shared.log.entries) if shared else frozenset()


def open_log(workshop: Path) -> tuple[OpenLog | None, tuple[Finding, ...]]:
    """Return the log of a workshop, open for entries; None with the findings where it cannot be."""
    read, findings = read_workshop(workshop, pictures=False)
    if read is None:
        return None, findings
    names = log_names(read.stock, (), plan_folders(workshop))
    taken = frozenset((*(each.id for each in read.trials), *(each.id for each in read.sent)))
    return OpenLog(workshop=workshop, known=known_of(read), names=names, taken=taken), ()
