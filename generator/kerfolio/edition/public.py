"""What everybody may see of a plan: an open one whole, a supporters' one as its ``show:`` says.

Pages are made from what is returned here and nothing else, so what is not to be seen cannot be on
them. The exact geometry of a supporters' plan is in none of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from kerfolio.drawing.build_views import ASSEMBLED, SET
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.cover import cover_of
from kerfolio.edition.edition import Edition
from kerfolio.model.plan import Plan, Step
from kerfolio.model.prose import Prose
from kerfolio.model.showing import ALWAYS, SHOWABLE, Public
from kerfolio.releasing.change import without_shapes
from kerfolio.settling.settled import SettledPlan


def public_of(plan: Plan) -> Public:
    """Return what is public of a supporters' plan in words."""
    shown = [word for word in SHOWABLE if word in plan.show]
    kept = [word for word in SHOWABLE if word not in plan.show]
    return Public(title=plan.title, always=ALWAYS, shown=tuple(shown), kept=tuple(kept))


def shown_to_all(edition: Edition) -> Edition:
    """Return what pages may be made from."""
    if edition.plan.is_open:
        return edition
    show, plan = edition.plan.show, _plan(edition.plan)
    wanted = {photo.file for photo in plan.pictured}
    pictures = {file: each for file, each in edition.pictures.items() if file in wanted}
    found = replace(edition, plan=plan, pictures=pictures, drawings=_cover_drawing(edition))
    found = replace(found, changes=tuple(without_shapes(each) for each in edition.changes))
    found = replace(found, exact=False, settled=replace(edition.settled, coupons=()))
    if "sizes" not in show:
        bare = replace(edition.layout, sheets=(), bounds=(), copies=())
        nothing = _without_sizes(found.settled, plan)
        found = replace(found, settled=nothing, variants=(), layout=bare, parts=(), sheets=())
        found = replace(found, boards=(), saw=(), board_plans=(), times=(), swaps=(), others=())
    if "hardware" not in show:
        found = replace(found, hardware=())
    if "costs" not in show:
        found = replace(found, copies=(), swaps=())
    if not {"hardware", "costs"} & set(show):
        found = replace(found, identity=replace(found.identity, consumables=()))
    if "settings" not in show:
        found = replace(found, times=())
    if "loads" not in show:
        found = replace(found, spans=(), in_use=(), swaps=())
    return found


def _plan(plan: Plan) -> Plan:
    show = plan.show
    if "story" not in show:
        plan = replace(plan, story=Prose())
    if "steps" not in show:
        plan = replace(plan, steps=())
    if not {"hardware", "costs"} & set(show):
        plan = replace(plan, consumables=())
    if "questions" not in show:
        plan = replace(plan, questions=())
    if "video" not in show:
        plan = replace(plan, video=None)
    if "photos" not in show:
        steps = tuple(_without_photo(each) for each in plan.steps)
        cover = cover_of(plan.photos)
        plan = replace(plan, photos=(cover,) if cover else (), steps=steps)
    return plan


def _cover_drawing(edition: Edition) -> Mapping[str, Drawing]:
    """Return the drawing that stands for a plan without photos: the whole put together."""
    names = () if edition.plan.photos else (SET, ASSEMBLED)
    return {each: edition.drawings[each] for each in names if each in edition.drawings}


def _without_photo(step: Step) -> Step:
    return replace(step, photo=None)


def _without_sizes(settled: SettledPlan, plan: Plan) -> SettledPlan:
    bare = replace(plan, sizes=(), sheets=(), parts=(), boards=(), hardware=(), fastenings=())
    bare = replace(bare, fastened=(), joints=(), cuts=(), spans=(), drawings=(), layout_text="")
    nothing = replace(settled, plan=bare, sizes=(), sheets=(), parts=(), boards=())
    return replace(nothing, joints=(), coupons=())
