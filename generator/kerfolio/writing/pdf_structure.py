"""The structure of a PDF: what each passage is and in which order it is read (tagged PDF)."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from kerfolio.basis.unconfigured import unconfigured
from kerfolio.writing.page import Passage, Role

with unconfigured():
    from reportlab.pdfbase import pdfdoc


@dataclass(slots=True)
class _Element:
    role: Role
    alt: str
    contents: list[tuple[int, int]] = field(default_factory=list)  # (page, marked content)


@dataclass(slots=True)
class Structure:
    """Collects what was marked on which page; written once, at the end."""

    elements: list[_Element] = field(default_factory=list)
    counts: list[int] = field(default_factory=list)

    def open_page(self) -> None:
        """Begin a new page."""
        self.counts.append(0)

    def opening(self, passage: Passage) -> str:
        """Return the operator that opens a passage's marks on the current page."""
        if passage.role is Role.DECORATION:
            return "/Artifact BMC"
        page, mark = len(self.counts) - 1, self.counts[-1]
        self.counts[-1] += 1
        joins = passage.continues and self.elements and self.elements[-1].role is passage.role
        if not joins:
            self.elements.append(_Element(passage.role, passage.alt))
        self.elements[-1].contents.append((page, mark))
        return f"/{passage.role.value} <</MCID {mark}>> BDC"

    def write(self, document: Any) -> None:
        """Add the structure tree to the document (ISO 32000-1, 14.7 and 14.8)."""
        root, whole = pdfdoc.PDFDictionary(), pdfdoc.PDFDictionary()
        root_reference = document.Reference(root, "StructureRoot")
        whole_reference = document.Reference(whole, "StructureWhole")
        owners: list[list[Any]] = [[None] * count for count in self.counts]
        kids = []
        for index, element in enumerate(self.elements):
            entry = pdfdoc.PDFDictionary(_entry(element, whole_reference))
            kids.append(document.Reference(entry, f"Structure{index}"))
            for page, mark in element.contents:
                owners[page][mark] = kids[-1]
        name = pdfdoc.PDFName
        whole.dict.update(Type=name("StructElem"), S=name("Document"), P=root_reference)
        whole.dict["K"] = pdfdoc.PDFArray(kids)
        tree = [item for page, owned in enumerate(owners) for item in (page, _array(owned))]
        root.dict.update(Type=name("StructTreeRoot"), K=whole_reference)
        root.dict["ParentTree"] = pdfdoc.PDFDictionary({"Nums": pdfdoc.PDFArray(tree)})
        root.dict["ParentTreeNextKey"] = len(owners)
        document.Catalog.StructTreeRoot = root
        document.Catalog.MarkInfo = pdfdoc.PDFDictionary({"Marked": "true"})
        for page in range(len(owners)):
            _number_page(document, page)


def _array(items: list[Any]) -> Any:
    return pdfdoc.PDFArray(items)


def _page_name(page: int) -> str:
    return f"Page{page + 1}"


def _entry(element: _Element, parent: Any) -> dict[str, Any]:
    contents = [
        pdfdoc.PDFDictionary(
            {
                "Type": pdfdoc.PDFName("MCR"),
                "Pg": pdfdoc.PDFObjectReference(_page_name(page)),
                "MCID": mark,
            }
        )
        for page, mark in element.contents
    ]
    entry: dict[str, Any] = {
        "Type": pdfdoc.PDFName("StructElem"),
        "S": pdfdoc.PDFName(element.role.value),
        "P": parent,
        "K": _array(contents),
    }
    if element.alt:
        entry["Alt"] = pdfdoc.PDFString(element.alt)
    return entry


def _number_page(document: Any, page: int) -> None:
    """Give a page its row in the parent tree; the library's page has no such entry of its own."""
    record = document.idToObject[_page_name(page)]
    record.__NoDefault__ = [*record.__NoDefault__, "StructParents"]
    record.StructParents = page
    record.Tabs = pdfdoc.PDFName("S")
