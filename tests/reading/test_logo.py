"""A workshop's own logo: shown as it is, unless it runs, fetches or has no fit shape."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from kerfolio.basis.finding import Finding
from kerfolio.model.look import Logo
from kerfolio.reading.workshop import read_workshop

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 20">{}</svg>'


def read(folder: Path, file: str, content: bytes) -> tuple[Logo | None, tuple[Finding, ...]]:
    manifest = f"workshop: Bare\nmaker: Ada Fern\nlook: {{logo: {file}}}\n"
    (folder / "workshop.yaml").write_text(manifest)
    (folder / file).write_bytes(content)
    workshop, findings = read_workshop(folder)
    assert workshop is not None
    return workshop.identity.look.logo, findings


def png(size: tuple[int, int]) -> bytes:
    out = io.BytesIO()
    Image.new("RGBA", size, (20, 90, 70, 255)).save(out, "PNG")
    return out.getvalue()


def test_a_drawn_logo_is_kept_as_it_is(tmp_path: Path) -> None:
    content = SVG.format('<defs><path id="a" d="M0 0h9v9z"/></defs><use href="#a"/>').encode()
    logo, findings = read(tmp_path, "logo.svg", content)
    assert findings == ()
    assert logo == Logo(file="logo.svg", width=60, height=20, svg=content)


def test_a_logo_of_pixels(tmp_path: Path) -> None:
    logo, findings = read(tmp_path, "logo.png", png((90, 30)))
    assert findings == ()
    assert logo is not None
    assert (logo.width, logo.height, logo.svg) == (90, 30, b"")
    assert logo.pixels is not None


@pytest.mark.parametrize(
    ("inside", "message", "column"),
    [
        ("<script>alert(1)</script>", "`logo.svg` holds `script`", 61),
        ("<g><foreignObject/></g>", "`logo.svg` holds `foreignObject`", 64),
        ('<path onload="go()" d="M0 0"/>', "`logo.svg` holds the handler `onload`", 61),
        ('<image href="https://x.example/a.png"/>', "`logo.svg` holds what lies elsewhere", 61),
        ('<use href="other.svg#a"/>', "`logo.svg` holds what lies elsewhere", 61),
        ('<a href="javascript:go()"/>', "`logo.svg` holds what lies elsewhere", 61),
        ("<style>@import 'a.css';</style>", "`logo.svg` holds a style that fetches", 61),
        (
            '<path style="fill:url(https://x.example/a)"/>',
            "`logo.svg` holds a style that fetches",
            61,
        ),
        ('<animate attributeName="x"/>', "`logo.svg` holds `animate`", 61),
    ],
)
def test_what_runs_or_fetches_is_refused(
    tmp_path: Path, inside: str, message: str, column: int
) -> None:
    logo, findings = read(tmp_path, "logo.svg", SVG.format(inside).encode())
    assert logo is None
    assert [(each.message, str(each.place)) for each in findings] == [
        (message, f"logo.svg:1:{column}")
    ]


@pytest.mark.parametrize(
    ("file", "content", "message"),
    [
        ("logo.gif", b"GIF89a", "`logo.gif` is no SVG and no PNG picture"),
        ("logo.png", b"\xff\xd8\xff\xe0", "`logo.png` is no SVG and no PNG picture"),
        ("logo.png", png((110, 10)), "`logo.png` is too wide"),
        ("logo.png", png((10, 20)), "`logo.png` is too tall"),
        ("logo.png", png((90, 30))[:60], "`logo.png` is cut short"),
        ("logo.svg", b"<svg xmlns='http://www.w3.org/2000/svg'/>", "`logo.svg` states no size"),
        ("logo.svg", b" " * 300_001, "`logo.svg` has more than 300 kB"),
    ],
)
def test_what_is_no_logo(tmp_path: Path, file: str, content: bytes, message: str) -> None:
    logo, findings = read(tmp_path, file, content)
    assert logo is None
    assert [(each.message, str(each.place)) for each in findings] == [
        (message, "workshop.yaml:3:14")
    ]


def test_a_logo_that_is_missing_is_told(tmp_path: Path) -> None:
    (tmp_path / "workshop.yaml").write_text("workshop: Bare\nmaker: A\nlook: {logo: mark.svg}\n")
    (found,) = read_workshop(tmp_path)[1]
    assert (found.message, str(found.place)) == ("no file `mark.svg`", "workshop.yaml:3:14")
