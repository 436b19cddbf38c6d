"""Reads ``pages/*.md``: a title line, prose, and perhaps a small front matter."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.model.prose import Heading, Span
from kerfolio.model.workshop import Page
from kerfolio.reading.desk import Desk
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.prose import read_prose
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import TITLE_TEXT, name_fault, whole
from kerfolio.reading.yaml_text import decode, read_yaml

_HEAD: Record[int] = Record(
    name="front-matter",
    noun="the lines between ---",
    keys=(Key(name="order", form=whole(0, 9999), says="Its place in the menu.", required=True),),
    make=lambda order: order,
    advice="Write `order: 10` between two lines of `---`.",
    placed=False,
)
_USUAL_ORDER = 100

TAKEN = ("assets", "log", "plans", "stock")
"""Folders of the site itself: a page of that name would be lost behind them."""


def read_page(content: bytes, file: str, name: str) -> tuple[Page | None, tuple[Finding, ...]]:
    """Return a page of the maker's own, named by its file's stem."""
    text, faults = decode(content, file)
    if faults:
        return None, faults
    desk = Desk()
    fault = name_fault(name)
    if fault is not None:
        message = f"`{name}.md` is no page's name"
        desk.complain("name", Complaint(message, fault.advice), Place(file))
    if name in TAKEN:
        advice = f"Give the file another name, such as `our-{name}.md`."
        desk.refuse("taken-name", f"`{name}` is a folder of the site itself", Place(file), advice)
    lines = text.split("\n")
    order, first = _order(lines, file, desk)
    while first < len(lines) and not lines[first].strip():
        first += 1
    title = _title(lines, first, file, desk)
    prose, findings = read_prose("\n".join(lines[first + 1 :]), file, first_line=first + 2)
    page = Page(name=name, title=title, text=prose, order=order, place=Place(file, first + 1, 1))
    return page, (*desk.findings, *findings)


def _title(lines: list[str], first: int, file: str, desk: Desk) -> str:
    line = lines[first] if first < len(lines) else ""
    place = Place(file, min(first, len(lines) - 1) + 1, 1)
    if line.startswith("# ") and line[2:].strip():
        title = Scalar(text=_words(line, place, desk), place=place)
        return TITLE_TEXT.read(title, desk) or ""
    desk.findings.append(
        error("page-title", "a page without a title", place, "Begin it with a line `# Title`.")
    )
    return ""


def _words(line: str, place: Place, desk: Desk) -> str:
    """Return a title's words; it stands in menus and heads of windows, which know no marks."""
    prose, findings = read_prose(line, place.file, first_line=place.line)
    desk.findings += findings
    spans = [span for block in prose.blocks if isinstance(block, Heading) for span in block.spans]
    if any(replace(span, text="") != Span(text="") for span in spans):
        desk.refuse("page-title", "marks in a title", place, "Write it in plain words.")
    return prose.plain() or line[2:].strip()


def _order(lines: list[str], file: str, desk: Desk) -> tuple[int, int]:
    """Return the order stated in the front matter, and the line the text begins in."""
    if not lines or lines[0].strip() != "---":
        return _USUAL_ORDER, 0
    end = next((n for n in range(1, len(lines)) if lines[n].strip() == "---"), 0)
    if not end:
        advice = "Close the front matter with a second line of `---`."
        desk.refuse("page-title", "`---` is not closed", Place(file, 1, 1), advice)
        return _USUAL_ORDER, 1
    head = "\n" + "\n".join(lines[1:end])  # the empty line keeps line numbers true
    if not head.strip():
        return _USUAL_ORDER, end + 1
    node, faults = read_yaml(head.encode(), file)
    desk.findings += faults
    order = _HEAD.read(node, desk) if node is not None else None
    return (_USUAL_ORDER if order is None else order), end + 1
