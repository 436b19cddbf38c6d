"""The form of ``plan.yaml``, and the reading of one plan's folder."""

from __future__ import annotations

from collections.abc import Mapping as Map
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from kerfolio.basis.budgets import TAGS
from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression import parse
from kerfolio.basis.finding import Finding, in_unit
from kerfolio.basis.functions import CONSTANTS, FUNCTIONS, SHEET_FUNCTIONS
from kerfolio.basis.names import is_plan_name, name_of, nearest
from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, written
from kerfolio.model.access import OPEN, SUPPORTERS
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan, Size
from kerfolio.model.showing import SHOWABLE
from kerfolio.model.statement import Amount
from kerfolio.model.use import PLACED, USES
from kerfolio.reading.also_for import ALSO_FOR
from kerfolio.reading.amounts import ANY_AMOUNT, AmountForm, size_name_fault
from kerfolio.reading.assembly import ASSEMBLIES, MAKES, made_of, making_faults
from kerfolio.reading.consumable import CONSUMABLES
from kerfolio.reading.counts import Counts
from kerfolio.reading.cut import CUTS, RELIEF
from kerfolio.reading.desk import Desk
from kerfolio.reading.drawn_said import said_of_drawings
from kerfolio.reading.fastening import FASTENINGS
from kerfolio.reading.finish import FINISH, ClimateForm
from kerfolio.reading.fit import JOINT_FIT
from kerfolio.reading.forms import Book, Form, ListOf, Schema
from kerfolio.reading.incomplete import PARTS
from kerfolio.reading.joint import JOINTS, STANDING
from kerfolio.reading.licences import LICENCE
from kerfolio.reading.mates import with_mates
from kerfolio.reading.nodes import Mapping, Node, Scalar
from kerfolio.reading.person import FRICTION, PERSON
from kerfolio.reading.prose import PROSE
from kerfolio.reading.record import Key, Record
from kerfolio.reading.release import PHOTOS, QUESTIONS, RELEASES, VIDEO, in_sequence
from kerfolio.reading.sheet import BOARDS, SHEETS
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.silence import SILENCE
from kerfolio.reading.span import SPANS
from kerfolio.reading.step import HARDWARE, STEPS
from kerfolio.reading.swap import SWAPS
from kerfolio.reading.values import (
    CUT_FILES,
    DATE,
    FLAG,
    NAMED,
    SCALAR,
    SUMMARY_TEXT,
    TEXTS,
    TITLE_TEXT,
    VERSION,
    WORDS_TEXT,
    choice,
)
from kerfolio.reading.yaml_text import read_yaml

_FILE = "plan.yaml"
_A_SIZE = written("seat: 360", "seat: 14", "Write `{}`, a size each.")
_SIZE = AmountForm(
    noun="a number or expression",
    advice=ANY_AMOUNT,
)


_SIZES_SAY = (
    "Named numbers; every length may use them. Expressions know + - * / **, "
    f"{', '.join(FUNCTIONS)} (angles in degrees), {' and '.join(SHEET_FUNCTIONS)} of a sheet, and "
    f"{', '.join(CONSTANTS)}."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizesForm(Form[tuple[Size, ...]]):
    """Named numbers; cycles among them are told with their chain."""

    noun: str = "sizes by name"
    advice: Text = _A_SIZE

    def read(self, node: Node, desk: Desk) -> tuple[Size, ...] | None:
        """Return the sizes that have a value; the names of the others are kept at the desk."""
        if not isinstance(node, Mapping):
            self.refuse(node, desk)
            return None
        sizes: dict[str, Size] = {}
        for entry in node.entries:
            name, place = entry.key.text, entry.key.place
            fault = size_name_fault(name)
            if fault is None and name in (desk.sheets or ()):
                fault = Complaint(f"`{name}` is a sheet too", "Give the size another name.")
            if fault is not None:
                desk.complain("name", fault, place)
            amount = _SIZE.read(entry.value, desk)
            if amount is None or fault is not None:
                desk.unread.add(name)
            else:
                sizes[name] = Size(name=name, amount=amount, place=place)
        _tell_cycles(sizes, desk)
        _spread_unread(sizes, desk)
        return tuple(size for size in sizes.values() if size.name not in desk.unread)

    def schema(self, book: Book) -> Schema:  # noqa: ARG002 - nothing of it is named
        """Return the schema of a mapping from name to number or text."""
        return {
            "type": "object",
            "propertyNames": {"pattern": "^[a-z][a-z0-9_]*$"},
            "additionalProperties": dict(SCALAR),
        }


def _uses(amount: Amount, unit: str) -> tuple[str, ...]:
    expression = parse(amount.text, unit)
    return () if isinstance(expression, Complaint) else expression.names


def _tell_cycles(sizes: Map[str, Size], desk: Desk) -> None:
    """Refuse every ring of sizes once, where its first size in the file stands."""
    uses = {name: _uses(size.amount, desk.unit) for name, size in sizes.items()}
    told: set[str] = set()
    for name, size in sizes.items():
        if name in told:
            continue
        chain = _ring(name, uses)
        if chain and not told.intersection(chain):
            told.update(chain)
            shown = " -> ".join(chain)
            message = f"`{name}` depends on itself: {shown}"
            desk.refuse("size-cycle", message, size.amount.place, "State one of them as a number.")
    desk.unread.update(told)


def _ring(start: str, uses: Map[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Return a shortest chain from a size back to itself, or nothing."""
    came_from: dict[str, str] = {}
    wave = [start]
    while wave:
        following: list[str] = []
        for name in wave:
            for used in uses.get(name, ()):
                if used == start:
                    return (*_way(start, name, came_from), start)
                if used not in came_from:
                    came_from[used] = name
                    following.append(used)
        wave = following
    return ()


def _way(start: str, end: str, came_from: Map[str, str]) -> tuple[str, ...]:
    way = [end]
    while way[-1] != start:
        way.append(came_from[way[-1]])
    return tuple(reversed(way))


def _spread_unread(sizes: Map[str, Size], desk: Desk) -> None:
    """Count as unread what depends on an unread size, so that nothing is blamed twice."""
    grown = True
    while grown:
        lost = [
            name
            for name, size in sizes.items()
            if name not in desk.unread and desk.unread & set(_uses(size.amount, desk.unit))
        ]
        desk.unread.update(lost)
        grown = bool(lost)


def _make_plan(
    title: str = "",
    version: str = "",
    summary: str = "",
    makes: int | Counts = 1,
    **values: Any,
) -> Plan:
    return made_of(Plan(title=title, version=version, summary=summary, **values), makes)


SHOW: ListOf[str] = ListOf(
    item=choice("a word for what is shown", *SHOWABLE),
    noun="a list of what is shown",
    advice="Write `[photos, steps]`, say.",
    single=True,
)
_TAGS: ListOf[str] = ListOf(
    item=WORDS_TEXT,
    noun="a list of tags",
    advice="Write `[gifts, one evening]`, say.",
    budget=TAGS,
    single=True,
)
_USES: ListOf[str] = ListOf(
    item=choice("a use", *USES),
    noun="a list of uses",
    advice="Write `[sit in the middle, lean on]`, say.",
    least=1,
    single=True,
)
PLAN: Record[Plan] = Record(
    name="plan",
    noun="a plan",
    keys=(
        Key(name="plan", form=TITLE_TEXT, says="The plan's title.", required=True, field="title"),
        Key(name="version", form=VERSION, says="The newest of `releases`.", required=True),
        Key(name="summary", form=SUMMARY_TEXT, says="One sentence on what it is.", required=True),
        Key(name="category", form=WORDS_TEXT, says="What kind of thing it is: `seats`, say."),
        Key(name="tags", form=_TAGS, says="Other words to find it by among the plans."),
        Key(name="story", form=PROSE, says="The maker's own words, in Markdown."),
        Key(name="units", form=choice("a unit", "mm", "in"), says="The unit of bare numbers."),
        Key(name="licence", form=LICENCE, says="SPDX id of the plan's licence."),
        Key(name="access", form=choice("an access", OPEN, SUPPORTERS), says="Who may load it."),
        Key(name="circle", form=NAMED, says="Whose plan it is: a circle of the workshop."),
        Key(
            name="opens-to-all",
            form=DATE,
            says="From which day everybody may load a supporters' plan.",
        ),
        Key(name="show", form=SHOW, says="What everybody sees of a supporters' plan, besides."),
        Key(name="sheets", form=SHEETS, says="Sheet materials it is cut from."),
        Key(name="also-for", form=ALSO_FOR, says="Other sheets and beds it is laid out for."),
        Key(name="sizes", form=SizesForm(), says=_SIZES_SAY),
        Key(name="boards", form=BOARDS, says="Solid timber cut to length."),
        Key(name="relief", form=RELIEF, says="How inside corners are relieved."),
        Key(name="parts", form=PARTS, says="The parts, by name.", required=True),
        Key(name="joints", form=JOINTS, says="Which features meet."),
        Key(name="fastenings", form=FASTENINGS, says="Hardware with what it joins."),
        Key(
            name="joint-fit",
            form=JOINT_FIT,
            says="The fit of all joints that state none.",
            field="fit",
        ),
        Key(name="standing", form=STANDING, says="How the whole stands, where that is left open."),
        Key(
            name="placed",
            form=choice("a place to stand", *PLACED),
            says="Where it stands: it decides which cautions fit.",
        ),
        Key(
            name="place",
            form=ClimateForm(),
            says="How damp the place is that it lives in: joints get room to swell.",
            field="climate",
        ),
        Key(name="finish", form=FINISH, says="What is put on it, and when."),
        Key(name="uses", form=_USES, says="What is done with it."),
        Key(name="person", form=PERSON, says="Who sits on it, leans on it or planes along it."),
        Key(name="friction", form=FRICTION, says="Between its feet and the floor; 0.3 if unsaid."),
        Key(name="assemblies", form=ASSEMBLIES, says="The things it makes, if several."),
        Key(name="makes", form=MAKES, says="How many of each it makes."),
        Key(name="hardware", form=HARDWARE, says="All the hardware."),
        Key(name="cut-files", form=CUT_FILES, says="Units of its cut files: mm, or both."),
        Key(name="cuts", form=CUTS, says="Cut settings the maker used."),
        Key(name="spans", form=SPANS, says="What parts carry, to have it reckoned."),
        Key(name="swaps", form=SWAPS, says="Other sheet stock to compare its own with."),
        Key(name="consumables", form=CONSUMABLES, says="What a copy uses up, with prices."),
        Key(name="cautions", form=TEXTS, says="Warnings beside the usual ones."),
        Key(name="steps", form=STEPS, says="The assembly, a step each."),
        Key(name="photos", form=PHOTOS, says="Pictures of the finished thing."),
        Key(name="video", form=VIDEO, says="A film of the build."),
        Key(name="questions", form=QUESTIONS, says="Readers' questions with answers."),
        Key(name="for-children", form=FLAG, says="Whether children will use it."),
        Key(
            name="readers-measured",
            form=FLAG,
            says="True to tell on its page what readers measured and sent.",
        ),
        Key(
            name="silence",
            form=SILENCE,
            says="Rules not to hear from, with reasons.",
            field="silences",
        ),
        Key(name="releases", form=RELEASES, says="Every published version."),
    ),
    make=_make_plan,
    advice="Begin with `plan: Title`, then `version:`, `summary:`, `sheets:` and `parts:`.",
    named=True,
    lenient=True,
    check=making_faults,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRead:
    """What came of reading one plan; ``pictures`` are by the path written in the plan."""

    plan: Plan | None
    pictures: Map[str, Pixels]
    findings: tuple[Finding, ...]


def read_plan(
    content: bytes, name: str, shelf: Shelf, unread: frozenset[str] = frozenset()
) -> PlanRead:
    """Read the text of a ``plan.yaml`` whose files lie on a shelf.

    ``unread`` names stock that could not be read: what needs it is left out without blame.
    """
    file = shelf.shown(_FILE)
    node, faults = read_yaml(content, file)
    if node is None:
        return PlanRead(plan=None, pictures={}, findings=faults)
    said, twice = said_of_drawings(node)
    desk = Desk(
        unit=_stated_unit(node),
        sizes=_stated_names(node, "sizes"),
        sheets=_stated_names(node, "sheets"),
        shelf=shelf,
        said=said,
    )
    desk.findings += (*faults, *twice)
    desk.unread.update(unread)
    plan = PLAN.read_named(name, Place(file, 1, 1), node, desk)
    if plan is not None:
        before = desk.aside()
        whole = _completed(with_mates(plan, desk), desk)
        plan = replace(whole, as_far=_as_far(plan, desk.incomplete, before))
    told = in_unit(desk.findings, desk.unit)
    return PlanRead(plan=plan, pictures=desk.decoded, findings=told)


def _as_far(plan: Plan, incomplete: Sequence[Part], desk: Desk) -> Plan | None:
    """Return a plan with what can be read of its ``incomplete`` parts; None where all can be."""
    if not incomplete:
        return None
    known = {label for each in incomplete for label in (each.name, *each.labels)}
    desk.unread -= known
    parts = sorted((*plan.parts, *incomplete), key=lambda each: each.place)
    made = _completed(with_mates(replace(plan, parts=tuple(parts)), desk), desk)
    return replace(made, unread=tuple(sorted({*made.unread, *known})))


def _completed(plan: Plan, desk: Desk) -> Plan:
    """Add what was gathered at the desk; a version that cannot be read passes for the newest."""
    releases = in_sequence(plan.releases)
    return replace(
        plan,
        version=plan.version or (releases[-1].version if releases else ""),
        releases=releases,
        drawings=tuple(desk.drawings[file] for file in sorted(desk.drawings)),
        unread=tuple(sorted(desk.unread)),
    )


def _stated_unit(node: Node) -> str:
    stated = node.get("units") if isinstance(node, Mapping) else None
    return "in" if isinstance(stated, Scalar) and stated.text.strip() == "in" else "mm"


def _stated_names(node: Node, section: str) -> frozenset[str] | None:
    """Return the names of a section, also where its key is misspelt; None when it is no mapping."""
    stated: Node | None = None
    if isinstance(node, Mapping):
        keys = [each.key.text for each in node.entries]
        known = {key.name for key in PLAN.keys}
        strays = [key for key in keys if key not in known and nearest(key, known) == section]
        stated = node.get(section) or (node.get(strays[0]) if strays else None)
    if stated is None:
        return frozenset()
    if not isinstance(stated, Mapping):
        return None
    return frozenset(each.key.text for each in stated.entries)


def plan_name_fault(name: str) -> Complaint | None:
    """Return what is wrong with the name of a plan's folder, which becomes its address."""
    if is_plan_name(name):
        return None
    fixed = name_of(name)
    advice = "Rename it: lower case letters, digits and inner hyphens."
    if is_plan_name(fixed):
        advice = f"Rename it `{fixed}`: lower case letters, digits and inner hyphens."
    return Complaint(f"the folder `{name}` is no plan's name", advice)
