"""Reading drawn parts from SVG files, in mm with y up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path

from kerfolio.basis.finding import Finding, error, in_order, note
from kerfolio.basis.place import Place
from kerfolio.geometry.affine import IDENTITY, Affine, after, mapped, translation
from kerfolio.geometry.path_grammar import too_long
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.outline import Drawing, DrawnElement, DrawnText
from kerfolio.reading.drawn_chain import BeyondBudgetError, Gathered, finished, keep_within
from kerfolio.reading.drawn_said import NOTHING_SAID, SaidOfDrawing
from kerfolio.reading.svg_page import read_page
from kerfolio.reading.svg_shape import Viewport, is_shape, shape_contours, whole
from kerfolio.reading.svg_tree import SvgNode, read_tree
from kerfolio.reading.svg_viewport import SvgError, fitted, length, transform, view_box

_GROUPS = {"g", "a", "switch", "svg"}
_IGNORED = {"text": "text", "image": "picture", "foreignObject": "foreign content"}
_MOVING = {"animate", "animateMotion", "animateTransform", "set"}


@dataclass(frozen=True, slots=True)
class _Scene:
    """What holds for an element: the map to mm, the viewport, its groups' names, uses passed.

    ``depth`` counts the groups and clones it lies in.
    """

    affine: Affine
    viewport: Viewport
    names: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    depth: int = 0


@dataclass(slots=True)
class _Sheet(Gathered):
    """What has been read so far."""

    by_id: dict[str, SvgNode] = field(default_factory=dict)
    ignored: Counter[tuple[str, Place]] = field(default_factory=Counter)


def read_svg(
    path: Path,
    file: str,
    *,
    art: bool = False,
    asked: SaidOfDrawing = NOTHING_SAID,
    named: bool = False,
) -> tuple[Drawing | None, tuple[Finding, ...]]:
    """Return the paths of an SVG file, in mm with y up, and what is wrong or doubtful in it.

    ``file`` is the name used in places. Curves become chords within 0.01 mm, circular arcs stay
    arcs. ``art`` is for engravings, where open and crossing paths are fine and the size is that of
    the engraving. ``asked`` is what the plan says of the file. Where its words name parts
    (``named``), they are not told as ignored. The drawing is None when nothing can be read.
    """
    root, findings = read_tree(path, file)
    if root is None:
        return None, findings
    page, told = read_page(root, asked.unit)
    sheet = _Sheet(by_id={node.get("id") or "": node for node in reversed(list(_every(root)))})
    sheet.findings.extend(() if art and page is not None else told)
    _refuse_scripts(root, sheet)
    if page is None:
        return None, in_order(sheet.findings)
    try:
        _children(root, _Scene(page.affine, page.viewport), sheet)
    except BeyondBudgetError as beyond:
        return None, in_order((*sheet.findings, beyond.finding))
    _tell_ignored(sheet, named=named)
    return finished(file, sheet, art=art, guides=asked.guides)


def _every(node: SvgNode) -> Iterator[SvgNode]:
    yield node
    for child in node.children:
        yield from _every(child)


def _refuse_scripts(root: SvgNode, sheet: _Sheet) -> None:
    """Note scripts and references to other files, wherever they stand, as errors."""
    for node in _every(root):
        events = any(name.lower().startswith("on") for name in node.attributes)
        if node.tag == "script" or events or node.reference.lower().startswith("javascript:"):
            advice = "Save it as plain SVG, without scripts."
            sheet.findings.append(
                error("unsafe-drawing", "script in a drawing", node.place, advice)
            )
        if node.tag == "style" and "@import" in node.text:
            advice = "A drawing stands alone: save it as plain SVG."
            message = "style sheet from another file"
            sheet.findings.append(error("outside-reference", message, node.place, advice))


def _broken(rule: str, message: str, place: Place) -> Finding:
    return error(rule, message, place, "Draw it anew, or save the drawing as plain SVG.")


def _children(node: SvgNode, scene: _Scene, sheet: _Sheet) -> None:
    for child in node.children:
        _element(child, scene, sheet)


def _element(node: SvgNode, scene: _Scene, sheet: _Sheet) -> None:
    """Read one element and what is in it. Raises BeyondBudgetError."""
    sheet.visit(node.place, scene.depth)
    scene = replace(scene, depth=scene.depth + 1)
    if node.tag in _IGNORED:
        sheet.ignored[(_IGNORED[node.tag], node.place)] += 1
        if node.tag == "text":
            _text(node, scene, sheet)
    elif node.tag in _MOVING:
        sheet.ignored[("animation", node.place)] += 1
    if not (node.tag in _GROUPS or node.tag == "use" or is_shape(node.tag)):
        return
    if "none" in (node.style.get("display"), node.get("display")):
        sheet.ignored[("hidden element", node.place)] += 1
        return
    inner = _transformed(node, scene, sheet)
    if inner is None:
        return
    if is_shape(node.tag):
        _shape(node, inner, sheet)
    elif node.tag == "use":
        _use(node, inner, sheet)
    elif node.tag == "svg":
        _nested(node, inner, sheet, {})
    else:
        _children(node, replace(inner, names=(*own_names(node), *inner.names)), sheet)


def own_names(node: SvgNode) -> tuple[str, ...]:
    """Return the names of an element: id, labels given by drawing programs, title."""
    labels = [
        value.strip()
        for name, value in sorted(node.attributes.items())
        if name.endswith(" label") or name == "data-name"
    ]
    return tuple(dict.fromkeys(n for n in (node.get("id"), *labels, node.title) if n))


def _leave_out(node: SvgNode, scene: _Scene, sheet: _Sheet, finding: Finding) -> None:
    """Tell why an element is left out, with all that is in it."""
    within = (name for each in _every(node) for name in own_names(each))
    sheet.leave_out(finding, (*within, *scene.names))


def _transformed(node: SvgNode, scene: _Scene, sheet: _Sheet) -> _Scene | None:
    text = node.style.get("transform") or node.get("transform") or ""
    try:
        own = transform(text)
    except SvgError as problem:
        _leave_out(node, scene, sheet, _broken("broken-transform", str(problem), node.place))
        return None
    origin = node.style.get("transform-origin") or node.get("transform-origin")
    if origin and own != IDENTITY:
        message = f"transform-origin `{origin}` is not read"
        advice = "Save it as plain SVG, or write the origin into the transform."
        _leave_out(node, scene, sheet, error("broken-transform", message, node.place, advice))
        return None
    return replace(scene, affine=after(scene.affine, own))


def _text(node: SvgNode, scene: _Scene, sheet: _Sheet) -> None:
    """Keep what a text says and where it begins; one that cannot be read says nothing."""
    hidden = "none" in (node.style.get("display"), node.get("display"))
    words = " ".join("".join(each.text for each in _every(node)).split())
    if hidden or not words:
        return
    placed = next((each for each in _every(node) if each.get("x")), node)
    try:
        affine = after(
            scene.affine, transform(node.style.get("transform") or node.get("transform") or "")
        )
        first = [(placed.get(name) or "0").replace(",", " ").split()[0] for name in ("x", "y")]
        spot = [
            length(text, whole(scene.viewport, axis))
            for text, axis in zip(first, "xy", strict=True)
        ]
    except (SvgError, IndexError):
        return
    at = mapped(affine, (spot[0], spot[1]))
    sheet.texts.append(DrawnText(text=words, at=at, place=node.place))


def _shape(node: SvgNode, scene: _Scene, sheet: _Sheet) -> None:
    names = own_names(node)
    name = names[0] if names else f"{node.tag} on line {node.place.line}"
    keep_within(too_long(node.get("d") or node.get("points") or ""), node.place)
    try:
        found = shape_contours(node, scene.affine, scene.viewport)
    except (SvgError, ShapeError) as problem:
        broken = _broken("broken-path", f"`{name}`: {problem}", node.place)
        sheet.leave_out(broken, (name, *names, *scene.names))
        return
    found = tuple(contour for contour in found if contour.vertices)
    for number, contour in enumerate(found, start=1):
        element = DrawnElement(
            name=name if len(found) == 1 else f"{name}.{number}",
            names=tuple(dict.fromkeys((*names, *scene.names))),
            vertices=contour.vertices,
            closed=contour.closed,
            place=node.place,
        )
        sheet.add(scene.names, element)


def _use(node: SvgNode, scene: _Scene, sheet: _Sheet) -> None:
    """Read what a ``use`` points to, at its own place."""
    target_id = node.reference
    if not target_id.startswith("#"):
        advice = "A drawing stands alone: put the shape itself in it."
        message = f"`{target_id[:40]}` lies outside the drawing"
        _leave_out(node, scene, sheet, error("outside-reference", message, node.place, advice))
        return
    target = sheet.by_id.get(target_id[1:])
    if target is None or target_id in scene.uses:
        why = "is not in the drawing" if target is None else "is used within itself"
        advice = "Put the shape itself in its place."
        message = f"`{target_id}` {why}"
        _leave_out(node, scene, sheet, error("unknown-reference", message, node.place, advice))
        return
    try:
        shift = [length(node.get(name) or "0", whole(scene.viewport, name)) for name in ("x", "y")]
    except SvgError as problem:
        _leave_out(node, scene, sheet, _broken("broken-path", str(problem), node.place))
        return
    inner = _Scene(
        after(scene.affine, translation(*shift)),
        scene.viewport,
        (*own_names(node), *scene.names),
        (*scene.uses, target_id),
        scene.depth,
    )
    if target.tag in ("symbol", "svg"):
        turned = _transformed(target, inner, sheet)
        size = {n: node.get(n) or "" for n in ("width", "height") if node.get(n)}
        if turned is not None:
            _nested(target, turned, sheet, size)
    else:
        _element(target, inner, sheet)


def _nested(node: SvgNode, scene: _Scene, sheet: _Sheet, size: dict[str, str]) -> None:
    """Read an inner viewport: a nested ``svg``, or a ``symbol`` being used."""
    try:
        box = view_box(node.get("viewBox"))
        texts = [node.get("x") or "0", node.get("y") or "0"]
        texts += [size.get(n) or node.get(n) or "100%" for n in ("width", "height")]
        texts = ["100%" if text == "auto" else text for text in texts]
        x, y, width, height = (
            length(text, whole(scene.viewport, axis))
            for text, axis in zip(texts, "xyxy", strict=True)
        )
    except SvgError as problem:
        _leave_out(node, scene, sheet, _broken("unreadable-size", str(problem), node.place))
        return
    affine = after(scene.affine, translation(x, y))
    viewport = (width, height)
    if box and width > 0 and height > 0:
        affine = after(affine, fitted(box, width, height, node.get("preserveAspectRatio")))
        viewport = (box.width, box.height)
    names = (*own_names(node), *scene.names)
    _children(node, replace(scene, affine=affine, viewport=viewport, names=names), sheet)


def _tell_ignored(sheet: _Sheet, *, named: bool) -> None:
    kinds = Counter(kind for kind, _ in sheet.ignored if not (named and kind == "text"))
    advice = {
        "text": "Turn the text into paths to have it cut.",
        "picture": "Draw its lines as paths to have them cut.",
        "foreign content": "Draw it as paths to have it cut.",
        "animation": "What moves is cut where it begins: draw it where it is to be.",
        "hidden element": "Show it in the drawing to have it cut.",
    }
    for kind, count in sorted(kinds.items()):
        first = min(place for each, place in sheet.ignored if each == kind)
        message = f"{kind} is ignored" + (f" ({count} times)" if count > 1 else "")
        sheet.findings.append(note("ignored-element", message, first, advice[kind]))
