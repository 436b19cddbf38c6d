"""A plan as stated in ``plan.yaml``."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.access import OPEN
from kerfolio.model.bridges import Bridges
from kerfolio.model.climate import Climate
from kerfolio.model.consumable import Consumable
from kerfolio.model.fastening import Fastening
from kerfolio.model.finish import Finish
from kerfolio.model.hand_bore import HandBore
from kerfolio.model.handwork import Handwork, Marked
from kerfolio.model.joint import Joint, JointFit, Standing
from kerfolio.model.lying import Lying
from kerfolio.model.outline import Drawing
from kerfolio.model.part import Part
from kerfolio.model.person import FRICTION, Person
from kerfolio.model.play import Play
from kerfolio.model.prose import Prose
from kerfolio.model.release_record import ReleaseRecord
from kerfolio.model.router import Router
from kerfolio.model.span import Span
from kerfolio.model.statement import Amount, Named, Spot
from kerfolio.model.swap import Swap

NO_DAY = date(1980, 1, 1)
"""The day of a plan without a release: the earliest that archives can state."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A named number of the plan."""

    name: str
    amount: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Ladder:
    """``17.2 to 18.6 by 0.2``: the thicknesses a plan is for, and the step of its coupon."""

    first: Amount
    last: Amount
    step: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """``0.05 to 0.2``: what readers may choose from, both ends with it."""

    least: Amount
    most: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """The clearance on each side of a joint, and between what a reader may choose it."""

    value: Amount
    reader: Choice | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """Left-over sheets at hand, alike in size (along the grain, across it)."""

    size: tuple[Amount, Amount]
    count: int = 1
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Clamp:
    """A zone at an edge of every sheet that pieces keep clear of.

    ``at`` is its middle along the edge, from the left or from below; ``width`` runs along the
    edge, ``depth`` into the sheet.
    """

    edge: str
    at: tuple[Amount, ...]
    width: Amount
    depth: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetUse:
    """A sheet material the plan is cut from.

    ``ready_made`` are thicknesses of the published range that cut files are made for besides.
    ``size`` is (along the grain, across). ``margin`` is kept clear along the sheet's edges and
    ``gap`` between pieces; both have defaults from the cutter. ``datum`` is where the cut files
    of a sheet have their 0,0: its lower left ``corner`` or its ``centre``. ``also`` are other
    sizes it may be bought in. ``grade`` is what to ask a yard for, in the maker's words, ``title``
    what readers know it by, empty where that of its stock will do.
    """

    name: str
    title: str = ""
    stock: Named
    grade: str = ""
    size: tuple[Amount, Amount] | None = None
    published_for: Ladder | None = None
    ready_made: tuple[Amount, ...] = ()
    drawn_for: Amount | None = None
    fit: Fit | None = None
    margin: Amount | None = None
    gap: Amount | None = None
    datum: str = "corner"
    also: tuple[tuple[Amount, Amount], ...] = ()
    offcuts: tuple[Offcut, ...] = ()
    clamps: tuple[Clamp, ...] = ()
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class FixedTo:
    """That a board lies across a part and is held there, ``by`` a word of ``FIXED_BY``.

    ``apart`` is how far the outermost screws lie from each other across the board, its width where
    not stated.
    """

    part: Named
    by: str
    apart: Amount | None = None
    place: Place = NOWHERE


ALONG = ("x", "y")
"""The ways a board may run on a face, as its part is drawn."""

GLUE, SCREWS, SLOTTED = FIXED_BY = ("glue", "screws", "slotted holes")
"""What holds a board on a part: a glue line, screws in round holes, or in slots."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPlace:
    """Where a board lies: ``on`` names a face or a side of a piece (``rear.back``, ``shelf.left``).

    ``at`` is its middle: on a face from the part's 0,0, on a side along it and from the back face;
    the middle of that face or side where not stated. ``along`` is the way it runs on a face. With
    ``on_edge`` it lies there with its thickness, not with its width. ``step`` is the title of the
    step that adds it, where that is not the one in which the piece joins.
    """

    on: Named
    at: Spot | None = None
    along: str = "x"
    on_edge: bool = False
    step: Named | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class AlsoFor:
    """A sheet that all sheets of a plan may be bought in instead, or the bed they are cut to."""

    size: tuple[Amount, Amount]
    bed: bool = False
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardUse:
    """Solid timber cut to length; ``fixed`` says on which part it lies, and how it is held.

    ``lies`` are the places of as many of them; where none is stated, fastenings tell.
    """

    name: str
    stock: Named
    length: Amount
    count: int = 1
    fixed: FixedTo | None = None
    lies: tuple[BoardPlace, ...] = ()
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareUse:
    """A line of the plan's own hardware list."""

    item: Named
    count: int
    purpose: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class CutSetting:
    """The settings the maker used on a sheet; speeds rpm, feeds mm/min, lengths stated.

    ``passes`` are depths of cut; ``rest`` as the last one goes through the sheet plus ``skim``.
    """

    name: str
    sheet: Named
    cutter: Named
    speed_rpm: float | None = None
    feed_mm_per_min: float | None = None
    plunge_mm_per_min: float | None = None
    passes: tuple[str, ...] = ()
    skim: Amount | None = None
    bridges: Bridges | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Relief:
    """How inside corners are relieved: ``dog-bone``, ``sideways`` or ``none``; for which cutter.

    ``extra`` is by how much the arcs are larger across than the cutter.
    """

    style: str = "dog-bone"
    cutter: Named | None = None
    extra: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A picture file of the plan folder; ``made`` says how it came about when not a photograph."""

    file: str
    alt: str
    cover: bool = False
    made: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the assembly; ``add`` names the pieces that join in it.

    ``bores`` names bores into edges that are made in it, of a part or of a piece; ``marks``,
    ``sands``, ``glues`` and ``clamps`` are other work by hand. ``lies`` is how
    the work lies, ``beside`` says that its pieces are put together apart from what stands,
    ``people`` how many it takes. ``holds`` names pieces that somebody holds meanwhile, ``order``
    one of each lot that comes home after the one before. ``by_hand`` tells those who cut by hand
    what stands in for the machine. ``hardware`` is what the plan states of it, ``fastened`` what
    its fastenings take in it, known once they are settled.
    """

    title: str
    add: tuple[Named, ...] = ()
    bores: tuple[Named, ...] = ()
    marks: tuple[Marked, ...] = ()
    sands: Handwork | None = None
    glues: Handwork | None = None
    clamps: Handwork | None = None
    lies: Lying | None = None
    beside: bool = False
    people: int = 1
    holds: tuple[Named, ...] = ()
    order: tuple[Named, ...] = ()
    tools: tuple[str, ...] = ()
    hardware: tuple[HardwareUse, ...] = ()
    fastened: tuple[HardwareUse, ...] = ()
    minutes: float | None = None
    photo: Photo | None = None
    text: Prose = field(default_factory=Prose)
    by_hand: str = ""
    caution: str = ""
    place: Place = NOWHERE

    @property
    def uses(self) -> tuple[HardwareUse, ...]:
        """All the hardware it takes: what has a place, and what is only listed."""
        return (*self.fastened, *self.hardware)


LYING, CLAMPED, SCREWED, BRACKETS = HOLDS = ("lying", "clamped", "screwed", "brackets")
"""What keeps a thing on what it lies on: nothing but its weight, or that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LiesOn:
    """That an assembly lies on others: on ``supports`` (``stand``, or ``stand.2`` of several).

    ``overhang`` is how far it reaches past the outermost of them, at either end; ``held`` a word of
    ``HOLDS`` for what keeps it there.
    """

    supports: tuple[Named, ...]
    overhang: Amount | None = None
    held: str = LYING
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """One of the things that a plan makes, ``count`` times in a set.

    ``pieces`` name its own pieces, or parts of which every piece is its own. Joints, standing and
    steps are written once and tell of each one made. ``fit`` is that of joints that state none.
    """

    name: str
    title: str = ""
    count: int = 1
    pieces: tuple[Named, ...] = ()
    joints: tuple[Joint, ...] = ()
    fastenings: tuple[Fastening, ...] = ()
    fit: JointFit | None = None
    standing: Standing | None = None
    lies_on: LiesOn | None = None
    steps: tuple[Step, ...] = ()
    place: Place = NOWHERE

    @property
    def parts(self) -> frozenset[str]:
        """The names of the parts that its pieces are made of."""
        return frozenset(each.name.partition(".")[0] for each in self.pieces)

    @property
    def held(self) -> str:
        """What keeps it where it is: ``lying`` where that is nothing but its weight."""
        return self.lies_on.held if self.lies_on else LYING

    def owns(self, label: str) -> bool:
        """Tell whether a piece (``leg.left``) is one of its own."""
        part = label.partition(".")[0]
        return any(each.name in (label, part) for each in self.pieces)


@dataclass(frozen=True, slots=True, kw_only=True)
class Video:
    """A film of the build elsewhere; chapters are (time, title)."""

    url: str
    chapters: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A reader's question and its answer."""

    question: str
    answer: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class Release:
    """A published version with what changed in it; ``errata`` says that earlier ones were wrong."""

    version: str
    date: date
    changed: str
    errata: bool = False
    place: Place = NOWHERE

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the version, for comparing: 1.10 is above 1.9."""
        return tuple(map(int, re.findall(r"\d+", self.version)))

    @property
    def order(self) -> tuple[int, ...]:
        """What releases are sorted by: their day, then their version."""
        return (self.date.toordinal(), *self.numbers)


@dataclass(frozen=True, slots=True, kw_only=True)
class Silence:
    """A rule the maker does not want to hear from in this plan, and why."""

    rule: str
    reason: str
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Everything a ``plan.yaml`` states. ``name`` is its folder's name; ``units`` mm or in.

    ``unread`` names the parts, sheets, sizes, boards and pieces that stand in the file but could
    not be read, so that nothing that refers to them is blamed; ``as_far`` is the plan with all that
    can be read of such parts, for a look, None where there is none. ``layout_text`` is the frozen
    ``layout.json`` as found beside the plan, empty when there is none, ``other_layouts`` are those
    of ``also_for`` by their labels. ``records`` are those of its releases beside it, by version.
    ``for_children`` is the maker's word that children will use what is built, ``readers_measured``
    that the page tells what readers measured and sent. ``show`` are the words of ``showing.py`` for
    what everybody may see of a plan for supporters. ``placed`` and ``uses`` are words of
    ``use.py``: where it stands, empty when not stated, and what is done with it, by ``person``, on
    a floor of ``friction``. ``climate`` is where it lives, ``finish`` what is put on it, None when
    not stated. ``fit`` is that of joints for which none is stated nearer to them,
    ``play`` the workshop's word for what is tight and what is loose, ``hand`` for how far a bore by
    hand may be off. ``swaps`` are materials to be compared with its own. ``hardware`` is the list
    it states, ``fastened`` what fastenings take where no step can tell it. ``bed`` is that of the
    workshop's machine, mm; None where none is stated. ``machine`` is what that can do. ``circle``
    names whose plan it is, ``opens_to_all`` the day from which everybody may load it.
    """

    name: str
    title: str
    version: str
    summary: str
    category: str = ""
    tags: tuple[str, ...] = ()
    units: str = "mm"
    licence: str = ""
    access: str = OPEN
    circle: Named | None = None
    opens_to_all: date | None = None
    show: tuple[str, ...] = ()
    story: Prose = field(default_factory=Prose)
    sizes: tuple[Size, ...] = ()
    sheets: tuple[SheetUse, ...] = ()
    boards: tuple[BoardUse, ...] = ()
    parts: tuple[Part, ...] = ()
    joints: tuple[Joint, ...] = ()
    fastenings: tuple[Fastening, ...] = ()
    fit: JointFit | None = None
    hand: HandBore = field(default_factory=HandBore)
    play: Play = field(default_factory=Play)
    standing: Standing | None = None
    placed: str = ""
    climate: Climate | None = None
    finish: Finish | None = None
    uses: tuple[str, ...] = ()
    person: Person = field(default_factory=Person)
    friction: float = FRICTION
    assemblies: tuple[Assembly, ...] = ()
    hardware: tuple[HardwareUse, ...] = ()
    fastened: tuple[HardwareUse, ...] = ()
    cut_files: tuple[str, ...] = ()
    cuts: tuple[CutSetting, ...] = ()
    relief: Relief = field(default_factory=Relief)
    spans: tuple[Span, ...] = ()
    swaps: tuple[Swap, ...] = ()
    bed: tuple[float, float] | None = None
    machine: Router = field(default_factory=Router)
    also_for: tuple[AlsoFor, ...] = ()
    consumables: tuple[Consumable, ...] = ()
    cautions: tuple[str, ...] = ()
    steps: tuple[Step, ...] = ()
    photos: tuple[Photo, ...] = ()
    video: Video | None = None
    questions: tuple[Question, ...] = ()
    for_children: bool = False
    readers_measured: bool = False
    silences: tuple[Silence, ...] = ()
    releases: tuple[Release, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    layout_text: str = ""
    other_layouts: tuple[tuple[str, str], ...] = ()
    records: tuple[ReleaseRecord, ...] = ()
    unread: tuple[str, ...] = ()
    as_far: Plan | None = None
    place: Place = NOWHERE

    def part(self, name: str) -> Part:
        """Return the part of that name; KeyError when the plan has none."""
        for each in self.parts:
            if each.name == name:
                return each
        raise KeyError(name)

    def laid(self, part: str) -> LiesOn | None:
        """Return how a part's assembly lies on others; None where it does not."""
        for each in self.assemblies:
            if each.lies_on and part in each.parts:
                return each.lies_on
        return None

    @property
    def is_open(self) -> bool:
        """Whether everybody may load its bundle."""
        return self.access == OPEN

    def shows(self, word: str) -> bool:
        """Tell whether everybody may see what a word of ``showing.py`` stands for."""
        return self.is_open or word in self.show

    @property
    def is_set(self) -> bool:
        """Whether it makes several things, or one of them several times."""
        return bool(self.assemblies)

    @property
    def made(self) -> tuple[Assembly, ...]:
        """The things it makes: of a plan that states none, the whole as one."""
        if self.assemblies:
            return self.assemblies
        whole = Assembly(
            name="",
            title=self.title,
            pieces=tuple(Named(part.name) for part in self.parts),
            joints=self.joints,
            fastenings=self.fastenings,
            fit=self.fit,
            standing=self.standing,
            steps=self.steps,
            place=self.place,
        )
        return (whole,)

    @property
    def listed(self) -> tuple[HardwareUse, ...]:
        """The hardware that no step takes: its own list, and fastenings of a plan without steps."""
        return (*self.fastened, *self.hardware)

    @property
    def fits(self) -> tuple[tuple[Joint, JointFit | None], ...]:
        """Every joint with the fit stated nearest to it: its own, its assembly's, the plan's."""
        return tuple(
            (joint, (joint.fit or each.fit or self.fit) if joint.kind.takes else None)
            for each in self.made
            for joint in each.joints
        )

    @property
    def minutes(self) -> float:
        """What all steps take for everything it makes, as far as they say so."""
        return sum(each.count * (step.minutes or 0) for each in self.made for step in each.steps)

    @property
    def pictured(self) -> tuple[Photo, ...]:
        """Every photo, those of the steps too."""
        steps = (step for each in self.made for step in each.steps)
        return (*self.photos, *(step.photo for step in steps if step.photo))

    @property
    def record(self) -> ReleaseRecord | None:
        """The record of its version; None where there is none."""
        return next((each for each in self.records if each.version == self.version), None)

    @property
    def released(self) -> date:
        """The day of the plan's version, else of its newest release: outputs carry no other day."""
        days = {release.version: release.date for release in self.releases}
        return days.get(self.version, max(days.values(), default=NO_DAY))
