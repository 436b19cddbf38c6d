"""A site is sent whole, content before pages, to a folder and to a real SSH server on loopback."""

from __future__ import annotations

import getpass
import os
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from kerfolio.basis.finding import error
from kerfolio.basis.place import NOWHERE
from kerfolio.bundles.manifest import manifest_text, rows_of
from kerfolio.model.sending import Sending
from kerfolio.publishing import send_to_folder, sending
from kerfolio.publishing.sending import SendRequest, Sent, is_host, send
from kerfolio.reading.workshop import read_identity
from tests.command import run
from tests.conftest import files_of
from tests.outside import missing

FILES = {
    "404.html": b"lost",
    "assets/style.css": b"body {}",
    "feed.xml": b"<feed/>",
    "index.html": b"home",
    "plans/rack/downloads/rack [1]*.pdf": b"PK" * 4000,
    "plans/rack/index.html": b"rack",
    "plans/r\u00e4ck/photo.jpg": b"jpeg",
}


def lay_out(site: Path, files: dict[str, bytes]) -> None:
    """Write a site as a publish would."""
    shutil.rmtree(site, ignore_errors=True)
    for name, content in files.items():
        (site / name).parent.mkdir(parents=True, exist_ok=True)
        (site / name).write_bytes(content)
    (site / "manifest.json").write_text(manifest_text([], rows_of(files)), "utf-8")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "workshop.yaml").write_text("workshop: Bare\nmaker: Ada\nlicence: CC0-1.0\n", "utf-8")
    lay_out(folder / "site", FILES)
    return folder


def sent(shop: Path, to: object, **more: bool) -> Sent:
    return send(SendRequest(workshop=shop, site=shop / "site", to=str(to), **more))


ORDER = [
    *("assets/style.css", "plans/rack/downloads/rack [1]*.pdf", "plans/räck/photo.jpg"),
    *("404.html", "feed.xml", "index.html", "plans/rack/index.html"),
    "manifest.json",
]


class Host:
    """Where a site is sent to, as tests see it."""

    def __init__(self, to: str, folder: Path) -> None:
        self.to, self.folder = to, folder


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[int, Path]]:
    """Run an SSH server on a free port of the loopback address, for one key of our own."""
    sshd = shutil.which("sshd") or shutil.which("sshd", path="/usr/sbin:/usr/local/sbin")
    for tool in ("rsync", "ssh", "ssh-keygen"):
        if shutil.which(tool) is None:
            missing(f"{tool} is not installed")
    if sshd is None:
        missing("sshd is not installed")
    home = tmp_path_factory.mktemp("ssh")
    for name in ("host", "mine"):
        make = ["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", str(home / name)]
        subprocess.run(make, check=True)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    config = home / "sshd.conf"
    config.write_text(
        f"Port {port}\nListenAddress 127.0.0.1\nHostKey {home / 'host'}\nStrictModes no\n"
        f"AuthorizedKeysFile {home / 'mine.pub'}\nPasswordAuthentication no\nPidFile none\n",
        "utf-8",
    )
    if os.getuid() == 0:
        Path("/run/sshd").mkdir(exist_ok=True)  # where sshd keeps apart what it lets in
    with (home / "log").open("wb") as log:
        running = subprocess.Popen([sshd, "-D", "-e", "-f", str(config)], stderr=log)
    try:
        for _ in range(100):
            with socket.socket() as knock:
                if knock.connect_ex(("127.0.0.1", port)) == 0:
                    break
            time.sleep(0.05)
        yield port, home
    finally:
        running.terminate()
        running.wait()


@pytest.fixture(params=["folder", "ssh"])
def host(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Host:
    folder = tmp_path / "www"
    if request.param == "folder":
        return Host(str(folder), folder)
    port, home = request.getfixturevalue("server")
    shell = ["ssh", "-F", "none", "-p", str(port), "-i", str(home / "mine")]
    for option in ("IdentitiesOnly=yes", "BatchMode=yes", "StrictHostKeyChecking=no"):
        shell += ["-o", option]
    shell += ["-o", f"UserKnownHostsFile={home / 'known'}", "-o", "LogLevel=ERROR"]
    monkeypatch.setenv("RSYNC_RSH", " ".join(shell))
    return Host(f"{getpass.getuser()}@127.0.0.1:{folder}", folder)


def test_all_of_a_site_is_sent_once_and_then_what_changed(shop: Path, host: Host) -> None:
    (shop / "site" / "CNAME").write_bytes(b"mine")
    dry = sent(shop, host.to, dry=True)
    assert list(dry.brought) == ORDER
    assert not host.folder.exists()
    first = sent(shop, host.to)
    assert [each.rule for each in first.findings] == ["stray"]
    assert list(first.brought) == ORDER
    assert first.files == len(ORDER)
    there = files_of(host.folder)
    assert there.pop("manifest.json") == (shop / "site" / "manifest.json").read_bytes()
    assert there == FILES
    assert sent(shop, host.to).brought == ()
    (host.folder / "index.html").write_bytes(b"hole")  # as long as it was, changed there
    lay_out(shop / "site", {**FILES, "assets/style.css": b"p {}"})
    again = sent(shop, host.to)
    assert list(again.brought) == ["assets/style.css", "index.html", "manifest.json"]
    assert (host.folder / "index.html").read_bytes() == b"home"


def test_nothing_is_removed_unasked_and_never_what_others_laid_there(
    shop: Path, host: Host
) -> None:
    sent(shop, host.to)
    for name in ("CNAME", "plans/rack/mine.txt", ".well-known/x"):
        (host.folder / name).parent.mkdir(exist_ok=True)
        (host.folder / name).write_bytes(b"mine")
    gone = {name for name in FILES if name.startswith("plans/")}
    lay_out(shop / "site", {name: each for name, each in FILES.items() if name not in gone})
    kept = sent(shop, host.to)
    assert (kept.removed, set(kept.left)) == ((), gone)
    sent(shop, host.to, dry=True, deletes=True)
    assert gone <= set(files_of(host.folder))
    lay_out(shop / "site", FILES)
    sent(shop, host.to)
    lay_out(shop / "site", {name: each for name, each in FILES.items() if name not in gone})
    away = sent(shop, host.to, deletes=True)
    assert (set(away.removed), away.left) == (gone, ())
    there = files_of(host.folder)
    assert gone.isdisjoint(there)
    assert {"CNAME", "plans/rack/mine.txt", ".well-known/x"} <= set(there)
    assert not (host.folder / "plans" / "räck").exists()


def test_a_run_that_was_stopped_is_finished_by_the_next(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Content is there before a page leads to it, whenever a run stops."""
    copy, done = shutil.copyfileobj, 0

    def stops(source: object, target: object) -> None:
        nonlocal done
        done += 1
        if done == 5:
            raise KeyboardInterrupt
        copy(source, target)  # type: ignore[arg-type]

    monkeypatch.setattr(send_to_folder.shutil, "copyfileobj", stops)
    with pytest.raises(KeyboardInterrupt):
        sent(shop, tmp_path / "www")
    assert list(files_of(tmp_path / "www")) == sorted(ORDER[:4])
    again = sent(shop, tmp_path / "www")
    assert list(again.brought) == ORDER[4:]


def test_what_is_not_whole_or_does_not_prove_is_not_sent(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (shop / "site" / "index.html").write_bytes(b"hole")
    assert [each.rule for each in sent(shop, tmp_path / "www").findings] == ["changed"]
    lay_out(shop / "site", FILES)
    fault = error("joint-off", "it does not go together", NOWHERE)
    monkeypatch.setattr(sending, "proved_findings", lambda _: (fault,))
    found = sent(shop, tmp_path / "www")
    assert (found.findings, found.brought) == ((fault,), ())
    assert not (tmp_path / "www").exists()


@pytest.mark.parametrize(
    ("to", "rule"),
    [
        ("", "send-unsaid"),
        ("-e rm", "send-odd"),
        ("ada@bench.example:-x\n", "send-odd"),
        ("ssh://bench.example/www", "send-odd"),
        ("{shop}/site", "send-onto-site"),
        ("{shop}/site/inner", "send-onto-site"),
        ("{shop}", "send-onto-site"),
        ("{shop}/plans/x", "out-in-source"),
    ],
)
def test_places_that_cannot_be_meant_are_refused(shop: Path, to: str, rule: str) -> None:
    assert [each.rule for each in sent(shop, to.format(shop=shop)).findings] == [rule]


def test_without_rsync_a_folder_is_advised(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sending, "rsync_is_there", lambda: False)
    assert [each.rule for each in sent(shop, "bench.example:www").findings] == ["no-rsync"]


def test_a_host_that_cannot_be_reached_is_told(shop: Path) -> None:
    if shutil.which("rsync") is None or shutil.which("ssh") is None:
        missing("rsync or ssh is not installed")
    with socket.socket() as closed:
        closed.bind(("127.0.0.1", 0))
        head = (shop / "workshop.yaml").read_text("utf-8")
        to = f"send: {{to: 'x@127.0.0.1:www', port: {closed.getsockname()[1]}}}\n"
        (shop / "workshop.yaml").write_text(head + to, "utf-8")
        (fault,) = sent(shop, "").findings
    assert fault.rule == "send-stopped"
    assert "refused" in str(fault.message)


def test_what_is_a_host_and_what_a_folder() -> None:
    hosts = ["bench.example:www", "ada@bench.example:/srv", "[::1]:www", "a_b@h1:"]
    assert [each for each in hosts if not is_host(each)] == []
    folders = ["www", "/srv/www", "../www", "C:www", "C:\\www", "./a:b"]
    assert [each for each in folders if is_host(each)] == []


def test_the_workshop_says_where(shop: Path, tmp_path: Path) -> None:
    head = (shop / "workshop.yaml").read_text("utf-8")
    (shop / "workshop.yaml").write_text(f"{head}send: {{to: ../www, port: 2222}}\n", "utf-8")
    identity = read_identity(shop)
    assert identity is not None
    assert identity.send == Sending(to="../www", port=2222)
    done = run("send", str(shop), "--dry-run", cwd=tmp_path)
    assert "8 files of 8 would be sent to ../www, the others are there." in done.stdout
    done = run("send", ".", cwd=shop)
    assert (done.returncode, "  index.html" in done.stdout) == (0, True)
    assert set(files_of(tmp_path / "www")) == {*FILES, "manifest.json"}
    (shop / "site" / "index.html").unlink()
    done = run("send", str(shop))
    assert (done.returncode, done.stdout.splitlines()[-1]) == (1, "Not sent.")
