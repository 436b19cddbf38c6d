"""Hands a folder of files over to its place, together with files beside it: all of them or none.

Everything is built in a stage beside its place. Then the journal says that exchanging begins, and
from there on it is finished, by this run or by the next one that touches the same OUT. One run at
a time does this for the folders of one parent.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from kerfolio.basis.finding import Finding, note
from kerfolio.basis.place import Place
from kerfolio.disk.alone import alone_in
from kerfolio.disk.carry import carry_over
from kerfolio.disk.exchange import exchange
from kerfolio.disk.journal import Journal, Move, State, forget, journal_in, note_down
from kerfolio.disk.out_folder import foreign_in, nearest, stage_of
from kerfolio.disk.trouble import Stopped, if_stopped, told

_WHOLE = "The last site is untouched."
_NEW = "The new files are in place."


def hand_over(
    out: Path,
    files: Mapping[str, bytes],
    beside: Mapping[Path, bytes] | None = None,
    *,
    carries: bool = True,
    keeps: Sequence[str] = (),
    whole: str = _WHOLE,
) -> None:
    """Let ``files`` be what stands in ``out``, and ``beside`` stand at their own places.

    Contents are asked for one by one, in the order of names, so that they need not all be held at
    once. With ``carries`` what an earlier publish did not write is brought over, and what ``keeps``
    names of what it did write. Raises DiskError when the disk refuses: then everything is as it
    was, which ``whole`` says in words.
    """
    out = out.absolute()
    with told(out, whole):
        out.parent.mkdir(parents=True, exist_ok=True)
        with alone_in(out.parent):
            _taken_up(out)
            journal = _staged(out, files, beside or {}, keeps, whole, carries=carries)
            _exchanged(out, journal)


def take_up(out: Path) -> tuple[Finding, ...]:
    """Finish or undo what a killed run left beside ``out``, and say so. Raises DiskError."""
    out = out.absolute()
    if not stage_of(out).exists():
        return ()
    with told(out, _WHOLE), alone_in(out.parent):
        said = _taken_up(out)
    return (note("taken-up", said, Place(str(out))),) if said else ()


def _taken_up(out: Path) -> str:
    """Finish or undo what is staged beside OUT; return what was done in words."""
    stage = stage_of(out)
    if not stage.exists():
        return ""
    journal = journal_in(stage)
    if journal is None:
        _clear(stage, ())
        return "what an interrupted run had left was cleared away"
    if journal.state is State.STAGING:
        _clear(stage, journal.stages)
        return "an interrupted run was undone: what stands here was untouched by it"
    _finish(stage, journal)
    return "an interrupted run was finished: what it had made ready is in place"


def _staged(
    out: Path,
    files: Mapping[str, bytes],
    beside: Mapping[Path, bytes],
    keeps: Sequence[str],
    whole: str,
    *,
    carries: bool,
) -> Journal:
    """Build everything beside its place; what fails leaves nothing."""
    stage = stage_of(out)
    site = Move(fresh=stage / "fresh", target=out)
    others = [Move(fresh=_place_for(each, stage), target=each.absolute()) for each in beside]
    stages = tuple(dict.fromkeys((stage, *(each.fresh.parent for each in others))))
    moves = (site, *others)
    journal = Journal(state=State.STAGING, moves=moves, stages=stages, carries=carries)
    try:
        stage.mkdir()
        note_down(stage, journal)
        _write(site.fresh, files, whole)
        if out.exists():
            shutil.copymode(out, site.fresh)
        if carries:
            carry_over((*foreign_in(out), *keeps), out, site.fresh, whole)
        for each, target in zip(others, beside, strict=True):
            _write(each.fresh.parent, {each.fresh.name: beside[target]}, whole)
        known = tuple(replace(each, inode=each.fresh.stat().st_ino) for each in moves)
        ready = replace(journal, state=State.EXCHANGING, moves=known)
        note_down(stage, ready)
    except BaseException:
        _clear(stage, stages)
        raise
    return ready


def _place_for(target: Path, stage: Path) -> Path:
    """Return where to stage a file that is to stand elsewhere: on the disk it is to stand on."""
    home = nearest(target.absolute().parent)
    same = home.stat().st_dev == stage.parent.stat().st_dev
    return (stage / "beside" if same else home / stage.name) / target.name


def _write(folder: Path, files: Mapping[str, bytes], whole: str) -> None:
    for name in sorted(files):
        target = folder / name
        with told(target, whole):
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(files[name])
    folder.mkdir(parents=True, exist_ok=True)


def _exchanged(out: Path, journal: Journal) -> None:
    """Bring everything in; where the disk refuses, everything goes back. Others may stop it never.

    An interruption waits until it is done: it is a matter of a few renames.
    """
    stage = stage_of(out)
    try:
        for each in journal.moves:
            _bring(each)
    except OSError:
        for each in reversed(journal.moves):
            _take_back(each)
        _clear(stage, journal.stages)
        raise
    except KeyboardInterrupt as stop:
        _finish(stage, journal)
        raise Stopped(_NEW) from stop
    with if_stopped(_NEW):
        _finish(stage, journal)


def _finish(stage: Path, journal: Journal) -> None:
    for each in journal.moves:
        _bring(each)
    site = journal.moves[0]
    old = next((each for each in (site.fresh, site.last) if each.exists()), None)
    if journal.carries and old is not None:  # what was laid in while the new one was built
        carry_over(foreign_in(old), old, site.target, _NEW)
    _clear(stage, journal.stages)


def _is_in(move: Move) -> bool:
    return os.path.lexists(move.target) and move.target.lstat().st_ino == move.inode


def _bring(move: Move) -> None:
    """Let what is staged stand at its place; doing it again does nothing."""
    if _is_in(move) or not os.path.lexists(move.fresh):
        return
    move.target.parent.mkdir(parents=True, exist_ok=True)
    if os.path.lexists(move.target) and not exchange(move.fresh, move.target):
        move.target.rename(move.last)
    if os.path.lexists(move.fresh) and not _is_in(move):
        move.fresh.rename(move.target)


def _take_back(move: Move) -> None:
    """Let what stood at the place of a move stand there again."""
    old = move.last if os.path.lexists(move.last) else move.fresh
    if not _is_in(move):
        if os.path.lexists(move.last):
            move.last.rename(move.target)
    elif not os.path.lexists(old):
        move.target.rename(move.fresh)
    elif not exchange(old, move.target):
        move.target.rename(move.fresh)
        old.rename(move.target)


def _clear(stage: Path, stages: tuple[Path, ...]) -> None:
    """Remove all stages, the journal's own last: without a journal nothing in it is needed.

    What the disk will not let go is left to the next run.
    """
    for each in stages:
        if each != stage:
            shutil.rmtree(each, ignore_errors=True)
    forget(stage)
    shutil.rmtree(stage, ignore_errors=True)
