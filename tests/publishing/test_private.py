"""What is nobody's business reaches no file of a site: a mark stands in every private field."""

from __future__ import annotations

import io
import json
import zlib
from dataclasses import fields
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

import pytest
from PIL import Image, PngImagePlugin

from kerfolio.model.trial import Batch, Sent, Spent, Trial
from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.sources import PRIVATE_LOG
from tests.plans import BOARD, lay_down
from tests.publishing.searched import marks_in, pictures_in

WORKSHOP = "workshop: Proving Ground\nmaker: Ada Example\nlicence: CC0-1.0\n"

SHOWN = "zqshowntitle"
"""A mark of what is public, which must be found: else nothing is searched."""

OWN = """\
    part: zqpart
    batch: {name: zqbatch, readings: [17.731 mm, 17.742 mm], moisture: 13.71}
    workholding: zqheld
    extraction: zqhose
    direction: conventional
    true-cut: 6.1379 mm
    went: by palm
    metres: 7351.37
    reckoned-minutes: 7352.91
    minutes: 7353.93
    hours: 7354.97
    money: 7355.17
    finishes: [zqoil]
    glues: [zqglue]
    mistakes: [zqmistake]
    repairs: [zqrepair]
"""
"""What the site shows of no entry, be it public or not."""

LOG = f"""\
trials:
  - date: 2026-05-01
    id: zqpublicid
    title: {SHOWN}
    plan: board
    stock: birch-plywood-18
    cutter: compression-6
    operation: through
    outcome: clean
    marks: [noise]
    photo: {{file: shown.jpg, alt: A clean edge}}
    public: true
{OWN}
jobs:
  - date: 1997-03-17
    id: zqprivateid
    release: 0.7.713
    title: zqtitle
    plan: board
    stock: birch-plywood-18
    thickness: 17.6137 mm
    cutter: compression-6
    operation: part way
    speed: 17353 rpm
    feed: 7357 mm/min
    plunge: 1753 mm/min
    passes: [7.319 mm, 3.197 mm]
    fit: 0.7319 mm
    outcome: {{top: to mend, bottom: spoiled, face: to sand}}
    marks: [chatter]
    photo: {{file: zqphoto.png, alt: zqalt}}
    text: A **zqtext** of mine.
{OWN}
sent:
  - id: zqsentid
    date: 1997-04-19
    plan: board
    release: 0.7.714
    sheet: ply
    thickness: 15.3719 mm
    true-cut: 5.8173 mm
    fit: 0.3917 mm
    went: stuck
    outcome: spoiled
"""
STOCK = """\
cutters:
  compression-6:
    metres-before: 7361.53
    in-use-since: 1996-02-13
    sharpened: [1996-08-29]
    true-cut: 6.0713 mm
"""

MARKS = frozenset(
    (
        *("0.7.713", "zqpart", "zqbatch", "17.731", "17.73 mm", "17.742", "17.74 mm", "13.71"),
        *("zqheld", "zqhose", "conventional", "6.1379", "6.14 mm", "7351.37", "7351.4", "7352.91"),
        *("7353.93", "7354.97", "7355.17", "zqoil", "zqglue", "zqmistake", "zqrepair"),
        *("zqprivateid", "zqtitle", "1997-03", "March 1997", "17.6137", "17.61 mm", "17353 rpm"),
        *(
            "7357 mm",
            "1753 mm",
            "7.319",
            "3.197",
            "0.7319",
            "0.73 mm",
            "zqphoto",
            "zqalt",
            "zqtext",
        ),
        *(
            "zqsentid",
            "1997-04",
            "April 1997",
            "0.7.714",
            "15.3719",
            "15.37 mm",
            "5.8173",
            "5.82 mm",
        ),
        *("0.3917", "0.39 mm", "7361.53", "7361.5", "1996-02", "February 1996", "1996-08"),
        *("August 1996", "6.0713", "6.07 mm", "zqexif", "zqcomment", "zqpng"),
    )
)
"""What was planted, as it was written and as it would be told."""

SEEN = (250, 120, 10)
UNSEEN = (20, 250, 130)


def photograph(path: Path, colour: tuple[int, int, int], kind: str) -> None:
    """Write a picture of one colour that says more of itself than its pixels."""
    picture = Image.new("RGB", (900, 600), colour)
    if kind == "JPEG":
        exif = picture.getexif()
        exif[0x010E] = "zqexif"
        picture.save(path, kind, exif=exif, comment=b"zqcomment", quality=95)
    else:
        info = PngImagePlugin.PngInfo()
        info.add_text("Comment", "zqpng")
        picture.save(path, kind, pnginfo=info)


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    home = tmp_path_factory.mktemp("private")
    found = lay_down(home / "shop", BOARD, "board", WORKSHOP)
    for name, text in (("log/day.yaml", LOG), ("stock/own.yaml", STOCK)):
        (found / name).parent.mkdir(exist_ok=True)
        (found / name).write_text(text, "utf-8")
    photograph(found / "log" / "shown.jpg", SEEN, "JPEG")
    photograph(found / "log" / "zqphoto.png", UNSEEN, "PNG")
    made = publish(Request(folder=found, out=home / "site", supporters_out=home / "handed"))
    assert made.published, "\n".join(map(str, made.findings))
    return found


def shows(folder: Path, colour: tuple[int, int, int]) -> bool:
    """Tell whether a picture in a folder is mostly of a colour."""
    for picture in pictures_in(folder):
        small = picture.resize((1, 1))
        pixel = small.getpixel((0, 0))
        assert isinstance(pixel, tuple)
        if all(abs(a - b) < 30 for a, b in zip(pixel, colour, strict=True)):
            return True
    return False


def test_every_key_of_an_entry_is_planted() -> None:
    public = {"job", "public", "place", "text", "photo", "plan", "stock", "cutter", "outcome"}
    planted = LOG.replace("-", "_")
    told = {"speed_rpm": "speed", "feed_mm_per_min": "feed", "plunge_mm_per_min": "plunge"}
    told |= {"climb": "direction", "true_cut": "true_cut", "grade": "outcome"}
    for record in (Trial, Sent, Spent, Batch):
        for each in fields(record):
            if each.name not in public and each.name != "spent":
                assert f"{told.get(each.name, each.name)}:" in planted, each.name


def test_nothing_private_is_in_any_file_of_the_site(shop: Path) -> None:
    out = shop.parent / "site"
    assert marks_in(out, MARKS | {SHOWN, "zqpublicid"}) == {SHOWN, "zqpublicid"}
    assert shows(out, SEEN)
    assert not shows(out, UNSEEN)
    assert not [path for path in out.rglob("*") if ".kerfolio" in path.relative_to(out).parts]


def test_the_private_page_has_all_of_it_and_every_entry_its_address(shop: Path) -> None:
    page = (shop / PRIVATE_LOG).read_text("utf-8")
    for words in (
        *("zqpart", "zqbatch", "17.73", "13.71", "zqheld", "zqhose", "conventional", "6.14"),
        *("7351.4", "7352.9", "7353.9", "7355.17", "zqoil", "zqglue", "zqmistake", "zqrepair"),
        *("zqtitle", "zqphoto", "zqalt", "zqtext", "0.7.714", "5.82"),
        *('id="zqprivateid"', 'id="zqpublicid"', 'id="zqsentid"', 'href="#zqsentid"'),
        "which the plan no longer lists",
    ):
        assert words in page, words
    assert 'src="../../../log/zqphoto.png"' in page
    site = (shop.parent / "site" / "log" / "index.html").read_text("utf-8")
    assert 'id="zqpublicid"' in site


def _zip(content: bytes) -> bytes:
    held = io.BytesIO()
    with ZipFile(held, "w", ZIP_DEFLATED) as packed:
        packed.writestr("a.txt", content)
    return held.getvalue()


def _png() -> bytes:
    info, held = PngImagePlugin.PngInfo(), io.BytesIO()
    info.add_text("Comment", "zqtitle", zip=True)
    Image.new("RGB", (2, 2), UNSEEN).save(held, "PNG", pnginfo=info)
    return held.getvalue()


def _jpeg() -> bytes:
    picture, held = Image.new("RGB", (2, 2), UNSEEN), io.BytesIO()
    exif = picture.getexif()
    exif[0x010E] = "zqtitle"
    picture.save(held, "JPEG", exif=exif)
    return held.getvalue()


def _pdf() -> bytes:
    packed = zlib.compress(b"BT (zqtitle) Tj ET")
    objects = (
        b"<</Type/Catalog/Pages 2 0 R>>",
        b"<</Type/Pages/Kids[3 0 R]/Count 1>>",
        b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 9 9]/Contents 4 0 R>>",
        b"<</Length %d/Filter/FlateDecode>>stream\n%s\nendstream" % (len(packed), packed),
    )
    body = b"".join(b"%d 0 obj%s\nendobj\n" % (n, each) for n, each in enumerate(objects, 1))
    return b"%PDF-1.4\n" + body + b"trailer<</Root 1 0 R/Size 5>>\n%%EOF\n"


def _glb() -> bytes:
    told = json.dumps({"extras": "zqtitle"}).encode().ljust(24)
    return (
        b"glTF"
        + (2).to_bytes(4, "little")
        + (20 + len(told)).to_bytes(4, "little")
        + (len(told).to_bytes(4, "little") + b"JSON" + told)
    )


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("zqtitle.txt", b""),
        ("a.html", b"<p>zq&#116;itle</p>"),
        ("a.json", b'{"a": "zq\\u0074itle"}'),
        ("a.url", b"zq%74itle"),
        ("a.zip", _zip(b"zqtitle")),
        ("nested.zip", _zip(_zip(b"zqtitle"))),
        ("a.png", _png()),
        ("a.jpg", _jpeg()),
        ("a.pdf", _pdf()),
        ("a.glb", _glb()),
    ],
)
def test_the_search_finds_a_mark_however_it_is_packed(
    name: str, content: bytes, tmp_path: Path
) -> None:
    (tmp_path / name).write_bytes(content)
    assert marks_in(tmp_path, MARKS) == {"zqtitle"}
    if name.endswith((".png", ".jpg")):
        assert shows(tmp_path, UNSEEN)
