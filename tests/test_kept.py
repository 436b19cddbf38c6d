"""Keeps only what the product runs: whatever the package defines, it or its templates use.

What a module defines is looked up by module and name, what a class holds by its name alone. What
only unused code mentions is unused too. What runs once a module is loaded, what a decorator hands
to a register and the methods of a library's class, made anew in one of ours, are in use.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SOURCE = ROOT / "generator"

ALLOWED: dict[str, str] = {
    "kerfolio.proving.about.TOLD": "who adds a rule decides whether a picture shows it",
    "kerfolio.shop.screw.ultimate_withdrawal": "kept apart from the allowable one",
    "kerfolio.shop.span.SagResult.own_weight": "plan.json holds every field of a result",
}
"""What may stand unused, and why. What it alone uses may stay with it."""

KEEPING = {"property", "cached_property", "cache", "lru_cache", "staticmethod", "classmethod"}
KEEPING |= {"dataclass", "contextmanager"}
"""Decorators that call nothing: any other counts as a use."""

ENUMS = {"Enum", "IntEnum", "StrEnum"}
"""Bases whose members are in use where somebody goes through all of them."""

PLAIN = {*ENUMS, "Generic", "Protocol"}
"""Bases from outside that call no method of ours."""

Key = tuple[str, ...]
"""(module, name) of what a module defines, (name,) of what a class holds; (module, name, ``each``)
of all members of an enumeration."""


@dataclass(frozen=True, eq=False)
class Definition:
    """One name that is defined, by the node that defines it."""

    label: str
    keys: tuple[Key, ...]
    registered: bool


Owners = tuple[Definition, ...]


@dataclass
class House:
    """All definitions, and for each key the definitions that every mention of it stands in."""

    definitions: list[Definition] = field(default_factory=list)
    mentions: dict[Key, set[Owners]] = field(default_factory=dict)

    def is_used(self, each: Definition, unused: set[Definition]) -> bool:
        """Tell whether anything mentions it that is neither itself nor unused."""
        return each.registered or any(
            each not in owners and unused.isdisjoint(owners)
            for key in each.keys
            for owners in self.mentions.get(key, ())
        )

    def unused(self, kept: Collection[str] = ()) -> list[str]:
        """Return the labels of what nothing uses; what is ``kept`` counts as used."""
        found: set[Definition] = set()
        while True:
            more = {
                each
                for each in self.definitions
                if each not in found and each.label not in kept and not self.is_used(each, found)
            }
            if not more:
                return sorted(each.label for each in found)
            found |= more


class Reader:
    """Reads one module into the house."""

    def __init__(self, house: House, module: str, text: str) -> None:
        self.house, self.module, self.tree = house, module, ast.parse(text)
        self.imported = {
            alias.asname or alias.name: (node.module or "", alias.name)
            for node in ast.walk(self.tree)
            if isinstance(node, ast.ImportFrom)
            for alias in node.names
        }
        self.asks = any(isinstance(n, ast.Name) and n.id == "getattr" for n in ast.walk(self.tree))
        self.defined: dict[ast.AST, Owners] = {}

    def read(self) -> None:
        """Enter what the module defines and what it mentions."""
        for node in self.tree.body:
            self._define(node)
            if isinstance(node, ast.ClassDef):
                called = self._extends_a_library(node)
                bases = {each.id for each in node.bases if isinstance(each, ast.Name)}
                each = ((self.module, node.name, "each"),) if bases & ENUMS else ()
                for inner in node.body:
                    more = each if isinstance(inner, ast.Assign) else ()
                    self._define(inner, node.name, called=called, more=more)
        self._mentions(self.tree, ())

    def _extends_a_library(self, node: ast.ClassDef) -> bool:
        names = [each.id for each in node.bases if isinstance(each, ast.Name)]
        origins = {name: self.imported[name][0] for name in names if name in self.imported}
        return any(
            origin.split(".")[0] != self.module.split(".")[0] and name not in PLAIN
            for name, origin in origins.items()
        )

    def _define(
        self, node: ast.stmt, owner: str = "", *, called: bool = False, more: tuple[Key, ...] = ()
    ) -> None:
        for name in _names(node):
            if not name.startswith("__"):
                label = ".".join(filter(None, (self.module, owner, name)))
                top: Key = (self.module, name)
                keys = (top, (name,), *more) if owner else (top,)
                in_use = _is_registered(node) or (called and isinstance(node, ast.FunctionDef))
                each = Definition(label, keys, in_use)
                self.house.definitions.append(each)
                self.defined[node] = (*self.defined.get(node, ()), each)

    def _mentions(self, node: ast.AST, owners: Owners) -> None:
        for key in self._keys(node):
            self.house.mentions.setdefault(key, set()).add(owners)
        for child in ast.iter_child_nodes(node):
            self._mentions(child, owners + self.defined.get(child, ()))

    def _keys(self, node: ast.AST) -> Iterator[Key]:
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
            yield self.imported.get(node.id, (self.module, node.id))
        elif isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load):
            yield (node.attr,)
            if isinstance(node.value, ast.Name) and node.value.id in self.imported:
                yield (".".join(self.imported[node.value.id]), node.attr)
        elif isinstance(node, ast.comprehension | ast.For):
            gone_through = node.iter
            if isinstance(gone_through, ast.Call) and gone_through.args:  # reversed(Grade)
                gone_through = gone_through.args[0]
            if isinstance(gone_through, ast.Name):
                name = gone_through.id
                yield (*self.imported.get(name, (self.module, name)), "each")
        elif isinstance(node, ast.MatchClass):
            yield from ((each,) for each in node.kwd_attrs)
        elif self.asks and isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield (node.value,)  # a field that getattr may ask for


def _names(node: ast.stmt) -> Iterator[str]:
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        yield node.name
    elif isinstance(node, ast.Assign | ast.AnnAssign):
        for target in node.targets if isinstance(node, ast.Assign) else [node.target]:
            for part in ast.walk(target):
                if isinstance(part, ast.Name) and isinstance(part.ctx, ast.Store):
                    yield part.id


def _is_registered(node: ast.stmt) -> bool:
    decorators = node.decorator_list if isinstance(node, ast.FunctionDef | ast.ClassDef) else []
    called = (each.func if isinstance(each, ast.Call) else each for each in decorators)
    return any(ast.unparse(each).rpartition(".")[2] not in KEEPING for each in called)


def house_of(modules: Mapping[str, str], templates: Iterable[str] = ()) -> House:
    """Read modules (source by dotted name) and what templates mention between their braces."""
    house = House()
    for name, text in modules.items():
        Reader(house, name, text).read()
    for text in templates:
        for block in re.findall(r"\{[{%].*?[%}]\}", text, re.DOTALL):
            for word in re.findall(r"\w+", block):
                house.mentions.setdefault((word,), set()).add(())
    return house


@cache
def package() -> House:
    """Return the package with its templates."""
    modules = {
        ".".join(path.relative_to(SOURCE).with_suffix("").parts): path.read_text("utf-8")
        for path in sorted(SOURCE.rglob("*.py"))
    }
    templates = sorted((ROOT / "themes").rglob("templates/*"))
    return house_of(modules, [path.read_text("utf-8") for path in templates])


def test_whatever_the_package_defines_it_uses() -> None:
    assert package().unused(ALLOWED) == []


def test_nothing_is_allowed_that_is_used_by_now() -> None:
    assert set(ALLOWED) <= set(package().unused())


def test_the_check_itself_sees_what_is_left_over() -> None:
    library = """
LEFT, SHARED = 1, 2
def told(): return SHARED
def again(): return again()
def chained(): return again()
class Record:
    shown: int
    hidden: int
    def asked(self): return self.shown
    def idle(self): return self.hidden
class Shade(Enum):
    LIGHT = 1
class Tone(Enum):
    DARK = 1
@register
def called_by_name(): ...
"""
    user = """
from outside import Reader
class Own(Reader):
    def called_back(self): ...
from a.library import Record, Shade, Tone, told
print(told(), Record.asked, Own(), [each for each in reversed(Shade)], Tone)
"""
    modules = {"a.library": library, "a.user": user}
    left = ["LEFT", "Record.hidden", "Record.idle", "Tone.DARK", "again", "chained"]
    assert house_of(modules).unused() == [f"a.library.{each}" for each in left]
    told = house_of(modules, ["{{ record.hidden }}"])
    left = ["LEFT", "Record.idle", "Tone.DARK"]
    assert told.unused(["a.library.chained"]) == [f"a.library.{each}" for each in left]
