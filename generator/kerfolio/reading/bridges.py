"""Forms of bridges: for all pieces of a cut setting, and for a part of its own."""

from __future__ import annotations

from kerfolio.basis.complaint import Complaint
from kerfolio.model.bridges import Bridges
from kerfolio.reading.amounts import LENGTH, SPOTS
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import whole

_NONE, _BY_SIZE = "none", "by-size"
_COUNT = whole(0, 100)
_ADVICE = "Write how many each piece gets, `by-size`, `none` or `{count: 4, width: 8 mm}`."


def _short(node: Scalar) -> Bridges | Complaint:
    word = node.text.strip()
    if word in (_NONE, _BY_SIZE):
        return Bridges(count=0 if word == _NONE else None, place=node.place)
    count = _COUNT.convert(node)
    return count if isinstance(count, Complaint) else Bridges(count=count, place=node.place)


_SHORT: ScalarForm[Bridges] = ScalarForm(
    noun="bridges",
    advice=_ADVICE,
    convert=_short,
    json={"anyOf": [{"enum": [_NONE, _BY_SIZE]}, dict(_COUNT.json)]},
)
_KEYS = (
    Key(name="count", form=_COUNT, says="How many each piece gets; by its size where not stated."),
    Key(name="width", form=LENGTH, says="How much of the edge a bridge leaves standing (8 mm)."),
    Key(name="height", form=LENGTH, says="How high a bridge is left above the lower face (2 mm)."),
)
BRIDGES: Record[Bridges] = Record(
    name="bridges",
    noun="bridges",
    keys=_KEYS,
    make=Bridges,
    advice=_ADVICE,
    short=_SHORT,
)
PART_BRIDGES: Record[Bridges] = Record(
    name="part-bridges",
    noun="bridges",
    keys=(*_KEYS, Key(name="at", form=SPOTS, says="Where they are, each a point of its outline.")),
    make=Bridges,
    not_both=(("count", "at"),),
    advice=_ADVICE,
    short=_SHORT,
)
