"""Nothing that is sealed, private or kept back stands in OUT: forty marks, every file taken apart.

Texts, names, numbers and a picture are planted where only supporters or the maker may see them.
The same search finds all of them in what the maker wrote and most in the bundle that is handed
over, so that it is known to see.
"""

from __future__ import annotations

import binascii
import html
import io
import re
import zipfile
import zlib
from base64 import b64decode, b64encode
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from urllib.parse import unquote

from PIL import Image

from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.keys import make_key
from kerfolio.sealing.ring_text import ring_from
from tests.conftest import files_of
from tests.plans import lay_down
from tests.publishing.small_shop import photograph

WORKSHOP = """\
workshop: Marked Shop
maker: Ada Example
licence: CC0-1.0
circles: {friends: {who: Friends of the bench}}
machine-hour: 73.19
consumables: [{what: Zqoil in tins, price: 8.83}]
"""
STOCK = "sheets:\n  birch-plywood-18: {prices: {1220 x 2440: 91.37}}\n"
TRIAL = """\
trials:
  - {date: 2026-10-01, title: Zqtrial in secret, plan: board, public: no, text: Zqremarks of it}
"""
PLAN = """\
plan: Plain board
version: 1.0.0
summary: A board.
licence: CC0-1.0
access: supporters
circle: friends
story: Zqstory of long ago.
sizes: {zqsize: 431.7, zqstrip: 211.3, w: 600}
sheets: {ply: {stock: birch-plywood-18, size: 900 x 700, published-for: 18, fit: 0.1}}
parts:
  zqpanel:
    title: Zqpanel title
    sheet: ply
    outline: {rectangle: [w, zqsize]}
    features:
      zqhole: {hole: {at: [97.3, 113.9], diameter: 13.7}}
      zqwindow: {window: {at: [210.3, 187.1], rectangle: [61.9, 43.7]}}
      zqother: {hole: {at: [zqstrip, 53.7], diameter: 9}}
      zqart: {engrave: {text: ZQART, at: [w/2, 300], height: 60, depth: 0.47}}
hardware: [{item: bolt-m6x40, count: 17, for: Zqbolts of it}]
cuts: {ply-all: {sheet: ply, cutter: compression-6, speed: 17300 rpm, feed: 3170 mm/min,
  plunge: 730 mm/min, passes: [6.3, rest]}}
consumables: [{what: Zqglue in pots, price: 6.61}]
cautions: [Stay away.]
steps:
  - {title: Zqstep by step, add: [zqpanel], tools: [zqmallet], minutes: 29, text: Zqtext of a step.,
     hardware: {bolt-m6x40: 17},
     photo: {file: step.png, alt: Zqalt of the step}}
photos:
  - {file: whole.png, alt: The board, cover: true}
  - {file: other.png, alt: Zqalt of another}
video: {url: "https://example.org/zqvideo", chapters: ["0:00 Zqchapter"]}
questions: [{q: Zqquestion of one?, a: Zqanswer to it.}]
silence: {alt-says-little: Zqreason to be quiet}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""
WORDS = (
    *("zqstory", "zqsize", "zqpanel", "zqhole", "zqwindow", "zqart", "zqstrip", "zqbolts"),
    *("zqglue", "zqoil", "zqstep", "zqmallet", "zqtext", "zqalt of the", "zqalt of another"),
    *("zqvideo", "zqchapter", "zqquestion", "zqanswer", "zqreason", "zqtrial", "zqremarks"),
)
NUMBERS = (
    *("431.7", "97.3", "113.9", "13.7", "210.3", "187.1", "61.9", "43.7", "211.3", "53.7"),
    *("17300", "3170", "91.37", "73.19"),
)
RED, BLUE = (201, 37, 88), (17, 83, 203)
"""The photo of a step, and that of the whole which is no cover."""

MARKS = {*WORDS, *NUMBERS, "red", "blue", "a word of the key", "what opens"}
MAKERS = {"zqreason", "zqtrial", "zqremarks", "a word of the key", "what opens"}
"""What not even the bundle has; some more it has as signs of a PDF, or summed up."""


def shop_in(folder: Path) -> Path:
    shop = lay_down(folder / "shop", PLAN, "board", WORKSHOP)
    for name, text in (("stock/own.yaml", STOCK), ("log/day.yaml", TRIAL)):
        (shop / name).parent.mkdir(exist_ok=True)
        (shop / name).write_text(text, "utf-8")
    photograph(shop / "plans" / "board" / "whole.png", 90)
    for name, colour in (("step.png", RED), ("other.png", BLUE)):
        Image.new("RGB", (64, 48), colour).save(shop / "plans" / "board" / name)
    return shop


def taken_apart(content: bytes) -> Iterator[bytes]:
    """Yield a file, and whatever is packed, written in base64 or escaped in it, over and over."""
    yield content
    if content.startswith(b"PK"):
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            for each in archive.infolist():
                yield each.filename.encode()
                yield from taken_apart(archive.read(each))
        return
    for wbits in (47, -15):  # zlib and gzip, then bare
        with suppress(zlib.error):
            unpacked = zlib.decompressobj(wbits).decompress(content, 50_000_000)
            if len(unpacked) > 40:
                yield from taken_apart(unpacked)
    for found in re.findall(rb"stream\r?\n(.+?)endstream", content, re.DOTALL):  # of a PDF
        with suppress(zlib.error):
            yield zlib.decompressobj().decompress(found)
    for found in re.findall(rb"[A-Za-z0-9+/]{80,}={0,2}", content):
        with suppress(binascii.Error):
            yield from taken_apart(b64decode(found + b"=" * (-len(found) % 4)))
    with suppress(UnicodeDecodeError):
        text = content.decode("utf-8")
        plain = html.unescape(unquote(text))
        if plain != text:
            yield plain.encode("utf-8", "replace")


def colours(content: bytes) -> set[str]:
    """Return which of the two photos a picture shows, by the colour it has most of."""
    try:
        with Image.open(io.BytesIO(content)) as picture:
            small = picture.convert("RGB").resize((1, 1))
    except (OSError, ValueError, SyntaxError):
        return set()
    red, green, blue = small.getpixel((0, 0))  # type: ignore[misc]
    named = {"red": RED, "blue": BLUE}
    near = (abs(red - r) + abs(green - g) + abs(blue - b) < 40 for r, g, b in named.values())
    return {name for name, is_it in zip(named, near, strict=True) if is_it}


def marks_in(files: dict[str, bytes], words: str, openers: list[bytes]) -> dict[str, str]:
    """Return the marks that files show, each with the first file that does."""
    found: dict[str, str] = {}
    numbers = {each: re.compile(rf"(?<![0-9.]){re.escape(each)}(?![0-9])") for each in NUMBERS}
    secret = [form for each in openers for form in (each, each.hex().encode(), b64encode(each))]
    for name, content in files.items():
        for part in (name.encode(), *taken_apart(content)):
            text = part.decode("utf-8", "replace").lower()
            text = re.sub(r"(?<=[0-9])[\s,](?=[0-9]{3}(?![0-9]))", "", text)  # 17 300
            here = {each for each in WORDS if each in text}
            here |= {each for each, form in numbers.items() if form.search(text)}
            here |= colours(part)
            if words in text or words.replace(" ", "-") in text:
                here.add("a word of the key")
            if any(each in part for each in secret):
                here.add("what opens")
            for each in here:
                found.setdefault(each, name)
    return found


def test_no_mark_of_forty_is_in_a_published_site(tmp_path: Path) -> None:
    assert len(MARKS) == 40
    shop, keys = shop_in(tmp_path), tmp_path / "keys"
    words = make_key(shop, "friends", "2026-12", keys).words
    request = Request(
        folder=shop,
        out=tmp_path / "site",
        supporters_out=tmp_path / "handed",
        keys=keys,
        seals=True,
    )
    outcome = publish(request)
    assert outcome.published, "\n".join(map(str, outcome.findings))
    assert outcome.sealed
    kept = (keys / "friends.keys.json").read_bytes()
    ring = ring_from(kept)
    openers = [each.opener for each in ring.keys] + [each.content_key for each in ring.sealed]
    site = files_of(tmp_path / "site")
    assert marks_in(site, words, openers) == {}
    seen = marks_in(files_of(tmp_path / "handed"), words, openers)
    elsewhere = {"zqstory", "zqalt of another", "blue", "17300", "91.37", "73.19"}
    assert MARKS - set(seen) <= MAKERS | elsewhere
    store, sources = files_of(shop / ".kerfolio"), files_of(shop)
    said = {f"{n}.txt": str(f).encode() for n, f in enumerate(outcome.findings)}
    secrets = {"a word of the key", "what opens"}
    assert secrets.isdisjoint(marks_in({**said, **store}, words, openers))
    own = {name: each for name, each in sources.items() if not name.startswith(".kerfolio")}
    assert set(marks_in({**own, "keys": kept, "letter": words.encode()}, words, openers)) == MARKS
