"""A plan put together as a 3-D model, and as the data of a page that shows it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any

from kerfolio.assembly.assembled import Assembled, BuildOrder, PosedPiece
from kerfolio.assembly.explode import apart
from kerfolio.assembly.fitting import Fitting, Shape
from kerfolio.basis.digits import steps
from kerfolio.basis.json_text import Number, json_text, number
from kerfolio.basis.names import spoken
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.model_3d import Model3d, Piece3d, Shape3d, Step3d
from kerfolio.drawing.vocabulary import Ink
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.panel_mesh import panel_mesh
from kerfolio.geometry.plated import Plated, plated_mesh
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.turned import turned_mesh
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.titles import board_title

TINTS = (Ink.WOOD, Ink.WOOD_DARK, Ink.WASTE)
"""The colours of a plan's sheets in the order of their first piece, and round again."""
METAL, TIMBER = Ink.SOFT, Ink.WASTE
"""The colours of all hardware and of all boards."""

_STEPS_PER_MM = 20
"""Points in the page's data are whole numbers of 1/20 mm: finer than any screen shows."""


def _unsized(_: PosedPiece) -> str:
    return ""


def model_of(
    assembled: Assembled,
    order: BuildOrder,
    title: str,
    steps: Sequence[str] = (),
    called: Callable[[str], str] = spoken,
    fittings: Sequence[Fitting] = (),
    sized: Callable[[PosedPiece], str] = _unsized,
) -> Model3d:
    """Return the model; ``steps`` are the titles of all the plan's steps, the first one's first.

    ``called`` says what readers call a piece, by its label, ``sized`` how large it is.
    ``fittings`` are its hardware.

    Pieces of the same panel and sheet share one shape, and so does the same hardware.
    """
    sheets = list(dict.fromkeys(each.sheet for each in assembled.pieces))
    shapes: dict[tuple[Panel, str], Shape3d] = {}
    for each in assembled.pieces:
        tint = TINTS[sheets.index(each.sheet) % len(TINTS)]
        made = Shape3d(name=each.part, mesh=panel_mesh(each.panel), tint=tint)
        shapes.setdefault((each.panel, each.sheet), made)
    index = {key: number for number, key in enumerate(shapes)}
    number = {label: step.number for step in order.steps for label in step.added}
    far = apart(assembled, order)
    more = {_key(each): each for each in fittings}
    bodies = {key: shape for key, each in more.items() if (shape := _shape_of(each))}
    of_item = {key: len(shapes) + place for place, key in enumerate(bodies)}
    pieces = tuple(
        Piece3d(
            label=each.label,
            mark=each.mark,
            title=called(each.label),
            shape=index[each.panel, each.sheet],
            pose=each.pose,
            step=number.get(each.label, 0),
            apart=far[each.label],
            size=sized(each),
        )
        for each in assembled.pieces
    )
    return Model3d(
        title=title,
        shapes=(*shapes.values(), *bodies.values()),
        pieces=(*pieces, *_hardware(fittings, of_item, far)),
        steps=tuple(_steps(order, steps)),
    )


_Key = tuple[str, Shape | None]


def _key(fitting: Fitting) -> _Key:
    """Return what fittings of one shape have in common."""
    return fitting.item.name, fitting.shape


def _shape_of(fitting: Fitting) -> Shape3d | None:
    name, shape = fitting.item.name, fitting.shape
    if isinstance(shape, Panel):
        return Shape3d(name=name, mesh=panel_mesh(shape), tint=TIMBER)
    if isinstance(shape, Plated):
        return Shape3d(name=name, mesh=plated_mesh(shape), tint=METAL)
    assert isinstance(fitting.item, HardwareStock), "a board has its own shape"
    solid = shape or hardware_solid(fitting.item)
    return Shape3d(name=name, mesh=turned_mesh(solid), tint=METAL) if solid else None


def _hardware(
    fittings: Sequence[Fitting], shapes: Mapping[_Key, int], far: Mapping[str, Vector]
) -> Iterator[Piece3d]:
    """Yield hardware and boards, each drawn out of its place as in the picture drawn apart."""
    counts = Counter[str]()
    for each in fittings:
        name, key = each.name or each.item.name, _key(each)
        if key in shapes:
            counts[name] += 1
            yield Piece3d(
                label=f"{name}.{counts[name]}",
                mark="",
                title=board_title(each.name) if each.name else each.item.title,
                shape=shapes[key],
                pose=each.frame,
                step=each.step,
                apart=each.drawn_out(far[each.follows]),
                is_hardware=True,
            )


def _steps(order: BuildOrder, titles: Sequence[str]) -> Iterable[Step3d]:
    for step in order.steps:
        if step.added:
            title = titles[step.number - 1] if step.number <= len(titles) else ""
            yield Step3d(number=step.number, title=title)


def viewer_data(model: Model3d) -> str:
    """Return the model as JSON for the page's viewer.

    ``shapes``: ``points`` as x, y, z one after another, in 1/``scale`` mm; ``triangles`` and
    ``edges`` as indices of points; of all three each row is given as what it adds to the row
    before, which packs well. ``tint`` names a colour of the theme. ``pieces``: ``at`` are the x,
    y and z axes and the origin (mm), one after another; ``apart`` in mm; ``size`` in words;
    ``hardware`` where it is that. ``steps``: number, title.
    """
    data = {
        "title": model.title,
        "scale": _STEPS_PER_MM,
        "shapes": [_shape(each) for each in model.shapes],
        "pieces": [_piece(each) for each in model.pieces],
        "steps": [[each.number, each.title] for each in model.steps],
    }
    return json_text(data)


def _shape(shape: Shape3d) -> dict[str, Any]:
    mesh = shape.mesh
    return {
        "tint": str(shape.tint),
        "points": _gains([[steps(each * _STEPS_PER_MM, 0) for each in at] for at in mesh.points]),
        "triangles": _gains(mesh.triangles),
        "edges": _gains(mesh.edges),
    }


def _gains(rows: Sequence[Sequence[int]]) -> list[int]:
    """Return the first row and what each later one adds to the row before, in one list."""
    before = [[0] * len(rows[0]), *rows] if rows else []
    return [new - old for a, b in pairwise(before) for old, new in zip(a, b, strict=True)]


def _piece(piece: Piece3d) -> dict[str, Any]:
    pose = piece.pose
    return {
        "title": piece.title,
        "mark": piece.mark,
        "shape": piece.shape,
        "step": piece.step,
        "at": [*_numbers((*pose.x, *pose.y, *pose.z), 6), *_numbers(pose.origin, 3)],
        "apart": _numbers(piece.apart, 1),
        **({"size": piece.size} if piece.size else {}),
        **({"hardware": True} if piece.is_hardware else {}),
    }


def _numbers(values: Iterable[float], places: int) -> list[Number]:
    return [number(value, places) for value in values]
