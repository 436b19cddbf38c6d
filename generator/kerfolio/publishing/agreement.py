"""The agreement check: reads back what a publish wrote and names any two files that disagree."""

from __future__ import annotations

import csv
import io
import json
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from kerfolio.basis.finding import Finding, error, in_unit
from kerfolio.basis.measures import precise
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said
from kerfolio.basis.tolerance import SAME
from kerfolio.bundles.archive import sums_text, unzipped
from kerfolio.drawing.cut_sheet import datum_of, likeness
from kerfolio.drawing.extent import union
from kerfolio.drawing.layer import SHEET_EDGE, layer_for
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Layer
from kerfolio.edition.edition import Edition
from kerfolio.geometry.measure import area, bounds
from kerfolio.publishing.bundle import Bundle
from kerfolio.publishing.figure_faults import figure_faults
from kerfolio.publishing.names import (
    PLAN,
    SUMS,
    art_name,
    bundle_stem,
    cut_part_name,
    cut_sheet_name,
    expected_names,
)
from kerfolio.settling.settled import Cut, Operation, SettledPart, SettledPlan
from kerfolio.shop.art import arts_of
from kerfolio.writing.read_back import Layers

_PARTS = "lists/parts.csv"
_AREA_SHARE = 1e-4
_AREA_LEAST = 0.5
"""Areas agree within a ten-thousandth or half a square millimetre: far above the rounding of the
files (a micrometre along an edge), far below a slot cut for the next thickness."""

_PLACE = 0.002
"""Places agree within this, mm: above the rounding of the files, far below any router."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Written:
    """What was read back: files by name, ``plan.json`` and the edition they came from."""

    edition: Edition
    files: Mapping[str, bytes]
    facts: Mapping[str, Any]
    place: Place

    def differ(self, one: str, other: str, how: Text) -> Finding:
        """Return the finding that two things disagree."""
        return error(
            "files-disagree",
            said("{} and {} disagree: {}", one, other, how),
            self.place,
            "Nothing was published. This is a fault of the program: please report it.",
        )


def disagreements(bundle: Bundle) -> tuple[Finding, ...]:
    """Return a finding for every pair of files in a packed bundle that disagree, else nothing."""
    stem = bundle_stem(bundle.edition.plan) + "/"
    files = {name.removeprefix(stem): data for name, data in unzipped(bundle.content).items()}
    place = Place(f"plans/{bundle.edition.name}/plan.yaml")
    facts = json.loads(files.get(PLAN, b"{}"))
    written = _Written(edition=bundle.edition, files=files, facts=facts, place=place)
    incomplete = tuple(_complete(written))
    if incomplete:
        return incomplete
    found = (finding for check in CHECKS for finding in check(written))
    return in_unit(found, bundle.edition.plan.units)


def _complete(written: _Written) -> Iterator[Finding]:
    for name in sorted(expected_names(written.edition) ^ set(written.files)):
        how = "it is missing" if name not in written.files else "it was not meant to be there"
        yield written.differ(f"`{name}`", "the bundle's contents", how)
    for name, content in sorted(written.files.items()):
        if not content:
            yield written.differ(f"`{name}`", "the bundle's contents", "it is empty")


def _sums(written: _Written) -> Iterator[Finding]:
    rest = {name: data for name, data in written.files.items() if name != SUMS}
    if written.files[SUMS].decode() != sums_text(rest):
        yield written.differ(f"`{SUMS}`", "the files", "a check sum does not hold")


def _pieces(written: _Written) -> Iterator[Finding]:
    """Parts list = plan = layout = steps, piece by piece."""
    facts = written.facts
    rows = csv.DictReader(io.StringIO(written.files[_PARTS].decode("utf-8")))
    listed = Counter(label for row in rows for label in row["pieces"].split())
    for variant in facts["variants"]:
        stated = Counter(piece["label"] for part in variant["parts"] for piece in part["pieces"])
        if stated != listed:
            fit = variant["fit"]
            yield written.differ(f"`{_PARTS}`", f"the parts for {fit}", _odd(listed, stated))
    laid = Counter(each["piece"] for sheet in facts["layout"] for each in sheet["pieces"])
    if laid != listed:
        yield written.differ(f"`{_PARTS}`", "the sheet layouts", _odd(listed, laid))
    added = Counter(label for step in facts["steps"] for label in step["add"])
    if facts["steps"] and added != listed:
        yield written.differ(f"`{_PARTS}`", "the steps", _odd(listed, added))


def _odd(one: Counter[str], other: Counter[str]) -> str:
    labels = sorted(label for label in one | other if one[label] != other[label])
    return "piece " + ", ".join(f"`{label}`" for label in labels)


def _hardware(written: _Written) -> Iterator[Finding]:
    text = written.files["lists/hardware.csv"].decode("utf-8")
    listed = {row["item"]: int(row["count"]) for row in csv.DictReader(io.StringIO(text))}
    summed: Counter[str] = Counter()
    for step in written.facts["steps"]:
        summed.update(step["hardware"])
    if written.facts["steps"] and listed != dict(summed):
        yield written.differ("`lists/hardware.csv`", "the steps", "the counts differ")


@dataclass(frozen=True, slots=True, kw_only=True)
class _CutFile:
    """A cut file as its own format reads it back."""

    name: str
    layers: Layers
    thickness: float | None


def _read(written: _Written, named: Callable[[str], str]) -> Iterator[_CutFile]:
    for each in written.edition.formats:
        name = named(each.ending)
        content = written.files[name]
        layers, thickness = each.layers(content), each.thickness(content)
        yield _CutFile(name=name, layers=layers, thickness=thickness)


def _cut_files(written: _Written) -> Iterator[Finding]:
    """Every cut file, of every format, against the settled shapes of its variant."""
    for settled in written.edition.variants:
        fit = settled.variant.label
        for part in settled.parts:
            thickness = settled.sheet(part.sheet).thickness
            for file in _read(written, partial(cut_part_name, fit, part.name)):
                yield from _compared(written, file, [part], thickness)
        parts = {part.name: part for part in settled.parts}
        for sheet in written.edition.layout.sheets:
            pieces, material = [parts[each.part] for each in sheet.placements], sheet.sheet
            x, y = datum_of(settled.sheet(material), sheet.size)
            edge = (-x, -y, sheet.size[0] - x, sheet.size[1] - y)
            for file in _read(written, partial(cut_sheet_name, fit, sheet.number)):
                yield from _compared(written, file, pieces, settled.sheet(material).thickness)
                yield from _lies(written, file, SHEET_EDGE, edge)


def _compared(
    written: _Written, file: _CutFile, pieces: list[SettledPart], thickness: float
) -> Iterator[Finding]:
    meant, found = _meant(pieces), _measured(file.layers)
    for layer in sorted(meant):
        if not _same(meant[layer], found.get(layer, [])):
            yield written.differ(f"`{file.name}`", f"the settled plan on layer `{layer}`", "areas")
    if file.thickness is None or abs(file.thickness - thickness) > SAME:
        stated = "no thickness" if file.thickness is None else precise("stated", file.thickness)
        how = said("it is for {}, the sheet is {}", stated, precise("sheet", thickness))
        yield written.differ(f"`{file.name}`", "its own name", how)


def _engravings(written: _Written) -> Iterator[Finding]:
    """Every engraving's own file has 0,0 in its middle."""
    for art in arts_of(written.edition.settled):
        layer = layer_for(Cut(operation=Operation.ENGRAVE, depth=art.depth, contours=()))
        wide, high = art.size
        for file in _read(written, partial(art_name, art.part.name, art.name)):
            yield from _lies(written, file, layer, (-wide / 2, -high / 2, wide / 2, high / 2))


def _lies(written: _Written, file: _CutFile, layer: Layer, box: Box) -> Iterator[Finding]:
    """Compare the box around what lies on a layer with where it should be."""
    boxes = [bounds(each) for each in file.layers.get(layer.name, ())]
    found = union((each.x0, each.y0, each.x1, each.y1) for each in boxes) if boxes else None
    if found is None or any(abs(a - b) > _PLACE for a, b in zip(found, box, strict=True)):
        yield written.differ(f"`{file.name}`", "its datum", f"layer `{layer.name}` lies elsewhere")


def _meant(pieces: list[SettledPart]) -> dict[str, list[float]]:
    """Return the areas every cut layer must show; engravings are lines and have none.

    A contour stated twice is one line of the file.
    """
    areas: dict[str, list[float]] = {}
    for piece in pieces:
        drawn: dict[tuple[object, ...], tuple[str, float]] = {}
        for cut in piece.cuts:
            if cut.operation is not Operation.ENGRAVE:
                layer = layer_for(cut)
                for contour in cut.contours:
                    drawn[likeness(layer, contour)] = (layer.name, abs(area(contour)))
        for name, size in drawn.values():
            areas.setdefault(name, []).append(size)
    return areas


def _measured(layers: Layers) -> dict[str, list[float]]:
    return {
        name: [abs(area(contour)) for contour in contours if contour.closed]
        for name, contours in layers.items()
    }


def _same(one: list[float], other: list[float]) -> bool:
    pairs = zip(sorted(one), sorted(other), strict=False)
    return len(one) == len(other) and all(
        abs(a - b) <= max(_AREA_LEAST, _AREA_SHARE * a) for a, b in pairs
    )


def _taken_widths(written: _Written) -> Iterator[Finding]:
    """Every slot that takes a sheet is as wide as its folder's thickness says."""
    for settled in written.edition.variants:
        for part in settled.parts:
            for name, width, meant in _widths(settled, part):
                if abs(width - meant) > 1e-6:
                    how = said("{} is not {}", precise("width", width), precise("meant", meant))
                    yield written.differ(f"slot `{name}`", settled.variant.label, how)


def _widths(settled: SettledPlan, part: SettledPart) -> Iterator[tuple[str, float, float]]:
    for feature in part.features:
        if feature.takes and feature.kind.fitted:
            sheet = settled.sheet(feature.takes)
            name = f"{part.name}.{feature.name}"
            yield name, feature.width.value, sheet.thickness + 2 * sheet.fit


def _figures(written: _Written) -> Iterator[Finding]:
    """Masses, times and costs of the lists are those of ``plan.json``."""
    for one, other, how in figure_faults(written.files, written.facts):
        yield written.differ(one, other, how)


CHECKS: tuple[Callable[[_Written], Iterator[Finding]], ...] = (
    _sums,
    _pieces,
    _hardware,
    _cut_files,
    _engravings,
    _taken_widths,
    _figures,
)
