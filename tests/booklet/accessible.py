"""A scripted check of a tagged PDF against what a machine can tell of PDF/UA-1.

ISO 14289-1:2014 by clause, and ISO 32000-1:2008 where it leads there; both from memory.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pikepdf

_STANDARD = {
    *("Document", "Part", "Sect", "Div", "Caption", "TOC", "TOCI", "Reference", "Index"),
    *("P", "H1", "H2", "H3", "H4", "H5", "H6", "L", "LI", "Lbl", "LBody", "BlockQuote"),
    *("Table", "THead", "TBody", "TFoot", "TR", "TH", "TD"),
    *("Span", "Link", "Annot", "Figure", "Code", "Quote", "Note"),
}
"""Structure types of ISO 32000-1, 14.8.4, as far as booklets may need them."""


def faults(content: bytes) -> list[str]:
    """Return what is wrong, in no order; nothing for a document without a fault."""
    with pikepdf.open(io.BytesIO(content)) as document:
        return [*_document_faults(document), *_tree_faults(document), *_page_faults(document)]


def tree(content: bytes) -> list[tuple[str, str]]:
    """Return every structure element's type with its alternative text, in reading order."""
    with pikepdf.open(io.BytesIO(content)) as document:
        return [(each.kind, str(each.node.get("/Alt", ""))) for each in _elements(document)]


class _Element:
    """A structure element, its type as the role map has it, and those around it."""

    def __init__(self, node: Any, kind: str, above: tuple[str, ...]) -> None:
        self.node, self.kind, self.above = node, kind, above


def _elements(document: pikepdf.Pdf) -> Iterator[_Element]:
    root = document.Root.StructTreeRoot
    roles = {str(key): str(value) for key, value in root.get("/RoleMap", {}).items()}

    def walk(node: Any, above: tuple[str, ...]) -> Iterator[_Element]:
        if isinstance(node, pikepdf.Array):
            for each in node:
                yield from walk(each, above)
        elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
            kind = roles.get(str(node["/S"]), str(node["/S"])).removeprefix("/")
            yield _Element(node, kind, above)
            yield from walk(node.get("/K", pikepdf.Array()), (*above, kind))

    yield from walk(root.K, ())


def _document_faults(document: pikepdf.Pdf) -> Iterator[str]:
    root = document.Root
    with document.open_metadata() as metadata:
        if metadata.get("pdfuaid:part") != "1":  # 14289-1, 5
            yield "no PDF/UA-1 identifier"
        if not metadata.get("dc:title"):  # 7.1
            yield "no title in the metadata"
    if not root.get("/ViewerPreferences", {}).get("/DisplayDocTitle", False):  # 7.1
        yield "the title is not shown"
    if not root.get("/MarkInfo", {}).get("/Marked", False):  # 6.2
        yield "not marked as tagged"
    if not root.get("/Lang"):  # 7.2
        yield "no language"
    if "/Outlines" not in root:  # 7.17 asks for navigation
        yield "no bookmarks"


def _tree_faults(document: pikepdf.Pdf) -> Iterator[str]:
    elements = list(_elements(document))
    for each in elements:
        if each.kind not in _STANDARD:  # 7.1: types must be standard, or mapped to such
            yield f"{each.kind} is no standard type"
        if each.kind == "Figure" and not each.node.get("/Alt"):  # 7.3
            yield "a figure without words"
        if each.kind == "TR" and not {"Table"} & set(each.above):  # 7.5
            yield "a row outside a table"
        if each.kind == "LI" and each.above[-1:] != ("L",):  # 7.6
            yield "an entry outside a list"
    heads = [
        int(each.kind[1]) for each in elements if each.kind[0] == "H" and each.kind[1:].isdigit()
    ]
    if heads[:1] != [1] or any(after > before + 1 for before, after in pairwise(heads)):  # 7.4.2
        yield f"levels of headings are left out: {heads}"
    yield from _table_faults(elements)


def _table_faults(elements: list[_Element]) -> Iterator[str]:
    for index, table in enumerate(elements):
        if table.kind != "Table":
            continue
        inside = []
        for each in elements[index + 1 :]:
            if len(each.above) <= len(table.above):
                break
            inside.append(each.kind)
        if "TH" not in inside:  # 7.5
            yield "a table without heads"


def _page_faults(document: pikepdf.Pdf) -> Iterator[str]:
    for number, page in enumerate(document.pages, start=1):
        if page.obj.get("/Annots") and page.obj.get("/Tabs") != "/S":  # 7.18.3
            yield f"page {number} has no order of its links"
        for note in page.obj.get("/Annots", []):
            if not note.get("/Contents"):  # 7.18.5
                yield f"a link on page {number} without words"
        yield from (f"page {number}: {each}" for each in _loose(page))


def _loose(page: pikepdf.Page) -> Iterator[str]:
    """Yield what is painted and is neither content nor an artefact (7.1)."""
    depth = 0
    for _, operator in pikepdf.parse_content_stream(page):
        name = str(operator)
        depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(name, 0)
        if depth <= 0 and name in {"Tj", "TJ", "f", "f*", "S", "B", "Do", "sh"}:
            yield f"{name} outside any tag"
