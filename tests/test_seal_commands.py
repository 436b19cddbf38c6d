"""Keys and sealed files at the command line: keys are shown once, asked for, and told nowhere."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest

from tests.command import run
from tests.sealing.rings import WORDS, content_of, quick_ring, sealed_by

WORKSHOP = """\
workshop: Small Shop
maker: Ada Example
circles: {friends: {who: Friends of the bench}}
keys: ../keys
"""


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.delenv("KERFOLIO_KEYS", raising=False)
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "workshop.yaml").write_text(WORKSHOP, "utf-8")
    return folder


def test_a_key_is_made_shown_once_listed_and_withdrawn(shop: Path, tmp_path: Path) -> None:
    where = f"Keys of Small Shop: {tmp_path / 'keys'}"
    listed = run("seal", "list", "--workshop", str(shop))
    assert listed.stdout.splitlines() == [
        where,
        "friends (Friends of the bench)",
        "  no key yet: `kerfolio seal make friends`",
    ]
    made = run("seal", "make", "friends", "--month", "2026-12", cwd=shop)
    assert made.stdout.startswith("The key 2026-12 of friends, for Friends of the bench.")
    (words,) = re.findall("^    ([a-z]+(?: [a-z]+){6})$", made.stdout, re.MULTILINE)
    assert "What is published next opens with 1 key of friends." in made.stdout
    run("seal", "make", "friends", "--month", "2026-12", cwd=shop)
    gone = run("seal", "withdraw", "friends", "2026-12", cwd=shop)
    assert "Publish now: bundles are then sealed anew, for 1 key." in gone.stdout
    listed = run("seal", "list", cwd=shop)
    assert listed.stdout.splitlines()[1:] == [
        "friends (Friends of the bench)",
        "  2026-12     withdrawn",
        "  2026-12.2   holds",
    ]
    last = run("seal", "withdraw", "friends", "2026-12.2", cwd=shop)
    assert "No key is left" in last.stdout
    assert words not in listed.stdout + gone.stdout + last.stdout
    kept = (tmp_path / "keys" / "friends.keys.json").read_text("utf-8")
    assert words not in kept


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("make", "freinds"), 1, "Did you mean `friends`?"),
        (("make", "friends", "--month", "December"), 2, "Invalid value for '--month'"),
        (("withdraw", "friends", "2026-12"), 1, "unknown circle `friends`"),
        (("withdraw", "friends", "acorn bridge"), 2, "write its month as `kerfolio seal list`"),
        (("make",), 2, "Missing argument 'CIRCLE'"),
        (("list", "--workshop", "nowhere"), 1, "no folder `nowhere`"),
    ],
)
def test_what_is_wrong_is_told(shop: Path, words: tuple[str, ...], code: int, told: str) -> None:
    done = run("seal", *words, cwd=shop)
    assert done.returncode == code
    assert told in done.stdout + done.stderr
    assert "acorn" not in done.stdout + done.stderr


CONTENT = b"what a bundle holds"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "rack-1.0.0.zip.sealed"
    found.write_bytes(sealed_by(quick_ring(), CONTENT))
    return found


def test_a_file_is_opened_with_a_key_that_is_piped_or_in_a_file(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(f"{WORDS.title()}\n"))
    done = run("unseal", file.name, cwd=tmp_path)
    assert (done.returncode, done.stdout) == (0, "wrote rack-1.0.0.zip\n")
    assert (tmp_path / "rack-1.0.0.zip").read_bytes() == CONTENT
    (tmp_path / "key.txt").write_text(WORDS.replace(" ", "-"), "utf-8")
    done = run("unseal", str(file), "--key-file", str(tmp_path / "key.txt"), cwd=tmp_path)
    assert (done.returncode, "this file is there already" in done.stdout) == (1, True)
    more = ("--out", "other.zip", "--key-file", "key.txt")
    assert run("unseal", str(file), *more, cwd=tmp_path).returncode == 0
    assert (tmp_path / "other.zip").read_bytes() == CONTENT


def test_at_a_terminal_the_key_is_asked_for_and_not_shown(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    def hidden(prompt: str = "", **_: object) -> str:
        asked.append(prompt)
        return WORDS

    monkeypatch.setattr("sys.stdin", Terminal())
    monkeypatch.setattr("click.termui.hidden_prompt_func", hidden)
    done = run("unseal", str(file), cwd=tmp_path)
    assert (done.returncode, asked) == (0, ["Key: "])
    assert WORDS not in done.stdout + done.stderr


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("acorn bridge", "A key has 7 words, this one 2."),
        (WORDS.replace("bridge", "brigde"), "No key has such a word as number 2 of it."),
        (WORDS.replace("bridge", "candle"), "Look for a slip in typing it"),
        ("", "A key has 7 words, this one 0."),
    ],
)
def test_a_wrong_key_writes_nothing_and_is_not_repeated(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, typed: str, told: str
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    before = sorted(tmp_path.iterdir())
    done = run("unseal", str(file), cwd=tmp_path)
    assert done.returncode == 1
    assert "the key does not open this file" in done.stdout
    assert told in " ".join(done.stdout.split())
    assert "brigde" not in done.stdout + done.stderr
    assert sorted(tmp_path.iterdir()) == before


def test_a_damaged_file_writes_nothing(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(WORDS))
    file.write_bytes(file.read_bytes()[:-1])
    done = run("unseal", str(file), cwd=tmp_path)
    assert (done.returncode, "cut short" in done.stdout) == (1, True)
    assert list(tmp_path.iterdir()) == [file]
    plain = tmp_path / "plain"
    plain.write_bytes(b"x")
    assert "--out FILE" in run("unseal", str(plain), cwd=tmp_path).stdout
    with pytest.raises(ValueError, match="sealed"):
        content_of(b"")
