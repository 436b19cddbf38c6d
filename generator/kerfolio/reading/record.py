"""The form of a mapping with known keys, and of a mapping whose keys are names."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from collections.abc import Mapping as MappingOf
from dataclasses import dataclass, field
from typing import Any, TypeVar

from kerfolio.basis.budgets import LIST, Budget
from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.names import did_you_mean, nearest
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Book, Form, Schema, too_many
from kerfolio.reading.nodes import Entry, Mapping, Node, Scalar
from kerfolio.reading.odd_blank import blank_finding

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """A known key: its form, what it means, and the field of the record it fills."""

    name: str
    form: Form[Any]
    says: str
    required: bool = False
    field: str = ""
    missing: str = ""

    @property
    def fills(self) -> str:
        """The record's field; the key's name with underscores unless another is said."""
        return self.field or self.name.replace("-", "_")

    @property
    def missing_advice(self) -> str:
        """What to write when the key is missing."""
        return self.missing or f"Add `{self.name}:` with {self.form.noun}."


@dataclass(frozen=True, slots=True, kw_only=True)
class Fields:
    """The values read from a mapping; ``sound`` is False when any could not be read."""

    values: dict[str, Any]
    places: dict[str, Place]
    place: Place
    name: str = ""
    sound: bool = True


Check = Callable[[Fields], Iterable[Finding]]


def no_faults(_: Fields) -> tuple[Finding, ...]:
    """Find nothing; for records whose keys do not depend on each other."""
    return ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Record(Form[T]):
    """A mapping with known keys, made into a record by ``make(**values)``.

    ``one_of`` are groups of keys of which exactly one is stated, ``not_both`` pairs that exclude
    each other. ``placed`` passes ``place`` to ``make``, ``named`` passes the entry's ``name``.
    ``lenient`` makes the record even when keys are missing or cannot be read. ``short`` reads a
    plain text standing for the whole record. ``instead`` says what to write in place of keys that
    it lacks though others of its kin have them.
    """

    name: str
    noun: str
    keys: tuple[Key, ...]
    make: Callable[..., T]
    advice: Text = ""
    one_of: tuple[tuple[str, ...], ...] = ()
    not_both: tuple[tuple[str, str], ...] = ()
    placed: bool = True
    named: bool = False
    lenient: bool = False
    short: Form[T] | None = None
    check: Check = no_faults
    instead: MappingOf[str, Text] = field(default_factory=dict)

    @property
    def what_to_write(self) -> Text:
        """Its advice; for a record without an example, the keys it cannot do without."""
        needed = [f"`{key.name}:`" for key in self.keys if key.required] or ["its keys"]
        return self.advice or f"Write {', '.join(needed)} below it, set in."

    def read(self, node: Node, desk: Desk) -> T | None:
        """Return the record."""
        if self.short is not None and isinstance(node, Scalar):
            return self.short.read(node, desk)
        return self.read_named("", node.place, node, desk)

    def read_named(self, name: str, place: Place, node: Node, desk: Desk) -> T | None:
        """Read the record of that name; ``place`` is where the name stands."""
        fields = self.fields(name, place, node, desk)
        return None if fields is None else self.finish(fields, desk)

    def fields(
        self, name: str, place: Place, node: Node, desk: Desk, *, partial: bool = False
    ) -> Fields | None:
        """Return the values of all readable keys; None when the node is no mapping.

        With ``partial`` nothing is required (an entry that overlays another).
        """
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        stated, strays = self._sorted_out(node, desk)
        sound = partial or self._check_stated(stated, strays, place, desk)
        values: dict[str, Any] = {}
        for key in self.keys:
            if key.name not in stated:
                continue
            value = key.form.read(stated[key.name].value, desk)
            if value is None:
                sound = False
            else:
                values[key.fills] = value
        places = {key: entry.key.place for key, entry in stated.items()}
        return Fields(values=values, places=places, place=place, name=name, sound=sound)

    def finish(self, fields: Fields, desk: Desk) -> T | None:
        """Make the record from its values, unless they are not sound."""
        if not fields.sound and not self.lenient:
            return None
        faults = tuple(self.check(fields))
        desk.findings += faults
        if faults and not self.lenient:
            return None
        values = dict(fields.values)
        if self.placed:
            values["place"] = fields.place
        if self.named:
            values["name"] = fields.name
        return self.make(**values)

    def _sorted_out(self, node: Mapping, desk: Desk) -> tuple[dict[str, Entry], list[Entry]]:
        """Return the entries by known key, a misspelt one under the key that was meant."""
        known = {key.name for key in self.keys}
        stated = {each.key.text: each for each in node.entries if each.key.text in known}
        strays = [each for each in node.entries if each.key.text not in known]
        for stray in strays:
            word = stray.key.text
            home = self._home_of(stray, node)
            if home:
                tell_indent(stray, home, desk)
                continue
            if node.flow and isinstance(stray.value, Scalar) and stray.value.empty:
                advice = "A comma ends a value in { }: put a text that holds one in quotes."
                desk.refuse("stray-word", f"{quoted(word)} has no value", stray.key.place, advice)
                continue
            if word in self.instead:
                message, kin = f"unknown key {quoted(word)}", self.instead[word]
                desk.refuse("unknown-key", message, stray.key.place, kin)
                continue
            meant = nearest(word, known - set(stated) - self._excluded(set(stated)))
            odd = blank_finding(stray.key, Complaint("", f"Write `{meant}`.") if meant else None)
            if odd is not None:
                desk.findings.append(odd)
            else:
                advice = did_you_mean(meant or word, {meant} if meant else known)
                desk.refuse("unknown-key", f"unknown key {quoted(word)}", stray.key.place, advice)
            if meant:
                stated[meant] = stray
        return stated, strays

    def _home_of(self, stray: Entry, node: Mapping) -> str:
        """Return where a key that is not known here belongs by its indentation, or nothing."""
        before = node.entries[: node.entries.index(stray)] if not node.flow else ()
        above = next((each for each in reversed(before) if self._has_key(each.key.text)), None)
        form = next((k.form for k in self.keys if above and k.name == above.key.text), None)
        return form.home(stray, f"`{above.key.text}`", above.value) if above and form else ""

    def home(self, entry: Entry, name: str, node: Node) -> str:
        """Return ``name`` where the entry is a key that the record lacks, else look further down.

        Braces say where a mapping ends: nothing is indented out of them.
        """
        if not isinstance(node, Mapping) or node.flow or not node.entries:
            return ""
        last = node.entries[-1]
        below = next((key.form for key in self.keys if key.name == last.key.text), None)
        found = below.home(entry, f"`{last.key.text}`", last.value) if below else ""
        if not found and node.get(entry.key.text) is None and self._has_key(entry.key.text):
            return name
        return found

    def _has_key(self, word: str) -> bool:
        return any(key.name == word for key in self.keys)

    def reads(self, node: Node) -> bool:
        """Tell whether a node is a mapping of this record's keys, as far as they go."""
        return isinstance(node, Mapping) and all(map(self._has_key, _words_of(node)))

    def _excluded(self, stated: set[str]) -> set[str]:
        """Return the keys that cannot stand beside the stated ones."""
        groups = (set(group) for group in (*self.one_of, *self.not_both))
        return {name for group in groups if group & stated for name in group}

    def _check_stated(
        self, stated: dict[str, Entry], strays: list[Entry], place: Place, desk: Desk
    ) -> bool:
        sound = True
        for key in self.keys:
            if key.required and key.name not in stated:
                message = f"`{key.name}` is missing"
                desk.refuse("missing-key", message, place, key.missing_advice)
                sound = False
        for group in self.one_of:
            sound = self._check_group(group, stated, strays, place, desk) and sound
        for pair in self.not_both:
            if all(name in stated for name in pair):
                self._exclude(pair, stated, desk)
                sound = False
        return sound

    def _check_group(
        self,
        group: tuple[str, ...],
        stated: dict[str, Entry],
        strays: list[Entry],
        place: Place,
        desk: Desk,
    ) -> bool:
        present = tuple(name for name in group if name in stated)
        if len(present) > 1:
            self._exclude(present, stated, desk)
        elif not present and not strays:
            names = [f"`{name}`" for name in group]
            wanted = " or ".join(names) if len(names) < 4 else f"one of {', '.join(names)}"
            desk.refuse("missing-key", f"{self.noun} needs {wanted}", place, self.advice)
        return len(present) == 1

    def _exclude(self, names: tuple[str, ...], stated: dict[str, Entry], desk: Desk) -> None:
        message = f"`{names[0]}` and `{names[1]}` exclude each other"
        desk.refuse("one-too-many", message, stated[names[1]].key.place, "Keep one of them.")

    def schema(self, book: Book) -> Schema:
        """Put the schema in the book and return a reference to it."""
        if self.name not in book:
            book[self.name] = {}
            book[self.name] = self.open_schema(book)
        reference: Schema = {"$ref": f"#/$defs/{self.name}"}
        if self.short is None:
            return reference
        return {"anyOf": [self.short.schema(book), reference]}

    def open_schema(self, book: Book, *, partial: bool = False) -> Schema:
        """Return the schema itself, not a reference to it."""
        properties = {
            key.name: {**key.form.schema(book), "description": key.says} for key in self.keys
        }
        schema: Schema = {
            "type": "object",
            "description": self.noun,
            "properties": properties,
            "additionalProperties": False,
        }
        required = [key.name for key in self.keys if key.required]
        if required and not partial:
            schema["required"] = required
        rules = [] if partial else self._schema_rules()
        return {**schema, "allOf": rules} if rules else schema

    def _schema_rules(self) -> list[Schema]:
        groups = [{"oneOf": [{"required": [name]} for name in group]} for group in self.one_of]
        return groups + [{"not": {"required": list(pair)}} for pair in self.not_both]


def _words_of(node: Mapping) -> tuple[str, ...]:
    return tuple(each.key.text for each in node.entries)


def _is_full(node: Node) -> bool:
    return isinstance(node, Mapping) and bool(node.entries)


def tell_indent(entry: Entry, home: str, desk: Desk) -> None:
    """Refuse an entry that is indented too little, and name the mapping it was meant for."""
    word = quoted(entry.key.text)
    advice = f"Indent {word} under {home}."
    desk.refuse("indentation", f"{word} is indented too little", entry.key.place, advice)


def only_name(name: str, _: Node) -> tuple[str, ...]:
    """Return the name alone: what is lost when an entry cannot be read."""
    return (name,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Entries(Form[tuple[T, ...]]):
    """A mapping from names to records.

    ``fault`` returns a Complaint about a name, or None. What cannot be read is left out and its
    name kept at the desk, with the names ``spoils`` gives; ``strict`` spoils the whole mapping
    instead. ``budget`` bounds the entries before one is read.
    """

    record: Record[T]
    noun: str
    fault: Callable[[str], Complaint | None]
    advice: Text = ""
    pattern: str = ".+"
    budget: Budget = LIST
    strict: bool = False
    spoils: Callable[[str, Node], Iterable[str]] = only_name

    def read(self, node: Node, desk: Desk) -> tuple[T, ...] | None:
        """Return the records that can be read, in order."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        if too_many(node.entries, node, desk, self.budget):
            return None
        values: list[T | None] = []
        above: Entry | None = None
        for entry in node.entries:
            home = self._home_of(entry, above) if above and not node.flow else ""
            if above and home:  # what stands above lacks it: neither can be used
                tell_indent(entry, home, desk)
                values[-1] = None
                desk.unread.update(self.spoils(above.key.text, above.value))
            else:
                values.append(self._entry(entry, desk))
                above = entry
        readable = tuple(value for value in values if value is not None)
        return None if self.strict and len(readable) < len(values) else readable

    def _home_of(self, entry: Entry, above: Entry) -> str:
        """Return where an entry that is a key of the records belongs in the one above it."""
        if self.record.reads(entry.value):
            return ""
        return self.record.home(entry, f"`{above.key.text}`", above.value)

    def home(self, entry: Entry, name: str, node: Node) -> str:
        """Return ``name`` where the entry is a record of this kind, else look into the last one."""
        if not isinstance(node, Mapping) or node.flow or not node.entries:
            return ""
        last = node.entries[-1]
        found = self.record.home(entry, f"`{last.key.text}`", last.value)
        return found or (name if _is_full(entry.value) and self.record.reads(entry.value) else "")

    def _entry(self, entry: Entry, desk: Desk) -> T | None:
        name, place = entry.key.text, entry.key.place
        complaint = self.fault(name)
        if complaint is not None:
            odd = blank_finding(entry.key, complaint)
            desk.findings.append(odd or error("name", str(complaint), place, complaint.advice))
        value = self.record.read_named(name, place, entry.value, desk)
        if value is None or complaint is not None:
            if not self.strict:
                desk.unread.update(self.spoils(name, entry.value))
            return None
        return value

    def schema(self, book: Book) -> Schema:
        """Return the schema of a mapping with free keys."""
        return {
            "type": "object",
            "propertyNames": {"pattern": f"^{self.pattern}$"},
            "additionalProperties": self.record.schema(book),
        }
