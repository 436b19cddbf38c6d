"""``kerfolio adopt``: a drawing of a whole project becomes a plan folder."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from kerfolio.adopting.adopted import Adopted, Sheet, adopted
from kerfolio.adopting.again import Moved, again
from kerfolio.adopting.agreeing import Deviation, deviations
from kerfolio.adopting.cleaned import cleaned
from kerfolio.adopting.clears import clears
from kerfolio.adopting.naming import steady
from kerfolio.adopting.nested import is_sold
from kerfolio.adopting.plan_text import (
    AdoptedText,
    Bought,
    Relieved,
    Wanted,
    plan_text,
    steps_text,
)
from kerfolio.adopting.shape import Question
from kerfolio.adopting.unit_names import UNITS
from kerfolio.adopting.units import Sold, units_by_likelihood
from kerfolio.adopting.ways_round import ways_round
from kerfolio.assembly.told import told_steps
from kerfolio.basis.digits import digits
from kerfolio.basis.finding import Finding, error, has_errors
from kerfolio.basis.names import is_plan_name, name_of
from kerfolio.basis.place import Place
from kerfolio.disk.put import put
from kerfolio.model.outline import Drawing
from kerfolio.model.statement import Named
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.publishing.adopted_record import FILE, AdoptedRecord, record_in
from kerfolio.publishing.adopted_report import adopted_report
from kerfolio.publishing.drawing_out import is_drawn_out, taken_back
from kerfolio.reading.drawn_dxf import read_dxf
from kerfolio.reading.drawn_said import NOTHING_SAID, SaidOfDrawing
from kerfolio.reading.drawn_svg import read_svg
from kerfolio.reading.drawn_unit import stated_unit
from kerfolio.reading.workshop import Shared, read_shared, with_plans
from kerfolio.settling.settle import settle
from kerfolio.settling.titles import pieces_called

_ROUNDS = 3
"""So often is a plan proved and told which way round its pieces go."""

_RELIEVED = 0.2
"""A dog-bone is drawn so much wider or narrower, mm, than its cutter."""

_THIN, _OF_THIN = 7.0, 0.6
"""Thinner sheets, mm, want a cutter of so large a share of their thickness at most, so that the
walls of fingers keep a third of it between two dog-bones."""

_NEAR = 0.15
"""A sheet is sold so much thinner or thicker, mm, than it is drawn."""

Ask = Callable[[Question], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptRequest:
    """Which drawing becomes which plan of which workshop; ``unit`` is what it is in, if said.

    ``ask`` is asked what the drawing leaves open; None: what is likeliest is taken.
    """

    drawing: Path
    workshop: Path
    into: str = ""
    unit: str = ""
    day: date
    ask: Ask | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AdoptedPlan:
    """What was written, and how it was found: nothing is written where ``files`` are none.

    ``answers`` were given or taken; ``deviations`` say where the plan is not as drawn. Of a newer
    drawing ``moved`` is what it changed, ``kept`` what its maker had changed by hand.
    """

    name: str
    files: tuple[Path, ...] = ()
    found: Adopted | None = None
    questions: tuple[Question, ...] = ()
    answers: Mapping[str, str] | None = None
    deviations: tuple[Deviation, ...] = ()
    proof: Proof | None = None
    moved: tuple[Moved, ...] = ()
    kept: tuple[Moved, ...] = ()
    findings: tuple[Finding, ...] = ()


def adopt(request: AdoptRequest) -> AdoptedPlan:
    """Read a drawing and write the plan that it is. Raises OSError when the disk refuses."""
    name = request.into or name_of(request.drawing.stem)
    refused = tuple(_refusals(request, name))
    shared, unread = read_shared(request.workshop, pictures=False) if not refused else (None, ())
    if shared is None:
        return AdoptedPlan(name=name, findings=(*refused, *unread))
    said = stated_unit(request.drawing)
    drawing, told = _drawing(request, said)
    if drawing is None:
        return AdoptedPlan(name=name, findings=told)
    folder = request.workshop / "plans" / name
    record = record_in(folder)
    if name in shared.plans:
        back = _back(request, name, drawing, shared, refuse=record is None)
        if back is not None:
            return back
    inquiry = _Inquiry(request.ask, record.answers if record else {})
    found, unit = _found(request, drawing, said, shared.stock, inquiry)
    if not found.parts:
        advice = "Draw each piece as a closed line; text and pictures are not cut."
        nothing = error("empty-drawing", "no piece in the drawing", Place(drawing.file), advice)
        return AdoptedPlan(name=name, findings=(*told, nothing))
    found = replace(found, parts=steady(found.parts, record.parts if record else {}))
    wanted = _wanted(request, name, found, shared, unit, inquiry)
    text, proof = _proved(found, wanted, shared, name)
    written = {"plan.yaml": text.plan, **text.drawings}
    merged = _merged(written, record, folder)
    if merged.moved or merged.kept:
        text = replace(text, plan=merged.files["plan.yaml"])
        with _bench(shared) as shop:
            proof = _proof(text, shop, name)
    files = {folder / file: content for file, content in merged.files.items()}
    files[folder / FILE] = AdoptedRecord(
        drawing=request.drawing.name,
        answers=inquiry.answers,
        parts={p.name: (*p.made.draft.size, len(p.numbers)) for p in found.parts},
        files=written,
    ).text()
    if shared.identity is not None:
        page = adopted_report(
            found, inquiry.asked, inquiry.answers, proof, shared.identity, wanted.title
        )
        files[request.workshop / ".kerfolio" / "adopted" / f"{name}.html"] = page
    for file, content in files.items():
        put(file, content.encode())
    return AdoptedPlan(
        name=name,
        files=tuple(files),
        found=found,
        questions=inquiry.asked,
        answers=inquiry.answers,
        deviations=_deviations(found, proof),
        proof=proof,
        moved=merged.moved,
        kept=merged.kept,
        findings=(*told, *proof.findings),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Merged:
    """Files as they are to stand, what a newer drawing moved, what the maker's lines keep."""

    files: Mapping[str, str]
    moved: tuple[Moved, ...] = ()
    kept: tuple[Moved, ...] = ()


def _merged(written: Mapping[str, str], record: AdoptedRecord | None, folder: Path) -> _Merged:
    """Return what is written with what the maker made of what was written before."""
    if record is None or not (folder / "plan.yaml").exists():
        return _Merged(files=written)
    mine = (folder / "plan.yaml").read_text("utf-8")
    plan = again(record.files.get("plan.yaml", ""), written["plan.yaml"], mine)
    files, kept = {"plan.yaml": plan.text}, list(plan.kept)
    for file, content in written.items():
        there = folder / file
        if file == "plan.yaml":
            continue
        is_own = there.exists() and there.read_text("utf-8") != record.files.get(file)
        if is_own and record.files.get(file) != content:
            kept.append(Moved((file,), "changed by hand", "differs in the newer drawing"))
        elif not is_own:
            files[file] = content
    return _Merged(files=files, moved=plan.moved, kept=tuple(kept))


def _back(
    request: AdoptRequest, name: str, drawing: Drawing, shared: Shared, *, refuse: bool
) -> AdoptedPlan | None:
    """Read a drawing that ``draw`` wrote back into its plan; another one is refused, or left."""
    read, findings = with_plans(shared, [name])
    plan = read.plans[0] if read and read.plans else None
    if not refuse and (plan is None or not is_drawn_out(drawing, plan)):
        return None
    if plan is None or not is_drawn_out(drawing, plan):
        advice = "Name another plan with `--into`; what `kerfolio draw` wrote is read back."
        place = Place(f"plans/{name}")
        there = error("not-empty", f"there is a plan `{name}` already", place, advice)
        return AdoptedPlan(name=name, findings=(*findings, there))
    taken = taken_back(drawing, plan, shared.stock, request.workshop / "plans" / name)
    return AdoptedPlan(name=name, files=taken.files, findings=taken.findings)


class _Inquiry:
    """What was asked and answered so far."""

    def __init__(self, ask: Ask | None, known: Mapping[str, str]) -> None:
        self._ask, self._known = ask, known
        self.answers: dict[str, str] = {}
        self._asked: dict[str, Question] = {}

    @property
    def asked(self) -> tuple[Question, ...]:
        """All questions, in their order."""
        return tuple(self._asked.values())

    def answer(self, question: Question) -> str:
        """Return the answer to a question, which is asked once."""
        if question.key not in self.answers:
            given = self._known.get(question.key, "")
            if given not in question.answers:
                given = self._ask(question) if self._ask else question.default
            self._asked[question.key] = question
            self.answers[question.key] = given if given in question.answers else question.default
        return self.answers[question.key]

    def is_open(self, questions: Iterable[Question]) -> bool:
        """Ask what was not asked yet; tell whether an answer differs from what was taken."""
        changed = False
        for each in questions:
            if each.key not in self.answers:
                changed = self.answer(each) != each.default or changed
        return changed


def _refusals(request: AdoptRequest, name: str) -> Iterator[Finding]:
    place = Place(request.drawing.name)
    if not request.drawing.is_file():
        yield error("missing-file", f"no drawing `{request.drawing}`", place, "Check its name.")
    elif request.drawing.suffix.lower() not in (".svg", ".dxf"):
        advice = "Save it as SVG or DXF."
        yield error("unreadable-drawing", "neither SVG nor DXF", place, advice)
    if not is_plan_name(name):
        advice = "Name the plan with small letters, digits and hyphens: `--into garden-bench`."
        yield error("bad-name", f"`{name}` is no plan name", Place("plans"), advice)


def _drawing(request: AdoptRequest, said: str) -> tuple[Drawing | None, tuple[Finding, ...]]:
    """Return the drawing, in mm where it states a unit or ``unit`` does, else in its numbers."""
    path = request.drawing
    asked = NOTHING_SAID if said else SaidOfDrawing(unit=Named("mm"))
    read = read_dxf if path.suffix.lower() == ".dxf" else read_svg
    return read(path, path.name, art=True, asked=asked, named=True)


def _found(
    request: AdoptRequest, drawing: Drawing, said: str, stock: Stock, inquiry: _Inquiry
) -> tuple[Adopted, str]:
    """Return what the drawing is, and the unit that it counts in: as ``said`` in it, else asked."""
    scale, unit = 1.0, said
    if not said:
        unit = request.unit or inquiry.answer(_unit_question(drawing, stock))
        scale = UNITS.get(unit, 1.0)
    sizes = [size for each in stock.sheets for size in each.sizes]
    while True:
        clean = cleaned(drawing, scale, inquiry.answers)
        texts = tuple(
            replace(each, at=(each.at[0] * scale, each.at[1] * scale)) for each in drawing.texts
        )
        found = adopted(clean, texts, sizes, inquiry.answers)
        if not inquiry.is_open(found.questions):
            return found, unit


def _unit_question(drawing: Drawing, stock: Stock) -> Question:
    sold = Sold(
        thick=tuple((each.least, each.most) for each in stock.sheets),
        sizes=tuple(size for each in stock.sheets for size in each.sizes),
    )
    likely = units_by_likelihood(cleaned(drawing).closed, sold)
    return Question(key="unit", words="which unit is the drawing in?", answers=likely)


def _wanted(
    request: AdoptRequest,
    name: str,
    found: Adopted,
    shared: Shared,
    unit: str,
    inquiry: _Inquiry,
) -> Wanted:
    plan_unit = "in" if unit in ("in", "ft") else "mm"
    stock = shared.stock
    bought = {e.name: _bought(e, found, stock, plan_unit, inquiry) for e in found.sheets}
    return Wanted(
        title=name.replace("-", " ").capitalize(),
        unit=plan_unit,
        day=request.day,
        file=request.drawing.name,
        bought=bought,
        relief=_relief(found, stock, plan_unit),
        clears=clears(stock),
    )


def _relief(found: Adopted, stock: Stock, unit: str) -> Relieved:
    """Return what the drawing is relieved for, or what sheets so thin want; else the usual."""
    radius = found.relief
    plain = [each for each in stock.cutters if not each.angle]
    if radius is not None:
        drawn = [each.name for each in plain if abs(each.diameter - 2 * radius) < _RELIEVED]
        return Relieved(cutter=min(drawn, default=""))
    thin = min((each.drawn.mm for each in found.sheets), default=_THIN)
    if thin >= _THIN or not plain:
        return Relieved()
    plain.sort(key=lambda e: (_is_in_inches(e.title) != (unit == "in"), -e.diameter, e.name))
    small = [each for each in plain if each.diameter <= _OF_THIN * thin]
    least = min(plain, key=lambda each: each.diameter)
    return Relieved(cutter=small[0].name) if small else Relieved(cutter=least.name, style="none")


def _is_in_inches(title: str) -> bool:
    """Tell whether something is sold by inches, as its title says."""
    return "category" in title or " in" in title


def _bought(sheet: Sheet, found: Adopted, stock: Stock, unit: str, inquiry: _Inquiry) -> Bought:
    mm = sheet.drawn.mm

    def away(each: SheetStock) -> tuple[object, ...]:
        outside = max(0.0, each.least - _NEAR - mm, mm - each.most - _NEAR)
        is_ply = each.plies is not None
        is_other = _is_in_inches(each.title) != (unit == "in")
        return (outside, is_other, not is_ply, abs(each.actual - mm))

    order = sorted(range(len(stock.sheets)), key=lambda i: (away(stock.sheets[i]), i))
    names = [stock.sheets[i].name for i in order]
    fitting = [
        name
        for name, i in zip(names, order, strict=True)
        if stock.sheets[i].least - _NEAR <= mm <= stock.sheets[i].most + _NEAR
    ]
    words = f"which stock is `{sheet.name}`, drawn {digits(mm, 2)} mm thick, cut from?"
    question = Question(key=f"stock {sheet.name}", words=words, answers=tuple(fitting or names[:5]))
    chosen = stock.sheet(inquiry.answer(question))
    assert chosen is not None, "an answer is one of the stock's"
    size = next((s for s in found.nested.sheets if is_sold(s, chosen.sizes)), chosen.sizes[0])
    along = max(size), min(size)
    return Bought(stock=chosen.name, least=chosen.least, most=chosen.most, size=along)


def _proved(found: Adopted, wanted: Wanted, shared: Shared, name: str) -> tuple[AdoptedText, Proof]:
    """Return the plan's text with its joints' ways and its steps, and its proof."""
    with _bench(shared) as shop:
        ways: dict[str, str] = {}
        for _ in range(_ROUNDS):
            proof = _proof(plan_text(found, wanted), shop, name)
            more = ways_round(found, proof.findings, ways)
            if not more:
                break
            ways |= more
            wanted = replace(wanted, ways=tuple(ways.values()))
        builds = [made.build for made in proof.made if made.build is not None]
        if not builds and proof.drawn is not None:
            wanted = replace(wanted, steps=steps_text((), found.unplaced))
        elif proof.drawn is not None:
            steps = told_steps(builds[0].order, pieces_called(proof.plan))
            wanted = replace(wanted, steps=steps_text(steps, found.unplaced))
        text = plan_text(found, wanted)
        return text, _proof(text, shop, name)


@contextmanager
def _bench(shared: Shared) -> Iterator[Path]:
    """Yield a workshop to try plans in, with the stock of another."""
    with TemporaryDirectory() as folder:
        shop = Path(folder) / "shop"
        shop.mkdir()
        for each in ("workshop.yaml", "stock"):
            source = shared.folder / each
            if source.is_dir():
                shutil.copytree(source, shop / each)
            elif source.exists():
                shutil.copyfile(source, shop / each)
        yield shop


def _deviations(found: Adopted, proof: Proof) -> tuple[Deviation, ...]:
    """Return where a plan is not as drawn, settled with the play that is drawn."""
    if proof.drawn is None:
        return ()
    fits = tuple((each.name, each.drawn.fit) for each in found.sheets)
    as_drawn, _ = settle(proof.plan, proof.drawn.stock, replace(proof.drawn.variant, fit=fits))
    return deviations(found, as_drawn) if as_drawn else ()


def _proof(text: AdoptedText, shop: Path, name: str) -> Proof:
    target = shop / "plans" / name
    shutil.rmtree(target, ignore_errors=True)
    (target / "drawings").mkdir(parents=True)
    (target / "plan.yaml").write_text(text.plan, "utf-8")
    for file, content in text.drawings.items():
        (target / file).write_text(content, "utf-8")
    shared, unread = read_shared(shop, pictures=False)
    assert shared is not None, "\n".join(map(str, unread))
    workshop, findings = with_plans(shared, [name])
    assert workshop is not None, "\n".join(map(str, findings))
    assert workshop.plans, "\n".join(map(str, findings))
    proof = prove_plan(workshop.plans[0], workshop.stock)
    own: Sequence[Finding] = [each for each in findings if has_errors([each])]
    return replace(proof, findings=(*own, *proof.findings))
