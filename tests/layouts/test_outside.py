"""Engines of other libraries: their failures are errors in words, their results are proved."""

from __future__ import annotations

import math
import sys
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import pytest

from kerfolio.geometry.packing import Flat
from kerfolio.layouts import asking, outside
from kerfolio.layouts.asking import answered
from kerfolio.layouts.best import Asked, BestPlacer
from kerfolio.layouts.engine import Bed, Blank, EngineError, Job, Packed, Stack
from kerfolio.layouts.outside import OutsideEngine
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.question import (
    Answer,
    AskedKind,
    AskedRoom,
    Question,
    answer_from,
    question_from,
    question_text,
)
from kerfolio.layouts.verify import job_faults, packing_faults

BOARD = Flat(((0, 0), (300, 0), (300, 200), (0, 200)))
QUESTION = Question(
    engine="no-such-engine",
    rooms=(AskedRoom(width=1000.0, height=600.0, count=2, worth=1.0, zones=((0, 0, 9, 9),)),),
    kinds=(AskedKind(outer=BOARD.outer, openings=(), turns=(0.0, 90.0), count=3),),
    gap=8.0,
    seconds=1.0,
    seed=4,
)


def job_of(count: int = 3) -> Job:
    blanks = [Blank(label=f"{n}", shape=BOARD, turns=(0.0, 90.0)) for n in range(count)]
    bed = Bed(stacks=(Stack(size=(1000.0, 600.0)),), margin=10.0, gap=8.0)
    return Job(bed=bed, blanks=tuple(blanks), moves=200_000, seconds=1.0)


def answering(monkeypatch: pytest.MonkeyPatch, answer: Answer) -> OutsideEngine:
    """Return an engine whose library is there and answers so."""
    monkeypatch.setattr(asking, "_answer", lambda _: answer)
    return OutsideEngine("shapely")


def test_a_question_comes_back_from_its_text() -> None:
    assert question_from(question_text(QUESTION)) == QUESTION


@pytest.mark.parametrize("text", ["", "{", "7", '[["a", []]]', "[[0, [[0, 0, 1]]]]"])
def test_an_unreadable_answer_is_an_engine_error(text: str) -> None:
    with pytest.raises(EngineError, match="no readable answer"):
        answer_from(text)


def test_an_engine_that_crashes_is_an_engine_error() -> None:
    with pytest.raises(EngineError, match="`no-such-engine` failed: KeyError"):
        answered(QUESTION)


def test_an_engine_that_does_not_end_is_stopped(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(asking, "_PATIENCE", -0.95)
    monkeypatch.setattr(asking, "_COMMAND", (sys.executable, "-c", "import time; time.sleep(60)"))
    with pytest.raises(EngineError, match="took too long"):
        answered(QUESTION)


def test_a_missing_library_is_an_engine_error() -> None:
    engine = OutsideEngine("no_such_library_at_all")
    assert not engine.present
    with pytest.raises(EngineError, match="is not installed"):
        engine.pack(job_of())


@pytest.mark.parametrize(
    ("answer", "fault"),
    [
        (((0, ((0, 0.0, 4.0, 4.0), (0, 0.0, 50.0, 4.0), (0, 0.0, 650.0, 4.0))),), "too near"),
        (((0, ((0, 0.0, 4.0, 4.0), (0, 0.0, 350.0, 4.0))),), "other pieces"),
        (((0, ((0, 0.0, 4.0, 4.0),) * 4),), "other pieces"),
        (((0, ((7, 0.0, 4.0, 4.0),) * 3),), "other pieces"),
        (((3, ((0, 0.0, 4.0, 4.0),) * 3),), "sheets that there are not"),
        (((0, ((0, 0.0, float("nan"), 4.0),) * 3),), "no numbers"),
        (((0, ((0, 0.0, 990.0, 4.0), (0, 0.0, 4.0, 4.0), (0, 0.0, 350.0, 4.0))),), "margin"),
    ],
)
def test_wrong_answers_are_refused(
    monkeypatch: pytest.MonkeyPatch, answer: Answer, fault: str
) -> None:
    monkeypatch.setattr(outside, "drawn_together", lambda sheets, *_: sheets)
    with pytest.raises(EngineError, match=fault):
        answering(monkeypatch, answer).pack(job_of())


def test_a_sound_answer_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    answer: Answer = ((0, ((0, 0.0, 4.0, 4.0), (0, 90.0, 600.0, 4.0), (0, 0.0, 650.0, 4.0))),)
    made = answering(monkeypatch, answer).pack(job_of())
    assert packing_faults(job_of(), made) == ()
    assert made.engine.startswith("shapely-")


BOW = Flat(((0, 0), (300, 200), (300, 0), (0, 200)))


@pytest.mark.parametrize(
    ("changes", "fault"),
    [
        ({"shape": BOW}, "`0` is no clean outline: self-intersection"),
        ({"shape": Flat(BOARD.outer, (((0, 0), (9, 0), (400, 9)),))}, "no clean outline"),
        ({"shape": Flat(((0, 0), (300, 0), (0, 0)))}, "fewer than three corners"),
        ({"shape": Flat(((0, 0), (300, 0), (math.inf, 200)))}, "no numbers"),
        ({"turns": ()}, "`0` may be turned no way"),
        ({"label": "1"}, "`1` is there 2 times"),
    ],
)
def test_broken_pieces_reach_no_engine(changes: dict[str, Any], fault: str) -> None:
    first, *others = job_of().blanks
    job = replace(job_of(), blanks=(replace(first, **changes), *others))
    assert any(fault in each for each in job_faults(job))
    # The library takes an outline that crosses itself without a word.
    with pytest.raises(EngineError):
        OutsideEngine("shapely").pack(job)


@pytest.mark.parametrize(
    "bed",
    [
        Bed(stacks=(Stack(size=(0.0, 600.0)),), margin=10.0, gap=8.0),
        Bed(stacks=(Stack(size=(1000.0, 600.0)),), margin=math.nan, gap=8.0),
        Bed(stacks=(Stack(size=(1000.0, 600.0)),), margin=10.0, gap=-1.0),
    ],
    ids=["no size", "no margin", "no gap"],
)
def test_broken_beds_reach_no_engine(bed: Bed) -> None:
    assert job_faults(replace(job_of(), bed=bed))
    assert job_faults(job_of()) == ()


@dataclass(frozen=True, slots=True)
class _Engine:
    """An engine that was asked; it answers with what is made of a packing of the own placer."""

    made: Callable[[Packed], Packed]
    library: str = "trial"
    strip: bool = False

    def pack(self, job: Job) -> Packed:
        return replace(self.made(OwnPlacer().pack(job)), engine="trial-1")


def _never(_: Packed) -> Packed:
    raise EngineError("it never works")


def _same(packed: Packed) -> Packed:
    return packed


def _dearer(packed: Packed) -> Packed:
    return replace(packed, sheets=(*packed.sheets, 0))


def _cheaper(packed: Packed) -> Packed:
    return replace(packed, sheets=packed.sheets[:-1])


def _drawn_in(packed: Packed) -> Packed:
    """Return a packing whose last sheet was drawn together as no sheet can be."""
    return replace(packed, spots=tuple(replace(each, x=0.0) for each in packed.spots))


@pytest.mark.parametrize("strip", [False, True])
def test_the_own_layout_stands_where_an_engine_fails(strip: bool) -> None:
    job = job_of(10)
    made = BestPlacer((_Engine(_never, strip=strip),)).pack(job)
    assert made == replace(OwnPlacer().pack(job), failed=(("trial", "it never works"),))


@pytest.mark.parametrize(
    ("engine", "taken"),
    [
        (_Engine(_dearer), "own-2"),
        (_Engine(_same), "own-2"),
        (_Engine(_cheaper), "trial-1"),
        (_Engine(_same, strip=True), "own-2"),
        (_Engine(_drawn_in, strip=True), "own-2 + trial-1"),
    ],
    ids=["dearer", "as dear", "cheaper", "no larger offcut", "a larger offcut"],
)
def test_an_answer_is_taken_only_where_it_is_better(engine: Asked, taken: str) -> None:
    assert BestPlacer((engine,)).pack(job_of(10)).engine == taken


def test_the_own_search_is_never_cut_short(monkeypatch: pytest.MonkeyPatch) -> None:
    job, own = job_of(10), OwnPlacer().pack(job_of(10))
    seen: list[Job] = []

    def pack(_: OwnPlacer, asked: Job) -> Packed:
        seen.append(asked)
        return own

    monkeypatch.setattr(OwnPlacer, "pack", pack)
    BestPlacer((_Engine(_cheaper),)).pack(job)
    assert seen[0] == job


@pytest.mark.skipif(sys.version_info < (3, 12), reason="packingsolver wants Python 3.12")
def test_packingsolver_packs() -> None:
    job = job_of(9)
    made = OutsideEngine("packingsolver", spaced=True).pack(job)
    assert packing_faults(job, made) == ()
    assert job.price(made)[1] == 2


def test_spyrrow_packs_one_sheet() -> None:
    job = job_of(4)
    made = OutsideEngine("spyrrow", strip=True).pack(job)
    assert packing_faults(job, made) == ()
    with pytest.raises(EngineError, match="placed not all"):
        OutsideEngine("spyrrow", strip=True).pack(job_of(30))
