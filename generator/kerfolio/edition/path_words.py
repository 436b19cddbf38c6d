"""What to compare with a toolpath program, layer by layer, in words."""

from __future__ import annotations

from kerfolio.basis.exact_figures import exact_in
from kerfolio.basis.figured import Figure, Figured, figured, parts_of, together
from kerfolio.basis.figures import cleared_figure, cleared_text, run_figure, run_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import precise_in
from kerfolio.drawing.path_count import PathCount
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.settling.settled import Operation


def path_lines(found: Ranged, reader: Reader) -> tuple[str, ...]:
    """Return a line for each cut layer: ``opening_through: 2 contours, 1 m``."""
    return tuple(_line(found, index, reader) for index in range(len(found.here.paths)))


def _line(found: Ranged, index: int, reader: Reader) -> str:
    def path(facts: SheetFacts) -> PathCount | None:
        return facts.paths[index] if len(facts.paths) == len(found.here.paths) else None

    each = found.here.paths[index]
    words = [
        say(reader, "pathwords-contours", count=each.contours),
        found.told(
            path, lambda p: run_text(p.length, reader), lambda p: run_figure(p.length, reader)
        ),
    ]
    if each.operation is Operation.POCKET:
        words.append(
            found.told(
                path,
                lambda p: cleared_text(p.area, reader),
                lambda p: cleared_figure(p.area, reader),
            )
        )
    if each.diameters:
        words.append(found.told(path, lambda p: _holes(p, reader), lambda p: _bored(p, reader)))
    layer = found.told(path, lambda p: str(p.layer), lambda p: _layer(p, reader))
    return say(reader, "pathwords-layer", layer=layer, found=together(*words, between=", "))


def _holes(path: PathCount, reader: Reader) -> str:
    bored = [f"{count} × ø {precise_in(wide, reader)}" for wide, count in path.diameters]
    return listed(reader, bored)


def _bored(path: PathCount, reader: Reader) -> str:
    told = [figured("{} × ø {}", str(n), exact_in(wide, reader)) for wide, n in path.diameters]
    return listed(reader, told)


def _layer(path: PathCount, reader: Reader) -> str:
    """Return a layer that is called by a depth: ``pocket, 5.93 mm``; its name has no noughts."""
    depths = (part.value for part in parts_of(path.layer) if isinstance(part, Figure))
    deep = Style(rule=Rule.FIXED, decimals=2, after=" mm", mark=reader.mark)
    return figured("{}, {}", path.operation.value, Figured(Figure(next(depths), deep)))
