"""Edits of a small workshop by chance, reverted ones and damage to what is kept among them.

After each, a publish that takes from the store what did not change must be a publish that has none.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from random import Random

from kerfolio.keeping import program
from kerfolio.publishing.build import Request, publish
from kerfolio.publishing.sources import KEPT
from tests.conftest import BUILT, files_of
from tests.publishing.small_shop import another, photograph, small_shop


@dataclass(frozen=True)
class Told:
    """All that can be seen of a publish: site, bundles, layouts, the private log, what was said."""

    files: dict[str, bytes]
    beside: dict[str, bytes]
    sources: dict[str, bytes]
    findings: tuple[str, ...]


def published(shop: Path) -> Told:
    """Publish a workshop beside itself."""
    out, given = shop.parent / f"{shop.name}-site", shop.parent / f"{shop.name}-given"
    outcome = publish(Request(folder=shop, out=out, supporters_out=given))
    assert outcome.published, "\n".join(map(str, outcome.findings))
    return Told(
        files=files_of(out),
        beside={str(each.name): each.read_bytes() for each in outcome.handed_over},
        sources={name: content for name, content in files_of(shop).items() if "kept/" not in name},
        findings=tuple(map(str, outcome.findings)),
    )


def steps(folder: Path, seed: int, count: int) -> Iterator[tuple[str, Told, Told]]:
    """Edit a workshop; yield each edit with what came of it, and with what came without a store."""
    chance, shop = Random(seed), small_shop(folder / "shop")
    another(shop, "shelf")
    published(shop)
    before = folder / "before"
    for number in range(count):
        edit = chance.choice((*EDITS, revert))
        kept = folder / "kept"
        shutil.rmtree(kept, ignore_errors=True)
        shutil.copytree(shop, kept, ignore=shutil.ignore_patterns(*BUILT))
        edit(shop, chance) if edit is not revert else revert(shop, before)
        shutil.rmtree(before, ignore_errors=True)
        kept.rename(before)
        bare = folder / f"bare-{number}" / "shop"
        shutil.copytree(shop, bare, ignore=shutil.ignore_patterns(*BUILT))
        yield edit.__name__, published(shop), published(bare)
        shutil.rmtree(bare.parent)


def plan_text(shop: Path, chance: Random) -> None:
    said = ("Done.", "Well done.", "Wipe it twice.")
    changed(shop / "plans" / "board" / "plan.yaml", r"text: (.*?)\}", said, chance)


def step_title(shop: Path, chance: Random) -> None:
    said = ("Wipe it", "Dust it")
    changed(shop / "plans" / "board" / "plan.yaml", r"title: (\w+ it)", said, chance)


def language(shop: Path, chance: Random) -> None:
    said = ("", "\nlanguage: de")
    changed(shop / "workshop.yaml", r"Ada Example(\nlanguage: de)?", said, chance)


def size(shop: Path, chance: Random) -> None:
    changed(shop / "plans" / "shelf" / "plan.yaml", r"w: (\d+)", ("200", "210"), chance)


def access(shop: Path, chance: Random) -> None:
    said = ("", "\naccess: supporters")
    changed(shop / "plans" / "shelf" / "plan.yaml", r"A board\.(\n.*)?(?=\nlicence)", said, chance)


def stock(shop: Path, chance: Random) -> None:
    changed(shop / "stock" / "own.yaml", r"90\.(\d+)", ("50", "60"), chance)


def theme(shop: Path, chance: Random) -> None:
    changed(shop / "workshop.yaml", r"#([0-9]{6})", ("224466", "226644"), chance)


def logo(shop: Path, chance: Random) -> None:
    changed(shop / "mark.svg", r"M(\d)", ("0", "1"), chance)


def page(shop: Path, chance: Random) -> None:
    changed(shop / "pages" / "about.md", r"(Hello.*)", ("Hello.", "Hello again."), chance)


def menu(shop: Path, chance: Random) -> None:
    changed(shop / "pages" / "about.md", r"# (.*)", ("About", "About us"), chance)


def trial(shop: Path, chance: Random) -> None:
    changed(shop / "log" / "day.yaml", r"A (cut\w*)", ("cut", "cutting"), chance)


def photo(shop: Path, chance: Random) -> None:
    photograph(shop / "plans" / "board" / "whole.png", chance.randrange(200))


def hand(shop: Path, chance: Random) -> None:
    """Take a frozen layout away."""
    (shop / "plans" / "board" / "layout.json").unlink(missing_ok=True)


def add(shop: Path, chance: Random) -> None:
    if not (shop / "plans" / "tray").exists():
        another(shop, "tray")


def remove(shop: Path, chance: Random) -> None:
    shutil.rmtree(shop / "plans" / "tray", ignore_errors=True)


def corrupt(shop: Path, chance: Random) -> None:
    entry = chance.choice(sorted((shop / KEPT).glob("[!.]*")))
    content = bytearray(entry.read_bytes())
    content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
    entry.write_bytes(content)


def swap_entries(shop: Path, chance: Random) -> None:
    one, other = chance.sample(sorted((shop / KEPT).glob("[!.]*")), 2)
    one.write_bytes(other.read_bytes())


def forget(shop: Path, chance: Random) -> None:
    shutil.rmtree(shop / KEPT)


def other_version(shop: Path, chance: Random) -> None:
    """Let another version of the program publish."""
    ours = program.program
    try:
        program.program = lambda: "another"  # type: ignore[assignment]
        published(shop)
    finally:
        program.program = ours


def revert(shop: Path, before: Path) -> None:
    """Let the sources be what they were before the last edit."""
    if before.exists():
        for name in ("plans", "pages", "stock", "log"):
            shutil.rmtree(shop / name)
            shutil.copytree(before / name, shop / name)
        for name in ("workshop.yaml", "mark.svg"):
            shutil.copyfile(before / name, shop / name)


def changed(file: Path, pattern: str, values: Sequence[str], chance: Random) -> None:
    """Let the group of a pattern hold another one of some values."""
    text = file.read_text("utf-8")
    found = re.search(pattern, text)
    assert found is not None
    start, end = found.span(1) if found.group(1) is not None else (found.end(), found.end())
    value = chance.choice([each for each in values if each != text[start:end]])
    file.write_text(text[:start] + value + text[end:], "utf-8")


Edit = Callable[[Path, Random], None]
EDITS: tuple[Edit, ...] = (
    *(
        plan_text,
        step_title,
        language,
        size,
        access,
        stock,
        theme,
        logo,
        page,
        menu,
        trial,
        photo,
        hand,
        add,
        remove,
    ),
    *(corrupt, swap_entries, forget, other_version),
)
