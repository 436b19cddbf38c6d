"""Strips: pieces asked a hair too small come out apart, whole and on a short strip."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin

import pytest
import shapely
from shapely import affinity

from kerfolio.geometry.packing import Flat, level_share, shrunk
from kerfolio.layouts import strip
from kerfolio.layouts.engine import EngineError
from kerfolio.layouts.question import Answer, AskedKind, AskedRoom, Question
from kerfolio.layouts.strip import strip_laid

SQUARE = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
DISC = tuple((50 * cos(pi * n / 24), 50 * sin(pi * n / 24)) for n in range(48))


def question(outer: tuple[tuple[float, float], ...], count: int = 4) -> Question:
    kind = AskedKind(outer=outer, openings=(), turns=(0.0, 90.0), count=count)
    room = AskedRoom(width=1000.0, height=200.0, count=1, worth=1.0)
    return Question(engine="spyrrow", rooms=(room,), kinds=(kind,), gap=0.0, seconds=1.0, seed=1)


def solids(asked: Question, answer: Answer) -> list[shapely.Polygon]:
    ((_, places),) = answer
    return [
        affinity.translate(affinity.rotate(shapely.Polygon(asked.kinds[k].outer), t, (0, 0)), x, y)
        for k, t, x, y in places
    ]


def answering(monkeypatch: pytest.MonkeyPatch, answer: Answer) -> list[Question]:
    """Let the engine answer so; return what it will have been asked."""
    asked: list[Question] = []

    def told(given: Question) -> Answer:
        asked.append(given)
        return answer

    monkeypatch.setattr(strip, "answered", told)
    return asked


def places(*at: tuple[float, float]) -> Answer:
    return ((0, tuple((0, 0.0, x, y) for x, y in at)),)


def test_straight_edged_pieces_are_asked_a_hair_too_small_and_parted(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # Four squares of 99.8 on a strip of 199.8, as the engine sees them.
    answer = places((0.0, 0.0), (0.0, 99.9), (99.9, 0.0), (99.9, 99.9))
    asked = answering(monkeypatch, answer)
    made = solids(question(SQUARE), strip_laid(question(SQUARE)))
    plain, close = asked
    assert plain == replace(question(SQUARE), seconds=pytest.approx(1 / 5))
    assert close.rooms[0].height == pytest.approx(199.8)
    assert shapely.Polygon(close.kinds[0].outer).bounds == pytest.approx((0.1, 0.1, 99.9, 99.9))
    # 2 x 2 squares of 100 fill a strip of 200 to a length of 200, and not a hair more.
    whole = shapely.union_all(made)
    assert whole.area == pytest.approx(40_000, rel=1e-6)
    assert whole.bounds == pytest.approx((0, 0, 200, 200), abs=0.01)


def test_curved_pieces_are_asked_as_they_are(monkeypatch: pytest.MonkeyPatch) -> None:
    answer = places((50.0, 50.0), (50.0, 150.0), (150.0, 50.0), (150.0, 150.0))
    asked = answering(monkeypatch, answer)
    made = solids(question(DISC), strip_laid(question(DISC)))
    assert asked == [question(DISC)]
    assert all(one.intersection(other).area < 1 for one in made for other in made if one != other)


def test_what_cannot_be_parted_is_an_engine_error(monkeypatch: pytest.MonkeyPatch) -> None:
    # Three squares above one another do not lie on a strip of 200 and a room of 100.
    def told(given: Question) -> Answer:
        if given.rooms[0].height == 200.0:
            raise EngineError("it failed")
        return places((0.0, 0.0), (0.0, 50.0), (0.0, 99.0))

    monkeypatch.setattr(strip, "answered", told)
    tight = question(SQUARE, 3)
    room = replace(tight.rooms[0], width=100.0)
    with pytest.raises(EngineError, match="it failed"):
        strip_laid(replace(tight, rooms=(room,)))
    monkeypatch.setattr(strip, "answered", lambda _: places((0.0, 0.0), (0.0, 50.0), (0.0, 99.0)))
    with pytest.raises(EngineError, match="could not be parted"):
        strip._laid(replace(tight, rooms=(room,)), 0.2)


def test_the_shorter_strip_is_taken_and_one_is_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    def told(given: Question) -> Answer:
        if given.rooms[0].height == 200.0:
            return places((0.0, 0.0), (0.0, 100.0), (100.0, 0.0), (105.0, 100.0))
        raise EngineError("it failed")

    monkeypatch.setattr(strip, "answered", told)
    made = solids(question(SQUARE), strip_laid(question(SQUARE)))
    assert max(solid.bounds[2] for solid in made) == pytest.approx(200, abs=0.01)


def test_a_strip_has_no_zones() -> None:
    zoned = replace(question(SQUARE).rooms[0], zones=((0.0, 0.0, 9.0, 9.0),))
    with pytest.raises(EngineError, match="zones"):
        strip_laid(replace(question(SQUARE), rooms=(zoned,)))


def test_the_engine_itself_fills_a_strip_cut_apart() -> None:
    # A strip of 600 x 200 cut into seven boards without waste.
    sizes = ((200, 120), (200, 80), (150, 200), (130, 90), (130, 110), (120, 60), (120, 140))
    kinds = tuple(
        AskedKind(outer=((0, 0), (w, 0), (w, h), (0, h)), openings=(), turns=(0.0, 90.0), count=1)
        for w, h in sizes
    )
    asked = replace(question(SQUARE), kinds=kinds, seconds=2.0)
    made = solids(asked, strip_laid(asked))
    assert sum(solid.area for solid in made) == pytest.approx(600 * 200)
    assert max(solid.bounds[2] for solid in made) <= 600 * 1.1
    for number, one in enumerate(made):
        assert all(one.intersection(other).area < 0.5 for other in made[:number])


def test_shapes_shrink_all_round_and_keep_their_largest_part() -> None:
    bone = Flat(((0, 0), (90, 0), (90, 9), (91, 9), (91, 0), (121, 0), (121, 30), (0, 30)))
    assert shapely.Polygon(shrunk(Flat(SQUARE), 5).outer).area == pytest.approx(90 * 90)
    # The waist of 21 above the slit closes at 10.5.
    assert shapely.Polygon(shrunk(bone, 11).outer).area == pytest.approx(68 * 8)
    assert shrunk(Flat(SQUARE), 60) == Flat(SQUARE)


def test_level_share_is_that_of_the_outline() -> None:
    # An isosceles right triangle: two legs of 1, a slant of the square root of 2.
    assert level_share(Flat(((0, 0), (1, 0), (0, 1)))) == pytest.approx(2 / (2 + 2**0.5))
    assert level_share(Flat(SQUARE)) == 1
    assert level_share(Flat(DISC)) < 0.2
