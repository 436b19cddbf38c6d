"""Everything a reader downloads for one plan, as named bytes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from kerfolio.basis.saying import say
from kerfolio.booklet.pdf import booklet_pdfs
from kerfolio.booklet.setting import forget
from kerfolio.bundles.archive import sums_text, zip_bytes
from kerfolio.bundles.licence import licence, licence_file
from kerfolio.chapters.document_of import booklet_document
from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import viewer_data
from kerfolio.edition.edition import Edition
from kerfolio.edition.licence_words import contact_words, licence_sentence
from kerfolio.edition.names import (
    LICENCE,
    PLAN,
    START,
    SUMS,
    booklet_name,
    bundle_name,
    bundle_stem,
    model_name,
    papers_of,
)
from kerfolio.fitted.form import Fitted
from kerfolio.fitted.writing import fitted_json
from kerfolio.keeping.kept import NOTHING_KEPT, Kept
from kerfolio.pages.start import start_here
from kerfolio.publishing.cut_files import (
    Named,
    art_files,
    coupon_files,
    other_files,
    part_files,
    sheet_files,
)
from kerfolio.publishing.fitted_files import filled_at
from kerfolio.publishing.lists import list_files
from kerfolio.publishing.pictures import inline_pictures, model_3d
from kerfolio.publishing.plan_json import plan_json
from kerfolio.publishing.shape_files import ShapeFiles
from kerfolio.publishing.sheet_papers import coupon_papers, drawn_papers
from kerfolio.writing.glb import glb_bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Bundle:
    """A plan's bundle, packed: the file a reader downloads or is handed.

    ``pictures`` are the drawings of its first page, as inline SVG by name; ``model`` the data of
    its 3-D view, empty where it has none. ``fitted`` are its cut files and templates for every
    sheet that it is meant for, None where they follow no rule; ``fitted_text`` states them as JSON.
    ``rescue`` are the files that open its pieces wider, None where there are none. ``shapes`` made
    all of these, None where somebody else did.
    """

    edition: Edition
    name: str
    content: bytes
    pictures: Mapping[str, str]
    model: str = ""
    fitted: Fitted | None = None
    fitted_text: str = ""
    rescue: Fitted | None = None
    shapes: ShapeFiles | None = None


def bundle_of(edition: Edition, kept: Kept = NOTHING_KEPT) -> Bundle:
    """Draw, bind and pack everything of an edition; what hangs on its shapes alone may be kept."""
    plan, pictures, model = edition.plan, inline_pictures(edition), model_3d(edition)
    data = "" if model is None else viewer_data(model)
    shapes = ShapeFiles(edition, kept)
    fitted, rescue = shapes.fitted, None
    if fitted is not None:
        edition = replace(edition, fitted=True)
        rescue = shapes.rescue(fitted.numbers)
    files = bundle_files(edition, pictures, model, data, shapes, fitted, rescue)
    packed = zip_bytes(files, plan.released, bundle_stem(plan), first=START)
    return Bundle(
        edition=edition,
        name=bundle_name(plan),
        content=packed,
        pictures=pictures,
        model=data,
        fitted=fitted,
        fitted_text="" if fitted is None else fitted_json(fitted),
        rescue=rescue,
        shapes=shapes,
    )


def bundle_files(
    edition: Edition,
    pictures: Mapping[str, str],
    model: Model3d | None,
    data: str,
    shapes: ShapeFiles | None = None,
    fitted: Fitted | None = None,
    rescue: Fitted | None = None,
) -> dict[str, bytes]:
    """Return every file of the bundle by name, ``SHA256SUMS`` over all the others included.

    ``data`` is what the model's view on the first page is drawn from.
    """
    papers = papers_of(edition)
    files = dict(_cut_files(edition, fitted))
    files |= (shapes or ShapeFiles(edition)).printed_apart()
    document = booklet_document(edition)
    named = {booklet_name(name): paper for name, paper in papers.items()}
    files |= booklet_pdfs(document, named, edition.pictures, edition.identity.look)
    forget()
    files |= drawn_papers(edition, papers)
    files |= coupon_papers(edition, papers)
    if model is not None:
        files[model_name(edition.plan)] = glb_bytes(model)
    files |= list_files(edition)
    files[PLAN] = plan_json(edition)
    files[LICENCE] = _licence(edition)
    names = sorted((*files, SUMS))
    files[START] = start_here(edition, names, pictures, data, fitted, rescue).encode()
    files[SUMS] = sums_text(files).encode()
    return files


def _cut_files(edition: Edition, fitted: Fitted | None) -> Iterator[Named]:
    """Yield the cut files: those of sheets and parts are the fitted ones, filled in."""
    formats = edition.formats
    for settled in edition.variants:
        if fitted is not None:
            yield from filled_at(fitted, settled.variant).items()
        else:
            yield from sheet_files(settled, edition.layout, formats, edition.reader)
            yield from other_files(settled, edition.others, formats, edition.reader)
            yield from part_files(settled, formats, edition.reader)
    yield from coupon_files(edition.settled, formats, edition.reader)
    yield from art_files(edition.settled, formats, edition.reader)


def _licence(edition: Edition) -> bytes:
    plan, identity = edition.plan, edition.identity
    identifier = plan.licence or identity.licence
    sentence, found = licence_sentence(identifier, edition.reader), licence(identifier)
    contact = contact_words(identity)
    if found is None:
        named = say(edition.reader, "licencewords-by", plan=plan.title, maker=identity.maker)
        parts = (named, sentence, contact)
        text = "\n\n".join(filter(None, parts)) + "\n"
    else:
        text = licence_file(plan.title, identity.maker, sentence, contact, found)
    return text.encode()
